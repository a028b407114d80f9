"""A hand that is late to switch off or on is as late where readings are missing beside it."""

import pytest

from meterlog.model import SpanKind, Verdict

GONE = (None, None, None)
LOST = (SpanKind.GROUND_LOST, SpanKind.FEED_LOST, SpanKind.DEAD, SpanKind.NO_CURRENT)
ROLES = [("feed", "return", "current"), ("current",)]


def kinds(result):
    return [span.kind for span in result.spans]


def lost(result):
    return [one for one in kinds(result) if one in LOST]


def review(trace, legs, events, roles=ROLES[0]):
    return trace.review(legs, events, 0.01, lim=trace.limits(command_lag_s=1.0), roles=roles)


def switched_off(trace, gap_end, marked, gone=None):
    """Give a fan switched off at 5 s, not read from 5.2 s on."""
    leg = trace.Leg
    legs = [
        leg(5.0, *trace.NORMAL[4]),
        leg(5.2, *(gone or trace.NORMAL[0])),
        leg(gap_end, *GONE),
        leg(9.0, *trace.NORMAL[0]),
    ]
    return legs, [trace.speed(0.0, 4), trace.speed(marked, 0)]


@pytest.mark.parametrize("roles", ROLES)
@pytest.mark.parametrize("gap_end", [5.3, 5.7, 7.5])
def test_what_a_gap_parts_from_a_late_off_is_the_command(trace, roles, gap_end):
    result = review(trace, *switched_off(trace, gap_end, 5.6), roles)
    assert not lost(result)
    assert not [one for one in result.findings if one.verdict is Verdict.FAIL]
    assert any("taken for the command" in note for note in result.notes)


def test_later_than_a_hand_can_be_it_is_a_loss(trace):
    assert lost(review(trace, *switched_off(trace, 5.3, 7.4)))


def test_full_battery_across_a_motor_without_current_is_no_command_behind_a_gap_either(trace):
    result = review(trace, *switched_off(trace, 5.7, 5.6, gone=trace.DEAD))
    assert lost(result) == [SpanKind.DEAD]


@pytest.mark.parametrize("roles", ROLES)
@pytest.mark.parametrize("gap", [(4.9, 5.1), (5.2, 5.3)])
@pytest.mark.parametrize(("on", "told"), [(5.6, False), (6.6, True)])
def test_a_switch_turned_after_its_key_is_no_loss_behind_a_gap_unless_much_later(
    trace, roles, gap, on, told
):
    leg = trace.Leg
    legs = [
        leg(gap[0], *trace.NORMAL[0]),
        leg(gap[1], *GONE),
        leg(on, *trace.NORMAL[0]),
        leg(9.0, *trace.NORMAL[4]),
    ]
    result = review(trace, legs, [trace.speed(0.0, 0), trace.speed(5.0, 4)], roles)
    assert bool(lost(result)) == told


def test_what_never_came_on_behind_a_gap_is_told(trace):
    leg = trace.Leg
    legs = [leg(4.9, *trace.NORMAL[0]), leg(5.1, *GONE), leg(5.5, *trace.NORMAL[0])]
    assert lost(review(trace, legs, [trace.speed(0.0, 0), trace.speed(5.0, 4)]))


def test_looking_while_a_loss_is_parted_from_off_by_more_than_a_gap_changes_nothing(trace):
    # Between the gap and off it ran again, which is not settled yet when one looks.
    leg = trace.Leg
    legs = [
        leg(4.0, *trace.NORMAL[4]),
        leg(4.2, *trace.NORMAL[0]),
        leg(4.4, *GONE),
        leg(4.9, *trace.NORMAL[4]),
        leg(7.0, *trace.NORMAL[0]),
    ]
    block = trace.block_of(*trace.sample(legs, 0.01))
    meter = trace.Instrument("meter", "test", "-", trace.channels(0.01))
    found = []
    for looks in (False, True):
        reviewer = trace.Reviewer([meter], trace.limits(command_lag_s=1.0))
        for event in (trace.speed(0.0, 4), trace.speed(4.7, 0)):
            reviewer.feed(event)
        for start in range(0, len(block), 5):
            reviewer.feed(block.rows(start, start + 5))
            if looks and 480 < start < 530:
                reviewer.live()
        found.append(reviewer.finish().spans)
    assert found[0] == found[1]
    assert any(span.kind in LOST for span in found[0])


@pytest.mark.parametrize(("again", "told"), [("off", False), ("on", True)])
def test_a_gap_right_behind_a_late_off_does_not_part_the_loss_from_it(trace, again, told):
    # Off at 5 s, marked at 5.6 s; after 20 ms, too short for a stretch of its own, nothing is read.
    leg, after = trace.Leg, trace.NORMAL[0 if again == "off" else 4]
    legs = [leg(5.0, *trace.NORMAL[4]), leg(5.62, *trace.NORMAL[0]), leg(5.9, *GONE)]
    result = review(trace, [*legs, leg(9.0, *after)], [trace.speed(0.0, 4), trace.speed(5.6, 0)])
    assert bool(lost(result)) == told


@pytest.mark.parametrize(
    ("on", "told"), [(5.2, []), (6.4, [SpanKind.DEAD]), (9.0, [SpanKind.DEAD])]
)
def test_a_voltage_that_stood_before_the_command_does_not_show_when_it_came_through(
    trace, on, told
):
    # The return reads nothing from 3 s on: an open motor, or a probe that is off.
    leg = trace.Leg
    legs = [leg(3.0, *trace.NORMAL[0]), leg(on, *trace.DEAD), leg(9.0, 12.0, 0.02, 13.6)]
    assert lost(review(trace, legs, [trace.speed(0.0, 0), trace.speed(5.0, 4)])) == told
    # Where it came with the command, it is the motor, but for a moment: a clamp may be late.
    legs[0] = leg(5.02, *trace.NORMAL[0])
    shown = lost(review(trace, legs, [trace.speed(0.0, 0), trace.speed(5.0, 4)]))
    assert shown == ([] if on == 5.2 else [SpanKind.DEAD])


@pytest.mark.parametrize(("before", "told"), [("off", False), ("on", True)])
def test_a_gap_right_before_an_on_command_does_not_part_the_loss_from_it(trace, before, told):
    # Off again at 4.98 s after a gap, 20 ms before the key is marked; the current comes at 5.3 s.
    leg = trace.Leg
    legs = [leg(4.9, *trace.NORMAL[0 if before == "off" else 4]), leg(4.98, *GONE)]
    legs += [leg(5.3, *trace.NORMAL[0]), leg(9.0, *trace.NORMAL[4])]
    events = [trace.speed(0.0, 0 if before == "off" else 4)]
    marked = [trace.speed(5.0, 4)] if before == "off" else []
    assert bool(lost(review(trace, legs, [*events, *marked]))) == told
