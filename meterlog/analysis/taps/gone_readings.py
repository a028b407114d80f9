"""GoneReadings: what the readings were while next to no current flowed.

Kept are the sums over such readings, a tenth of a second at a time: bounded by the length of the
recording, whatever its rate, and still exact for a dropout of two readings.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from meterlog.analysis.levels import BIN_NS
from meterlog.analysis.rows import Rows

_FIRST_ROOM = 256
_N, _AMPS, _VOLTS_N, _ACROSS, _FEED = range(5)

Mask = NDArray[np.bool_]
Sums = NDArray[np.float64]
Pick = slice | NDArray[np.intp]


@dataclass(frozen=True, slots=True)
class GoneFigures:
    """Readings while the current was gone.

    Attributes
    ----------
    n : int
        Readings of the current.
    mean_a : float, amperes
        0 without a reading.
    across_v : float or None, volts
        Mean voltage across the motor; None where feed or return was not read meanwhile.
    feed_v : float or None, volts
        Mean of the feed.
    """

    n: int = 0
    mean_a: float = 0.0
    across_v: float | None = None
    feed_v: float | None = None


class GoneReadings:
    """Follows the readings below a current.

    Parameters
    ----------
    below_a : float, amperes
    """

    def __init__(self, below_a: float) -> None:
        self._below_a = below_a
        self._times = np.empty((2, _FIRST_ROOM), np.int64)
        self._table = np.zeros((5, _FIRST_ROOM))
        self._count = 0

    def take(self, rows: Rows) -> None:
        """Take rows, each once, in order."""
        with np.errstate(invalid="ignore"):
            gone = np.flatnonzero(rows.usable & (np.abs(rows.amps) < self._below_a))
        if not len(gone):
            return
        # One stretch, such as an hour with the fan off, needs no copy of its columns.
        whole = int(gone[-1]) - int(gone[0]) + 1 == len(gone)
        pick = slice(int(gone[0]), int(gone[-1]) + 1) if whole else gone
        t_ns = rows.t_ns[pick]
        starts = np.concatenate(([0], np.flatnonzero(np.diff(t_ns // BIN_NS)) + 1))
        ends = np.append(starts[1:], len(t_ns)) - 1
        times = np.array([t_ns[starts], t_ns[ends]])
        table = np.array([np.add.reduceat(one, starts) for one in _columns(rows, pick)])
        last = self._count - 1
        if last >= 0 and self._times[0, last] // BIN_NS == times[0, 0] // BIN_NS:
            self._table[:, last] += table[:, 0]
            self._times[1, last] = times[1, 0]
            times, table = times[:, 1:], table[:, 1:]
        self._append(times, table)

    def _append(self, times: NDArray[np.int64], table: Sums) -> None:
        end = self._count + times.shape[1]
        if end > self._times.shape[1]:
            room = max(2 * self._times.shape[1], end)
            times_room, table_room = np.empty((2, room), np.int64), np.zeros((5, room))
            times_room[:, : self._count] = self._times[:, : self._count]
            table_room[:, : self._count] = self._table[:, : self._count]
            self._times, self._table = times_room, table_room
        self._times[:, self._count : end] = times
        self._table[:, self._count : end] = table
        self._count = end

    def within(self, start_ns: int, end_ns: int, *, across: bool) -> GoneFigures:
        """Give the figures of a stretch without current.

        Parameters
        ----------
        start_ns, end_ns : int, nanoseconds
            Readings that share a tenth of a second with others outside are left out, unless
            there are no more.
        across : bool
            Feed and return are both recorded.
        """
        first, last = self._times[:, : self._count]
        inside = (first >= start_ns) & (last <= end_ns)
        if self._table[_N, : self._count][inside].sum() < 2:
            inside = (first <= end_ns) & (last >= start_ns)
        sums = self._table[:, : self._count][:, inside].sum(axis=1)
        n, volts_n = float(sums[_N]), float(sums[_VOLTS_N])
        return GoneFigures(
            n=round(n),
            mean_a=float(sums[_AMPS]) / n if n else 0.0,
            across_v=float(sums[_ACROSS]) / volts_n if across and volts_n else None,
            feed_v=float(sums[_FEED]) / volts_n if volts_n else None,
        )


def _columns(rows: Rows, pick: Pick) -> list[Sums]:
    """Give count and sum of the current, then of the voltages, reading by reading."""
    amps = rows.amps[pick]
    fresh = _new(rows.amps_new, pick, len(amps))
    counted = [fresh.astype(np.float64), np.where(fresh, amps, 0.0)]
    if rows.feed is None:
        return [*counted, *(np.zeros(len(amps)) for _ in range(3))]
    feed = rows.feed[pick]
    back = np.zeros(len(amps)) if rows.back is None else rows.back[pick]
    there = _new(rows.volts_new, pick, len(amps)) & np.isfinite(feed) & np.isfinite(back)
    return [
        *counted,
        there.astype(np.float64),
        np.where(there, feed - back, 0.0),
        np.where(there, feed, 0.0),
    ]


def _new(column: Mask | None, pick: Pick, count: int) -> Mask:
    return np.ones(count, np.bool_) if column is None else column[pick]
