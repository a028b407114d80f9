"""Voltage drops at full speed, drag over several speeds, and what moves within one step."""

from dataclasses import replace

import numpy as np
import pytest

from meterlog.analysis.budgets import budget
from meterlog.analysis.drag import drag_finding
from meterlog.analysis.judged import Judged
from meterlog.model import (
    Channel,
    Doubt,
    DoubtKind,
    Finding,
    FindingKind,
    Instrument,
    Quantity,
    Role,
    Sensor,
    SensorKind,
    Shape,
    Source,
    SpeedLimits,
    Step,
    Verdict,
)

CHANNELS = ("feed", "return", "battery", "ground", "current")


@pytest.fixture
def lim(trace):
    return replace(trace.limits(), max_feed_drop_v=0.5, max_ground_drop_v=0.2)


def drops(panel, lim, on, channels=CHANNELS, speed=4, **how):
    legs = [(2.0, panel.OFF), (20.0, on)]
    events = [panel.trace.speed(0.0, 0), panel.trace.speed(2.0, speed)]
    _, _, found, _ = panel.told(channels, legs, events, lim, **how)
    return {f.kind: f for f in found}


def test_a_feed_that_drops_more_than_allowed_fails_with_value_limit_and_uncertainty(panel, lim):
    found = drops(panel, lim, panel.HIGH | {"feed": 10.5, "current": 10.7})
    feed = found[FindingKind.RESISTIVE_FEED]
    assert feed.verdict is Verdict.FAIL
    assert feed.value == pytest.approx(1.9, abs=0.01)
    assert (feed.limit, feed.unit, feed.speed) == (0.5, "V", 4)
    # One meter: the gain of 0.5 % is common to both and counts on 1.9 V only, digits on each.
    digits = np.hypot(*(np.sqrt((v * 0.005 + 0.02) ** 2 - (v * 0.005) ** 2) for v in (12.4, 10.5)))
    rest = np.hypot(digits, 1.9 * 0.005) / np.sqrt(3.0)
    assert feed.expanded_uncertainty == pytest.approx(2.0 * rest, rel=0.2)


@pytest.mark.parametrize(("top", "verdict"), [(60.0, Verdict.FAIL), (40.0, Verdict.CANT_TELL)])
def test_a_full_clamp_blames_no_wire_for_a_current_it_does_not_show(panel, lim, top, verdict):
    """45 A read, of a clamp of 40 A: perhaps 80 A flow, which drop 1.45 V on a sound wire."""
    meter = panel.instrument(CHANNELS)
    *volts, amps = meter.channels
    clamp = Sensor(SensorKind.CLAMP, 100.0, own_percent=1.0, own_floor=0.1, own_top=top)
    meter = replace(meter, channels=(*volts, replace(amps, sensor=clamp)))
    lim = replace(lim, speeds={4: SpeedLimits(10.0, 42.0)}, locked_current_a=90.0)
    on = panel.HIGH | {"current": 45.0, "feed": 10.95}
    block = panel.block(CHANNELS, [(2.0, panel.OFF), (20.0, on)])
    events = [panel.trace.speed(0.0, 0), panel.trace.speed(2.0, 4)]
    _, _, found, _ = panel.judge([meter], [*events, block], lim)
    (feed,) = (one for one in found if one.kind is FindingKind.RESISTIVE_FEED)
    assert feed.verdict is verdict, feed.statement
    assert ("stated for" in feed.statement) is (verdict is Verdict.CANT_TELL)


def test_volts_beyond_their_meters_range_make_no_drop(panel, lim):
    meter = panel.instrument(CHANNELS)
    feed, *others = meter.channels
    short = Sensor(own_percent=0.5, own_floor=0.01, own_top=9.0)
    meter = replace(meter, channels=(replace(feed, sensor=short), *others))
    block = panel.block(CHANNELS, [(2.0, panel.OFF), (20.0, panel.HIGH | {"feed": 10.5})])
    events = [panel.trace.speed(0.0, 0), panel.trace.speed(2.0, 4)]
    _, _, found, _ = panel.judge([meter], [*events, block], lim)
    (drop,) = (one for one in found if one.kind is FindingKind.RESISTIVE_FEED)
    assert drop.verdict is Verdict.CANT_TELL
    assert "more than the meter or the sensor is stated for" in drop.statement


def test_a_drop_too_near_its_limit_cant_be_told_by_subtracting_and_says_what_would(panel, lim):
    found = drops(panel, lim, panel.HIGH | {"feed": 11.85})
    feed = found[FindingKind.RESISTIVE_FEED]
    assert feed.verdict is Verdict.CANT_TELL
    assert "two readings of about 12 V subtracted" in feed.statement
    assert "(drop) would settle it" in feed.statement


def test_a_channel_straight_across_the_part_settles_what_subtracting_could_not(panel, lim):
    channels = (*CHANNELS, "drop")
    found = drops(panel, lim, panel.HIGH | {"feed": 11.88, "drop": 0.55}, channels)
    assert found[FindingKind.RESISTIVE_FEED].verdict is Verdict.FAIL
    assert "straight across" in found[FindingKind.RESISTIVE_FEED].statement
    found = drops(panel, lim, panel.HIGH | {"drop": 0.55}, ("feed", "current", "drop:ground"))
    assert found[FindingKind.RESISTIVE_GROUND].value == pytest.approx(0.55, abs=0.01)


def test_the_ground_side_is_the_controllers_ground_where_it_is_read(panel, lim):
    ground = drops(panel, lim, panel.HIGH | {"ground": 0.56})[FindingKind.RESISTIVE_GROUND]
    assert (ground.verdict, round(ground.value, 2)) == (Verdict.FAIL, 0.56)
    assert "controller ground" in ground.statement
    through = drops(panel, lim, panel.HIGH | {"return": 0.6}, ("feed", "return", "current"))
    assert "controller included" in through[FindingKind.RESISTIVE_GROUND].statement


def test_a_held_rotors_current_does_not_condemn_a_sound_ground(panel, lim):
    held = panel.HIGH | {"current": 55.0, "feed": 10.7, "ground": 0.5, "battery": 12.1}
    found = drops(panel, lim, held)
    assert found[FindingKind.RESISTIVE_GROUND].limit == pytest.approx(0.2 * 55.0 / 18.0, rel=0.01)
    assert found[FindingKind.RESISTIVE_GROUND].verdict is not Verdict.FAIL
    worse = drops(panel, lim, held | {"ground": 2.5})[FindingKind.RESISTIVE_GROUND]
    assert worse.verdict is Verdict.FAIL
    assert "times the current it may draw" in worse.statement


def test_sound_drops_pass(panel, lim):
    found = drops(panel, lim, panel.HIGH | {"feed": 12.2, "ground": 0.05})
    assert {f.verdict for f in found.values()} == {Verdict.PASS}


def test_drops_are_judged_at_full_speed_only_and_only_against_a_limit(panel, lim, trace):
    assert drops(panel, lim, panel.LOW | {"feed": 11.0}, speed=1) == {}
    assert drops(panel, trace.limits(), panel.HIGH | {"feed": 10.5, "current": 10.7}) == {}


@pytest.mark.parametrize(
    ("feed_v", "verdict"),
    [(11.75, Verdict.CANT_TELL), (12.05, Verdict.CANT_TELL), (10.5, Verdict.FAIL)],
)
def test_a_meter_of_unknown_accuracy_proves_no_drop_near_the_limit(panel, lim, feed_v, verdict):
    channels = ("feed", "battery", "current")
    meter = panel.instrument(channels)
    blind = replace(meter, channels=tuple(replace(one, accuracy=None) for one in meter.channels))
    legs = [(2.0, panel.OFF), (20.0, panel.HIGH | {"feed": feed_v, "current": 10.7})]
    events = [panel.trace.speed(0.0, 0), panel.trace.speed(2.0, 4)]
    _, _, (found,), _ = panel.judge([blind], [*events, panel.block(channels, legs)], lim)
    assert (found.kind, found.verdict) == (FindingKind.RESISTIVE_FEED, verdict)


def test_several_falls_of_one_step_are_one_finding_with_their_count(panel):
    fell = panel.HIGH | {"feed": 10.5, "current": 10.7}
    legs, at = [(2.0, panel.OFF), (8.0, panel.HIGH)], 8.0
    for _ in range(3):
        legs += [(at + 1.0, fell), (at + 3.0, panel.HIGH)]
        at += 3.0
    events = [panel.trace.speed(0.0, 0), panel.trace.speed(2.0, 4)]
    _, _, found, _ = panel.told(CHANNELS, legs, events)
    (finding,) = found
    assert finding.kind is FindingKind.RESISTIVE_FEED
    assert "3 times, 3." in finding.statement
    assert finding.value == pytest.approx(1.5, abs=0.02)


@pytest.mark.parametrize("interval_s", [0.01, 0.33])
def test_a_fall_that_stays_to_the_steps_end_says_so(panel, interval_s):
    legs = [
        (2.0, panel.OFF),
        (10.0, panel.HIGH),
        (20.0, panel.HIGH | {"feed": 10.5, "current": 10.7}),
    ]
    events = [panel.trace.speed(0.0, 0), panel.trace.speed(2.0, 4)]
    _, _, found, _ = panel.told(CHANNELS, legs, events, interval_s=interval_s)
    (finding,) = found
    assert (finding.kind, finding.verdict) == (FindingKind.RESISTIVE_FEED, Verdict.FAIL)
    assert "was still so at the step's end" in finding.statement


def test_noise_drift_and_a_late_hand_are_no_shift(panel):
    panel.noise = 0.4
    slow = panel.HIGH | {"current": lambda t: 13.6 - 0.04 * t}
    legs = [(2.0, panel.OFF), (19.2, slow), (20.0, panel.LOW), (26.0, panel.LOW)]
    events = [panel.trace.speed(t, s) for t, s in ((0.0, 0), (2.0, 4), (19.6, 1))]
    _, _, found, _ = panel.told(("feed", "return", "current"), legs, events)
    assert found == ()


# -- drag over several speeds --------------------------------------------------------------------


def step(speed, amps, volts=None, u=0.1, n=200):
    def made(value, unit):
        line = Source("invented", u, unit, shape=Shape.NORMAL)
        return budget("invented", value, unit, [line])

    return Step(
        speed,
        speed * 10_000_000_000,
        speed * 10_000_000_000 + 9_000_000_000,
        n=n,
        steady_n=n,
        current=made(amps, "A"),
        voltage=None if volts is None else made(volts, "V"),
    )


def drag(trace, *steps, doubts=()):
    return drag_finding(Judged((), trace.limits(), steps=steps, doubts=doubts))


def test_two_speeds_above_their_limits_are_drag(trace):
    found = drag(trace, step(1, 5.8, 4.1), step(4, 19.0, 11.8))
    assert (found.kind, found.verdict) == (FindingKind.DRAG, Verdict.FAIL)
    assert "speed 1 draws" in found.statement
    assert "speed 4 draws" in found.statement
    assert "stands" not in found.statement


def test_one_poor_speed_is_no_drag_and_one_beside_a_close_one_cant_be_told(trace):
    assert drag(trace, step(1, 3.6, 5.6), step(4, 19.0, 11.8)) is None
    found = drag(trace, step(1, 4.8, 3.5), step(4, 19.0, 11.8))
    assert found.verdict is Verdict.CANT_TELL


def test_a_reading_of_few_or_of_a_doubted_meter_is_no_drag(trace):
    both = step(1, 5.8, 4.1, n=3), step(4, 19.0, 11.8)
    assert drag(trace, *both) is None
    both = step(1, 5.8, 4.1), step(4, 19.0, 11.8)
    assert drag(trace, *both, doubts=(Doubt(DoubtKind.DECADE, "ten"),)) is None


def test_what_an_unstated_clamp_could_turn_over_is_no_drag(trace):
    """2 % + 0.3 A, as usual clamps have, reach the limits of 5 A and 18 A from here."""
    both = step(1, 5.2, 4.1, u=0.01), step(4, 18.4, 11.8, u=0.01)
    assert drag(trace, *both).verdict is Verdict.FAIL
    clamp = Sensor(SensorKind.CLAMP, 100.0, words="10 mV/A")
    amps = Channel("amps", Quantity.CURRENT, Role.MOTOR_CURRENT, sensor=clamp)
    meter = Instrument("meter", "test", "-", (amps,))
    assert drag_finding(Judged((meter,), trace.limits(), steps=both)) is None


@pytest.mark.parametrize("verdict", [Verdict.PASS, Verdict.CANT_TELL])
def test_a_speed_that_does_not_fail_by_its_own_verdict_is_not_above_for_drag(trace, verdict):
    """Its limits may hold at another voltage, or something else may keep it open."""

    def told(speed, so):
        start = speed * 10_000_000_000
        where = {"start_ns": start, "end_ns": start + 1, "edge_ns": 0, "speed": speed}
        figures = {"value": 9.0, "unit": "A", "expanded_uncertainty": 0.1, "limit": 5.0}
        return Finding(FindingKind.STEP_CURRENT, so, **where, **figures, statement="invented")

    steps = step(1, 5.8, 4.1), step(4, 19.0, 11.8)
    for own, expected in ((verdict, Verdict.CANT_TELL), (Verdict.FAIL, Verdict.FAIL)):
        findings = told(1, own), told(4, Verdict.FAIL)
        judged = Judged((), trace.limits(), steps=steps, findings=findings)
        assert drag_finding(judged).verdict is expected
    neither = told(1, verdict), told(4, verdict)
    assert drag_finding(Judged((), trace.limits(), steps=steps, findings=neither)) is None


def test_a_wide_uncertainty_is_no_drag(trace):
    assert drag(trace, step(1, 5.2, 4.1, u=0.3), step(4, 18.4, 11.8, u=0.5)) is None


def test_a_high_supply_or_no_voltage_at_all_leaves_drag_open(trace):
    high = drag(trace, step(1, 5.8, 6.5), step(4, 19.0, 14.4))
    assert (high.verdict, "high as well" in high.statement) == (Verdict.CANT_TELL, True)
    blind = drag(trace, step(1, 5.8), step(4, 19.0))
    assert blind.verdict is Verdict.CANT_TELL
    assert "the voltage across the motor would tell" in blind.statement


def test_drag_that_stalls_the_motor_on_low_is_told_from_a_rotor_held_for_good(trace):
    found = drag(trace, step(1, 5.5, 2.0), step(4, 19.3, 11.7))
    assert "at speed 1 the motor stands, at speed 4 it turns" in found.statement
    assert drag(trace, step(1, 5.5, 2.0), step(4, 55.0, 10.0)) is None  # locked says it all
