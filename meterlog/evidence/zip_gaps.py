"""ZipGaps: what is in a zip file besides its entries and their list.

Programs do not read zips alike: some go by the list at the end, some by what comes first. Bytes
that belong to no entry can be other files to them, or other versions of these; no list of the pack
covers them.

Source
------
PKWARE APPNOTE 6.3: 4.3.7 (heads), 4.3.9 (data descriptor), 4.3.12 (list), 4.3.14 to 4.3.16
(end), 4.6.9 (a second name among the extra fields).
"""

from __future__ import annotations

import struct
import zipfile
from pathlib import Path
from typing import BinaryIO

from meterlog.evidence.shown_text import shown
from meterlog.profile.plain_file import open_plain

_HEAD, _LISTED, _END, _END_64, _FINDS_64 = 30, 46, 22, 12, 20
"""Bytes of each record without what has its own length."""
_SECOND_NAME = 0x7075
_DESCRIBED = 8
_DESCRIPTORS = (0, 12, 16, 20, 24)
"""Bytes behind an entry whose size was told only there: with and without mark, of 4 and 8."""


def gap_words(archive: zipfile.ZipFile, path: Path) -> list[str]:
    """Say what no list of a pack can cover.

    Parameters
    ----------
    archive : ZipFile
    path : Path
        Its file.

    Returns
    -------
    list of str
        Empty where there is nothing but entries.

    Raises
    ------
    OSError
        If the file can't be read.
    """
    said = [
        f"{shown(one.filename)}: has a comment in the zip, which no list covers."
        for one in archive.infolist()
        if one.comment
    ]
    said += [
        f"{shown(one.filename)}: has a second name in the zip, which other programs may take."
        for one in archive.infolist()
        if _SECOND_NAME in _extra_kinds(one.extra)
    ]
    if archive.comment:
        said.append("The zip has a comment, which no list covers.")
    with open_plain(path) as stream:
        places = _loose_between(stream, archive)
        if not _ends(stream, archive.start_dir, len(archive.infolist()), path.stat().st_size):
            places.append("at its end")
    said += [
        f"The zip holds bytes {place} that belong to no file; other programs may see others there."
        for place in places
    ]
    return said


def _extra_kinds(extra: bytes) -> set[int]:
    kinds: set[int] = set()
    at = 0
    while at + 4 <= len(extra):
        kind, size = struct.unpack_from("<HH", extra, at)
        kinds.add(kind)
        at += 4 + size
    return kinds


def _loose_between(stream: BinaryIO, archive: zipfile.ZipFile) -> list[str]:
    """Say where bytes lie before or behind entries."""
    places: list[str] = []
    ends, place = {0}, "at its beginning"
    for entry in sorted(archive.infolist(), key=lambda one: one.header_offset):
        if entry.header_offset not in ends:
            places.append(place)
        stream.seek(entry.header_offset)
        head = stream.read(_HEAD)
        if len(head) < _HEAD:
            break  # the archive itself refuses such an entry
        end = entry.header_offset + _HEAD + entry.compress_size
        end += sum(struct.unpack_from("<HH", head, 26))
        described = entry.flag_bits & _DESCRIBED
        ends = {end + more for more in _DESCRIPTORS} if described else {end}
        place = f"behind {shown(entry.filename)}"
    if archive.start_dir not in ends:
        places.append(place)
    return places


def _ends(stream: BinaryIO, at: int, count: int, size: int) -> bool:
    """Tell whether the list of ``count`` entries at ``at``, and its end, are the file's end."""
    for _ in range(count):
        stream.seek(at)
        record = stream.read(_LISTED)
        if len(record) < _LISTED:
            return False
        at += _LISTED + sum(struct.unpack_from("<HHH", record, 28))
    for mark, least, form, where in (
        (b"PK\x06\x06", _END_64, "<Q", 4),
        (b"PK\x06\x07", _FINDS_64, "", 0),
        (b"PK\x05\x06", _END, "<H", 20),
    ):
        stream.seek(at)
        record = stream.read(_END)
        if record.startswith(mark) and len(record) >= least:
            at += least + (struct.unpack_from(form, record, where)[0] if form else 0)
    return at == size
