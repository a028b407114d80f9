"""How much later one meter's times are than another's, by steps that both show."""

import dataclasses
import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from meterlog.analysis.skew import Compared, compared, measure_skew
from meterlog.analysis.switching import Switching, switchings
from meterlog.instruments.virtual import simulate
from meterlog.instruments.virtual.scenarios import find_scenario
from meterlog.instruments.virtual.script import speed
from meterlog.model import Channel, Quantity, Role

S = 1_000_000_000
BOTH = Compared(on=True, off=True, intervals_s=(0.02, 0.2))


def steps_of(*times, first_on=True):
    return [Switching(round(t * S), (index % 2 == 0) is first_on) for index, t in enumerate(times)]


def sampled(
    interval_s, switched_s, phase_s=0.0, late_s=0.0, seconds=40.0, high=12.0, window_s=None
):
    """Sample a voltage that goes up and down at the given times, averaging ``window_s``."""
    window_s = interval_s if window_s is None else window_s
    ends = np.arange(phase_s + window_s, seconds, interval_s)
    fine = np.arange(0.0, seconds, 0.001)
    state = np.searchsorted(np.array(switched_s), fine, side="right") % 2
    sums = np.concatenate(([0.0], np.cumsum(state * high))) * 0.001
    at = np.interp(ends, np.append(fine, seconds), sums)
    before = np.interp(ends - window_s, np.append(fine, seconds), sums)
    t_ns = np.rint((ends - window_s / 2.0 + late_s) * 1e9).astype(np.int64)
    return t_ns, (at - before) / window_s


SWITCHED = [3.011, 6.347, 10.123, 13.719, 17.555, 21.209, 25.371, 29.007]


@pytest.mark.parametrize("late_s", [-0.35, 0.0, 0.123])
def test_the_skew_of_two_averaging_meters_is_found_within_its_uncertainty(late_s):
    fast = switchings(*sampled(0.02, SWITCHED), Role.MOTOR_FEED, 0.02)
    slow_trace = sampled(0.33, SWITCHED, phase_s=0.1, late_s=late_s)
    slow = switchings(*slow_trace, Role.MOTOR_FEED, 0.33)
    assert [one.on for one in fast] == [one.on for one in slow] == [True, False] * 4
    skew = measure_skew(fast, slow, Compared(True, True, (0.02, 0.33)))
    assert not skew.refused
    assert (len(skew.steps), skew.alone) == (8, 0)
    assert abs(skew.later_s - late_s) < 2.0 * skew.u_s
    assert abs(skew.later_s - late_s) < 0.02
    assert 0.02 < skew.u_s < 0.06


def test_a_return_goes_down_when_the_fan_goes_on():
    t_ns, values = sampled(0.02, SWITCHED)
    returns = switchings(t_ns, 12.4 - values, Role.MOTOR_RETURN, 0.02)
    feeds = switchings(t_ns, values, Role.MOTOR_FEED, 0.02)
    assert [(one.on, one.t_ns) for one in returns] == [(one.on, one.t_ns) for one in feeds]


def test_a_sagging_feed_and_a_small_current_show_no_switching():
    t_ns, values = sampled(0.02, SWITCHED)
    assert switchings(t_ns, 12.4 - values / 40.0, Role.MOTOR_FEED, 0.02) == []
    assert switchings(t_ns, values / 40.0, Role.MOTOR_CURRENT, 0.02) == []
    assert switchings(t_ns[:1], values[:1], Role.MOTOR_FEED, 0.02) == []


def test_beside_a_gap_no_instant_is_told():
    t_ns, values = sampled(0.02, SWITCHED)
    values[(t_ns > 6.2 * S) & (t_ns < 6.5 * S)] = np.nan
    found = [one.t_ns / S for one in switchings(t_ns, values, Role.MOTOR_FEED, 0.02)]
    assert len(found) == 7
    assert not any(6.0 < t < 7.0 for t in found)


def test_mean_and_uncertainty_are_type_a_and_sampling_together():
    """By hand: differences 90, 110, 100 ms: s = 10 ms, so u^2 = 100/3 + (20^2 + 200^2)/12/3."""
    skew = measure_skew(steps_of(1.0, 7.0, 14.0), steps_of(1.09, 7.11, 14.10), BOTH)
    assert skew.later_s == pytest.approx(0.1)
    assert skew.u_s == pytest.approx(math.sqrt(100 / 3 + (400 + 40000) / 12 / 3) / 1e3)
    alone = measure_skew(steps_of(1.0), steps_of(1.1), BOTH)
    assert alone.u_s == pytest.approx(math.sqrt((400 + 40000) / 12) / 1e3)


def test_an_inrush_widens_the_uncertainty_whatever_the_number_of_steps():
    how = dataclasses.replace(BOTH, inrush_s=0.15)
    skew = measure_skew(steps_of(1.0, 7.0, 14.0), steps_of(1.1, 7.1, 14.1), how)
    assert skew.u_s > 0.15 / math.sqrt(3.0)


def test_steps_that_only_one_shows_are_left_out_and_counted():
    skew = measure_skew(steps_of(1.0, 7.0, 14.0, 20.0), steps_of(1.1, 7.1), BOTH)
    assert (len(skew.steps), skew.alone) == (2, 2)


def test_steps_too_close_to_be_told_apart_are_left_out():
    ours = [Switching(t * S, on=True) for t in (5, 6, 20)]
    theirs = [Switching(t * S, on=True) for t in (5, 6, 20)]
    skew = measure_skew(ours, theirs, BOTH)
    assert [step.first_ns for step in skew.steps] == [20 * S]


@pytest.mark.parametrize(
    ("ours", "theirs", "words"),
    [
        ((), (), "neither meter shows"),
        ((1.0, 7.0), (), "the second meter does not show"),
        ((), (1.0,), "the first meter does not show"),
        ((1.0,), (50.0,), "single partner"),
        ((1.0, 11.0, 21.0), (1.1, 11.9, 20.5), "not the same edges"),
    ],
)
def test_what_is_no_common_step_is_refused(ours, theirs, words):
    skew = measure_skew(steps_of(*ours), steps_of(*theirs), BOTH)
    assert words in skew.refused


def channel(role, interval_s=0.4, integration_s=0.3):
    quantity = role.quantity or Quantity.VOLTAGE
    return Channel("c", quantity, role, interval_s=interval_s, integration_s=integration_s)


def test_two_currents_are_compared_where_they_stop_and_a_voltage_where_it_begins():
    amps, feed, back = (
        channel(role) for role in (Role.MOTOR_CURRENT, Role.MOTOR_FEED, Role.MOTOR_RETURN)
    )
    how = compared(amps, channel(Role.MOTOR_CURRENT, 0.02, 0.02))
    assert (how.on, how.off, how.inrush_s, how.intervals_s) == (False, True, 0.0, (0.4, 0.02))
    how = compared(amps, back)
    assert (how.on, how.off) == (True, False)
    assert how.inrush_s == pytest.approx(0.15)
    assert compared(feed, back) == Compared(on=True, off=False, intervals_s=(0.4, 0.4))
    assert compared(back, back).off


@pytest.mark.parametrize("late_s", [0.0, 0.2])
@pytest.mark.parametrize("point", ["motor-return", "motor-current"])
def test_on_the_virtual_fan_a_slow_meter_with_inrush_and_coasting_is_not_misled(late_s, point):
    """A fast clamp and a slow hand-held meter on one simulated fan, figures invented."""
    script = tuple(
        event
        for turn in range(8)
        for event in (speed(5.03 * turn + 0.0, 0), speed(5.03 * turn + 2.517, 4))
    )
    case = dataclasses.replace(find_scenario("healthy-new"), script=script, seconds=42.0)
    fast = simulate(case, 4, interval_s=0.02)
    slow = simulate(case, 4, interval_s=0.4, integration_s=0.3)
    role = Role(point)
    column = next(i for i, c in enumerate(slow.instrument.channels) if c.role is role)
    amps = next(i for i, c in enumerate(fast.instrument.channels) if c.role is Role.MOTOR_CURRENT)
    ours = switchings(fast.block.t_ns, fast.block.values[:, amps], Role.MOTOR_CURRENT, 0.02)
    late_ns = round(late_s * 1e9)
    theirs = switchings(slow.block.t_ns + late_ns, slow.block.values[:, column], role, 0.4)
    how = compared(fast.instrument.channels[amps], slow.instrument.channels[column])
    skew = measure_skew(ours, theirs, how)
    assert not skew.refused
    assert len(skew.steps) >= 7
    assert abs(skew.later_s - late_s) < 2.0 * skew.u_s
    assert abs(skew.later_s - late_s) < 0.06


@given(
    later=st.lists(st.floats(-0.1, 0.1), min_size=1, max_size=12),
    shift=st.floats(-1.5, 1.5),
)
def test_turning_the_meters_round_turns_the_sign(later, shift):
    ours = [Switching(10 * S * number, on=True) for number in range(len(later))]
    theirs = [
        Switching(10 * S * number + round((part + shift) * S), on=True)
        for number, part in enumerate(later)
    ]
    there = measure_skew(ours, theirs, BOTH)
    back = measure_skew(theirs, ours, BOTH)
    assert there.later_s == pytest.approx(-back.later_s, abs=1e-12)
    assert there.u_s == pytest.approx(back.u_s)
    assert there.later_s == pytest.approx(sum(later) / len(later) + shift, abs=1e-6)
