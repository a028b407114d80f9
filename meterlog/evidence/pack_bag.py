"""PackBag: makes a folder of evidence a BagIt bag, signed if somebody signs.

What is beside ``data/`` in the end::

    bagit.txt, bag-info.txt, manifest-sha256.txt       RFC 8493, section 2
    row-checks/<name>.csv.txt                          one for each table (row_checks.py)
    tagmanifest-sha256.txt                             lists all of the above
    signature.json                                     signs the tag manifest; listed nowhere

``sha256sum -c`` and ``bagit`` check all but the signature; ``meterlog verify`` checks all.
"""

from __future__ import annotations

import hashlib
from collections.abc import Callable, Iterator, Mapping
from pathlib import Path

from meterlog.evidence.row_checks import RowChecks, checks_name
from meterlog.evidence.signed_manifest import SIGNATURE
from meterlog.evidence.signing import Signer
from meterlog.model.errors import EvidenceError
from meterlog.profile.files_below import files_below
from meterlog.profile.plain_file import open_plain
from meterlog.recording import layout
from meterlog.recording.append_file import write_aside
from meterlog.recording.bag import (
    DECLARATION,
    info_bytes,
    is_plain_name,
    manifest_bytes,
    oxum,
    sha256_of,
)

SIGNED_BY = "Meterlog-Signed-By"
"""Field of ``bag-info.txt`` that holds the fingerprint: a signature taken away is told by it."""
_DATA = f"{layout.PAYLOAD}/"


def _nothing() -> None:
    """Do nothing."""


def write_bag(
    folder: Path,
    info: Mapping[str, str],
    signer: Signer | None,
    known: Mapping[str, bytes] | None = None,
    tick: Callable[[], None] = _nothing,
) -> None:
    """Make ``folder``, whose payload lies ready in ``data/``, a bag.

    Parameters
    ----------
    folder : Path
        What else lies in it beside ``data/`` is listed in the tag manifest.
    info : mapping of str to str
        Fields of ``bag-info.txt`` in this order, such as ``Bagging-Date``; ``Payload-Oxum`` is
        added, and by whom it is signed.
    signer : Signer or None
        None leaves it unsigned.
    known : mapping of str to bytes, or None
        Row checks that :func:`tag_files` gave for this payload: they are not made again.
    tick : callable
        Called now and then. May raise to cancel.

    Raises
    ------
    EvidenceError
        If the folder is a bag already, has no payload, holds a link or a name that a bag can't
        have, a field is none, or the disk does not take it.

    Source
    ------
    RFC 8493, section 2.
    """
    if layout.is_sealed(folder):
        raise EvidenceError(
            "is a sealed bag already.",
            subject=str(folder),
            remedy="Make the pack in a folder of its own.",
        )
    try:
        # The declaration comes last: a bag that was broken off is none.
        tags = tag_files(folder, info, signer, known, tick)
        for name in sorted(tags, key=lambda one: one == layout.BAGIT):
            (folder / name).parent.mkdir(parents=True, exist_ok=True)
            write_aside(folder / name, tags[name])
    except OSError as error:
        raise EvidenceError(
            f"can't be sealed: {error.strerror}.",
            subject=str(error.filename or folder),
            remedy="Free some space or choose another disk, then make the pack again.",
        ) from error


def tag_files(
    folder: Path,
    info: Mapping[str, str],
    signer: Signer | None,
    known: Mapping[str, bytes] | None = None,
    tick: Callable[[], None] = _nothing,
) -> dict[str, bytes]:
    """Give what :func:`write_bag` writes, without writing it.

    Parameters
    ----------
    folder, info, signer, known, tick
        As for :func:`write_bag`.

    Returns
    -------
    dict of str to bytes
        Content by name in the bag.

    Raises
    ------
    EvidenceError
        As :func:`write_bag`.
    OSError
        If a file can't be read.
    """
    names = files_of(folder)
    inside = [name for name in names if name.startswith(_DATA)]
    if not inside:
        raise EvidenceError("has no files in data/.", subject=str(folder), remedy="Fill it first.")
    size = sum((folder / name).stat().st_size for name in inside)
    fields = {**info, "Payload-Oxum": oxum(size, len(inside))}
    if signer is not None:
        fields[SIGNED_BY] = signer.fingerprint
    _check_fields(fields)
    tags = _row_checks(folder, inside, known or {}, tick)
    tags[layout.BAG_INFO] = info_bytes(fields)
    tags[layout.BAGIT] = DECLARATION
    tags[layout.MANIFEST] = manifest_bytes({name: sha256_of(folder / name) for name in inside})
    digests = {name: hashlib.sha256(content).hexdigest() for name, content in tags.items()}
    digests.update((name, sha256_of(folder / name)) for name in names if not name.startswith(_DATA))
    tags[layout.TAG_MANIFEST] = manifest_bytes(dict(sorted(digests.items())))
    if signer is not None:
        tags[SIGNATURE] = signer.sign(tags[layout.TAG_MANIFEST]).to_bytes()
    return tags


def _check_fields(fields: Mapping[str, str]) -> None:
    for name in fields:
        if not name or name != name.strip() or any(mark in name for mark in ":\r\n"):
            raise EvidenceError(
                f"{name!r} is no name of a field.",
                subject=layout.BAG_INFO,
                remedy="Use letters and dashes.",
            )


def _row_checks(
    folder: Path, names: list[str], known: Mapping[str, bytes], tick: Callable[[], None]
) -> dict[str, bytes]:
    found = {}
    for name in names:
        tick()
        checks = checks_name(name)
        if checks in known:
            found[checks] = known[checks]
        elif name.lower().endswith(".csv"):
            with open_plain(folder / name) as stream:
                found[checks] = RowChecks.of(name, stream, tick).to_bytes()
    return found


def files_of(folder: Path) -> tuple[str, ...]:
    """Give the names of all files of a pack's folder, sorted.

    Raises
    ------
    EvidenceError
        If there is anything but files and folders in it, or a name that not every system can have.
        A percent sign is one of those: the programs that check bags do not agree on how lists
        write it.
    """
    names = []
    for name, plain in walk(folder):
        if not plain or not is_plain_name(name) or "%" in name:
            raise EvidenceError(
                "can't be part of a pack: it is no plain file, or not every system can have a file "
                "of this name.",
                subject=str(folder / name),
                remedy="Give it another name, or put a copy in the place of a link.",
            )
        names.append(name)
    return tuple(sorted(names))


def walk(folder: Path) -> Iterator[tuple[str, bool]]:
    """Give everything below ``folder`` but folders: its name with ``/``, and if it is a plain file.

    Links are given, never followed. Errors are those of
    :func:`~meterlog.profile.files_below.files_below`.
    """
    for path in files_below(folder):
        plain = path.is_file() and not path.is_symlink()
        yield path.relative_to(folder).as_posix(), plain
