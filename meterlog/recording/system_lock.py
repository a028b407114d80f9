"""SystemLock: the system's lock on one file, which it frees when the program dies.

A lock file may lie in a folder that others write in, or that a stranger made: what is a link, a
pipe or a device is no lock, and is never opened. Who only looks holds it for a moment together
with all others who look, and needs no right to write.
"""

from __future__ import annotations

import contextlib
import errno
import os
import stat
import sys
import time
from pathlib import Path

if sys.platform == "win32":
    import msvcrt

    def _hold(descriptor: int) -> None:
        msvcrt.locking(descriptor, msvcrt.LK_NBLCK, 1)

    def _look(descriptor: int) -> None:
        # The only kind of lock there is: two who look at once are in each other's way.
        for _ in range(_LOOKS):
            with contextlib.suppress(OSError):
                return _hold(descriptor)
            time.sleep(_PAUSE_S)
        return _hold(descriptor)

else:
    import fcntl

    def _hold(descriptor: int) -> None:
        fcntl.flock(descriptor, fcntl.LOCK_EX | fcntl.LOCK_NB)

    def _look(descriptor: int) -> None:
        fcntl.flock(descriptor, fcntl.LOCK_SH | fcntl.LOCK_NB)


_HELD = {errno.EACCES, errno.EAGAIN, errno.EDEADLK}
"""How systems say that another holds it; all else means that there are no locks here."""
NO_LOCK = {errno.EACCES, errno.EPERM, errno.ELOOP, errno.EISDIR, errno.EINVAL}
"""How a file is told that is there and can't be a lock: another user's, a link, a device."""
_SAFE = (
    getattr(os, "O_NOFOLLOW", 0)
    | getattr(os, "O_NONBLOCK", 0)
    | getattr(os, "O_NOCTTY", 0)
    | getattr(os, "O_CLOEXEC", 0)
    | getattr(os, "O_NOINHERIT", 0)
)
_LOOKS = 20
_PAUSE_S = 0.001


def new_lock(path: Path, seconds: float) -> int:
    """Make a lock file and hold it, where the file system has locks.

    Parameters
    ----------
    path : Path
        Must not exist.
    seconds : float, seconds
        How long one that looks may be in the way.

    Returns
    -------
    int
        To be given to :func:`free_lock`.

    Raises
    ------
    OSError
        If it can't be made.
    """
    # No other user may hold it before this program does; then all may look.
    descriptor = os.open(path, os.O_RDWR | os.O_CREAT | os.O_EXCL | _SAFE, 0o600)
    end = time.monotonic() + seconds
    while not _taken(descriptor) and time.monotonic() < end:
        time.sleep(_PAUSE_S)
    with contextlib.suppress(OSError, AttributeError):  # not every system has such rights
        os.fchmod(descriptor, 0o644)
    return descriptor


def take_lock(path: Path, mode: int = 0o600) -> int | None:
    """Try once to hold a lock, whose file is made where it is not there.

    Parameters
    ----------
    path : Path
    mode : int
        The rights of a file that is made.

    Returns
    -------
    int or None
        To be given to :func:`free_lock`; None where another program holds it. Where the file system
        has no locks it holds nothing.

    Raises
    ------
    OSError
        If it can't be opened or made, or is a link, a folder, a pipe or a device.
    """
    descriptor = _opened(path, mode)
    if not _taken(descriptor):
        os.close(descriptor)
        return None
    if _is_at(path, descriptor):
        return descriptor
    os.close(descriptor)  # who held it has removed its name: it is no one's lock any more
    return None


def free_lock(path: Path, descriptor: int) -> None:
    """Let go of a lock and remove its file, if it is still the one at its path; never raises."""
    if _is_at(path, descriptor):
        with contextlib.suppress(OSError):
            path.unlink()  # before it is free: else it may be another's by now
    with contextlib.suppress(OSError):
        os.close(descriptor)
    if os.name == "nt":  # where no open file can be removed, not another's lock either
        with contextlib.suppress(OSError):
            path.unlink()


def is_held(path: Path) -> bool:
    """Tell whether a program holds a lock, without being in the way of any who look too.

    A lock that is there and may not be looked at counts as held: another user's program may be at
    work. What is a link, a folder, a pipe or a device is no lock.
    """
    try:
        _refuse_odd(path)
        descriptor = os.open(path, os.O_RDONLY | _SAFE)
    except PermissionError:
        return os.path.lexists(path)
    except OSError:
        return False
    try:
        _look(descriptor)
    except OSError as error:
        return error.errno in _HELD
    finally:
        os.close(descriptor)
    return False


def _taken(descriptor: int) -> bool:
    try:
        _hold(descriptor)
    except OSError as error:
        return error.errno not in _HELD
    return True


def _opened(path: Path, mode: int) -> int:
    with contextlib.suppress(FileNotFoundError):
        _refuse_odd(path)
    try:
        descriptor = os.open(path, os.O_RDWR | os.O_CREAT | _SAFE, mode)
    except PermissionError as error:
        try:  # another user's, which to read is enough to hold
            descriptor = os.open(path, os.O_RDONLY | _SAFE)
        except FileNotFoundError:
            raise error from None
    try:
        _refuse(os.fstat(descriptor), path)
    except BaseException:
        os.close(descriptor)
        raise
    return descriptor


def _refuse_odd(path: Path) -> None:
    # Looked at before, too: to open a device can already do something to it.
    _refuse(path.lstat(), path)


def _refuse(found: os.stat_result, path: Path) -> None:
    if stat.S_ISLNK(found.st_mode):
        raise OSError(errno.ELOOP, "it is a link, not a file", str(path))
    if stat.S_ISDIR(found.st_mode):
        raise IsADirectoryError(errno.EISDIR, "it is a folder, not a file", str(path))
    if not stat.S_ISREG(found.st_mode):
        raise OSError(errno.EINVAL, "it is a pipe or a device, not a file", str(path))


def _is_at(path: Path, descriptor: int) -> bool:
    try:
        return os.path.samestat(path.lstat(), os.fstat(descriptor))
    except OSError:
        return False
