"""BarWalk: the line along the bars of an overlay, each from lowest to highest reading of its bin.

In each bar the line goes to both ends in the order in which they were read, and from bar to bar
where the two are nearest, as :mod:`meterlog.evidence.column_bars` joins its columns. So where a
current went once, the line goes once, and no stroke stands where nothing was read.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from itertools import groupby

Point = tuple[float, float]
_Bar = tuple[float, float, float]
"""Time, the end that was read first, the other."""


def walked(
    t_s: Sequence[float], amps: Sequence[float], falls: Sequence[bool] = ()
) -> list[list[Point]]:
    """Give the unbroken lines: where nothing was read there is none.

    Parameters
    ----------
    t_s : sequence of float, seconds
        In order; what stands at one time is one bar.
    amps : sequence of float, amperes
        NaN where nothing was read.
    falls : sequence of bool
        Of each bar: the highest was read before the lowest. Empty: not known.

    Returns
    -------
    list of lists of (float, float)
        Time and current; no two points behind each other are equal.
    """
    return [_walk(bars) for bars in _unbroken(t_s, amps, falls)]


def _unbroken(
    t_s: Sequence[float], amps: Sequence[float], falls: Sequence[bool]
) -> Iterator[list[_Bar]]:
    bars: list[_Bar] = []
    places = groupby(zip(t_s, amps, strict=True), key=lambda point: point[0])
    for place, (at, points) in enumerate(places):
        real = [value for _, value in points if math.isfinite(value)]
        if real:
            low, high = min(real), max(real)
            fell = falls[place] if falls else bool(bars) and _is_nearer(bars[-1][2], high, low)
            bars.append((at, high, low) if fell else (at, low, high))
        elif bars:
            yield bars
            bars = []
    if bars:
        yield bars


def _is_nearer(value: float, one: float, other: float) -> bool:
    return abs(one - value) < abs(other - value)


def _walk(bars: Sequence[_Bar]) -> list[Point]:
    line: list[Point] = []
    for place, (at, first, second) in enumerate(bars):
        values = [first, second]
        if line:
            values.insert(0, _within(line[-1][1], first, second))
        if place + 1 < len(bars):
            values.append(_within(bars[place + 1][1], first, second))
        for value in values:
            if not line or line[-1] != (at, value):
                line.append((at, value))
    return line


def _within(value: float, one: float, other: float) -> float:
    return min(max(value, min(one, other)), max(one, other))
