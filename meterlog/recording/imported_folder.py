"""ImportedFolder: where an import writes, so that an error half way leaves nothing behind."""

from __future__ import annotations

import re
import shutil
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from meterlog.model.errors import DiskFailed, EvidenceError, RecordingExists
from meterlog.recording import layout as places
from meterlog.recording.folder_aside import folder_aside, put_folder_in_place

REMEDY = "Free some space or choose another folder, then import it again."


def check_free(out: Path) -> None:
    """Refuse a folder that holds anything.

    Raises
    ------
    RecordingExists
    """
    folder = out.absolute()
    if folder.exists() and (not folder.is_dir() or any(folder.iterdir())):
        raise RecordingExists(
            "is there already and is not empty.",
            subject=str(out),
            remedy="Choose another folder; recordings are never overwritten.",
        )


@contextmanager
def imported_folder(out: Path, remedy: str = REMEDY) -> Iterator[Path]:
    """Give a folder beside ``out`` to write to, which becomes ``out`` at the end.

    It lies in a hidden one with a lock: half an import is no recording that was cut off, and what a
    program leaves that dies is removed by the next that imports to ``out``. So it is for all that
    is written at once from what is there anyhow.

    Parameters
    ----------
    out : Path
        Absent or empty.
    remedy : str
        What to do where it can't be written.

    Yields
    ------
    Path
        Absent.

    Raises
    ------
    DiskFailed
        If it can't be written.
    """
    folder = out.absolute()
    try:
        with folder_aside(folder) as work:
            yield work / folder.name
            put_folder_in_place(work / folder.name, folder)
    except OSError as error:
        raise DiskFailed(
            f"can't be written: {error.strerror}.", subject=str(out), remedy=remedy
        ) from error
    except (DiskFailed, EvidenceError) as error:
        # Their subject is the folder beside, which is gone by now, and so is what to do with it.
        raise DiskFailed(error.message, subject=str(out), remedy=remedy) from error


def keep_original(aside: Path, original: Path) -> None:
    """Keep a file as it came in a recording that is being made."""
    folder = aside / places.ORIGINAL
    folder.mkdir(exist_ok=True)
    # Readers of bags differ over these characters in names, whatever RFC 8493 says.
    name = re.sub(r"[%\r\n]", "_", as_text(original.name))
    target = folder / name
    if target.exists():
        target = folder / f"events-{name}"
    shutil.copyfile(original, target)


def as_text(name: str) -> str:
    """Give a file name that can be written down, also where its bytes are no UTF-8."""
    return name.encode("utf-8", "replace").decode("utf-8")
