"""Column bars: columns of pixels as bars and blocks, which are painted several times faster.

A line one pixel wide that goes up and down in each column covers a bar there. Where a bar ends
short of its neighbour, the readings of both are joined by a line; half of it lies in each column.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from meterlog.evidence.pixel_columns import PixelColumns

Floats = NDArray[np.float64]

_BLOCK = 32
"""Columns whose common part is filled at once."""
_FINEST = 1 / 8192
"""Of the height: less than this beyond the common part is less than a pixel of any screen."""


@dataclass(frozen=True, slots=True, eq=False)
class Bars:
    """Lines to be painted, each of the shape (n,).

    Attributes
    ----------
    x0_ns, y0, x1_ns, y1 : ndarray, float64
        Where each begins and ends; upright but for those across empty columns.
    """

    x0_ns: Floats
    y0: Floats
    x1_ns: Floats
    y1: Floats


@dataclass(frozen=True, slots=True, eq=False)
class Blocks:
    """Rectangles, each of the shape (n,): where they lie, and the bars beside them.

    Attributes
    ----------
    left_ns, right_ns, bottom, top : ndarray, float64
    bars : Bars
        What the rectangles leave of the columns.
    """

    left_ns: Floats
    right_ns: Floats
    bottom: Floats
    top: Floats
    bars: Bars


def centres_of(edges: NDArray[np.int64]) -> Floats:
    """Give the middle of each column, nanoseconds; shape (columns,)."""
    return edges[:-1] + np.diff(edges) / 2.0


def joined_bars(columns: PixelColumns) -> Bars:
    """Give the bars of columns, long enough to meet where their readings are joined."""
    real = np.flatnonzero(~np.isnan(columns.low))
    kept, low, high = columns.kept[real], columns.low[real], columns.high[real]
    whole = np.ones(len(columns.kept), np.bool_)
    whole[columns.breaks] = False
    joined = whole[real[1:]] & (np.diff(real) == 1)
    near = np.diff(kept) == 1
    bottom, top = low.copy(), high.copy()
    rises = joined & near & (low[1:] > high[:-1])
    falls = joined & near & (high[1:] < low[:-1])
    at = np.flatnonzero(rises)
    middle = (high[at] + low[at + 1]) / 2.0
    top[at] = middle
    bottom[at + 1] = middle
    at = np.flatnonzero(falls)
    middle = (low[at] + high[at + 1]) / 2.0
    bottom[at] = np.minimum(bottom[at], middle)
    top[at + 1] = np.maximum(top[at + 1], middle)
    x_ns = centres_of(columns.edges)[kept]
    far = np.flatnonzero(joined & ~near)
    if not len(far):
        return Bars(x_ns, bottom, x_ns, top)
    return Bars(
        np.concatenate([x_ns, x_ns[far]]),
        np.concatenate([bottom, high[far]]),
        np.concatenate([x_ns, x_ns[far + 1]]),
        np.concatenate([top, low[far + 1]]),
    )


def filled_blocks(edges: NDArray[np.int64], bottom: Floats, top: Floats) -> Blocks:
    """Give what fills columns from bottom to top.

    Parameters
    ----------
    edges : ndarray, int64, shape (columns + 1,), nanoseconds
    bottom, top : ndarray, float64, shape (columns,)
        Nothing is filled where one of them is NaN or the top does not lie above.
    """
    with np.errstate(invalid="ignore"):
        shown = top > bottom
    starts = np.arange(0, len(top), _BLOCK)
    least = np.minimum.reduceat(np.where(shown, top, -np.inf), starts)
    most = np.maximum.reduceat(np.where(shown, bottom, np.inf), starts)
    filled = np.flatnonzero(least > most)
    has_block = np.repeat(least > most, _BLOCK)[: len(top)]
    least, most = (np.repeat(one, _BLOCK)[: len(top)] for one in (least, most))
    at = np.flatnonzero(shown)
    finest = (top[at].max() - bottom[at].min()) * _FINEST if len(at) else 0.0
    x_ns = centres_of(edges)
    above = np.flatnonzero(shown & has_block & (top > least + finest))
    below = np.flatnonzero(shown & has_block & (bottom < most - finest))
    alone = np.flatnonzero(shown & ~has_block)
    x_ns = x_ns[np.concatenate([above, below, alone])]
    bars = Bars(
        x_ns,
        np.concatenate([least[above], bottom[below], bottom[alone]]),
        x_ns,
        np.concatenate([top[above], most[below], top[alone]]),
    )
    firsts, lasts = starts[filled], np.minimum(starts[filled] + _BLOCK, len(top))
    return Blocks(
        edges[firsts].astype(np.float64),
        edges[lasts].astype(np.float64),
        most[firsts],
        least[firsts],
        bars,
    )
