"""Levels: current and voltages of a whole recording, coarse enough to be kept to its end.

What doubts a meter needs to look back: how far the feed moved when the current last changed is
known only from minutes ago. A tenth of a second is kept as one mean; that is some 3 MB an hour.
"""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from meterlog.analysis.rows import Rows

BIN_NS = 100_000_000
"""Length of a bin. Bins begin at whole multiples of it, however the rows are cut."""

_FIRST_ROOM = 1024
Sums = NDArray[np.float64]


def _sums(
    column: NDArray[np.float64] | None, new: NDArray[np.bool_] | None, starts: NDArray[np.intp]
) -> tuple[Sums, Sums]:
    """Add up, bin by bin, what was really read; give sums and counts."""
    if column is None:
        return np.zeros(len(starts)), np.zeros(len(starts))
    if new is None and np.isfinite(column.sum()):  # one sum is cheaper than a test of each value
        return np.add.reduceat(column, starts), np.diff(starts, append=len(column)).astype(float)
    there = np.isfinite(column)
    if new is not None:
        there &= new
    return (
        np.add.reduceat(np.where(there, column, 0.0), starts),
        np.add.reduceat(there.astype(np.float64), starts),
    )


class Levels:
    """Bins of the motor's current, feed and return.

    Rows are added in order of time; a bin may come in several parts.
    """

    def __init__(self) -> None:
        self._bins = np.empty(_FIRST_ROOM, np.int64)
        self._table = np.zeros((6, _FIRST_ROOM))
        self._count = 0

    def take(self, rows: Rows) -> None:
        """Take rows, each once."""
        if not len(rows):
            return
        bins = rows.t_ns // BIN_NS
        starts = np.concatenate(([0], np.flatnonzero(np.diff(bins)) + 1))
        parts = [
            *_sums(rows.amps, rows.amps_new, starts),
            *_sums(rows.feed, rows.volts_new, starts),
            *_sums(rows.back, rows.volts_new, starts),
        ]
        numbers, table = bins[starts], np.array(parts)
        if self._count and numbers[0] == self._bins[self._count - 1]:
            self._table[:, self._count - 1] += table[:, 0]
            numbers, table = numbers[1:], table[:, 1:]
        end = self._count + len(numbers)
        self._make_room(end)
        self._bins[self._count : end] = numbers
        self._table[:, self._count : end] = table
        self._count = end

    def _make_room(self, count: int) -> None:
        room = len(self._bins)
        if count <= room:
            return
        room = max(2 * room, count)
        bins, table = np.empty(room, np.int64), np.zeros((6, room))
        bins[: self._count] = self._bins[: self._count]
        table[:, : self._count] = self._table[:, : self._count]
        self._bins, self._table = bins, table

    @property
    def end_ns(self) -> int:
        """The end of the newest bin, which may still grow; 0 before the first."""
        return int(self._bins[self._count - 1] + 1) * BIN_NS if self._count else 0

    def within(self, start_ns: int, end_ns: int) -> LevelPart:
        """Give the bins that lie wholly between two times."""
        known = self._bins[: self._count]
        first = int(known.searchsorted(-(-start_ns // BIN_NS), side="left"))
        last = int(known.searchsorted(end_ns // BIN_NS - 1, side="right"))
        return self._part(first, max(first, last))

    def all(self) -> LevelPart:
        """Give all bins."""
        return self._part(0, self._count)

    def _part(self, first: int, last: int) -> LevelPart:
        return LevelPart(self._bins[first:last] * BIN_NS, self._table[:, first:last])


class LevelPart:
    """Some bins, side by side.

    Attributes
    ----------
    t_ns : ndarray, int64, shape (n,)
        Their beginnings.
    amps, feed, back : ndarray, float64, shape (n,)
        Means; NaN where nothing was read.
    """

    def __init__(self, t_ns: NDArray[np.int64], table: NDArray[np.float64]) -> None:
        self.t_ns = t_ns
        with np.errstate(invalid="ignore", divide="ignore"):
            self.amps: NDArray[np.float64] = table[0] / table[1]
            self.feed: NDArray[np.float64] = table[2] / table[3]
            self.back: NDArray[np.float64] = table[4] / table[5]

    def __len__(self) -> int:
        """Count the bins."""
        return len(self.t_ns)


def runs_of(mask: NDArray[np.bool_], t_ns: NDArray[np.int64]) -> list[tuple[int, int]]:
    """Give (start, end) in nanoseconds of each stretch of neighbouring bins in ``mask``."""
    hits = np.flatnonzero(mask)
    if not len(hits):
        return []
    breaks = np.flatnonzero((np.diff(hits) > 1) | (np.diff(t_ns[hits]) > BIN_NS)) + 1
    return [(int(t_ns[part[0]]), int(t_ns[part[-1]]) + BIN_NS) for part in np.split(hits, breaks)]
