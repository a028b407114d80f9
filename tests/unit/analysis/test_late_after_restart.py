"""A hand may be late after a dropout, beside missing data and with a slow meter as well."""

import numpy as np
import pytest

from meterlog.model import SpanKind, SpeedLimits


def kinds(result):
    return [span.kind for span in result.spans]


def after_dropout(trace, before, marked, low=(12.3, 6.7, 3.6)):
    """Give a run on low, dead from 3 s to 4 s, on high from ``before`` though marked ``marked``."""
    leg = trace.Leg
    legs = [
        leg(3.0, *trace.NORMAL[1]),
        leg(4.0, *trace.DEAD),
        leg(before, *low),
        leg(9.0, *trace.NORMAL[4]),
    ]
    return trace.review(legs, [trace.speed(0.0, 1), trace.speed(marked, 4)], 0.01)


def test_the_next_speed_before_a_late_mark_is_no_excess_after_a_dropout_either(trace):
    # Judging begins at 4.5 s, in the midst of the late mark's lag.
    result = after_dropout(trace, before=4.45, marked=4.65)
    assert SpanKind.OVER not in kinds(result)


def test_too_much_current_ever_since_a_dropout_is_not_a_late_hand(trace):
    result = after_dropout(trace, before=4.65, marked=4.65, low=(12.3, 4.0, 7.0))
    (over,) = [span for span in result.spans if span.kind is SpanKind.OVER]
    assert over.start_ns / 1e9 == pytest.approx(4.5, abs=0.02)


def test_the_next_speeds_current_after_coasting_is_no_lack_of_it_before_a_late_mark(trace):
    leg = trace.Leg
    legs = [
        leg(4.0, *trace.NORMAL[4]),
        leg(4.015, 12.4, 7.0, 0.0),
        leg(9.0, *trace.NORMAL[1]),
    ]
    result = trace.review(legs, [trace.speed(0.0, 4), trace.speed(4.25, 1)], 0.005)
    assert kinds(result) == [SpanKind.RUNNING]


def test_too_little_current_long_after_a_dropout_is_not_excused_by_the_next_command(trace):
    leg = trace.Leg
    legs = [
        leg(3.0, *trace.NORMAL[4]),
        leg(4.0, *trace.DEAD),
        leg(6.0, *trace.NORMAL[1]),
        leg(9.0, *trace.NORMAL[1]),
    ]
    result = trace.review(legs, [trace.speed(0.0, 4), trace.speed(6.0, 1)], 0.01)
    (under,) = [span for span in result.spans if span.kind is SpanKind.UNDER]
    assert under.duration_ns / 1e9 == pytest.approx(1.5, abs=0.05)


def start_before_gap(trace, marked, stays=False):
    """Give a start on high from 5.0 s, its readings lost from 5.12 s to 5.25 s."""
    t = np.arange(0.0, 12.0, 0.005)
    values = np.tile(trace.NORMAL[1], (len(t), 1))
    high = t >= 5.0
    values[high] = trace.NORMAL[4]
    peak = 55.0 if stays else 13.6 + 41.4 * np.exp(-(t[high] - 5.0) / 0.1)
    values[high, 2] = peak
    values[(t >= 5.12) & (t < 5.25)] = np.nan
    instrument = trace.Instrument("meter", "t", "-", trace.channels(0.005))
    reviewer = trace.Reviewer([instrument], trace.limits())
    for event in (trace.speed(0.0, 1), trace.speed(marked, 4)):
        reviewer.feed(event)
    reviewer.feed(trace.block_of(np.round(t * 1e9).astype(np.int64), values))
    return reviewer.finish()


def test_the_peak_of_a_start_before_a_mark_in_missing_data_is_no_held_rotor(trace):
    result = start_before_gap(trace, marked=5.2)
    assert set(kinds(result)) == {SpanKind.RUNNING, SpanKind.NO_DATA}


def test_the_same_peak_with_no_command_about_is_told(trace):
    assert SpanKind.LOCKED in kinds(start_before_gap(trace, marked=8.0))


def test_a_rotor_that_stays_held_is_told_whatever_the_mark(trace):
    result = start_before_gap(trace, marked=5.2, stays=True)
    assert SpanKind.LOCKED in kinds(result)


def test_a_slow_meter_makes_no_late_hand_later_than_it_is(trace):
    # Late by 0.25 s, of a lag of 0.3 s; read every 0.2 s it may seem 0.4 s.
    leg = trace.Leg
    for phase in (0.0, 0.05, 0.1, 0.15):
        at = 5.0 + phase
        legs = [leg(at, *trace.NORMAL[1]), leg(at + 0.1, 12.0, 0.2, 25.0), leg(9, *trace.NORMAL[4])]
        events = [trace.speed(0.0, 1), trace.speed(at + 0.25, 4)]
        result = trace.review(legs, events, 0.2)
        assert kinds(result) == [SpanKind.RUNNING], phase


@pytest.mark.parametrize("read_on_s", [0.0, 0.01, 0.03])
def test_a_mark_just_before_missing_data_excuses_as_well(trace, read_on_s):
    leg, gone = trace.Leg, (None, None, None)
    legs = [
        leg(5.0, *trace.NORMAL[4]),
        leg(5.2 + read_on_s, *trace.NORMAL[1]),
        leg(5.3, *gone),
        leg(9.0, *trace.NORMAL[1]),
    ]
    result = trace.review(legs, [trace.speed(0.0, 4), trace.speed(5.198, 1)], 0.005)
    assert set(kinds(result)) == {SpanKind.RUNNING, SpanKind.NO_DATA}


def test_an_undershoot_at_a_step_down_that_is_over_before_the_late_mark_is_no_fault(trace):
    leg = trace.Leg
    # From high to a middle speed whose level is within the limits of both; marked 0.25 s late.
    legs = [leg(4.0, *trace.NORMAL[4]), leg(4.1, 12.2, 3.0, 8.0), leg(8.0, 12.1, 2.9, 11.0)]
    lim = trace.limits(speeds={2: SpeedLimits(7.0, 12.0), 4: SpeedLimits(10.0, 18.0)})
    result = trace.review(legs, [trace.speed(0.0, 4), trace.speed(4.25, 2)], 0.01, lim=lim)
    assert SpanKind.UNDER not in kinds(result)
    up = trace.review(legs, [trace.speed(0.0, 4), trace.speed(5.0, 2)], 0.01, lim=lim)
    assert SpanKind.UNDER in kinds(up)  # long before the mark it is nobody's late hand


def test_too_little_since_before_judging_began_is_the_next_speeds_where_that_draws_it(trace):
    result = after_dropout(trace, before=4.45, marked=4.65, low=(12.3, 6.7, 3.6))
    assert SpanKind.UNDER not in kinds(result)
    leg = trace.Leg
    legs = [leg(3.0, *trace.NORMAL[4]), leg(4.0, *trace.DEAD), leg(9.0, 12.2, 6.7, 3.6)]
    down = trace.review(legs, [trace.speed(0.0, 4), trace.speed(4.7, 1)], 0.01)
    assert SpanKind.UNDER not in kinds(down)
    never = trace.review(legs, [trace.speed(0.0, 4), trace.speed(7.0, 1)], 0.01)
    assert SpanKind.UNDER in kinds(never)


@pytest.mark.parametrize("amps", [1.0, 1.4])
def test_a_motor_that_slows_down_draws_less_than_its_next_speed_does_before_a_late_mark(
    trace, amps
):
    # Judging begins at 4.5 s; until 4.6 s it still generates more than at the new speed, where it
    # draws 3.6 A (V = I R + Ke w, textbook).
    leg = trace.Leg
    start = [leg(3.0, *trace.NORMAL[4]), leg(4.0, *trace.DEAD), leg(4.4, *trace.NORMAL[4])]
    legs = [*start, leg(4.6, 12.3, 6.0, amps), leg(9.0, *trace.NORMAL[1])]
    down = trace.review(legs, [trace.speed(0.0, 4), trace.speed(4.62, 1)], 0.01)
    assert SpanKind.UNDER not in kinds(down)
    legs = [*start, leg(5.2, 12.3, 6.0, amps), leg(9.0, *trace.NORMAL[1])]
    later = trace.review(legs, [trace.speed(0.0, 4), trace.speed(5.2, 1)], 0.01)
    assert SpanKind.UNDER in kinds(later)  # for longer than a hand is late
    legs = [*start, leg(4.6, 12.3, 6.0, amps), leg(9.0, *trace.NORMAL[4])]
    never = trace.review(legs, [trace.speed(0.0, 4)], 0.01)
    assert SpanKind.UNDER in kinds(never)
