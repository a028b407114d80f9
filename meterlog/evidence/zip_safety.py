"""ZipSafety: a zip from a stranger, unpacked into a folder of its own or refused.

Refused before a byte is unpacked: names that lead out of the folder (absolute, with ``..``, drive
letters, backslashes), links and devices, two entries of one name (also by case, or by two ways to
write an accent), a file that is a folder too, entries that lie upon each other in the file,
encryption, other methods than stored and deflate, and more than :class:`ZipLimits` allows.
Told, as no list of the pack covers it: bytes that belong to no entry (before, between and behind
them: another program may find other files there), comments, and what lies beside the pack's folder.

Source
------
PKWARE APPNOTE 6.3, sections 4.3 and 4.4. D. Fifield, "A better zip bomb" (WOOT 2019), for entries
that overlap.
"""

from __future__ import annotations

import shutil
import stat
import struct
import unicodedata
import zipfile
import zlib
from dataclasses import dataclass
from pathlib import Path
from typing import NamedTuple

from meterlog.evidence.shown_text import shown
from meterlog.evidence.zip_gaps import gap_words
from meterlog.model.errors import EvidenceError
from meterlog.profile.files_below import DEEPEST
from meterlog.recording import layout
from meterlog.recording.bag import is_plain_name

_PIECE = 1 << 20
_ENCRYPTED = 1
_METHODS = (zipfile.ZIP_STORED, zipfile.ZIP_DEFLATED)
_UNREADABLE = (
    zipfile.BadZipFile,
    zlib.error,
    struct.error,
    EOFError,
    NotImplementedError,
    RuntimeError,
    ValueError,
)
"""What the library raises for what it can't read, depending on which byte is wrong."""
_HEAD = 30
"""Bytes of the shortest head of an entry."""
_LONGEST_PART, _LONGEST_NAME = 255, 1000
"""Bytes between two slashes, letters of a whole name: what common file systems take."""


@dataclass(frozen=True, slots=True)
class ZipLimits:
    """How much a zip may hold.

    Attributes
    ----------
    files : int
    total : int, bytes unpacked
    ratio : float
        Unpacked bytes for each packed one, over all entries; tables of numbers have 3 to 20.
    spared : int, bytes unpacked
        Up to here the ratio is not looked at: small files of one line over and over are harmless.
    """

    files: int = 10_000
    total: int = 8 << 30
    ratio: float = 200.0
    spared: int = 16 << 20


LIMITS = ZipLimits()
_REMEDY = "A pack has none of this. Ask its maker for it again; don't unpack it."


class Unpacked(NamedTuple):
    """What came out of a zip.

    Attributes
    ----------
    top : Path
        Where the pack lies: the one folder at the zip's top, or the folder itself.
    problems : tuple of str
        Entries whose own checksum does not hold, and what else is in the file that no list covers.
    torn : frozenset of str
        Those entries by their names in the pack: what could be unpacked of them is there.
    """

    top: Path
    problems: tuple[str, ...]
    torn: frozenset[str]


def unpack(path: Path, folder: Path, limits: ZipLimits = LIMITS) -> Unpacked:
    """Unpack a zip into an empty folder.

    Parameters
    ----------
    path : Path
    folder : Path
        Nothing is written outside it.
    limits : ZipLimits

    Returns
    -------
    Unpacked

    Raises
    ------
    EvidenceError
        If it is unsafe, is no zip, or can't be read.
    OSError
        If the folder can't be written to.
    """
    try:
        with zipfile.ZipFile(path) as archive:
            entries = archive.infolist()
            why, room = _unsafe(entries, limits), _too_large(entries, folder)
            if why:
                raise EvidenceError(f"is refused: {why}.", subject=str(path), remedy=_REMEDY)
            if room:
                raise EvidenceError(
                    f"can't be unpacked: {room}.", subject=str(path), remedy="Free some space."
                )
            problems = gap_words(archive, path)
            taken = {entry.filename: _take(archive, entry, folder) for entry in entries}
    except _UNREADABLE as error:
        raise EvidenceError(
            f"can't be read as a zip: {error}.",
            subject=str(path),
            remedy="It is damaged or was cut; ask for it again.",
        ) from error
    top, beside = _top(folder)
    torn = {name: text for name, text in taken.items() if text}
    lead = top.relative_to(folder).as_posix()
    return Unpacked(
        top,
        (*problems, *torn.values(), *(f"{shown(name)}: lies beside the pack." for name in beside)),
        frozenset(name.removeprefix(f"{lead}/") for name in torn),
    )


def _top(folder: Path) -> tuple[Path, tuple[str, ...]]:
    """Give where the pack lies, and what lies beside it."""
    tops = sorted(folder.iterdir())
    packs = [one for one in tops if (one / layout.TAG_MANIFEST).is_file()]
    if len(tops) == 1 and tops[0].is_dir():
        packs = tops
    if len(packs) != 1 or (folder / layout.TAG_MANIFEST).exists():
        return folder, ()
    return packs[0], tuple(one.name for one in tops if one != packs[0])


def _unsafe(entries: list[zipfile.ZipInfo], limits: ZipLimits) -> str:
    if len(entries) > limits.files:
        return f"it holds {len(entries)} entries, {limits.files} are the most"
    total = sum(entry.file_size for entry in entries)
    packed = sum(entry.compress_size for entry in entries)
    if total > limits.total:
        return f"it would unpack to {total} bytes, {limits.total} are the most"
    if total > limits.spared and total > limits.ratio * packed:
        return f"it would unpack to {total / max(1, packed):.0f} times its size"
    found = (_unsafe_entry(entry) for entry in entries)
    return next(filter(None, found), "") or _unsafe_together(entries)


def _too_large(entries: list[zipfile.ZipInfo], folder: Path) -> str:
    total = sum(entry.file_size for entry in entries)
    free = shutil.disk_usage(folder).free
    return f"it needs {total} bytes, {free} are free where it is unpacked" if total > free else ""


def _unsafe_entry(entry: zipfile.ZipInfo) -> str:
    name = entry.orig_filename
    mode = entry.external_attr >> 16
    kind = stat.S_IFMT(mode)
    wanted = stat.S_IFDIR if _is_folder(entry) else stat.S_IFREG
    if not is_plain_name(name.removesuffix("/")) or name != entry.filename:
        return f"the name '{shown(name, 200)}' leads out of its folder or is odd"
    if why := _too_long(name):
        return f"the name '{shown(name, 200)}' {why}"
    if kind not in {0, wanted}:
        return f"{name!r} is a link or a device"
    if entry.flag_bits & _ENCRYPTED:
        return f"{name!r} is encrypted"
    if entry.compress_type not in _METHODS:
        return f"{name!r} is packed by another method than a pack is"
    return ""


def _too_long(name: str) -> str:
    parts = _parts(name)
    if len(name) > _LONGEST_NAME or any(len(part) > _LONGEST_PART for part in parts):
        return "is longer than most systems can have"
    return f"lies more than {DEEPEST} folders deep" if len(parts) > DEEPEST + 1 else ""


def _unsafe_together(entries: list[zipfile.ZipInfo]) -> str:
    seen: set[str] = set()
    for entry in entries:
        name = _folded(entry.filename)
        if name in seen:
            return f"there are two entries {entry.filename!r}"
        seen.add(name)
    files = {_folded(entry.filename) for entry in entries if not _is_folder(entry)}
    for name in seen:
        parts = name.split("/")
        if any("/".join(parts[:k]) in files for k in range(1, len(parts))):
            return f"{name!r} lies in a file"
    end = 0
    for entry in sorted(entries, key=lambda one: one.header_offset):
        if entry.header_offset < end:
            return f"{entry.filename!r} lies upon another entry"
        end = entry.header_offset + _HEAD + entry.compress_size
    return ""


def _is_folder(entry: zipfile.ZipInfo) -> bool:
    # The library's own question fails on an empty name.
    return entry.filename.endswith("/")


def _parts(name: str) -> list[bytes]:
    return name.encode("utf-8", "surrogatepass").split(b"/")


def _folded(name: str) -> str:
    return unicodedata.normalize("NFC", name.removesuffix("/")).casefold()


def _take(archive: zipfile.ZipFile, entry: zipfile.ZipInfo, folder: Path) -> str:
    target = folder / entry.filename
    if _is_folder(entry):
        target.mkdir(parents=True, exist_ok=True)
        return ""
    target.parent.mkdir(parents=True, exist_ok=True)
    try:
        # Never more than the size that was counted: the library stops there.
        with target.open("xb") as out, archive.open(entry) as stream:
            while piece := stream.read(_PIECE):
                out.write(piece)
    except _UNREADABLE as error:
        return f"{entry.filename}: is damaged in the zip ({error})."
    return ""
