"""Flaws: ripples of the turn that do not belong to the others, and whose bars they are."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from meterlog.analysis.ripple.counts import Count
from meterlog.analysis.ripple.outliers import chance_beside, outliers
from meterlog.analysis.ripple.turn import Turn
from meterlog.model import BarFlaw

FEWEST_BARS = 8
DEAD_DEPTH = 0.2
"""An open bar takes 20 to 100 % of the current. Common practice, no source."""
LEAST_DEPTH = 0.03
"""Part of the mean. Healthy humps of 5 to 15 % of the mean differ by a tenth of their height, so
by no more than half of this. Common practice, no source."""
LEAST_OF_RIPPLE = 0.5
_CHANCE = 1e-2
_REPEATED = 6.0
"""A ripple must be off by this many of its own standard errors, so in turn after turn."""
_BESIDE_DEEPEST = 0.15
"""Less than this part of the deepest notch may be what the current does as it comes back."""
_TAIL = 0.6
"""Beside a deeper notch, one of less than this part of its depth is that notch's own edge."""


@dataclass(frozen=True, slots=True)
class Odd:
    """One ripple of the pattern that does not belong to the others.

    Attributes
    ----------
    place : int
    depth : float
        Fall at its deepest, as part of the mean, all of it at most; negative for a rise.
    chance : float
        That the scatter of the others does as much.
    """

    place: int
    depth: float
    chance: float


def once_a_turn(heights: NDArray[np.float64]) -> NDArray[np.float64]:
    """Give the rise and fall once a turn (tight bearing, bent shaft, out of round).

    A sine of the turn's length, fitted without heed to single ripples far off: least absolute
    deviations by weights, E. J. Schlossmacher, J. Amer. Statist. Assoc. 68 (1973) 857 (from
    memory).
    """
    angle = 2.0 * np.pi * np.arange(len(heights)) / len(heights)
    table = np.column_stack((np.ones(len(heights)), np.cos(angle), np.sin(angle)))
    weights = np.ones(len(heights))
    fitted = np.zeros(len(heights))
    for _ in range(30):
        root = np.sqrt(weights)
        found, *_ = np.linalg.lstsq(table * root[:, None], heights * root, rcond=None)
        fitted = table @ found
        away = np.abs(heights - fitted)
        weights = 1.0 / np.maximum(away, 1e-3 * (float(away.max()) + 1e-15))
    return fitted - float(np.median(heights))


def odd_ones(turn: Turn, *, whole: bool) -> list[Odd]:
    """Give the ripples of the pattern that do not belong to the others, the deepest first.

    Notches come before rises.

    Parameters
    ----------
    turn : Turn
    whole : bool
        The pattern is a whole turn: what rises and falls once in it is the shaft's.
    """
    slow = once_a_turn(turn.heights) if whole else np.zeros(len(turn.heights))
    heights = turn.heights - slow
    count = len(heights)
    if count < 5:
        return []
    if count % 4 == 2:
        heights = _without_alternation(heights)
    heights = _without_tail(heights)
    far = outliers(heights, max(1, count * 2 // 5), _CHANCE)
    if not far:
        return []
    others = np.delete(heights, far)
    typical = turn.typical
    swing = float(np.ptp(typical))
    least = max(LEAST_DEPTH, LEAST_OF_RIPPLE * swing)
    level = turn.waves - slow[:, None]
    middle = float(np.median(level.mean(axis=1)) - typical.mean())
    found = []
    for place in far:
        away = typical + middle - level[place]
        depth = float(away.max() if heights[place] < np.median(others) else away.min())
        steady = abs(heights[place] - np.median(others)) > _REPEATED * turn.errors[place]
        if abs(depth) >= least and steady:
            chance = chance_beside(float(heights[place]), others, count)
            found.append(Odd(int(place), min(depth, 1.0), chance))
    deepest = max((abs(one.depth) for one in found), default=0.0)
    found = [one for one in found if abs(one.depth) >= _BESIDE_DEEPEST * deepest]
    return sorted(_without_edges(found, count), key=lambda one: (one.depth < 0.0, -abs(one.depth)))


def alternates(heights: NDArray[np.float64], left_out: set[int]) -> bool:
    """Tell whether every second ripple is the higher, beyond the scatter of all of them.

    Two unlike brushes make it so where an odd number of bars lets them commutate by turns.

    Parameters
    ----------
    heights : ndarray, float64, shape (ripples,)
    left_out : set of int
        Places that are far off for reasons of their own.

    Source
    ------
    Welch's test of two means, B. L. Welch, Biometrika 34 (1947) 28; at 3.5 standard errors.
    """
    if len(heights) % 4 != 2:
        return False
    places = np.array([k for k in range(len(heights)) if k not in left_out])
    one, other = heights[places[places % 2 == 0]], heights[places[places % 2 == 1]]
    if min(len(one), len(other)) < 3:
        return False
    error = np.sqrt(one.var(ddof=1) / len(one) + other.var(ddof=1) / len(other))
    return bool(abs(one.mean() - other.mean()) > 3.5 * error)


def shows_whole_turn(heights: NDArray[np.float64]) -> bool:
    """Tell whether a pattern without odd ripples looks like a whole turn under two brushes.

    Every bar meets both brushes, so the halves of a turn resemble each other, but for what rises
    and falls once a turn. Half a turn shows neither.
    """
    count = len(heights)
    if count % 2:
        return False
    centred = heights - heights.mean()
    power = np.abs(np.fft.rfft(centred)) ** 2
    if 2.0 * power[1] > power[1:].sum():
        return True
    left = power.copy()
    left[:2] = 0.0
    return bool(left[2::2].sum() > 0.9 * left.sum())


def _without_alternation(heights: NDArray[np.float64]) -> NDArray[np.float64]:
    """Take out what two unlike brushes do to every second ripple."""
    levelled = heights.copy()
    middle = float(np.median(heights))
    for side in (0, 1):
        levelled[side::2] += middle - float(np.median(heights[side::2]))
    return levelled


def _without_tail(heights: NDArray[np.float64]) -> NDArray[np.float64]:
    """Take out what the armature's inductance carries over from each ripple to the next.

    First-order inverse filter round the turn; the part carried over is the one that leaves the
    ripples most alike by the sum of sizes, so that a notch is one ripple's and not its followers'.
    """
    centred = heights - np.median(heights)
    carried = np.arange(0.0, 0.61, 0.05)
    left = [centred - part * np.roll(centred, 1) for part in carried]
    sizes = [float(np.abs(one - np.median(one)).sum()) for one in left]
    best: NDArray[np.float64] = left[int(np.argmin(sizes))]
    return best


def _without_edges(found: list[Odd], count: int) -> list[Odd]:
    """Leave out ripples that are only the edge of a deeper notch or a higher hump beside them."""
    depths = {one.place: one.depth for one in found}

    def is_edge(one: Odd) -> bool:
        sides = (depths.get((one.place + step) % count, 0.0) for step in (-1, 1))
        return any(abs(one.depth) < _TAIL * abs(side) for side in sides)

    return [one for one in found if not is_edge(one)]


def bars_of(odd: list[Odd], length: int, count: Count) -> tuple[BarFlaw, ...]:
    """Tell whose bars the odd ripples are, counted from the deepest notch.

    A bar meets every brush once a turn: its notches are one bar's. Two bars that meet two brushes
    at the same moment look alike, so a bar is numbered by the smaller of its possible numbers.
    Where a bar is as wide as two ripples (an odd count), odd ripples side by side are one bar's.

    Parameters
    ----------
    odd : list of Odd
        The deepest first.
    length : int, ripples
        Of the pattern.
    count : Count
        Of brushes, bars and ripples a turn.
    """
    known: list[tuple[int, int, Odd]] = []
    for one in odd:
        bar = count.bar_at((one.place - odd[0].place) % length)
        if count.ripples > count.bars:
            beside = [
                b
                for b, place, other in known
                if _adjoin(one.place, place, length) and one.depth * other.depth > 0.0
            ]
            bar = beside[0] if beside else bar
        known.append((bar, one.place, one))
    deepest: dict[int, Odd] = {}
    for bar, _, one in known:
        if bar not in deepest or abs(one.depth) > abs(deepest[bar].depth):
            deepest[bar] = one
    return tuple(
        BarFlaw(bar + 1, one.depth, one.depth >= DEAD_DEPTH, 1.0 - one.chance)
        for bar, one in sorted(deepest.items())
    )


def _adjoin(one: int, other: int, length: int) -> bool:
    return (one - other) % length in (1, length - 1)
