"""ClockTicks: tells when an instrument's own time is too coarse to place its readings."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

_READINGS = 3
_LONGEST_NS = 100_000_000
"""A tick shorter than this moves no reading by more than a computer's own hesitation may."""


class ClockTicks:
    """Watches for how long an instrument's own time stays the same while readings come.

    A clock that shows whole seconds gives all readings of a second one time, and one that stands
    still all readings: laid on a line through it, each would be moved by as much. Once so, it is
    taken to be so until the end.

    Parameters
    ----------
    interval_s : float, seconds
        From one reading to the next.
    """

    def __init__(self, interval_s: float) -> None:
        self._longest_ns = max(_LONGEST_NS, round(1.5 * interval_s * 1e9))
        self._coarse = False
        self._last_s: float | None = None
        self._same = 0
        self._since_ns = 0

    def coarse(self, own_s: NDArray[np.float64], arrived_ns: int) -> bool:
        """Tell whether the own times of readings that came together, and all before, are useless.

        Parameters
        ----------
        own_s : ndarray, float64, shape (n,), seconds
            n at least 1.
        arrived_ns : int, nanoseconds since the recording's zero
        """
        last_s = float(own_s[-1])
        if self._last_s != last_s:
            self._last_s, self._same, self._since_ns = last_s, 0, arrived_ns
        self._same += int(np.count_nonzero(own_s == last_s))
        lasts = arrived_ns - self._since_ns > self._longest_ns
        self._coarse = self._coarse or (lasts and self._same >= _READINGS)
        return self._coarse
