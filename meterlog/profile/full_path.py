"""FullPath: where a path leads, told of any path that a file may hold or a person may type."""

from __future__ import annotations

import os
from pathlib import Path

from meterlog.model.errors import UsageError


def full_path(path: Path) -> Path:
    """Give a path from the root, with all links in it followed.

    What is not there, can't be looked into or is a link that leads to itself stays as it stands:
    whoever opens it gets the system's own OSError. ``Path.resolve`` raises ``RuntimeError`` at such
    a link up to Python 3.12, which nothing that deals with files expects.

    Raises
    ------
    ValueError
        If it is no path at all: it holds a zero byte.
    OSError
        If it is relative and the folder one is in has gone.
    """
    return Path(os.path.realpath(path))


def rooted(path: Path) -> Path:
    """Give a path from the root, its links as they stand.

    A relative one means another place, or none, once the folder one is in has been removed or its
    disk taken out: with the disk the file at its end seems to be there still.

    Raises
    ------
    UsageError
        If it is relative and the folder one is in has gone already.
    """
    try:
        return path.absolute()
    except OSError as error:
        raise UsageError(
            "the folder you are in is gone: it was removed, or its disk was taken out.",
            subject=str(path),
            remedy="Go to another folder (cd), or give whole paths, and run it again.",
        ) from error


def typed_path(text: str) -> Path:
    """Give the path that somebody typed: ``~`` in front is the user's own folder.

    Where there is no such user it stays as it stands. ``Path.expanduser`` raises ``RuntimeError``.
    """
    return Path(os.path.expanduser(text))  # noqa: PTH111 - see above
