"""What the current did upon each tap."""

import pytest

from meterlog.model import SpanKind

THREE = [(16.0, 20.1), (24.0, 28.1), (31.0, 35.2)]
TAPS = (20.0, 28.0, 35.1)
HIGH, LOW = (12.0, 0.16, 13.6), (12.0, 4.0, 4.7)


def test_each_tap_that_brings_the_current_back_is_told_with_its_levels_and_its_time(tapped, script):
    legs, events = script(THREE)
    evidence = tapped(legs, TAPS, events=events).evidence
    assert (evidence.tried, evidence.answered, evidence.attempts) == (3, 3, 3)
    for tap in evidence.taps:
        assert tap.answered
        assert not tap.stopped
        assert not tap.late
        assert (tap.before, tap.after) == ("dead", "running")
        assert tap.before_a == pytest.approx(0.0, abs=0.01)
        assert tap.after_a == pytest.approx(13.6, abs=0.1)
        assert tap.returned_s == pytest.approx(0.1, abs=tap.returned_edge_s)
        assert tap.speed == 4


def test_nothing_is_told_where_nobody_tapped(tapped, script):
    legs, events = script(THREE)
    assert tapped(legs, (), events=events).evidence is None


def test_taps_on_a_healthy_running_motor_change_nothing(tapped, script):
    legs, events = script([], end=30.0)
    evidence = tapped(legs, (20.0, 23.0), events=events).evidence
    assert evidence.summary == "2 taps changed nothing: the current stayed as it was."
    assert (evidence.tried, evidence.answered, evidence.chance) == (0, 0, None)
    assert [tap.before for tap in evidence.taps] == ["running", "running"]
    assert [tap.after_a for tap in evidence.taps] == pytest.approx([13.6, 13.6], abs=0.1)


def test_taps_that_bring_nothing_back_are_tried_and_not_answered(tapped, script):
    legs, events = script([(10.0, 30.0)])
    evidence = tapped(legs, (14.0, 18.0, 22.0), events=events).evidence
    assert (evidence.tried, evidence.answered) == (3, 0)
    assert "changed nothing" in evidence.summary
    assert all(tap.returned_s is None for tap in evidence.taps)


def test_a_return_after_more_than_two_seconds_is_no_answer(tapped, script):
    legs, events = script([(10.0, 20.3)])
    assert tapped(legs, (18.0,), events=events).evidence.answered == 0
    assert tapped(legs, (18.5,), events=events).evidence.answered == 1


def test_light_taps_within_a_second_are_one_attempt(tapped, script):
    legs, events = script(THREE)
    evidence = tapped(legs, (19.3, 19.6, 20.0, 28.0, 35.1), events=events).evidence
    assert (evidence.attempts, evidence.tried, evidence.answered) == (3, 3, 3)
    assert [tap.attempt for tap in evidence.taps] == [1, 1, 1, 2, 3]


def test_one_return_answers_one_attempt_only(tapped, script):
    legs, events = script([(10.0, 14.2)])
    evidence = tapped(legs, (12.9, 14.1), events=events).evidence
    assert evidence.answered == 1, "the first of them is in reach too"


def test_a_mark_up_to_half_a_second_after_the_return_counts_and_is_said_to_be_late(tapped, script):
    legs, events = script(THREE)
    evidence = tapped(legs, (20.4, 28.0, 35.1), events=events).evidence
    first = evidence.taps[0]
    assert first.answered
    assert first.late
    assert first.before_a == pytest.approx(0.0, abs=0.01)
    assert first.returned_s == 0.0
    assert first.returned_edge_s == pytest.approx(0.3, abs=0.06)
    assert "came up to 0.3" in evidence.summary
    assert "late" in evidence.summary


@pytest.mark.parametrize("late", [(0.0, 0.45, 0.3), (0.3, 0.1, 0.45), (-0.05, -0.1, 0.45)])
def test_the_answer_known_worst_is_told_for_all_of_them(tapped, script, late):
    legs, events = script(THREE, end=50.0)
    taps = [stop + by for (_, stop), by in zip(THREE, late, strict=True)]
    evidence = tapped(legs, taps, events=events).evidence
    assert evidence.answered == 3
    told_s = evidence.slowest_s + evidence.slowest_edge_s
    assert told_s >= max(map(abs, late)) - 1e-9
    assert f"(± {evidence.slowest_edge_s:.2g} s)" in evidence.summary


def test_currents_at_several_speeds_are_told_from_least_to_greatest(tapped, trace):
    legs = [
        trace.Leg(2.0, *trace.NORMAL[0]),
        *(trace.Leg(end, *volts) for end, volts in ((8.0, LOW), (10.0, trace.DEAD), (18.0, LOW))),
        *(
            trace.Leg(end, *volts)
            for end, volts in ((24.0, HIGH), (26.0, trace.DEAD), (40.0, HIGH))
        ),
    ]
    events = [trace.speed(0.0, 0), trace.speed(2.0, 1), trace.speed(18.0, 4)]
    evidence = tapped(legs, (9.95, 25.95), events=events).evidence
    assert evidence.answered == 2
    assert "from 0.00 A to between 4.7 A and 13.6 A within" in evidence.summary


def test_a_mark_later_than_that_met_a_running_motor(tapped, script):
    legs, events = script(THREE)
    evidence = tapped(legs, (20.8,), events=events).evidence
    assert evidence.tried == 0
    assert not evidence.taps[0].answered


def test_a_tap_that_stops_the_motor_is_told_so_and_is_not_tried(tapped, script):
    legs, events = script([(20.3, 26.0)])
    evidence = tapped(legs, (20.0,), events=events).evidence
    assert evidence.taps[0].stopped
    assert not evidence.taps[0].answered
    assert evidence.tried == 0
    assert "its current went within 0.5 s (dead)" in evidence.summary


def test_a_mark_just_after_the_current_went_is_taken_for_what_stopped_it(tapped, script):
    legs, events = script([(20.0, 21.0)])
    tap = tapped(legs, (20.3,), events=events).evidence.taps[0]
    assert tap.stopped
    assert tap.late
    assert not tap.answered


def test_a_motor_dead_from_the_start_command_on_can_be_tried_at_once(tapped, script):
    legs, events = script([(2.0, 2.6)])
    evidence = tapped(legs, (2.5,), events=events).evidence
    assert (evidence.tried, evidence.answered) == (1, 1)


def test_a_feed_that_comes_back_upon_a_tap_says_nothing_of_the_motor(tapped, script):
    legs, events = script([(16.0, 20.1)], dead=(2.0, 0.0, 0.0))
    result = tapped(legs, (20.0,), events=events)
    assert SpanKind.FEED_LOST in [span.kind for span in result.judged.spans]
    assert (result.evidence.tried, result.evidence.answered) == (0, 0)
    assert "while the feed was gone" in result.evidence.summary
    assert "nothing of the motor" in result.evidence.summary


@pytest.mark.parametrize("offset", [-0.2, 0.05, 0.3])
def test_a_return_beside_a_change_of_speed_is_the_commands_doing(tapped, script, trace, offset):
    legs, events = script([(10.0, 20.1)])
    events.append(trace.speed(20.1 + offset, 3))
    evidence = tapped(legs, (19.9,), events=events).evidence
    assert evidence.answered == 0


def test_without_the_return_side_the_current_counts_but_the_voltage_does_not(
    tapped, script, check_of
):
    legs, events = script(THREE)
    evidence = tapped(legs, TAPS, events=events, roles=("feed", "current")).evidence
    assert (evidence.tried, evidence.answered) == (3, 3)
    assert check_of(evidence, "voltage across the motor").verdict == "can't tell"
    assert "the voltage across the motor was not read" in evidence.summary
    assert evidence.accepted == "can't tell"


def test_a_fan_that_nobody_is_known_to_have_asked_for_is_not_tried(tapped, trace):
    legs = [trace.Leg(10.0, 12.4, None, 0.0), trace.Leg(30.0, 12.0, None, 13.6)]
    evidence = tapped(legs, (9.9,), roles=("feed", "current")).evidence
    assert evidence.tried == 0, "switching it on would look the same"


def test_the_last_tap_before_the_return_is_the_one_that_brought_it(tapped, script):
    legs, events = script(THREE)
    evidence = tapped(legs, (18.5, 20.0, 26.5, 28.0, 33.6, 35.1), events=events).evidence
    assert [tap.answered for tap in evidence.taps] == [False, True] * 3
    assert (evidence.tried, evidence.answered) == (6, 3)
    assert evidence.slowest_s == pytest.approx(0.1, abs=0.06)


def test_a_late_mark_counts_where_the_tap_before_is_long_ago_only(tapped, script):
    legs, events = script([(16.0, 20.1)])
    answered = [tap.answered for tap in tapped(legs, (18.5, 20.4), events=events).evidence.taps]
    assert answered == [False, True]
    answered = [tap.answered for tap in tapped(legs, (20.0, 20.4), events=events).evidence.taps]
    assert answered == [True, False]


def test_what_goes_a_second_after_a_tap_was_not_shaken_loose_by_it(tapped, script):
    legs, events = script([(21.2, 26.0)])
    assert not tapped(legs, (20.0,), events=events).evidence.taps[0].stopped
