"""OverlayGrid: a current on a grid of times, no peak lost, in bounded memory."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray

from meterlog.model import Overlay

Array = NDArray[np.float64]
Times = NDArray[np.int64]

MOST_BINS = 250


def bins_for(length_s: float, interval_s: float) -> int:
    """Give into how many bins a stretch is cut: none shorter than the slowest reading."""
    if interval_s <= 0.0:
        return MOST_BINS
    return int(min(max(length_s / interval_s, 1.0), MOST_BINS))


class OverlayGrid:
    """Keeps the lowest and highest reading in each bin of a stretch.

    Parameters
    ----------
    start_ns : int, nanoseconds since the recording's zero
        The command: where the grid begins.
    length_s : float, seconds
        Above 0; as long for all that lie over each other.
    bins : int
    end_ns : int or None, nanoseconds since the recording's zero
        Where the recording's own stretch ends, if that is before the grid does: what follows
        belongs to another command, and is passed over.
    """

    def __init__(
        self, start_ns: int, length_s: float, bins: int, end_ns: int | None = None
    ) -> None:
        self._start_ns, self._end_ns = start_ns, end_ns
        self._edges = np.linspace(0.0, length_s, bins + 1)
        self._low = np.full(bins, np.nan)
        self._high = np.full(bins, np.nan)
        self._low_ns, self._high_ns = (np.zeros(bins, np.int64) for _ in range(2))

    def take(self, t_ns: NDArray[np.int64], amps: Array) -> None:
        """Take readings in order of time; NaN and what lies outside is passed over.

        Parameters
        ----------
        t_ns : ndarray, int64, shape (n,), nanoseconds
        amps : ndarray, float64, shape (n,), amperes
        """
        edges_ns = self._start_ns + np.round(self._edges * 1e9).astype(np.int64)
        if self._end_ns is not None:
            edges_ns = np.minimum(edges_ns, self._end_ns)
        places = np.searchsorted(t_ns, edges_ns)
        filled = np.flatnonzero(places[1:] > places[:-1])
        if not len(filled):
            return
        inside = amps[: places[-1]]
        # Between two filled bins lies nothing, so that each reaches up to the next one's first.
        starts = places[filled]
        counts = np.diff(starts, append=places[-1])
        low, high = np.fmin.reduceat(inside, starts), np.fmax.reduceat(inside, starts)
        # Written so that NaN, of a bin that was empty, gives way.
        lower, higher = ~(self._low[filled] <= low), ~(self._high[filled] >= high)
        for new, ends, kept, kept_ns in (
            (lower, low, self._low, self._low_ns),
            (higher, high, self._high, self._high_ns),
        ):
            at_ns = _first_at(t_ns[: places[-1]], inside, starts, np.repeat(ends, counts))
            changed = new & ~np.isnan(ends)
            kept[filled[changed]] = ends[changed]
            kept_ns[filled[changed]] = at_ns[changed]

    @property
    def t_s(self) -> Array:
        """Middle of each bin, twice, shape (2 bins,), seconds from the command."""
        return np.repeat((self._edges[:-1] + self._edges[1:]) / 2.0, 2)

    def amps(self, sign: float) -> Array:
        """Give the lowest and highest of each bin by turns, shape (2 bins,), amperes.

        Parameters
        ----------
        sign : float
            -1 where the clamp was the other way round.
        """
        ends = (self._low, self._high) if sign > 0.0 else (-self._high, -self._low)
        return np.stack(ends, axis=1).ravel()

    def falls(self, sign: float) -> NDArray[np.bool_]:
        """Tell of each bin whether its highest reading came before its lowest, shape (bins,)."""
        return self._high_ns < self._low_ns if sign > 0.0 else self._low_ns < self._high_ns


def _first_at(t_ns: Times, amps: Array, starts: NDArray[np.intp], ends: Array) -> Times:
    """Give when each bin first read what is its end; of one without a reading, any time.

    Parameters
    ----------
    t_ns, amps : ndarrays, shape (n,)
    starts : ndarray, shape (bins,)
        Where each bin begins among them.
    ends : ndarray, float64, shape (n - starts[0],)
        Of each reading from ``starts[0]`` on: the end of its bin.
    """
    first = starts[0]
    never = np.iinfo(np.int64).max
    at_ns = np.where(amps[first:] == ends, t_ns[first:], never)
    return np.minimum.reduceat(at_ns, starts - first)


def overlay(
    name: str, speed: int | None, grids: Sequence[OverlayGrid], signs: Sequence[float]
) -> Overlay:
    """Lay the last grid over all others.

    Parameters
    ----------
    name : str
    speed : int or None
    grids : sequence of OverlayGrid, at least 2
        Of the old ones, then of the new one; all of one size.
    signs : sequence of float
        Of each.
    """
    *old, new = [grid.amps(sign) for grid, sign in zip(grids, signs, strict=True)]
    together = old[0] if len(old) == 1 else _outer(old)
    return Overlay(
        name=name,
        speed=speed,
        t_s=tuple(grids[-1].t_s.tolist()),
        old_a=tuple(together.tolist()),
        new_a=tuple(new.tolist()),
        old_falls=tuple(grids[0].falls(signs[0]).tolist()) if len(old) == 1 else (),
        new_falls=tuple(grids[-1].falls(signs[-1]).tolist()),
    )


def _outer(each: Sequence[Array]) -> Array:
    """Give the lowest of the lowest and the highest of the highest."""
    stacked = np.stack(each)
    outer = np.empty(stacked.shape[1])
    outer[0::2] = np.fmin.reduce(stacked[:, 0::2])
    outer[1::2] = np.fmax.reduce(stacked[:, 1::2])
    return outer
