"""CurrentBins: the current of a whole recording, as finely as bounded memory allows.

Bins lie on a fixed grid of time and hold whole-number sums, so that they are the same to the last
bit however the rows were cut. When there are too many, each two become one.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from meterlog.analysis.rows import Rows

FINEST_BITS = 20
"""The finest bins are 2**20 ns long, about a millisecond."""
MOST_BINS = 65_536
_UNITS = 65_536.0
"""Sums are kept in 1/65536 A and V (15 microamperes), to 10,000 A and V."""
_LARGEST = 1e4
_AMPS_N, _AMPS, _VOLTS_N, _VOLTS = range(4)


@dataclass(frozen=True, slots=True, eq=False)
class BinTable:
    """Bins in which the current was read.

    Attributes
    ----------
    t_ns : ndarray, int64, shape (n,)
        Their middles.
    width_ns : int
        Length of each.
    count : ndarray, int64, shape (n,)
        Readings of the current.
    amps : ndarray, float64, shape (n,)
        Mean size of the current.
    volts : ndarray, float64, shape (n,)
        Mean voltage across the motor; NaN where not read, or not at both its ends.
    """

    t_ns: NDArray[np.int64]
    width_ns: int
    count: NDArray[np.int64]
    amps: NDArray[np.float64]
    volts: NDArray[np.float64]

    def between(self, start_ns: int, end_ns: int) -> BinTable:
        """Give the bins whose middles lie between two times."""
        first, last = np.searchsorted(self.t_ns, (start_ns, end_ns)).tolist()
        cut = slice(first, last)
        return BinTable(
            self.t_ns[cut], self.width_ns, self.count[cut], self.amps[cut], self.volts[cut]
        )

    def __len__(self) -> int:
        """Count the bins."""
        return len(self.t_ns)


def _sums(
    column: NDArray[np.float64] | None, new: NDArray[np.bool_] | None, starts: NDArray[np.intp]
) -> tuple[NDArray[np.int64], NDArray[np.int64]]:
    """Count and add up, bin by bin, what was really read."""
    if column is None:
        nothing = np.zeros(len(starts), np.int64)
        return nothing, nothing
    there = np.isfinite(column)
    if new is not None:
        there &= new
    counts = np.add.reduceat(there, starts, dtype=np.int64)
    whole = np.rint(np.clip(column, -_LARGEST, _LARGEST) * _UNITS)
    whole = np.where(there, whole, 0.0) if int(counts.sum()) < len(column) else whole
    return counts, np.add.reduceat(whole.astype(np.int64), starts)


class CurrentBins:
    """Bins of the motor's current and voltage, in order of time."""

    def __init__(self) -> None:
        self._bits = FINEST_BITS
        self._numbers = np.empty(0, np.int64)
        self._table = np.empty((4, 0), np.int64)
        self._count = 0

    def take(self, rows: Rows) -> None:
        """Take rows, each once."""
        if not len(rows):
            return
        numbers = rows.t_ns >> self._bits
        starts = np.concatenate(([0], np.flatnonzero(numbers[1:] != numbers[:-1]) + 1))
        across = None if rows.feed is None or rows.back is None else rows.feed - rows.back
        amps = _sums(np.abs(rows.amps), rows.amps_new, starts)
        volts = _sums(across, rows.volts_new, starts)
        self._add(numbers[starts], np.array([*amps, *volts]))
        while self._count > MOST_BINS:
            self._coarsen()

    def _add(self, numbers: NDArray[np.int64], table: NDArray[np.int64]) -> None:
        if self._count and numbers[0] == self._numbers[self._count - 1]:
            self._table[:, self._count - 1] += table[:, 0]
            numbers, table = numbers[1:], table[:, 1:]
        end = self._count + len(numbers)
        if end > len(self._numbers):
            room = max(2 * len(self._numbers), end, 1024)
            wider = np.zeros((4, room), np.int64)
            wider[:, : self._count] = self._table[:, : self._count]
            self._numbers, self._table = np.resize(self._numbers, room), wider
        self._numbers[self._count : end] = numbers
        self._table[:, self._count : end] = table
        self._count = end

    def _coarsen(self) -> None:
        """Make one of each two bins."""
        self._bits += 1
        numbers = self._numbers[: self._count] >> 1
        starts = np.concatenate(([0], np.flatnonzero(numbers[1:] != numbers[:-1]) + 1))
        table = np.add.reduceat(self._table[:, : self._count], starts, axis=1)
        self._count = len(starts)
        self._numbers[: self._count] = numbers[starts]
        self._table[:, : self._count] = table

    def table(self) -> BinTable:
        """Give the bins so far in which the current was read."""
        table = self._table[:, : self._count]
        read = table[_AMPS_N] > 0
        width = 1 << self._bits
        table = table[:, read]
        middles = self._numbers[: self._count][read] * width + width // 2
        with np.errstate(invalid="ignore", divide="ignore"):
            volts = table[_VOLTS] / _UNITS / table[_VOLTS_N]
        amps = table[_AMPS] / _UNITS / table[_AMPS_N]
        return BinTable(middles, width, table[_AMPS_N], amps, volts)
