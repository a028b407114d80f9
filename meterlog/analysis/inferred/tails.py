"""Tails: whether the noise of a whole recording has more outliers than normal noise."""

from __future__ import annotations

import math

import numpy as np
from numpy.typing import NDArray

from meterlog.analysis.alarm import student_from_normal

_BIN, _BINS = 0.02, 1500
_HIGH, _LOW = 0.97, 0.90
"""Parts of one side's deviations between which the tail is judged: so near the bulk that a dropout
now and then does not change it."""
_Z_HIGH, _Z_LOW = 2.1701, 1.6449
"""Sizes that normal deviates keep below with these chances."""
_SPREAD = 0.85
"""Standard deviation of the log of their ratio, times the root of the count (simulated)."""
_FEWEST = 500
_DEGREES = np.geomspace(2.0, 200.0, 60)


class Tails:
    """Counts deviations in units of the noise, rises and falls apart. Memory does not grow."""

    def __init__(self) -> None:
        self._counts = np.zeros((2, _BINS), np.int64)

    def take(self, deviations: NDArray[np.float64]) -> None:
        """Take deviations from the level before, in standard deviations; NaN are passed over.

        Parameters
        ----------
        deviations : ndarray, float64, shape (n,)
        """
        known = deviations[np.isfinite(deviations)]
        for side, part in enumerate((known[known > 0.0], -known[known < 0.0])):
            bins = np.minimum(part / _BIN, _BINS - 1).astype(np.int64)
            self._counts[side] += np.bincount(bins, minlength=_BINS)

    def joined(self, other: Tails) -> Tails:
        """Give both together."""
        both = Tails()
        both._counts = self._counts + other._counts
        return both

    def degrees(self) -> float:
        """Give the degrees of freedom of the Student's t that has such tails.

        The lighter of both sides counts: noise has outliers on both, dropouts on one.

        Returns
        -------
        float
            Infinite where nothing speaks against normal noise.

        Source
        ------
        Ratio of two quantiles as a measure of the tail's weight, as in D. C. Hoaglin, F. Mosteller
        and J. W. Tukey, "Understanding Robust and Exploratory Data Analysis", 1983 (from memory).
        """
        return max(_degrees(side) for side in self._counts)


def _degrees(counts: NDArray[np.int64]) -> float:
    total = int(counts.sum())
    if total < _FEWEST:
        return math.inf
    upto = np.cumsum(counts)
    low, high = ((int(np.searchsorted(upto, q * total)) + 1) * _BIN for q in (_LOW, _HIGH))
    ratio = math.log(high / low) - 2.0 * _SPREAD / math.sqrt(total)
    if low <= 1.0 or ratio <= math.log(_Z_HIGH / _Z_LOW):
        return math.inf
    for degrees in _DEGREES[::-1].tolist():
        wide, near = (student_from_normal(z, degrees) for z in (_Z_HIGH, _Z_LOW))
        if math.log(wide / near) >= ratio:
            return float(degrees)
    return float(_DEGREES[0])
