"""One program at a time: a lock beside a file that is read, changed and written again."""

from __future__ import annotations

import contextlib
import errno
import os
import sys
import time
from collections.abc import Iterator
from contextlib import contextmanager
from contextvars import ContextVar
from pathlib import Path

from meterlog.model.errors import DiskFailed

if sys.platform == "win32":
    import msvcrt

    def _lock(descriptor: int) -> None:
        msvcrt.locking(descriptor, msvcrt.LK_NBLCK, 1)

else:
    import fcntl

    def _lock(descriptor: int) -> None:
        fcntl.flock(descriptor, fcntl.LOCK_EX | fcntl.LOCK_NB)


PATIENCE_S: ContextVar[float] = ContextVar("PATIENCE_S", default=10.0)
"""How long to wait for another program, in seconds. A thread that may not be held up sets less."""

_HELD = {errno.EACCES, errno.EAGAIN, errno.EDEADLK}
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
        If another program holds it for longer.
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
        with contextlib.suppress(OSError):
            beside.unlink()  # before it is free: else it may be another's by now
        os.close(descriptor)


def _taken(beside: Path) -> int | None:
    """Try once to take the lock; give its descriptor, or None where another holds it."""
    descriptor = os.open(beside, os.O_RDWR | os.O_CREAT, 0o600)
    try:
        _lock(descriptor)
    except OSError as error:
        if error.errno in _HELD:
            os.close(descriptor)
            return None
    if _is_there(beside, descriptor):
        return descriptor
    os.close(descriptor)  # who held it has removed its name: it is no one's lock any more
    return None


def _is_there(path: Path, descriptor: int) -> bool:
    try:
        return os.path.samestat(path.stat(), os.fstat(descriptor))
    except OSError:
        return False
