"""FullPath: where a path leads, told of any path that a file may hold or a person may type."""

from __future__ import annotations

import os
from pathlib import Path


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


def typed_path(text: str) -> Path:
    """Give the path that somebody typed: ``~`` in front is the user's own folder.

    Where there is no such user it stays as it stands. ``Path.expanduser`` raises ``RuntimeError``.
    """
    return Path(os.path.expanduser(text))  # noqa: PTH111 - see above
