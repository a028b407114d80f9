"""Pixels: what falls between each two edges, gathered from cells and, where it matters, rows."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from meterlog.recording.pyramid_form import FACTOR
from meterlog.recording.pyramid_level import NEVER
from meterlog.recording.pyramid_maker import Cells


@dataclass(frozen=True, slots=True, eq=False)
class Cut:
    """Cells that an edge goes through, where it matters on which side their readings lie.

    Attributes
    ----------
    numbers : ndarray, int64, shape (n,)
    next_ns : ndarray, int64, shape (n,)
        When the cell behind each begins.
    needed : ndarray, bool, shape (channels, n)
        Of which channels it matters.
    """

    numbers: NDArray[np.int64]
    next_ns: NDArray[np.int64]
    needed: NDArray[np.bool_]


class Pixels:
    """Least and greatest of each pixel.

    Parameters
    ----------
    edges : ndarray, int64, shape (n + 1,), nanoseconds
    channels : int
        How many are gathered; whatever is taken is of these, in one order.

    Attributes
    ----------
    low, high : ndarray, float64, shape (channels, n)
        Infinite and minus infinite where a pixel has no value.
    has_rows : ndarray, bool, shape (n,)
    """

    def __init__(self, edges: NDArray[np.int64], channels: int) -> None:
        self._edges = edges
        count = len(edges) - 1
        self.low = np.full((channels, count), np.inf)
        self.high = np.full((channels, count), -np.inf)
        self.has_rows = np.zeros(count, np.bool_)

    def take_run(self, first: int, cells: Cells) -> Cut:
        """Take cells that lie side by side, and give those that must be looked into.

        A cell that an edge goes through needs no looking into where nothing in it is beyond what
        the pixels on both sides have anyway.

        Parameters
        ----------
        first : int
            Number of the first cell.
        cells : Cells
            From one that begins before the first edge, if there is one, to one that begins at or
            after the last.
        """
        # Of readings in a cell, those before the edge and those after it may be on both sides.
        split = np.searchsorted(cells.first_ns, self._edges) - 1
        start, stop = split[:-1] + 1, split[1:]
        some = np.flatnonzero(start < stop)
        if len(some):
            # Every second stretch is one of whole cells; the last cell begins behind them all.
            bounds = np.stack([start[some], stop[some]], axis=1).ravel()
            bounds = bounds[:-1] if bounds[-1] == len(cells) else bounds
            for number, (low, high) in enumerate(zip(cells.low, cells.high, strict=True)):
                # Infinite, not NaN, where there is no value: it is compared with what cells hold.
                self.low[number, some] = np.fmin(np.inf, np.fmin.reduceat(low, bounds)[::2])
                self.high[number, some] = np.fmax(-np.inf, np.fmax.reduceat(high, bounds)[::2])
            self.has_rows[some] = True
        cut = split[np.flatnonzero(np.diff(split, prepend=-1))]
        following = np.append(cells.first_ns[1:], NEVER)[cut]
        picked = Cells(cells.first_ns[cut], cells.low[:, cut], cells.high[:, cut])
        return self._left(first + cut, picked, following)

    def take_cells(self, numbers: NDArray[np.int64], cells: Cells, after: NDArray[np.int64]) -> Cut:
        """Take cells in rising order, eight and eight side by side; else as :meth:`take_run`.

        Parameters
        ----------
        numbers : ndarray, int64, shape (n,)
        cells : Cells
            n of them.
        after : ndarray, int64, shape (n / 8,)
            When the cell behind each eight begins.
        """
        times = cells.first_ns
        following = np.append(times[1:], NEVER)
        following[FACTOR - 1 :: FACTOR] = after
        following = np.minimum(following, np.repeat(after, FACTOR))
        following = np.maximum(following, times)  # where there is no cell
        start, end = self._pixel_of(times), self._pixel_of(following)
        whole = start == end
        self._gather(start[whole], cells.low[:, whole], cells.high[:, whole])
        cut = np.flatnonzero(~whole)
        picked = Cells(times[cut], cells.low[:, cut], cells.high[:, cut])
        return self._left(numbers[cut], picked, following[cut])

    def _left(self, numbers: NDArray[np.int64], cells: Cells, following: NDArray[np.int64]) -> Cut:
        """Give those of some cells with an edge in them that must be looked into."""
        start, end = self._pixel_of(cells.first_ns), self._pixel_of(following)
        low, high = cells.low, cells.high
        needed = ~(self._covers(start, low, high) & self._covers(end, low, high))
        needed |= end > start + 1
        left = np.flatnonzero(needed.any(axis=0))
        return Cut(numbers[left], following[left], needed[:, left])

    def take_rows(self, t_ns: NDArray[np.int64], values: NDArray[np.float64]) -> None:
        """Take rows in rising order; values of shape (channels, n)."""
        if len(t_ns) < len(self._edges):
            self._gather(self._pixel_of(t_ns), values, values)
            return
        self.take_between(np.searchsorted(t_ns, self._edges), values)

    def take_between(self, bounds: NDArray[np.intp], values: NDArray[np.float64]) -> None:
        """Take rows; ``bounds`` counts those before each edge."""
        some = np.flatnonzero(bounds[1:] > bounds[:-1])
        if not len(some):
            return
        shown = values[:, : bounds[-1]]
        self._merge(some, shown, shown, bounds[some])

    def _pixel_of(self, t_ns: NDArray[np.int64]) -> NDArray[np.intp]:
        return np.searchsorted(self._edges, t_ns, "right") - 1

    def _covers(
        self, pixel: NDArray[np.intp], low: NDArray[np.float64], high: NDArray[np.float64]
    ) -> NDArray[np.bool_]:
        """Tell, by channel, whether readings of these extremes change nothing in these pixels."""
        count = len(self.has_rows)
        outside = (pixel < 0) | (pixel >= count)
        here = np.where(outside, 0, pixel)
        # Comparisons with NaN, which is no reading, are false.
        beyond = (low < self.low[:, here]) | (high > self.high[:, here])
        return outside | (self.has_rows[here] & ~beyond)

    def _gather(
        self, pixel: NDArray[np.intp], low: NDArray[np.float64], high: NDArray[np.float64]
    ) -> None:
        # Pixels rise, so those that are shown lie side by side.
        first, last = np.searchsorted(pixel, [0, len(self.has_rows)])
        if first == last:
            return
        pixel, low, high = pixel[first:last], low[:, first:last], high[:, first:last]
        starts = np.flatnonzero(np.diff(pixel, prepend=-1))
        self._merge(pixel[starts], low, high, starts)

    def _merge(
        self,
        where: NDArray[np.intp],
        low: NDArray[np.float64],
        high: NDArray[np.float64],
        starts: NDArray[np.intp],
    ) -> None:
        """Take the extremes of stretches, each up to the next, into these pixels."""
        self.has_rows[where] = True
        for number, (least, greatest) in enumerate(zip(low, high, strict=True)):
            found = np.fmin.reduceat(least, starts), np.fmax.reduceat(greatest, starts)
            self.low[number, where] = np.fmin(self.low[number, where], found[0])
            self.high[number, where] = np.fmax(self.high[number, where], found[1])
