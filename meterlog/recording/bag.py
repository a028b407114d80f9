"""Bag: the few rules of a BagIt bag that sealing and verifying share."""

from __future__ import annotations

import hashlib
from pathlib import Path

from meterlog.recording import layout

DECLARATION = b"BagIt-Version: 1.0\nTag-File-Character-Encoding: UTF-8\n"
"""The whole of ``bagit.txt`` (RFC 8493, 2.1.1)."""

_PIECE = 1 << 20


def sha256_of(path: Path) -> str:
    """Give a file's SHA-256 as 64 lower-case hexadecimal digits.

    Raises
    ------
    OSError
        If it can't be read.

    Source
    ------
    FIPS 180-4.
    """
    digest = hashlib.sha256()
    with path.open("rb") as stream:
        while piece := stream.read(_PIECE):
            digest.update(piece)
    return digest.hexdigest()


def payload(folder: Path) -> tuple[str, ...]:
    """Give the names, within the folder and with ``/``, of all files under ``data/``, sorted."""
    files = (path for path in (folder / layout.PAYLOAD).rglob("*") if path.is_file())
    return tuple(sorted(path.relative_to(folder).as_posix() for path in files))


def encode_name(name: str) -> str:
    """Give a file's name as a manifest writes it (RFC 8493, 2.1.3)."""
    return name.replace("%", "%25").replace("\n", "%0A").replace("\r", "%0D")


def decode_name(text: str) -> str:
    """Give a file's name out of a manifest (RFC 8493, 2.1.3)."""
    for code, character in (("0D", "\r"), ("0A", "\n"), ("25", "%")):
        text = text.replace(f"%{code}", character).replace(f"%{code.lower()}", character)
    return text
