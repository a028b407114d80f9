"""Motor figures against textbook motors and the fan laws.

Sources
-------
OpenStax, College Physics, chapter 23.6 "Back Emf": toy-car motor, 6.00 V, back emf 4.50 V, 3.00 A:
R = 0.500 ohm, 12.0 A at the start. The same chapter's kind of problem, as printed in problem
collections: 5.5 V supply, 1.9 A running, 8.6 A locked: R = 0.6395 ohm, back emf 4.285 V.
Fan laws: flow with n, pressure with n^2, power with n^3 (ISO 5801 / AMCA 201, from memory).
"""

import numpy as np
import pytest

from meterlog.analysis.budgets import budget
from meterlog.analysis.judged import Judged
from meterlog.analysis.motor import motor_fit
from meterlog.analysis.motor.curve import Curve
from meterlog.model import Channel, Instrument, Limits, Quantity, Role, Source, Step

METER = Instrument("m", "p", "u", (
    Channel("feed", Quantity.VOLTAGE, Role.MOTOR_FEED),
    Channel("return", Quantity.VOLTAGE, Role.MOTOR_RETURN),
    Channel("amps", Quantity.CURRENT, Role.MOTOR_CURRENT),
))  # fmt: skip


def _fit(points, reference_v, nominal_v=6.0):
    steps = tuple(
        Step(
            k, k * 10**10, (k + 1) * 10**10, n=100, steady_n=100,
            voltage=budget("v", v, "V", (Source("digits", 1e-4 * v, "V"),)),
            current=budget("a", a, "A", (Source("digits", 1e-4 * a, "A"),)),
        )
        for k, (v, a) in enumerate(points, 1)
    )  # fmt: skip
    limits = Limits(
        nominal_v=nominal_v, reference_v=reference_v, brush_v=0.0, driven_v=0.1, open_current_a=0.01
    )
    return motor_fit(Judged((METER,), limits, steps=steps))


def test_the_toy_car_has_half_an_ohm_and_twelve_amperes_at_the_start():
    # Friction takes 0.75 A of the 3.00 A (chosen here), the fan the rest with the speed squared.
    no_load, own = 0.75, np.array([1.5, 3.0, 4.5])
    amps = no_load + (3.0 - no_load) * (own / 4.5) ** 2
    fit = _fit(zip(own + 0.5 * amps, amps, strict=True), reference_v=6.0)
    assert fit.points[-1].volts == pytest.approx(6.00)
    assert fit.points[-1].amps == pytest.approx(3.00)
    assert fit.resistance_ohm == pytest.approx(0.500, rel=1e-6)
    assert fit.stall_a.value == pytest.approx(12.0, rel=1e-6)


def test_the_locked_rotor_tells_the_resistance_and_the_back_emf():
    resistance = 5.5 / 8.6
    assert resistance == pytest.approx(0.6395, abs=5e-5)
    own_at_full = 5.5 - 1.9 * resistance
    assert own_at_full == pytest.approx(4.285, abs=5e-4)
    own = np.array([1.2, 2.5, own_at_full])
    amps = 0.4 + 1.5 * (own / own_at_full) ** 2
    fit = _fit(zip(own + resistance * amps, amps, strict=True), reference_v=5.5)
    assert fit.stall_a.value == pytest.approx(8.6, rel=1e-6)


def test_a_fan_by_the_fan_laws_gives_its_constant_back():
    """Power with n^3 is torque with n^2; current goes with torque and own voltage with speed."""
    speed = np.array([1200.0, 1500.0, 2400.0, 3400.0])
    power = 100.0 * (speed / 3400.0) ** 3
    own = 9.0 * speed / 3400.0
    amps = power / own
    fit = _fit(zip(own + 0.16 * amps, amps, strict=True), reference_v=13.0, nominal_v=12.0)
    assert fit.no_load_a == pytest.approx(0.0, abs=1e-6)
    assert fit.fan_constant_a_v2 == pytest.approx(100.0 / 9.0**3, rel=1e-6)
    assert fit.resistance_ohm == pytest.approx(0.16, rel=1e-5)


def test_the_published_fan_law_example_holds_on_the_curve():
    """1200 to 1500 turns a minute takes 3.125 times ... 5 hp to 9.766 hp (printed 9.77)."""
    curve = Curve(1e-9, 0.0, 0.1)
    slow, fast = 4.0, 5.0
    power = [curve.amps_at(volts) * volts for volts in (slow, fast)]
    assert 5.0 * power[1] / power[0] == pytest.approx(9.766, abs=5e-4)
