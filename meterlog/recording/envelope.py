"""Envelope: least and greatest value of any stretch of a channel, however long, in an instant.

A pyramid: over the readings lie cells of 64, over those cells of 8 cells each, and so on. A
stretch is put together of the largest cells that fit into it, so its envelope is exact.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from meterlog.recording.growing_array import GrowingArray

FIRST_CELL = 64
FACTOR = 8


@dataclass(frozen=True, slots=True, eq=False)
class Columns:
    """An envelope, one entry a pixel.

    Attributes
    ----------
    low, high : ndarray, float64, shape (pixels,), unit of the channel
        Least and greatest usable value; NaN where there is none.
    """

    low: NDArray[np.float64]
    high: NDArray[np.float64]


class _Level:
    """Least and greatest value of each cell of one size."""

    def __init__(self, factor: int) -> None:
        self.factor = factor
        self.low: GrowingArray[np.float64] = GrowingArray(np.float64)
        self.high: GrowingArray[np.float64] = GrowingArray(np.float64)


class Envelope:
    """The readings of one channel with the pyramid over them, built while they come in."""

    def __init__(self) -> None:
        self._t_ns: GrowingArray[np.int64] = GrowingArray(np.int64)
        self._values: GrowingArray[np.float64] = GrowingArray(np.float64)
        self._levels: list[_Level] = []

    def __len__(self) -> int:
        """Count the readings."""
        return len(self._values)

    @property
    def t_ns(self) -> NDArray[np.int64]:
        """Times of all readings, int64, shape (n,); valid until the next append."""
        return self._t_ns.view()

    @property
    def values(self) -> NDArray[np.float64]:
        """All readings, float64, shape (n,); valid until the next append."""
        return self._values.view()

    @property
    def cells(self) -> int:
        """Count the cells of all levels."""
        return sum(len(level.low) for level in self._levels)

    def append(self, t_ns: NDArray[np.int64], values: NDArray[np.float64]) -> None:
        """Add readings.

        Parameters
        ----------
        t_ns : ndarray, int64, shape (n,), nanoseconds since the recording's zero
            Never falling, also not against what was added before.
        values : ndarray, float64, shape (n,), unit of the channel
            NaN where there is no usable value (overload, no data): these enter no cell.
        """
        self._t_ns.append(t_ns)
        self._values.append(values)
        low = high = self._values
        for number in range(64):
            factor = FACTOR if number else FIRST_CELL
            have = len(self._levels[number].low) if number < len(self._levels) else 0
            whole = len(low) // factor
            if whole == have:
                return
            if number == len(self._levels):
                self._levels.append(_Level(factor))
            level = self._levels[number]
            part = slice(have * factor, whole * factor)
            level.low.append(_least(low.view()[part].reshape(-1, factor)))
            level.high.append(-_least(-high.view()[part].reshape(-1, factor)))
            low, high = level.low, level.high

    def query(self, t0_ns: int, t1_ns: int, pixels: int) -> Columns:
        """Give the exact envelope of a window.

        Parameters
        ----------
        t0_ns, t1_ns : int, nanoseconds since the recording's zero
            ``t0_ns`` below ``t1_ns``. Pixel k covers times from
            ``t0 + (t1 - t0) * k / pixels`` up to, but without, that of k + 1.
        pixels : int
            At least 1.

        Returns
        -------
        Columns

        Raises
        ------
        ValueError
            If the window is empty or there is no pixel.

        Source
        ------
        Checked in ``tests/unit/recording/test_envelope.py`` against numpy's nanmin and nanmax
        over the readings themselves.
        """
        if t1_ns <= t0_ns or pixels < 1:
            raise ValueError(f"no window: {t0_ns} to {t1_ns} ns in {pixels} pixels")
        edges = np.ceil(np.linspace(t0_ns, t1_ns, pixels + 1)).astype(np.int64)
        bounds = np.searchsorted(self._t_ns.view(), edges, "left").astype(np.int64)
        low = np.full(pixels, np.inf)
        high = np.full(pixels, -np.inf)
        self._descend(bounds[:-1], bounds[1:], low, high)
        empty = low > high
        low[empty] = np.nan
        high[empty] = np.nan
        return Columns(low, high)

    def _descend(
        self,
        start: NDArray[np.int64],
        stop: NDArray[np.int64],
        low: NDArray[np.float64],
        high: NDArray[np.float64],
    ) -> None:
        """Take each pixel's ragged ends from one level, and its middle from the next above."""
        least = greatest = self._values.view()
        for level in self._levels:
            inner = -(-start // level.factor)
            outer = stop // level.factor
            has_cells = inner < outer
            left_stop = np.where(has_cells, inner * level.factor, stop)
            _take(least, greatest, start, left_stop, low, high)
            right = np.where(has_cells, outer * level.factor, stop)
            _take(least, greatest, right, stop, low, high)
            start, stop = np.where(has_cells, inner, 0), np.where(has_cells, outer, 0)
            least, greatest = level.low.view(), level.high.view()
            if not has_cells.any():
                return
        _take(least, greatest, start, stop, low, high)


def _least(cells: NDArray[np.float64]) -> NDArray[np.float64]:
    # minimum is several times faster than fmin, and hands on a NaN by which it can be told
    least: NDArray[np.float64] = cells.min(axis=1)
    odd = np.isnan(least)
    if odd.any():
        least[odd] = np.fmin.reduce(cells[odd], axis=1)
    return least


def _take(
    least: NDArray[np.float64],
    greatest: NDArray[np.float64],
    start: NDArray[np.int64],
    stop: NDArray[np.int64],
    low: NDArray[np.float64],
    high: NDArray[np.float64],
) -> None:
    """Lower ``low`` and raise ``high`` by the entries start to stop of each pixel."""
    lengths = stop - start
    some = np.flatnonzero(lengths > 0)
    if len(some) == 0:
        return
    lengths = lengths[some]
    firsts = np.concatenate(([0], np.cumsum(lengths)[:-1]))
    index = np.arange(int(lengths.sum())) + np.repeat(start[some] - firsts, lengths)
    low[some] = np.fmin(low[some], np.fmin.reduceat(least[index], firsts))
    high[some] = np.fmax(high[some], np.fmax.reduceat(greatest[index], firsts))
