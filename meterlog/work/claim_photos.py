"""ClaimPhotos: the pictures that a job card names, put into a pack without what they tell besides.

A photo from a telephone says where and by whom it was taken (Exif). It is written anew, so that a
pack has the picture alone.
"""

from __future__ import annotations

from pathlib import Path

from meterlog.model.job_card import JobCard

LONGEST = 2000
"""Pixels of the longer side; what a reviewer looks at on paper needs no more."""
MOST_BYTES = 60_000_000


def copy_photos(card: JobCard, place: Path, out: Path) -> tuple[tuple[Path, ...], list[str]]:
    """Write the photos of a card as JPEG files ``photo-1.jpg`` and so on.

    Parameters
    ----------
    card : JobCard
    place : Path
        Folder from which relative names are taken.
    out : Path
        Made where there is a photo.

    Returns
    -------
    tuple of (tuple of Path, list of str)
        The files, and what could not be read.
    """
    from PIL import Image, ImageOps, UnidentifiedImageError

    files: list[Path] = []
    lost: list[str] = []
    for number, name in enumerate(card.photos, start=1):
        path = place / name
        try:
            if path.stat().st_size > MOST_BYTES:
                lost.append(f"photo {name}: is larger than {MOST_BYTES // 1_000_000} MB.")
                continue
            with Image.open(path) as image:
                upright = ImageOps.exif_transpose(image)
                upright.thumbnail((LONGEST, LONGEST))
                out.mkdir(parents=True, exist_ok=True)
                target = out / f"photo-{number}.jpg"
                upright.convert("RGB").save(target, "JPEG", quality=88)
        except (OSError, UnidentifiedImageError, ValueError, Image.DecompressionBombError) as error:
            why = getattr(error, "strerror", None) or "it is no picture that can be read"
            lost.append(f"photo {name}: can't be put in: {why}.")
            continue
        files.append(target)
    return tuple(files), lost
