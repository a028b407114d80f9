"""Changed stretch: the part of a drawn trace that is another than before, to be painted anew."""

from __future__ import annotations

import math
from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray

from meterlog.evidence.motor_voltage import Area
from meterlog.evidence.pixel_columns import Drawn, PixelColumns

Edges = tuple[float, float]
"""Start and end of a stretch, nanoseconds; infinite where it has no end there."""
_ALL = (-math.inf, math.inf)


def changed_line(before: Drawn | None, now: Drawn) -> Edges | None:
    """Give the stretch outside of which two drawings of a line paint the same.

    Parameters
    ----------
    before : PixelColumns, or times and values, or None
        What was drawn last; None: nothing yet.
    now : PixelColumns, or times and values

    Returns
    -------
    tuple of float, nanoseconds, or None
        None where they are the same throughout.
    """
    if isinstance(before, PixelColumns) and isinstance(now, PixelColumns):
        return _changed_columns(before, now)
    if before is None or isinstance(before, PixelColumns) or isinstance(now, PixelColumns):
        return _ALL
    same = _same_at_first(before, now)
    if same == len(before[0]) == len(now[0]):
        return None
    # From the last reading that both have a line leads to the first one that is another.
    start = float(now[0][same - 1]) if same else -math.inf
    return start, float(max(t_ns[-1] if len(t_ns) else -math.inf for t_ns, _ in (before, now)))


def changed_area(before: Area | None, now: Area | None) -> Edges | None:
    """Give the stretch outside of which two areas paint the same; see :func:`changed_line`.

    Parameters
    ----------
    before, now : Area or None
        Edges of columns, and from where to where each is filled; None: no area.
    """
    if before is None or now is None:
        return None if before is now else _ALL
    edges = now[0]
    if not np.array_equal(before[0], edges):
        return _ALL
    changed = np.flatnonzero(~_same(before[1:], now[1:], len(edges) - 1))
    if not len(changed):
        return None
    return float(edges[changed[0]]), float(edges[changed[-1] + 1])


def _changed_columns(before: PixelColumns, now: PixelColumns) -> Edges | None:
    edges = now.edges
    if not np.array_equal(before.edges, edges):
        return _ALL
    old, new = (
        (one.kept, one.low, one.high, np.isin(np.arange(len(one.kept)), one.breaks))
        for one in (before, now)
    )
    same = _same_at_first(old, new)
    if same == len(before.kept) == len(now.kept):
        return None
    start = float(edges[now.kept[same - 1]]) if same else -math.inf
    last = max(int(one.kept[-1]) if len(one.kept) else 0 for one in (before, now))
    return start, float(edges[last + 1])


def _same_at_first(
    before: Sequence[NDArray[np.generic]], now: Sequence[NDArray[np.generic]]
) -> int:
    """Count the entries at the beginning that are the same in all arrays, NaN like NaN."""
    n = min(len(before[0]), len(now[0]))
    same = _same(before, now, n)
    return n if same.all() else int(np.argmin(same))


def _same(
    before: Sequence[NDArray[np.generic]], now: Sequence[NDArray[np.generic]], n: int
) -> NDArray[np.bool_]:
    same = np.ones(n, np.bool_)
    for old, new in zip(before, now, strict=True):
        one, other = old[:n], new[:n]
        # Only NaN differs from itself.
        same &= (one == other) | ((one != one) & (other != other))  # noqa: PLR0124
    return same
