"""ClaimPhotos: the pictures that a job card names, put into a pack without what they tell besides.

A photo from a telephone says where and by whom it was taken (Exif, XMP, comments). It is written
anew, so that a pack has the picture alone.
"""

from __future__ import annotations

import struct
import warnings
import zlib
from collections.abc import Callable
from pathlib import Path
from typing import TYPE_CHECKING, NamedTuple

from meterlog.model.job_card import JobCard
from meterlog.profile.plain_file import open_plain
from meterlog.work.card_photos import OUTSIDE, is_outside

if TYPE_CHECKING:
    from PIL import Image

LONGEST = 2000
"""Pixels of the longer side; what a reviewer looks at on paper needs no more."""
MOST_PHOTOS = 100
"""A pack with more could not be sent, and nobody would look through them."""
MOST_BYTES = 60_000_000
MOST_PIXELS = 120_000_000
"""Some cameras have 108 million; a small file can unpack to far more."""
_TOO_MANY = f"it has more than {MOST_PIXELS // 1_000_000} million pixels"
FORMS = ("JPEG", "PNG", "WEBP", "TIFF", "BMP", "GIF")
"""What cameras and telephones write. Others the library hands to other programs."""
_UNREADABLE = (
    OSError,
    ValueError,
    SyntaxError,
    struct.error,
    zlib.error,
    EOFError,
    IndexError,
    KeyError,
    TypeError,
    AttributeError,
    OverflowError,
    MemoryError,
)
"""What the library raises for what it can't read, depending on which byte is wrong."""


class LostPhoto(NamedTuple):
    """A photo that could not be put in.

    Attributes
    ----------
    number : int
        Its place on the card, from 1.
    name : str
        As the card has it; can tell whose vehicle it is.
    why : str
    """

    number: int
    name: str
    why: str


def copy_photos(
    card: JobCard, place: Path, out: Path, progress: Callable[[float], None]
) -> tuple[tuple[Path, ...], tuple[LostPhoto, ...]]:
    """Write the photos of a card as JPEG files ``photo-1.jpg`` and so on.

    At most :data:`MOST_PHOTOS`; those beyond are given as not put in.

    Parameters
    ----------
    card : JobCard
    place : Path
        Folder of the card. What lies outside is not taken: a card may be a stranger's.
    out : Path
        Made where there is a photo.
    progress : callable
        Called with the part done, 0 to 1, between two photos. May raise to cancel.

    Returns
    -------
    tuple of (tuple of Path, tuple of LostPhoto)
        The files, and what could not be put in.

    Raises
    ------
    OSError
        If a file can't be written.
    """
    files: list[Path] = []
    lost: list[LostPhoto] = []
    for number, name in enumerate(card.photos, start=1):
        progress((number - 1) / len(card.photos))
        if number > MOST_PHOTOS:
            lost.append(LostPhoto(number, name, f"a pack holds {MOST_PHOTOS} photos at most"))
            continue
        picture = _taken(place, name)
        if isinstance(picture, str):
            lost.append(LostPhoto(number, name, picture))
            continue
        out.mkdir(parents=True, exist_ok=True)
        target = out / f"photo-{number}.jpg"
        picture.save(target, "JPEG", quality=88)
        files.append(target)
    return tuple(files), tuple(lost)


def why_not_taken(photo: Path) -> str:
    """Say why no pack would take a picture that lies where it may; empty where one would.

    It is read whole: a damaged one may end in the middle.
    """
    made = _taken(photo.parent, photo.name)
    return made if isinstance(made, str) else ""


def _taken(place: Path, name: str) -> Image.Image | str:
    """Give the picture that a card in ``place`` names; or why it is not taken."""
    from PIL import Image

    try:
        return OUTSIDE if is_outside(name, place) else _picture(place / name)
    except Image.DecompressionBombError:
        return _TOO_MANY
    except _UNREADABLE as error:
        return getattr(error, "strerror", None) or "it is no picture that can be read"


def _picture(path: Path) -> Image.Image | str:
    """Give the picture alone, upright; or why it is not taken."""
    from PIL import Image, ImageOps

    # A pipe or a device would be waited for.
    if path.exists() and not path.is_file():
        return "it is no file"
    if path.stat().st_size > MOST_BYTES:
        return f"it is larger than {MOST_BYTES // 1_000_000} MB"
    # The library warns of what is not more than is allowed here.
    with (
        warnings.catch_warnings(action="ignore", category=Image.DecompressionBombWarning),
        open_plain(path) as stream,
        Image.open(stream, formats=FORMS) as image,
    ):
        if image.width * image.height > MOST_PIXELS:
            return _TOO_MANY
        # Has a JPEG decoded at half or a quarter of its size where that is still enough.
        image.draft("RGB", (LONGEST, LONGEST))
        upright = ImageOps.exif_transpose(image)
        upright.thumbnail((LONGEST, LONGEST))
        alone = upright.convert("RGB")
    # The library writes comments on again that it found.
    alone.info.clear()
    return alone
