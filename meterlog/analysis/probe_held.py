"""ProbeHeld: whether a probe that is said to have moved did read what it is said to have read."""

from __future__ import annotations

import numpy as np

from meterlog.analysis.level_walk import LevelReach
from meterlog.analysis.levels import LevelPart, Levels
from meterlog.model import Role


class ProbeHeld(LevelReach):
    """Counts the bins in which one voltage was nearer to where it jumped than to where it was.

    Parameters
    ----------
    levels : Levels
    role : Role
        Feed or return.
    was_v, now_v : float, volts
        From what to what it jumped.
    least_a : float, amperes
        Only while the current flows does the voltage tell it.
    """

    def __init__(
        self, levels: Levels, role: Role, was_v: float, now_v: float, least_a: float
    ) -> None:
        super().__init__(levels)
        self._role = role
        self._was_v, self._now_v = was_v, now_v
        self._least_a = least_a

    def forget(self) -> None:
        """Begin anew."""
        self._count = self._moved = 0

    def take(self, part: LevelPart) -> None:
        """Take the next bins."""
        column = part.feed if self._role is Role.MOTOR_FEED else part.back
        with np.errstate(invalid="ignore"):
            there = np.isfinite(column) & (np.abs(part.amps) >= self._least_a)
        volts = column[there]
        near = np.abs(volts - self._now_v) < np.abs(volts - self._was_v)
        self._count += len(volts)
        self._moved += int(np.count_nonzero(near))

    @property
    def holds(self) -> bool:
        """In most of the bins it was where it is said to have been; so in none, it was not."""
        return 2 * self._moved > self._count
