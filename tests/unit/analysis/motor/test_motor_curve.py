"""The curve of a motor with a fan, and its derivatives."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from meterlog.analysis.motor.curve import Curve

CURVES = st.builds(
    Curve,
    st.floats(0.02, 2.0),
    st.floats(0.0, 3.0),
    st.floats(0.005, 0.4),
    st.floats(0.0, 2.0),
)


@given(CURVES, st.floats(0.5, 30.0))
def test_a_voltage_made_of_an_own_voltage_leads_back_to_it(curve, own):
    volts = float(curve.volts_of(np.array([own]))[0])
    assert curve.own_v(volts) == pytest.approx(own, rel=1e-9)
    assert curve.amps_at(volts) == pytest.approx(float(curve.amps_of(np.array([own]))[0]), rel=1e-9)


@given(CURVES, st.floats(1.0, 20.0))
def test_the_slope_is_the_derivative(curve, own):
    volts = float(curve.volts_of(np.array([own]))[0])
    h = 1e-4 * volts
    seen = (curve.amps_at(volts + h) - curve.amps_at(volts - h)) / (2 * h)
    assert curve.slope(volts) == pytest.approx(seen, rel=1e-4)


@given(CURVES, st.floats(1.0, 20.0), st.integers(0, 3))
def test_what_a_figure_does_to_the_current_is_its_derivative(curve, own, which):
    volts = float(curve.volts_of(np.array([own]))[0])
    figures = [curve.resistance_ohm, curve.no_load_a, curve.fan_constant_a_v2, curve.brush_v]
    h = 1e-5 * max(figures[which], 0.01)

    def moved(by):
        other = list(figures)
        other[which] += by
        return Curve(*other).amps_at(volts)

    seen = (moved(h) - moved(-h)) / (2 * h)
    assert curve.by_figures(volts)[which] == pytest.approx(seen, rel=1e-3, abs=1e-6)


def test_below_the_voltage_at_which_it_starts_the_own_voltage_is_nothing():
    curve = Curve(0.2, 2.0, 0.1, 1.0)
    assert curve.own_v(1.3) == 0.0
    assert curve.own_v(1.5) > 0.0


def test_without_winding_drop_friction_and_brushes_the_exponent_is_two():
    assert Curve(1e-9, 0.0, 0.1).exponent(12.0) == pytest.approx(2.0, rel=1e-6)
    assert Curve(0.2, 0.0, 0.1).exponent(12.0) < 2.0
    assert Curve(1e-9, 1.0, 0.1).exponent(12.0) < 2.0
    assert Curve(1e-9, 0.0, 0.1, 1.2).exponent(12.0) > 2.0
