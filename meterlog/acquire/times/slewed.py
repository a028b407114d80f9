"""Slewed: a correction of a line that is brought in little by little."""

from __future__ import annotations

import math

import numpy as np
from numpy.typing import NDArray

SLEW = 0.02
"""A correction is brought in at most this fast: 20 ms each second."""


class Slewed:
    """What is left of a line's corrections at an instrument time.

    It follows from the last correction and the time since alone, so that readings that come
    together have the same as if they came one by one.

    Attributes
    ----------
    last_x : float, seconds of instrument time
        The last at which it was asked for.
    """

    def __init__(self) -> None:
        self.last_x = 0.0
        self._error_s = 0.0
        self._since_x = 0.0

    def correct(self, error_s: float) -> None:
        """Take note that the line has moved by so much, seconds, since it was last asked for."""
        self._error_s = self._left_s(self.last_x) + error_s
        self._since_x = self.last_x

    def _left_s(self, x_s: float) -> float:
        left_s = max(abs(self._error_s) - SLEW * (x_s - self._since_x), 0.0)
        return math.copysign(left_s, self._error_s)

    def at(self, x_s: float) -> int:
        """Give what is left at one instrument time, nanoseconds."""
        self.last_x = x_s
        return round(self._left_s(x_s) * 1e9) if self._error_s else 0

    def many(self, x_s: NDArray[np.float64]) -> NDArray[np.int64]:
        """Give what is left at instrument times, nanoseconds.

        Parameters
        ----------
        x_s : ndarray, float64, shape (n,), seconds
            Not decreasing; at least one.
        """
        self.last_x = float(x_s[-1])
        if not self._error_s:
            return np.zeros(len(x_s), np.int64)
        left_s = np.maximum(abs(self._error_s) - SLEW * (x_s - self._since_x), 0.0)
        return np.rint(np.copysign(left_s, self._error_s) * 1e9).astype(np.int64)
