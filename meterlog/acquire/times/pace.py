"""PaceLearner: finds out how steadily an instrument without a clock sends."""

from __future__ import annotations

from collections import deque

import numpy as np

_READINGS = 10
_ARRIVALS = 5
_LUMPS = 16
"""Lumps end anywhere within an interval: it takes more of them to tell the pace."""
_LUMP = 1.5
_REMEMBERED = 32
_STEADY = 0.3
"""Half of all gaps must lie within so much of the usual gap, or the count tells no time."""


class PaceLearner:
    """Learns from arrivals how far apart an instrument's readings are."""

    def __init__(self) -> None:
        self._arrived_ns: int | None = None
        self._gaps: deque[tuple[float, int]] = deque(maxlen=_REMEMBERED)

    @property
    def gap_s(self) -> float:
        """Usual time from one arrival to the next, seconds; 0 before the second."""
        return float(np.median([gap for gap, _ in self._gaps])) if self._gaps else 0.0

    def restart(self) -> None:
        """Let the time to the next arrival not count."""
        self._arrived_ns = None

    def arrived(self, readings: int, now_ns: int) -> float | None:
        """Note that so many readings arrived together.

        Returns
        -------
        float or None, seconds
            From one reading to the next; None while too few have come (ten readings in five
            arrivals, or in sixteen lumps) or while they come too unevenly.

        Source
        ------
        The median of all slopes between two arrivals, time over count (Theil and Sen; from
        memory): a missing reading or a late one does not move it.
        """
        if self._arrived_ns is not None:
            self._gaps.append(((now_ns - self._arrived_ns) / 1e9, readings))
        self._arrived_ns = now_ns
        counts = np.cumsum([count for _, count in self._gaps])
        if len(counts) < _ARRIVALS or counts[-1] < _READINGS:
            return None
        if counts[-1] > _LUMP * len(counts) and len(counts) < _LUMPS:
            return None
        low, usual, high = np.quantile([gap / n for gap, n in self._gaps], (0.25, 0.5, 0.75))
        if usual <= 0.0 or high - low > _STEADY * usual:
            return None
        times = np.cumsum([gap for gap, _ in self._gaps])
        first, second = np.triu_indices(len(counts), 1)
        slopes = (times[second] - times[first]) / (counts[second] - counts[first])
        return float(np.median(slopes))
