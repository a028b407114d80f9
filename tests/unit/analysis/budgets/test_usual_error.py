"""Verdicts that rest on an uncertainty which lacks the clamp's own error or its zero."""

from dataclasses import replace

import pytest

from meterlog.analysis.budgets import budget
from meterlog.analysis.budgets.usual_error import cautious, usual_half_width, usual_words
from meterlog.analysis.stated_channel import StatedChannel
from meterlog.model import (
    DecisionRule,
    FindingKind,
    Instrument,
    Limits,
    Sensor,
    SensorKind,
    Source,
    Verdict,
    Zero,
)

LIMITS = Limits()
UNSAID = Sensor(SensorKind.CLAMP, 100.0, words="10 mV/A")


def home(bench, **changes):
    amps = bench.channels(**bench.behind_clamp(**changes))[2]
    return StatedChannel(Instrument("meter", "test", "-", (amps,)), 0)


def value(at):
    return budget("motor current", at, "A", [Source("scatter", 0.05, "A")])


def test_a_clamp_of_which_all_is_stated_adds_nothing(bench):
    assert usual_half_width(home(bench), 16.0, at_rest=False) == 0.0


def test_an_unstated_clamp_may_be_off_by_2_percent_and_0_3_amperes(bench):
    assert usual_half_width(home(bench, own=False), 16.0, at_rest=False) == pytest.approx(0.62)
    # At no current the zero that was taken has measured the fixed part.
    assert usual_half_width(home(bench, own=False), 0.02, at_rest=True) == pytest.approx(0.0004)
    unzeroed = home(bench, own=False, zero=False)
    assert usual_half_width(unzeroed, 0.02, at_rest=True) == pytest.approx(0.3004)
    assert usual_half_width(home(bench, zero=False), 16.0, at_rest=False) == pytest.approx(0.3)


def test_several_turns_share_the_fixed_part_and_a_shunt_has_none(bench):
    three = home(bench, sensor=replace(UNSAID, turns=3))
    assert usual_half_width(three, 16.0, at_rest=False) == pytest.approx(0.32 + 0.1)
    shunt = home(bench, sensor=Sensor(SensorKind.SHUNT, 1000.0, words="100 A/100 mV"))
    assert usual_half_width(shunt, 16.0, at_rest=False) == pytest.approx(0.16)


@pytest.mark.parametrize(("at", "verdict"), [(18.5, Verdict.FAIL), (17.5, Verdict.PASS)])
def test_a_verdict_that_the_missing_error_could_turn_over_is_not_told(at, verdict):
    plain, turned = cautious(value(at), (10.0, 18.0), LIMITS, 0.0)
    assert (plain.verdict, turned) == (verdict, False)
    wary, turned = cautious(value(at), (10.0, 18.0), LIMITS, 0.7)
    assert (wary.verdict, turned, wary.limit) == (Verdict.CANT_TELL, True, 18.0)
    # The probability is that with the missing error in: less sure than without.
    assert abs(wary.probability - 0.5) < abs(plain.probability - 0.5)


def test_far_from_the_limit_the_missing_error_changes_nothing():
    for at, verdict in ((25.0, Verdict.FAIL), (14.0, Verdict.PASS)):
        found, turned = cautious(value(at), (10.0, 18.0), LIMITS, 0.7)
        assert (found.verdict, turned) == (verdict, False)


def test_simple_acceptance_is_not_told_either_where_the_limit_lies_within_the_missing_error():
    simple = Limits(decision=DecisionRule.SIMPLE)
    assert cautious(value(18.5), (10.0, 18.0), simple, 0.7)[0].verdict is Verdict.CANT_TELL
    assert cautious(value(18.5), (10.0, 18.0), simple, 0.3)[0].verdict is Verdict.FAIL


def test_the_words_name_what_is_missing_and_how_much_it_may_be(bench):
    words = usual_words(home(bench, own=False, zero=False), 0.62)
    assert words == (
        "; the clamp's own error and zero is not known, and a usual one (0.62 A) could turn the"
        " verdict over"
    )
    assert usual_words(None, 0.62) == ""


@pytest.mark.parametrize(("top", "verdict"), [(13.3, "can't tell"), (11.0, "fail")])
def test_a_motor_is_failed_by_an_unstated_clamp_only_far_beyond_the_limit(trace, top, verdict):
    fan = trace.Fan()  # draws 13.6 A on speed 4
    fan.limits = trace.limits(speeds={4: trace.SpeedLimits(5.0, top)})
    amps = replace(fan.channels[2], sensor=UNSAID, zero=Zero(0.0, 0.01, 9))
    fan.channels = (*fan.channels[:2], amps)
    findings = [f for f in fan.review().findings if f.kind is FindingKind.STEP_CURRENT]
    over = [f for f in fan.review().findings if f.kind is FindingKind.OVER]
    assert over
    for one in (*over, *findings):
        assert one.verdict.value == verdict
        assert ("could turn the verdict over" in one.statement) is (verdict == "can't tell")
        assert one.probability < 0.5
    # with the clamp's own accuracy stated it is told
    known = replace(UNSAID, own_percent=0.5, own_floor=0.0)
    sure = replace(fan.channels[2].accuracy, percent_of_reading=1.0)
    fan.channels = (*fan.channels[:2], replace(amps, sensor=known, accuracy=sure))
    told = [f for f in fan.review().findings if f.kind is FindingKind.OVER]
    assert {f.verdict for f in told} == {Verdict.FAIL}


def test_a_dead_segment_is_told_by_an_unstated_clamp_whose_zero_was_taken_only(trace):
    fan = trace.Fan()
    fan.values[(fan.t_s >= 8.0) & (fan.t_s < 10.0)] = (12.4, 0.02, 0.0)
    plain = fan.channels
    for zero, verdict in ((Zero(0.0, 0.01, 9), Verdict.FAIL), (None, Verdict.CANT_TELL)):
        fan.channels = (*plain[:2], replace(plain[2], sensor=UNSAID, zero=zero))
        (dead,) = [f for f in fan.review().findings if f.kind is FindingKind.DEAD]
        assert dead.verdict is verdict
        assert ("own error and zero is not known" in dead.statement) is (zero is None)


def test_the_voltage_across_a_dead_segment_stands_with_its_uncertainty(trace):
    fan = trace.Fan()
    fan.values[(fan.t_s >= 8.0) & (fan.t_s < 10.0)] = (12.4, 0.02, 0.0)
    (dead,) = [f for f in fan.review().findings if f.kind is FindingKind.DEAD]
    # 0.5 % of 12.38 V and 2 x 0.01 V: ± 0.0819 V, its edges blurred by the return's ± 0.02 V.
    # 95 % by the normal loss function: 0.05 x 0.0819 / 0.01155 = 0.355 at z = -0.09.
    assert "while 12.380 ± 0.083 V stood across it" in dead.statement


def test_limits_that_hold_at_the_reference_voltage_judge_the_current_brought_there(trace):
    fan = trace.Fan()  # 13.6 A at 11.84 V across the motor
    fan.limits = trace.limits(at_reference=True, reference_v=13.0)
    plain = trace.Fan().review()
    (as_read,) = [f for f in plain.findings if f.kind is FindingKind.STEP_CURRENT and f.speed == 4]
    told = [f for f in fan.review().findings if f.kind is FindingKind.STEP_CURRENT]
    (high,) = [f for f in told if f.speed == 4]
    # More volts, more amperes: by about the 1.7th power of the voltage.
    assert high.value == pytest.approx(as_read.value * (13.0 / 11.84) ** 1.7, rel=0.02)
    assert high.expanded_uncertainty > as_read.expanded_uncertainty
    assert "brought to 13 V" in high.statement
    (low,) = [f for f in told if f.speed == 1]  # 5.6 V is another speed's
    assert "as measured, not at 13 V" in low.statement
    assert low.value == pytest.approx(3.6, abs=0.05)
