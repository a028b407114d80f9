"""Heating: the current as a fuse feels it, in time."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from meterlog.analysis.rows import Rows

BIN_BITS = 23
"""Readings within 2**23 ns, about 8 milliseconds, count as their effective value: the shortest
time in the tables is 20 ms, and ripple or a pulsed feed is no break in the heating."""


class Heating:
    """Gives one effective (root mean square) current a bin, bins on a fixed grid of time.

    A bin that is not over waits for its rest, so that the answer does not depend on how the rows
    were cut. Slow readings each are a bin by themselves.

    Source
    ------
    Effective value: heat goes with the mean square of the current (Joule).
    """

    def __init__(self) -> None:
        self._t: NDArray[np.int64] = np.empty(0, np.int64)
        self._amps: NDArray[np.float64] = np.empty(0)
        self._fresh: NDArray[np.bool_] = np.empty(0, np.bool_)
        self._missing = False

    def take(self, rows: Rows) -> tuple[NDArray[np.int64], NDArray[np.float64], NDArray[np.bool_]]:
        """Take rows, each once, and give the bins that are over.

        Returns
        -------
        tuple of ndarray int64, float64 and bool, each of shape (bins,)
            Mean time of a bin's readings, their effective value in amperes, and whether readings
            were missing before or within it.
        """
        self._append(rows)
        if not len(self._t):
            return self._bins(0)
        begun = int(self._t[-1]) >> BIN_BITS << BIN_BITS
        return self._bins(int(np.searchsorted(self._t, begun)))

    def rest(self) -> tuple[NDArray[np.int64], NDArray[np.float64], NDArray[np.bool_]]:
        """Give the bin that is still open, without ending it."""
        t, amps, fresh = self._t, self._amps, self._fresh
        bins = self._bins(len(t))
        self._t, self._amps, self._fresh = t, amps, fresh
        return bins

    def _append(self, rows: Rows) -> None:
        if rows.amps_new is None and rows.usable.all() and not rows.gap.any():
            fresh = np.zeros(len(rows), np.bool_)
            fresh[:1] = self._missing
            self._missing = self._missing and not len(rows)
            self._join(rows.t_ns, rows.amps, fresh)
            return
        missing = ~rows.usable | rows.gap
        read = rows.usable if rows.amps_new is None else rows.usable & rows.amps_new
        # Whatever was missing since the reading before marks the next one.
        seen = np.concatenate(([0], np.cumsum(missing)))
        at = np.flatnonzero(read)
        until = seen[at + 1]
        since = np.concatenate(([0], until[:-1]))
        fresh = until > since
        if len(at):
            fresh[0] |= self._missing
            self._missing = bool(seen[-1] > until[-1])
            self._join(rows.t_ns[at], rows.amps[at], fresh)
        else:
            self._missing |= bool(seen[-1])

    def _join(
        self, t: NDArray[np.int64], amps: NDArray[np.float64], fresh: NDArray[np.bool_]
    ) -> None:
        self._t = np.concatenate((self._t, t))
        self._amps = np.concatenate((self._amps, amps))
        self._fresh = np.concatenate((self._fresh, fresh))

    def _bins(self, count: int) -> tuple[NDArray[np.int64], NDArray[np.float64], NDArray[np.bool_]]:
        t, amps, fresh = self._t[:count], self._amps[:count], self._fresh[:count]
        self._t, self._amps, self._fresh = self._t[count:], self._amps[count:], self._fresh[count:]
        if not count:
            return t, amps, fresh
        numbers = t >> BIN_BITS
        starts = np.concatenate(([0], np.flatnonzero(numbers[1:] != numbers[:-1]) + 1))
        sizes = np.diff(np.append(starts, count))
        if len(starts) == count:
            return t, np.abs(amps), fresh
        offsets = np.add.reduceat(t - t[np.repeat(starts, sizes)], starts) // sizes
        squares = np.add.reduceat(np.square(amps), starts)
        return t[starts] + offsets, np.sqrt(squares / sizes), np.logical_or.reduceat(fresh, starts)
