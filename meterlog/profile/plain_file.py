"""PlainFile: a file that somebody gave, opened only if it is one, and read no further than meant.

A pipe is waited for without end, a device has no end, and a hole of a terabyte costs nobody a
terabyte of disk but whoever reads it a terabyte of memory. None of them is ever evidence.
"""

from __future__ import annotations

import errno
import io
import os
import stat
from pathlib import Path
from typing import BinaryIO, TextIO

MOST_TEXT_BYTES = 64 << 20
"""Of lists, heads and tables of names: a thousand times the longest that was ever made."""
_LONGEST_HOLE = 1 << 30
_FLAGS = (
    os.O_RDONLY
    | getattr(os, "O_BINARY", 0)
    | getattr(os, "O_CLOEXEC", 0)
    | getattr(os, "O_NOCTTY", 0)
    # Else opening a pipe that took the place of the file just looked at would wait.
    | getattr(os, "O_NONBLOCK", 0)
)


def open_plain(path: Path) -> BinaryIO:
    """Open a file to read its bytes.

    Parameters
    ----------
    path : Path
        Links are followed: to what they lead is judged.

    Returns
    -------
    BinaryIO

    Raises
    ------
    OSError
        If it can't be opened, is a pipe, a device or a folder, or holds a hole of more than 1 GiB,
        which nothing that records leaves behind; ``strerror`` says which.
    """
    # Looked at before, too: to open a device can already do something to it.
    _refuse(path.stat(), path)
    descriptor = os.open(path, _FLAGS)
    try:
        found = os.fstat(descriptor)
        _refuse(found, path)
        _refuse_hole(descriptor, found.st_size, path)
        return os.fdopen(descriptor, "rb")
    except BaseException:
        os.close(descriptor)
        raise


def open_plain_text(path: Path, encoding: str) -> TextIO:
    """Open a file likewise to read its text; line ends stay, bytes that are no text are U+FFFD.

    Raises
    ------
    OSError
        As :func:`open_plain`.
    """
    return io.TextIOWrapper(open_plain(path), encoding=encoding, newline="", errors="replace")


def read_plain(path: Path, most: int = MOST_TEXT_BYTES) -> bytes:
    """Read all of a file that has at most ``most`` bytes.

    Raises
    ------
    OSError
        As :func:`open_plain`, and if it is longer.
    """
    with open_plain(path) as stream:
        content = stream.read(most + 1)
    if len(content) > most:
        raise OSError(errno.EFBIG, f"it is longer than {_words(most)}", str(path))
    return content


def _words(count: int) -> str:
    return f"{count >> 20} MiB" if count >= 1 << 20 else f"{count >> 10} KiB"


def _refuse(found: os.stat_result, path: Path) -> None:
    if stat.S_ISDIR(found.st_mode):
        raise IsADirectoryError(errno.EISDIR, "it is a folder, not a file", str(path))
    if not stat.S_ISREG(found.st_mode):
        raise OSError(errno.EINVAL, "it is a pipe or a device, not a file", str(path))


def _refuse_hole(descriptor: int, size: int, path: Path) -> None:
    # Where a file system knows no holes it says that there is one at the end of the file.
    if size <= _LONGEST_HOLE or not hasattr(os, "SEEK_HOLE"):
        return
    at = 0
    while at < size:
        hole = os.lseek(descriptor, at, os.SEEK_HOLE)
        try:
            at = os.lseek(descriptor, hole, os.SEEK_DATA) if hole < size else size
        except OSError:
            at = size  # ENXIO: nothing but hole up to the end
        if at - hole > _LONGEST_HOLE:
            raise OSError(errno.EFBIG, "it holds a hole of more than 1 GiB", str(path))
    os.lseek(descriptor, 0, os.SEEK_SET)
