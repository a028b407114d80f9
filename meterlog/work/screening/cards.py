"""Cards: which part a recording was made with, as the job says to which it belongs."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path

from meterlog.model.errors import MeterlogError
from meterlog.work.job_cards import load_card
from meterlog.work.job_folder import CARD, Side, load_work
from meterlog.work.library.places import walk


@dataclass(frozen=True, slots=True)
class PartOf:
    """Number and serial of a part; empty where nobody stated it."""

    number: str = ""
    serial: str = ""


def parts_of_job(folder: Path, going_on: Callable[[], None]) -> dict[Path, PartOf]:
    """Give the part of each recording that a job in ``folder`` lists.

    A job that can't be read says nothing; what its recordings say of themselves stands.
    """
    found: dict[Path, PartOf] = {}
    for place in walk((folder,), going_on).places:
        if not place.job:
            continue
        try:
            card, work = load_card(place.folder / CARD), load_work(place.folder)
        except (MeterlogError, OSError):
            continue
        for one in work.recordings:
            part = card.new_part if one.side is Side.NEW else card.old_part
            found[one.folder] = PartOf(part.number, part.serial)
    return found
