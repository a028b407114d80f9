"""Starts against closed forms and against an independent solver of the motor's equations.

Sources are named at each test. Inputs of textbooks marked "restated" were taken from a page that
quotes the book.
"""

import math

import numpy as np
import pytest
from scipy import optimize, signal

from meterlog.analysis.startup.figures import i2t, settling


def at(t_s):
    return np.round(np.asarray(t_s) * 1e9).astype(np.int64)


@pytest.mark.parametrize("tau_s", [0.05, 0.2, 1.0])
def test_the_heat_of_a_decay_is_its_closed_form(tau_s):
    # Integral of (s + p exp(-t/tau))^2 from 0 to T (calculus):
    # s^2 T + 2 s p tau (1 - e^-T/tau) + p^2 tau/2 (1 - e^-2T/tau).
    steady, over, end = 13.6, 46.4, 2.0
    t = np.arange(0.0, end + 1e-9, 1e-4)
    amps = steady + over * np.exp(-t / tau_s)
    gone = math.exp(-end / tau_s)
    exact = (
        steady**2 * end
        + 2.0 * steady * over * tau_s * (1.0 - gone)
        + over**2 * tau_s / 2.0 * (1.0 - gone**2)
    )
    assert i2t(at(t), amps) == pytest.approx(exact, rel=1e-6)


@pytest.mark.parametrize("interval_s", [0.001, 0.01, 0.1])
def test_a_decay_settles_when_its_closed_form_says_so(interval_s):
    # s + p exp(-t/tau) is within 10 % of s from tau ln(p / (0.1 s)) on (calculus).
    steady, over, tau_s = 13.6, 46.4, 0.25
    t = np.arange(0.0, 6.0, interval_s)
    found = settling(at(t), steady + over * np.exp(-t / tau_s), steady)
    exact = tau_s * math.log(over / (0.1 * steady))
    assert abs(found.t_ns / 1e9 - exact) <= found.edge_ns / 1e9
    assert found.edge_ns / 1e9 <= max(interval_s, 0.011)


def tutorial_motor():
    """Give the transfer function from volts to current of a published motor.

    Control tutorials of the University of Michigan, "DC Motor Speed: System Modeling" (restated):
    J = 0.01 kg m2, b = 0.1 N m s, K = 0.01, R = 1 ohm, L = 0.5 H.
    """
    inertia, drag, constant, ohm, henry = 0.01, 0.1, 0.01, 1.0, 0.5
    poles = [inertia * henry, inertia * ohm + henry * drag, drag * ohm + constant**2]
    return signal.TransferFunction([inertia, drag], poles), constant / poles[2], poles


def test_the_published_motor_has_its_published_poles_and_final_speed():
    # Same source: poles at -2.0025 and -9.9975, 0.0999 rad/s for a volt.
    _, speed, poles = tutorial_motor()
    assert sorted(np.roots(poles)) == pytest.approx([-9.9975, -2.0025], abs=5e-5)
    assert speed == pytest.approx(0.0999, abs=5e-5)


def test_the_published_motor_settles_when_an_independent_solver_says_so():
    # scipy.signal.step gives the current; its crossing of 90 % is found by root search on it.
    motor, _, _ = tutorial_motor()
    t, amps = signal.step(motor, T=np.linspace(0.0, 6.0, 6001))
    steady = motor.num[-1] / motor.den[-1]
    exact = optimize.brentq(lambda s: np.interp(s, t, amps) - 0.9 * steady, 0.5, 3.0)
    found = settling(at(t), amps, steady)
    assert abs(found.t_ns / 1e9 - exact) <= found.edge_ns / 1e9
    # A second-order rise: no earlier than the slow pole alone, ln 10 / 2.0025 s.
    assert exact == pytest.approx(math.log(10.0) / 2.0025, rel=0.1)


def test_a_fast_textbook_motor_shows_its_stall_current_and_settles_by_its_time_constant():
    # System-dynamics textbook example (restated): R 0.8 ohm, L 3 mH, K 0.05, J 8e-5 kg m2, 20 V:
    # stall 25 A, poles -47.54 and -219.13. It turns nothing, so that the current returns to 0;
    # a load of 2 A is added here to have something to settle at.
    inertia, constant, ohm, henry = 8e-5, 0.05, 0.8, 3e-3
    poles = [inertia * henry, inertia * ohm, constant**2]
    assert sorted(np.roots(poles)) == pytest.approx([-219.13, -47.54], abs=0.01)
    motor = signal.TransferFunction([20.0 * inertia, 0.0], poles)
    t, amps = signal.step(motor, T=np.arange(0.0, 1.0, 1e-4))
    assert amps.max() < 20.0 / ohm
    found = settling(at(t), amps + 2.0, 2.0)
    slow = 47.54
    # After the fast pole is gone the current falls as a single exponential; crossing 0.2 A.
    late = amps[t > 0.05]
    exact = t[t > 0.05][np.argmax(late < 0.2)]
    assert abs(found.t_ns / 1e9 - exact) <= found.edge_ns / 1e9
    assert math.log(25.0 / 0.2) / slow == pytest.approx(exact, rel=0.15)
