"""LevelsBefore: feed and return from when the current surely still flowed.

Between the contact that opens and the reading that shows no current lies the time that the current
needs to decay, and with two meters what their times disagree. A fast meter reads many times
meanwhile: the voltages right before that reading are those of the open circuit already, and held
against them nothing has changed. So they are taken from earlier.

Source: current in R and L decays with L / R, a millisecond or less in these motors (textbook).
"""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from meterlog.analysis.pieces import FALL_NS
from meterlog.analysis.rows import Rows

_READS = 2
"""Readings of the current looked at: the nearer one may be half-way already."""

Levels = tuple[NDArray[np.float64], NDArray[np.float64]]
_NONE: Levels = (np.empty(0), np.empty(0))


class LevelsBefore:
    """Remembers feed and return beside the last current, as far back as is needed.

    Parameters
    ----------
    apart_ns : int, nanoseconds
        Voltages may have been read so much later than the current beside them.
    coast_ns : int, nanoseconds
        So long after its current the motor may still turn.
    """

    def __init__(self, apart_ns: int, coast_ns: int) -> None:
        self._apart_ns, self._coast_ns = apart_ns, coast_ns
        self._t = np.empty(0, np.int64)
        self._new = np.empty(0, np.bool_)
        self._volts = np.empty((2, 0))
        self._last_ns: int | None = None
        self._known, self._known_ns = _NONE, 0

    def note(self, rows: Rows, first: int, last: int, *, goes_on: bool) -> None:
        """Take rows ``first`` to ``last`` (exclusive), all with current.

        ``goes_on``: they continue the rows taken before.
        """
        # Most of a long stretch is never asked for: so little is copied.
        start = self._needed(rows.t_ns, rows.amps_new, first, last)
        t = rows.t_ns[start:last]
        new = np.ones(len(t), np.bool_) if rows.amps_new is None else rows.amps_new[start:last]
        volts = np.full((2, len(t)), np.nan)
        for row, column in enumerate((rows.feed, rows.back)):
            if column is not None:
                volts[row] = column[start:last]
        if goes_on and start == first:
            t = np.concatenate((self._t, t))
            new = np.concatenate((self._new, new))
            volts = np.concatenate((self._volts, volts), axis=1)
            keep = self._needed(t, new, 0, len(t))
            t, new, volts = t[keep:], new[keep:], volts[:, keep:]
        self._t, self._new, self._volts = t, new, volts
        self._last_ns = int(rows.t_ns[last - 1])

    def _needed(
        self, t_ns: NDArray[np.int64], new: NDArray[np.bool_] | None, first: int, last: int
    ) -> int:
        """Give the first of the rows that a later question can still reach; ``first`` for all."""
        until = int(np.searchsorted(t_ns[first:last], int(t_ns[last - 1]) - FALL_NS, side="right"))
        if new is None:
            return max(first + until - _READS, first)
        reads = np.flatnonzero(new[first : first + until])
        if len(reads) < _READS:
            return first
        oldest_ns = int(t_ns[first + int(reads[-_READS])]) - self._apart_ns
        row = int(np.searchsorted(t_ns[first:last], oldest_ns, side="right"))
        return max(first + row - 1, first)

    def forget(self) -> None:
        """Know that the current has gone since."""
        self._last_ns = None

    def turns_at(self, t_ns: int) -> bool:
        """Tell whether the current flowed so shortly ago that the motor may still turn."""
        return self._last_ns is not None and t_ns - self._last_ns <= self._coast_ns

    def before(self, gone_ns: int | None) -> Levels:
        """Give feed and return beside the last two readings that surely had their current.

        Parameters
        ----------
        gone_ns : int or None, nanoseconds
            The first reading without current; None where it went while nothing was read.

        Returns
        -------
        tuple of ndarray, float64, volts
            NaN where not read. After a current that came back only for a moment, those from
            before that; without such, the earliest there are.
        """
        if not len(self._t):
            return _NONE
        until_ns = (int(self._t[-1]) if gone_ns is None else gone_ns) - FALL_NS
        reads = self._t[self._new & (self._t <= until_ns)][-_READS:] - self._apart_ns
        rows = np.searchsorted(self._t, reads, side="right") - 1
        rows = rows[rows >= 0]
        if len(rows):
            self._known = (self._volts[0, rows], self._volts[1, rows])
        elif not self._known[0].size or until_ns - self._known_ns > self._coast_ns:
            self._known = (self._volts[0, :_READS].copy(), self._volts[1, :_READS].copy())
        self._known_ns = until_ns
        return self._known
