"""ClampDecade: tells a current that is off by a factor of ten, a hundred or a thousand.

Clamps have switchable outputs of 1, 10 and 100 mV/A, meters read what they are told, and a column
may hold milliamperes. A fan that draws a tenth of what its limits allow, or ten, a hundred or a
thousand times as much, at every speed, is not a fan fault.
"""

from __future__ import annotations

import math
from collections.abc import Sequence

from meterlog.model import Doubt, DoubtKind, Limits, Step

ABSURD_A = 80.0
"""A held rotor on high draws 50 to 65 A on 12 V until the fuse opens: a running fan never this.
(Trade figures; common practice.)"""
LONGER_THAN_A_START_NS = 1_000_000_000
"""Over this and longer the largest start-up current has an effective value far below that."""
DECADES = (10.0, 100.0, 1000.0)
"""Of the clamp's switch one step or two, and milliamperes that were taken for amperes."""
SLACK = 1.25
"""So many times off, the current must fit its limits within this factor."""
APART = 3.0
"""And as it stands it must miss them by at least this factor: worn and seized motors draw up to
twice what they should when running, and far less than three times less."""


def _band(step: Step, limits: Limits) -> tuple[float, float] | None:
    allowed = limits.at(step.speed)
    if not step.speed or step.steady_mean_a is None:
        return None
    if allowed.min_a is None or allowed.max_a is None:
        return None
    return allowed.min_a, allowed.max_a


def _factor(step: Step, low: float, high: float) -> float:
    """Give what the current must be multiplied by to be within its limits; 1 for nothing such."""
    size = abs(step.steady_mean_a or 0.0)
    if size > APART * high:
        fits = (one for one in DECADES if low / SLACK <= size / one <= high * SLACK)
        return 1.0 / next(fits, 1.0)
    if size < low / APART and low / SLACK <= size * 10.0 <= high * SLACK:
        return 10.0
    return 1.0


def _believable(size: float) -> float:
    """Give the factor that brings a current that no fan draws to one that some fan does.

    Without limits that it fits: a tenth, unless that is more than any fan draws by itself.
    """
    return next((1.0 / one for one in DECADES if size / one <= ABSURD_A), 1.0 / DECADES[-1])


def _drawn_a(step: Step) -> float:
    """Give the current that a step is known to have drawn for longer than a start takes.

    A motor that goes dead again and again has no steady running. What it draws is the median where
    it ran for half of the time; of less, the effective value shows it: only a current that stays
    far above brings that of running, standing and starting together so high.
    """
    if step.steady_mean_a is not None:
        return abs(step.steady_mean_a)
    mean_a, sd_a = step.mean_a, step.sd_a
    if mean_a is None or sd_a is None or step.end_ns - step.start_ns < LONGER_THAN_A_START_NS:
        return 0.0
    median_a = abs(step.median_a or 0.0)
    return median_a if median_a > ABSURD_A else math.hypot(mean_a, sd_a)


def decade_doubts(steps: Sequence[Step], limits: Limits) -> list[Doubt]:
    """Tell when the running current is off by about as many times at all speeds with limits.

    Parameters
    ----------
    steps : sequence of Step
    limits : Limits

    Returns
    -------
    list of Doubt
        One or none.
    """
    ways: dict[float, list[Step]] = {}
    for step in steps:
        band = _band(step, limits)
        if band is not None:
            ways.setdefault(_factor(step, *band), []).append(step)
    if len(ways) == 1 and 1.0 not in ways:
        ((factor, found),) = ways.items()
        return [_doubt(found[0], found[-1], factor)]
    absurd = [step for step in steps if _drawn_a(step) > ABSURD_A]
    if not absurd:
        return []
    most = max(_drawn_a(step) for step in absurd)
    return [_doubt(absurd[0], absurd[-1], _believable(most))]


def _sized(amps: float) -> str:
    """Write a current to three digits, and never as a power of ten."""
    return f"{amps:.0f}" if amps >= 100.0 else f"{amps:.3g}"


def _doubt(first: Step, last: Step, factor: float) -> Doubt:
    size = _drawn_a(first)
    at = "" if first.speed is None else f" at speed {first.speed}"
    if factor < 1.0 / DECADES[1]:
        text = (
            f"{_sized(size)} A or {_sized(size * factor)} A? The running current{at} is about a"
            f" thousand times what such a fan draws ({first.start_ns / 1e9:.1f} s to"
            f" {last.end_ns / 1e9:.1f} s): were milliamperes taken for amperes? Check the unit of"
            f" the column and what was entered of the clamp. Until then the limits say nothing"
            f" about the motor."
        )
        return Doubt(DoubtKind.DECADE, text, first.start_ns, last.end_ns, factor=factor)
    hundred = factor < 1.0 / DECADES[0]
    text = (
        f"{_sized(size)} A or {_sized(size * factor)} A? The running current{at} is about"
        f" {'a hundred times' if hundred else 'ten times' if factor < 1.0 else 'a tenth of'}"
        f" what such a fan draws"
        f" ({first.start_ns / 1e9:.1f} s to {last.end_ns / 1e9:.1f} s): check the clamp's switch"
        f" (1, 10 or 100 mV/A), the turns through it and what was entered. Until then the limits"
        f" say nothing about the motor."
    )
    return Doubt(DoubtKind.DECADE, text, first.start_ns, last.end_ns, factor=factor)
