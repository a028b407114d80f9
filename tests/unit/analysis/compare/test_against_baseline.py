"""A motor against several that are known to be good."""

from dataclasses import replace

import pytest

from meterlog.analysis.compare import Ask, compare, tolerance_factor
from meterlog.model import Verdict


@pytest.fixture
def good(side, healthy):
    """Make good motors that differ a little, at supplies that differ a little."""

    def make(count):
        return [
            side(
                f"good-{k}",
                replace(healthy, no_load_a=1.4 + 0.05 * ((k * 3) % 7)),
                12.6 + 0.1 * k,
            )
            for k in range(count)
        ]

    return make


def _held(good, new):
    return compare(good, new, Ask(baseline=True)).comparison


def test_a_motor_like_the_others_passes_and_a_dragging_one_fails(good, side, healthy, worn):
    fine = _held(good(8), side("new", replace(healthy, no_load_a=1.55), 13.5))
    assert [one.verdict for one in fine.steps] == [Verdict.PASS] * 4
    assert "within what good ones draw at speeds 1, 2, 3 and 4" in fine.summary
    bad = _held(good(8), side("new", worn, 13.5))
    assert [one.verdict for one in bad.steps] == [Verdict.FAIL] * 4
    assert all(one.probability < 0.05 for one in bad.steps)
    assert all(one.count == 8 for one in bad.steps)


def test_the_interval_is_mean_and_deviation_of_the_good_ones(good, side, healthy):
    top = _held(good(5), side("new", healthy)).steps[-1]
    factor = tolerance_factor(5, 0.90, 0.95)
    low, high = top.tolerance_a
    assert (low + high) / 2 == pytest.approx(top.baseline_mean_a)
    assert high - low == pytest.approx(2 * factor * top.baseline_sd_a)
    assert top.difference_a.value == pytest.approx(top.new_a.value - top.baseline_mean_a)
    assert top.reference_v == 13.0


def test_two_good_ones_give_a_mean_and_no_verdict(good, side, worn):
    comparison = _held(good(2), side("new", worn))
    top = comparison.steps[-1]
    assert top.verdict is None
    assert top.tolerance_a is None
    assert "at least 3" in top.words
    assert "too few good motors" in comparison.summary


def test_with_three_the_interval_is_wide_and_said_to_be(good, side, healthy):
    top = _held(good(3), side("new", healthy)).steps[-1]
    assert top.tolerance_a[1] - top.tolerance_a[0] == pytest.approx(
        2 * 8.306 * top.baseline_sd_a, 1e-3
    )
    assert "8.3 deviations wide" in top.words


def test_one_among_the_good_ones_that_is_not_is_named(good, side, healthy, worn):
    comparison = _held([*good(7), side("odd-one", worn)], side("new", healthy))
    named = [note for note in comparison.notes if "odd-one" in note and "stands out" in note]
    assert len(named) == 1
    assert "speed 1" in named[0]
    quiet = _held(good(8), side("new", healthy))
    assert not any("stands out" in note for note in quiet.notes)


def test_what_one_meter_read_of_all_is_no_part_of_the_difference(good, side, healthy):
    def u_with(serial):
        comparison = _held(good(6), side("new", healthy, serial=serial))
        return comparison.steps[-1].difference_a.combined_u

    assert u_with("A1") < 0.7 * u_with("B2")


def test_the_order_of_the_good_ones_does_not_matter(good, side, worn):
    forth = _held(good(6), side("new", worn))
    back = _held(list(reversed(good(6))), side("new", worn))
    for one, other in zip(forth.steps, back.steps, strict=True):
        assert one.tolerance_a == pytest.approx(other.tolerance_a, rel=1e-9)
        assert one.difference_a.expanded == pytest.approx(other.difference_a.expanded, rel=1e-9)
