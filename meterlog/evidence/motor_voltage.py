"""Motor voltage as a picture needs it: the area between feed and return."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray

from meterlog.evidence.column_bars import centres_of
from meterlog.evidence.pixel_columns import Drawn, PixelColumns, column_edges, points_of
from meterlog.evidence.trace_store import TraceLine
from meterlog.model import Role

Area = tuple[NDArray[np.int64], NDArray[np.float64], NDArray[np.float64]]


def across_motor(
    lines: Sequence[TraceLine],
    start_ns: int,
    end_ns: int,
    columns: int,
    asked: int | None = None,
) -> Area | None:
    """Give where feed and return lie at the edge of every column of pixels.

    Parameters
    ----------
    lines : sequence of TraceLine
    start_ns, end_ns : int, nanoseconds
    columns : int
    asked : int or None
        Columns that the lines are asked for, such as those they are drawn in; None: the same.

    Returns
    -------
    tuple of t_ns, feed, return, each of shape (m,), or None
        Volts, joined up between readings; only where both are there and the feed lies above. None
        without a line for motor feed or for motor return, or where one is typed by hand: what lies
        between typed readings is not known.
    """
    feed = next((line for line in lines if line.role is Role.MOTOR_FEED), None)
    back = next((line for line in lines if line.role is Role.MOTOR_RETURN), None)
    if feed is None or back is None or feed.typed or back.typed:
        return None
    grid = np.linspace(start_ns, end_ns, max(columns, 1) + 1).astype(np.int64)
    upper = _joined(feed, grid, asked or columns)
    lower = _joined(back, grid, asked or columns)
    with np.errstate(invalid="ignore"):
        shown = upper > lower
    return grid[shown], upper[shown], lower[shown]


def _joined(line: TraceLine, grid: NDArray[np.int64], columns: int) -> NDArray[np.float64]:
    t_ns, values = line.shown(int(grid[0]), int(grid[-1]), columns)
    if not t_ns.shape[0]:
        return np.full(grid.shape, np.nan)
    return np.interp(grid, t_ns, values, left=np.nan, right=np.nan)


def between_feed_and_return(
    lines: Sequence[tuple[TraceLine, Drawn]], start_ns: int, end_ns: int, columns: int
) -> Area | None:
    """Give what lies between feed and return in every column of pixels.

    Parameters
    ----------
    lines : sequence of TraceLine and what is drawn of it
        All of the stretch, on as many columns.
    start_ns, end_ns : int, nanoseconds
    columns : int

    Returns
    -------
    tuple of edges, shape (columns + 1,), return, feed, each of shape (columns,), or None
        The greatest of the return and the least of the feed, volts, where both were read often;
        else joined up between readings. NaN where one of them is not there. None as
        :func:`across_motor`.
    """
    feed = next((one for one in lines if one[0].role is Role.MOTOR_FEED), None)
    back = next((one for one in lines if one[0].role is Role.MOTOR_RETURN), None)
    if feed is None or back is None or feed[0].typed or back[0].typed:
        return None
    edges = column_edges(start_ns, end_ns, max(columns, 1))
    lower, upper = _each(back[1], edges, greatest=True), _each(feed[1], edges, greatest=False)
    return edges, lower, upper


def _each(drawn: Drawn, edges: NDArray[np.int64], *, greatest: bool) -> NDArray[np.float64]:
    """Give a value for each column."""
    if isinstance(drawn, PixelColumns):
        empty = np.flatnonzero(np.diff(drawn.kept) > 1) + 1
        if len(empty) == len(drawn.breaks):  # no column is empty but where the line is broken
            found = np.full(len(edges) - 1, np.nan)
            found[drawn.kept] = drawn.high if greatest else drawn.low
            return found
    t_ns, values = points_of(drawn)
    if not t_ns.shape[0]:
        return np.full(len(edges) - 1, np.nan)
    return np.interp(centres_of(edges), t_ns, values, left=np.nan, right=np.nan)
