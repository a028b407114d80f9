"""Pixel columns: a trace of any length as at most two points for each column of pixels."""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

Points = tuple[NDArray[np.int64], NDArray[np.float64]]


@dataclass(frozen=True, slots=True, eq=False)
class PixelColumns:
    """Least and greatest reading of each column of pixels that holds any.

    Attributes
    ----------
    edges : ndarray, int64, shape (columns + 1,), nanoseconds
        Where columns begin, and the instant behind the last.
    kept : ndarray, int, shape (n,)
        Numbers of the columns that hold readings, rising.
    low, high : ndarray, float64, shape (n,)
        NaN where none of them has a value.
    breaks : ndarray, int, shape (m,)
        Before which of those the line is broken; the column before each is empty.
    """

    edges: NDArray[np.int64]
    kept: NDArray[np.intp]
    low: NDArray[np.float64]
    high: NDArray[np.float64]
    breaks: NDArray[np.intp]

    @property
    def points(self) -> Points:
        """The same as a line: smallest and largest value of each column at its centre."""
        return joined_columns(self.edges, self.kept, self.low, self.high, self.breaks)


@dataclass(frozen=True, slots=True)
class Stretch:
    """What a plot shows.

    Attributes
    ----------
    start_ns, end_ns : int, nanoseconds
    columns : int
        Of pixels, the last of which may be there in part.
    reach_ns : int, nanoseconds
        Where the last column ends.
    """

    start_ns: int
    end_ns: int
    columns: int
    reach_ns: int


Drawn = Points | PixelColumns


def points_of(drawn: Drawn) -> Points:
    """Give what is drawn as a line in any case."""
    return drawn.points if isinstance(drawn, PixelColumns) else drawn


def extremes_of(drawn: Drawn) -> tuple[float, float]:
    """Give the least and the greatest value drawn; infinite and minus infinite without any."""
    low, high = (drawn.low, drawn.high) if isinstance(drawn, PixelColumns) else (drawn[1],) * 2
    return (
        float(np.fmin.reduce(low, initial=np.inf)),
        float(np.fmax.reduce(high, initial=-np.inf)),
    )


def pixel_columns(
    t_ns: NDArray[np.int64],
    values: NDArray[np.float64],
    start_ns: int,
    end_ns: int,
    columns: int,
) -> Points:
    """Give the points of :func:`drawn_columns`."""
    return points_of(drawn_columns(t_ns, values, start_ns, end_ns, columns))


def drawn_columns(
    t_ns: NDArray[np.int64],
    values: NDArray[np.float64],
    start_ns: int,
    end_ns: int,
    columns: int,
) -> Drawn:
    """Give what a plot ``columns`` pixels wide shows of a trace, no peak lost.

    Every column that holds readings becomes its smallest and its largest value; drawn as a bar one
    pixel wide, or as a line from one to the other, this covers the pixels that all readings would.
    Short stretches come back as they are.

    Parameters
    ----------
    t_ns : ndarray, int64, shape (n,), nanoseconds
        Never decreasing.
    values : ndarray, float64, shape (n,)
        NaN breaks the line; a column of nothing but NaN stays NaN.
    start_ns, end_ns : int, nanoseconds
        The stretch shown. One reading before and one after it are added, so lines reach the edge.
    columns : int

    Returns
    -------
    PixelColumns, or the times and values of all readings there, shape (m,) each
        ``m`` is at most ``2 * columns + 4``.

    Source
    ------
    Minimum and maximum per pixel column: common practice, no source.
    """
    first = max(int(np.searchsorted(t_ns, start_ns)) - 1, 0)
    last = int(np.searchsorted(t_ns, end_ns, side="right"))
    columns = max(columns, 1)
    if last - first <= 2 * columns + 3:
        last = min(last + 1, t_ns.shape[0])
        return t_ns[first:last], values[first:last]
    edges = column_edges(start_ns, end_ns, columns)
    bounds = np.searchsorted(t_ns, edges)
    kept = np.flatnonzero(bounds[1:] > bounds[:-1])
    if not kept.shape[0]:
        return t_ns[:0], values[:0]
    starts, shown = bounds[kept] - bounds[0], values[bounds[0] : bounds[-1]]
    with np.errstate(invalid="ignore"):
        low = np.fmin.reduceat(shown, starts)
        high = np.fmax.reduceat(shown, starts)
    # A silence begins its column with a NaN, which says nothing beside the readings there.
    breaks = np.isnan(shown[starts[1:]]) & (np.diff(kept) > 1)
    return PixelColumns(edges, kept, low, high, np.flatnonzero(breaks) + 1)


def column_edges(start_ns: int, end_ns: int, columns: int) -> NDArray[np.int64]:
    """Give where columns begin, and the instant behind the last; shape (columns + 1,)."""
    edges = np.linspace(start_ns, end_ns, columns + 1).astype(np.int64)
    edges[-1] = end_ns + 1
    return edges


def whole_columns(start_ns: int, end_ns: int, wide: float, *, on_grid: bool) -> Stretch:
    """Give a stretch in columns that are pixels each, though the plot is no whole number of them.

    Parameters
    ----------
    start_ns, end_ns : int, nanoseconds
    wide : float
        Of the plot that shows the stretch, in device pixels.
    on_grid : bool
        Columns begin at multiples of their width, so that the stretch differs by less than a
        column. However it is moved, its columns are then columns of the same grid, and those that
        were drawn before need not be drawn from readings again.
    """
    columns = math.ceil(wide)
    if not on_grid:
        reach = start_ns + math.ceil((end_ns - start_ns) * (columns / wide))
        return Stretch(start_ns, end_ns, columns, reach)
    step = max(round((end_ns - start_ns) / wide), 1)
    start_ns = round(start_ns / step) * step
    return Stretch(start_ns, start_ns + round(wide * step), columns, start_ns + columns * step)


def joined_columns(
    edges: NDArray[np.int64],
    kept: NDArray[np.intp],
    low: NDArray[np.float64],
    high: NDArray[np.float64],
    breaks: NDArray[np.intp],
) -> Points:
    """Give the points of columns that hold readings.

    Parameters
    ----------
    edges : ndarray, int64, shape (columns + 1,), nanoseconds
    kept : ndarray, int, shape (n,)
        Numbers of the columns that hold readings, rising.
    low, high : ndarray, float64, shape (n,)
        Least and greatest of those.
    breaks : ndarray, int, shape (m,)
        Before which of those the line is broken; the column before each is empty.

    Returns
    -------
    t_ns, values : ndarrays, shape (2 n + m,)
    """
    points = np.empty(2 * kept.shape[0])
    points[0::2] = low
    points[1::2] = high
    centres = (edges[:-1] + edges[1:]) // 2
    t_ns = np.repeat(centres[kept], 2)
    if not breaks.shape[0]:
        return t_ns, points
    return (
        np.insert(t_ns, 2 * breaks, centres[kept[breaks] - 1]),
        np.insert(points, 2 * breaks, np.nan),
    )


def thin(t_ns: NDArray[np.int64], values: NDArray[np.float64], group: int) -> Points:
    """Give the smallest and largest reading of every ``group`` readings, at their own times.

    Parameters
    ----------
    t_ns : ndarray, int64, shape (n,), nanoseconds
    values : ndarray, float64, shape (n,)
    group : int
        At least 2; ``n`` is a multiple of it.

    Returns
    -------
    t_ns, values : ndarrays, shape (2 * n / group,)
        A group without any value gives two NaN.
    """
    rows = values.reshape(-1, group)
    missing = np.isnan(rows)
    low = np.where(missing, np.inf, rows).argmin(axis=1)
    high = np.where(missing, -np.inf, rows).argmax(axis=1)
    empty = missing.all(axis=1)
    high[empty] = group - 1
    picks = np.sort(np.stack([low, high], axis=1), axis=1)
    picked_t = np.take_along_axis(t_ns.reshape(-1, group), picks, axis=1)
    picked = np.take_along_axis(rows, picks, axis=1)
    return picked_t.ravel(), picked.ravel()
