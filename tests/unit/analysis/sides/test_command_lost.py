"""A command that went first is told from one that stayed, came after, or asked for more."""

from dataclasses import replace

import pytest

from meterlog.model import SpanKind, Verdict

CHANNELS = ("feed", "return", "command", "current")


def lost_at(panel, command, start=10.0, stop=14.0, high=8.0, off=0.2):
    """Off, high from 2 s, no current from 10 s to 14 s; ``command`` reads so from where it says."""
    on = panel.HIGH | {"command": high}
    gone = on | {"current": 0.0, "feed": 12.4, "return": lambda t: 12.4 - panel.coasting(t)}
    at, value = command
    legs = [(2.0, panel.OFF | {"command": off})]
    if at < start:
        legs += [(at, on), (start, on | {"command": value}), (stop, gone | {"command": value})]
    elif at < stop:
        legs += [(start, on), (at, gone), (stop, gone | {"command": value})]
    else:
        legs += [(start, on), (stop, gone)]
    return [*legs, (20.0, on)]


def told(panel, legs, events=None, **how):
    events = events or [panel.trace.speed(0.0, 0), panel.trace.speed(2.0, 4)]
    spans, findings, _, _ = panel.told(CHANNELS, legs, events, **how)
    (lost,) = [s for s in spans if s.kind not in (SpanKind.OFF, SpanKind.RUNNING)]
    (finding,) = [f for f in findings if f.kind.value == lost.kind.value]
    assert finding.statement.endswith(".")
    return lost, finding


@pytest.mark.parametrize("interval_s", [0.005, 0.05, 0.1, 0.33])
@pytest.mark.parametrize("before_s", [0.0, 0.6])
def test_a_command_that_goes_with_the_current_or_ahead_of_it_is_lost(panel, interval_s, before_s):
    legs = lost_at(panel, (10.0 - before_s, 0.2))
    lost, finding = told(panel, legs, interval_s=interval_s)
    assert lost.kind is SpanKind.COMMAND_LOST
    assert finding.verdict is Verdict.FAIL
    assert "8.00 V to 0.2" in finding.statement
    if before_s and interval_s < 0.3:
        ahead = float(finding.statement.partition(" s before the current")[0].rpartition(" ")[2])
        assert ahead == pytest.approx(before_s, abs=interval_s + 0.01)
    else:
        assert ("at the same instant" in finding.statement) or before_s


@pytest.mark.parametrize(("high", "off"), [(8.0, 0.2), (2.0, 12.0), (1.4, 0.1), (94.0, 5.0)])
def test_which_way_off_is_comes_from_the_recording_and_not_from_the_program(panel, high, off):
    legs = lost_at(panel, (10.0, off), high=high, off=off)
    lost, _ = told(panel, legs)
    assert lost.kind is SpanKind.COMMAND_LOST


def test_a_command_that_goes_after_the_current_is_not_what_took_it(panel):
    lost, finding = told(panel, lost_at(panel, (11.0, 0.2)))
    assert lost.kind is SpanKind.GROUND_LOST
    assert "only 1.0" in finding.statement


def test_a_command_that_stayed_is_said_to_have_stayed(panel):
    lost, finding = told(panel, lost_at(panel, (14.0, 0.2)))
    assert lost.kind is SpanKind.GROUND_LOST
    assert "the command stayed at 8.00 V" in finding.statement
    assert "the command stayed" in lost.detail


def test_a_head_that_pushes_harder_because_the_motor_stands_has_not_lost_its_command(panel):
    lost, finding = told(panel, lost_at(panel, (10.0, 11.5)))
    assert lost.kind is SpanKind.GROUND_LOST
    assert "not towards off" in finding.statement


def test_a_ripple_on_the_command_is_no_loss_of_it(panel):
    lost, _ = told(panel, lost_at(panel, (10.0, 7.0)))
    assert lost.kind is SpanKind.GROUND_LOST


@pytest.mark.parametrize(("interval_s", "kind"), [(0.02, "command-lost"), (0.33, "ground-lost")])
def test_without_a_reading_at_off_the_order_of_the_two_must_be_plain(panel, interval_s, kind):
    legs = lost_at(panel, (10.0, 0.2))[1:]
    events = [panel.trace.speed(0.0, 4)]
    lost, finding = told(panel, legs, events, interval_s=interval_s)
    assert lost.kind.value == kind
    if kind == "ground-lost":
        assert "recorded with the fan off would settle it" in finding.statement


def test_a_command_that_never_came_is_lost_when_it_came_another_time(panel):
    waits = panel.OFF | {"return": 12.4}
    legs = [(2.0, panel.OFF), (6.0, panel.HIGH), (8.0, panel.OFF), (12.0, waits)]
    events = [panel.trace.speed(t, s) for t, s in ((0.0, 0), (2.0, 4), (6.0, 0), (8.0, 4))]
    lost, finding = told(panel, legs, events)
    assert lost.kind is SpanKind.COMMAND_LOST
    assert "as when off, though speed 4 was commanded" in finding.statement


def test_a_command_wire_that_never_moves_proves_nothing(panel):
    dumb = {"command": 0.2}
    legs = [
        (2.0, panel.OFF),
        (6.0, panel.HIGH | dumb),
        (8.0, panel.OFF),
        (12.0, panel.OFF | {"return": 12.4}),
    ]
    events = [panel.trace.speed(t, s) for t, s in ((0.0, 0), (2.0, 4), (6.0, 0), (8.0, 4))]
    lost, finding = told(panel, legs, events)
    assert lost.kind is SpanKind.GROUND_LOST
    assert "never answered" in finding.statement


def test_a_dead_motor_is_dead_whatever_the_command_does(panel):
    gone = panel.HIGH | {"current": 0.0, "feed": 12.4, "return": 0.02, "command": 0.2}
    lost, _ = told(panel, [(2.0, panel.OFF), (10.0, panel.HIGH), (14.0, gone), (20.0, panel.HIGH)])
    assert lost.kind is SpanKind.DEAD


def test_a_supply_that_takes_the_command_with_it_is_the_feeds_loss(panel):
    channels = ("feed", "return", "battery", "command", "current")
    gone = panel.HIGH | {"current": 0.0, "feed": panel.coasting, "return": 0.0}
    gone |= {"battery": 0.0, "command": 0.2}
    legs = [(2.0, panel.OFF), (10.0, panel.HIGH), (14.0, gone), (20.0, panel.HIGH)]
    events = [panel.trace.speed(0.0, 0), panel.trace.speed(2.0, 4)]
    spans, findings, _, _ = panel.told(channels, legs, events)
    assert SpanKind.FEED_LOST in {s.kind for s in spans}
    assert any("the supply itself went" in f.statement for f in findings)


@pytest.mark.parametrize(
    ("time_u_s", "late_s", "kind"),
    [(0.01, 0.5, "ground-lost"), (0.3, 0.5, "command-lost"), (None, 0.5, "command-lost")],
)
def test_with_two_meters_the_order_is_told_within_what_their_times_agree_to(
    panel, time_u_s, late_s, kind
):
    own = ("feed", "return", "current")
    legs = lost_at(panel, (10.0 + late_s, 0.2))
    meters = [
        replace(panel.instrument(own), time_u_s=time_u_s),
        replace(panel.instrument(("command",), key="head"), time_u_s=time_u_s),
    ]
    events = [panel.trace.speed(0.0, 0), panel.trace.speed(2.0, 4)]
    blocks = [panel.block(own, legs), panel.block(("command",), legs, key="head", phase_s=0.01)]
    spans, _, _, _ = panel.judge(meters, [*events, *blocks])
    (lost,) = [s for s in spans if s.kind not in (SpanKind.OFF, SpanKind.RUNNING)]
    assert lost.kind.value == kind
