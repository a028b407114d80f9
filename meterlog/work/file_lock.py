"""One program at a time: a lock beside a file that is read, changed and written again."""

from __future__ import annotations

import os
import time
from collections.abc import Iterator
from contextlib import contextmanager
from contextvars import ContextVar
from pathlib import Path

from meterlog.model.errors import DiskFailed
from meterlog.recording.system_lock import NO_LOCK, free_lock, take_lock

PATIENCE_S: ContextVar[float] = ContextVar("PATIENCE_S", default=10.0)
"""How long to wait for another program, in seconds. A thread that may not be held up sets less."""

_PAUSE_S = 0.01


@contextmanager
def alone_with(path: Path, seconds: float | None = None) -> Iterator[None]:
    """Hold the system's lock on ``path`` while a block runs; freed also when the program dies.

    A file system without locks (some network shares) is no reason to refuse: there it holds
    nothing.

    Parameters
    ----------
    path : Path
        Its folder must be there; the file need not.
    seconds : float or None, seconds
        To wait for another program; None: as long as this thread has patience.

    Raises
    ------
    DiskFailed
        If another program holds it for longer, or what is there in the lock's place can't be one:
        another user's that may not be opened, a link, a device.
    OSError
        If nothing can be written in the folder.
    """
    beside = path.with_name(f".{path.name}.lock")
    end = time.monotonic() + (PATIENCE_S.get() if seconds is None else seconds)
    while (descriptor := _taken(beside)) is None:
        if time.monotonic() > end:
            raise DiskFailed(
                "is being changed by another program.",
                subject=str(path),
                remedy="Close it there, or try again.",
            )
        time.sleep(_PAUSE_S)
    try:
        yield
    finally:
        free_lock(beside, descriptor)


def _taken(beside: Path) -> int | None:
    """Try once to take the lock; give its descriptor, or None where another holds it."""
    try:
        return take_lock(beside)
    except OSError as error:
        # A name that is free could not be made: that says the folder, not the lock.
        if error.errno not in NO_LOCK or not os.path.lexists(beside):
            raise
        raise DiskFailed(
            f"can't be used as a lock: {error.strerror}.",
            subject=str(beside),
            remedy="It keeps two programs from changing the same file at once. If no program, of "
            "another user perhaps, is at work there, take it away and try again.",
        ) from error
