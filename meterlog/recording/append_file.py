"""AppendFile: a file that only grows, and that says so when the disk does not take it."""

from __future__ import annotations

import contextlib
import errno
import os
from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING

from meterlog.model.errors import DiskFailed

if TYPE_CHECKING:
    from typing_extensions import Buffer

_SMALL = 1 << 16
"""Up to here one joined write is cheaper than a list of parts."""
_PARTS = 512
"""Parts a gathered write; POSIX promises at least 16, Linux and macOS take 1,024."""
_GATHERS = hasattr(os, "writev")
_BINARY = getattr(os, "O_BINARY", 0)

_NOT_THERE = "is no longer where it was made: its folder was moved away, or its disk was taken out."
REMEDY = "Free some space or choose another disk, then start a new recording."
_NO_PLACE = frozenset(
    {
        errno.EACCES, errno.EPERM, errno.EROFS, errno.ENOTDIR, errno.ENOENT, errno.EEXIST,
        errno.EISDIR, errno.ELOOP, errno.ENAMETOOLONG, errno.EINVAL,
    }
)  # fmt: skip
"""What no space helps against: the folder is none, or is not one to write in."""


def remedy_against(error: OSError) -> str:
    """Say what to do where a file or folder could not be made."""
    if error.errno in _NO_PLACE:
        return "Choose another folder, then start a new recording."
    return REMEDY


class AppendFile:
    """A new file, open for appending only; nothing stays in a buffer of this program.

    Parameters
    ----------
    path : Path
        Must not exist.
    name : str
        How messages call it, such as ``data/bench.arrows``.

    Attributes
    ----------
    written : int, bytes
        What the system has taken.
    failed : str
        Why the file takes nothing more; empty when well.

    Raises
    ------
    DiskFailed
        If the file can't be made.
    """

    def __init__(self, path: Path, name: str) -> None:
        self.path = path
        self.name = name
        self.written = 0
        self.failed = ""
        self._dirty = False
        flags = os.O_WRONLY | os.O_CREAT | os.O_EXCL | os.O_APPEND | _BINARY
        try:
            self._fd = os.open(path, flags, 0o644)
        except OSError as error:
            raise DiskFailed(
                f"can't be made: {error.strerror}.",
                subject=str(path),
                remedy=remedy_against(error),
            ) from error

    @property
    def is_dirty(self) -> bool:
        """True while the system has taken what the disk itself may not have."""
        return self._dirty

    def append(self, parts: Sequence[Buffer]) -> None:
        """Hand ``parts`` to the system, all of them.

        A write that the system cuts short is carried on; if the rest is refused, what stands in
        the file ends in a torn piece and the file takes nothing more: a good piece behind a torn
        one could not be found again.

        Raises
        ------
        DiskFailed
            If the system takes only a part, or if the file failed before.
        """
        if self.failed:
            raise DiskFailed(self.failed, subject=str(self.path), remedy=REMEDY)
        views = [memoryview(part).cast("B") for part in parts]
        if sum(len(view) for view in views) < _SMALL or not _GATHERS:
            views = [memoryview(b"".join(views))]
        views = [view for view in views if len(view)]
        self._dirty = True
        while views:
            views = self._write_some(views)

    def _write_some(self, views: list[memoryview]) -> list[memoryview]:
        try:
            taken = (
                os.writev(self._fd, views[:_PARTS]) if _GATHERS else os.write(self._fd, views[0])
            )
        except OSError as error:
            raise self._fail(f"could not be written: {error.strerror}.") from error
        if taken == 0:
            raise self._fail("could not be written: the system took nothing.")
        self.written += taken
        while views and taken >= len(views[0]):
            taken -= len(views.pop(0))
        if taken:
            views[0] = views[0][taken:]
        return views

    def _fail(self, reason: str) -> DiskFailed:
        self.failed = f"{reason} {self.written} bytes stand in it."
        return DiskFailed(self.failed, subject=str(self.path), remedy=REMEDY)

    def sync(self) -> None:
        """Make the disk keep what was appended; does nothing when all is kept already.

        Raises
        ------
        DiskFailed
            If the disk refuses, or if the file has been removed from under the program or is no
            longer found where it was made.
        """
        if not self._dirty:
            return
        self._dirty = False
        had_failed = self.failed
        try:
            sync_descriptor(self._fd)
            gone = self._gone()
        except OSError as error:
            failure = self._fail(f"could not be kept on the disk: {error.strerror}.")
            raise failure from error
        if gone and not had_failed:
            raise self._fail(gone)

    def _gone(self) -> str:
        """Say that the open file is not the one at its path any more; empty when it is.

        A disk that is taken out may go on taking bytes for as long as somebody holds a file of it
        open, and none of them can be found afterwards.
        """
        here = os.fstat(self._fd)
        if here.st_nlink == 0:
            return "was removed while it was being written."
        try:
            there = self.path.stat()
        except OSError:
            return _NOT_THERE
        return "" if os.path.samestat(here, there) else _NOT_THERE

    def close(self) -> None:
        """Close the file; never raises. Call :meth:`sync` first."""
        with contextlib.suppress(OSError):
            os.close(self._fd)
        self.failed = self.failed or "is closed."


def sync_descriptor(descriptor: int) -> None:
    """Ask the system to put a file's bytes on the disk itself.

    Source
    ------
    macOS keeps the bytes in the drive's cache after ``fsync``; fcntl(2) there names
    ``F_FULLFSYNC`` for data that must survive a power cut.
    """
    try:
        import fcntl

        full = getattr(fcntl, "F_FULLFSYNC", None)
        if full is not None:
            fcntl.fcntl(descriptor, full)
            return
    except (ImportError, OSError):
        pass
    os.fsync(descriptor)


def sync_file(path: Path) -> None:
    """Put the bytes of a file that nobody is writing any more on the disk itself.

    Raises
    ------
    OSError
    """
    # Windows flushes only what is open for writing; elsewhere a file need not be writable.
    descriptor = os.open(path, (os.O_RDWR if os.name == "nt" else os.O_RDONLY) | _BINARY)
    try:
        sync_descriptor(descriptor)
    finally:
        os.close(descriptor)


def sync_folder(folder: Path) -> None:
    """Put a folder's list of names on the disk; does nothing where a system has no such call."""
    if os.name == "nt":
        return
    descriptor = os.open(folder, os.O_RDONLY)
    try:
        os.fsync(descriptor)
    finally:
        os.close(descriptor)


def write_aside(path: Path, content: bytes) -> None:
    """Put ``content`` into ``path`` at once: after a crash there is all of it or nothing.

    Raises
    ------
    OSError
        If the disk does not take it; the caller knows what was being done.
    """
    aside = path.with_name(path.name + ".partial")
    try:
        # What a program left that died here; a link that somebody put there is not followed.
        aside.unlink(missing_ok=True)
        with aside.open("xb") as stream:
            stream.write(content)
            stream.flush()
            sync_descriptor(stream.fileno())
        aside.replace(path)
    except OSError:
        with contextlib.suppress(OSError):
            aside.unlink(missing_ok=True)
        raise
    sync_folder(path.parent)
