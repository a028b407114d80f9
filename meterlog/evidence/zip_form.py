"""ZipForm: whether the zip file of a pack is, to the byte, as it is made.

The lists of a pack cover what comes out of a zip. Dates, modes, the order of entries and other
fields of the file they do not; but the zip of a pack depends on nothing but its content, so it is
made anew here and compared. Only the packed bytes depend on zlib, its version and its level, which
a pack names: with another one, all but these is compared.

Source
------
PKWARE APPNOTE 6.3: 4.3.7 (heads of entries), 4.3.12 (list), 4.3.14 to 4.3.16 (end), 4.5.3 (sizes of
64 bits).
"""

from __future__ import annotations

import filecmp
import struct
import tempfile
import zipfile
import zlib
from pathlib import Path

from meterlog.evidence.pack_zip import write_zip
from meterlog.evidence.packed_ahead import LEVEL
from meterlog.model.errors import EvidenceError
from meterlog.profile.plain_file import read_plain
from meterlog.recording import layout
from meterlog.recording.bag import read_info

PACKED_BY = "Meterlog-Packed-By"
"""Field of ``bag-info.txt`` that names the zlib of the zip, and its level."""
PACKER = f"zlib {zlib.ZLIB_RUNTIME_VERSION}, level {LEVEL}"
_HEAD, _LISTED, _END = 30, 46, 22
_ZIP64, _END64 = 1, b"PK\x06\x06"
_NOT = (
    "The zip file itself is not, to the byte, as it was made: it was damaged, or packed anew by"
    " another program."
)


def zip_out_of_form(path: Path, pack: Path) -> tuple[str, str]:
    """Compare a zip with the one that its content gives.

    Parameters
    ----------
    path : Path
    pack : Path
        Folder to which it was unpacked, all of it as it was packed.

    Returns
    -------
    tuple of (str, str)
        What is wrong, and what should be known; both empty where it is as it was made.

    Raises
    ------
    OSError
        If a file can't be read, or there is no room for another zip.
    """
    info = pack / layout.BAG_INFO
    by = read_info(read_plain(info)).get(PACKED_BY, "") if info.is_file() else ""
    with tempfile.TemporaryDirectory(prefix="meterlog-verify-") as place:
        again = Path(place) / "again.zip"
        try:
            write_zip(pack, again)
        except EvidenceError as error:
            if isinstance(error.__cause__, OSError):  # no room here says nothing of the pack
                raise error.__cause__ from None
            return _NOT, ""
        if filecmp.cmp(path, again, shallow=False):
            return "", ""
        if by == PACKER or not by or _form(path) != _form(again):
            return _NOT, ""
    return "", f"It was packed by {by}, and {PACKER} is here: its packed bytes can't be compared."


def _form(path: Path) -> list[bytes]:
    """Give all of a zip but the packed bytes, how many they are, and what follows from that."""
    with zipfile.ZipFile(path) as archive, path.open("rb") as stream:
        entries, at = archive.infolist(), archive.start_dir
        parts = []
        for entry in entries:
            stream.seek(entry.header_offset)
            head = stream.read(_HEAD)
            name, extra = (stream.read(size) for size in struct.unpack("<HH", head[26:]))
            parts += [head[:18] + head[22:], name, _without_sizes(extra)]
        stream.seek(at)
        for _ in entries:
            listed = stream.read(_LISTED)
            name, extra, comment = (
                stream.read(size) for size in struct.unpack("<HHH", listed[28:34])
            )
            # Versions and the length of what is extra follow from sizes and places, too.
            fixed = listed[:4] + listed[8:20] + listed[24:30] + listed[32:42]
            parts += [fixed, name, _without_sizes(extra), comment]
        end = stream.read()
        return [*parts, *_without_places(end)]


def _without_sizes(extra: bytes) -> bytes:
    """Give the extra fields of an entry without its sizes and place of 64 bits (4.5.3)."""
    kept, at = b"", 0
    while at + 4 <= len(extra):
        kind, size = struct.unpack_from("<HH", extra, at)
        if kind != _ZIP64:
            kept += extra[at : at + 4 + size]
        at += 4 + size
    return kept + extra[at:]


def _without_places(end: bytes) -> tuple[bytes, ...]:
    """Give what stands behind the list without its own size and place, of 32 or of 64 bits."""
    short = end[-_END:]
    return short[:12], short[20:], end[:-_END] if not end.startswith(_END64) else b""
