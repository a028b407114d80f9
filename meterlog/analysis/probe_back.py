"""ProbeBack: since when a probe that had moved reads what it read before, as the bins come."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from meterlog.analysis.level_walk import LevelReach
from meterlog.analysis.levels import LevelPart, Levels
from meterlog.analysis.probe_jumps import LEAST_V, WINDOW
from meterlog.model import Role

BACK_PART = 0.25
"""Back where it was: nearer than this part of how far it had moved."""


class ProbeBack(LevelReach):
    """Follows one voltage from the time at which it jumped.

    Parameters
    ----------
    levels : Levels
    role : Role
        Feed or return.
    was_v, now_v : float, volts
        From what to what it jumped.
    from_nothing : bool
        Any voltage is back, too.

    Attributes
    ----------
    first_ns : int or None
        The beginning of the first half second in which it was back.
    """

    def __init__(
        self,
        levels: Levels,
        role: Role,
        was_v: float,
        now_v: float,
        *,
        from_nothing: bool = False,
    ) -> None:
        super().__init__(levels)
        self._role = role
        self._was_v, self._within_v = was_v, BACK_PART * abs(now_v - was_v)
        self._from_nothing = from_nothing

    def forget(self) -> None:
        """Begin anew."""
        self._count = 0
        self._run = 0
        self._run_ns = 0
        self._last: tuple[NDArray[np.bool_], NDArray[np.int64]] = (
            np.empty(0, np.bool_),
            np.empty(0, np.int64),
        )
        self.first_ns: int | None = None

    def reach(self, start_ns: int, end_ns: int) -> tuple[int, int]:
        """Give the bins that begin between two times, neither of them one's beginning."""
        return self._levels.from_ns(start_ns + 1), self._levels.from_ns(end_ns)

    def take(self, part: LevelPart) -> None:
        """Take the next bins."""
        column = part.feed if self._role is Role.MOTOR_FEED else part.back
        there = np.isfinite(column)
        volts, t_ns = column[there], part.t_ns[there]
        if not len(volts):
            return
        near = np.abs(volts - self._was_v) <= self._within_v
        if self._from_nothing:
            near |= volts >= LEAST_V
        self._count += len(near)
        away = np.flatnonzero(~near)
        if len(away):
            last = int(away[-1])
            self._run = len(near) - 1 - last
            self._run_ns = int(t_ns[last + 1]) if self._run else 0
        else:
            self._run_ns = self._run_ns if self._run else int(t_ns[0])
            self._run += len(near)
        if self.first_ns is None:
            self._look(near, t_ns)

    def _look(self, near: NDArray[np.bool_], t_ns: NDArray[np.int64]) -> None:
        """Look for the first time that it was back throughout a window."""
        near, t_ns = np.concatenate((self._last[0], near)), np.concatenate((self._last[1], t_ns))
        self._last = near[1 - WINDOW :], t_ns[1 - WINDOW :]
        if len(near) >= WINDOW:
            stays = np.flatnonzero(np.convolve(near, np.ones(WINDOW), "valid") > WINDOW - 0.5)
            self.first_ns = int(t_ns[stays[0]]) if len(stays) else None

    @property
    def since_ns(self) -> int | None:
        """Since when it is back; None while it is not, or not for a window yet."""
        lasts = self._run >= WINDOW and self._count > WINDOW
        return self._run_ns if lasts else None
