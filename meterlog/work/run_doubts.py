"""RunDoubts: what the heads of runs say against a claim: another job, part, day or order."""

from __future__ import annotations

import re
from collections.abc import Sequence
from datetime import timedelta

from meterlog.model import About
from meterlog.model.calibration import calibration_words, measured_on, overdue_words
from meterlog.model.iso_date import iso_date
from meterlog.model.job_card import JobCard, PartIdentity
from meterlog.recording import UNDATED

_GRACE = timedelta(days=1)


def run_doubts(card: JobCard, heads: Sequence[tuple[str, About]]) -> tuple[tuple[str, str], ...]:
    """Say all that heads of runs say against a claim.

    Parameters
    ----------
    card : JobCard
    heads : sequence of (str, About)
        Each with the name of its run, ``before`` or ``after``; the one before first.

    Returns
    -------
    tuple of (str, str)
        The run, and a sentence.
    """
    said = [(name, one) for name, about in heads for one in head_doubts(card, name, about)]
    if len(heads) > 1:
        said += [(heads[0][0], one) for one in order_doubts(*(about for _, about in heads))]
    return tuple(said)


def meter_doubts(about: About) -> tuple[str, ...]:
    """Say of which meters calibration is not shown to be in date: overdue, or not stated."""
    day = measured_on(about)
    unstated = [
        one for one in about.instruments
        if not one.simulated and not one.typed and not one.identity.calibration_due.strip()
    ]  # fmt: skip
    overdue = () if about.started_utc == UNDATED else overdue_words(about.instruments, day)
    return (*overdue, *(calibration_words(one, day) for one in unstated))


def order_doubts(before: About, after: About) -> tuple[str, ...]:
    """Say it if the recording before the repair was begun after the one behind it, or with it."""
    first, second = before.started_utc, after.started_utc
    if UNDATED in {first, second}:
        return ()
    if first.replace(microsecond=0) == second.replace(microsecond=0):
        return (
            f"It was begun in the same second as the recording that is called after the repair"
            f" ({first.isoformat(timespec='seconds')}): they may be one run.",
        )
    if first < second:
        return ()
    return (
        f"It was begun {first.isoformat(timespec='seconds')}, after the recording that is called "
        f"after the repair ({second.isoformat(timespec='seconds')}): they may be the wrong way "
        "round, or a clock was wrong.",
    )


def head_doubts(card: JobCard, name: str, about: About) -> tuple[str, ...]:
    """Say where the head of a run, ``before`` or ``after``, is of another job, part or day."""
    part = card.old_part if name == "before" else card.new_part
    return (*job_doubts(card, about), *part_doubts(part, about), *day_doubts(card, name, about))


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


def day_doubts(card: JobCard, name: str, about: About) -> tuple[str, ...]:
    """Say it if a run was made on a day on which, by the card, it can't have been made.

    The run before the repair lies between failure and repair, the one after it behind the repair.
    The card's days are the workshop's and the run's is UTC: they may part by one.
    """
    if about.started_utc == UNDATED:
        return ()
    failed, repaired = iso_date(card.failed_on), iso_date(card.repaired_on)
    made, said = about.started_utc.date(), []
    early, late = made - _GRACE, made + _GRACE
    if failed and late < failed:
        said.append(f"The job card has the failure on {failed}; the run is of {made}, before it.")
    if repaired and (early > repaired if name == "before" else late < repaired):
        when = "before the repair" if name == "before" else "after the repair"
        said.append(f"The job card has the repair on {repaired}; the run {when} is of {made}.")
    return tuple(said)


def _words(text: str) -> frozenset[str]:
    return frozenset(re.findall(r"\w+", text.casefold()))


def _plain(text: str) -> str:
    return re.sub(r"[\W_]+", "", text).casefold()
