"""OffCurrent: a current that is read while none can flow, so that the clamp's zero is off."""

from __future__ import annotations

import math
from bisect import bisect_right
from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray

from meterlog.analysis.level_walk import LevelWalk, LongRuns
from meterlog.analysis.levels import LevelPart, Levels
from meterlog.analysis.timeline import SpeedChange
from meterlog.model import Doubt, DoubtKind, Limits, Role

LEAST_NS = 1_000_000_000
"""A slow clamp shows the current of before for some tenths of a second."""
FALLS = 0.15
"""A current that falls by more than this part from one half second to the next still goes: so does
one with a time constant up to 3 s, and no zero drifts so fast. Chosen."""
_NOISE_BINS = 2
"""Fewer bins a half tell no noise."""
BEYOND_NOISE = 2.0
"""And by more than so many standard deviations of the readings' own noise."""
MEAN_NS = 60_000_000_000
"""So much of a stretch, its end, tells how large the current is: a fan may be off for days, and a
live judgement asks four times a second."""


class OffCurrent:
    """Tells of a current with off commanded and next to no voltage across the motor.

    A relay that sticks or a shorted controller leaves a voltage there. Without one no current
    flows through a motor; what is read of it all the same is in every other reading, too. A slow
    clamp shows what flowed before, and less from moment to moment: that is no zero, which stands.

    Parameters
    ----------
    levels : Levels
        Filled by somebody else.
    limits : Limits
        ``open_current_a`` is the least that is told, ``driven_v`` the least voltage that drives.
    """

    def __init__(self, levels: Levels, limits: Limits) -> None:
        self._levels, self._limits = levels, limits
        self._walk = LevelWalk(levels)
        self._runs = LongRuns(LEAST_NS)
        self._means: list[float | None] = []

    def doubts(self, changes: Sequence[SpeedChange]) -> list[Doubt]:
        """Give what is to be told so far: nothing, or of the largest such current.

        Parameters
        ----------
        changes : sequence of SpeedChange
            In time order.
        """
        if not len(self._levels):
            return []
        for part in self._walk.settled():
            self._runs.take(self._denied(part), part.t_ns)
        ended = self._runs.ended
        self._means += [self._mean_a(*run) for run in ended[len(self._means) :]]
        newest = self._walk.newest()
        still = self._runs.still_open(self._denied(newest), newest.t_ns)
        seen = [
            *zip(ended, self._means, strict=True),
            *((one, self._mean_a(*one)) for one in still),
        ]
        off = [(run, a) for run, a in seen if a is not None and is_off(changes, *run)]
        if not off:
            return []
        (start_ns, end_ns), mean_a = max(off, key=lambda one: abs(one[1]))
        text = (
            f"With the fan off and no voltage across the motor the current reads {mean_a:.2f} A"
            f" ({start_ns / 1e9:.1f} s to {end_ns / 1e9:.1f} s): the zero of the clamp is off, and"
            f" all currents may be off by as much, which the uncertainties do not hold. With the"
            f" clamp empty and shut, take its zero and measure again."
        )
        return [
            Doubt(DoubtKind.ZERO_SEEN, text, role=Role.MOTOR_CURRENT, offset_a=abs(mean_a)),
        ]

    def _denied(self, part: LevelPart) -> NDArray[np.bool_]:
        with np.errstate(invalid="ignore"):
            denied: NDArray[np.bool_] = (np.abs(part.amps) >= self._limits.open_current_a) & (
                np.abs(part.feed - part.back) < self._limits.driven_v
            )
        return denied

    def _mean_a(self, start_ns: int, end_ns: int) -> float | None:
        """Give how large the current is at the end of a stretch; None where it still falls."""
        last = self._levels.within(max(start_ns, end_ns - LEAST_NS), end_ns)
        if _still_falls(np.abs(last.amps)):
            return None
        part = self._levels.within(max(start_ns, end_ns - MEAN_NS), end_ns)
        return float(part.amps.mean())


def _still_falls(sizes: NDArray[np.float64]) -> bool:
    """Tell whether a current, amperes in bins side by side, is on its way down.

    Source
    ------
    Noise by successive differences, as in :attr:`meterlog.analysis.pieces.Figures.noise_a`.
    """
    half = len(sizes) // 2
    if half < _NOISE_BINS:
        return False
    before, after = float(sizes[:half].mean()), float(sizes[-half:].mean())
    noise_a = math.sqrt(math.pi) / 2.0 * float(np.abs(np.diff(sizes)).mean())
    falls_a = before - after
    return falls_a > FALLS * before and falls_a > BEYOND_NOISE * noise_a * math.sqrt(2.0 / half)


def is_off(changes: Sequence[SpeedChange], start_ns: int, end_ns: int) -> bool:
    """Tell whether off was commanded in the middle of a stretch."""
    middle_ns = (start_ns + end_ns) // 2
    index = bisect_right(changes, middle_ns, key=lambda one: one.t_ns)
    return index > 0 and changes[index - 1].speed == 0
