"""Steady figures of steps: scatter, correlation, single voltages; the same however cut."""

from itertools import pairwise

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from meterlog.analysis.comoments import Comoments
from meterlog.analysis.delayed import Delayed
from meterlog.analysis.moments import Moments
from meterlog.analysis.piece_mean import PieceMean


def supply_ripple(fan, volts_per_ampere=-0.2):
    """Let the feed sag with the current, as a supply with a resistance does."""
    amps = fan.values[:, 2]
    level = np.where(fan.t_s < 14.0, 13.6, 3.6)
    fan.values[:, 0] += np.where(fan.t_s >= 4.0, volts_per_ampere * (amps - level), 0.0)
    return fan


def steady_rows(fan, start_s, end_s):
    return (fan.t_s >= start_s) & (fan.t_s < end_s)


def test_voltages_and_their_scatter_are_those_of_the_steady_rows(trace):
    fan = trace.Fan()
    step = fan.review().steps[1]
    # From the end of the start-up (0.5 s) to the hand's delay before the next command (0.3 s).
    feed, back, amps = fan.values[steady_rows(fan, 4.5, 13.7)].T
    across = feed - back
    assert step.steady_n == step.steady_volts_n == len(amps)
    assert step.steady_mean_v == pytest.approx(across.mean(), rel=1e-12)
    assert step.steady_sd_v == pytest.approx(across.std(ddof=1), rel=1e-9)
    assert step.steady_feed_v == pytest.approx(feed.mean(), rel=1e-12)
    assert step.steady_back_v == pytest.approx(back.mean(), rel=1e-9)
    for found, values in ((step.steady_lag1_v, across), (step.steady_lag1_a, amps)):
        off = values - values.mean()
        assert found == pytest.approx((off[1:] @ off[:-1]) / (off @ off), rel=1e-9)


def test_a_feed_that_sags_with_the_current_is_seen_to_hang_together(trace):
    fan = supply_ripple(trace.Fan())
    step = fan.review().steps[1]
    feed, back, amps = fan.values[steady_rows(fan, 4.5, 13.7)].T
    assert step.steady_correlation == pytest.approx(np.corrcoef(feed - back, amps)[0, 1], rel=1e-9)
    assert step.steady_correlation < -0.5
    # and the ratio of volts to amperes is surer than if they did not
    assert trace.Fan().review().steps[1].steady_correlation > -0.4


def test_a_feed_alone_is_the_motor_voltage_and_there_is_no_return(trace):
    result = trace.review(
        [trace.Leg(6.0, *trace.NORMAL[4])], [trace.speed(0.0, 4)], roles=("feed", "current")
    )
    (step,) = result.steps
    assert step.steady_feed_v == step.steady_mean_v == pytest.approx(12.0)
    assert step.steady_back_v is None


def test_the_last_reading_before_a_dropout_is_in_neither_current_nor_voltage_nor_both(trace):
    leg = trace.Leg
    legs = [leg(6.0, *trace.NORMAL[4]), leg(7.0, *trace.DEAD), leg(12.0, *trace.NORMAL[4])]
    result = trace.review(legs, [trace.speed(0.0, 4)], 0.1, phase_s=0.03, window_s=0.1)
    (step,) = result.steps
    assert step.steady_sd_a == pytest.approx(0.0, abs=1e-9)
    assert step.steady_sd_v == pytest.approx(0.0, abs=1e-9)
    assert step.steady_volts_n == step.steady_n


def test_a_channel_without_value_leaves_its_own_figures_and_the_pairs_only(trace):
    fan = supply_ripple(trace.Fan())
    fan.values[60:70, 0] = np.nan
    step = fan.review().steps[1]
    kept = steady_rows(fan, 4.5, 13.7)
    assert step.steady_n == kept.sum()
    assert step.steady_volts_n == kept.sum() - 10
    feed, back, amps = fan.values[kept & np.isfinite(fan.values[:, 0])].T
    assert step.steady_correlation == pytest.approx(np.corrcoef(feed - back, amps)[0, 1], rel=1e-9)


def test_two_meters_have_pairs_only_where_both_were_read_at_one_instant(trace):
    fan = trace.Fan()
    volts = trace.Instrument("volts", "test", "-", fan.channels[:2], time_u_s=0.01)
    amps = trace.Instrument("amps", "test", "-", fan.channels[2:], time_u_s=0.01)

    def review(shift_ns):
        reviewer = trace.Reviewer([volts, amps], fan.limits)
        for event in fan.events:
            reviewer.feed(event)
        reviewer.feed(trace.block_of(fan.t_ns, fan.values, "volts", (0, 1)))
        reviewer.feed(trace.block_of(fan.t_ns + shift_ns, fan.values, "amps", (2,)))
        return reviewer.finish().steps[1]

    assert review(0).steady_correlation is not None
    assert review(40_000_000).steady_correlation is None
    assert any("times of amps and volts" in s.name for s in review(40_000_000).power.sources)


places = st.lists(st.integers(0, 239), max_size=20)


@settings(max_examples=25, deadline=None)
@given(places=places)
def test_however_the_readings_are_cut_the_steps_and_their_budgets_are_the_same(trace, places):
    fan = supply_ripple(trace.Fan())
    whole = trace.block_of(fan.t_ns, fan.values)
    parts = [whole.rows(a, b) for a, b in pairwise(sorted({0, *places, len(whole)}))]
    assert fan.review([*fan.events, *parts]).steps == fan.review().steps


@settings(max_examples=30, deadline=None)
@given(
    n=st.integers(1, 9000), seed=st.integers(0, 99), cuts=st.lists(st.integers(0, 9000), max_size=8)
)
def test_sums_of_pairs_are_the_same_to_the_last_bit_however_cut_and_agree_with_numpy(n, seed, cuts):
    rng = np.random.default_rng(seed)
    first = rng.normal(12.0, 0.1, n)
    second = 5.0 - first + rng.normal(0.0, 0.05, n)
    once, often, mean = Comoments(), Comoments(), PieceMean()
    once.add(first, second)
    for a, b in pairwise(sorted({0, *(min(c, n) for c in cuts), n})):
        often.add(first[a:b], second[a:b])
        mean.add(first[a:b])
    assert (often.n, often.first_mean, often.second_mean) == (
        once.n,
        once.first_mean,
        once.second_mean,
    )
    assert often.correlation == once.correlation
    assert mean.mean == pytest.approx(first.mean(), rel=1e-12)
    if n > 2:
        assert once.correlation == pytest.approx(np.corrcoef(first, second)[0, 1], abs=1e-9)


def test_sums_of_nothing_and_of_what_does_not_move_know_no_correlation():
    still = Comoments()
    assert (still.n, still.first_mean, still.correlation) == (0, None, None)
    still.add(np.ones(9), np.arange(9.0))
    assert still.correlation is None
    assert PieceMean().mean is None


@settings(max_examples=50, deadline=None)
@given(cuts=st.lists(st.integers(0, 50), max_size=10), end=st.integers(0, 60))
def test_what_is_younger_than_the_delay_at_the_next_command_never_counts(cuts, end):
    t, values = np.arange(50, dtype=np.int64), np.arange(50.0)
    held = Delayed(7, Moments())
    for a, b in pairwise(sorted({0, *cuts, 50})):
        if b <= max(end, 1):
            held.add(t[a:b], int(t[b - 1]), values[a:b])
    given_until = max(
        (b for _, b in pairwise(sorted({0, *cuts, 50})) if b <= max(end, 1)), default=0
    )
    assert held.counted().n == given_until
    held.end(end)
    assert held.counted().n == min(given_until, max(end - 7, 0))


def test_the_start_up_of_the_next_speed_is_no_maximum_of_this_one(trace):
    """The knob turns 0.1 s before the key is pressed: the peak of speed 4 is in no other's row."""
    legs = [
        trace.Leg(2.0, *trace.NORMAL[0]),
        trace.Leg(8.0, *trace.NORMAL[1]),
        trace.Leg(8.15, 12.0, 0.16, 25.0),
        trace.Leg(14.0, *trace.NORMAL[4]),
    ]
    events = [trace.speed(0.0, 0), trace.speed(2.0, 1), trace.speed(8.1, 4)]
    steps = {one.speed: one for one in trace.review(legs, events).steps}
    assert steps[1].max_a == 25.0
    assert steps[1].steady_max_a == pytest.approx(3.6)
    assert steps[4].steady_max_a == pytest.approx(13.6)
