"""WriterLock: tells a recording that is being written from one whose program died."""

from __future__ import annotations

import contextlib
import os
import sys
from pathlib import Path

from meterlog.recording import layout

if sys.platform == "win32":
    import msvcrt

    def _lock(descriptor: int) -> None:
        msvcrt.locking(descriptor, msvcrt.LK_NBLCK, 1)

else:
    import fcntl

    def _lock(descriptor: int) -> None:
        fcntl.flock(descriptor, fcntl.LOCK_EX | fcntl.LOCK_NB)


class WriterLock:
    """The system's lock on one recording's folder; the system frees it when the program dies.

    A file system without locks (some network shares) is no reason not to record: there the lock
    holds nothing, and :func:`is_being_written` says False.

    Parameters
    ----------
    folder : Path
        The recording's folder.
    """

    def __init__(self, folder: Path) -> None:
        self._path = folder / layout.LOCK
        self._fd = os.open(self._path, os.O_RDWR | os.O_CREAT, 0o644)
        with contextlib.suppress(OSError):
            _lock(self._fd)

    def release(self) -> None:
        """Free the lock and remove its file; never raises."""
        with contextlib.suppress(OSError):
            os.close(self._fd)
        with contextlib.suppress(OSError):
            self._path.unlink(missing_ok=True)


def is_being_written(folder: Path) -> bool:
    """Tell whether a living program is recording into ``folder``."""
    try:
        descriptor = os.open(folder / layout.LOCK, os.O_RDWR)
    except OSError:
        return False
    try:
        _lock(descriptor)
    except OSError:
        return True
    finally:
        os.close(descriptor)
    return False
