"""TracePace: how far apart the readings of a trace are, told from all its rows."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

_PER_OCTAVE = 32
"""Classes of length an octave; steps are told apart to 2 %, and each class keeps its mean."""
_ALIKE = 18
"""Classes within which steps count as one spacing: a factor of 1.5."""
_CLASSES = 64 * _PER_OCTAVE + 2 * _ALIKE
_FEWEST = 10
"""Fewer steps than these are pauses, not a rate."""
_PART = 0.05
_MOST = 0.5
ALONE_S = 0.1
"""Where one row alone leaves the interval unknown."""


class TracePace:
    """Learns the interval of a trace from its times, lot by lot, in bounded memory.

    The interval is the **largest typical** step from row to row, as silence is told by it: in a
    file of 100 readings a second that goes on at 10 a second, a step of 0.1 s is no gap. A spacing
    (steps within a factor of 1.5 of each other) is typical when at least ten steps have it and
    these are 5 % of all steps; or fill half of the time, as the long steps between lumps do; or,
    counting only steps that follow one of like length, fill 5 % of the time, as a slow part of a
    long fast file does. Without a typical spacing it is the median. Rows of the same instant say
    nothing.

    Source
    ------
    Our own rule; common practice has none.
    """

    def __init__(self) -> None:
        self._count = np.zeros(_CLASSES, np.int64)
        self._time = np.zeros(_CLASSES)
        self._steady = np.zeros(_CLASSES, np.int64)
        self._steady_time = np.zeros(_CLASSES)
        self._last_ns: int | None = None
        self._last_class = -_CLASSES

    def take(self, t_ns: NDArray[np.int64]) -> None:
        """Learn from the next rows.

        Parameters
        ----------
        t_ns : ndarray, int64, shape (n,), nanoseconds, rising
        """
        if not len(t_ns):
            return
        before = t_ns[0] if self._last_ns is None else self._last_ns
        steps = np.diff(t_ns, prepend=before)
        steps = steps[steps > 0].astype(np.float64)
        self._last_ns = int(t_ns[-1])
        if not len(steps):
            return
        classes = _ALIKE + (np.log2(steps) * _PER_OCTAVE).astype(np.int64)
        steady = np.abs(np.diff(classes, prepend=self._last_class)) <= _ALIKE
        self._last_class = int(classes[-1])
        self._count += np.bincount(classes, minlength=_CLASSES)
        self._time += np.bincount(classes, steps, _CLASSES)
        self._steady += np.bincount(classes[steady], minlength=_CLASSES)
        self._steady_time += np.bincount(classes[steady], steps[steady], _CLASSES)

    @property
    def interval_s(self) -> float:
        """The interval, seconds."""
        if not self._count.any():
            return ALONE_S
        count, time = _spread(self._count), _spread(self._time)
        steady, steady_time = _spread(self._steady), _spread(self._steady_time)
        whole = self._time.sum()
        typical = (count >= _FEWEST) & (
            (count >= _PART * self._count.sum()) | (time >= _MOST * whole)
        )
        typical |= (steady >= _FEWEST) & (steady_time >= _PART * whole)
        found = np.flatnonzero(typical & (self._count > 0))
        if not len(found):
            return self._median(0, _CLASSES)
        # The highest class that passes lies at the upper end of its spacing: look around its
        # middle once more.
        middle = _middle(self._count, int(found[-1]) - _ALIKE, int(found[-1]) + 1)
        return self._median(middle - _ALIKE // 2, middle + _ALIKE // 2 + 1)

    @property
    def alike(self) -> float:
        """The part of the steps that are within a factor of 1.5 of their median; 0 without any."""
        total = int(self._count.sum())
        if not total:
            return 0.0
        middle = _middle(self._count, 0, _CLASSES)
        return float(self._count[max(middle - _ALIKE, 0) : middle + _ALIKE + 1].sum() / total)

    def _median(self, start: int, end: int) -> float:
        middle = _middle(self._count, start, end)
        return float(self._time[middle] / self._count[middle] / 1e9)


def _spread(numbers: NDArray[np.generic]) -> NDArray[np.float64]:
    """Give, for each class, the sum over it and the classes up to a factor of 1.5 below."""
    total = np.cumsum(numbers.astype(np.float64))
    total[_ALIKE:] -= np.concatenate(([0.0], total[: -_ALIKE - 1]))
    return total


def _middle(count: NDArray[np.int64], start: int, end: int) -> int:
    """Give the class in which the median of the steps of some classes lies."""
    start = max(0, start)
    total = np.cumsum(count[start:end])
    return start + int(np.searchsorted(total, (total[-1] + 1) // 2))
