"""LostLoad: what the feed did as a current went, whatever the source's resistance."""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from meterlog.analysis.levels import LevelPart
from meterlog.analysis.sides import FULL_ACROSS

FEWEST = 3
"""Levels on both sides together: fewer have no noise that could be told."""
UNMOVED = 0.5
"""The feed moved by less than this part of what the lost current must move it by: not all of it
went. A motor that opens gives the whole."""
SURE = 6.0
"""What must be seen to have stayed: so many standard errors of the means on both sides."""


@dataclass(frozen=True, slots=True)
class LostLoad:
    """An edge at which the current went.

    Attributes
    ----------
    lost_a : float, amperes
    rise_v, error_v : float, volts
        By how much the feed rose, and the standard error of that.
    """

    lost_a: float
    rise_v: float
    error_v: float

    def due_v(self, ohm: float) -> float:
        """Give by how much the feed must have risen behind a source of ``ohm``."""
        return self.lost_a * ohm

    def denied(self, ohm: float, least_v: float) -> bool:
        """Tell whether the feed stayed although ``least_v`` and more were due."""
        due_v = self.due_v(ohm)
        enough = due_v >= max(least_v, SURE * self.error_v)
        return enough and abs(self.rise_v) <= UNMOVED * due_v

    def from_ohm(self, least_v: float) -> float:
        """Give from which resistance on the feed denies it: more is due with more of it."""
        due_v = max(least_v, SURE * self.error_v, abs(self.rise_v) / UNMOVED)
        return due_v / self.lost_a if self.lost_a > 0.0 else math.inf


def lost_load(was: LevelPart, now: LevelPart, least_a: float) -> LostLoad | None:
    """Give what was lost from one stretch to the next; None where that is not known.

    None too where the whole feed came to stand across the motor, as when it opens on a low step:
    that can't be unless the current went, whatever the feed did.

    Parameters
    ----------
    was, now : LevelPart
    least_a : float, amperes
        Levels with less were none of a current that flowed.
    """
    flowed = np.abs(was.amps) >= least_a
    known = moved(was.feed[flowed], now.feed)
    if known is None or _opened(was.feed - was.back, now):
        return None
    return LostLoad(float(np.abs(was.amps[flowed]).mean()), *known)


def _opened(across: NDArray[np.float64], now: LevelPart) -> bool:
    before, after, feed = (
        float(column[np.isfinite(column)].mean()) if np.isfinite(column).any() else math.nan
        for column in (across, now.feed - now.back, now.feed)
    )
    return before < FULL_ACROSS * feed <= after


def moved(was: NDArray[np.float64], now: NDArray[np.float64]) -> tuple[float, float] | None:
    """Give by how much a level moved, and the standard error of that; None where not known.

    Parameters
    ----------
    was, now : ndarray, float64, shapes (n,) and (m,)
        NaN where nothing was read.
    """
    was, now = was[np.isfinite(was)], now[np.isfinite(now)]
    if not len(was) or not len(now) or len(was) + len(now) < FEWEST:
        return None
    noise = max(_noise(was), _noise(now))
    error = noise * math.sqrt(1.0 / len(was) + 1.0 / len(now))
    return float(now.mean() - was.mean()), error


def _noise(column: NDArray[np.float64]) -> float:
    """Give the noise of levels that may drift: from the differences of neighbours (von Neumann)."""
    apart = np.diff(column)
    if not len(apart):
        return 0.0
    return math.sqrt(float(apart @ apart) / (2 * len(apart)))
