"""Chances of spacings, against published moments, closed forms and scipy."""

import numpy as np
import pytest
from scipy import stats

from meterlog.analysis.inferred.spacings import (
    chance_of_no_short_one,
    chance_of_regularity,
    chance_of_so_many,
    greenwood,
)


@pytest.mark.parametrize("count", [3, 6, 12])
def test_the_statistic_has_the_published_mean_and_variance(count):
    # P. A. P. Moran, "The random division of an interval", JRSS Supplement 9 (1947): for n points,
    # hence n + 1 spacings, mean 2 / (n + 2) and variance 4 n / ((n + 2)^2 (n + 3) (n + 4)).
    points = count - 1
    rng = np.random.default_rng(3)
    cuts = np.sort(rng.uniform(size=(20_000, points)), axis=1)
    values = [greenwood(one) for one in np.diff(cuts, axis=1, prepend=0.0, append=1.0)]
    mean = 2.0 / (points + 2)
    variance = 4.0 * points / ((points + 2) ** 2 * (points + 3) * (points + 4))
    assert np.mean(values) == pytest.approx(mean, rel=0.01)
    assert np.var(values) == pytest.approx(variance, rel=0.05)


@pytest.mark.parametrize("share", [0.5, 0.45, 0.2, 0.01])
def test_two_spacings_are_exact(share):
    # The part of the first is uniform, so that it is within d of a half with probability 2 d.
    assert chance_of_regularity(np.array([share, 1.0 - share])) == pytest.approx(1.0 - 2.0 * share)


@pytest.mark.parametrize("radius", [0.1, 0.25, 0.4])
def test_three_spacings_are_the_area_of_a_circle_in_a_triangle(radius):
    # Greenwood's statistic of three parts is 1/3 + r^2, r the distance from the middle of the
    # triangle of all parts (side sqrt 2, area sqrt(3)/2): pi r^2 over that, while inside.
    parts = 1.0 / 3.0 + radius / np.sqrt(2.0) * np.array([1.0, -1.0, 0.0])
    wanted = np.pi * radius**2 / (np.sqrt(3.0) / 2.0)
    assert chance_of_regularity(parts) == pytest.approx(wanted, abs=0.012)


def test_the_chance_is_uniform_for_random_points():
    rng = np.random.default_rng(4)
    chances = [chance_of_regularity(rng.exponential(size=7)) for _ in range(200)]
    assert stats.kstest(chances, "uniform").pvalue > 0.01


@pytest.mark.parametrize("count", [2, 4, 7])
def test_the_shortest_of_random_spacings_is_as_long_as_published(count):
    rng = np.random.default_rng(5)
    shares = rng.dirichlet(np.ones(count), 40_000).min(axis=1)
    shortest = 0.4 / count
    lengths = np.full(count, (1.0 - shortest) / (count - 1))
    lengths[0] = shortest
    assert chance_of_no_short_one(lengths) == pytest.approx(np.mean(shares >= shortest), abs=0.01)


@pytest.mark.parametrize("hits", [0, 1, 3, 6])
def test_equal_trials_are_binomial(hits):
    wanted = stats.binom.sf(hits - 1, 6, 0.3)
    assert chance_of_so_many(np.full(6, 0.3), hits) == pytest.approx(wanted, rel=1e-12)
