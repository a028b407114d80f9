"""The longest unbroken time at or above each multiple of a fuse's rating."""

import numpy as np
import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from meterlog.analysis.startup import TimeAbove
from meterlog.model import Accuracy, Fuse, Limits
from meterlog.profile import limits_profile

TEN = Limits(fuse=Fuse(10.0))
"""Rows at 11, 13.5, 16, 20, 35 and 60 A."""


def times(read, cuts=()):
    return read.show(TimeAbove([read.instrument], read.limits), cuts).exceedances()


def plateau(level, start, end, base=5.0):
    return lambda t: np.where((t >= start) & (t < end), level, base)


def exact(amps, **how):
    return dict(amps=amps, limits=TEN, accuracy=Accuracy(0.0, 0, 0.01, basis="invented"), **how)


def test_a_plateau_counts_at_every_multiple_it_reaches_and_at_no_other(read):
    seen = times(read(**exact(plateau(21.0, 2.0, 5.0), interval_s=0.1)))
    longest = {row.percent: row.longest_s for row in seen.rows}
    assert [longest[p] for p in (110.0, 135.0, 160.0, 200.0)] == pytest.approx([3.0] * 4, abs=0.1)
    assert longest[350.0] == longest[600.0] == 0.0
    assert seen.rows[3].least_s == pytest.approx(2.9)
    assert seen.rows[3].most_s == pytest.approx(3.1)
    assert seen.highest_a == pytest.approx(21.0)


def test_exactly_at_the_multiple_counts(read):
    seen = times(read(**exact(plateau(20.0, 2.0, 5.0), interval_s=0.1)))
    assert seen.rows[3].least_s == pytest.approx(2.9)


def test_a_ramp_is_cut_where_it_passes_the_multiple(read):
    # 0 to 40 A in 10 s and back: at or above 20 A for 10 s, from 5 s to 15 s.
    ramp = exact(lambda t: 40.0 - 4.0 * np.abs(t - 10.0), end_s=20.0, interval_s=0.7)
    row = times(read(**ramp)).rows[3]
    assert row.longest_s == pytest.approx(10.0, abs=1e-6)
    assert row.least_s <= 10.0 <= row.most_s <= 11.5


def test_the_longest_of_several_stretches_counts_and_they_are_not_added(read):
    def thrice(t):
        return np.where(((t > 1) & (t < 2)) | ((t > 3) & (t < 5)) | ((t > 6) & (t < 6.5)), 21.0, 5)

    assert times(read(**exact(thrice))).rows[3].longest_s == pytest.approx(2.0, abs=0.02)


def test_ripple_and_a_pulsed_feed_count_by_what_they_heat(read):
    def pulsed(t):
        return np.where((t >= 2.0) & (t < 5.0), 30.0 * (t % 0.001 < 0.0005), 0.0)

    seen = times(read(**exact(pulsed, interval_s=5e-5)))
    # 30 A half of the time heat as 21.2 A do all the time.
    assert seen.rows[3].longest_s == pytest.approx(3.0, abs=0.02)
    assert seen.rows[4].longest_s == 0.0
    assert seen.highest_a == pytest.approx(30.0 / np.sqrt(2.0), rel=0.05)


def test_missing_readings_break_a_stretch_and_widen_what_it_may_have_been(read):
    one = exact(plateau(21.0, 2.0, 6.0), interval_s=0.1, missing=((3.95, 4.55),))
    row = times(read(**one)).rows[3]
    assert row.longest_s == pytest.approx(2.0, abs=0.11)
    assert row.least_s <= 1.95
    assert row.most_s >= 2.5


def test_the_meters_uncertainty_takes_off_from_the_least_and_adds_to_the_most(read):
    near = {"amps": plateau(20.5, 2.0, 5.0), "limits": TEN, "interval_s": 0.1}
    row = times(read(**near, accuracy=Accuracy(5.0, 0, 0.01, basis="invented"))).rows[3]
    assert row.longest_s == pytest.approx(3.0, abs=0.1)
    assert row.least_s == 0.0  # 20.5 A may be 19.5 A
    below = {"amps": plateau(19.5, 2.0, 5.0), "limits": TEN, "interval_s": 0.1}
    row = times(read(**below, accuracy=Accuracy(5.0, 0, 0.01, basis="invented"))).rows[3]
    assert row.longest_s == 0.0
    assert row.most_s == pytest.approx(3.1, abs=0.01)  # or 20.5 A
    unsaid = times(read(**below, accuracy=None)).rows[3]
    assert unsaid.most_s == pytest.approx(3.1, abs=0.01)


def test_a_stretch_that_goes_on_to_the_end_counts_to_the_last_reading(read):
    row = times(read(**exact(plateau(21.0, 8.0, 99.0), interval_s=0.1))).rows[3]
    assert row.longest_s == pytest.approx(1.95, abs=0.06)


def test_without_a_fuse_nothing_is_followed(read):
    seen = times(read(lambda t: np.full(len(t), 50.0)))
    assert seen.rows == ()


def test_the_sign_of_the_clamp_does_not_matter(read):
    there = times(read(**exact(plateau(21.0, 2.0, 5.0))))
    assert times(read(**exact(lambda t: -plateau(21.0, 2.0, 5.0)(t)))) == there


@settings(
    max_examples=60, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture]
)
@given(
    cuts=st.lists(st.integers(1, 1999), max_size=20),
    seed=st.integers(0, 50),
    interval_s=st.sampled_from([0.001, 0.003, 0.02]),
)
def test_however_the_rows_are_cut_the_times_are_the_same_to_the_last_bit(
    read, cuts, seed, interval_s
):
    rng = np.random.default_rng(seed)

    def wild(t):
        return np.repeat(rng.uniform(0.0, 70.0, len(t) // 20 + 1), 20)[: len(t)]

    one = read(
        wild,
        limits=TEN,
        end_s=2000 * interval_s,
        interval_s=interval_s,
        missing=((100 * interval_s, 140.5 * interval_s), (900 * interval_s, 903.5 * interval_s)),
    )
    assert times(one, cuts) == times(one)


def test_asking_twice_and_going_on_afterwards_changes_nothing(read):
    one = read(**exact(plateau(21.0, 2.0, 5.0), interval_s=0.1))
    follower = TimeAbove([one.instrument], one.limits)
    half, rest = read(**exact(plateau(21.0, 2.0, 5.0), interval_s=0.1)), one
    half.t_ns, half.values = half.t_ns[:35], half.values[:35]
    half.show(follower)
    first = follower.exceedances()
    assert follower.exceedances() == first
    rest.t_ns, rest.values = rest.t_ns[35:], rest.values[35:]
    rest.show(follower)
    assert follower.exceedances() == times(read(**exact(plateau(21.0, 2.0, 5.0), interval_s=0.1)))


def test_a_profile_with_an_unknown_fuse_is_refused_with_the_kinds_there_are():
    with pytest.raises(Exception, match="blade-medium, blade-miniature, blade-large") as caught:
        limits_profile("test", '[fuse]\nrating_a = 20\nkind = "glass"\n', "test.toml")
    assert "test.toml" in str(caught.value)
    with pytest.raises(Exception, match="35 to 40 A"):
        limits_profile("test", "[fuse]\nrating_a = 60\n", "test.toml")
    good = limits_profile("test", '[fuse]\nrating_a = 60\nkind = "blade-large"\n', "test.toml")
    assert good.fuse == Fuse(60.0, "blade-large")
