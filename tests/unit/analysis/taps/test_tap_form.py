"""The points of the accepted form: each can pass, fail and be untold."""

import pytest

from meterlog.model import Doubt, DoubtKind, Event, EventKind, SpanKind

THREE = [(16.0, 20.1), (24.0, 28.1), (31.0, 35.2)]
TAPS = (20.0, 28.0, 35.1)


def zero(at_s, offset, channel="current", source="meter"):
    value = f"{channel} {offset} A scatter 0.001 n 20"
    return Event(round(at_s * 1e9), EventKind.ZERO, value, source)


def proper(tapped, script, dropouts=THREE, taps=TAPS, **more):
    legs, events = script(dropouts, end=more.pop("end", 50.0))
    events += more.pop("events", [zero(0.5, 0.01), zero(49.0, 0.05)])
    more.setdefault("leads", (14.0,))
    return tapped(legs, taps, events=events, **more).evidence


def verdicts(evidence):
    return {check.name: check.verdict.value for check in evidence.checks}


def test_a_proper_test_is_accepted_and_its_sentence_holds_every_figure(tapped, script):
    evidence = proper(tapped, script)
    assert set(verdicts(evidence).values()) == {"pass"}, evidence.checks
    assert evidence.accepted == "pass"
    for figure in ("3 of 3", "0.00 A to 13.6 A", "within 0.0", "12.4 V", "permutation", "9999"):
        assert figure in evidence.summary
    assert evidence.chance < 0.001


def test_two_repeats_are_too_few(tapped, script, check_of):
    evidence = proper(tapped, script, THREE[:2], TAPS[:2])
    assert check_of(evidence, "repeats").verdict == "can't tell"
    assert "at least 3" in check_of(evidence, "repeats").words
    assert evidence.accepted == "can't tell"


def test_one_attempt_without_an_answer_fails_the_repeats(tapped, script, check_of):
    evidence = proper(tapped, script, taps=(17.5, *TAPS[1:], 36.0))
    assert check_of(evidence, "repeats").verdict == "fail"
    assert evidence.accepted == "fail"


def test_a_current_that_is_not_quite_gone_fails(tapped, trace, script, check_of):
    dead = (12.4, 0.02, 0.28)
    legs, events = script(THREE, end=50.0, dead=dead, high=(12.0, 0.16, 4.0))
    evidence = tapped(legs, TAPS, events=events).evidence
    assert check_of(evidence, "current gone").verdict == "fail", "0.28 A is 7 % of 4 A"


@pytest.mark.parametrize(("dwell_s", "verdict"), [(0.1, "pass"), (0.7, "can't tell")])
def test_a_current_that_came_back_in_between_was_not_gone(
    tapped, script, check_of, dwell_s, verdict
):
    """Each tap brings it back for half a second; limits that count from 0.7 s on bridge that."""
    twice = [one for _, end in THREE for one in ((end - 4.0, end - 1.5), (end - 1.0, end))]
    taps = [end - 1.5 for _, end in THREE]
    evidence = proper(tapped, script, twice, taps, min_dwell_s=dwell_s)
    check = check_of(evidence, "current gone")
    assert (evidence.tried, check.verdict) == (3, verdict), check.words
    for words in (check.words, evidence.summary):
        assert ("min_dwell_s" in words) is (verdict == "can't tell")
    assert evidence.accepted == verdict


def test_one_reading_does_not_show_that_it_was_gone(tapped, script, check_of):
    evidence = proper(tapped, script, [(16.05, 16.3)], (16.6,), interval_s=0.25, end=30.0)
    assert check_of(evidence, "current gone").verdict == "can't tell"


def test_too_little_voltage_across_the_motor_fails(tapped, script, check_of):
    legs, events = script(THREE, end=50.0)
    result = tapped(legs, TAPS, events=events)
    from dataclasses import replace

    from meterlog.analysis.taps.form import across
    from meterlog.analysis.taps.gone_readings import GoneFigures
    from meterlog.analysis.taps.watch import TapWatch

    watch = TapWatch(result.judged.limits)
    seen = watch._seen(result.judged, [round(t * 1e9) for t in TAPS])
    low = replace(seen, figures=(GoneFigures(80, 0.0, 10.6, 12.4),) * 3)
    assert across(low).verdict == "fail"
    enough = replace(seen, figures=(GoneFigures(80, 0.0, 11.2, 12.4),) * 3)
    assert across(enough).verdict == "pass"


def test_a_current_that_comes_back_to_half_fails_the_return(tapped, trace, script, check_of):
    legs, events = script(THREE[:2], end=24.0)
    legs += [
        trace.Leg(28.1, *trace.DEAD),
        trace.Leg(31.0, 12.2, 6.0, 6.0),
        trace.Leg(50.0, 12.0, 0.16, 13.6),
    ]
    evidence = tapped(legs[:-4] + legs[-3:], (20.0, 28.0), events=events).evidence
    assert check_of(evidence, "return").verdict == "fail"


def test_a_short_base_line_is_said_with_what_there_is(tapped, script, check_of):
    evidence = proper(tapped, script, end=40.0, events=[])
    check = check_of(evidence, "base line")
    assert check.verdict == "can't tell"
    assert "12.0 s before and 4.8 s after" in check.words


def test_the_base_line_ends_where_the_leads_are_moved(tapped, script, check_of):
    evidence = proper(tapped, script, leads=(6.0, 14.0))
    assert "4.0 s before" in check_of(evidence, "base line").words


def test_leads_that_move_the_trace_fail_the_control(tapped, trace, script, check_of):
    legs, events = script(THREE, end=50.0)
    legs[1:2] = [
        trace.Leg(14.1, 12.0, 0.16, 13.6),
        trace.Leg(14.6, 9.5, 0.16, 13.6),
        trace.Leg(16.0, 12.0, 0.16, 13.6),
    ]
    evidence = tapped(legs, TAPS, events=events, leads=(14.0,)).evidence
    assert check_of(evidence, "leads moved first").verdict == "fail"


def test_leads_moved_while_the_fan_stands_can_be_the_control_too(tapped, script, check_of):
    evidence = proper(tapped, script, [(2.0, 20.1), *THREE[1:]], leads=(14.0,))
    assert check_of(evidence, "leads moved first").verdict == "pass"


@pytest.mark.parametrize("leads", [(), (37.0,)])
def test_a_control_that_lacks_or_comes_late_leaves_it_open(tapped, script, check_of, leads):
    evidence = proper(tapped, script, leads=leads)
    assert check_of(evidence, "leads moved first").verdict == "can't tell"


def test_a_plug_that_moves_the_trace_is_told_before_the_motor(tapped, script, check_of):
    legs, events = script([*THREE, (41.0, 42.0)], end=60.0)
    events.append(Event(round(41.1e9), EventKind.WIGGLE, "motor plug"))
    evidence = tapped(legs, TAPS, events=events).evidence
    check = check_of(evidence, "connectors moved")
    assert check.verdict == "fail"
    assert "motor plug at 41.1 s" in check.words


def test_a_plug_that_moves_nothing_passes(tapped, script, check_of):
    more = [Event(round(44e9), EventKind.WIGGLE, "relay")]
    evidence = proper(tapped, script, events=more)
    assert check_of(evidence, "connectors moved").verdict == "pass"


@pytest.mark.parametrize(
    ("zeros", "verdict"),
    [
        ([(0.5, 0.01), (49.0, 0.05)], "pass"),
        ([(0.5, 0.01), (49.0, 0.22)], "fail"),
        ([(0.5, 0.01)], "can't tell"),
        ([(49.0, 0.01)], "can't tell"),
        ([(21.0, 0.01), (30.0, 0.01)], "can't tell"),
        ([], "can't tell"),
    ],
)
def test_the_clamps_zero_is_wanted_before_and_after(tapped, script, check_of, zeros, verdict):
    evidence = proper(tapped, script, events=[zero(*one) for one in zeros])
    assert check_of(evidence, "clamp zero").verdict == verdict


def test_a_zero_of_another_channel_is_none(tapped, script, check_of):
    others = [zero(0.5, 0.0, channel="feed"), zero(0.6, 0.0, source="other"), zero(49.0, 0.0)]
    evidence = proper(tapped, script, events=others)
    assert check_of(evidence, "clamp zero").verdict == "can't tell"


def test_a_grave_doubt_about_a_meter_keeps_the_form_open(tapped, script, check_of):
    doubt = Doubt(DoubtKind.STUCK, "The feed repeats one reading.", round(18e9), round(30e9))
    evidence = proper(tapped, script, doubts=(doubt,))
    assert check_of(evidence, "meters").words == "The feed repeats one reading."
    assert evidence.accepted == "can't tell"
    elsewhere = Doubt(DoubtKind.STUCK, "As above.", round(44e9), round(46e9))
    assert proper(tapped, script, doubts=(elsewhere,)).accepted == "pass"


def test_the_time_with_the_fan_off_is_not_part_of_a_motor_dead_from_the_start(
    tapped, script, check_of
):
    evidence = proper(tapped, script, [(2.0, 20.1), *THREE[1:]])
    assert evidence.across_v == pytest.approx(12.38, abs=0.02)
    assert check_of(evidence, "voltage across the motor").verdict == "pass"


def _with_gap(tapped, trace, script, end_s):
    """Give the test with readings that are missing while the leads are moved."""
    nothing = (float("nan"), float("nan"), float("nan"))
    legs, events = script(THREE, end=50.0)
    legs[1:2] = [
        trace.Leg(14.1, 12.0, 0.16, 13.6),
        trace.Leg(end_s, *nothing),
        trace.Leg(16.0, 12.0, 0.16, 13.6),
    ]
    tested = tapped(legs, TAPS, events=events, leads=(14.0,))
    assert any(span.kind is SpanKind.NO_DATA for span in tested.review.spans)
    return tested.evidence


def test_a_gap_in_the_readings_is_no_trace_that_moved(tapped, trace, script, check_of):
    """A lost line or two while the leads are moved must not refuse a good claim."""
    short = check_of(_with_gap(tapped, trace, script, 14.3), "leads moved first")
    assert short.verdict == "pass", short


def test_leads_moved_while_nothing_was_read_prove_nothing(tapped, trace, script, check_of):
    long = check_of(_with_gap(tapped, trace, script, 14.9), "leads moved first")
    assert long.verdict == "can't tell"
    assert "nothing was read" in long.words
