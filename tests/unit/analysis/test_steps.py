"""Figures per commanded speed."""

import numpy as np
import pytest

from meterlog.analysis import Reviewer
from meterlog.model import FindingKind, Instrument, SpeedLimits, Verdict


def walk(trace):
    leg = trace.Leg
    return [
        leg(1.0, *trace.NORMAL[0]),
        leg(1.3, 11.5, 6.0, 9.0),
        leg(4.0, *trace.NORMAL[1]),
        leg(6.0, *trace.NORMAL[4]),
        leg(7.0, *trace.DEAD),
        leg(9.0, *trace.NORMAL[4]),
    ]


EVENTS = ((0.0, 0), (1.0, 1), (4.0, 4))


def test_each_commanded_speed_is_a_step_from_its_command_to_the_next(trace):
    result = trace.review(walk(trace), [trace.speed(*e) for e in EVENTS])
    assert [(s.speed, s.start_ns / 1e9) for s in result.steps] == [(0, 0.0), (1, 1.0), (4, 4.0)]
    assert result.steps[1].end_ns == result.steps[2].start_ns
    assert result.steps[2].end_ns / 1e9 == pytest.approx(8.98)


def test_the_mean_holds_all_readings_and_the_steady_mean_only_those_of_the_running_motor(trace):
    result = trace.review(walk(trace), [trace.speed(*e) for e in EVENTS])
    one, four = result.steps[1], result.steps[2]
    assert one.max_a == 9.0
    assert one.mean_a == pytest.approx((15 * 9.0 + 135 * 3.6) / 150)
    assert one.steady_mean_a == pytest.approx(3.6)
    assert four.min_a == 0.0
    assert four.steady_mean_a == pytest.approx(13.6)
    assert four.steady_mean_v == pytest.approx(12.0 - 0.16)


def test_each_judged_speed_gets_a_verdict(trace):
    result = trace.review(walk(trace), [trace.speed(*e) for e in EVENTS])
    verdicts = [(f.speed, f.verdict) for f in result.findings if f.kind is FindingKind.STEP_CURRENT]
    assert verdicts == [(1, Verdict.PASS), (4, Verdict.PASS)]


def test_pressing_the_same_speed_again_is_no_new_step(trace):
    events = [trace.speed(0.0, 4), trace.speed(2.0, 4)]
    result = trace.review([trace.Leg(5.0, *trace.NORMAL[4])], events)
    assert len(result.steps) == 1


def test_without_commands_there_is_one_step_without_a_speed(trace):
    (step,) = trace.review([trace.Leg(5.0, *trace.NORMAL[4])]).steps
    assert step.speed is None
    assert step.n == 250


def test_without_a_current_channel_there_are_steps_but_no_spans_and_a_note(trace):
    result = trace.review(walk(trace), [trace.speed(*e) for e in EVENTS], roles=("feed", "return"))
    assert result.spans == ()
    assert [s.speed for s in result.steps] == [0, 1, 4]
    assert result.steps[2].mean_v == pytest.approx((200 * 11.84 + 50 * 12.38) / 250)
    assert any("No motor-current channel" in note for note in result.notes)


def test_a_step_that_left_its_limits_for_a_while_fails_although_its_mean_is_within(trace):
    leg = trace.Leg
    legs = [leg(4.0, *trace.NORMAL[4]), leg(5.0, 11.8, 0.2, 21.0), leg(12.0, *trace.NORMAL[4])]
    result = trace.review(legs, [trace.speed(0.0, 4)])
    (verdict,) = [f for f in result.findings if f.kind is FindingKind.STEP_CURRENT]
    assert verdict.value == pytest.approx(21.0)
    assert verdict.limit == 18.0
    assert verdict.verdict is Verdict.FAIL
    assert "outside for 0.99" in verdict.statement


def test_a_hand_late_on_the_key_does_not_spoil_the_steady_figures(trace):
    leg = trace.Leg
    legs = [leg(6.0, *trace.NORMAL[1]), leg(12.0, *trace.NORMAL[4])]
    result = trace.review(legs, [trace.speed(0.0, 1), trace.speed(6.25, 4)])
    assert result.steps[0].steady_mean_a == pytest.approx(3.6)
    assert result.steps[0].max_a == 13.6


def test_a_step_without_steady_running_says_that_there_is_nothing_to_judge(trace):
    leg = trace.Leg
    legs = [leg(4.0, *trace.DEAD), leg(8.0, *trace.NORMAL[4])]
    result = trace.review(legs, [trace.speed(0.0, 1), trace.speed(4.0, 4)])
    first = next(f for f in result.findings if f.kind is FindingKind.STEP_CURRENT)
    assert (first.speed, first.verdict, first.value) == (1, Verdict.CANT_TELL, None)
    assert "nothing to judge" in first.statement


@pytest.mark.parametrize("phase", [0.0, 0.03, 0.06, 0.09])
def test_the_reading_half_way_into_a_dropout_is_not_among_the_steady_ones(trace, phase):
    leg = trace.Leg
    legs = [leg(6.0, *trace.NORMAL[4]), leg(7.0, *trace.DEAD), leg(12.0, *trace.NORMAL[4])]
    result = trace.review(legs, [trace.speed(0.0, 4)], 0.1, phase_s=phase, window_s=0.1)
    (step,) = result.steps
    assert step.steady_mean_a == pytest.approx(13.6)
    assert step.steady_sd_a == pytest.approx(0.0, abs=1e-9)


def test_a_step_that_fails_for_a_held_rotor_has_the_limit_of_its_speed(trace):
    """The current from which a rotor is held is not what the speed is allowed."""
    leg = trace.Leg
    legs = [leg(2.0, *trace.NORMAL[0]), leg(9.0, 11.0, 0.6, 53.0)]
    result = trace.review(legs, [trace.speed(0.0, 0), trace.speed(2.0, 4)])
    assert any(f.kind is FindingKind.LOCKED for f in result.findings)
    step = next(f for f in result.findings if f.kind is FindingKind.STEP_CURRENT)
    allowed = trace.limits().at(4).max_a
    assert step.verdict is Verdict.FAIL
    assert step.limit == allowed
    assert f"to {allowed:g} A" in step.statement


@pytest.mark.parametrize(
    ("allowed", "words", "verdict"),
    [
        (SpeedLimits(None, 18.0), "allowed up to 18 A: pass", Verdict.PASS),
        (SpeedLimits(10.0, None), "allowed 10 A or more: pass", Verdict.PASS),
        (SpeedLimits(10.0, 18.0), "allowed 10 to 18 A: pass", Verdict.PASS),
        (SpeedLimits(None, 12.0), "allowed up to 12 A: fail", Verdict.FAIL),
    ],
)
def test_a_limit_on_one_side_alone_is_told_as_such(trace, allowed, words, verdict):
    fan = trace.Fan()
    fan.limits = trace.limits(speeds={4: allowed})
    (step,) = (f for f in fan.review().findings if f.kind is FindingKind.STEP_CURRENT)
    assert step.verdict is verdict
    assert words in step.statement


def test_the_value_of_a_failed_step_is_the_one_its_sentence_gives(trace):
    """A reviewer who finds 5.999 A in the table and 6.001 A in the sentence believes neither."""
    leg = trace.Leg
    always = [leg(2.0, *trace.NORMAL[0]), leg(12.0, 12.0, 0.16, 21.0)]
    events = [trace.speed(0.0, 0), trace.speed(2.0, 4)]
    (whole,) = [
        f for f in trace.review(always, events).findings if f.kind is FindingKind.STEP_CURRENT
    ]
    assert whole.value == pytest.approx(21.0)
    assert "draws 21.0" in whole.statement
    assert "with" not in whole.statement
    a_while = [
        leg(2.0, *trace.NORMAL[0]),
        leg(8.0, *trace.NORMAL[4]),
        leg(9.5, 12.0, 0.16, 21.0),
        leg(22.0, *trace.NORMAL[4]),
    ]
    (part,) = [
        f for f in trace.review(a_while, events).findings if f.kind is FindingKind.STEP_CURRENT
    ]
    assert part.verdict is Verdict.FAIL
    assert part.value == pytest.approx(21.0)
    assert "with 21.0" in part.statement


def with_a_gap(trace, events, gap=(5.9, 9.1), whole=False):
    """Give the review of a motor at speed 1, and at 4 from 9 s on, of which a gap is not read.

    ``whole``: the rows are there, and their cells empty.
    """
    legs = [trace.Leg(9.0, *trace.NORMAL[1]), trace.Leg(14.0, *trace.NORMAL[4])]
    t_ns, values = trace.sample(legs, 0.02)
    read = (t_ns < gap[0] * 1e9) | (t_ns > gap[1] * 1e9)
    if whole:
        values = np.where(read[:, None], values, np.nan)
    else:
        t_ns, values = t_ns[read], values[read]
    reviewer = Reviewer([Instrument("meter", "test", "-", trace.channels(0.02))], trace.limits())
    for at_s, one in events:
        reviewer.feed(trace.speed(at_s, one))
    reviewer.feed(trace.block_of(t_ns, values))
    return reviewer.finish()


@pytest.mark.parametrize("whole", [False, True])
def test_a_speed_commanded_in_a_gap_is_no_part_of_the_one_before(trace, whole):
    result = with_a_gap(trace, [(0.0, 1), (6.0, 2), (9.0, 4)], whole=whole)
    steps = [(s.speed, s.start_ns / 1e9, s.end_ns / 1e9) for s in result.steps if s.n]
    assert steps[0] == (1, 0.0, 6.0)
    assert steps[1][:2] == (4, 9.0)
    assert "Commanded and not read: speed 2." in result.verdict.unseen
    assert "Commanded and not read: speed 2." in result.verdict.paragraph
    assert not any(one.startswith("Not tried") for one in result.verdict.unseen)
    (silent,) = [f for f in result.findings if f.kind is FindingKind.NO_DATA]
    assert "at speeds 1/2/4 from" in silent.statement


def test_the_same_speed_before_and_after_another_in_a_gap_is_two_steps(trace):
    result = with_a_gap(trace, [(0.0, 1), (6.0, 2), (8.0, 1)], gap=(5.9, 8.5))
    assert [(s.speed, s.start_ns / 1e9) for s in result.steps] == [(1, 0.0), (1, 8.0)]
    assert result.steps[0].end_ns == 6_000_000_000
    assert "Commanded and not read: speed 2." in result.verdict.unseen


def test_a_gap_within_a_speed_is_within_its_step(trace):
    result = with_a_gap(trace, [(0.0, 1), (9.0, 4)], gap=(4.0, 8.0))
    assert [(s.speed, s.start_ns / 1e9) for s in result.steps] == [(1, 0.0), (4, 9.0)]
    assert "Not tried: speed 2." in result.verdict.unseen
