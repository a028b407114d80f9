"""Places: which recordings lie in folders of any kind, and by what it shows that one has changed.

A folder is a path or an address that fsspec understands. Only listings, seals and edits are read.
"""

from __future__ import annotations

import hashlib
import json
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from datetime import datetime
from pathlib import Path
from typing import TYPE_CHECKING, Any

from meterlog.model.errors import DiskFailed, RecordingUnreadable, UsageError
from meterlog.model.visible_text import one_line
from meterlog.profile.full_path import full_path
from meterlog.recording import layout
from meterlog.work.amendments import EDITS
from meterlog.work.screening.cards import PartOf, parts_of_jobs
from meterlog.work.screening.listed_below import listed_below
from meterlog.work.screening.small_files import read_small

if TYPE_CHECKING:
    from fsspec import AbstractFileSystem

DEEPEST = 12
"""Levels below a given folder."""

_SLACK_S = 2.0
"""Some disks keep times of change to two seconds."""
_SEALS = (layout.BAGIT, layout.MANIFEST, layout.BAG_INFO)
# What a listing says of a file depends on where it lies; so does by what a change shows.
_TAGS = ("ETag", "etag", "md5Hash", "content_md5", "checksum", "CRC")
_TIMES = ("mtime", "LastModified", "last_modified", "updated", "modified", "created")
"""The first that is there is when a file was changed."""
_Listed = dict[str, Any]


@dataclass(frozen=True, slots=True)
class Place:
    """A folder that holds a recording, or what is left of one.

    Attributes
    ----------
    url : str
        As the table names it; of a local one where it really lies, so that it is found once,
        and with its edits, by whatever link it was given.
    local : bool
        It lies on a disk of this computer, or one mounted there.
    key : str
        Changes with its seal, with any file that is younger, with its edits and with what its
        job's card says of its part. Of an unsealed one: with any file.
    number, serial : str
        Of its part by the job's card; empty where no card says it.
    why : str
        Why it can't even be listed; empty where it could.
    """

    url: str
    local: bool
    key: str
    number: str = ""
    serial: str = ""
    why: str = ""


@dataclass(slots=True)
class _Walk:
    """One given folder being looked through."""

    files: AbstractFileSystem
    local: bool
    going_on: Callable[[], None]
    chained: str
    """What follows the path in an address such as ``zip://inside::file:///archive.zip``."""
    parts: dict[Path, PartOf]


@dataclass(frozen=True, slots=True)
class _Root:
    """One given folder, as it was given and as it is opened."""

    given: str
    files: AbstractFileSystem
    path: str
    sign: tuple[int, int] | None
    """Device and number of a local folder: another one in its place is not the one given."""

    @property
    def local(self) -> bool:
        """It lies on a disk of this computer, or one mounted there."""
        return self.sign is not None


def places_in(folders: Sequence[str], going_on: Callable[[], None]) -> list[Place]:
    """Look for recordings, sorted by where they lie, each once.

    Links to folders are not followed; nothing is looked for inside a recording, another sealed
    bag or a hidden folder.

    Parameters
    ----------
    folders : sequence of str
        Paths, or addresses such as ``memory://shelf``.
    going_on : callable
        Called at each folder; what it raises ends the walk.

    Raises
    ------
    UsageError
        If a folder is not there, lies inside a recording, or nothing can read what kind of address
        it is.
    DiskFailed
        If a folder goes away while it is looked through.
    """
    roots = [_root(folder) for folder in folders]
    # Of all first: the card of a job in one folder may tell of a recording in another.
    local = [Path(root.path) for root in roots if root.local]
    parts = parts_of_jobs(local, going_on, DEEPEST)
    found: dict[str, Place] = {}
    for root in roots:
        chained = root.given.partition("::")[2] if "://" in root.given else ""
        walk = _Walk(root.files, root.local, going_on, chained, parts if root.local else {})
        for place in _walk(walk, root.path, 0):
            found.setdefault(place.url, place)
        _refuse_gone(root)
    return [found[url] for url in sorted(found)]


def _root(folder: str) -> _Root:
    if not folder.strip():
        raise UsageError("is empty.", subject="a FOLDER", remedy="Give the folder's name.")
    files, path = opened(folder)
    _refuse_absent(files, folder, path)
    if not is_local(files):
        return _Root(folder, files, path, None)
    _refuse_inside(folder, Path(path))
    return _Root(folder, files, path, _sign(path))


def _sign(path: str) -> tuple[int, int]:
    found = Path(path).stat()
    return found.st_dev, found.st_ino


def _refuse_inside(folder: str, path: Path) -> None:
    inside = next((one for one in path.parents if layout.holds_recording(one)), None)
    if inside is not None:
        raise UsageError(
            f"lies inside the recording {inside}.", subject=folder, remedy="Give the recording."
        )


def _is_still_there(root: _Root) -> bool:
    if root.sign is None:
        return True
    try:
        device, number = _sign(root.path)
        # Some shares number a folder anew each time; an empty one in its place is another one.
        same = number == root.sign[1] or any(Path(root.path).iterdir())
    except OSError:
        return False
    return same and device == root.sign[0]


def _refuse_gone(root: _Root) -> None:
    """Raise where a folder went away while it was looked through: all in it would be forgotten."""
    if not _is_still_there(root):
        raise DiskFailed(
            "went away while it was looked through.",
            subject=root.given,
            remedy="Connect its disk again and screen once more; the tables are as they were.",
        )


def opened(folder: str) -> tuple[AbstractFileSystem, str]:
    """Give the file system of an address, and the path within it.

    Raises
    ------
    UsageError
        If there is none of this kind, or the package that speaks it is not installed.
    """
    from fsspec.core import url_to_fs
    from fsspec.implementations.local import LocalFileSystem

    if "://" not in folder:
        # Not read as an address: a folder may be called anything.
        return LocalFileSystem(), _whole(folder)
    try:
        files, path = url_to_fs(folder)
    # Each library that speaks with a store raises what it likes.
    except Exception as error:
        raise UsageError(
            f"can't be opened: {error}",
            subject=folder,
            remedy="Give a folder, or an address whose package for fsspec is installed.",
        ) from error
    path = str(path).rstrip("/") or files.root_marker
    return files, _whole(path) if is_local(files) else path


def _whole(path: str) -> str:
    return full_path(Path(path)).as_posix()


def edits_beside(path: str) -> tuple[str, ...]:
    """Give where the edits of a recording lie, and their count; nothing need be there."""
    # Beside the whole of an archive there is nothing.
    return tuple(f"{path}{end}" for end in EDITS) if path.strip("/") else ()


def is_local(files: AbstractFileSystem) -> bool:
    """Tell whether paths of a file system are those of this computer."""
    protocol = files.protocol
    return "file" in ((protocol,) if isinstance(protocol, str) else protocol)


def _refuse_absent(files: AbstractFileSystem, folder: str, path: str) -> None:
    try:
        there = files.isdir(path)
        why = "is no folder, or is not there."
    except Exception as error:  # noqa: BLE001 - as libraries that speak with stores do
        there, why = False, f"can't be looked into: {why_of(error)}."
    if not there:
        raise UsageError(why, subject=folder, remedy="Give a folder that holds recordings.")


def _walk(walk: _Walk, path: str, depth: int) -> Iterator[Place]:
    walk.going_on()
    if not _is_text(path):
        shown = path.encode("utf-8", "backslashreplace").decode()
        why = "its name is no text: give it another one."
        yield Place(_url(walk, shown), walk.local, _digest([shown]), why=why)
        return
    try:
        inside = _listed(walk.files, path)
        payload = _payload(walk, _path(inside[layout.PAYLOAD])) if layout.PAYLOAD in inside else {}
    except FileNotFoundError:
        if walk.local:  # in a store a folder without files may be listed, and not be there
            why = "went away while it was looked through."
            yield Place(_url(walk, path), walk.local, _digest([path, why]), why=why)
        return
    # One folder that nobody thought of must not stop all others.
    except Exception as error:  # noqa: BLE001
        told = isinstance(error, RecordingUnreadable)
        why = str(error) if told else f"can't be looked into: {why_of(error)}."
        yield Place(_url(walk, path), walk.local, _digest([path, why]), why=why)
        return
    if layout.PAYLOAD in inside and _is_recording(inside, payload):
        yield _place(walk, path, inside, payload)
        return
    if layout.BAGIT in inside:
        return
    further = [one for name, one in sorted(inside.items()) if _is_looked_into(name, one)]
    if further and depth >= DEEPEST:
        why = f"folders in it lie more than {DEEPEST} levels deep: give it as a FOLDER of its own."
        yield Place(_url(walk, path), walk.local, _digest([path, why]), why=why)
        return
    for one in further:
        yield from _walk(walk, _path(one), depth + 1)


def _is_looked_into(name: str, one: _Listed) -> bool:
    return one["type"] == "directory" and not one.get("islink", False) and not name.startswith(".")


def _is_text(path: str) -> bool:
    try:
        path.encode()
    except UnicodeEncodeError:
        return False
    return True


def _path(one: _Listed) -> str:
    return str(one["name"]).rstrip("/")


def _listed(files: AbstractFileSystem, path: str) -> dict[str, _Listed]:
    return {
        _path(one).rpartition("/")[2]: one
        for one in files.ls(path, detail=True)
        if _path(one) != path
    }


def _payload(walk: _Walk, path: str) -> dict[str, _Listed]:
    """Give all files of the payload by their names within it."""
    try:
        return listed_below(walk.files, path, local=walk.local)
    except FileNotFoundError:
        return {}


def _is_recording(inside: dict[str, _Listed], payload: dict[str, _Listed]) -> bool:
    heads = {layout.ABOUT.rpartition("/")[2], layout.EVENTS.rpartition("/")[2]}
    left = any("/" not in name and name.endswith(".arrows") for name in payload)
    # A seal alone is another kind of bag, or a recording of which nothing at all is left.
    return bool(heads & payload.keys()) or left or (layout.LOCK in inside)


def _place(
    walk: _Walk, path: str, inside: dict[str, _Listed], payload: dict[str, _Listed]
) -> Place:
    url = _url(walk, path)
    try:
        part = walk.parts.get(full_path(Path(path)), PartOf()) if walk.parts else PartOf()
        key = _key(walk, path, inside, payload)
    except Exception as error:  # noqa: BLE001 - as above
        why = f"can't be read: {why_of(error)}."
        return Place(url, walk.local, _digest([url, why]), why=why)
    key = _digest([key, part.number, part.serial])
    return Place(url, walk.local, key, part.number, part.serial)


def _key(walk: _Walk, path: str, inside: dict[str, _Listed], payload: dict[str, _Listed]) -> str:
    sealed = all(name in inside for name in _SEALS)
    seal = _read(walk, _path(inside[layout.MANIFEST])) if sealed else b""
    since = _changed(inside[layout.MANIFEST]) + _SLACK_S if sealed else -1.0
    told = [_told(f"data/{name}", one, since) for name, one in sorted(payload.items())]
    told += [_told(name, one, since) for name, one in sorted(inside.items()) if _is_tag(one)]
    on_top = [
        [one.removeprefix(path), _read(walk, one).hex()]
        for one in edits_beside(path)
        if walk.files.exists(one)
    ]
    return _digest([seal.hex(), sealed, *on_top, *told])


def _read(walk: _Walk, path: str) -> bytes:
    return read_small(walk.files, path, local=walk.local)


def why_of(error: Exception) -> str:
    """Say in a word or two why something of the system or of a store failed, and of which file."""
    if isinstance(error, RecursionError):  # of a library that goes down with what it is given
        return "folders in it lie deeper than can be gone into"
    if isinstance(error, OSError) and error.strerror:
        file = f"{one_line(error.filename)}: " if error.filename else ""
        return f"{file}{error.strerror}"
    return str(error) or type(error).__name__


def _is_tag(one: _Listed) -> bool:
    return bool(one["type"] != "directory")


def _told(name: str, one: _Listed, since: float) -> list[object]:
    """Tell a file by its size, and what shows a change that the seal does not know of."""
    changed = _changed(one)
    tags = [str(one[tag]) for tag in _TAGS if tag in one]
    return [name, one["size"], changed if changed > since else 0.0, tags]


def _changed(one: _Listed) -> float:
    """Give when a file was changed, in seconds; 0 where a listing says it otherwise or not."""
    found = next((one[name] for name in _TIMES if name in one), 0.0)
    if isinstance(found, datetime):
        return found.timestamp()
    return float(found) if isinstance(found, (int, float)) else 0.0


def _url(walk: _Walk, path: str) -> str:
    if walk.local:
        return path
    url = str(walk.files.unstrip_protocol(path))
    return f"{url}::{walk.chained}" if walk.chained else url


def _digest(told: list[Any]) -> str:
    text = json.dumps(told).encode()
    return hashlib.blake2b(text, digest_size=16).hexdigest()
