"""WriterLock: tells a recording that is being written from one whose program died."""

from __future__ import annotations

from pathlib import Path

from meterlog.recording import layout
from meterlog.recording.system_lock import free_lock, is_held, new_lock

_PATIENCE_S = 1.0
"""For those that just look: they hold it for microseconds."""


class WriterLock:
    """The system's lock on one recording's folder; the system frees it when the program dies.

    A file system without locks (some network shares) is no reason not to record: there the lock
    holds nothing, and :func:`is_being_written` says False.

    Parameters
    ----------
    folder : Path
        The recording's folder, without a lock.

    Raises
    ------
    OSError
        If the lock's file can't be made.
    """

    def __init__(self, folder: Path) -> None:
        self._path = folder / layout.LOCK
        self._fd = new_lock(self._path, _PATIENCE_S)
        self._held = True

    def release(self) -> None:
        """Free the lock and remove its file; never raises. Again: does nothing."""
        if self._held:
            self._held = False
            free_lock(self._path, self._fd)


def is_being_written(folder: Path) -> bool:
    """Tell whether a living program is recording into ``folder``, or sealing it.

    True as well where another user's lock is there and may not be looked at.
    """
    return is_held(folder / layout.LOCK)
