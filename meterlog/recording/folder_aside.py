"""FolderAside: a folder made beside its place and put there at once, whole or not at all."""

from __future__ import annotations

import contextlib
import re
import shutil
import tempfile
from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from pathlib import Path

from meterlog.recording import layout
from meterlog.recording.append_file import sync_file, sync_folder
from meterlog.recording.layout import LOCK
from meterlog.recording.writer_lock import WriterLock, is_being_written

_OURS = re.compile(r"[a-z0-9_]{8}")
"""What :func:`tempfile.mkdtemp` puts behind the name."""


@contextmanager
def folder_aside(out: Path) -> Iterator[Path]:
    """Give a hidden folder beside ``out`` to work in; it is removed at the end, whatever happens.

    Those that programs left which died at the same work are removed first.

    Parameters
    ----------
    out : Path
        Its parents are made.

    Yields
    ------
    Path
        Empty but for its lock.

    Raises
    ------
    OSError
        If it can't be made.
    """
    out.parent.mkdir(parents=True, exist_ok=True)
    prefix = f".{out.name}-"
    for left in out.parent.glob(f"{_literal(prefix)}*"):
        if _OURS.fullmatch(left.name.removeprefix(prefix)) and _is_left(left):
            shutil.rmtree(left, ignore_errors=True)
    work = Path(tempfile.mkdtemp(prefix=prefix, dir=out.parent))
    try:
        lock = WriterLock(work)
        try:
            yield work
        finally:
            # The lock goes last: what has no lock and holds something is nobody's to remove.
            for one in work.iterdir():
                if one.name != LOCK:
                    _remove(one)
            lock.release()
    finally:
        shutil.rmtree(work, ignore_errors=True)


def _is_left(place: Path) -> bool:
    """Tell whether a program died that worked in a folder: before, while or after it did.

    A recording that was cut off has such a lock too, whatever it is called: it is never one.
    """
    try:
        begun = {path.name for path in place.iterdir()}
        if layout.has_held_recording(place):
            return False
    except OSError:
        return False
    return not begun or (LOCK in begun and not is_being_written(place))


def _remove(path: Path) -> None:
    if path.is_dir() and not path.is_symlink():
        shutil.rmtree(path, ignore_errors=True)
    else:
        with contextlib.suppress(OSError):
            path.unlink()


def put_in_place(files: Sequence[Path], out: Path) -> None:
    """Make ``out`` a folder that holds ``files``, in one step: no program ever finds some of them.

    Parameters
    ----------
    files : sequence of Path
        Moved. Of one folder on the disk of ``out``.
    out : Path
        Absent or empty.

    Raises
    ------
    OSError
        If a file can't be kept, or ``out`` holds something.
    """
    whole = files[0].with_name("whole")
    whole.mkdir()
    for file in files:
        sync_file(file)
        file.replace(whole / file.name)
    sync_folder(whole)
    put_folder_in_place(whole, out)


def put_folder_in_place(whole: Path, out: Path) -> None:
    """Make the folder ``whole``, which is on the disk itself, ``out`` in one step.

    Parameters
    ----------
    whole : Path
        Of the same disk as ``out``.
    out : Path
        Absent or empty.

    Raises
    ------
    OSError
        If ``out`` holds something, or can't be made.
    """
    if out.is_dir():
        out.rmdir()  # empty: not every system lets a folder take its place
    whole.replace(out)
    sync_folder(out.parent)


def _literal(name: str) -> str:
    """Give a pattern that a name alone fits."""
    return "".join(f"[{one}]" if one in "*?[" else one for one in name)
