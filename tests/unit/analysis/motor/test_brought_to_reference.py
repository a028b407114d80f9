"""Currents brought to one motor voltage: by the motor's curve, or by the usual exponent."""

import math
from dataclasses import replace

import numpy as np
import pytest

from meterlog.analysis.motor import brought_to_reference, judged_current, motor_fit
from meterlog.analysis.motor.curve import Curve
from meterlog.analysis.motor.reference import brought_to, exponent_at
from meterlog.model import Limits

FOUR = (4.0, 6.0, 9.0, 12.0)
AT_13 = Limits(at_reference=True)


def test_by_the_fit_a_current_lands_on_the_curve(run_of, healthy):
    judged = run_of(healthy, FOUR)
    top = judged.steps[-1]
    brought = brought_to_reference(top, motor_fit(judged), AT_13)
    assert brought.value == pytest.approx(healthy.amps_at(13.0), rel=1e-6)
    assert brought.unit == "A"


def test_by_the_fit_it_is_better_known_than_by_the_exponent(run_of, healthy):
    judged = run_of(healthy, FOUR, gain_v=0.0, gain_a=0.0, own_v=1e-3, own_a=3e-3)
    top = judged.steps[-1]
    by_fit = brought_to_reference(top, motor_fit(judged), AT_13)
    by_exponent = brought_to_reference(top, None, AT_13)
    assert by_fit.expanded < by_exponent.expanded


def test_the_exponent_alone_gives_the_power_law(step_at):
    brought = brought_to_reference(step_at(4, 12.0, 10.0), None, AT_13)
    assert brought.value == pytest.approx(10.0 * (13.0 / 12.0) ** 1.7, rel=1e-12)


def test_the_uncertainty_grows_with_the_way(step_at):
    def u_at(volts):
        step = step_at(4, volts, 10.0, own_v=1e-6, own_a=1e-6, gain_v=0.0, gain_a=0.0)
        return brought_to_reference(step, None, AT_13).combined_u

    assert u_at(13.0) == pytest.approx(0.0, abs=1e-4)
    assert u_at(12.5) < u_at(12.0) < u_at(11.0)
    way = math.log(13.0 / 12.0)
    amps = 10.0 * (13.0 / 12.0) ** 1.7
    assert u_at(12.0) == pytest.approx(amps * way * 0.4 / math.sqrt(3.0), rel=1e-3)


def test_a_voltage_read_too_high_makes_the_current_at_reference_too_low(step_at):
    brought = brought_to_reference(step_at(4, 12.0, 10.0), None, AT_13)
    gain = next(one for one in brought.sources if one.key == "m:gain voltage")
    part = 0.003 / math.sqrt(3.0)
    assert gain.contribution == pytest.approx(-1.7 * brought.value * part, rel=1e-9)


def test_another_speed_is_not_brought_to_full_voltage(step_at):
    assert brought_to_reference(step_at(1, 5.0, 3.0), None, AT_13) is None


def test_without_a_voltage_nothing_is_brought_anywhere(step_at):
    step = replace(step_at(4, 12.0, 10.0), voltage=None, steady_mean_v=None)
    assert brought_to_reference(step, None, AT_13) is None


def test_a_refused_fit_counts_as_none(run_of, healthy):
    judged = run_of(healthy, (11.0, 12.0))
    refused = motor_fit(judged)
    assert refused.refusal
    step = judged.steps[-1]
    assert brought_to_reference(step, refused, AT_13) == brought_to_reference(step, None, AT_13)


def test_what_comes_back_to_where_it_was_is_what_was_measured(run_of, healthy):
    judged = run_of(healthy, FOUR)
    step = judged.steps[2]
    for fit in (None, motor_fit(judged)):
        brought = brought_to(step, fit, step.voltage.value, AT_13)
        assert brought.value == pytest.approx(step.current.value, rel=1e-12)


def _motors():
    """Motors as they are met: seeded, winding drop 5-30 %, friction 3-30 %, brushes 0.6-2 V."""
    dice = np.random.default_rng(8)
    for _ in range(400):
        full_a = dice.uniform(6.0, 26.0)
        resistance = dice.uniform(0.05, 0.30) * 13.0 / full_a
        no_load = dice.uniform(0.03, 0.30) * full_a
        brush_v = dice.uniform(0.6, 2.0)
        own = 13.0 - brush_v - resistance * full_a
        yield Curve(resistance, no_load, (full_a - no_load) / own**2, brush_v)


@pytest.mark.parametrize("share", [0.4, 0.5, 0.6, 0.8, 1.0, 1.1])
def test_nine_motors_in_ten_lie_within_the_stated_exponent(share):
    centre, half = exponent_at(share)
    exponents = [motor.exponent(13.0 * share) for motor in _motors()]
    within = np.mean(np.abs(np.array(exponents) - centre) <= half)
    assert within >= 0.9


def test_limits_that_hold_at_no_certain_voltage_leave_the_current_as_it_is(step_at):
    step = step_at(4, 12.0, 10.0)
    assert judged_current(step, None, Limits()) == (step.current, "")


def test_limits_at_reference_say_what_was_done(step_at):
    brought, words = judged_current(step_at(4, 12.0, 10.0), None, AT_13)
    assert brought.value > 11.0
    assert words == "brought to 13 V by the usual exponent"
    low = step_at(1, 5.0, 3.0)
    stayed, words = judged_current(low, None, AT_13)
    assert stayed == low.current
    assert words.startswith("as measured, not at 13 V")
