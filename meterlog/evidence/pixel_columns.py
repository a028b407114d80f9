"""Pixel columns: a trace of any length as at most two points for each column of pixels."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

Points = tuple[NDArray[np.int64], NDArray[np.float64]]


def pixel_columns(
    t_ns: NDArray[np.int64],
    values: NDArray[np.float64],
    start_ns: int,
    end_ns: int,
    columns: int,
) -> Points:
    """Give what a plot ``columns`` pixels wide shows of a trace, no peak lost.

    Every column that holds readings becomes its smallest and its largest value, both at the
    column's centre; joined by a line one pixel wide this covers the pixels that all readings would.
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
    t_ns : ndarray, int64, shape (m,)
    values : ndarray, float64, shape (m,)
        ``m`` is at most ``2 * columns + 4``.

    Source
    ------
    Minimum and maximum per pixel column: common practice, no source.
    """
    first = max(int(np.searchsorted(t_ns, start_ns)) - 1, 0)
    last = min(int(np.searchsorted(t_ns, end_ns, side="right")) + 1, t_ns.shape[0])
    columns = max(columns, 1)
    if last - first <= 2 * columns + 4:
        return t_ns[first:last], values[first:last]
    edges = np.linspace(start_ns, end_ns, columns + 1)
    inner = np.searchsorted(t_ns[first:last], edges[:-1].astype(np.int64))
    starts, kept = np.unique(inner[inner < last - first], return_index=True)
    centres = ((edges[:-1] + edges[1:]) / 2.0).astype(np.int64)[kept]
    return _envelope(values[first:last], starts, centres)


def _envelope(
    values: NDArray[np.float64], starts: NDArray[np.intp], centres: NDArray[np.int64]
) -> Points:
    with np.errstate(invalid="ignore"):
        low = np.fmin.reduceat(values, starts)
        high = np.fmax.reduceat(values, starts)
    points = np.empty(2 * starts.shape[0])
    points[0::2] = low
    points[1::2] = high
    return np.repeat(centres, 2), points


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
