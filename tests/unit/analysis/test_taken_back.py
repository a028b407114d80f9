"""No verdict stands on what is doubted: nothing is blamed, and nothing is passed."""

from dataclasses import replace

import numpy as np
import pytest

from meterlog.model import DoubtKind, Event, EventKind, FindingKind, SpanKind, Verdict


@pytest.fixture
def fan(trace):
    return trace.Fan()


def verdicts(review):
    return {(f.kind, f.verdict) for f in review.findings}


def steps(review):
    return {f.speed: f for f in review.findings if f.kind is FindingKind.STEP_CURRENT}


def test_a_clamp_set_to_a_tenth_fails_nobody_and_says_why(fan):
    fan.values[:, 2] /= 10.0
    review = fan.review()
    assert [d.kind for d in review.doubts] == [DoubtKind.DECADE]
    assert Verdict.FAIL not in {f.verdict for f in review.findings}
    under = [f for f in review.findings if f.kind is FindingKind.UNDER]
    assert under
    assert all("off by a factor of ten" in f.statement for f in under)
    assert all("off by a factor of ten" in f.statement for f in steps(review).values())
    assert all(
        "off by a factor of ten" in s.detail for s in review.spans if s.kind is SpanKind.UNDER
    )


def test_a_clamp_set_to_ten_times_fails_nobody_either(fan):
    fan.values[:, 2] *= 10.0
    review = fan.review()
    assert Verdict.FAIL not in {f.verdict for f in review.findings}


def test_one_step_that_fits_keeps_the_others_failure(fan):
    # Too little at one speed only is no clamp's switch.
    low = fan.t_s < 14.0
    fan.values[low, 2] /= 10.0
    review = fan.review()
    assert not review.doubts
    assert (FindingKind.UNDER, Verdict.FAIL) in verdicts(review)


def test_what_reads_nothing_through_a_clamp_set_to_a_tenth_may_be_amperes(fan):
    fan.values[:, 2] /= 10.0
    gone = (fan.t_s >= 8.0) & (fan.t_s < 10.0)
    fan.values[gone] = (12.4, 0.02, 0.05)
    review = fan.review()
    dead = next(f for f in review.findings if f.kind is FindingKind.DEAD)
    assert dead.verdict is Verdict.CANT_TELL
    assert "the motor is open" not in dead.statement


def test_what_reads_nothing_through_a_clamp_set_to_ten_times_is_nothing(fan):
    fan.values[:, 2] *= 10.0
    gone = (fan.t_s >= 8.0) & (fan.t_s < 10.0)
    fan.values[gone] = (12.4, 0.02, 0.0)
    assert (FindingKind.DEAD, Verdict.FAIL) in verdicts(fan.review())


def test_a_current_on_hold_passes_nothing_and_fails_nothing(fan):
    fan.hold(2, 12.0, 20.0)
    review = fan.review()
    assert [d.kind for d in review.doubts] == [DoubtKind.STUCK]
    # 13.6 A held on into speed 1, which may draw 5 A: that is the meter's, as is the pass before.
    assert {f.verdict for f in review.findings} == {Verdict.CANT_TELL}
    assert "repeated one reading" in steps(review)[4].statement


def test_a_voltage_on_hold_while_the_feed_goes_does_not_make_the_motor_dead(fan):
    # On hold at the off level: full voltage across, whatever happens.
    gone = (fan.t_s >= 8.0) & (fan.t_s < 10.0)
    fan.values[fan.t_s >= 6.0, 0] = 12.4
    fan.values[fan.t_s >= 6.0, 1] = 0.02
    fan.values[gone, 2] = 0.0
    review = fan.review()
    assert DoubtKind.STUCK in {d.kind for d in review.doubts}
    blamed = [f for f in review.findings if f.kind is not FindingKind.STEP_CURRENT]
    assert blamed
    assert {f.verdict for f in blamed} == {Verdict.CANT_TELL}


def battery(at_s):
    words = "low battery: its readings can't be trusted much longer"
    return Event(round(at_s * 1e9), EventKind.DEVICE, words, "meter")


def test_levels_read_on_a_low_battery_are_not_judged_but_those_before_are(fan):
    review = fan.review([battery(15.0), *fan.items()])
    assert steps(review)[4].verdict is Verdict.PASS
    assert steps(review)[1].verdict is Verdict.CANT_TELL
    assert "battery" in steps(review)[1].statement


def test_a_low_battery_excuses_no_dead_segment(fan):
    gone = (fan.t_s >= 8.0) & (fan.t_s < 10.0)
    fan.values[gone] = (12.4, 0.02, 0.0)
    review = fan.review([battery(5.0), *fan.items()])
    assert (FindingKind.DEAD, Verdict.FAIL) in verdicts(review)


def test_a_doubt_that_comes_later_reaches_what_was_told_live(fan, trace):
    fan.hold(2, 12.0, 20.0)
    expected = fan.review()
    instrument = trace.Instrument("meter", "test", "-", fan.channels)
    reviewer = trace.Reviewer([instrument], fan.limits)
    *events, block = fan.items()
    for event in events:
        reviewer.feed(event)
    for first in range(0, len(block), 7):
        reviewer.feed(block.rows(first, min(first + 7, len(block))))
        reviewer.live()
    found = reviewer.finish()
    assert (found.spans, found.doubts, found.notes) == (
        expected.spans,
        expected.doubts,
        expected.notes,
    )
    assert [f.statement for f in found.findings] == [f.statement for f in expected.findings]


def test_a_step_with_nothing_steady_has_no_value_to_quote(trace):
    # One steady reading: a table must not show what the sentence beside it refuses to judge.
    legs = [trace.Leg(1.15, *trace.NORMAL[4]), trace.Leg(3.0, *trace.DEAD)]
    lim = replace(trace.limits(), inrush_window_s=1.0)
    review = trace.review(legs, [trace.speed(0.0, 4)], 0.1, lim=lim)
    (step,) = steps(review).values()
    assert "nothing to judge" in step.statement
    assert (step.value, step.expanded_uncertainty) == (None, None)


def test_a_current_that_was_never_read_is_not_called_a_start_up(trace):
    legs = [trace.Leg(4.0, 12.0, 0.16, None)]
    review = trace.review(legs, [trace.speed(0.0, 4)])
    (step,) = steps(review).values()
    assert "the current was not read" in step.statement
    assert np.isnan([np.nan if step.value is None else step.value]).all()
