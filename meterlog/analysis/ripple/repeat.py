"""Repeat: after how many ripples the pattern of their heights comes again."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from meterlog.analysis.ripple.tracking import PLACES, Tracked

LONGEST = 52
"""Ripples: 25 bars under two brushes, or 13 under four."""
SHORTEST = 4
"""Half a turn of 8 bars; every second or third ripple the higher does not mark a turn."""
_SLOW = 3 * LONGEST
_MARGIN = 12.0
"""A pattern must beat no pattern by this much of the criterion: odds of exp(6), 400 to 1."""

Heights = list[NDArray[np.float64]]


@dataclass(frozen=True, slots=True)
class Repeat:
    """A pattern that comes again.

    Attributes
    ----------
    ripples : int
        Its length.
    confidence : float, 0 to 1
        That it is this length and no other.
    """

    ripples: int
    confidence: float


def best_cut(windows: Sequence[Tracked]) -> int:
    """Give by how many places the cut between two ripples is best moved.

    Where heights vary most from ripple to ripple each notch lies within one of them.
    """
    spread = np.zeros(PLACES)
    for window in windows:
        flat = window.waves.ravel() / window.mean_a
        sums = np.concatenate(([0.0], np.cumsum(flat)))
        for shift in range(PLACES):
            heights = np.diff(sums[shift::PLACES])
            spread[shift] += float(np.var(heights - np.median(heights))) * len(heights)
    return int(np.argmax(spread)) if spread.max() > 1.05 * spread[0] else 0


def cut_waves(window: Tracked, shift: int) -> NDArray[np.float64]:
    """Give the waves cut ``shift`` places later, as part of the mean, slow changes taken out.

    Returns
    -------
    ndarray, float64, shape (ripples, PLACES)
    """
    flat = window.waves.ravel() / window.mean_a
    if shift:
        flat = flat[shift : shift - PLACES]
    waves = flat.reshape(-1, PLACES)
    level = _smooth(waves.mean(axis=1), min(_SLOW, max(5, len(waves) // 3)))
    return waves - level[:, None]


def _smooth(series: NDArray[np.float64], width: int) -> NDArray[np.float64]:
    """Give a running mean over ``width`` values; at the ends over those that are there."""
    sums = np.concatenate(([0.0], np.cumsum(series)))
    places = np.arange(len(series))
    first = np.maximum(places - width // 2, 0)
    last = np.minimum(places + width // 2 + 1, len(series))
    mean: NDArray[np.float64] = (sums[last] - sums[first]) / (last - first)
    return mean


def find_repeat(heights: Heights) -> Repeat | None:
    """Find the shortest pattern that the heights of the ripples repeat.

    Parameters
    ----------
    heights : list of ndarray, float64
        Mean of each ripple, window by window; each window begins anywhere in the pattern.

    Returns
    -------
    Repeat or None
        None where no pattern beats having none.

    Source
    ------
    One-way layout, ripples by their place in the pattern, a model for each length; chosen by
    the Bayesian information criterion, G. Schwarz, Ann. Statist. 6 (1978) 461, which charges for
    every place, so that a multiple of the true length is never better. Weights exp(-difference
    / 2): A. E. Raftery, Sociol. Methodol. 25 (1995) 111. From memory.
    """
    least = min(len(h) for h in heights) / 2.5
    lengths = [n for n in (1, *range(SHORTEST, LONGEST + 1)) if n <= least]
    if len(lengths) < 2:
        return None
    cost = np.array([sum(_cost(h, n) for h in heights) for n in lengths])
    best = int(np.argmin(cost))
    if best == 0 or cost[0] - cost[best] < _MARGIN:
        return None
    weights = np.exp(-0.5 * np.minimum(cost - cost[best], 600.0))
    return Repeat(lengths[best], float(1.0 / weights.sum()))


def _cost(heights: NDArray[np.float64], length: int) -> float:
    count = len(heights)
    centred = heights - heights.mean()
    total = float(centred @ centred)
    if length > 1:
        place = np.arange(count) % length
        sums = np.bincount(place, centred, length)
        total -= float((sums**2 / np.bincount(place, minlength=length)).sum())
    return count * math.log(max(total / count, 1e-30)) + length * math.log(count)
