"""CellMemory: cells of one level that have been read and checked, kept so that they are read once.

The levels above the lowest are a fraction of the readings, and every picture asks for the same
cells of them again. Room is set apart for all; memory is used by what was read.
"""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from meterlog.recording.pyramid_form import FACTOR, Form, Words
from meterlog.recording.pyramid_maker import Cells

_STEPS = np.arange(FACTOR)


class CellMemory:
    """The cells of the whole records of one level.

    Parameters
    ----------
    form : Form
    records : int
    """

    def __init__(self, form: Form, records: int) -> None:
        self._form = form
        cells = records * FACTOR
        self._first_ns = np.empty(cells, np.int64)
        self._low = np.empty((form.channels, cells))
        self._high = np.empty((form.channels, cells))
        self._has = np.zeros(records, np.bool_)

    @staticmethod
    def bytes_for(channels: int, records: int) -> int:
        """Give how much it takes once all has been read."""
        return records * FACTOR * 8 * (1 + 2 * channels)

    def lacking(self, numbers: NDArray[np.int64]) -> NDArray[np.int64]:
        """Give those of some records that have not been kept."""
        return numbers[~self._has[numbers]]

    def lacks(self, first: int, last: int) -> tuple[int, int]:
        """Give the shortest run of records in which all lie that ``first`` to ``last`` lack."""
        missing = np.flatnonzero(~self._has[first:last])
        return (first + int(missing[0]), first + int(missing[-1]) + 1) if len(missing) else (0, 0)

    def keep_run(self, first: int, records: Words) -> None:
        """Keep records that lie side by side; the first has this number."""
        last = first + len(records)
        where = slice(first * FACTOR, last * FACTOR)
        self._first_ns[where] = self._form.first_ns(records).ravel()
        for kept, found in zip((self._low, self._high), self._form.extremes(records), strict=True):
            for into, column in zip(kept, found.transpose(1, 0, 2), strict=True):
                into[where].reshape(-1, FACTOR)[:] = column
        self._has[first:last] = True

    def keep(self, numbers: NDArray[np.int64], records: Words) -> None:
        """Keep records of these numbers."""
        where = _cells_of(numbers)
        self._first_ns[where] = self._form.first_ns(records).ravel()
        low, high = self._form.extremes(records)
        channels = self._form.channels
        self._low[:, where] = low.transpose(1, 0, 2).reshape(channels, -1)
        self._high[:, where] = high.transpose(1, 0, 2).reshape(channels, -1)
        self._has[numbers] = True

    def run(self, first: int, last: int, channels: list[int]) -> Cells:
        """Give the cells of records ``first`` to ``last`` (exclusive), which have been kept.

        They are views; nobody may write into them.
        """
        where = slice(first * FACTOR, last * FACTOR)
        if channels == list(range(self._form.channels)):
            return Cells(self._first_ns[where], self._low[:, where], self._high[:, where])
        low, high = self._low[channels, where], self._high[channels, where]
        return Cells(self._first_ns[where], low, high)

    def of(self, numbers: NDArray[np.int64], channels: list[int]) -> Cells:
        """Give the cells of records of these numbers, which have been kept."""
        where = _cells_of(numbers)
        low = np.stack([self._low[one].take(where) for one in channels])
        high = np.stack([self._high[one].take(where) for one in channels])
        return Cells(self._first_ns.take(where), low, high)

    def has(self, number: int) -> bool:
        """Tell whether a record has been kept."""
        return bool(self._has[number])

    def times(self, number: int) -> NDArray[np.int64]:
        """Give the times of one record's cells, which has been kept."""
        found: NDArray[np.int64] = self._first_ns[number * FACTOR : (number + 1) * FACTOR]
        return found


def _cells_of(numbers: NDArray[np.int64]) -> NDArray[np.int64]:
    cells: NDArray[np.int64] = (numbers[:, None] * FACTOR + _STEPS).ravel()
    return cells
