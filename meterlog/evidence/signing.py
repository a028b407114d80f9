"""Signing: who made a pack. An Ed25519 key of this machine's user, made when first needed.

The private key lies in the user's data folder, in a file and a folder that nobody else may read
(0600, 0700), as PKCS#8 in PEM, under a passphrase if one is given. Beside it lies the public key,
so that a check can tell one's own packs without the passphrase. A key says that two packs come
from the same hands; whose hands those are is told by the fingerprint, which is handed over by
another way: on paper, by telephone.

Source
------
Ed25519: RFC 8032, section 5.1. PKCS#8: RFC 5958. Signing itself: the ``cryptography`` library.
"""

from __future__ import annotations

import contextlib
import os
import secrets
import stat
from pathlib import Path

from cryptography.exceptions import InternalError, UnsupportedAlgorithm
from cryptography.hazmat.primitives import serialization
from cryptography.hazmat.primitives.asymmetric.ed25519 import Ed25519PrivateKey, Ed25519PublicKey

from meterlog.evidence.signed_manifest import SignedManifest, fingerprint_of
from meterlog.model.errors import EvidenceError
from meterlog.profile.plain_file import read_plain
from meterlog.recording import layout

__all__ = ["SignedManifest", "Signer", "fingerprint_of", "key_folder", "own_fingerprint"]

KEY = "signing-key.pem"
PUBLIC = "signing-key.pub.pem"
_POSIX = os.name == "posix"
_BINARY = getattr(os, "O_BINARY", 0)
_MOST = 65_536
"""Bytes a key file may have; a key has some hundred."""


def key_folder() -> Path:
    """Give the folder in which this user's signing key is kept; it need not exist yet."""
    from platformdirs import user_data_path

    return user_data_path("meterlog", appauthor=False) / "keys"


class Signer:
    """Signs with one key. Use :meth:`load_or_make`.

    Parameters
    ----------
    key : Ed25519PrivateKey
    """

    def __init__(self, key: Ed25519PrivateKey) -> None:
        self._key = key
        self.public_key = key.public_key().public_bytes_raw()

    @classmethod
    def load_or_make(cls, passphrase: str = "", folder: Path | None = None) -> Signer:
        """Take this user's key; make one if there is none yet.

        Parameters
        ----------
        passphrase : str
            Under which the key is, or shall be, kept; empty for none.
        folder : Path or None
            Where the key lies; None for :func:`key_folder`.

        Returns
        -------
        Signer

        Raises
        ------
        EvidenceError
            If others may read the key or change its folder, the passphrase does not open it, it is
            no Ed25519 key, or it can't be read or made.
        """
        place = folder or key_folder()
        try:
            if not os.path.lexists(place / KEY):
                _make(place, passphrase)
            _refuse_open_folder(place)
            signer = cls(_opened(_private_bytes(place / KEY), passphrase, place / KEY))
            if own_fingerprint(place) != signer.fingerprint:
                # A key that was fetched from a backup, or a program that died between the two.
                _put_public(place, signer.public_key)
        except OSError as error:
            raise EvidenceError(
                f"can't be read or made: {error.strerror}.",
                subject=str(error.filename or place / KEY),
                remedy="Check the folder of your keys, or make the pack without a signature.",
            ) from error
        return signer

    @property
    def fingerprint(self) -> str:
        """The fingerprint of the public key."""
        return fingerprint_of(self.public_key)

    def sign(self, content: bytes, signed: str = layout.TAG_MANIFEST) -> SignedManifest:
        """Sign bytes.

        Parameters
        ----------
        content : bytes
            All of a file.
        signed : str
            The file's name.

        Returns
        -------
        SignedManifest
        """
        return SignedManifest(self.public_key, self._key.sign(content), signed)


def own_fingerprint(folder: Path | None = None) -> str:
    """Give the fingerprint of this user's own key; empty while there is none that can be read."""
    path = (folder or key_folder()) / PUBLIC
    try:
        key = serialization.load_pem_public_key(read_plain(path, _MOST))
    except (OSError, ValueError, UnsupportedAlgorithm, InternalError):
        return ""
    return fingerprint_of(key.public_bytes_raw()) if isinstance(key, Ed25519PublicKey) else ""


def _make(place: Path, passphrase: str) -> None:
    place.parent.mkdir(parents=True, exist_ok=True)
    place.mkdir(mode=0o700, exist_ok=True)
    _refuse_open_folder(place)
    key = Ed25519PrivateKey.generate()
    lock = (
        serialization.BestAvailableEncryption(_as_bytes(passphrase))
        if passphrase
        else serialization.NoEncryption()
    )
    private = key.private_bytes(serialization.Encoding.PEM, serialization.PrivateFormat.PKCS8, lock)
    _put(place / KEY, private)


def _put_public(place: Path, public_key: bytes) -> None:
    content = Ed25519PublicKey.from_public_bytes(public_key).public_bytes(
        serialization.Encoding.PEM, serialization.PublicFormat.SubjectPublicKeyInfo
    )
    (place / PUBLIC).unlink(missing_ok=True)
    _put(place / PUBLIC, content)


def _as_bytes(passphrase: str) -> bytes:
    return passphrase.encode("utf-8", "surrogateescape")


def _put(path: Path, content: bytes) -> None:
    """Write a file that is whole or not there; if another program was faster its file stands."""
    aside = path.with_name(f"{path.name}.{secrets.token_hex(8)}.partial")
    descriptor = os.open(aside, os.O_WRONLY | os.O_CREAT | os.O_EXCL | _BINARY, 0o600)
    try:
        with os.fdopen(descriptor, "wb") as stream:
            stream.write(content)
            stream.flush()
            os.fsync(stream.fileno())
        if _POSIX:
            path.hardlink_to(aside)
        else:
            aside.rename(path)
    except FileExistsError:
        return
    finally:
        with contextlib.suppress(OSError):
            aside.unlink(missing_ok=True)


def _refuse_open_folder(place: Path) -> None:
    if _POSIX and place.stat().st_mode & (stat.S_IWGRP | stat.S_IWOTH):
        raise EvidenceError(
            "can be changed by others, who could put a key of theirs there.",
            subject=str(place),
            remedy=f"Make it yours alone: chmod 700 {place}",
        )


def _private_bytes(path: Path) -> bytes:
    # What is looked at is the very file that is read: no other can be put in its place between.
    flags = os.O_RDONLY | _BINARY | getattr(os, "O_NOFOLLOW", 0) | getattr(os, "O_NONBLOCK", 0)
    with os.fdopen(os.open(path, flags), "rb") as stream:
        found = os.fstat(stream.fileno())
        if not stat.S_ISREG(found.st_mode):
            raise EvidenceError("is no file.", subject=str(path), remedy="Take it away.")
        if _POSIX and (found.st_mode & 0o077 or found.st_uid != os.geteuid()):
            raise EvidenceError(
                f"is not yours alone (mode {stat.S_IMODE(found.st_mode):04o}): whoever can read it "
                "can sign in your name.",
                subject=str(path),
                remedy=f"If nobody had it, make it yours: chmod 600 {path}; else take it away, "
                "and a new key is made.",
            )
        return stream.read(_MOST)


def _opened(content: bytes, passphrase: str, path: Path) -> Ed25519PrivateKey:
    locked = b"ENCRYPTED" in content.partition(b"\n")[0]
    if locked != bool(passphrase):
        raise EvidenceError(
            "is kept under a passphrase." if locked else "is kept without a passphrase.",
            subject=str(path),
            remedy="Give the passphrase." if locked else "Leave the passphrase out.",
        )
    try:
        key = serialization.load_pem_private_key(
            content, _as_bytes(passphrase) if passphrase else None
        )
    except (ValueError, TypeError, UnsupportedAlgorithm, InternalError) as error:
        raise EvidenceError(
            "can't be opened: the passphrase is wrong, or the file is damaged."
            if locked
            else "can't be opened: the file is damaged.",
            subject=str(path),
            remedy="Try the passphrase again."
            if locked
            else "Fetch it from your backup, or take "
            "it away; a new key is made then, with another fingerprint.",
        ) from error
    if not isinstance(key, Ed25519PrivateKey):
        raise EvidenceError(
            "holds another kind of key than Ed25519.",
            subject=str(path),
            remedy="Take it away; a key is made when it is needed.",
        )
    return key
