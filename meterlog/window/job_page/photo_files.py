"""PhotoFiles: pictures copied into the job's folder, and small ones to look at. No widgets."""

from __future__ import annotations

import contextlib
import hashlib
import shutil
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from pathlib import Path

from PySide6.QtCore import QSize, Qt
from PySide6.QtGui import QImage, QImageReader

from meterlog.model.errors import DiskFailed, UsageError
from meterlog.profile.full_path import full_path
from meterlog.window.sentences import sentence
from meterlog.window.words import say
from meterlog.work.claim_photos import why_not_taken

FOLDER = "photos"
"""Within the job's folder."""
KINDS = ("jpg", "jpeg", "png", "webp", "tif", "tiff", "bmp", "gif")
MOST_BYTES = 60_000_000
"""A claim pack takes no larger picture."""
_CHUNK = 1 << 20


@dataclass(frozen=True, slots=True)
class Thumb:
    """One photo of the card as it is shown.

    Attributes
    ----------
    name : str
        As the card has it.
    image : QImage or None
        None where it can't be shown.
    why : str
        Why it can't; empty when it can.
    """

    name: str
    image: QImage | None
    why: str = ""


def copy_in(files: Sequence[Path], job: Path, progress: Callable[[float], None]) -> tuple[str, ...]:
    """Copy pictures into a job's folder.

    Parameters
    ----------
    files : sequence of Path
    job : Path
    progress : callable
        Called with the part done, 0 to 1; may raise to cancel: what is copied by then is removed.

    Returns
    -------
    tuple of str
        Their names as a card keeps them, in the same order. A picture that is there already, byte
        for byte, is not copied again.

    Raises
    ------
    UsageError
        If one is no file, or a claim takes it not, as it is empty, too large or no picture that
        can be read; nothing is copied then.
    DiskFailed
        If one can't be read or written.
    """
    sizes = [_size(one) for one in files]
    whole, done = max(sum(sizes), 1), 0
    place = job / FOLDER
    names: list[str] = []
    made: list[Path] = []

    def tell(count: int) -> None:
        nonlocal done
        done += count
        progress(min(done / whole, 1.0))

    try:
        for file in files:
            try:
                place.mkdir(parents=True, exist_ok=True)
                target, new = _copied(file, place, tell)
            except OSError as error:
                raise DiskFailed(
                    say("can't be copied: {why}.", why=error.strerror),
                    subject=str(error.filename or file),
                    remedy=say("Choose it again when the disk or the card is there and has room."),
                ) from error
            if new:
                made.append(target)
            names.append(target.relative_to(job).as_posix())
    except BaseException:
        for one in made:
            with contextlib.suppress(OSError):
                one.unlink()
        raise
    return tuple(dict.fromkeys(names))


def _size(file: Path) -> int:
    remedy = say("Choose the file of a picture.")
    if not file.is_file():
        raise UsageError(say("is no file."), subject=str(file), remedy=remedy)
    try:
        size = file.stat().st_size
    except OSError as error:
        raise DiskFailed(
            say("can't be read: {why}.", why=error.strerror), subject=str(file), remedy=remedy
        ) from error
    if size == 0:
        raise UsageError(say("is empty."), subject=str(file), remedy=remedy)
    if size > MOST_BYTES:
        raise UsageError(
            say(
                "is larger than {most_bytes} MB, which no claim takes.",
                most_bytes=MOST_BYTES // 1_000_000,
            ),
            subject=str(file),
            remedy=say("Make it smaller, or choose another."),
        )
    # Now, while it can be taken again, and not when the pack is made.
    why = why_not_taken(full_path(file))
    if why:
        raise UsageError(
            say("goes into no claim: {why}.", why=sentence(why)), subject=str(file), remedy=remedy
        )
    return size


def _copied(file: Path, place: Path, tell: Callable[[int], None]) -> tuple[Path, bool]:
    """Give where a picture lies in ``place``, and whether it was put there now."""
    inside = full_path(place)
    if full_path(file).parent == inside:
        return file, False
    stem, number = file.stem, 1
    target = place / file.name
    while target.exists():
        if _digest(target) == _digest(file):
            return target, False
        number += 1
        target = place / f"{stem}-{number}{file.suffix}"
    aside = target.with_name(f".{target.name}.partial")
    try:
        with file.open("rb") as source, aside.open("wb") as sink:
            while chunk := source.read(_CHUNK):
                sink.write(chunk)
                tell(len(chunk))
        shutil.copystat(file, aside)
        aside.replace(target)
    except BaseException:
        with contextlib.suppress(OSError):
            aside.unlink(missing_ok=True)
        raise
    return target, True


def _digest(file: Path) -> bytes:
    with file.open("rb") as stream:
        return hashlib.file_digest(stream, "sha256").digest()


def thumbs_of(
    names: Sequence[str], job: Path, pixels: int, progress: Callable[[float], None]
) -> tuple[Thumb, ...]:
    """Give small pictures of a card's photos.

    Parameters
    ----------
    names : sequence of str
        As the card has them.
    job : Path
        From which relative names are taken.
    pixels : int
        Of the longer side.
    progress : callable
        Called with the part done; may raise.
    """
    made = []
    for number, name in enumerate(names, start=1):
        made.append(_thumb(name, job / name, pixels))
        progress(number / len(names))
    return tuple(made)


def _thumb(name: str, path: Path, pixels: int) -> Thumb:
    if not path.exists():
        return Thumb(name, None, say("GONE: its file is not there any more"))
    if not path.is_file():
        return Thumb(name, None, say("it is no file"))
    reader = QImageReader(str(path))
    reader.setAutoTransform(True)
    # By what it holds: a telephone's picture may have the wrong ending.
    reader.setDecideFormatFromContent(True)
    size = reader.size()
    if size.isValid():
        reader.setScaledSize(size.scaled(QSize(pixels, pixels), Qt.AspectRatioMode.KeepAspectRatio))
    image = reader.read()
    if image.isNull():
        return Thumb(name, None, say("no small picture of it can be shown"))
    return Thumb(name, image)
