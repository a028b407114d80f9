"""ClaimDoubts: what a reviewer would hold against a recording, said in the pack itself."""

from __future__ import annotations

import re
from collections.abc import Sequence
from pathlib import Path

from meterlog.evidence.verify import verify_folder
from meterlog.model import About
from meterlog.model.card_contradictions import contradictions
from meterlog.model.job_card import JobCard, PartIdentity
from meterlog.recording import UNDATED, Recording


def seal_doubts(folder: Path, recording: Recording) -> tuple[str, ...]:
    """Say what speaks against a recording's seal.

    Parameters
    ----------
    folder : Path
    recording : Recording
        Of this folder; its own damage is not said again.

    Returns
    -------
    tuple of str
        Empty where it is as it was sealed.

    Raises
    ------
    EvidenceError
        If a file can't be read.
    """
    if recording.state == "unsealed":
        return ("It was never sealed: nothing shows that it was not changed since.",)
    found = verify_folder(folder)
    return tuple(f"NOT AS SEALED: {one}" for one in found.problems if one not in recording.damage)


def order_doubts(before: About, after: About) -> tuple[str, ...]:
    """Say it if the recording before the repair was begun after the one behind it."""
    first, second = before.started_utc, after.started_utc
    if UNDATED in {first, second} or first <= second:
        return ()
    return (
        f"It was begun {first.isoformat(timespec='seconds')}, after the recording that is called "
        f"after the repair ({second.isoformat(timespec='seconds')}): they may be the wrong way "
        "round, or a clock was wrong.",
    )


def head_doubts(card: JobCard, name: str, about: About) -> tuple[str, ...]:
    """Say where the head of a run, ``before`` or ``after``, is of another job or part."""
    part = card.old_part if name == "before" else card.new_part
    return (*job_doubts(card, about), *part_doubts(part, about))


def job_doubts(card: JobCard, about: About) -> tuple[str, ...]:
    """Say it if a recording was made for another work order, or of another vehicle.

    Nothing is said where one of them says nothing. A vehicle is written as anybody likes: it is
    another one where at most half of the words of the shorter name are in the other.
    """
    job, said = about.job, []
    order, made_for = _plain(card.work_order), _plain(job.work_order)
    if order and made_for and order not in made_for and made_for not in order:
        said.append(
            f"The job card has the work order {card.work_order!r}; the recording was made for "
            f"{job.work_order!r}."
        )
    one, other = _words(card.vehicle), _words(job.vehicle)
    if one and other and 2 * len(one & other) <= min(len(one), len(other)):
        said.append(
            f"The job card names the vehicle {card.vehicle!r}; the recording was made with "
            f"{job.vehicle!r}."
        )
    return tuple(said)


def part_doubts(part: PartIdentity, about: About) -> tuple[str, ...]:
    """Say it if what the recording says of its part does not have the card's serial number.

    Nothing is said where one of them says nothing: that is missing, and no contradiction.
    """
    said = about.job.part
    serial = _plain(part.serial)
    if not serial or not said.strip() or serial in _plain(said):
        return ()
    return (
        f"The job card gives the serial number {part.serial} for this part; the recording was made "
        f"with {said!r}.",
    )


def card_doubts(card: JobCard, sides: Sequence[tuple[str, Recording]]) -> tuple[str, ...]:
    """Say where the job card contradicts the conditions of the first run.

    The card tells of the vehicle as it came; what the repair changed, such as a new filter, is no
    contradiction. So the run behind it is held against the card only where it stands alone.

    Parameters
    ----------
    card : JobCard
    sides : sequence of (str, Recording)
        Each with its name, ``before`` first.
    """
    if not sides:
        return ()
    name, recording = sides[0]
    return contradictions(card, recording.about.job.measured_under, f"{name} the repair")


def _words(text: str) -> frozenset[str]:
    return frozenset(re.findall(r"\w+", text.casefold()))


def _plain(text: str) -> str:
    return re.sub(r"[\W_]+", "", text).casefold()
