"""Spacings: how likely points thrown at random lie as regularly as these."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

DRAWS = 20_000
_SEED = 1946
_LOT = 500_000
"""Numbers drawn in one go."""


def greenwood(spacings_s: NDArray[np.float64]) -> float:
    """Give Greenwood's statistic: the sum of the squares of the parts of the whole.

    Parameters
    ----------
    spacings_s : ndarray, float64, shape (n,), seconds
        All above 0.

    Returns
    -------
    float
        1 / n for all alike, near 1 for one that takes all.

    Source
    ------
    M. Greenwood, "The statistical study of infectious diseases", Journal of the Royal Statistical
    Society 109 (1946).
    """
    parts = spacings_s / spacings_s.sum()
    return float(np.square(parts).sum())


def chance_of_regularity(spacings_s: NDArray[np.float64]) -> float:
    """Give the probability that a Poisson process leaves spacings at least as even as these.

    Parameters
    ----------
    spacings_s : ndarray, float64, shape (n,), n at least 2, seconds

    Returns
    -------
    float
        Of the lower tail of Greenwood's statistic. Exact for two spacings; for more by 20,000
        draws, always the same ones, counted so that it is never 0.

    Source
    ------
    Spacings of points thrown at random are jointly those of normalised exponentials: R. Pyke,
    "Spacings", Journal of the Royal Statistical Society B 27 (1965). Held against published
    moments in ``tests/reference/test_spacings_greenwood.py``.
    """
    seen, count = greenwood(spacings_s), len(spacings_s)
    if count == 2:
        return float(abs(spacings_s[0] - spacings_s[1]) / spacings_s.sum())
    random, as_even, left = np.random.default_rng(_SEED), 0, DRAWS
    while left:
        # In lots: thousands of dropouts in a long recording would take gigabytes. The numbers
        # drawn are the same.
        lot = min(left, max(_LOT // count, 1))
        draws = random.exponential(size=(lot, count))
        draws /= draws.sum(axis=1, keepdims=True)
        as_even += int((np.square(draws).sum(axis=1) <= seen).sum())
        left -= lot
    return (as_even + 1) / (DRAWS + 1)


def chance_of_no_short_one(lengths_s: NDArray[np.float64]) -> float:
    """Give the probability that of so many random spacings none is shorter than the shortest here.

    Parameters
    ----------
    lengths_s : ndarray, float64, shape (n,), n at least 2, seconds

    Source
    ------
    P(min >= g) = (1 - n g / T)^(n - 1): B. de Finetti 1964; H. A. David and H. N. Nagaraja, "Order
    Statistics", 6.4 (from memory).
    """
    count = len(lengths_s)
    share = count * float(lengths_s.min()) / float(lengths_s.sum())
    return float(max(1.0 - share, 0.0) ** (count - 1))


def chance_of_so_many(chances: NDArray[np.float64], hits: int) -> float:
    """Give the probability of at least ``hits`` successes of independent trials.

    Parameters
    ----------
    chances : ndarray, float64, shape (n,)
        Of success of each.
    hits : int

    Source
    ------
    Poisson binomial distribution by convolution, any textbook of probability.
    """
    spread = np.ones(1)
    for chance in chances.tolist():
        spread = np.convolve(spread, (1.0 - chance, chance))
    return float(min(spread[hits:].sum(), 1.0))
