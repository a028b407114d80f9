"""ClampDecade: tells a current that is off by a factor of ten.

Clamps have switchable outputs of 1, 10 and 100 mV/A, and meters read what they are told. A fan
that draws a tenth or ten times of what its limits allow, at every speed, is not a fan fault.
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
SLACK = 1.25
"""Ten times off, the current must fit its limits within this factor."""
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


def _direction(step: Step, low: float, high: float) -> int:
    """Give 1 for ten times too much, -1 for a tenth, 0 for neither."""
    size = abs(step.steady_mean_a or 0.0)
    if size > APART * high and low / SLACK <= size / 10.0 <= high * SLACK:
        return 1
    if size < low / APART and low / SLACK <= size * 10.0 <= high * SLACK:
        return -1
    return 0


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
    """Tell when the running current is off by about ten at all speeds that have limits.

    Parameters
    ----------
    steps : sequence of Step
    limits : Limits

    Returns
    -------
    list of Doubt
        One or none.
    """
    ways: dict[int, list[Step]] = {}
    for step in steps:
        band = _band(step, limits)
        if band is not None:
            ways.setdefault(_direction(step, *band), []).append(step)
    if len(ways) == 1 and 0 not in ways:
        ((way, found),) = ways.items()
        return [_doubt(found[0], found[-1], 0.1 if way > 0 else 10.0)]
    absurd = [step for step in steps if _drawn_a(step) > ABSURD_A]
    return [_doubt(absurd[0], absurd[-1], 0.1)] if absurd else []


def _doubt(first: Step, last: Step, factor: float) -> Doubt:
    size = _drawn_a(first)
    at = "" if first.speed is None else f" at speed {first.speed}"
    text = (
        f"{size:.3g} A or {size * factor:.3g} A? The running current{at} is about"
        f" {'ten times' if factor < 1.0 else 'a tenth of'} what such a fan draws"
        f" ({first.start_ns / 1e9:.1f} s to {last.end_ns / 1e9:.1f} s): check the clamp's switch"
        f" (1, 10 or 100 mV/A), the turns through it and what was entered. Until then the limits"
        f" say nothing about the motor."
    )
    return Doubt(DoubtKind.DECADE, text, first.start_ns, last.end_ns, factor=factor)
