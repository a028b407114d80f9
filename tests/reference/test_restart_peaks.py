"""Restart after an open, against a table worked out for a cabin fan and against another solver.

The table was worked out beforehand by calculation, apart from this program; no published source:
13.9 V, armature 0.16 ohm, wiring 0.042 ohm, brushes 1.2 V, 0.0260 V s/rad, friction 0.03 N m,
8e-4 kg m2, 16.4 A. The other solver is scipy.integrate.solve_ivp on the motor's equations.
"""

import numpy as np
import pytest
from scipy import integrate

from meterlog.analysis.inferred.open_model import RestartScale, shown

OHM, BRUSH_V, K, J, SUPPLY_V, FRICTION = 0.202, 1.2, 0.0260, 8e-4, 13.9, 0.03
BASE_A = 16.4
SPEED = (SUPPLY_V - BRUSH_V - OHM * BASE_A) / K
AIR = (K * BASE_A - FRICTION) / SPEED**2
SCALE = RestartScale(
    ratio=(SUPPLY_V - BRUSH_V) / OHM / BASE_A,
    coast_per_s=K * BASE_A / (J * SPEED),
    friction=FRICTION / (K * BASE_A),
)


@pytest.mark.parametrize(
    ("open_s", "peak_a"), [(0.02, 18.0), (0.05, 20.0), (0.1, 23.0), (0.3, 31.0), (1.0, 45.0)]
)
def test_the_peak_is_that_of_the_table(open_s, peak_a):
    peak = BASE_A * (1.0 + SCALE.peak(np.array([open_s]))[0])
    assert peak == pytest.approx(peak_a, abs=1.0)


@pytest.mark.parametrize(
    ("open_s", "volts"),
    [(0.02, 9.0), (0.1, 8.1), (0.25, 6.7), (0.5, 5.2), (1.0, 3.4), (2.0, 1.6)],
)
def test_the_voltage_of_the_coasting_motor_is_that_of_the_table(open_s, volts):
    left = SCALE.speed_left(np.array([open_s]))[0]
    assert K * SPEED * left == pytest.approx(volts, abs=0.2)


def solved(open_s, until_s):
    """The motor's equations by scipy: current against time since the open began."""

    def slow(_, w):
        return -(FRICTION + AIR * w**2) / J

    def fast(_, w):
        return (K * (SUPPLY_V - BRUSH_V - K * w) / OHM - FRICTION - AIR * w**2) / J

    tight = {"rtol": 1e-9, "atol": 1e-9, "dense_output": True}
    gone = integrate.solve_ivp(slow, (0.0, open_s), [SPEED], **tight)
    back = integrate.solve_ivp(fast, (open_s, until_s), [gone.y[0, -1]], **tight)

    def current(t):
        speed = back.sol(np.maximum(t, open_s))[0]
        return np.where(t < open_s, 0.0, (SUPPLY_V - BRUSH_V - K * speed) / OHM)

    return current


@pytest.mark.parametrize("open_s", [0.01, 0.05, 0.2])
def test_what_an_averaging_meter_shows_is_that_of_the_solved_motor(open_s):
    current = solved(open_s, 3.0)
    window_s = 0.3
    at_s = np.array([-0.1, 0.05, 0.15, 0.3, 0.45, 0.6])
    told = shown(SCALE, np.array(open_s), np.array(open_s), at_s, window_s)
    for middle, part in zip(at_s, told, strict=True):
        t = np.linspace(middle - window_s / 2, middle + window_s / 2, 30_001)
        mean = np.trapezoid(np.where(t < 0.0, BASE_A, current(t)), t) / window_s
        assert part == pytest.approx(mean / BASE_A - 1.0, abs=0.03)
