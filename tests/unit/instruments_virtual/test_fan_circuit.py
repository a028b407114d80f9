"""Voltages at the nodes, in every way in which the circuit can be open."""

import dataclasses

import pytest

from meterlog.instruments.virtual.commutator import CommutatorFigures
from meterlog.instruments.virtual.fan_circuit import FanCircuit
from meterlog.instruments.virtual.loose_contact import LooseContactFigures
from meterlog.instruments.virtual.scenario import dice
from meterlog.instruments.virtual.scenarios import SCENARIOS
from meterlog.model import SpanKind

STEP_S = 2.5e-4
SOUND = SCENARIOS["healthy-new"].circuit
BREAKS = LooseContactFigures(holds_s=(2.0, 2.0))


def circuit(**changes):
    return FanCircuit(dataclasses.replace(SOUND, **changes), dice("test", 1, 1), STEP_S)


def after(fan, seconds):
    return [fan.step() for _ in range(round(seconds / STEP_S))]


def broken_while_running(fan):
    fan.command(4)
    after(fan, 1.9)
    while fan.condition is SpanKind.RUNNING:
        fan.step()
    return fan


def test_off_both_sides_of_the_motor_stand_at_battery_voltage_without_current():
    fan = circuit()
    battery, feed, back, current, ground = after(fan, 0.1)[-1]
    assert feed == back == battery == 12.47
    assert current == ground == 0.0
    assert fan.condition is SpanKind.OFF


def test_running_the_drops_add_up_to_the_supply():
    fan = circuit()
    fan.command(2)
    battery, feed, back, current, ground = after(fan, 3.0)[-1]
    assert feed - back == pytest.approx(7.2, abs=1e-6)
    assert battery - feed == pytest.approx(0.030 * current)
    assert ground == pytest.approx(0.010 * current)
    assert 12.47 - battery == pytest.approx(0.005 * current)


def test_with_the_motor_open_the_whole_supply_stands_across_it():
    fan = circuit(commutator=CommutatorFigures(dead_bars=(0,)), rest_angle_rad=0.0)
    fan.command(1)
    _, feed, back, current, _ = after(fan, 0.2)[-1]
    assert feed == 12.47
    assert back == pytest.approx(0.0, abs=0.01)
    assert current == 0.0
    assert fan.condition is SpanKind.DEAD
    fan.tap()
    after(fan, 0.2)
    assert fan.condition is SpanKind.RUNNING
    assert fan.motor.speed_rad_s > 0.0


def test_a_lifted_brush_lets_the_controller_pull_the_return_to_ground():
    fan = broken_while_running(circuit(brush=BREAKS))
    _, feed, back, current, _ = after(fan, 0.05)[-1]
    assert (feed, current) == (12.47, 0.0)
    assert back == pytest.approx(0.0, abs=0.01)
    assert fan.condition is SpanKind.DEAD
    assert fan.motor.speed_rad_s > 100.0


def test_with_the_feed_open_the_coasting_motor_holds_the_feed_up_and_it_decays():
    fan = broken_while_running(circuit(feed=BREAKS))
    early, late = after(fan, 0.02)[-1], after(fan, 0.98)[-1]
    assert early[1] - early[2] == pytest.approx(8.3, abs=0.5)
    assert 2.5 < late[1] < 4.0
    assert late[2] == pytest.approx(0.0, abs=0.01)
    assert late[0] == 12.47
    assert fan.condition is SpanKind.FEED_LOST


def test_with_the_ground_open_the_return_rises_to_the_feed_as_the_motor_coasts_down():
    fan = broken_while_running(circuit(ground=BREAKS))
    early, late = after(fan, 0.02)[-1], after(fan, 4.0)[-1]
    assert early[1] == late[1] == 12.47
    assert early[2] == pytest.approx(12.47 - 8.3, abs=0.5)
    assert late[2] == pytest.approx(12.47, abs=0.01)
    assert late[4] == late[2]
    assert fan.condition is SpanKind.GROUND_LOST


def test_a_step_down_takes_no_current_back():
    fan = circuit()
    fan.command(4)
    after(fan, 2.0)
    fan.command(1)
    points = after(fan, 0.3)
    assert {point[3] for point in points[8:]} == {0.0}
    # The motor turns faster than step 1 would have it, so its own voltage stands across it.
    assert points[8][1] - points[8][2] > 8.0
    assert after(fan, 3.0)[-1][3] == pytest.approx(3.7, abs=0.4)


def test_a_held_motor_draws_the_supply_through_all_resistance_in_the_loop():
    held = dataclasses.replace(SOUND.motor, friction_n_m=1e9)
    fan = circuit(motor=held)
    fan.command(4)
    current = after(fan, 0.1)[-1][3]
    assert current == pytest.approx((12.47 - 1.2) / (0.16 + 0.045 + 0.002), rel=1e-6)
    assert fan.condition is SpanKind.LOCKED


def test_an_unknown_speed_is_refused():
    with pytest.raises(ValueError, match="0 to 4"):
        circuit().command(5)
