"""Patterns that a hasty judge would get wrong, each once found in this one."""

import numpy as np
import pytest

from meterlog.model import FindingKind, Limits, SpanKind, SpeedLimits, Verdict


def kinds(result):
    return [span.kind for span in result.spans]


def faults(result):
    return [f for f in result.findings if f.kind is not FindingKind.STEP_CURRENT]


@pytest.mark.parametrize("interval_s", [0.02, 0.1])
@pytest.mark.parametrize(("supply", "generated"), [(11.2, 9.2), (13.0, 10.6), (10.8, 9.0)])
def test_a_generating_motor_is_not_called_dead_whatever_the_supply(
    trace, interval_s, supply, generated
):
    leg = trace.Leg
    coast = [leg(8.0 + 0.1 * k, generated * 0.93**k, 0.0, 0.0) for k in range(1, 30)]
    legs = [leg(8.0, supply, 0.16, 13.6), *coast, leg(13.0, supply, 0.16, 13.6)]
    lim = trace.limits(supply_present_v=8.0)
    result = trace.review(legs, [trace.speed(0.0, 4)], interval_s, lim=lim)
    assert kinds(result) == [SpanKind.RUNNING, SpanKind.FEED_LOST, SpanKind.RUNNING]


def test_a_ground_lost_under_a_light_motor_is_not_called_dead_at_first(trace):
    leg = trace.Leg
    rise = [leg(4.0 + 0.1 * k, 12.4, 12.4 - 12.2 * 0.9**k, 0.0) for k in range(1, 30)]
    legs = [leg(4.0, 12.2, 0.05, 3.0), *rise]
    lim = trace.limits(speeds={})
    result = trace.review(legs, [trace.speed(0.0, 4)], lim=lim)
    assert kinds(result) == [SpanKind.RUNNING, SpanKind.GROUND_LOST]


def test_an_open_motor_whose_return_did_not_rise_does_not_blame_the_ground(trace):
    # A controller that holds the return where it was.
    leg = trace.Leg
    legs = [leg(4.0, 13.0, 9.0, 3.6), leg(7.0, 13.2, 9.0, 0.0)]
    result = trace.review(legs, [trace.speed(0.0, 1)])
    assert kinds(result) == [SpanKind.RUNNING, SpanKind.NO_CURRENT]


def test_a_regulated_feed_that_never_carried_the_motor_is_not_called_lost(trace):
    leg = trace.Leg
    legs = [leg(2.0, 0.0, 0.0, 0.0), leg(6.0, 5.6, 0.02, 0.0)]
    result = trace.review(legs, [trace.speed(0.0, 0), trace.speed(2.0, 1)])
    assert kinds(result) == [SpanKind.OFF, SpanKind.NO_CURRENT]


def test_return_and_current_alone_see_the_ground_go_from_the_start_of_the_rise(trace):
    leg = trace.Leg
    legs = [leg(3.0, 12.0, 0.1, 13.6), leg(3.7, 12.4, 4.0, 0.0), leg(7.0, 12.4, 12.0, 0.0)]
    result = trace.review(legs, [trace.speed(0.0, 4)], roles=("return", "current"))
    assert kinds(result) == [SpanKind.RUNNING, SpanKind.GROUND_LOST]


def test_current_that_never_came_back_is_not_said_to_have_come_back_after_a_tap(trace):
    leg = trace.Leg
    legs = [leg(8.0, *trace.NORMAL[4]), leg(10.0, *trace.DEAD), leg(12.0, *trace.NORMAL[0])]
    events = [trace.speed(0.0, 4), trace.tap(9.8), trace.speed(10.0, 0)]
    (dead,) = faults(trace.review(legs, events))
    assert "came back" not in dead.statement
    assert "without the current coming back" in dead.statement


def test_a_dead_segment_at_the_end_says_that_it_still_was_so(trace):
    leg = trace.Leg
    legs = [leg(8.0, *trace.NORMAL[4]), leg(10.0, *trace.DEAD)]
    (dead,) = faults(trace.review(legs, [trace.speed(0.0, 4), trace.tap(9.9)]))
    assert "still so at the last reading" in dead.statement
    assert "came back" not in dead.statement


def test_one_reading_above_the_limit_does_not_condemn_the_steady_rest(trace):
    leg = trace.Leg
    legs = [
        leg(5.0, 12.3, 6.7, 4.80),
        leg(5.02, 12.3, 6.7, 5.02),
        leg(20.0, 12.3, 6.7, 4.80),
    ]
    lim = trace.limits(min_dwell_s=0.0)
    result = trace.review(legs, [trace.speed(0.0, 1)], lim=lim)
    assert faults(result) == []


def test_noise_about_a_value_within_the_limit_fails_nobody(trace):
    rng = np.random.default_rng(11)
    t_ns, values = trace.sample([trace.Leg(60.0, 12.3, 6.7, 5.444)], 0.02)
    values = values.copy()
    values[:, 2] += rng.normal(0.0, 0.3, len(values))
    lim = trace.limits(speeds={1: SpeedLimits(2.0, 5.5)})
    reviewer = trace.Reviewer([trace.Instrument("meter", "t", "-", trace.channels(0.02))], lim)
    reviewer.feed(trace.speed(0.0, 1))
    reviewer.feed(trace.block_of(t_ns, values))
    result = reviewer.finish()
    assert not [f for f in faults(result) if f.verdict is Verdict.FAIL]
    (step,) = [f for f in result.findings if f.kind is FindingKind.STEP_CURRENT]
    assert step.verdict is not Verdict.FAIL


def test_short_dropouts_do_not_hide_an_over_current_and_are_told(trace):
    leg = trace.Leg
    legs, end = [leg(3.0, *trace.NORMAL[4])], 3.0
    for _ in range(10):
        legs += [leg(end + 0.998, 11.8, 0.2, 22.0), leg(end + 1.0, *trace.DEAD)]
        end += 1.0
    result = trace.review(legs, [trace.speed(0.0, 4)], 0.001)
    (over,) = [s for s in result.spans if s.kind is SpanKind.OVER]
    assert over.duration_ns / 1e9 == pytest.approx(10.0, abs=0.1)
    assert any("dropout(s) of the current shorter than" in note for note in result.notes)


def test_current_although_off_is_commanded_is_a_finding(trace):
    leg = trace.Leg
    legs = [leg(12.0, *trace.NORMAL[4])]
    result = trace.review(legs, [trace.speed(0.0, 4), trace.speed(4.0, 0)])
    (still_on,) = faults(result)
    assert (still_on.kind, still_on.verdict, still_on.speed) == (
        FindingKind.OVER,
        Verdict.FAIL,
        0,
    )
    assert "although off is commanded" in still_on.statement


def test_a_voltage_probe_that_falls_off_does_not_hide_what_the_clamp_sees(trace):
    leg = trace.Leg
    legs = [
        leg(3.0, *trace.NORMAL[4]),
        leg(5.0, 12.0, None, 13.6),
        leg(7.0, 12.4, None, 0.0),
        leg(9.0, 12.0, None, 13.6),
    ]
    result = trace.review(legs, [trace.speed(0.0, 4)])
    assert kinds(result) == [SpanKind.RUNNING, SpanKind.NO_CURRENT, SpanKind.RUNNING]


def test_one_missing_reading_does_not_split_a_dead_segment(trace):
    leg = trace.Leg
    legs = [
        leg(3.0, *trace.NORMAL[4]),
        leg(4.0, *trace.DEAD),
        leg(4.02, None, None, None),
        leg(6.0, *trace.DEAD),
        leg(8.0, *trace.NORMAL[4]),
    ]
    result = trace.review(legs, [trace.speed(0.0, 4)])
    assert kinds(result) == [SpanKind.RUNNING, SpanKind.DEAD, SpanKind.RUNNING]


@pytest.mark.parametrize("phase", np.linspace(0.0, 0.3, 7))
def test_an_averaging_meter_sees_a_held_rotor_without_an_excess_beside_it(trace, phase):
    leg = trace.Leg
    legs = [leg(5.0, *trace.NORMAL[4]), leg(9.0, 10.7, 0.6, 55.0), leg(14.0, *trace.NORMAL[4])]
    result = trace.review(legs, [trace.speed(0.0, 4)], 0.33, phase_s=phase, window_s=0.33)
    assert kinds(result) == [SpanKind.RUNNING, SpanKind.LOCKED, SpanKind.RUNNING]


def test_an_unzeroed_clamp_and_swapped_probes_are_noted(trace):
    leg = trace.Leg
    legs = [leg(3.0, 12.4, 12.4, 0.45), leg(9.0, 0.16, 12.0, 14.0)]
    result = trace.review(legs, [trace.speed(0.0, 0), trace.speed(3.0, 4)])
    assert any("zero the clamp" in note for note in result.notes)
    assert any("wrong way round" in note for note in result.notes)


def test_commands_on_another_clock_are_noted(trace):
    instrument = trace.Instrument("meter", "t", "-", trace.channels(0.1))
    t_ns, values = trace.sample([trace.Leg(20.0, *trace.NORMAL[4])], 0.1)
    reviewer = trace.Reviewer([instrument], trace.limits())
    for event in (trace.speed(0.0, 1), trace.speed(8.0, 4)):
        reviewer.feed(event)
    reviewer.feed(trace.block_of(t_ns + 1_000_000_000_000, values))
    assert any("is their zero the same" in note for note in reviewer.finish().notes)


def test_a_poor_clamp_gives_neither_verdict_nor_cause(trace):
    leg = trace.Leg
    legs = [leg(3.0, *trace.NORMAL[4]), leg(6.0, 12.4, 0.02, 0.2), leg(9.0, *trace.NORMAL[4])]
    lim = trace.limits(open_current_a=0.21)
    (dead,) = faults(trace.review(legs, [trace.speed(0.0, 4)], lim=lim))
    assert dead.verdict is Verdict.CANT_TELL
    assert "open inside" not in dead.statement


def test_limits_without_a_word_on_current_still_find_the_dead_segment(trace):
    leg = trace.Leg
    legs = [leg(3.0, *trace.NORMAL[4]), leg(5.0, *trace.DEAD), leg(7.0, *trace.NORMAL[4])]
    result = trace.review(legs, [trace.speed(0.0, 4)], lim=Limits())
    assert kinds(result) == [SpanKind.RUNNING, SpanKind.DEAD, SpanKind.RUNNING]
