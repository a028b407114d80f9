"""Change points: where the mean of a series of readings changes.

The best partition is found among candidates: places where the means of two neighbouring windows
differ, windows of 1, 2, 4, ... readings. That keeps the exact search of the optimum to the few
places where there is one, and the whole at n log n additions on whole arrays.

Sources: optimal partitioning with pruning (PELT), R. Killick, P. Fearnhead, I. A. Eckley, "Optimal
detection of changepoints with a linear computational cost", Journal of the American Statistical
Association 107 (2012), 1590-1598. Candidates from moving sums over several windows: B. Eichinger,
C. Kirch, "A MOSUM procedure for the estimation of multiple random change points", Bernoulli 24
(2018), 526-564. Penalty of three log n a change (one each for level, place and the number of
places): N. R. Zhang, D. O. Siegmund, "A modified Bayes information criterion ...", Biometrics 63
(2007), 22-32. All from memory.
"""

from __future__ import annotations

import math

import numpy as np
from numpy.typing import NDArray

MAD_TO_SD = 1.482602218505602
"""Scaled median absolute deviation of a normal distribution."""
MOST_CANDIDATES = 1024
"""Of more candidates the strongest are searched."""
_SCREEN = 0.6
"""A candidate is looked at from this part of the size at which the penalty would be paid."""
_FEW = 300
"""Of fewer values the noise is known too badly for a smaller penalty: without it every fifth
series of 40 values of pure noise would have a change."""
_FEWEST_BLOCKS = 32
"""Noise over longer windows is asked only of at least so many of them."""

_UNCERTAIN = 1.3
"""Standard deviation of that estimate from n differences, as a part of it, times root n: the
median has 37 % of the efficiency of the standard deviation, and neighbours share a block."""

Values = NDArray[np.float64]


def noise_of(values: Values) -> float:
    """Give the standard deviation of one reading, as independent ones would need to have it.

    Parameters
    ----------
    values : ndarray, float64, shape (n,)

    Returns
    -------
    float
        The largest of what neighbouring block means of 1, 2, 4, ... readings show, times the
        square root of the block: noise that hangs together, ripple seen through a slow meter and
        drift count as what they do to means. Never below a digit's; 0 of constant readings.

    Source
    ------
    Median of absolute differences, robust against the changes themselves: scaled by 1.4826 / sqrt 2
    (normal distribution); a digit: rectangular, resolution / sqrt 12 (JCGM 100:2008, F.2.2.1).
    """
    apart = np.abs(np.diff(values))
    moved = apart[apart > 0.0]
    if not len(moved):
        return 0.0
    sigma = float(moved.min()) / math.sqrt(12.0)
    size = 1
    while size == 1 or len(values) // size >= _FEWEST_BLOCKS:
        blocks = values[: len(values) // size * size].reshape(-1, size).mean(axis=1)
        spread = float(np.median(np.abs(np.diff(blocks)))) * MAD_TO_SD / math.sqrt(2.0)
        # The largest of several estimates is too large by about what the worst is uncertain by.
        sure = 1.0 if size == 1 else 1.0 - _UNCERTAIN / math.sqrt(len(blocks))
        sigma = max(sigma, sure * spread * math.sqrt(size))
        size *= 2
    return sigma


def change_points(
    values: Values, sigma: float | None = None, penalty: float | None = None
) -> NDArray[np.intp]:
    """Give where the mean changes.

    Parameters
    ----------
    values : ndarray, float64, shape (n,)
        All finite.
    sigma : float or None
        Standard deviation of one value; None: :func:`noise_of`.
    penalty : float or None
        What a change must save in the sum of squares, in units of ``sigma`` squared; None:
        3 log n, of few values that of 300.

    Returns
    -------
    ndarray, intp, shape (changes,)
        Index of the first value of each new level, rising; none for constant or single values.
    """
    n = len(values)
    sigma = noise_of(values) if sigma is None else sigma
    none = np.empty(0, np.intp)
    if n < 2 or sigma <= 0.0:
        return none
    charge = 3.0 * math.log(max(n, _FEW)) if penalty is None else penalty
    scaled = (values - np.median(values)) / sigma
    sums = np.concatenate(([0.0], np.cumsum(scaled)))
    places = _candidates(sums, _SCREEN * math.sqrt(charge))
    if not len(places):
        return none
    knots = np.concatenate(([0], places, [n]))
    chosen = _best_partition(sums, np.concatenate(([0.0], np.cumsum(scaled**2))), knots, charge)
    return _moved_to_best(sums, chosen, n)


def _candidates(sums: Values, least: float) -> NDArray[np.intp]:
    """Give the strongest place of each window-long block, for each length of window."""
    n = len(sums) - 1
    best = np.zeros(n + 1)
    size = 1
    while 2 * size <= n:
        middle = sums[size : n - size + 1]
        apart = np.abs(sums[2 * size :] - 2.0 * middle + sums[: n - 2 * size + 1])
        strength = apart / math.sqrt(2.0 * size)
        blocks = -(-len(strength) // size)
        padded = np.zeros(blocks * size)
        padded[: len(strength)] = strength
        top = np.argmax(padded.reshape(blocks, size), axis=1) + np.arange(blocks) * size
        strong = padded[top] > least
        at = top[strong] + size
        best[at] = np.maximum(best[at], padded[top[strong]])
        size *= 2
    places = np.flatnonzero(best)
    if len(places) > MOST_CANDIDATES:
        strongest = np.argsort(best[places], kind="stable")[-MOST_CANDIDATES:]
        places = np.sort(places[strongest])
    return places


def _best_partition(
    sums: Values, squares: Values, knots: NDArray[np.intp], charge: float
) -> list[int]:
    """Give the knots between which the penalised sum of squares is least (PELT)."""
    s, q = sums[knots], squares[knots]
    cost = np.full(len(knots), -charge)
    came_from = np.zeros(len(knots), np.intp)
    alive = np.zeros(1, np.intp)
    for end in range(1, len(knots)):
        length = knots[end] - knots[alive]
        fit = q[end] - q[alive] - (s[end] - s[alive]) ** 2 / length
        total = cost[alive] + fit
        least = int(np.argmin(total))
        cost[end] = total[least] + charge
        came_from[end] = alive[least]
        alive = np.append(alive[total <= cost[end]], end)
    chosen: list[int] = []
    at = int(came_from[-1])
    while at:
        chosen.append(int(knots[at]))
        at = int(came_from[at])
    return chosen[::-1]


def _moved_to_best(sums: Values, chosen: list[int], n: int) -> NDArray[np.intp]:
    """Move each change to the best place between its neighbours, candidate or not."""
    edges = [0, *chosen, n]
    for k in range(1, len(edges) - 1):
        left, right = edges[k - 1], edges[k + 1]
        places = np.arange(left + 1, right)
        before = (sums[places] - sums[left]) ** 2 / (places - left)
        after = (sums[right] - sums[places]) ** 2 / (right - places)
        edges[k] = int(places[np.argmax(before + after)])
    return np.array(edges[1:-1], np.intp)
