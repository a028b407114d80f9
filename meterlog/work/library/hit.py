"""Hit: one recording, circuit check or job, as a search gives it."""

from __future__ import annotations

import json
from dataclasses import dataclass
from enum import StrEnum
from pathlib import Path


class Kind(StrEnum):
    """What lies in a folder."""

    RUN = "recording"
    CIRCUIT = "circuit check"
    JOB = "job"


class Verdicts(StrEnum):
    """What something comes to; the words of a run's outcome, and one for what nobody judged yet."""

    FAULT = "fault found"
    SUSPICION = "suspicion"
    CANT_TELL = "can't tell"
    IN_ORDER = "in order"
    NOT_JUDGED = "not judged"


class Usual(StrEnum):
    """How a run's steady currents lie beside those of good motors of its part number."""

    HIGHER = "higher"
    LOWER = "lower"
    BOTH = "higher and lower"
    CANT_TELL = "can't tell"
    TOO_FEW = "too few good ones"
    AS_USUAL = "as usual"
    NOT_COMPARABLE = "not comparable"
    NO_BASELINE = "no baseline"


GRAVEST_FIRST = tuple(Verdicts)
"""By this order a job is what the gravest of its recordings is."""

UNSEALED, BEING_MADE, UNREADABLE = "not sealed", "being recorded", "can't be read"
SEALED, MENDED = "sealed", "recovered"
"""States of a folder; a job has none."""


@dataclass(frozen=True, slots=True)
class SpeedCurrent:
    """The steady motor current of one recording at one commanded speed.

    Attributes
    ----------
    speed : int
    mean_a : float, amperes
        By size; over all stretches at that speed, each weighted with its length.
    expanded_a : float or None, amperes
        The largest expanded uncertainty (about 95 %) of those stretches: they share the meter's
        errors, so that more of them make it no smaller. None where it is not known of each.
    """

    speed: int
    mean_a: float
    expanded_a: float | None


@dataclass(frozen=True, slots=True)
class Hit:
    """One line of what was found.

    Attributes
    ----------
    folder : Path
    kind : Kind
    started : str
        Local time at the place, ``2026-11-29T10:20:30``; of a job that of its newest recording;
        empty where no date is known.
    work_order, vehicle, part, technician, odometer, complaint : str
    mark : str
        Where the readings come from, where no meter sent them from a vehicle; else empty.
    duration_s : float or None, seconds
    instruments : str
        Titles, with commas between.
    state : str
        ``sealed``, ``recovered``, ``not sealed``, ``being recorded``, ``can't be read``; empty for
        a job.
    trouble : str
        What is wrong with the folder; empty for nothing.
    verdict : Verdicts
    worst : str
        Kind of the gravest finding that failed; empty for none.
    sentence : str
        The verdict in words.
    currents_json : str
        As :meth:`currents` reads it.
    away : bool
        Known from earlier; its folder can't be looked into now.
    side : str
        ``old`` or ``new``: which part was in the vehicle, where a job says so.
    key : str
        Of its verdict; empty where there is no seal.
    number : str
        Its part number by the card of its job; empty where no card says it.
    usual : Usual or None
        None where that is not known (yet), or no table of baselines is at hand.
    found_by : tuple of str
        Where the words stand that were looked for, folded, with what is around them; without those
        that stand in vehicle, part or work order.
    """

    folder: Path
    kind: Kind
    started: str
    work_order: str
    vehicle: str
    part: str
    technician: str
    odometer: str
    complaint: str
    mark: str
    duration_s: float | None
    instruments: str
    state: str
    trouble: str
    verdict: Verdicts
    worst: str
    sentence: str
    currents_json: str = "[]"
    away: bool = False
    side: str = ""
    key: str = ""
    number: str = ""
    usual: Usual | None = None
    found_by: tuple[str, ...] = ()

    @property
    def currents(self) -> tuple[SpeedCurrent, ...]:
        """The steady current at each speed, lowest speed first; empty before it was judged."""
        return currents_of(self.currents_json)


def currents_text(currents: tuple[SpeedCurrent, ...]) -> str:
    """Write currents as the index keeps them."""
    return json.dumps([[one.speed, one.mean_a, one.expanded_a] for one in currents])


def currents_of(text: str) -> tuple[SpeedCurrent, ...]:
    """Read what :func:`currents_text` wrote; nothing from anything else."""
    try:
        return tuple(
            SpeedCurrent(int(speed), float(mean), None if u is None else float(u))
            for speed, mean, u in json.loads(text)
        )
    except (ValueError, TypeError):
        return ()
