"""A hand that is late is told as late, up to twice the lag; beyond it is a fault again."""

import pytest

from meterlog.model import FindingKind, SpanKind, Verdict


def kinds(result):
    return [span.kind for span in result.spans]


def faults(result):
    return [f for f in result.findings if f.kind is not FindingKind.STEP_CURRENT]


LATE = [0.25, 0.31, 0.45, 0.58]


@pytest.mark.parametrize("late_s", LATE)
def test_a_knob_turned_up_before_its_key_is_no_excess(trace, late_s):
    leg = trace.Leg
    legs = [leg(5.0, *trace.NORMAL[1]), leg(12.0, *trace.NORMAL[4])]
    result = trace.review(legs, [trace.speed(0.0, 1), trace.speed(5.0 + late_s, 4)])
    assert kinds(result) == [SpanKind.RUNNING]
    assert not faults(result)
    told = "a command seems" in result.spans[0].detail
    assert told == (late_s > 0.3)


def test_a_knob_turned_down_before_its_key_is_no_under_current(trace):
    leg = trace.Leg
    legs = [leg(5.0, *trace.NORMAL[4]), leg(12.0, *trace.NORMAL[1])]
    result = trace.review(legs, [trace.speed(0.0, 4), trace.speed(5.45, 1)])
    assert kinds(result) == [SpanKind.RUNNING]


def test_an_excess_that_the_next_speed_does_not_draw_stays_one(trace):
    leg = trace.Leg
    legs = [leg(5.0, *trace.NORMAL[1]), leg(5.45, 12.0, 3.0, 9.0), leg(12.0, *trace.NORMAL[4])]
    result = trace.review(legs, [trace.speed(0.0, 1), trace.speed(5.45, 4)])
    (over,) = faults(result)
    assert over.kind is FindingKind.OVER


def test_three_lags_are_no_late_hand(trace):
    leg = trace.Leg
    legs = [leg(5.0, *trace.NORMAL[1]), leg(12.0, *trace.NORMAL[4])]
    result = trace.review(legs, [trace.speed(0.0, 1), trace.speed(5.9, 4)])
    assert [f.kind for f in faults(result)] == [FindingKind.OVER]


@pytest.mark.parametrize(
    ("late_s", "expected"),
    [(0.25, []), (0.45, [Verdict.CANT_TELL]), (0.9, [Verdict.FAIL])],
)
def test_a_key_for_off_pressed_late_blames_nothing_until_it_is_too_late_to_be_one(
    trace, late_s, expected
):
    leg = trace.Leg
    legs = [leg(5.0, *trace.NORMAL[4]), leg(12.0, *trace.NORMAL[0])]
    result = trace.review(legs, [trace.speed(0.0, 4), trace.speed(5.0 + late_s, 0)])
    assert [f.verdict for f in faults(result)] == expected
    if expected == [Verdict.CANT_TELL]:
        (found,) = faults(result)
        assert found.kind is FindingKind.NO_CURRENT
        assert "late or early" in found.statement


def test_a_key_pressed_before_the_knob_is_told_as_early(trace):
    leg = trace.Leg
    legs = [leg(5.0, *trace.NORMAL[0]), leg(12.0, *trace.NORMAL[4])]
    result = trace.review(legs, [trace.speed(0.0, 0), trace.speed(4.55, 4)])
    (found,) = faults(result)
    assert (found.kind, found.verdict) == (FindingKind.NO_CURRENT, Verdict.CANT_TELL)


def test_a_loss_that_goes_before_a_dead_segment_is_not_put_down_to_the_hand(trace):
    leg = trace.Leg
    legs = [leg(5.0, *trace.NORMAL[4]), leg(7.0, *trace.DEAD), leg(12.0, *trace.NORMAL[0])]
    result = trace.review(legs, [trace.speed(0.0, 4), trace.speed(7.2, 0)])
    assert FindingKind.DEAD in {f.kind for f in faults(result)}


def test_an_excess_that_goes_on_at_the_next_speed_is_judged_by_each_speeds_own_limit(trace):
    leg = trace.Leg
    legs = [leg(4.0, 12.0, 3.0, 9.0), leg(8.0, 11.9, 0.2, 22.0)]
    lim = trace.limits(inrush_window_s=0.0)
    result = trace.review(legs, [trace.speed(0.0, 1), trace.speed(4.0, 4)], lim=lim)
    over = [f for f in faults(result) if f.kind is FindingKind.OVER]
    assert [(f.speed, f.limit) for f in over] == [(1, 5.0), (4, 18.0)]
    assert [f.value for f in over] == pytest.approx([9.0, 22.0])
    assert [s.speed for s in result.spans if s.kind is SpanKind.OVER] == [1, 4]


@pytest.mark.parametrize("before", [0, 1])
@pytest.mark.parametrize("late_s", [0.25, 0.45])
def test_the_peak_of_a_start_before_its_key_is_neither_held_rotor_nor_excess(trace, before, late_s):
    leg = trace.Leg
    peak = [leg(5.0 + 0.02 * k, 11.0, 0.3, 13.6 + 38.0 * 0.75**k) for k in range(1, 30)]
    legs = [leg(5.0, *trace.NORMAL[before]), *peak, leg(12.0, *trace.NORMAL[4])]
    result = trace.review(legs, [trace.speed(0.0, before), trace.speed(5.0 + late_s, 4)])
    assert set(kinds(result)) <= {SpanKind.OFF, SpanKind.RUNNING}
    assert not faults(result)


def test_a_rotor_held_steadily_up_to_the_next_key_is_held(trace):
    leg = trace.Leg
    legs = [leg(5.0, *trace.NORMAL[4]), leg(5.28, 10.7, 0.6, 55.0), leg(12.0, *trace.NORMAL[1])]
    lim = trace.limits(command_lag_s=0.25)
    result = trace.review(legs, [trace.speed(0.0, 4), trace.speed(5.28, 1)], lim=lim)
    assert SpanKind.LOCKED in kinds(result)
