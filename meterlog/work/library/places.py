"""Places: where recordings and jobs lie in a folder, and by what it shows that one has changed."""

from __future__ import annotations

import contextlib
import hashlib
import os
from collections.abc import Callable
from dataclasses import dataclass, field
from pathlib import Path

from meterlog.recording import layout
from meterlog.work.amendment_count import count_path, is_there
from meterlog.work.amendments import amendments_path
from meterlog.work.job_folder import CARD, WORK

DEEPEST = 4
"""Levels below a watched folder: jobs lie in a folder of their own, and runs may lie in jobs."""


@dataclass(frozen=True, slots=True)
class Place:
    """A folder that holds a recording or a job.

    Attributes
    ----------
    folder : Path
    job : bool
    signs : str
        Changes whenever name, size, time of change or number (inode) of one of its files does.
    """

    folder: Path
    job: bool
    signs: str


@dataclass(slots=True)
class Walked:
    """What was found in watched folders.

    Attributes
    ----------
    places : list of Place
        Each once.
    unread : dict of Path to str
        Folders that can't be looked into, and why.
    """

    places: list[Place] = field(default_factory=list)
    unread: dict[Path, str] = field(default_factory=dict)


@dataclass(slots=True)
class _Walk:
    going_on: Callable[[], None]
    deepest: int
    walked: Walked = field(default_factory=Walked)
    seen: dict[Path, int] = field(default_factory=dict)
    """How deep a folder was when it was looked into."""
    taken: set[Path] = field(default_factory=set)

    def passes_over(self, folder: Path, depth: int) -> bool:
        """Tell whether a folder was looked into as far as it would be now; note that it is."""
        before = self.seen.get(folder)
        if before is not None and before <= depth:
            return True
        self.seen[folder] = depth
        return False

    def take(self, place: Place) -> None:
        """Take what was found, once."""
        if place.folder not in self.taken:
            self.taken.add(place.folder)
            self.walked.places.append(place)


def walk(roots: tuple[Path, ...], going_on: Callable[[], None], deepest: int = DEEPEST) -> Walked:
    """Look for recordings and jobs.

    Links to folders are not followed, so that no loop is walked; nothing is looked for inside a
    recording or another sealed bag, whose copies are not to be found twice.

    Parameters
    ----------
    roots : tuple of Path
    going_on : callable
        Called at each folder; what it raises ends the walk.
    deepest : int
        Levels below a root that are looked into.
    """
    found = _Walk(going_on, deepest)
    for root in roots:
        _walk(found, root, 0)
    return found.walked


def _walk(under_way: _Walk, folder: Path, depth: int) -> None:
    if under_way.passes_over(folder, depth):
        return
    under_way.going_on()
    walked = under_way.walked
    if not _is_text(folder):
        walked.unread[folder] = "its name is no text: give it another one"
        return
    try:
        with os.scandir(folder) as entries:
            found = {one.name: one for one in entries}
        if layout.PAYLOAD in found and layout.holds_recording(folder):
            under_way.take(Place(folder, job=False, signs=_signs(folder, found)))
            return
        if layout.BAGIT in found:
            return
        if CARD in found:
            files = [_told("", found[name]) for name in (CARD, WORK) if name in found]
            under_way.take(Place(folder, job=True, signs=_digest("".join(files))))
        inside = [
            name
            for name, one in found.items()
            if not name.startswith(".") and one.is_dir(follow_symlinks=False)
        ]
    except OSError as error:
        if depth == 0 or not isinstance(error, FileNotFoundError):
            walked.unread[folder] = _why(error)
        return
    if depth < under_way.deepest:
        for name in sorted(inside):
            _walk(under_way, folder / name, depth + 1)


def _why(error: OSError) -> str:
    if isinstance(error, FileNotFoundError):
        return "it is not there now"
    return error.strerror or type(error).__name__


def _is_text(folder: Path) -> bool:
    try:
        str(folder).encode()
    except UnicodeEncodeError:
        return False
    return True


def _signs(folder: Path, found: dict[str, os.DirEntry[str]]) -> str:
    tags = sorted(name for name, one in found.items() if not one.is_dir(follow_symlinks=False))
    parts = [_told(name, found[name]) for name in tags]
    with os.scandir(folder / layout.PAYLOAD) as entries:
        inside = sorted(entries, key=lambda one: one.name)
    parts += [_told(one.name, one) for one in inside]
    edits = amendments_path(folder)
    parts += [_told(one.name, one) for one in (edits, count_path(edits)) if is_there(one)]
    return _digest("\n".join(parts))


def _told(name: str, file: os.DirEntry[str] | Path) -> str:
    found = _stat(file)
    shown = f" {found.st_size} {found.st_mtime_ns} {found.st_ino}" if found else " gone"
    return f"{name}{shown}"


def _stat(file: os.DirEntry[str] | Path) -> os.stat_result | None:
    """Look at what a name leads to; at the link itself where it leads nowhere.

    None where it went away since it was listed: the folder is there all the same.
    """
    for follow in (True, False):
        with contextlib.suppress(OSError):
            return file.stat(follow_symlinks=follow)
    return None


def _digest(text: str) -> str:
    return hashlib.blake2b(text.encode("utf-8", "surrogateescape"), digest_size=16).hexdigest()
