"""Cards: which part a recording was made with, as the job says to which it belongs."""

from __future__ import annotations

from collections.abc import Callable, Iterable
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


def parts_of_jobs(
    folders: Iterable[Path], going_on: Callable[[], None], deepest: int
) -> dict[Path, PartOf]:
    """Give the part of each recording that a job lists which lies in or around some folders.

    A job that can't be read says nothing; what its recordings say of themselves stands.

    Parameters
    ----------
    folders : iterable of Path
        In any order: what comes of it is the same.
    going_on : callable
        Called at each folder; what it raises ends the walk.
    deepest : int
        Levels below a folder that are looked into.
    """
    roots = tuple(sorted(set(folders)))
    around = {one for root in roots for one in root.parents if (one / CARD).is_file()}
    inside = {one.folder for one in walk(roots, going_on, deepest).places if one.job}
    found: dict[Path, PartOf] = {}
    for job in sorted(around | inside):
        try:
            card, work = load_card(job / CARD), load_work(job)
        except (MeterlogError, OSError):
            continue
        for one in work.recordings:
            part = card.new_part if one.side is Side.NEW else card.old_part
            found[one.folder] = PartOf(part.number, part.serial)
    return found
