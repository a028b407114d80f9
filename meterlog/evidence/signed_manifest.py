"""SignedManifest: a signature as a file beside what it signs, and whether it fits."""

from __future__ import annotations

import base64
import hashlib
import json
import re
from dataclasses import dataclass

from cryptography.exceptions import InvalidSignature
from cryptography.hazmat.primitives.asymmetric.ed25519 import Ed25519PublicKey

ALGORITHM = "Ed25519"
SIGNATURE = "signature.json"
"""The file's name in a pack; it signs the tag manifest and so can't be listed in it."""
_FINGERPRINT_BYTES = 20
_MOST = 10_000


def fingerprint_of(public_key: bytes) -> str:
    """Give the fingerprint of a public key.

    Parameters
    ----------
    public_key : bytes
        The 32 raw bytes (RFC 8032, 5.1.5).

    Returns
    -------
    str
        The first 20 bytes of their SHA-256 as ten groups of four lower-case hexadecimal digits.
    """
    digits = hashlib.sha256(public_key).digest()[:_FINGERPRINT_BYTES].hex()
    return " ".join(digits[at : at + 4] for at in range(0, len(digits), 4))


def fingerprint_typed(text: str) -> str:
    """Give a fingerprint as :func:`fingerprint_of` writes it, out of what a person typed.

    Parameters
    ----------
    text : str
        40 hexadecimal digits, in any case, with blanks, colons or dashes between.

    Returns
    -------
    str

    Raises
    ------
    ValueError
        If it is no whole fingerprint.
    """
    digits = re.sub(r"[\s:-]", "", text).lower()
    if not re.fullmatch(rf"[0-9a-f]{{{2 * _FINGERPRINT_BYTES}}}", digits):
        raise ValueError(f"{text!r} is no fingerprint of {2 * _FINGERPRINT_BYTES} digits")
    return " ".join(digits[at : at + 4] for at in range(0, len(digits), 4))


@dataclass(frozen=True, slots=True)
class SignedManifest:
    """A signature.

    Attributes
    ----------
    public_key : bytes
        32 raw bytes.
    signature : bytes
        64 raw bytes, over all bytes of the file as they stand.
    signed : str
        Name of the file that was signed.
    """

    public_key: bytes
    signature: bytes
    signed: str

    @property
    def fingerprint(self) -> str:
        """Fingerprint of the public key."""
        return fingerprint_of(self.public_key)

    def to_bytes(self) -> bytes:
        """Give the file: JSON, UTF-8.

        Returns
        -------
        bytes
            ``algorithm``, ``public_key`` and ``signature`` (base64, RFC 4648 section 4),
            ``fingerprint``, ``signed``.
        """
        values = {
            "algorithm": ALGORITHM,
            "public_key": base64.b64encode(self.public_key).decode(),
            "fingerprint": self.fingerprint,
            "signature": base64.b64encode(self.signature).decode(),
            "signed": self.signed,
        }
        return (json.dumps(values, indent=2, ensure_ascii=False) + "\n").encode()

    @classmethod
    def parse(cls, content: bytes) -> SignedManifest:
        """Read a signature's file.

        Parameters
        ----------
        content : bytes

        Returns
        -------
        SignedManifest

        Raises
        ------
        ValueError
            If it is not, to the byte, as :meth:`to_bytes` writes it: a file that can be read in
            two ways could show one fingerprint to a person and another to a program.
        """
        if len(content) > _MOST:
            raise ValueError("is too long for a signature")
        try:
            values = json.loads(content.decode())
            found = cls(
                base64.b64decode(values["public_key"], validate=True),
                base64.b64decode(values["signature"], validate=True),
                str(values["signed"]),
            )
            same = found.to_bytes() == content
        except (ValueError, KeyError, TypeError, RecursionError) as error:
            raise ValueError("is damaged") from error
        if not same:
            raise ValueError("is not as a signature is written")
        return found

    def fits(self, content: bytes) -> bool:
        """Tell whether ``content`` is what was signed (RFC 8032, 5.1.7)."""
        try:
            Ed25519PublicKey.from_public_bytes(self.public_key).verify(self.signature, content)
        except (InvalidSignature, ValueError):
            return False
        return True
