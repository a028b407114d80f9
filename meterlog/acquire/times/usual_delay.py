"""UsualDelay: how late an instrument's readings usually are, and in what company."""

from __future__ import annotations

import math

_SPAN = 32
"""Arrivals in half of what is remembered."""
_FORGET = 1.0 / 16.0


class UsualDelay:
    """Remembers the last arrivals that nothing was wrong with, in constant memory.

    Attributes
    ----------
    readings_together : float
        Usual number of readings an arrival.
    """

    def __init__(self) -> None:
        self.readings_together = 1.0
        self._most = [0.0, 0.0]
        self._arrivals = 0
        self._count = 0
        self._mean_s = 0.0
        self._squares = 0.0

    @property
    def most_s(self) -> float:
        """The latest of the last 32 to 64 arrivals, seconds after the line."""
        return max(self._most)

    @property
    def scatter_s(self) -> float:
        """Standard deviation of all delays so far, seconds; 0 before the third arrival."""
        return math.sqrt(self._squares / (self._count - 1)) if self._count > 2 else 0.0

    @property
    def count(self) -> int:
        """Arrivals so far."""
        return self._count

    def add(self, late_s: float, readings: int | None) -> None:
        """Note an arrival ``late_s`` after the line, of so many readings.

        None for readings: as many came together as never usually do.
        """
        self._count += 1
        step = late_s - self._mean_s
        self._mean_s += step / self._count
        self._squares += step * (late_s - self._mean_s)
        if readings is not None:
            forget = _FORGET if self._count > 1 else 1.0
            self.readings_together += forget * (readings - self.readings_together)
        self._arrivals += 1
        if self._arrivals >= _SPAN:
            self._most, self._arrivals = [late_s, self._most[0]], 0
        self._most[0] = max(self._most[0], late_s)
