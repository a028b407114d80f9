"""The motor model against published figures, closed forms and an independent solver.

Sources are named at each test. Figures of textbooks marked "restated" were taken from a worked
solution that quotes the book.
"""

import dataclasses
import math

import numpy as np
import pytest
from scipy import integrate, optimize, signal

from meterlog.instruments.virtual.controller import ControllerFigures, ControllerStep
from meterlog.instruments.virtual.fan_circuit import CircuitFigures, FanCircuit
from meterlog.instruments.virtual.motor import Motor, MotorFigures
from meterlog.instruments.virtual.scenario import dice
from meterlog.instruments.virtual.scenarios import SCENARIOS
from meterlog.instruments.virtual.wiring import Wiring

STEP_S = 2.5e-4
HELD = 1e9
FULL = ControllerFigures(steps=(ControllerStep(),), on_ohm=0.0)
FAN = SCENARIOS["healthy-new"].circuit


def run(motor, volts, seconds, step_s=STEP_S, series_ohm=0.0):
    speeds, currents = [], []
    for _ in range(round(seconds / step_s)):
        motor.drive(volts, series_ohm, step_s)
        speeds.append(motor.speed_rad_s)
        currents.append(motor.current_a)
    return np.array(speeds), np.array(currents)


def test_a_starting_motor_draws_six_times_what_it_draws_at_its_back_emf():
    # OpenStax, College Physics, section 23.6 "Back Emf" (inputs from memory): 0.400 ohm on
    # 48.0 V takes 120 A at the start and 20.0 A at a back emf of 40.0 V.
    motor = Motor(MotorFigures(0.400, 0.0, constant=1.0, inertia_kg_m2=1e9))
    motor.drive(48.0, 0.0, STEP_S)
    assert motor.current_a == pytest.approx(120.0, rel=1e-9)
    motor.speed_rad_s = 40.0
    motor.drive(48.0, 0.0, STEP_S)
    assert motor.current_a == pytest.approx(20.0, rel=1e-6)
    assert motor.current_a**2 * 0.400 == pytest.approx(160.0, rel=1e-6)


def test_a_toy_motor_starts_with_12_amperes():
    # The same section, problem of the toy-car motor (restated): 6.00 V, back emf 4.50 V, 3.00 A,
    # hence 0.500 ohm; with cells of 0.400 ohm in all, 0.100 ohm are the motor's.
    motor = Motor(MotorFigures(0.100, 0.0, constant=1.0, inertia_kg_m2=1e9))
    motor.drive(6.00, 0.400, STEP_S)
    assert motor.current_a == pytest.approx(12.0, rel=1e-9)
    motor.speed_rad_s = 4.50
    motor.drive(6.00, 0.400, STEP_S)
    assert motor.current_a == pytest.approx(3.00, rel=1e-6)


def test_the_university_tutorial_motor_answers_a_volt_as_printed():
    # Control tutorials of the University of Michigan, "DC Motor Speed" (inputs restated):
    # J 0.01, b 0.1, K 0.01, R 1, L 0.5; poles -2.0025 and -9.9975, 0.0999 rad/s, rise 1.135 s.
    j, b, k, r, inductance = 0.01, 0.1, 0.01, 1.0, 0.5
    poles = np.sort(np.roots([j * inductance, j * r + b * inductance, b * r + k * k]))
    assert poles == pytest.approx([-9.9975, -2.0025], abs=1e-4)
    motor = Motor(MotorFigures(r, inductance, k, j, viscous_n_m_s=b))
    speeds, _ = run(motor, 1.0, 5.0)
    times = np.arange(1, len(speeds) + 1) * STEP_S
    assert speeds[-1] == pytest.approx(0.0999, abs=5e-5)
    rise = times[np.argmax(speeds >= 0.9 * 0.0999)] - times[np.argmax(speeds >= 0.1 * 0.0999)]
    assert rise == pytest.approx(1.135, abs=0.003)
    system = signal.lti([k], [j * inductance, j * r + b * inductance, b * r + k * k])
    _, solved = system.step(T=np.concatenate([[0.0], times]))
    assert np.abs(speeds - solved[1:]).max() < 1e-4 * 0.0999


def test_the_system_dynamics_motor_reaches_400_rad_per_second():
    # A system-dynamics textbook's worked example (inputs restated): R 0.8 ohm, L 3 mH, K 0.05,
    # no damping, J 8e-5, 20 V: 400 rad/s, 25 A when held, poles -47.54 and -219.13.
    j, k, r, inductance = 8e-5, 0.05, 0.8, 3e-3
    denominator = [j * inductance, j * r, k * k]
    assert np.sort(np.roots(denominator)) == pytest.approx([-219.13, -47.54], abs=0.01)
    held = Motor(MotorFigures(r, inductance, k, j, friction_n_m=HELD))
    _, currents = run(held, 20.0, 0.05)
    assert currents[-1] == pytest.approx(25.0, rel=1e-4)
    motor = Motor(MotorFigures(r, inductance, k, j))
    speeds, _ = run(motor, 20.0, 0.25, 1e-4)
    times = np.arange(len(speeds) + 1) * 1e-4
    _, solved = signal.lti([20.0 * k], denominator).step(T=times)
    assert speeds[-1] == pytest.approx(400.0, abs=0.1)
    assert np.abs(speeds - solved[1:]).max() < 0.05


def test_a_motor_with_viscous_load_settles_with_its_mechanical_time_constant():
    # A university course problem (inputs restated): K 0.028, J 1.2e-4, c 4.1e-5, R 11.2 ohm,
    # 30 V: 675.7 rad/s, 0.989 A; J R / (R c + K K) = 1.081 s.
    motor = Motor(MotorFigures(11.2, 0.0, 0.028, 1.2e-4, viscous_n_m_s=4.1e-5))
    speeds, currents = run(motor, 30.0, 15.0, 1e-3)
    assert speeds[-1] == pytest.approx(675.7, abs=0.1)
    assert currents[-1] == pytest.approx(0.989, abs=0.001)
    reached = (np.argmax(speeds >= speeds[-1] * (1.0 - math.exp(-1.0))) + 1) * 1e-3
    assert reached == pytest.approx(1.081, abs=0.003)


def test_a_held_motor_and_a_source_resistance_share_the_voltage():
    # OpenStax, University Physics volume 2, example 10.1: 12.00 V behind 0.100 ohm gives
    # 20.0 A and 10.00 V into 0.500 ohm; behind 0.500 ohm, 12.0 A and 6.00 V.
    for source_ohm, amperes, volts in ((0.100, 20.0, 10.00), (0.500, 12.0, 6.00)):
        figures = CircuitFigures(
            Wiring(12.00, source_ohm, 0.0, 0.0),
            MotorFigures(0.500, 2e-4, 0.026, 8e-4, friction_n_m=HELD),
            FULL,
        )
        circuit = FanCircuit(figures, dice("reference", 1, 1), STEP_S)
        circuit.command(1)
        points = [circuit.step() for _ in range(200)][-1]
        assert points[3] == pytest.approx(amperes, rel=1e-6)
        assert points[0] == pytest.approx(volts, rel=1e-6)
        assert points[1] - points[2] == pytest.approx(volts, rel=1e-6)


def balance(speed, volts, ohm, figures):
    current = (volts - figures.brush_drop_v - figures.constant * speed) / ohm
    load = figures.friction_n_m + figures.air_n_m_s2 * speed**2
    return figures.constant * current - load


@pytest.mark.parametrize("speed", [1, 2, 3, 4])
def test_each_speed_settles_where_torque_and_voltage_balance(speed):
    # Closed form: V = I R + K w + brushes and K I = friction + air w^2 (any textbook of
    # electrical machines), solved by Brent's method of scipy.
    smooth = dataclasses.replace(FAN.motor, ripple=0.0)
    figures = dataclasses.replace(FAN, motor=smooth)
    circuit = FanCircuit(figures, dice("reference", 1, 1), STEP_S)
    circuit.command(speed)
    points = [circuit.step() for _ in range(round(6.0 / STEP_S))][-1]
    step = FAN.controller.steps[speed - 1]
    volts, ohm = step.volts, smooth.resistance_ohm
    if math.isinf(volts):
        volts = FAN.wiring.supply_v
        ohm += FAN.wiring.loop_ohm + FAN.controller.on_ohm
    turning = optimize.brentq(balance, 0.0, 600.0, args=(volts, ohm, smooth))
    current = (volts - smooth.brush_drop_v - smooth.constant * turning) / ohm
    assert circuit.motor.speed_rad_s == pytest.approx(turning, rel=1e-4)
    assert points[3] == pytest.approx(current, rel=1e-3)


def test_the_start_on_full_agrees_with_an_independent_solver():
    # scipy.integrate.solve_ivp (LSODA) on the same equations; and common practice, no source: a
    # start draws 3.5 to 4 times the running current, some 5 ms after switching on.
    figures = MotorFigures(
        0.16, 2e-4, 0.026, 8e-4, brush_drop_v=1.2, friction_n_m=0.03, air_n_m_s2=3.05e-6
    )
    volts, series_ohm = 13.9, 0.042

    def slopes(_, state):
        current, speed = state
        held = volts - 1.2 - current * (0.16 + series_ohm) - 0.026 * speed
        torque = 0.026 * current - 0.03 - 3.05e-6 * speed**2
        return [held / 2e-4, max(torque, 0.0) / 8e-4 if speed <= 0.0 else torque / 8e-4]

    times = np.arange(1, round(3.0 / STEP_S) + 1) * STEP_S
    solved = integrate.solve_ivp(
        slopes, (0.0, times[-1]), [0.0, 0.0], "LSODA", t_eval=times, rtol=1e-8, max_step=1e-3
    ).y
    speeds, currents = run(Motor(figures), volts, 3.0, series_ohm=series_ohm)
    assert np.abs(currents - solved[0]).max() < 0.005 * solved[0].max()
    assert np.abs(speeds - solved[1]).max() < 0.005 * solved[1].max()
    assert 3.5 <= currents.max() / currents[-1] <= 4.0
    assert 0.003 <= times[currents.argmax()] <= 0.008


def test_halving_the_step_quarters_the_error():
    # Without load the split is symmetrical, so its error falls with the square of the step
    # (Strang, SIAM J. Numer. Anal. 5 (1968) 506, from memory).
    j, k, r, inductance = 8e-5, 0.05, 0.8, 3e-3
    until_s = 0.02
    _, exact = signal.lti([20.0 * k], [j * inductance, j * r, k * k]).step(
        T=np.linspace(0.0, until_s, 3)
    )

    def error(step_s):
        speeds, _ = run(Motor(MotorFigures(r, inductance, k, j)), 20.0, until_s, step_s)
        return abs(speeds[-1] - exact[-1])

    assert 3.0 < error(1e-3) / error(5e-4) < 5.0


def test_a_coasting_motor_gives_a_voltage_that_decays_as_the_closed_form_says():
    # J dw/dt = -(F + c w^2) integrates to w = sqrt(F/c) tan(atan(w0 sqrt(c/F)) - t sqrt(F c)/J)
    # (separation of variables). Common practice, computed: 9.0 V at 20 ms after 3400 rpm, 6.7 V
    # at 0.25 s, 3.4 V at 1 s.
    friction, air, inertia, constant = 0.03, 3.05e-6, 8e-4, 0.026
    start = 3400.0 / 60.0 * 2.0 * math.pi
    motor = Motor(
        MotorFigures(0.16, 2e-4, constant, inertia, friction_n_m=friction, air_n_m_s2=air)
    )
    motor.speed_rad_s = start
    volts = []
    for _ in range(round(1.0 / STEP_S)):
        motor.coast(STEP_S)
        volts.append(motor.emf_v)
    for at_s, figure in ((0.020, 9.0), (0.25, 6.7), (1.0, 3.4)):
        phase = math.atan(start * math.sqrt(air / friction))
        phase -= at_s * math.sqrt(friction * air) / inertia
        closed = constant * math.sqrt(friction / air) * math.tan(phase)
        seen = volts[round(at_s / STEP_S) - 1]
        assert seen == pytest.approx(closed, rel=2e-3)
        assert seen == pytest.approx(figure, abs=0.1)


def test_a_motor_that_drags_runs_on_full_only_and_draws_a_quarter_more():
    # Common practice, computed: friction times six gives 17.3 A (+27 %) on 12.4 V at full, and
    # no start on the lowest step.
    amperes = {}
    for name, factor in (("free", 1.0), ("drags", 6.0)):
        motor = dataclasses.replace(
            FAN.motor, friction_n_m=factor * FAN.motor.friction_n_m, ripple=0.0
        )
        circuit = FanCircuit(dataclasses.replace(FAN, motor=motor), dice("reference", 1, 1), STEP_S)
        circuit.command(1)
        for _ in range(round(1.0 / STEP_S)):
            circuit.step()
        assert (circuit.motor.speed_rad_s > 0.0) == (name == "free")
        circuit.command(4)
        amperes[name] = [circuit.step() for _ in range(round(4.0 / STEP_S))][-1][3]
    assert amperes["drags"] == pytest.approx(17.3, abs=0.3)
    assert amperes["drags"] / amperes["free"] == pytest.approx(1.27, abs=0.02)
