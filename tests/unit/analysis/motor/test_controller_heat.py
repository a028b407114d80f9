"""Heat in a linear controller: its side found, its size with uncertainty, its limit."""

from collections import namedtuple
from dataclasses import replace

import pytest

from meterlog.analysis.motor import controller_heat, motor_fit
from meterlog.model import (
    Accuracy,
    Channel,
    Controller,
    Doubt,
    DoubtKind,
    FindingKind,
    Instrument,
    Limits,
    Quantity,
    Role,
    Sensor,
    SensorKind,
    Verdict,
)

Level = namedtuple("Level", "mean sd n")
GOOD = Accuracy(0.5, 1.0, 0.01)
FOUR_SPEEDS = ((5.6, 3.8), (7.2, 5.7), (9.3, 8.9), (12.8, 13.4))
LINEAR = Limits(controller=Controller("linear", 40.0))


def _channels(*roles):
    return Instrument("m", "p", "u", tuple(
        Channel(
            role.value,
            Quantity.CURRENT if role is Role.MOTOR_CURRENT else Quantity.VOLTAGE,
            role,
            accuracy=GOOD,
        )
        for role in roles
    ))  # fmt: skip


ALL_LOW = _channels(Role.MOTOR_FEED, Role.MOTOR_RETURN, Role.MOTOR_CURRENT, Role.CONTROLLER_GROUND)


@pytest.fixture
def low_side(step_at, judged_of):
    """13 V at the feed; the controller in the return holds the rest back."""

    def make(points, limits=LINEAR, instrument=ALL_LOW):
        steps = [
            step_at(k, volts, amps, steady_feed_v=13.0, steady_back_v=13.0 - volts)
            for k, (volts, amps) in enumerate(points, 1)
        ]
        return replace(judged_of(steps, limits), instruments=(instrument,))

    return make


def test_heat_is_the_voltage_of_the_return_times_the_current(low_side):
    heat, _, words = controller_heat(low_side([(4.0, 3.0), (12.5, 15.0)]))
    assert words == ""
    assert [one.drop_v for one in heat] == pytest.approx([9.0, 0.5])
    assert [one.heat_w.value for one in heat] == pytest.approx([27.0, 7.5])
    assert [one.motor_w.value for one in heat] == pytest.approx([12.0, 187.5])
    assert heat[0].efficiency == pytest.approx(12.0 / 39.0)
    assert heat[0].heat_w.unit == "W"


@pytest.mark.parametrize(("top", "speeds"), [(60.0, [1, 2]), (12.0, [1]), (2.0, [])])
def test_no_heat_is_told_of_more_current_than_the_clamp_is_stated_for(low_side, top, speeds):
    *volts, amps, ground = ALL_LOW.channels
    clamp = Sensor(SensorKind.CLAMP, 100.0, own_percent=1.0, own_floor=0.1, own_top=top)
    behind = replace(ALL_LOW, channels=(*volts, replace(amps, sensor=clamp), ground))
    heat, findings, said = controller_heat(low_side([(4.0, 3.0), (12.5, 15.0)], instrument=behind))
    assert [one.speed for one in heat] == speeds
    past = "more current than the meter or the clamp is stated for"
    # A speed that ran is held against the limit, or said not to be.
    assert [past in one.statement for one in findings] == {
        60.0: [False, False],
        12.0: [False, True],
        2.0: [True, True],
    }[top]
    assert all(one.verdict is Verdict.CANT_TELL for one in findings if past in one.statement)
    assert (past in said) is (not speeds)


def test_its_uncertainty_holds_both_factors(low_side):
    (heat, *_), _, _ = controller_heat(low_side([(4.0, 3.0), (12.5, 15.0)]))
    judged = low_side([(4.0, 3.0)])
    of_current = judged.steps[0].current.combined_u * 9.0
    of_volts = (9.0 * 0.005 + 0.01) / 3**0.5 * 3.0
    assert heat.heat_w.combined_u == pytest.approx((of_current**2 + of_volts**2) ** 0.5, rel=1e-2)


def test_the_controllers_own_ground_is_taken_off(low_side):
    def ground(role, start_ns, end_ns):
        return Level(0.5, 0.01, 100) if role is Role.CONTROLLER_GROUND else None

    heat, findings, _ = controller_heat(low_side([(4.0, 3.0), (12.0, 15.0)]), ground)
    assert heat[0].drop_v == pytest.approx(8.5)
    assert "controller ground" in findings[0].statement
    bare, told, _ = controller_heat(low_side([(4.0, 3.0), (12.0, 15.0)]))
    assert bare[0].drop_v == pytest.approx(9.0)
    assert "ground wire included" in told[0].statement


def test_each_speed_has_its_verdict(low_side):
    heat, findings, _ = controller_heat(low_side([(4.0, 3.0), (8.0, 10.0), (9.0, 10.0)]))
    assert [one.verdict for one in heat] == [Verdict.PASS, Verdict.FAIL, Verdict.CANT_TELL]
    assert [one.kind for one in findings] == [FindingKind.CONTROLLER_HEAT] * 3
    assert [one.verdict for one in findings] == [one.verdict for one in heat]
    assert findings[1].limit == 40.0
    assert findings[1].probability < 0.01 < 0.3 < findings[2].probability < 0.7
    assert "allowed up to 40 W: fail" in findings[1].statement


def test_without_a_limit_there_is_heat_and_no_finding(low_side):
    limits = Limits(controller=Controller("linear"))
    heat, findings, _ = controller_heat(low_side([(4.0, 3.0), (12.0, 15.0)], limits))
    assert len(heat) == 2
    assert heat[0].verdict is None
    assert findings == ()


@pytest.fixture
def high_side(step_at, judged_of):
    def make(roles, battery_v=13.0):
        steps = [
            step_at(k, v, a, steady_feed_v=v + 0.1, steady_back_v=0.1, steady_battery_v=battery_v)
            for k, (v, a) in enumerate(((4.0, 3.0), (12.0, 15.0)), 1)
        ]
        return replace(judged_of(steps, LINEAR), instruments=(_channels(*roles),))

    return make


_HIGH = (Role.BATTERY, Role.MOTOR_FEED, Role.MOTOR_RETURN, Role.MOTOR_CURRENT)


def test_a_controller_in_the_feed_is_found_by_what_it_holds_back(high_side):
    heat, findings, _ = controller_heat(high_side(_HIGH))
    assert heat[0].drop_v == pytest.approx(13.0 - 4.1)
    assert "battery to motor feed" in findings[0].statement
    assert "fuse, relay and wires included" in findings[0].statement


def test_in_the_feed_the_relay_output_goes_before_the_battery(high_side):
    def relay(role, start_ns, end_ns):
        return Level(12.6, 0.01, 50) if role is Role.RELAY_OUT else None

    heat, _, _ = controller_heat(high_side((*_HIGH, Role.RELAY_OUT)), relay)
    assert heat[0].drop_v == pytest.approx(12.6 - 4.1)


def test_a_side_that_was_not_read_is_never_passed(high_side):
    """The return is near nothing: that is no proof of a cool controller, it may sit in the feed."""
    heat, findings, words = controller_heat(high_side(_HIGH, battery_v=None))
    assert heat == ()
    assert "relay output or battery" in words
    assert [one.verdict for one in findings] == [Verdict.CANT_TELL]
    assert findings[0].speed is None


@pytest.mark.parametrize(("kind", "word"), [("resistors", "resistor pack"), ("pulsed", "pulsed")])
def test_another_kind_of_controller_is_refused_with_words(low_side, kind, word):
    limits = Limits(controller=Controller(kind, 40.0))
    heat, findings, words = controller_heat(low_side([(4.0, 3.0), (12.0, 15.0)], limits))
    assert heat == ()
    assert word in words
    assert [one.verdict for one in findings] == [Verdict.CANT_TELL]
    silent = Limits(controller=Controller(kind))
    assert controller_heat(low_side([(4.0, 3.0)], silent))[1] == ()


def test_where_nobody_said_what_controller_there_is_nothing_is_said(low_side):
    assert controller_heat(low_side([(4.0, 3.0)], Limits())) == ((), (), "")


def test_a_doubted_current_makes_no_heat(low_side):
    judged = low_side([(4.0, 3.0), (12.0, 15.0)])
    doubted = replace(judged, doubts=(Doubt(DoubtKind.DECADE, "Off by ten."),))
    heat, findings, _ = controller_heat(doubted)
    assert heat == ()
    assert {one.verdict for one in findings} == {Verdict.CANT_TELL}
    assert [one.statement for one in findings] == [
        f"Speed {k} (from {at} s): heat in the controller: can't tell;"
        " the current may be off by a factor of ten."
        for k, at in ((1, "10.0"), (2, "20.0"))
    ]
    assert [one.start_ns for one in findings] == [one.start_ns for one in judged.steps]
    nothing_ran = replace(doubted, steps=())
    assert "no steady running" in controller_heat(nothing_ran)[1][0].statement


def test_one_speed_of_which_nothing_is_told_is_named_beside_the_others(low_side):
    judged = low_side(FOUR_SPEEDS)
    second = judged.steps[1]
    stuck = Doubt(DoubtKind.STUCK, "Stuck.", start_ns=second.start_ns + 1, end_ns=second.end_ns)
    heat, findings, said = controller_heat(replace(judged, doubts=(stuck,)))
    assert [one.speed for one in heat] == [1, 3, 4]
    assert [one.speed for one in findings] == [1, 2, 3, 4]
    assert findings[1].verdict is Verdict.CANT_TELL
    assert "a meter repeated one reading meanwhile" in findings[1].statement
    assert said == ""


def test_off_and_next_to_no_current_make_no_heat(low_side):
    judged = low_side([(4.0, 3.0), (12.0, 15.0)])
    off = replace(judged.steps[0], speed=0)
    heat, _, _ = controller_heat(replace(judged, steps=(off, judged.steps[1])))
    assert [one.speed for one in heat] == []
    # One speed alone, at which nothing is held back, does not show the controller's side.


def test_all_together_gives_the_fit_the_heat_and_the_findings(low_side, healthy):
    points = [(v, healthy.amps_at(v)) for v in (4.0, 7.0, 12.5)]
    judged = low_side(points)
    fit, (heat, findings, _) = motor_fit(judged), controller_heat(judged)
    assert fit.refusal == ""
    assert len(heat) == len(findings) == 3


def test_a_clamp_of_which_nobody_said_how_good_it_is_passes_no_heat_beside_its_limit(low_side):
    """2 % + 0.3 A, as usual clamps have: of 6 A that is 7 %, more than lies between 43 and 45 W."""
    judged = low_side(FOUR_SPEEDS)
    (first, *_), _, _ = controller_heat(judged)
    limit = first.heat_w.value + 1.5 * first.heat_w.expanded
    limits = replace(judged.limits, controller=replace(judged.limits.controller, max_heat_w=limit))
    judged = replace(judged, limits=limits)
    assert controller_heat(judged)[0][0].verdict == "pass"
    (meter,) = judged.instruments
    clamp = Sensor(SensorKind.CLAMP, 100.0, words="10 mV/A")
    channels = tuple(
        replace(one, sensor=clamp) if one.role is Role.MOTOR_CURRENT else one
        for one in meter.channels
    )
    behind = replace(judged, instruments=(replace(meter, channels=channels),))
    heat, findings, _ = controller_heat(behind)
    assert heat[0].verdict == "can't tell"
    assert "could turn the verdict over" in findings[0].statement


def test_a_step_of_several_levels_makes_no_heat(low_side):
    """Found changes may miss some that dropouts hide: 28 ± 56 W is no figure."""
    judged = low_side(FOUR_SPEEDS)
    mixed = tuple(
        replace(one, steady_sd_a=0.3 * one.steady_mean_a, steady_lag1_a=0.99)
        if one.speed == 2
        else one
        for one in judged.steps
    )
    whole = [one.speed for one in controller_heat(judged)[0]]
    heat, findings, _ = controller_heat(replace(judged, steps=mixed))
    assert [one.speed for one in heat] == [speed for speed in whole if speed != 2]
    assert "its current was not steady" in findings[1].statement


def without_volts(step):
    return replace(
        step, voltage=None, steady_mean_v=None, steady_feed_v=None, steady_back_v=None,
        steady_volts_n=0,
    )  # fmt: skip


def test_a_speed_of_which_no_voltage_was_read_is_not_passed_over_in_silence(low_side):
    """The middle speed is the hottest: beside three that pass it must not be missed."""
    judged = low_side(FOUR_SPEEDS)
    blank = replace(
        judged, steps=tuple(without_volts(one) if one.speed == 2 else one for one in judged.steps)
    )
    heat, findings, said = controller_heat(blank)
    assert ([one.speed for one in heat], said) == ([1, 3, 4], "")
    assert [one.speed for one in findings] == [1, 2, 3, 4]
    assert (findings[1].verdict, findings[1].limit) == (Verdict.CANT_TELL, 40.0)
    assert findings[1].statement == (
        "Speed 2 (from 20.0 s): heat in the controller: can't tell;"
        " the voltage across the motor was not read."
    )


def test_a_speed_without_its_supply_is_named_where_the_controller_sits_in_the_feed(high_side):
    judged = high_side(_HIGH)
    first, second = judged.steps
    blank = replace(judged, steps=(first, replace(second, steady_battery_v=None)))
    heat, findings, _ = controller_heat(blank)
    assert [one.speed for one in heat] == [1]
    assert [one.verdict for one in findings] == [Verdict.PASS, Verdict.CANT_TELL]
    assert "neither its relay output nor its battery voltage was read" in findings[1].statement


@pytest.mark.parametrize(
    ("mean_a", "words"),
    [(9.5, "did not run steadily for long enough"), (None, "its current was not read"), (0.1, "")],
)
def test_a_held_rotor_that_was_switched_off_soon_is_not_passed_over(low_side, mean_a, words):
    """It heats the controller more than anything; where nothing flowed nothing was heated."""
    judged = low_side(FOUR_SPEEDS)
    brief = replace(
        without_volts(judged.steps[1]), steady_n=0, steady_mean_a=None, current=None, mean_a=mean_a
    )
    _, findings, _ = controller_heat(
        replace(judged, steps=(judged.steps[0], brief, *judged.steps[2:]))
    )
    told = [one for one in findings if one.speed == 2]
    assert [words in one.statement for one in told] == ([True] if words else [])
    assert all(one.verdict is Verdict.CANT_TELL for one in told)


def test_without_a_channel_for_the_voltage_that_is_said_once(low_side):
    bare = _channels(Role.MOTOR_CURRENT)
    judged = low_side(FOUR_SPEEDS, instrument=bare)
    judged = replace(judged, steps=tuple(without_volts(one) for one in judged.steps))
    heat, (finding,), said = controller_heat(judged)
    assert heat == ()
    assert "read motor feed and motor return" in finding.statement
    assert "read motor feed and motor return" in said


def test_leads_known_to_be_swapped_tell_no_heat(low_side):
    """What reads as the return is the feed: some 12.5 V, whatever the controller holds back."""
    judged = low_side([(4.0, 3.0), (8.0, 5.0)])
    turned = Doubt(DoubtKind.SIGN, "Negative.", 0, judged.steps[-1].end_ns, role=Role.MOTOR_FEED)
    heat, findings, _ = controller_heat(replace(judged, doubts=(turned,)))
    assert heat == ()
    assert [one.verdict for one in findings] == [Verdict.CANT_TELL] * 2
    assert all("its leads are the wrong way round" in one.statement for one in findings)
    # Of a clamp that is on the wrong way round the size is judged.
    clamp = replace(turned, role=Role.MOTOR_CURRENT)
    assert len(controller_heat(replace(judged, doubts=(clamp,)))[0]) == 2
