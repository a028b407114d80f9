"""Page: a fixed count of readings at a time, whatever the size of the chunks they come in."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from meterlog.analysis.labels import Stretch
from meterlog.analysis.rows import Rows

NO_SPEED = -1.0
"""Stands for a speed that nobody recorded."""
_COLUMNS = 6


@dataclass(frozen=True, slots=True, eq=False)
class Page:
    """Readings side by side.

    Attributes
    ----------
    t_ns : ndarray, int64, shape (n,)
    amps : ndarray, float64, shape (n,), amperes
        By size; NaN where there is no value.
    feed, back : ndarray, float64, shape (n,), volts
        NaN where there is none.
    speed : ndarray, float64, shape (n,)
        Commanded speed, or :data:`NO_SPEED`.
    gap : ndarray, bool, shape (n,)
        A silence before it.
    steady : ndarray, bool, shape (n,)
        Current flows, outside the inrush window.
    first, last : int
        What is new: readings before ``first`` and from ``last`` on are there to look back and
        ahead, and come again.
    """

    t_ns: NDArray[np.int64]
    amps: NDArray[np.float64]
    feed: NDArray[np.float64]
    back: NDArray[np.float64]
    speed: NDArray[np.float64]
    gap: NDArray[np.bool_]
    steady: NDArray[np.bool_]
    first: int
    last: int

    @property
    def across(self) -> NDArray[np.float64]:
        """Voltage across the motor; the feed where there is no return.

        Where there is a return alone, it counts from its highest: what a motor's return rises to
        when nothing drives it is the feed.
        """
        if np.isnan(self.back).all():
            return self.feed
        if np.isnan(self.feed).all():
            return np.nanmax(self.back) - self.back
        return self.feed - self.back


class Pages:
    """Gathers the readings of the current into pages.

    Where a page begins depends only on how many readings came before it, so that whatever is
    told page by page does not depend on how rows are cut.

    Parameters
    ----------
    size : int
        New readings in a page.
    beside : int
        Readings to look back at and ahead to.
    """

    def __init__(self, size: int, beside: int = 0) -> None:
        self._size = size
        self._beside = beside
        # In one room: some thousand small arrays would wait here, and come and go with each page.
        self._t = np.empty(size + 2 * beside, np.int64)
        self._table = np.empty((_COLUMNS, size + 2 * beside))
        self._count = 0
        self._back = 0
        self._silent = False

    def take(self, rows: Rows, stretches: Sequence[Stretch]) -> Iterator[Page]:
        """Take the next rows; give the pages that are full."""
        if not stretches:
            return
        part = rows.part(stretches[0].start, stretches[-1].stop)
        table, t_ns = _table(part, stretches), part.t_ns
        if part.amps_new is not None:
            table, t_ns = self._only(table, t_ns, part.amps_new)
        done = 0
        while done < len(t_ns):
            begin, fits = self._count, min(len(t_ns) - done, len(self._t) - self._count)
            self._t[begin : begin + fits] = t_ns[done : done + fits]
            self._table[:, begin : begin + fits] = table[:, done : done + fits]
            self._count, done = begin + fits, done + fits
            while self._count - self._back >= self._size + self._beside:
                last = self._back + self._size
                yield self._page(last + self._beside, last)
                self._move_up(last)

    def rest(self) -> Page | None:
        """Give what has not filled a page, without forgetting it."""
        return None if self._count <= self._back else self._page(self._count, self._count)

    def _page(self, end: int, last: int) -> Page:
        """Give a page of its own of all rows to before ``end``."""
        return _page(self._t[:end].copy(), self._table[:, :end].copy(), self._back, last)

    def _move_up(self, last: int) -> None:
        """Forget what is not looked back at from ``last``."""
        keep = max(0, last - self._beside)
        rest = self._count - keep
        self._t[:rest] = self._t[keep : self._count]
        self._table[:, :rest] = self._table[:, keep : self._count]
        self._count, self._back = rest, last - keep

    def _only(
        self, table: NDArray[np.float64], t_ns: NDArray[np.int64], new: NDArray[np.bool_]
    ) -> tuple[NDArray[np.float64], NDArray[np.int64]]:
        """Leave out rows that were held over; a silence in them goes to the next reading."""
        places = np.flatnonzero(new)
        silent = np.flatnonzero(table[4] > 0.0)
        table, gaps = table[:, places], np.searchsorted(places, silent, side="left")
        table[4] = 0.0
        if self._silent and len(places):
            table[4, 0], self._silent = 1.0, False
        inside = gaps[gaps < len(places)]
        table[4, inside] = 1.0
        if len(inside) < len(gaps):
            self._silent = True
        return table, t_ns[places]


def page_of(parts: Sequence[tuple[Rows, Sequence[Stretch]]]) -> Page:
    """Give a page of rows that follow one another, all of them new.

    Parameters
    ----------
    parts : sequence of (Rows, sequence of Stretch)
        Stretches that cover the rows, from the first on.
    """
    t_ns = np.concatenate([rows.t_ns for rows, _ in parts])
    table = np.concatenate([_table(rows, stretches) for rows, stretches in parts], axis=1)
    return _page(t_ns, table, 0, len(t_ns))


def _table(part: Rows, stretches: Sequence[Stretch]) -> NDArray[np.float64]:
    table = np.empty((_COLUMNS, len(part)))
    np.abs(part.amps, out=table[0])
    table[0, ~part.usable] = np.nan
    table[1] = np.nan if part.feed is None else part.feed
    table[2] = np.nan if part.back is None else part.back
    begin = stretches[0].start
    for stretch in stretches:
        speed = NO_SPEED if stretch.speed is None else float(stretch.speed)
        table[3, stretch.start - begin : stretch.stop - begin] = speed
        table[5, stretch.start - begin : stretch.stop - begin] = stretch.steady
    table[4] = part.gap
    return table


def _page(t_ns: NDArray[np.int64], table: NDArray[np.float64], first: int, last: int) -> Page:
    amps, feed, back, speed = table[:4]
    return Page(t_ns, amps, feed, back, speed, table[4] > 0.0, table[5] > 0.0, first, last)
