"""Skew: how much later one meter's times are than another's, by steps that both show."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from meterlog.analysis.switching import Switching
from meterlog.model import Channel, Role

REACH_S = 2.0
"""Edges further apart than this are not taken for the same switching, whatever their meters."""
_REACH_INTERVALS = 3.0


@dataclass(frozen=True, slots=True)
class CommonStep:
    """One switching that both meters show.

    Attributes
    ----------
    first_ns, second_ns : int, nanoseconds since the recording's zero
        When each shows it.
    on : bool
        Switched on; False: off.
    """

    first_ns: int
    second_ns: int
    on: bool

    @property
    def later_s(self) -> float:
        """How much later the second shows it, seconds."""
        return (self.second_ns - self.first_ns) / 1e9


@dataclass(frozen=True, slots=True)
class Skew:
    """What the common steps say.

    Attributes
    ----------
    steps : tuple of CommonStep
        In time order; empty when there are none.
    alone : int
        Switchings that only one of the meters shows, or whose partner can't be told.
    later_s : float, seconds
        How much later the second meter's times are: the mean.
    u_s : float, seconds
        Its standard uncertainty.
    refused : str
        Why this is no skew; empty when it is one.
    """

    steps: tuple[CommonStep, ...] = ()
    alone: int = 0
    later_s: float = 0.0
    u_s: float = 0.0
    refused: str = ""


@dataclass(frozen=True, slots=True)
class Compared:
    """Which switchings of two channels are the same edge, and how well each shows it.

    Attributes
    ----------
    on, off : bool
        Whether switching on, and off, counts.
    intervals_s : tuple of two float, seconds
        From one reading to the next, of each.
    inrush_s : float, seconds
        A meter that averages shows the inrush of the motor up to so much too early; 0 where no
        inrush is compared.
    """

    on: bool
    off: bool
    intervals_s: tuple[float, float]
    inrush_s: float = 0.0


def compared(first: Channel, second: Channel) -> Compared:
    """Tell which switchings of two channels are the same edge.

    When the fan goes on, current and voltages step at the same instant, but the current rises far
    above its later level, which lifts the first mean of a slow meter and draws its half-level
    crossing forward by up to half the averaging time. When it goes off the current stops at once,
    but the coasting motor holds up a voltage of its own: that is another edge. So two currents are
    compared where they stop, two voltages of one role both ways, and a current with a voltage
    where they begin, with that much more uncertainty.
    """
    intervals = (first.interval_s, second.interval_s)
    currents = [one for one in (first, second) if one.role is Role.MOTOR_CURRENT]
    if len(currents) == 2:
        return Compared(on=False, off=True, intervals_s=intervals)
    inrush_s = sum((one.integration_s or one.interval_s) / 2.0 for one in currents)
    return Compared(
        on=True, off=first.role is second.role, intervals_s=intervals, inrush_s=inrush_s
    )


def measure_skew(
    first: Sequence[Switching],
    second: Sequence[Switching],
    how: Compared,
) -> Skew:
    """Give how much later the second meter's times are than the first's.

    Each step gives one difference. The mean's variance is that of the differences over their
    number (Type A; from two steps on) plus that of the sampling: each meter's edge lies anywhere
    within plus or minus half an interval, rectangular, anew at every step. A motor's inrush shifts
    all steps alike: rectangular within ``inrush_s``, whatever their number.

    Parameters
    ----------
    first, second : sequence of Switching
        Of the two meters.
    how : Compared

    Returns
    -------
    Skew
        ``refused`` says so when no step is common, or when the differences do not agree within
        what the sampling allows: then they were not the same edges.

    Source
    ------
    JCGM 100:2008, 4.2.3 (Type A), 4.3.7 (rectangular), 5.1.2 (sum).
    """
    reach_s = max(REACH_S, _REACH_INTERVALS * max(how.intervals_s))
    ours = [one for one in first if (how.on if one.on else how.off)]
    theirs = [one for one in second if (how.on if one.on else how.off)]
    steps = _pairs(ours, theirs, reach_s)
    alone = len(ours) + len(theirs) - 2 * len(steps)
    if not steps:
        return Skew(alone=alone, refused=_why_none(ours, theirs, how))
    later = np.array([step.later_s for step in steps])
    mean, count = float(later.mean()), len(steps)
    variance = sum(interval * interval for interval in how.intervals_s) / 12.0 / count
    variance += how.inrush_s * how.inrush_s / 3.0
    if count > 1:
        variance += float(later.var(ddof=1)) / count
    result = Skew(tuple(steps), alone, mean, math.sqrt(variance))
    apart_s = float(later.max() - later.min())
    # Each edge is off by at most half an interval either way; twice that is no chance.
    allowed_s = 2.0 * sum(how.intervals_s)
    if apart_s > allowed_s:
        return Skew(
            result.steps,
            alone,
            mean,
            result.u_s,
            f"the steps do not agree: they differ by {apart_s:.3g} s, and readings"
            f" {how.intervals_s[0]:g} s and {how.intervals_s[1]:g} s apart allow {allowed_s:.3g} s."
            f" These were not the same edges.",
        )
    return result


def _pairs(
    ours: Sequence[Switching], theirs: Sequence[Switching], reach_s: float
) -> list[CommonStep]:
    """Pair each with the one of the other meter that can be meant, if it is the only one."""
    pairs = []
    for one in ours:
        near = _near(one, theirs, reach_s)
        if len(near) == 1 and len(_near(near[0], ours, reach_s)) == 1:
            pairs.append(CommonStep(one.t_ns, near[0].t_ns, one.on))
    return pairs


def _near(one: Switching, others: Sequence[Switching], reach_s: float) -> list[Switching]:
    reach_ns = reach_s * 1e9
    return [
        other for other in others if other.on == one.on and abs(other.t_ns - one.t_ns) <= reach_ns
    ]


def _why_none(ours: Sequence[Switching], theirs: Sequence[Switching], how: Compared) -> str:
    what = " or ".join(word for word, is_so in (("on", how.on), ("off", how.off)) if is_so)
    if not ours and not theirs:
        return f"neither meter shows that the fan was switched {what}."
    if not ours or not theirs:
        which = "first" if not ours else "second"
        return f"the {which} meter does not show that the fan was switched {what}."
    return "no step of one has a single partner in the other: switch less often, 5 s apart."
