"""Polarity: a clamp or leads the wrong way round."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray

from meterlog.analysis.level_walk import LevelWalk, LongRuns
from meterlog.analysis.levels import BIN_NS, LevelPart, Levels
from meterlog.model import Doubt, DoubtKind, Limits, Role, Step

LEAST_NS = 1_000_000_000
"""Shorter than this a negative voltage may be a spike or a moved probe."""
LEAST_V = 1.0
"""A wire's own drop makes a ground point read some tenths of a volt below the battery's."""


class Polarity:
    """Tells what reads negative that can't be.

    Parameters
    ----------
    levels : Levels
        Filled by somebody else.
    limits : Limits
    """

    def __init__(self, levels: Levels, limits: Limits) -> None:
        self._limits = limits
        self._walk = LevelWalk(levels)
        self._below = LongRuns(max(LEAST_NS, BIN_NS))

    def doubts(self, steps: Sequence[Step]) -> list[Doubt]:
        """Give what is to be said of the current, the motor's voltage and the feed so far."""
        told = []
        least_a = -self._limits.open_current_a
        # With the fan off it is the zero that is off, see ``off_current``.
        amps = [s for s in steps if (s.steady_mean_a or 0.0) <= least_a and s.speed != 0]
        if amps:
            told.append(
                _doubt(
                    amps,
                    "The motor current reads negative: the clamp is on the wrong way round. Turn"
                    " it, or say so (inverted); its size is judged all the same.",
                    Role.MOTOR_CURRENT,
                )
            )
        volts = [s for s in steps if (s.steady_mean_v or 0.0) < -self._limits.driven_v]
        if volts:
            told.append(
                _doubt(
                    volts,
                    "The motor voltage reads negative: feed and return are the wrong way round."
                    " Swap the two leads, or their roles.",
                    Role.MOTOR_FEED,
                )
            )
        long = self._negative()
        if long:
            text = (
                f"The feed reads negative ({long[0][0] / 1e9:.1f} s to {long[-1][1] / 1e9:.1f} s):"
                f" the leads of that channel are the wrong way round. Swap them, or say so"
                f" (inverted)."
            )
            told.append(Doubt(DoubtKind.SIGN, text, long[0][0], long[-1][1], role=Role.MOTOR_FEED))
        return told

    def _negative(self) -> list[tuple[int, int]]:
        """Give the stretches in which the feed reads less than nothing."""
        for part in self._walk.settled():
            self._below.take(_below(part), part.t_ns)
        newest = self._walk.newest()
        return [*self._below.ended, *self._below.still_open(_below(newest), newest.t_ns)]


def _below(part: LevelPart) -> NDArray[np.bool_]:
    with np.errstate(invalid="ignore"):
        below: NDArray[np.bool_] = part.feed < -LEAST_V
    return below


def _doubt(steps: Sequence[Step], words: str, role: Role) -> Doubt:
    start_ns, end_ns = steps[0].start_ns, steps[-1].end_ns
    text = f"{words} ({start_ns / 1e9:.1f} s to {end_ns / 1e9:.1f} s)"
    return Doubt(DoubtKind.SIGN, text, start_ns, end_ns, role=role)
