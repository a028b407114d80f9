"""TraceRates: which columns of a trace were read at a rate of their own."""

from __future__ import annotations

import copy
from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

import numpy as np
from numpy.typing import NDArray

from meterlog.model import Flag
from meterlog.recording.trace_pace import TracePace

if TYPE_CHECKING:
    from meterlog.recording.trace_rows import Rows

_FEWEST = 10
"""Fewer steps than these tell no rate."""
_MOST_STEPS = 0.75
"""So many of a column's steps from reading to reading, at least, are of one length, and pass over
rows in which it was not read. Cells left out by chance never come near it: half of their steps at
most are of lengths so alike, or from row to row. Chosen."""
_TOGETHER = 0.75
"""Columns that are read in so many of each other's rows are one meter's. Chosen."""
_SHARED = 0.5
"""A column is read in more of the others' rows, or fewer. Chosen."""


@dataclass(frozen=True, slots=True)
class Together:
    """Columns that are read at the same instants.

    Attributes
    ----------
    columns : tuple of int
        Places among the columns that were chosen.
    own : bool
        At a rate of their own: what is empty between is no reading that is missing.
    apart : tuple of int
        Columns that are read in rows of their own: there, nothing of these is missing.
    """

    columns: tuple[int, ...]
    own: bool = False
    apart: tuple[int, ...] = ()

    def rows_of(self, rows: Rows) -> Rows:
        """Give the rows in which these were read, or should have been, and their columns."""
        places = list(self.columns)
        if not self.own and not self.apart and len(places) == rows.values.shape[1]:
            return rows
        read = was_read(rows.flags)
        kept = read[:, places].any(axis=1)
        if not self.own:
            kept |= ~read[:, list(self.apart)].any(axis=1)
        values = np.asfortranarray(rows.values[:, places][kept])
        flags = np.asfortranarray(rows.flags[:, places][kept])
        return replace(rows, t_ns=rows.t_ns[kept], values=values, flags=flags)


class _Column:
    """The readings of one column; ``last_row`` -1: of none so far.

    Attributes
    ----------
    pace : TracePace
        Of its readings, so far.
    steps, over : int
        From reading to reading; those that pass over rows in which it was not read.
    """

    def __init__(self, pace: TracePace, steps: int, last_row: int) -> None:
        self.pace = pace
        self.steps, self.over = steps, 0
        self._last_row = last_row

    def take(self, t_ns: NDArray[np.int64], read: NDArray[np.bool_], first_row: int) -> None:
        """Take the next rows."""
        places = np.flatnonzero(read)
        if not len(places):
            return
        self.pace.take(t_ns[places])
        apart = np.diff(places + first_row, prepend=self._last_row)
        if self._last_row < 0:
            apart = apart[1:]
        self.steps += len(apart)
        self.over += int(np.count_nonzero(apart > 1))
        self._last_row = first_row + int(places[-1])

    @property
    def own_rate(self) -> bool:
        """Whether it is read regularly, and not in every row."""
        if self.steps < _FEWEST or self.over < _MOST_STEPS * self.steps:
            return False
        return self.pace.alike >= _MOST_STEPS


class TraceRates:
    """Learns from all rows of a trace which columns have a rate of their own, in bounded memory.

    A column that is read regularly in every n-th row, or between the rows of others, was read at
    another rate, as of a second meter; nothing is missing between its readings. One with cells left
    out here and there, or for a long stretch, has gaps.

    Parameters
    ----------
    count : int
        Columns.

    Source
    ------
    Our own rule; common practice has none.
    """

    def __init__(self, count: int) -> None:
        self._rows = TracePace()
        self._n = 0
        self._columns: list[_Column | None] = [None] * count
        """None while it was read in every row."""
        self._both = np.zeros((count, count))

    def take(self, rows: Rows) -> None:
        """Take the next rows."""
        read = was_read(rows.flags)
        full = [bool(one.all()) for one in read.T]
        for k, known in enumerate(self._columns):
            column = known
            if column is None and not full[k]:
                before = max(self._n - 1, 0)
                column = _Column(copy.deepcopy(self._rows), before, self._n - 1)
            self._columns[k] = column
            if column is not None:
                column.take(rows.t_ns, read[:, k], self._n)
        if all(full):
            self._both += len(rows.t_ns)
        else:
            self._both += read.T.astype(np.float64) @ read.astype(np.float64)
        self._rows.take(rows.t_ns)
        self._n += len(rows.t_ns)

    def together(self) -> tuple[Together, ...]:
        """Give the columns in parts, by when they are read; those without an own rate first."""
        count = len(self._columns)
        own = [k for k, one in enumerate(self._columns) if one is not None and one.own_rate]
        rest = tuple(k for k in range(count) if k not in own)
        parts: list[list[int]] = []
        for k in own:
            same = next((part for part in parts if self._part_of_rows(part[0], k)), None)
            if same is None:
                parts.append([k])
            else:
                same.append(k)
        apart = tuple(k for k in own if self._shared(rest, k) < _SHARED)
        told = [Together(rest, apart=apart)] if rest else []
        return *told, *(Together(tuple(part), own=True) for part in parts)

    def _part_of_rows(self, one: int, other: int) -> bool:
        most = max(self._both[one, one], self._both[other, other])
        return bool(self._both[one, other] >= _TOGETHER * most)

    def _shared(self, columns: Sequence[int], other: int) -> float:
        """Give in which part of the rows of ``other`` the best of some columns is read."""
        if not columns:
            return 0.0
        return float(self._both[list(columns), other].max() / self._both[other, other])


def was_read(flags: NDArray[np.uint8]) -> NDArray[np.bool_]:
    """Tell which cells are readings: an overload is one, an empty cell is none."""
    read: NDArray[np.bool_] = (flags & np.uint8(Flag.NO_DATA)) == 0
    return read
