"""OffCurrent: a current that is read while none can flow, so that the clamp's zero is off."""

from __future__ import annotations

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
MEAN_NS = 60_000_000_000
"""So much of a stretch, its end, tells how large the current is: a fan may be off for days, and a
live judgement asks four times a second."""


class OffCurrent:
    """Tells of a current with off commanded and next to no voltage across the motor.

    A relay that sticks or a shorted controller leaves a voltage there. Without one no current
    flows through a motor; what is read of it all the same is in every other reading, too.

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
        self._means: list[float] = []

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
        off = [one for one in seen if is_off(changes, *one[0])]
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

    def _mean_a(self, start_ns: int, end_ns: int) -> float:
        part = self._levels.within(max(start_ns, end_ns - MEAN_NS), end_ns)
        return float(part.amps.mean())


def is_off(changes: Sequence[SpeedChange], start_ns: int, end_ns: int) -> bool:
    """Tell whether off was commanded in the middle of a stretch."""
    middle_ns = (start_ns + end_ns) // 2
    index = bisect_right(changes, middle_ns, key=lambda one: one.t_ns)
    return index > 0 and changes[index - 1].speed == 0
