"""FilesBelow: all that lies in a folder that somebody gave, and a limit to how deep it may lie.

Folders in folders cost nobody anything to make. A walk that goes down with them, of this program or
of a library, ends at the interpreter's own depth, with words that say nothing of any folder.
"""

from __future__ import annotations

import os
from collections.abc import Iterator, Sequence
from pathlib import Path

from meterlog.model.errors import RecordingUnreadable

DEEPEST = 32
"""Levels of folders below a given one; chosen: what is recorded or packed has three."""
_NAMED = 3


def files_below(folder: Path) -> Iterator[Path]:
    """Give everything below ``folder`` that is no folder, in any order.

    Links are given, whatever they lead to, and never followed.

    Raises
    ------
    RecordingUnreadable
        If folders lie more than :data:`DEEPEST` levels below it.
    OSError
        If one can't be looked into, or is not there.
    """
    return (Path(one.path) for one in entries_below(folder))


def entries_below(folder: Path) -> Iterator[os.DirEntry[str]]:
    """Give the same as the system lists it. Errors are those of :func:`files_below`."""
    waiting = [(folder, 0)]
    while waiting:
        place, depth = waiting.pop()
        with os.scandir(place) as entries:
            found = list(entries)
        for one in found:
            if not one.is_dir(follow_symlinks=False):
                yield one
            elif depth < DEEPEST:
                waiting.append((Path(one.path), depth + 1))
            else:
                raise too_deep(str(folder), place.relative_to(folder).parts)


def too_deep(folder: str, names: Sequence[str]) -> RecordingUnreadable:
    """Give the error for a folder below which folders lie too deep.

    Parameters
    ----------
    folder : str
        As it was given.
    names : sequence of str
        Of the folders that lead down from it; the first are named, which shows where it begins.
    """
    return RecordingUnreadable(
        f"folders in it lie more than {DEEPEST} levels deep.",
        subject="/".join((folder, *names[:_NAMED])),
        remedy="Nothing that meterlog records or packs lies so deep: look what was put there, and "
        "take it out.",
    )
