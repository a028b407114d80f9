"""What a command or a coasting motor explains is not blamed, and what they can't explain is."""

from dataclasses import replace

import numpy as np
import pytest

from meterlog.model import SpanKind, Verdict

LOW = (5.6, 0.05, 3.6)
"""Speed 1 with the controller on the feed side: it gives the motor 5.6 V."""


def kinds(result):
    return [span.kind for span in result.spans]


def test_a_motor_that_generates_what_it_was_given_is_not_dead_before_a_late_off(trace):
    leg = trace.Leg
    legs = [leg(4.0, *LOW), leg(4.2, 5.4, 0.0, 0.0), leg(8.0, 0.1, 0.0, 0.0)]
    result = trace.review(legs, [trace.speed(0.0, 1), trace.speed(4.2, 0)])
    assert kinds(result) == [SpanKind.RUNNING, SpanKind.OFF]
    assert not [f for f in result.findings if f.verdict is Verdict.FAIL]


def test_battery_voltage_across_a_motor_without_current_is_dead_also_right_before_off(trace):
    leg = trace.Leg
    legs = [leg(4.0, *trace.NORMAL[4]), leg(4.2, *trace.DEAD), leg(8.0, *trace.NORMAL[0])]
    result = trace.review(legs, [trace.speed(0.0, 4), trace.speed(4.2, 0)])
    assert kinds(result) == [SpanKind.RUNNING, SpanKind.DEAD, SpanKind.OFF]


def test_all_that_is_lost_between_a_late_hand_and_its_mark_is_the_command(trace):
    # First it looks dead, then lost: both lie within the lag.
    leg = trace.Leg
    legs = [
        leg(4.0, *LOW),
        leg(4.1, 5.4, 0.0, 0.0),
        leg(4.25, 3.0, 0.0, 0.0),
        leg(8.0, 0.1, 0.0, 0.0),
    ]
    result = trace.review(legs, [trace.speed(0.0, 1), trace.speed(4.25, 0)])
    assert kinds(result) == [SpanKind.RUNNING, SpanKind.OFF]


def test_a_motor_that_coasts_down_on_a_regulated_feed_is_not_dead(trace):
    leg = trace.Leg
    legs = [leg(4.0, 8.0, 0.05, 6.0), leg(4.25, 7.5, 0.0, 0.0), leg(9.0, 7.0, 0.05, 3.6)]
    result = trace.review(legs, [trace.speed(0.0, 2), trace.speed(4.1, 1)])
    assert kinds(result) == [SpanKind.RUNNING]


def test_a_dead_motor_on_full_battery_is_told_right_after_a_step_down_too(trace):
    leg = trace.Leg
    legs = [leg(4.0, *trace.NORMAL[4]), leg(4.5, *trace.DEAD), leg(9.0, *trace.NORMAL[1])]
    result = trace.review(legs, [trace.speed(0.0, 4), trace.speed(4.0, 1)])
    assert kinds(result) == [SpanKind.RUNNING, SpanKind.DEAD, SpanKind.RUNNING]


@pytest.mark.parametrize("feed", [0.0, 1.75])
def test_a_probe_that_slips_while_the_motor_coasts_down_loses_no_feed(trace, feed):
    leg = trace.Leg
    legs = [
        leg(4.0, *trace.NORMAL[4]),
        leg(4.2, 12.4, 4.0, 0.0),
        leg(4.6, feed, 5.0, 0.0),
        leg(7.0, feed, 6.7, 3.6),
        leg(12.0, *trace.NORMAL[1]),
    ]
    result = trace.review(legs, [trace.speed(0.0, 4), trace.speed(4.0, 1)], 0.1)
    assert kinds(result) == [SpanKind.RUNNING]


def test_a_feed_that_was_lost_during_a_step_down_and_came_back_is_told(trace):
    leg = trace.Leg
    fall = [leg(4.0 + 0.1 * k, 9.0 * 0.8**k, 0.0, 0.0) for k in range(1, 14)]
    legs = [leg(4.0, *trace.NORMAL[4]), *fall, leg(9.0, 12.3, 6.7, 3.6)]
    result = trace.review(legs, [trace.speed(0.0, 4), trace.speed(4.0, 1)])
    assert kinds(result) == [SpanKind.RUNNING, SpanKind.FEED_LOST, SpanKind.RUNNING]


def held_over(trace, gap):
    """Give a start whose current, read every half second, is not read before the range changes."""
    amps = trace.Instrument("clamp", "t", "-", trace.channels(0.5, ("current",)))
    volts = trace.Instrument("volts", "t", "-", trace.channels(0.1, ("feed", "return")))
    amps, volts = (replace(one, time_u_s=0.002) for one in (amps, volts))
    reviewer = trace.Reviewer([amps, volts], trace.limits())
    slow = np.arange(0.0, 12.0, 0.5)
    current = np.where(slow < 4.2, 0.0, 13.6)
    current[(slow > 4.2) & (slow < 4.2 + gap)] = np.nan
    fast = np.arange(0.03, 12.0, 0.1)
    on = fast >= 4.2
    table = np.column_stack((np.where(on, 12.0, 12.4), np.where(on, 0.02, 12.4), fast))
    reviewer.feed(
        trace.block_of(
            np.round(slow * 1e9).astype(np.int64),
            np.column_stack((current, current, current)),
            "clamp",
            (2,),
        )
    )
    reviewer.feed(trace.block_of(np.round(fast * 1e9).astype(np.int64), table, "volts", (0, 1)))
    return reviewer.finish()


@pytest.mark.parametrize("gap", [0.0, 1.6])
def test_voltages_of_a_start_beside_a_held_over_current_make_no_dead_motor(trace, gap):
    # Nobody recorded the speed; the voltages show the start before the next reading of the current.
    result = held_over(trace, gap)
    assert SpanKind.DEAD not in kinds(result)
    assert not [f for f in result.findings if f.verdict is Verdict.FAIL]
