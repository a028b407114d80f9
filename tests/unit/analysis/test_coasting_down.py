"""A motor that slows down to a lower step draws nothing meanwhile: no loss, whatever hides it.

Its own voltage falls from that of the old step to that of the new one: V = I R + Ke w with I = 0
(textbook, permanent-magnet motor). The controller is on the ground side here, so the return rises.
"""

from itertools import pairwise

import pytest

from meterlog.model import SpanKind, Verdict

GONE = (None, None, None)
HAND = {"command_lag_s": 1.0}


def kinds(result):
    return [span.kind for span in result.spans]


def failed(result):
    return [one for one in result.findings if one.verdict is Verdict.FAIL]


def coasting(trace, start, end, from_v=11.8, to_v=5.6):
    """Give the legs of a motor that slows down from one voltage of its own to another."""
    count = max(round((end - start) / 0.02), 1)
    return [
        trace.Leg(
            start + (end - start) * (k + 1) / count,
            12.4,
            12.4 - from_v * (to_v / from_v) ** ((k + 0.5) / count),
            0.0,
        )
        for k in range(count)
    ]


def in_order(trace, legs, events, interval_s, lim, chunk_s, look=False):
    """Feed in small blocks, each event after the readings before it, as a recording is read."""
    meter = trace.Instrument("meter", "test", "-", trace.channels(interval_s))
    reviewer = trace.Reviewer([meter], lim)
    block = trace.block_of(*trace.sample(legs, interval_s))
    waiting, seen = sorted(events, key=lambda one: one.t_ns), []
    rows = max(round(chunk_s / interval_s), 1)
    for start in range(0, len(block), rows):
        part = block.rows(start, min(start + rows, len(block)))
        while waiting and waiting[0].t_ns <= int(part.t_ns[-1]):
            reviewer.feed(waiting.pop(0))
        reviewer.feed(part)
        if look:
            seen.append(reviewer.live().spans)
    for event in waiting:
        reviewer.feed(event)
    return reviewer.finish(), seen


@pytest.mark.parametrize("late_s", [0.3, 0.6, 0.9])
@pytest.mark.parametrize("chunk_s", [0.1, 20.0])
def test_a_mark_that_comes_long_after_the_current_is_back_explains_it_all_the_same(
    trace, late_s, chunk_s
):
    leg = trace.Leg
    legs = [
        leg(5.0, *trace.NORMAL[4]),
        *coasting(trace, 5.0, 5.12),
        leg(9.0, *trace.NORMAL[1]),
    ]
    events = [trace.speed(0.0, 4), trace.speed(5.0 + late_s, 1)]
    # Judged again soon after, so that the current is told as back long before the mark comes.
    lim = trace.limits(**HAND, inrush_window_s=0.1)
    result, _ = in_order(trace, legs, events, 0.02, lim, chunk_s)
    assert kinds(result) == [SpanKind.RUNNING]
    assert not failed(result)


def test_looking_meanwhile_loses_no_span_and_changes_nothing(trace):
    leg = trace.Leg
    legs = [
        leg(5.0, *trace.NORMAL[4]),
        *coasting(trace, 5.0, 5.12),
        leg(7.0, *trace.NORMAL[1]),
        leg(7.5, *trace.DEAD),
        leg(9.0, *trace.NORMAL[1]),
    ]
    events = [trace.speed(0.0, 4), trace.speed(5.8, 1)]
    lim = trace.limits(**HAND)
    looked, seen = in_order(trace, legs, events, 0.02, lim, 0.5, look=True)
    unlooked, _ = in_order(trace, legs, events, 0.02, lim, 0.5)
    assert looked.spans == unlooked.spans
    for spans in seen:
        assert not spans or spans[0].start_ns == 0
        assert all(one.end_ns == other.start_ns for one, other in pairwise(spans))
    assert SpanKind.DEAD in kinds(looked)


def cut_in_two(trace, end, **how):
    """Give a step down whose coasting is not read for 0.1 s in its midst."""
    leg = trace.Leg
    whole = coasting(trace, 5.0, end, **how)
    legs = [
        leg(5.0, *trace.NORMAL[4]),
        *(one for one in whole if one.end <= 5.2 + 1e-9),
        leg(5.3, *GONE),
        *(one for one in whole if one.end > 5.3 + 1e-9),
        leg(9.0, *trace.NORMAL[1]),
    ]
    events = [trace.speed(0.0, 4), trace.speed(5.6, 1)]
    return trace.review(legs, events, 0.01, lim=trace.limits(**HAND))


def test_coasting_that_a_blank_cuts_in_two_is_no_loss(trace):
    result = cut_in_two(trace, 5.5)
    assert kinds(result) == [SpanKind.RUNNING, SpanKind.NO_DATA, SpanKind.RUNNING]


def test_what_lasts_longer_than_coasting_is_told_on_both_sides_of_a_blank(trace):
    result = cut_in_two(trace, 5.0 + 2.5)  # coast_s is 2 s
    lost = [one for one in kinds(result) if one not in (SpanKind.RUNNING, SpanKind.NO_DATA)]
    assert len(lost) == 2


def test_a_voltage_that_fell_below_the_new_steps_is_told_on_both_sides_of_a_blank(trace):
    # The new step gives 5.6 V; a motor that fell to 1.5 V was not coasting down to it.
    result = cut_in_two(trace, 6.6, to_v=1.5)
    assert SpanKind.RUNNING not in kinds(result)[1:-1]


def test_without_a_step_down_the_same_is_told(trace):
    leg = trace.Leg
    legs = [
        leg(5.0, *trace.NORMAL[4]),
        *coasting(trace, 5.0, 5.3),
        leg(9.0, *trace.NORMAL[4]),
    ]
    result = trace.review(legs, [trace.speed(0.0, 4)], 0.01, lim=trace.limits(**HAND))
    assert SpanKind.GROUND_LOST in kinds(result)


def test_coasting_whose_end_was_not_read_is_no_loss(trace):
    leg = trace.Leg
    legs = [
        leg(5.0, *trace.NORMAL[4]),
        *coasting(trace, 5.0, 5.3, to_v=6.5),
        leg(5.4, *GONE),
        leg(9.0, *trace.NORMAL[1]),
    ]
    events = [trace.speed(0.0, 4), trace.speed(5.6, 1)]
    result = trace.review(legs, events, 0.01, lim=trace.limits(**HAND))
    assert kinds(result) == [SpanKind.RUNNING, SpanKind.NO_DATA, SpanKind.RUNNING]


@pytest.mark.parametrize(("end", "told"), [(6.9, False), (8.0, True)])
def test_after_a_pause_a_loss_is_as_long_as_it_was_seen_to_be(trace, end, told):
    # Not read for 0.9 s: with the 1.5 s after it more than the 2 s that coasting lasts, but when
    # in the pause the current went nobody knows.
    leg = trace.Leg
    legs = [
        leg(4.5, *trace.NORMAL[4]),
        leg(5.4, *GONE),
        leg(end, None, None, 0.0),
        leg(9.0, *trace.NORMAL[1]),
    ]
    events = [trace.speed(0.0, 4), trace.speed(5.0, 1)]
    result = trace.review(legs, events, 0.1, lim=trace.limits(**HAND), roles=("current",))
    assert (SpanKind.NO_CURRENT in kinds(result)) == told


def test_a_probe_that_was_off_before_already_does_not_make_coasting_a_lost_feed(trace):
    # The feed read 0.8 V while 13.6 A flowed, and is put back only after the current came back.
    leg = trace.Leg
    legs = [
        leg(4.0, *trace.NORMAL[4]),
        leg(5.0, 0.8, 0.16, 13.6),
        leg(6.2, 0.8, 0.16, 0.0),
        leg(9.0, *trace.NORMAL[1]),
    ]
    events = [trace.speed(0.0, 4), trace.speed(5.3, 1)]
    for roles in (("feed", "current"), ("feed", "return", "current")):
        result = trace.review(legs, events, 0.1, lim=trace.limits(**HAND), roles=roles)
        assert kinds(result) == [SpanKind.RUNNING]


def test_a_return_that_slips_while_the_motor_coasts_makes_it_no_dead_one(trace):
    # From middle to low the motor can't be given more than before: the return's probe is off, and
    # full battery across the motor is its doing.
    leg = trace.Leg
    legs = [leg(5.0, *trace.NORMAL[2]), leg(5.4, 12.4, 0.3, 0.0), leg(7.0, 12.3, 0.3, 3.6)]
    legs = [*legs, leg(9.0, *trace.NORMAL[1])]
    events = [trace.speed(0.0, 2), trace.speed(5.3, 1)]
    result = trace.review(legs, events, 0.1, lim=trace.limits(**HAND))
    assert kinds(result) == [SpanKind.RUNNING]


def test_a_dead_motor_with_its_probes_on_is_told_beside_a_step_down(trace):
    # Open at 5 s, closed again at 5.4 s, and only then turned down, within a hand's lag.
    leg = trace.Leg
    legs = [leg(5.0, *trace.NORMAL[4]), leg(5.4, *trace.DEAD), leg(5.7, *trace.NORMAL[4])]
    legs = [*legs, leg(9.0, *trace.NORMAL[1])]
    events = [trace.speed(0.0, 4), trace.speed(5.7, 1)]
    result = trace.review(legs, events, 0.05, lim=trace.limits(**HAND))
    assert SpanKind.DEAD in kinds(result)
