"""Ordered: percentiles and medians by sorting, which is quicker than looking for them.

numpy sorts by the processor's wide instructions; its partial sorts, on which its own median and
percentile rest, take three to seven times as long on thousands of readings that differ each time.
"""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray


def percentiles(values: NDArray[np.float64], *parts: float) -> list[float]:
    """Give what ``numpy.percentile`` does, to the last bit.

    Parameters
    ----------
    values : ndarray, float64, shape (n,)
        At least one, all finite.
    *parts : float, percent

    Source
    ------
    Hyndman and Fan, "Sample quantiles in statistical packages", The American Statistician 50
    (1996) 361, type 7. From memory. ``tests/unit/analysis/ripple/test_ordered.py`` holds it
    against numpy.
    """
    ordered = np.sort(values)
    found = []
    for part in parts:
        place = part / 100.0 * (len(ordered) - 1)
        below = int(place)
        low, high = float(ordered[below]), float(ordered[min(below + 1, len(ordered) - 1)])
        step, way = high - low, place - below
        found.append(high - step * (1.0 - way) if way >= 0.5 else low + step * way)
    return found


def medians(rows: NDArray[np.float64]) -> NDArray[np.float64]:
    """Give what ``numpy.median`` does along the last axis, to the last bit.

    Parameters
    ----------
    rows : ndarray, float64, shape (..., n)
        n at least 1, all finite.
    """
    ordered, count = np.sort(rows, axis=-1), rows.shape[-1]
    middles: NDArray[np.float64] = ordered[..., count // 2]
    if count % 2:
        return middles
    return (ordered[..., count // 2 - 1] + middles) / 2.0
