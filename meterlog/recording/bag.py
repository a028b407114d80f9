"""Bag: the few rules of a BagIt bag that sealing, packing and verifying share."""

from __future__ import annotations

import hashlib
import re
from collections.abc import Callable, Mapping
from pathlib import Path, PurePosixPath, PureWindowsPath

from meterlog.model.visible_text import steerless
from meterlog.profile.files_below import files_below
from meterlog.profile.plain_file import open_plain
from meterlog.recording import layout

DECLARATION = b"BagIt-Version: 1.0\nTag-File-Character-Encoding: UTF-8\n"
"""The whole of ``bagit.txt`` (RFC 8493, 2.1.1)."""

_PIECE = 1 << 20
_ENTRY = re.compile(r"([0-9a-f]{64})  (.+)")
_UNWRITABLE = re.compile(r'[\x00-\x1f\x7f\ud800-\udfff<>:"|?*\\]')
_DEVICE = re.compile(r"(con|prn|aux|nul|com[1-9]|lpt[1-9])(\..*)?", re.IGNORECASE)


def sha256_of(path: Path, told: Callable[[int], object] | None = None) -> str:
    """Give a file's SHA-256 as 64 lower-case hexadecimal digits.

    Parameters
    ----------
    path : Path
    told : callable or None
        Called with the number of bytes of each piece, once that is read.

    Raises
    ------
    OSError
        If it can't be read.

    Source
    ------
    FIPS 180-4.
    """
    digest = hashlib.sha256()
    with open_plain(path) as stream:
        while piece := stream.read(_PIECE):
            digest.update(piece)
            if told is not None:
                told(len(piece))
    return digest.hexdigest()


def payload(folder: Path) -> tuple[str, ...]:
    """Give the names, within the folder and with ``/``, of all files under ``data/``, sorted.

    Raises
    ------
    RecordingUnreadable
        If folders lie too deep in it.
    OSError
        If it can't be looked into.
    """
    inside = folder / layout.PAYLOAD
    files = (path for path in files_below(inside) if path.is_file()) if inside.is_dir() else ()
    return tuple(sorted(path.relative_to(folder).as_posix() for path in files))


def encode_name(name: str) -> str:
    """Give a file's name as a manifest writes it (RFC 8493, 2.1.3)."""
    return name.replace("%", "%25").replace("\n", "%0A").replace("\r", "%0D")


def decode_name(text: str) -> str:
    """Give a file's name out of a manifest (RFC 8493, 2.1.3)."""
    for code, character in (("0D", "\r"), ("0A", "\n"), ("25", "%")):
        text = text.replace(f"%{code}", character).replace(f"%{code.lower()}", character)
    return text


def stays_inside(name: str) -> bool:
    """Tell whether ``name`` is one of a file within the bag: relative, and never upwards."""
    upwards = ".." in re.split(r"[/\\]", name) or "\0" in name
    return not upwards and not any(kind(name).anchor for kind in (PurePosixPath, PureWindowsPath))


def is_plain_name(name: str) -> bool:
    """Tell whether ``name`` names a file within a bag on every system, and can be listed there.

    Refused are control characters, what Windows has other uses for (``<>:"|?*``, backslash, names
    of devices, a dot or blank at the end), and parts that are empty or dots.
    """
    parts = name.split("/")
    return not _UNWRITABLE.search(name) and all(
        part and part[-1] not in ". " and not _DEVICE.fullmatch(part) for part in parts
    )


def manifest_bytes(digests: Mapping[str, str]) -> bytes:
    """Give a manifest (RFC 8493, 2.1.3) of files and their SHA-256, in the order given."""
    lines = (f"{digest}  {encode_name(name)}\n" for name, digest in digests.items())
    return "".join(lines).encode("utf-8")


def read_manifest(content: bytes) -> tuple[dict[str, str], tuple[int, ...]]:
    """Read a manifest.

    Parameters
    ----------
    content : bytes

    Returns
    -------
    digests : dict of str to str
        SHA-256 of each file by its name; never a name that leads out of the bag.
    damaged : tuple of int
        Numbers of the lines, from 1, that are no entry, or name a file a second time.
    """
    text = content.decode("utf-8", "replace")
    digests: dict[str, str] = {}
    damaged: list[int] = []
    for number, line in enumerate(text.removesuffix("\n").split("\n") if text else (), 1):
        entry = _ENTRY.fullmatch(line)
        name = decode_name(entry[2]) if entry else ""
        if entry is None or name in digests or not stays_inside(name):
            damaged.append(number)
        else:
            digests[name] = entry[1]
    return digests, tuple(damaged)


def info_bytes(fields: Mapping[str, str]) -> bytes:
    """Give a ``bag-info.txt`` (RFC 8493, 2.2.2); each value on one line, all of it to be seen."""
    lines = (f"{name}: {steerless(' '.join(value.split()))}\n" for name, value in fields.items())
    return "".join(lines).encode("utf-8", "backslashreplace")


def read_info(content: bytes) -> dict[str, str]:
    """Give the fields of a ``bag-info.txt`` as :func:`info_bytes` writes it."""
    lines = content.decode("utf-8", "replace").splitlines()
    found = (line.partition(": ") for line in lines)
    return {name: value for name, mark, value in found if mark}


def oxum(size: int, files: int) -> str:
    """Give a ``Payload-Oxum``: bytes and files of the payload."""
    return f"{size}.{files}"
