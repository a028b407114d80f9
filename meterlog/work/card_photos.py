"""CardPhotos: the picture files that a job card names, all of them in the card's own folder.

A card may be a stranger's, and what it names goes into a pack that is sent away. So no name on a
card leads out of its folder: a picture from elsewhere is copied there when a person adds it.
"""

from __future__ import annotations

import contextlib
import filecmp
import shutil
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import BinaryIO

from meterlog.model.errors import DiskFailed, UsageError
from meterlog.model.job_card import JobCard
from meterlog.profile.full_path import full_path
from meterlog.profile.plain_file import open_plain
from meterlog.recording.given_folder import outside_recordings

FOLDER = "photos"
OUTSIDE = "it lies outside the job card's folder"
_SHOWN = 200


@contextmanager
def taking_photos(card: Path) -> Iterator[Callable[[Path], str]]:
    """Give :func:`taken_photo` for one card; copies go again if what they were made for fails.

    Parameters
    ----------
    card : Path
        The card's file; need not exist. Written within this, so that no copy stays behind that
        no card names.

    Yields
    ------
    callable
        Takes a picture file, gives its name for the card.
    """
    made: list[Path] = []
    try:
        yield lambda photo: taken_photo(photo, card, made)
    except BaseException:
        for one in reversed(made):
            with contextlib.suppress(OSError):
                one.rmdir() if one.is_dir() else one.unlink()
        raise


def taken_photo(photo: Path, card: Path, made: list[Path] | None = None) -> str:
    """Give a photo's name for a card; one that lies elsewhere is copied beside the card.

    Parameters
    ----------
    photo : Path
        A picture file.
    card : Path
        The card's file; need not exist.
    made : list of Path or None
        What is made is added to it: the folder beside the card, and the copy.

    Returns
    -------
    str
        From the card's folder, with forward slashes.

    Raises
    ------
    UsageError
        If the folder beside the card lies in a recording or a sealed pack, or the name is none
        that a card can hold.
    DiskFailed
        If it can't be copied.
    """
    full, place = full_path(photo), full_path(card).parent
    if len(full.name.splitlines()) > 1:
        raise UsageError(
            "its name has more than one line, and a card names one photo in each.",
            subject=f"--photo {photo}",
            remedy="Give the picture another name; nothing was changed on the card.",
        )
    if full.is_relative_to(place):
        return full.relative_to(place).as_posix()
    outside_recordings(place / FOLDER)  # which may be a link
    try:
        copy = _copied(full, place / FOLDER, [] if made is None else made)
    except OSError as error:
        raise DiskFailed(
            f"can't be copied into {place / FOLDER}: {error.strerror}.",
            subject=f"--photo {photo}",
            remedy="Check that you may read the one and write to the other, and that there is"
            " room.",
        ) from error
    return copy.relative_to(place).as_posix()


def _copied(photo: Path, folder: Path, made: list[Path]) -> Path:
    """Copy a file under its own name, or the next that is free; not twice where it is there."""
    with open_plain(photo) as source:
        if not folder.is_dir():
            folder.mkdir(parents=True)
            made.append(folder)
        for target in _names(folder, photo):
            try:
                stream = target.open("xb")
            except FileExistsError:
                if target.is_file() and filecmp.cmp(photo, target, shallow=False):
                    return target
                continue
            _fill(source, stream, target)
            made.append(target)
            return target
    raise AssertionError("names never end")


def _names(folder: Path, photo: Path) -> Iterator[Path]:
    yield folder / photo.name
    number = 2
    while True:
        yield folder / f"{photo.stem}-{number}{photo.suffix}"
        number += 1


def _fill(source: BinaryIO, stream: BinaryIO, target: Path) -> None:
    try:
        with stream:
            shutil.copyfileobj(source, stream)
    except BaseException:
        with contextlib.suppress(OSError):
            target.unlink(missing_ok=True)
        raise


def is_outside(name: str, place: Path) -> bool:
    """Tell whether a photo's name leads out of the card's folder, by itself or through a link.

    Raises
    ------
    ValueError
        If it is no name at all: it holds a zero byte.
    """
    return not full_path(place / name).is_relative_to(full_path(place))


def photo_words(card: JobCard, path: Path) -> tuple[str, ...]:
    """Say which photos of the card at ``path`` are not there, or lie where none is taken from."""
    place = full_path(path).parent
    said = []
    for name in card.photos:
        if not _is_file(place / name):
            said.append(f"The photo {_shortened(name)} is not there.")
        elif is_outside(name, place):
            said.append(
                f"The photo {_shortened(name)} lies outside the card's folder and goes into no"
                " pack. Add it again: that copies it there."
            )
    return tuple(said)


def _is_file(path: Path) -> bool:
    try:
        return path.is_file()
    except (OSError, ValueError):  # a name that no file can have
        return False


def _shortened(name: str) -> str:
    """Give a name as it can be shown, its end cut off where it is very long."""
    return name if len(name) <= _SHOWN else f"{name[:_SHOWN]}…"
