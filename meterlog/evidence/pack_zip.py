"""PackZip: a bag as one zip file that is the same to the byte whenever it is made.

Names sorted, every date 1980-01-01 00:00 (the earliest that the form can say), every mode 0644,
deflate at zlib's own level (6); pictures, which are packed already, as they are. The packed bytes
are those of one version of zlib; what comes out of them is the same with any.

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

from meterlog.evidence.pack_bag import files_of
from meterlog.model.errors import EvidenceError
from meterlog.profile.full_path import full_path

_EARLIEST = (1980, 1, 1, 0, 0, 0)
_MODE = 0o100644
_UNIX = 3
_PIECE = 1 << 20
_PACKED = frozenset({".jpg", ".png"})


def _nobody(_: float) -> None:
    """Tell nobody."""


def write_zip(folder: Path, path: Path, progress: Callable[[float], None] = _nobody) -> None:
    """Write a bag's folder as a zip file.

    Parameters
    ----------
    folder : Path
        Its name is the one folder at the top of the zip.
    path : Path
        Must not exist, nor lie in the folder.
    progress : callable
        Called with the part done, 0 to 1. May raise to cancel; nothing is left then.

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
            with zipfile.ZipFile(stream, "w") as archive:
                for name in names:
                    _add(archive, f"{top}/{name}", folder / name, told)
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


class _Told:
    """Tells how much of all bytes is packed."""

    def __init__(self, whole: int, progress: Callable[[float], None]) -> None:
        self._whole, self._progress, self._done = max(whole, 1), progress, 0

    def more(self, count: int) -> None:
        """Tell of so many more bytes."""
        self._done += count
        self._progress(min(self._done / self._whole, 1.0))


def _add(archive: zipfile.ZipFile, name: str, path: Path, told: _Told) -> None:
    entry = zipfile.ZipInfo(name, _EARLIEST)
    entry.create_system = _UNIX
    entry.external_attr = _MODE << 16
    packed = path.suffix.lower() in _PACKED
    entry.compress_type = zipfile.ZIP_STORED if packed else zipfile.ZIP_DEFLATED
    # The level is zlib's own: 6.
    entry.file_size = path.stat().st_size  # tells whether 64-bit sizes are needed
    with path.open("rb") as source, archive.open(entry, "w") as target:
        while piece := source.read(_PIECE):
            target.write(piece)
            told.more(len(piece))
