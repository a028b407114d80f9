"""ClaimInside: what the PDF of a pack carries inside, and how much a pack may hold."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path
from typing import Final

from meterlog.evidence.claim_content import ClaimSide
from meterlog.evidence.packed_ahead import PackedAhead
from meterlog.evidence.zip_safety import LIMITS
from meterlog.model import Origin
from meterlog.model.errors import EvidenceError, UsageError
from meterlog.profile.files_below import files_below
from meterlog.recording import Recording

MOST_EACH: Final = 128 << 20
"""Bytes of a file inside the PDF: it is held in memory, here and by whoever opens it."""
MOST_TOGETHER: Final = 256 << 20
_ATTACHED = frozenset({".csv", ".json", ".txt"})
"""What the PDF carries of the bag's payload; pictures are drawn in it."""


def names_inside(bag: Path) -> tuple[tuple[str, ...], tuple[str, ...]]:
    """Give the names of the files that the PDF carries: tables, texts and the signed lists.

    Returns
    -------
    carried, too_large : tuple of str
        Smaller files come first; what is too large is in the zip alone.

    Raises
    ------
    OSError
        If the bag can't be looked into.
    """
    found = [path for path in files_below(bag) if path.suffix in _ATTACHED and path.is_file()]
    left, carried, too_large = MOST_TOGETHER, list[str](), list[str]()
    for size, path in sorted((path.stat().st_size, path) for path in found):
        fits = size <= min(left, MOST_EACH)
        (carried if fits else too_large).append(path.relative_to(bag).as_posix())
        left -= size if fits else 0
    return tuple(sorted(carried)), tuple(sorted(too_large))


def contents_of(bag: Path, names: tuple[str, ...]) -> dict[str, bytes]:
    """Read files of a bag.

    Raises
    ------
    OSError
        If one can't be read.
    """
    return {name: (bag / name).read_bytes() for name in names}


def refuse_too_large(bag: Path, subject: str) -> None:
    """Refuse a pack that its own check would not unpack.

    Parameters
    ----------
    bag : Path
    subject : str
        What made it so large, for the words.

    Raises
    ------
    EvidenceError
    OSError
        If it can't be looked into.
    """
    size = sum(path.stat().st_size for path in files_below(bag) if path.is_file())
    if size > LIMITS.total:
        raise EvidenceError(
            f"the pack would hold {size / 1e9:.1f} GB; {LIMITS.total / 1e9:.1f} GB are the most "
            "that a check unpacks.",
            subject=subject,
            remedy="Make it from a shorter recording of the same fan.",
        )


def begin_packing(bag: Path, folder: Path, ahead: PackedAhead) -> None:
    """Begin to pack what is written in a folder of the bag, as far as the PDF will carry it.

    Parameters
    ----------
    bag, folder : Path
        The folder lies in the bag; its files change no more.
    ahead : PackedAhead

    Raises
    ------
    EvidenceError
        If the bag has become larger than its own check unpacks.
    OSError
        If it can't be looked into.
    """
    refuse_too_large(bag, folder.name)
    for path in files_below(folder):
        if path.suffix in _ATTACHED and path.is_file() and path.stat().st_size <= MOST_EACH:
            ahead.begin(path.relative_to(bag).as_posix(), path)


def refuse_simulated(folder: Path, check: Recording, sides: Sequence[ClaimSide]) -> None:
    """Refuse a check of no vehicle where no recording marks the pack as simulated.

    Parameters
    ----------
    folder : Path
        Of the check.
    check : Recording
    sides : sequence of ClaimSide
        Of the pack.

    Raises
    ------
    UsageError
        If the check is simulated and no recording is.
    """
    if check.about.origin is not Origin.SIMULATED:
        return
    if all(one.recording.about.origin is not Origin.SIMULATED for one in sides):
        raise UsageError(
            "is simulated, and the recordings are not.",
            subject=f"--circuit {folder}",
            remedy="Leave it out: it says nothing of this vehicle.",
        )
