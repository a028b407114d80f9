"""VoltagePages: pages of readings in which the motor's voltage swings; the others cost little."""

from __future__ import annotations

import math
from bisect import bisect_left, bisect_right
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray

from meterlog.analysis.inferred.page import Page, page_of
from meterlog.analysis.inferred.pulses import swings
from meterlog.analysis.labels import Stretch
from meterlog.analysis.rows import Rows

_NOTHING = (math.inf, -math.inf)
_ANYTHING = (-math.inf, math.inf)


@dataclass(frozen=True, slots=True, eq=False)
class _Part:
    """Rows of a page, and the stretches that cover them; those count from ``before`` rows on."""

    rows: Rows
    stretches: tuple[Stretch, ...]
    before: int

    def own(self) -> list[Stretch]:
        """Give the stretches, counted and cut to the rows."""
        return [
            replace(
                one,
                start=max(one.start - self.before, 0),
                stop=min(one.stop - self.before, len(self.rows)),
            )
            for one in self.stretches
        ]


class VoltagePages:
    """Gathers the readings of the voltages into pages of a fixed count.

    Where a page begins depends only on how many readings came before it. A page is put together
    only where the voltage across the motor goes up and down by so much that it may be pulsed; of
    the others only the lowest and the highest voltage are ever looked at.

    Parameters
    ----------
    size : int
        Readings in a page.
    """

    def __init__(self, size: int) -> None:
        self._size = size
        self._parts: list[_Part] = []
        self._count = 0
        self._range = _NOTHING
        self._alone = False

    def take(self, rows: Rows, stretches: Sequence[Stretch]) -> Iterator[Page]:
        """Take the next rows; give those full pages in which the voltage swings."""
        if not stretches or (rows.feed is None and rows.back is None):
            return
        if rows.volts_new is not None:
            rows, stretches = _read_alone(rows, stretches, rows.volts_new)
            if not stretches:
                return
        self._alone = rows.feed is None
        starts = [one.start for one in stretches]
        stops = [one.stop for one in stretches]
        at, end = starts[0], stops[-1]
        while at < end:
            stop = min(end, at + self._size - self._count)
            covering = stretches[bisect_right(stops, at) : bisect_left(starts, stop)]
            self._keep(_Part(rows.part(at, stop), tuple(covering), at))
            at = stop
            if self._count == self._size:
                full = self.rest()
                self._parts, self._count, self._range = [], 0, _NOTHING
                if full is not None:
                    yield full

    def rest(self) -> Page | None:
        """Give what has not filled a page, if the voltage swings in it, without forgetting it."""
        low, high = self._range
        # A return alone counts from its highest, so that its height says nothing of a swing.
        if not self._parts or not swings(*((0.0, high - low) if self._alone else (low, high))):
            return None
        return page_of([(part.rows, part.own()) for part in self._parts])

    def _keep(self, part: _Part) -> None:
        self._parts.append(part)
        self._count += len(part.rows)
        low, high = _lowest_and_highest(part.rows)
        self._range = min(self._range[0], low), max(self._range[1], high)


def _lowest_and_highest(rows: Rows) -> tuple[float, float]:
    """Give the range of the voltage across the motor; anything where only its parts tell."""
    if rows.feed is None or rows.back is None:
        volts = rows.back if rows.feed is None else rows.feed
    else:
        volts = rows.feed - rows.back
    if volts is None:
        return _NOTHING
    low, high = float(volts.min()), float(volts.max())
    if math.isnan(low):
        return _ANYTHING
    return low, high


def _read_alone(
    part: Rows, stretches: Sequence[Stretch], new: NDArray[np.bool_]
) -> tuple[Rows, tuple[Stretch, ...]]:
    """Leave out rows in which the voltage was held over."""
    places = np.flatnonzero(new)

    def only(column: NDArray[np.float64] | None) -> NDArray[np.float64] | None:
        return None if column is None else column[places]

    left = Rows(
        part.t_ns[places],
        part.amps[places],
        only(part.feed),
        only(part.back),
        part.usable[places],
        part.gap[places],
    )
    edges = np.searchsorted(places, [(one.start, one.stop) for one in stretches])
    own = (
        replace(one, start=int(start), stop=int(stop))
        for one, (start, stop) in zip(stretches, edges, strict=True)
    )
    return left, tuple(one for one in own if one.stop > one.start)
