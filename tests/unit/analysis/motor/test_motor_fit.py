"""The motor's figures out of its steps: found, with honest uncertainty, or refused."""

import math
from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from meterlog.analysis.motor import motor_fit
from meterlog.model import (
    Channel,
    Controller,
    Doubt,
    DoubtKind,
    Instrument,
    Limits,
    Quantity,
    Role,
    Sensor,
    SensorKind,
    Span,
    SpanKind,
)

FOUR = (4.0, 6.0, 9.0, 13.0)


def test_points_without_error_give_the_motor_back(run_of, healthy):
    fit = motor_fit(run_of(healthy, FOUR))
    assert fit.refusal == ""
    assert fit.resistance_ohm == pytest.approx(0.16, rel=1e-6)
    assert fit.no_load_a == pytest.approx(1.5, rel=1e-6)
    assert fit.fan_constant_a_v2 == pytest.approx(0.165, rel=1e-6)
    assert fit.at_reference.value == pytest.approx(healthy.amps_at(13.0), rel=1e-9)
    assert fit.stall_a.value == pytest.approx((13.0 - 1.2) / 0.16, rel=1e-6)
    assert "extrapolated" in fit.stall_a.name
    assert fit.exponent == pytest.approx(healthy.exponent(13.0), rel=1e-6)
    assert max(abs(one.residual_a) for one in fit.points) < 1e-6


def test_three_points_are_enough_and_leave_no_chi_squared(run_of, healthy):
    fit = motor_fit(run_of(healthy, (4.0, 7.0, 13.0)))
    assert fit.refusal == ""
    assert fit.chi2_per_degree is None


@settings(max_examples=20, deadline=None)
@given(st.permutations(range(5)))
def test_the_order_of_the_steps_does_not_matter(order):
    from meterlog.analysis.motor.solving import solve

    volts = np.array([4.0, 5.5, 7.5, 10.0, 13.0])
    amps = np.array([2.45, 3.9, 6.1, 10.2, 15.6])
    u_volts, u_amps = 0.01 + 0.002 * volts, 0.02 + 0.005 * amps
    picked = list(order)
    plain = solve(volts, amps, u_volts, u_amps, 1.2).curve
    mixed = solve(volts[picked], amps[picked], u_volts[picked], u_amps[picked], 1.2).curve
    assert mixed.resistance_ohm == pytest.approx(plain.resistance_ohm, rel=1e-6)
    assert mixed.no_load_a == pytest.approx(plain.no_load_a, rel=1e-6)
    assert mixed.fan_constant_a_v2 == pytest.approx(plain.fan_constant_a_v2, rel=1e-6)


def test_a_common_gain_error_is_not_averaged_away(run_of, healthy):
    """Averaged over n points as if they were independent, U would fall with the root of n."""
    few = motor_fit(run_of(healthy, np.linspace(4.0, 13.0, 4), own_v=1e-4, own_a=1e-4))
    many = motor_fit(run_of(healthy, np.linspace(4.0, 13.0, 32), own_v=1e-4, own_a=1e-4))
    assert many.at_reference.combined_u == pytest.approx(few.at_reference.combined_u, rel=0.05)
    gain = 0.01 / math.sqrt(3.0) * healthy.amps_at(13.0)
    assert many.at_reference.combined_u > gain


def test_errors_of_each_point_by_itself_are_averaged(run_of, healthy):
    few = motor_fit(run_of(healthy, np.linspace(4.0, 13.0, 4), gain_v=0.0, gain_a=0.0))
    many = motor_fit(run_of(healthy, np.linspace(4.0, 13.0, 32), gain_v=0.0, gain_a=0.0))
    ratio = many.at_reference.combined_u / few.at_reference.combined_u
    assert ratio < 0.6


def test_a_gain_error_of_the_clamp_moves_all_currents_by_its_part(run_of, healthy):
    """R goes down, I0 and c go up by the same part: the covariance must know the signs."""
    fit = motor_fit(run_of(healthy, FOUR, gain_v=0.0, own_v=1e-6, own_a=1e-6))
    of_gain = [
        next(s.contribution / one.value for s in one.sources if s.key == "m:gain current")
        for one in fit.figures
    ]
    part = 0.01 / math.sqrt(3.0)
    assert of_gain == pytest.approx([-part, part, part], rel=1e-3)


def test_the_stated_uncertainty_holds_the_truth_about_95_times_in_100(step_at, judged_of, healthy):
    """Seeded: gains drawn once a run, digits once a point, as the budgets say."""
    dice = np.random.default_rng(4)
    held = {"at_reference": 0, "resistance": 0, "no load": 0}
    runs = 200
    for _ in range(runs):
        gain_v, gain_a = 0.003 * dice.uniform(-1, 1), 0.01 * dice.uniform(-1, 1)
        steps = []
        for speed, volts in enumerate((4.0, 5.5, 7.5, 10.0, 13.0), start=1):
            amps = healthy.amps_at(volts)
            seen_v = volts * (1 + gain_v) + 0.01 * dice.standard_normal()
            seen_a = amps * (1 + gain_a) + 0.03 * dice.standard_normal()
            steps.append(step_at(speed, seen_v, seen_a))
        fit = motor_fit(judged_of(steps, Limits(brush_v=1.2)))
        assert fit.refusal == ""
        near = abs(fit.at_reference.value - healthy.amps_at(13.0)) <= fit.at_reference.expanded
        held["at_reference"] += near
        resistance, no_load, _ = fit.figures
        held["resistance"] += abs(resistance.value - 0.16) <= resistance.expanded
        held["no load"] += abs(no_load.value - 1.5) <= no_load.expanded
    # The brushes' voltage was right in all runs, so these may be held more often than stated.
    assert 0.93 * runs <= held["at_reference"]
    assert 0.93 * runs <= held["resistance"]
    assert 0.93 * runs <= held["no load"]
    assert held["at_reference"] < runs


def test_scatter_beyond_the_stated_errors_widens_the_uncertainty(step_at, judged_of, healthy):
    volts = np.linspace(4.0, 13.0, 8)
    off = 0.02 * np.array([1, -1, 1, -1, 1, -1, 1, -1])

    def fit_of(factor):
        steps = [
            step_at(k, v, healthy.amps_at(v) * (1 + factor * d), own_v=0.001, own_a=0.003)
            for k, (v, d) in enumerate(zip(volts, off, strict=True), start=1)
        ]
        return motor_fit(judged_of(steps))

    calm, rough = fit_of(0.0), fit_of(1.0)
    assert calm.chi2_per_degree < 0.1
    assert rough.chi2_per_degree > 10.0
    assert rough.figures[0].combined_u > 1.5 * calm.figures[0].combined_u
    assert any(s.name == "scatter about the curve" for s in rough.figures[0].sources)


# -- refusals ------------------------------------------------------------


def _refused(fit, words):
    assert words in fit.refusal
    assert fit.resistance_ohm is None
    assert fit.at_reference is None
    assert fit.figures == ()


def test_two_speeds_are_refused(run_of, healthy):
    _refused(motor_fit(run_of(healthy, (5.0, 13.0))), "2 of at least 3")


def test_three_steps_at_two_voltages_are_refused(run_of, healthy):
    _refused(motor_fit(run_of(healthy, (5.0, 5.05, 13.0))), "2 of at least 3")


def test_voltages_too_near_each_other_are_refused(run_of, healthy):
    _refused(motor_fit(run_of(healthy, (10.0, 11.0, 12.0))), "too near each other")


def test_a_pulsed_controller_is_refused(run_of, healthy):
    limits = Limits(controller=Controller("pulsed"))
    _refused(motor_fit(run_of(healthy, FOUR, limits)), "pulsed")


def test_poor_meters_are_refused_with_the_figure_they_leave_open(run_of, healthy):
    fit = motor_fit(run_of(healthy, FOUR, own_a=0.5, own_v=0.2))
    _refused(fit, "not determined")
    assert "winding resistance" in fit.refusal
    assert len(fit.points) == 4


def test_points_that_bend_the_wrong_way_are_refused(step_at, judged_of):
    steps = [
        step_at(k, v, a)
        for k, (v, a) in enumerate(((4.0, 1.0), (7.0, 2.0), (10.0, 8.0), (13.0, 26.0)), 1)
    ]
    assert motor_fit(judged_of(steps)).refusal


def test_points_far_off_any_curve_are_refused(step_at, judged_of, healthy):
    off = (1.0, 1.25, 0.8, 1.25, 0.8, 1.0)
    steps = [
        step_at(k, v, healthy.amps_at(v) * d)
        for k, (v, d) in enumerate(zip((4, 5, 7, 9, 11, 13), off, strict=True), 1)
    ]
    _refused(motor_fit(judged_of(steps)), "off any curve")


def test_current_that_does_not_rise_with_voltage_is_refused(step_at, judged_of):
    steps = [step_at(k, v, 8.0 - 0.3 * v) for k, v in enumerate(FOUR, 1)]
    assert motor_fit(judged_of(steps)).refusal


def test_no_voltage_channel_is_refused(run_of, healthy):
    clamp = Instrument(
        "c", "p", "u", (Channel("amps", Quantity.CURRENT, Role.MOTOR_CURRENT),)
    )  # fmt: skip
    judged = replace(run_of(healthy, FOUR), instruments=(clamp,))
    _refused(motor_fit(judged), "motor voltage was not read")


def _feed_only():
    return Instrument("f", "p", "u", (
        Channel("feed", Quantity.VOLTAGE, Role.MOTOR_FEED),
        Channel("amps", Quantity.CURRENT, Role.MOTOR_CURRENT),
    ))  # fmt: skip


def test_the_feed_alone_is_refused_where_it_does_not_follow_the_speed(step_at, judged_of, healthy):
    """A controller in the return: the feed stays, and sags a little under load."""
    steps = [
        step_at(k, 12.5 - 0.03 * healthy.amps_at(v), healthy.amps_at(v))
        for k, v in enumerate(FOUR, 1)
    ]
    fit = motor_fit(replace(judged_of(steps), instruments=(_feed_only(),)))
    _refused(fit, "read the motor's return")


def test_the_feed_alone_will_do_where_the_controller_sits_in_it(run_of, healthy):
    fit = motor_fit(replace(run_of(healthy, FOUR), instruments=(_feed_only(),)))
    assert fit.refusal == ""


# -- steps left out ------------------------------------------------------------


def _span(kind, start_s, end_s):
    return Span(kind, round(start_s * 1e9), round(end_s * 1e9))


def test_a_step_with_a_dropout_is_left_out_and_said(run_of, healthy):
    judged = replace(
        run_of(healthy, (4.0, 5.5, 7.5, 13.0)), spans=(_span(SpanKind.DEAD, 23.0, 23.4),)
    )
    fit = motor_fit(judged)
    assert [one.speed for one in fit.points] == [1, 3, 4]
    assert len(fit.left_out) == 1
    assert "Speed 2" in fit.left_out[0]
    assert "dead at 23.0 s" in fit.left_out[0]


def test_a_step_over_its_limit_all_the_time_stays_in(run_of, healthy):
    """A motor that draws too much is still one motor; its figures are wanted."""
    judged = replace(run_of(healthy, FOUR), spans=(_span(SpanKind.OVER, 40.2, 50.0),))
    assert len(motor_fit(judged).points) == 4
    # Nothing is beyond a limit while the motor starts (1.5 s): only what follows counts.
    started = replace(run_of(healthy, FOUR), spans=(_span(SpanKind.OVER, 41.5, 50.0),))
    assert len(motor_fit(started).points) == 4
    holed = (_span(SpanKind.OVER, 41.5, 44.0), _span(SpanKind.NO_DATA, 44.0, 46.0),
             _span(SpanKind.OVER, 46.0, 50.0))  # fmt: skip
    assert len(motor_fit(replace(run_of(healthy, FOUR), spans=holed)).points) == 4
    half = replace(run_of(healthy, FOUR), spans=(_span(SpanKind.OVER, 45.0, 50.0),))
    assert len(motor_fit(half).points) == 3


def test_a_step_beyond_the_clamps_range_is_left_out_and_said(run_of, healthy):
    judged = run_of(healthy, FOUR)
    (meter,) = judged.instruments
    *volts, amps = meter.channels
    most_a = healthy.amps_at(FOUR[-1])

    def behind(top):
        clamp = Sensor(SensorKind.CLAMP, 100.0, own_percent=1.0, own_floor=0.1, own_top=top)
        channels = (*volts, replace(amps, sensor=clamp))
        return motor_fit(replace(judged, instruments=(replace(meter, channels=channels),)))

    full = behind(0.9 * most_a)
    assert [one.speed for one in full.points] == [1, 2, 3]
    assert "Speed 4" in full.left_out[0]
    assert "more current than the meter or the clamp is stated for" in full.left_out[0]
    assert len(behind(1.1 * most_a).points) == 4


def test_a_doubt_about_the_clamp_leaves_every_step_out(run_of, healthy):
    judged = replace(run_of(healthy, FOUR), doubts=(Doubt(DoubtKind.DECADE, "Off by ten."),))
    fit = motor_fit(judged)
    assert fit.points == ()
    assert len(fit.left_out) == 4
    assert fit.refusal


def test_a_doubt_that_is_in_the_budget_already_leaves_nothing_out(run_of, healthy):
    judged = replace(run_of(healthy, FOUR), doubts=(Doubt(DoubtKind.ZERO_MISSING, "No zero."),))
    assert len(motor_fit(judged).points) == 4


def test_off_is_no_point_and_is_not_spoken_of(step_at, judged_of, healthy):
    steps = [step_at(0, 0.1, 0.01)]
    steps += [step_at(k, v, healthy.amps_at(v)) for k, v in enumerate(FOUR, 1)]
    fit = motor_fit(judged_of(steps))
    assert len(fit.points) == 4
    assert fit.left_out == ()


def test_an_unsteady_voltage_is_no_point(step_at, judged_of, healthy):
    steps = [
        step_at(k, v, healthy.amps_at(v)) for k, v in enumerate((4.0, 6.0, 8.0, 10.0, 13.0), 1)
    ]
    steps[1] = replace(steps[1], steady_sd_v=2.0)
    fit = motor_fit(judged_of(steps))
    assert [one.speed for one in fit.points] == [1, 3, 4, 5]
    assert "not steady" in fit.left_out[0]


def test_what_the_budgets_lack_the_figures_lack(run_of, healthy):
    judged = run_of(healthy, FOUR)
    bare = tuple(
        replace(one, current=replace(one.current, lacking="the clamp's own error"))
        for one in judged.steps
    )
    fit = motor_fit(replace(judged, steps=bare))
    assert "the clamp's own error" in fit.figures[0].lacking
    assert "the clamp's own error" in fit.at_reference.lacking


def test_a_step_of_several_levels_is_no_point(run_of, healthy):
    judged = run_of(healthy, FOUR)
    steps = tuple(
        replace(one, steady_sd_a=0.3 * one.steady_mean_a, steady_lag1_a=0.99)
        if one.speed == 2
        else one
        for one in judged.steps
    )
    fit = motor_fit(replace(judged, steps=steps))
    assert [one.speed for one in fit.points] == [1, 3, 4]
    assert "several speeds" in fit.left_out[0]
