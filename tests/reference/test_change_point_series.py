"""Change points against a published series and against an independent library.

The Nile: annual flow at Aswan 1871 to 1970. G. W. Cobb, "The problem of the Nile: conditional
solution to a changepoint problem", Biometrika 65 (1978), 243-251: one fall, after 1898, the 28th
year. Data as packaged with statsmodels. Referee: ruptures (C. Truong, L. Oudre, N. Vayatis,
"Selective review of offline change point detection methods", Signal Processing 167 (2020)).
"""

import numpy as np
import pytest
import ruptures
from statsmodels.datasets import nile

from meterlog.analysis.found_steps import change_points
from meterlog.analysis.found_steps.change_points import noise_of


def flow():
    return nile.load_pandas().data["volume"].to_numpy(float)


def test_the_nile_fell_once_after_1898():
    found = change_points(flow())
    assert found.tolist() == [28]


def test_the_fall_of_the_nile_is_the_least_squares_one():
    # Sum of squares about the two means, and the means: from the data by least squares.
    volume = flow()
    (at,) = change_points(volume)
    before, after = volume[:at], volume[at:]
    assert before.mean() == pytest.approx(1097.75, abs=1e-9)
    assert after.mean() == pytest.approx(849.972222, abs=1e-6)
    squares = np.square(before - before.mean()).sum() + np.square(after - after.mean()).sum()
    assert squares == pytest.approx(1597457.1944, rel=1e-9)


def steps(seed, count=6, n=600, least=20):
    """Levels at least 2.5 deviations apart, each at least ``least`` values long."""
    rng = np.random.default_rng(seed)
    places = np.sort(rng.choice(np.arange(1, n // least), count - 1, replace=False)) * least
    jumps = rng.choice((-1.0, 1.0), count) * rng.uniform(2.5, 8.0, count)
    levels = np.repeat(np.cumsum(jumps), np.diff([0, *places, n]))
    return levels + rng.normal(0.0, 1.0, n), places


@pytest.mark.parametrize("seed", range(12))
def test_with_the_same_penalty_the_independent_exact_search_finds_the_same(seed):
    series, _ = steps(seed)
    sigma = noise_of(series)
    penalty = 3.0 * np.log(len(series))
    referee = ruptures.KernelCPD(kernel="linear", min_size=1).fit(series)
    # The library's kernel cost is the plain sum of squares about the mean.
    theirs = referee.predict(pen=penalty * sigma**2)[:-1]
    assert change_points(series).tolist() == theirs


@pytest.mark.parametrize("seed", range(12))
def test_told_the_number_of_changes_the_referee_puts_them_where_they_are_found(seed):
    series, places = steps(seed + 100)
    referee = ruptures.KernelCPD(kernel="linear", min_size=1).fit(series)
    ours = change_points(series)
    assert len(ours) == len(places)
    assert np.abs(ours - places).max() <= 2
    assert ours.tolist() == referee.predict(n_bkps=len(places))[:-1]


def test_pruned_exact_search_of_the_referee_agrees_on_a_short_series():
    series, _ = steps(7, count=4, n=160)
    sigma = noise_of(series)
    referee = ruptures.Pelt(model="l2", min_size=1, jump=1).fit(series)
    penalty = 3.0 * np.log(300.0)
    assert change_points(series).tolist() == referee.predict(pen=penalty * sigma**2)[:-1]
