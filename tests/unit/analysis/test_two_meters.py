"""Voltages and current on different meters: nothing is blamed on a stale reading."""

import pytest

from meterlog.model import FindingKind, SpanKind


def review_two(trace, legs, events, slow_s, fast_s=0.02, volts_phase=0.013, ended=None):
    amps = trace.Instrument("clamp", "test", "-", trace.channels(fast_s, ("current",)))
    volts = trace.Instrument("volts", "test", "-", trace.channels(slow_s, ("feed", "return")))
    reviewer = trace.Reviewer([amps, volts], trace.limits())
    for event in events:
        reviewer.feed(event)
    fast_t, fast_values = trace.sample(legs, fast_s)
    slow_t, slow_values = trace.sample(legs, slow_s, phase_s=volts_phase)
    if ended is not None:
        keep = slow_t < ended * 1e9
        slow_t, slow_values = slow_t[keep], slow_values[keep]
    reviewer.feed(trace.block_of(fast_t, fast_values, "clamp", (2,)))
    reviewer.feed(trace.block_of(slow_t, slow_values, "volts", (0, 1)))
    return reviewer.finish()


@pytest.mark.parametrize("slow_s", [0.1, 0.33, 0.5])
def test_a_lost_feed_is_not_called_dead_while_the_voltmeter_still_shows_the_old_reading(
    trace, slow_s
):
    leg = trace.Leg
    legs = [leg(3.0, *trace.NORMAL[4]), leg(3.8, 6.0, 0.0, 0.0), leg(7.0, 0.0, 0.0, 0.0)]
    result = review_two(trace, legs, [trace.speed(0.0, 4)], slow_s)
    assert [s.kind for s in result.spans] == [SpanKind.RUNNING, SpanKind.FEED_LOST]
    assert result.spans[1].start_ns / 1e9 == pytest.approx(3.0, abs=0.02)


def test_a_dead_segment_keeps_the_fast_meters_edges(trace):
    leg = trace.Leg
    legs = [leg(3.0, *trace.NORMAL[4]), leg(5.0, *trace.DEAD), leg(7.0, *trace.NORMAL[4])]
    result = review_two(trace, legs, [trace.speed(0.0, 4)], 0.33)
    assert [s.kind for s in result.spans] == [SpanKind.RUNNING, SpanKind.DEAD, SpanKind.RUNNING]
    assert result.spans[1].start_ns / 1e9 == pytest.approx(3.0, abs=0.02)
    assert result.spans[1].end_ns / 1e9 == pytest.approx(5.0, abs=0.02)


def test_a_dropout_too_short_for_the_voltmeter_says_so(trace):
    leg = trace.Leg
    legs = [leg(3.05, *trace.NORMAL[4]), leg(3.25, *trace.DEAD), leg(7.0, *trace.NORMAL[4])]
    result = review_two(trace, legs, [trace.speed(0.0, 4)], 0.5, volts_phase=0.0)
    assert [s.kind for s in result.spans][1] is SpanKind.NO_CURRENT


def test_a_reading_held_over_is_counted_once(trace):
    legs = [trace.Leg(6.0, *trace.NORMAL[4])]
    result = review_two(trace, legs, [trace.speed(0.0, 4)], 0.5)
    (step,) = result.steps
    assert step.n == 300
    assert step.mean_v == pytest.approx(12.0 - 0.16)


def test_a_voltmeter_that_falls_silent_leaves_the_side_open_and_its_last_reading_unbelieved(trace):
    leg = trace.Leg
    legs = [leg(6.0, *trace.NORMAL[4]), leg(9.0, *trace.DEAD)]
    result = review_two(trace, legs, [trace.speed(0.0, 4)], 0.1, ended=4.0)
    assert [s.kind for s in result.spans] == [SpanKind.RUNNING, SpanKind.NO_CURRENT]
    assert result.spans[1].start_ns / 1e9 == pytest.approx(6.0, abs=0.02)
    assert "motor feed voltage" in result.findings[0].statement


def test_healthy_meters_of_different_rates_give_no_finding_but_the_verdicts(trace):
    leg = trace.Leg
    legs = [leg(2.0, *trace.NORMAL[1]), leg(6.0, *trace.NORMAL[4])]
    events = [trace.speed(0.0, 1), trace.speed(2.0, 4)]
    result = review_two(trace, legs, events, 0.33)
    assert {f.kind for f in result.findings} == {FindingKind.STEP_CURRENT}
