"""SkippedReadings: counts what an instrument's own clock shows to be missing."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

_LEARN = 10
_GAP = 1.5


class SkippedReadings:
    """Counts the steps that are missing between an instrument's own times.

    Parameters
    ----------
    step_s : float, seconds
        From one reading to the next; 0: learnt as the median of the first ten steps.

    Attributes
    ----------
    lost : int
    """

    def __init__(self, step_s: float = 0.0) -> None:
        self.lost = 0
        self._step_s = step_s
        self._first: list[float] = []
        self._last_s: float | None = None

    def restart(self) -> None:
        """Let the step to the next reading not count."""
        self._last_s = None

    def see(self, own_s: NDArray[np.float64]) -> None:
        """Take the own times of readings that came together, not decreasing."""
        before = own_s[:1] if self._last_s is None else [self._last_s]
        steps = np.diff(own_s, prepend=before)
        self._last_s = float(own_s[-1])
        if not self._step_s:
            self._first += [float(step) for step in steps if step > 0.0]
            if len(self._first) < _LEARN:
                return
            self._step_s, self._first = float(np.median(self._first)), []
            return
        wide = steps[steps > _GAP * self._step_s]
        self.lost += int(np.rint(wide / self._step_s - 1.0).sum())
