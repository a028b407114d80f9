"""ImportedFolder: where an import writes, so that an error half way leaves nothing behind."""

from __future__ import annotations

import contextlib
import re
import shutil
import uuid
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from meterlog.model.errors import DiskFailed, RecordingExists
from meterlog.recording import layout as places

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
def imported_folder(out: Path) -> Iterator[Path]:
    """Give a folder beside ``out`` to write to, which becomes ``out`` at the end.

    Parameters
    ----------
    out : Path
        Absent or empty.

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
    aside = folder.with_name(f".{folder.name}.importing-{uuid.uuid4().hex[:8]}")
    try:
        yield aside
        with contextlib.suppress(FileNotFoundError):
            folder.rmdir()
        aside.rename(folder)
    except OSError as error:
        raise DiskFailed(
            f"can't be written: {error.strerror}.", subject=str(out), remedy=REMEDY
        ) from error
    except DiskFailed as error:
        # Its subject is the folder beside, which is gone by now.
        raise DiskFailed(error.message, subject=str(out), remedy=REMEDY) from error
    finally:
        shutil.rmtree(aside, ignore_errors=True)


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
