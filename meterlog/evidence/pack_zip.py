"""PackZip: a bag as one zip file that is the same to the byte whenever it is made.

Names sorted, every date 1980-01-01 00:00 (the earliest that the form can say), every mode 0644,
deflate at zlib's own level (6). The packed bytes are those of one version of zlib; what comes out
of them is the same with any.

Source
------
RFC 8493, section 4: a serialised bag has one folder at its top, of the bag's name. Zip: PKWARE
APPNOTE 6.3.
"""

from __future__ import annotations

import contextlib
import os
import shutil
import zipfile
from pathlib import Path

from meterlog.evidence.pack_bag import files_of
from meterlog.model.errors import EvidenceError

_EARLIEST = (1980, 1, 1, 0, 0, 0)
_MODE = 0o100644
_UNIX = 3
_PIECE = 1 << 20


def write_zip(folder: Path, path: Path) -> None:
    """Write a bag's folder as a zip file.

    Parameters
    ----------
    folder : Path
        Its name is the one folder at the top of the zip.
    path : Path
        Must not exist, nor lie in the folder.

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
    if path.resolve().is_relative_to(folder.resolve()):
        raise EvidenceError(
            "lies in what it shall hold.", subject=str(path), remedy="Put it beside the folder."
        )
    aside = path.with_name(path.name + ".partial")
    try:
        names = files_of(folder)
        top = folder.resolve().name
        with aside.open("wb") as stream:
            with zipfile.ZipFile(stream, "w") as archive:
                for name in names:
                    _add(archive, f"{top}/{name}", folder / name)
            stream.flush()
            os.fsync(stream.fileno())
        aside.rename(path)
    except OSError as error:
        with contextlib.suppress(OSError):
            aside.unlink(missing_ok=True)
        raise EvidenceError(
            f"can't be written: {error.strerror}.",
            subject=str(path),
            remedy="Free some space or choose another place.",
        ) from error


def _add(archive: zipfile.ZipFile, name: str, path: Path) -> None:
    entry = zipfile.ZipInfo(name, _EARLIEST)
    entry.create_system = _UNIX
    entry.external_attr = _MODE << 16
    entry.compress_type = zipfile.ZIP_DEFLATED
    # The level is zlib's own: 6.
    entry.file_size = path.stat().st_size  # tells whether 64-bit sizes are needed
    with path.open("rb") as source, archive.open(entry, "w") as target:
        shutil.copyfileobj(source, target, _PIECE)
