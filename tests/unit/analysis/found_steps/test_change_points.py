"""Where the mean of a series changes."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from meterlog.analysis.found_steps import change_points, propose
from meterlog.analysis.found_steps.change_points import noise_of


def noisy(levels, each, sigma, seed=0):
    rng = np.random.default_rng(seed)
    return np.repeat(np.array(levels, float), each) + rng.normal(0.0, sigma, len(levels) * each)


def test_clear_steps_are_placed_exactly():
    found = change_points(noisy([0.0, 3.0, 5.0, 13.0, 3.0], 200, 0.1))
    assert found.tolist() == [200, 400, 600, 800]


@pytest.mark.parametrize("each", [7, 60, 333])
def test_steps_of_any_length_are_found(each):
    found = change_points(noisy([0.0, 3.0, 0.0, 5.0], each, 0.2))
    assert found.tolist() == [each, 2 * each, 3 * each]


def test_noise_alone_has_none_in_three_hundred_series():
    series = (noisy([1.0], 2000, 1.0, seed) for seed in range(300))
    assert sum(len(change_points(one)) > 0 for one in series) <= 3


def test_few_values_of_noise_seldom_have_one():
    series = (noisy([1.0], 40, 1.0, seed) for seed in range(300))
    assert sum(len(change_points(one)) > 0 for one in series) <= 15


def test_a_change_that_noise_hides_is_not_told_and_a_longer_look_tells_it():
    assert len(change_points(noisy([0.0, 0.5], 20, 1.0))) == 0
    assert len(change_points(noisy([0.0, 0.5], 1000, 1.0))) == 1


def test_constant_and_too_short_series_have_none():
    assert change_points(np.full(100, 3.6)).tolist() == []
    assert change_points(np.array([1.0])).tolist() == []
    assert change_points(np.empty(0)).tolist() == []


def test_a_meter_that_shows_one_digit_all_the_time_still_shows_the_step():
    assert change_points(np.repeat([3.6, 5.7], 50)).tolist() == [50]


@given(st.floats(-1e3, 1e3), st.floats(0.01, 1e3))
def test_scale_and_zero_of_the_readings_do_not_matter(shift, factor):
    series = noisy([0.0, 3.0, 5.0, 3.0], 50, 0.3)
    assert change_points(series * factor + shift).tolist() == change_points(series).tolist()


def test_backwards_in_time_the_same_changes_are_found():
    series = noisy([0.0, 3.0, 5.0, 13.0], 100, 0.1)
    there, back = change_points(series), change_points(series[::-1])
    assert (len(series) - back[::-1]).tolist() == there.tolist()


def test_the_noise_of_independent_readings_is_about_their_deviation_whatever_steps_are_in_it():
    series = noisy([0.0, 30.0, 5.0, 13.0], 2000, 0.7)
    assert noise_of(series) == pytest.approx(0.7, rel=0.3)


def test_noise_that_hangs_together_counts_as_what_it_does_to_means():
    rng = np.random.default_rng(3)
    wander = rng.normal(0.0, 1.0, 20_000)
    for k in range(1, len(wander)):
        wander[k] += 0.8 * wander[k - 1]
    # First-order autoregression: means vary as if each reading had sigma / (1 - r).
    assert noise_of(wander) == pytest.approx(5.0, rel=0.25)


def test_labels_rise_with_the_current_without_holes_and_off_is_0():
    assert propose([0.0, 13.6, 3.6, 5.7, 3.55, 0.1]) == (0, 3, 1, 2, 1, 0)
    assert propose([13.6, 3.6]) == (2, 1)
    assert propose([]) == ()


@given(st.lists(st.floats(0.0, 60.0), max_size=12))
def test_labels_keep_the_order_of_the_levels(levels):
    labels = propose(levels)
    ordered = [label for _, label in sorted(zip(levels, labels, strict=True))]
    assert ordered == sorted(ordered)
    assert set(labels) - {0} == set(range(1, max(labels, default=0) + 1))
    assert all((label == 0) == (level < 0.3) for level, label in zip(levels, labels, strict=True))
