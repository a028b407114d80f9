"""CurrentReads: the readings of the current themselves, where rows hold them over."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from meterlog.analysis.rows import Rows

_KEPT = 2
"""An edge looks back at two readings: the nearer may be half-way already."""


_EVER = -(2**62)
"""Before any reading."""


def last_read_ns(rows: Rows, first: int, last: int) -> int:
    """Give when the current was last read in rows ``first`` to ``last`` (exclusive).

    Returns
    -------
    int, nanoseconds
        Long ago where it was not, and where one meter reads everything.
    """
    if rows.amps_new is None:
        return _EVER
    new = np.flatnonzero(rows.amps_new[first:last])
    return int(rows.t_ns[first + int(new[-1])]) if len(new) else _EVER


class CurrentReads:
    """Gives for a row the readings of the current around it.

    With two meters there is a row at every reading of either. What changed did so between two
    readings of the current, not between two rows, and is known no better than these are apart.
    """

    def __init__(self) -> None:
        self._before_t = np.empty(0, np.int64)
        self._before = np.empty(0)
        self._t, self._sizes = self._before_t, self._before

    def take(self, rows: Rows, sizes: NDArray[np.float64], start: int, stop: int) -> None:
        """Take rows ``start`` to ``stop`` (exclusive), each once, in order.

        Parameters
        ----------
        rows : Rows
        sizes : ndarray, float64, shape (n,), amperes
            Size of the current.
        start, stop : int
        """
        if rows.amps_new is None:
            return
        new = rows.amps_new[start:stop]
        self._before_t, self._before = self._t[-_KEPT:], self._sizes[-_KEPT:]
        self._t = np.concatenate((self._before_t, rows.t_ns[start:stop][new]))
        self._sizes = np.concatenate((self._before, sizes[start:stop][new]))

    def around(
        self, rows: Rows, sizes: NDArray[np.float64], index: int, *, rising: bool
    ) -> tuple[NDArray[np.int64], NDArray[np.float64], int]:
        """Give times, sizes and the place in them of the reading in row ``index``.

        Parameters
        ----------
        rows : Rows
            As taken last.
        sizes : ndarray, float64, shape (n,)
        index : int
            A row in which the current was read, and not the first of all.
        rising : bool
            The current came: only the two readings on both sides are given, as how far those
            that follow have come depends on how the rows were cut.
        """
        if rows.amps_new is None:
            return rows.t_ns, sizes, index
        place = int(np.searchsorted(self._t, rows.t_ns[index], side="left"))
        if not 0 < place < len(self._t):
            return rows.t_ns, sizes, index
        first = place - 1 if rising else max(place - 2, 0)
        return self._t[first : place + 1], self._sizes[first : place + 1], place - first
