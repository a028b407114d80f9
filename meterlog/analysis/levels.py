"""Levels: current and voltages of a whole recording, coarse enough to be kept to its end.

What doubts a meter needs to look back: how far the feed moved when the current last changed is
known only from minutes ago, and a meter that was on hold for hours. A tenth of a second is kept as
one mean; that is some 2 MB an hour, of which no more than 1 MB lies in memory.
"""

from __future__ import annotations

from collections.abc import Iterator

import numpy as np
from numpy.typing import NDArray

from meterlog.analysis.long_table import Attic, LongTable
from meterlog.analysis.rows import Rows

BIN_NS = 100_000_000
"""Length of a bin. Bins begin at whole multiples of it, however the rows are cut."""

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

    Parameters
    ----------
    attic : Attic or None
        Where bins are laid aside that are too many for memory; None: they stay in memory.
    """

    def __init__(self, attic: Attic | None = None) -> None:
        self._table = LongTable(1, 6, attic)

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
        numbers, sums, table = bins[starts], np.array(parts), self._table
        if table.held and numbers[0] == table.wholes[0, table.held - 1]:
            table.reals[:, table.held - 1] += sums[:, 0]
            numbers, sums = numbers[1:], sums[:, 1:]
        table.append(numbers[np.newaxis], sums)

    def __len__(self) -> int:
        """Count the bins."""
        return len(self._table)

    @property
    def end_ns(self) -> int:
        """The end of the newest bin, which may still grow; 0 before the first."""
        table = self._table
        return int(table.wholes[0, table.held - 1] + 1) * BIN_NS if table.held else 0

    @property
    def settled(self) -> int:
        """How many bins can't change any more: all but the newest."""
        return max(len(self) - 1, 0)

    def from_ns(self, start_ns: int) -> int:
        """Give how many bins begin before a time."""
        return self._table.find(-(-start_ns // BIN_NS), "left")

    def within(self, start_ns: int, end_ns: int) -> LevelPart:
        """Give the bins that lie wholly between two times, side by side: for some minutes."""
        return self.part(*self.places(start_ns, end_ns))

    def places(self, start_ns: int, end_ns: int) -> tuple[int, int]:
        """Give the first bin that lies wholly between two times, and the one after the last."""
        first = self.from_ns(start_ns)
        return first, max(first, self._table.find(end_ns // BIN_NS - 1, "right"))

    def lots(self, first: int, last: int) -> Iterator[LevelPart]:
        """Give the bins from ``first`` to before ``last`` lot by lot, however many there are."""
        for wholes, reals in self._table.lots(first, last):
            yield LevelPart(wholes[0] * BIN_NS, reals)

    def part(self, first: int, last: int) -> LevelPart:
        """Give the same side by side."""
        wholes, reals = self._table.rows(first, last)
        return LevelPart(wholes[0] * BIN_NS, reals)


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
