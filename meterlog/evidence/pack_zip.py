"""PackZip: a bag as one zip file that is the same to the byte whenever it is made.

Names sorted, every date 1980-01-01 00:00 (the earliest that the form can say), every mode 0644,
deflate at one level of zlib; pictures, which are packed already, as they are. The packed bytes are
those of one version of zlib; what comes out of them is the same with any.

Source
------
RFC 8493, section 4: a serialised bag has one folder at its top, of the bag's name. Zip: PKWARE
APPNOTE 6.3.
"""

from __future__ import annotations

import contextlib
import os
import zipfile
from collections.abc import Callable
from pathlib import Path
from typing import BinaryIO

from meterlog.evidence.pack_bag import files_of
from meterlog.evidence.packed_ahead import LEVEL, PIECE, Packed, none_packed
from meterlog.model.errors import EvidenceError
from meterlog.profile.full_path import full_path

_EARLIEST = (1980, 1, 1, 0, 0, 0)
_MODE = 0o100644
_UNIX = 3
_PACKED = frozenset({".jpg", ".png"})


def _nobody(_: float) -> None:
    """Tell nobody."""


def write_zip(
    folder: Path,
    path: Path,
    progress: Callable[[float], None] = _nobody,
    packed: Callable[[str], Packed | None] = none_packed,
) -> None:
    """Write a bag's folder as a zip file.

    Parameters
    ----------
    folder : Path
        Its name is the one folder at the top of the zip.
    path : Path
        Must not exist, nor lie in the folder.
    progress : callable
        Called with the part done, 0 to 1. May raise to cancel; nothing is left then.
    packed : callable
        Gives a file of the folder, by its name there, as it has been packed already, or None. The
        zip is the same to the byte.

    Raises
    ------
    EvidenceError
        If it exists, the folder holds a link, or the disk does not take it; nothing is left then.
    """
    if path.exists():
        raise EvidenceError(
            "is there already.",
            subject=str(path),
            remedy="Choose another name; nothing is written over.",
        )
    if full_path(path).is_relative_to(full_path(folder)):
        raise EvidenceError(
            "lies in what it shall hold.", subject=str(path), remedy="Put it beside the folder."
        )
    aside = path.with_name(path.name + ".partial")
    try:
        names = files_of(folder)
        top = full_path(folder).name
        told = _Told(sum((folder / name).stat().st_size for name in names), progress)
        with aside.open("wb") as stream:
            with _archive(stream) as archive:
                for name in names:
                    known = packed(name)
                    if known is None:
                        _add(archive, f"{top}/{name}", folder / name, told)
                    else:
                        _add_packed(archive, stream, f"{top}/{name}", known)
                        told.more(known.size)
            stream.flush()
            os.fsync(stream.fileno())
        aside.rename(path)
    except OSError as error:
        raise EvidenceError(
            f"can't be written: {error.strerror}.",
            subject=str(path),
            remedy="Free some space or choose another place.",
        ) from error
    finally:
        with contextlib.suppress(OSError):
            aside.unlink(missing_ok=True)


def _archive(stream: BinaryIO) -> zipfile.ZipFile:
    return zipfile.ZipFile(stream, "w", zipfile.ZIP_DEFLATED, compresslevel=LEVEL)


class _Told:
    """Tells how much of all bytes is packed."""

    def __init__(self, whole: int, progress: Callable[[float], None]) -> None:
        self._whole, self._progress, self._done = max(whole, 1), progress, 0

    def more(self, count: int) -> None:
        """Tell of so many more bytes."""
        self._done += count
        self._progress(min(self._done / self._whole, 1.0))


def _add(archive: zipfile.ZipFile, name: str, path: Path, told: _Told) -> None:
    large = _large(path.stat().st_size)
    # By its name alone it is packed as the archive says; an entry of one's own is stored.
    entry = zipfile.ZipInfo(name, _EARLIEST) if path.suffix.lower() in _PACKED else name
    with path.open("rb") as source, archive.open(entry, "w", force_zip64=large) as target:
        while piece := source.read(PIECE):
            target.write(piece)
            told.more(len(piece))
    _set_mode(archive.getinfo(name))


def _add_packed(archive: zipfile.ZipFile, stream: BinaryIO, name: str, known: Packed) -> None:
    """Do what the library does around its packing, which it can't be spared."""
    entry = zipfile.ZipInfo(name, _EARLIEST)
    entry.compress_type = zipfile.ZIP_DEFLATED
    entry.header_offset = stream.tell()
    entry.file_size, entry.compress_size, entry.CRC = known.size, len(known.deflated), known.crc
    stream.write(entry.FileHeader(zip64=_large(known.size)))
    stream.write(known.deflated)
    archive.start_dir = stream.tell()
    archive.filelist.append(entry)
    archive.NameToInfo[name] = entry
    _set_mode(entry)


def _large(size: int) -> bool:
    """Tell whether a file needs sizes of 64 bits; packed it may be larger, by next to nothing."""
    return size * 1.05 > zipfile.ZIP64_LIMIT


def _set_mode(entry: zipfile.ZipInfo) -> None:
    entry.create_system = _UNIX
    entry.external_attr = _MODE << 16
