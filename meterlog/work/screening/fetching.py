"""Fetching: a recording on a disk of this computer, for as long as it is being reviewed."""

from __future__ import annotations

import contextlib
import errno
import secrets
import shutil
import tempfile
from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from pathlib import Path
from typing import TYPE_CHECKING, Any

from meterlog.evidence.zip_safety import LIMITS
from meterlog.model.errors import DiskFailed, RecordingUnreadable
from meterlog.recording import layout
from meterlog.recording.bag import stays_inside
from meterlog.work.file_lock import alone_with
from meterlog.work.screening.listed_below import listed_below
from meterlog.work.screening.places import Place, edits_beside, opened, why_of
from meterlog.work.screening.small_files import read_small, refuse_odd

if TYPE_CHECKING:
    from fsspec import AbstractFileSystem

_NAME = "meterlog-screen-"
_PIECE = 1 << 20
_Listed = Mapping[str, Any]


class FetchFailed(RecordingUnreadable):
    """A recording could not be brought here; it may well be another time."""


@contextmanager
def at_hand(place: Place) -> Iterator[Path]:
    """Give the folder of a recording; one that lies elsewhere is fetched, and removed afterwards.

    What a program left here that was killed meanwhile is removed, too.

    Raises
    ------
    FetchFailed
        If it can't be fetched, or goes away while it is at hand.
    RecordingUnreadable
        If it names a file outside itself, or is packed as nothing that was measured is.
    """
    if place.local:
        _refuse_gone(place)
        try:
            yield Path(place.url)
        finally:
            # Whatever was found wrong with what went away meanwhile says nothing of it.
            _refuse_gone(place)
        return
    here = Path(tempfile.gettempdir())
    _sweep(here)
    made = here / f"{_NAME}{secrets.token_hex(6)}"
    # Held before it is there: whoever sweeps takes what nobody holds.
    with contextlib.ExitStack() as held:
        with _told_where(place):
            held.enter_context(alone_with(made))
            made.mkdir(mode=0o700)
            held.callback(shutil.rmtree, made, ignore_errors=True)
            _fetch(place, made / "recording")
        yield made / "recording"


def _sweep(here: Path) -> None:
    """Remove what lies here of programs that have ended, as far as this user may."""
    names = {one.name for one in here.glob(f"{_NAME}*")}
    names |= {one.name[1:].removesuffix(".lock") for one in here.glob(f".{_NAME}*.lock")}
    for name in names:
        # Suppressed: it is another program's that is at work, or another user's.
        with contextlib.suppress(OSError, DiskFailed), alone_with(here / name, 0.0):
            shutil.rmtree(here / name, ignore_errors=True)


@contextmanager
def _told_where(place: Place) -> Iterator[None]:
    try:
        yield
    except RecordingUnreadable:
        raise
    # Each library that speaks with a store raises what it likes.
    except Exception as error:
        raise FetchFailed(
            f"can't be fetched: {why_of(error)}.",
            subject=place.url,
            remedy="Check the connection, your rights there and the room in "
            f"{tempfile.gettempdir()}, and screen once more.",
        ) from error


def _fetch(place: Place, folder: Path) -> None:
    files, path = opened(place.url)
    found = listed_below(files, path, local=False)
    _refuse_unpacking(found, place)
    _refuse_no_room(found, folder.parent)
    for inside, one in found.items():
        name = str(one["name"])
        if not stays_inside(inside):
            raise RecordingUnreadable(
                f"names a file outside itself: {inside}.",
                subject=place.url,
                remedy="Look at the recording where it lies before it is copied.",
            )
        refuse_odd(str(one.get("type", "file")), name)
        target = folder / inside
        target.parent.mkdir(parents=True, exist_ok=True)
        _bring(files, name, _size(one), target)
    for there in edits_beside(path):
        if files.exists(there):
            beside = folder.with_name(f"{folder.name}{there.removeprefix(path)}")
            beside.write_bytes(read_small(files, there, local=False))
    if not (folder / layout.PAYLOAD).is_dir():
        raise _gone(place)


def _refuse_gone(place: Place) -> None:
    if not (Path(place.url) / layout.PAYLOAD).is_dir():
        raise _gone(place)


def _gone(place: Place) -> FetchFailed:
    return FetchFailed(
        "is not there any more, or not to be seen from where it is reviewed.",
        subject=place.url,
        remedy="Connect its disk, at the workers of a cluster under the same name, and screen once"
        " more.",
    )


def _size(one: _Listed) -> int | None:
    size = one.get("size")
    return size if isinstance(size, int) else None


def _refuse_unpacking(found: Mapping[str, _Listed], place: Place) -> None:
    """Refuse what is packed so tightly that it can be no readings, but fills a disk."""
    packed = [one for one in found.values() if isinstance(one.get("compress_size"), int)]
    whole = sum(_size(one) or 0 for one in packed)
    if whole > max(LIMITS.spared, LIMITS.ratio * sum(one["compress_size"] for one in packed)):
        raise RecordingUnreadable(
            f"would unpack to {whole:,} bytes, more than {LIMITS.ratio:g} times what is packed.",
            subject=place.url,
            remedy="No recording packs so well. Ask its maker for it again; don't unpack it.",
        )


def _refuse_no_room(found: Mapping[str, _Listed], here: Path) -> None:
    whole = sum(_size(one) or 0 for one in found.values())
    free = shutil.disk_usage(here).free
    if whole > free:
        why = f"it has {whole:,} bytes, and {free:,} are free"
        raise OSError(errno.ENOSPC, why, str(here))


def _bring(files: AbstractFileSystem, name: str, size: int | None, target: Path) -> None:
    """Copy a file here, and no more of it than its listing says."""
    done = 0
    with files.open(name, "rb") as source, target.open("xb") as stream:
        while piece := source.read(_PIECE):
            done += len(piece)
            if size is not None and done > size:
                raise OSError(errno.EFBIG, "it is longer than its listing says", name)
            stream.write(piece)
