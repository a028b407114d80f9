"""Disks: where recordings and settings go, and how well the disk there takes what is measured."""

from __future__ import annotations

import os
import statistics
import sys
import tempfile
import time
from collections.abc import Iterator
from pathlib import Path

from meterlog.profile import settings_folder
from meterlog.profile.full_path import full_path
from meterlog.work.doctor.look import Line, State, shown_place
from meterlog.work.run_status import disk_free
from meterlog.work.shelf import recordings_folder

LITTLE_BYTES = 2 << 30
"""About a day of two fast meters."""
TOO_LITTLE_BYTES = 100 << 20
SLOW_S = 0.2
TOO_SLOW_S = 1.0
"""A recorder asks the disk every 0.9 s to keep what it has."""
_TRIES = 5
_NETWORK = frozenset(
    {"nfs", "nfs4", "cifs", "smb3", "smbfs", "fuse.sshfs", "9p", "afpfs", "webdav"}
)
_NO_JOURNAL = frozenset({"vfat", "exfat", "msdos", "ext2"})
_GONE = frozenset({"tmpfs", "ramfs"})
_WHERE = "Choose another place with --out, or in the window."
_SETTINGS = "Until then what is set is forgotten when the program ends."
_PASSING = "Or name another folder in the variable TMPDIR."


def look_at_disks() -> Iterator[Line]:
    """Look at the folders of recordings, settings and things in passing."""
    yield from _folder("recordings", recordings_folder())
    yield from writable("settings", settings_folder(), _SETTINGS)
    yield from writable("in passing", Path(tempfile.gettempdir()), _PASSING)


def _folder(about: str, folder: Path) -> Iterator[Line]:
    there = _existing(folder)
    yield from writable(about, folder)
    free = disk_free(folder)
    words = f"{free / 1e9:.1f} GB free" if free >= 0 else "free space can't be told"
    if 0 <= free < TOO_LITTLE_BYTES:
        yield Line(about, State.BAD, words, f"Free some space. {_WHERE}")
    elif 0 <= free < LITTLE_BYTES:
        yield Line(about, State.LOOK, words, "Free some space before a long recording.")
    else:
        yield Line(about, State.OK, words)
    yield _kind(about, there)
    yield _keeping(about, there)


def _existing(folder: Path) -> Path:
    return next((place for place in (folder, *folder.parents) if place.is_dir()), folder)


def _in_the_way(folder: Path) -> Path | None:
    """Give what lies where the folder, or one around it, would be made; None where nothing does."""
    there = next((one for one in (folder, *folder.parents) if os.path.lexists(one)), None)
    return None if there is None or there.is_dir() else there


def writable(about: str, folder: Path, else_do: str = _WHERE) -> Iterator[Line]:
    """Look whether a folder can be written, or made; gives one line.

    Parameters
    ----------
    about : str
    folder : Path
    else_do : str
        What else can be done where it can't.
    """
    there = _existing(folder)
    shown = shown_place(folder)
    words = shown if folder == there else f"{shown} (not there yet)"
    block = _in_the_way(folder)
    if block is not None:
        what = f"{shown} can't be made: {shown_place(block)} is no folder"
        yield Line(about, State.BAD, what, f"Move it out of the way. {else_do}")
        return
    try:
        with tempfile.NamedTemporaryFile(dir=there, prefix=".meterlog-"):
            pass
    except OSError as error:
        what = f"{words} can't be written: {error.strerror}"
        yield Line(about, State.BAD, what, f"Ask for the right to write there. {else_do}")
    else:
        yield Line(about, State.OK, f"{words}, can be written")


def _keeping(about: str, folder: Path) -> Line:
    """Measure how long the disk takes to keep a page for good."""
    taken = []
    try:
        with tempfile.TemporaryFile(dir=folder, prefix=".meterlog-") as stream:
            for _ in range(_TRIES):
                stream.write(os.urandom(4096))
                stream.flush()
                begun = time.perf_counter()
                os.fsync(stream.fileno())
                taken.append(time.perf_counter() - begun)
    except OSError as error:
        what = f"the disk keeps nothing for good: {error.strerror}"
        return Line(about, State.BAD, what, _WHERE)
    usual, longest = statistics.median(taken), max(taken)
    words = f"fsync of 4 KiB takes {usual * 1e3:.1f} ms, at most {longest * 1e3:.1f} ms"
    words += f" ({_TRIES} measured)"
    if usual > TOO_SLOW_S:
        return Line(about, State.BAD, words, f"It can't keep up with a recording. {_WHERE}")
    if usual > SLOW_S:
        return Line(about, State.LOOK, words, "Record to a faster disk where you can.")
    return Line(about, State.OK, words)


def _kind(about: str, folder: Path) -> Line:
    kind = file_system(folder)
    words = f"file system {kind or 'of unknown kind'}"
    if kind in _NETWORK:
        return Line(about, State.LOOK, f"{words}, over the network", f"It may go away. {_WHERE}")
    if kind in _NO_JOURNAL:
        do = "Where the current may fail, record to a disk with a journal."
        return Line(about, State.LOOK, f"{words}, without a journal", do)
    if kind in _GONE:
        return Line(about, State.BAD, f"{words}: gone when the computer is switched off", _WHERE)
    return Line(about, State.OK, words)


def file_system(folder: Path, mounts: Path = Path("/proc/self/mounts")) -> str:
    """Give the kind of the file system that a folder lies in, as the system calls it.

    Parameters
    ----------
    folder : Path
    mounts : Path
        The list of mounted file systems (proc(5)).

    Returns
    -------
    str
        Empty where it can't be told.
    """
    if sys.platform == "win32":
        return ""
    try:
        lines = mounts.read_text("utf-8", "replace").splitlines()
        full = full_path(folder)
    except OSError:
        return ""
    best, kind = -1, ""
    for line in lines:
        parts = line.split()
        if len(parts) < 3:
            continue
        top = parts[1].encode().decode("unicode_escape", "replace")
        if full.is_relative_to(top) and len(top) >= best:
            best, kind = len(top), parts[2]
    return kind
