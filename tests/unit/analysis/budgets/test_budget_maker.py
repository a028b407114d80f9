"""Budgets of steps, worked by hand. The figures are invented."""

import math
from dataclasses import replace

import pytest

from meterlog.analysis.budgets import BudgetMaker, Scatter, combine
from meterlog.model import Event, EventKind, Instrument, Range, Role, Zero
from meterlog.model.zero_text import zero_text

ROOT_3 = math.sqrt(3.0)


def made(maker, step):
    (whole,) = maker.with_budgets([step])
    return whole


def line(budget, words):
    (found,) = [source for source in budget.sources if words in source.name]
    return found


def test_the_current_of_a_step_has_the_meters_statement_and_the_scatter(bench):
    step = made(bench.one_meter(), bench.step)
    half = 0.01 * 8.0 + 3 * 0.01
    by_hand = math.hypot(half / ROOT_3, 0.09 / math.sqrt(180))
    assert step.current.combined_u == pytest.approx(by_hand, rel=1e-12)
    assert step.current.value == 8.0
    assert step.current.name == "motor current at speed 2"
    assert (step.steady_expanded_a, step.steady_coverage) == (
        step.current.expanded,
        step.current.coverage,
    )


def test_a_reversed_clamp_gives_the_same_uncertainty_and_a_current_by_its_size(bench):
    plain = made(bench.one_meter(), bench.step)
    turned = made(bench.one_meter(), replace(bench.step, steady_mean_a=-8.0))
    assert turned.current.value == 8.0
    assert turned.current.combined_u == pytest.approx(plain.current.combined_u, rel=1e-12)
    assert turned.power.value == plain.power.value
    assert turned.power.combined_u == pytest.approx(plain.power.combined_u, rel=1e-12)
    assert line(turned.current, "gain").contribution > 0.0


def test_readings_that_hang_together_count_for_fewer(bench):
    step = made(bench.one_meter(), replace(bench.step, steady_lag1_a=0.8))
    found = line(step.current, "scatter")
    assert found.standard_u == pytest.approx(0.09 / math.sqrt(180 * 0.2 / 1.8))
    assert found.degrees == pytest.approx(180 * 0.2 / 1.8 - 1.0)
    assert found.name == "scatter of 180 readings worth 20"


def test_feed_less_return_of_one_meter_shares_the_gain_but_not_the_digits(bench):
    step = made(bench.one_meter(), bench.step)
    gain = 0.005 / ROOT_3 * (12.0 - 3.0)
    rest = [math.sqrt((0.005 * v + 0.02) ** 2 - (0.005 * v) ** 2) / ROOT_3 for v in (12.0, 3.0)]
    by_hand = math.hypot(gain, *rest, 0.04 / math.sqrt(180))
    assert step.voltage.combined_u == pytest.approx(by_hand, rel=1e-12)


def test_feed_less_return_of_two_meters_shares_nothing_and_is_less_sure(bench):
    step = made(bench.three_meters(), bench.step)
    halves = [(0.005 * v + 0.02) / ROOT_3 for v in (12.0, 3.0)]
    slope = 0.04 * math.sqrt(12.0) / (180 * 0.1)
    times = slope * math.hypot(0.05, 0.05)
    by_hand = math.hypot(*halves, 0.04 / math.sqrt(180), times)
    assert step.voltage.combined_u == pytest.approx(by_hand, rel=1e-12)
    assert step.voltage.combined_u > made(bench.one_meter(), bench.step).voltage.combined_u


def test_feed_and_return_on_two_ranges_of_one_meter_have_two_gains(bench):
    ranges = (Range(6.0, bench.volts), Range(60.0, bench.volts))
    feed, back, amps = bench.channels()
    channels = (replace(feed, ranges=ranges), replace(back, ranges=ranges), amps)
    step = made(BudgetMaker([Instrument("meter", "test", "-", channels)]), bench.step)
    halves = [(0.005 * v + 0.02) / ROOT_3 for v in (12.0, 3.0)]
    by_hand = math.hypot(*halves, 0.04 / math.sqrt(180))
    assert step.voltage.combined_u == pytest.approx(by_hand, rel=1e-12)


def test_without_a_return_the_voltage_is_said_to_be_the_feed_alone(bench):
    maker = bench.one_meter()
    del maker._homes[Role.MOTOR_RETURN]
    voltage = made(maker, replace(bench.step, steady_mean_v=12.0)).voltage
    assert voltage.value == 12.0
    assert "the feed alone" in voltage.lacking


def test_power_and_ratio_follow_the_law_of_propagation(bench):
    step = made(bench.two_meters(), bench.step)
    relative = [one.combined_u / one.value for one in (step.voltage, step.current)]
    slope = 0.09 * math.sqrt(12.0) / (180 * 0.1)  # all scatter taken as a trend, A/s
    times = slope * math.hypot(0.05, 0.05) / 8.0
    by_hand = math.hypot(*relative, times)
    assert step.power.value == 72.0
    assert step.ratio.value == 9.0 / 8.0
    assert step.power.combined_u / 72.0 == pytest.approx(by_hand, rel=1e-9)
    assert step.ratio.combined_u / step.ratio.value == pytest.approx(by_hand, rel=1e-9)


def test_volts_and_amperes_that_rise_together_make_power_less_sure_and_the_ratio_surer(bench):
    def scatter_of(budget):
        lines = [one for one in budget.sources if "scatter of" in one.name]
        return combine("x", 0.0, "", [(replace(budget, sources=tuple(lines)), 1.0)]).combined_u

    apart = made(bench.one_meter(), replace(bench.step, steady_correlation=0.0))
    along = made(bench.one_meter(), replace(bench.step, steady_correlation=0.9))
    u_v, u_a = 0.04 / math.sqrt(180), 0.09 / math.sqrt(180)
    squares = (8.0 * u_v) ** 2 + (9.0 * u_a) ** 2
    both = 2.0 * 0.9 * 8.0 * u_v * 9.0 * u_a
    assert scatter_of(apart.power) == pytest.approx(math.sqrt(squares), rel=1e-9)
    assert scatter_of(along.power) == pytest.approx(math.sqrt(squares + both), rel=1e-9)
    assert scatter_of(along.ratio) == pytest.approx(math.sqrt(squares - both) / 64.0, rel=1e-9)
    # each by itself is as sure as before
    assert along.current.combined_u == pytest.approx(apart.current.combined_u, rel=1e-12)
    assert along.voltage.combined_u == pytest.approx(apart.voltage.combined_u, rel=1e-12)


def test_two_speeds_read_through_one_clamp_differ_by_their_digits_and_the_gain_of_the_difference(
    bench,
):
    maker = bench.one_meter(**bench.behind_clamp())
    slow = replace(bench.step, steady_mean_a=8.0, steady_sd_a=0.0)
    fast = replace(slow, start_ns=30_000_000_000, steady_mean_a=10.0)
    one, other = (step.current for step in maker.with_budgets([slow, fast]))
    apart = combine("difference", 2.0, "A", [(other, 1.0), (one, -1.0)])
    shared = [0.01 / ROOT_3 * 2.0, 0.02 / ROOT_3 * 2.0]  # gains of meter and clamp
    rests = [
        math.sqrt((percent * amps + rest) ** 2 - (percent * amps) ** 2) / ROOT_3
        for amps in (8.0, 10.0)
        for percent, rest in ((0.01, 0.03), (0.02, 0.1))
    ]
    assert apart.combined_u == pytest.approx(math.hypot(*shared, *rests), rel=1e-12)
    assert apart.combined_u < math.hypot(one.combined_u, other.combined_u)


def test_the_same_readings_less_themselves_are_nothing_without_any_doubt(bench):
    step = made(bench.one_meter(**bench.behind_clamp()), bench.step)
    nothing = combine("nothing", 0.0, "A", [(step.current, 1.0), (step.current, -1.0)])
    assert nothing.combined_u == 0.0


def test_meter_and_clamp_are_two_devices_each_with_its_own_statement(bench):
    step = made(bench.one_meter(**bench.behind_clamp()), bench.step)
    meter, clamp = 0.01 * 8.0 + 0.03, 0.02 * 8.0 + 0.1
    by_hand = math.hypot(meter / ROOT_3, clamp / ROOT_3, 0.09 / math.sqrt(180))
    assert step.current.combined_u == pytest.approx(by_hand, rel=1e-12)
    assert line(step.current, "gain of clamp 10 mV/A at amps").standard_u == pytest.approx(
        2.0 / ROOT_3
    )


def test_cold_air_widens_the_meters_statement_as_its_data_sheet_says(bench):
    amps = replace(bench.amps, per_kelvin=0.1)
    warm = made(bench.one_meter(ambient_c=20.0, amps=amps), bench.step).current
    cold = made(bench.one_meter(ambient_c=8.0, amps=amps), bench.step).current
    assert line(cold, "temperature").name == "temperature of meter, 8 °C"
    half = 0.01 * 8.0 + 0.03
    by_hand = math.hypot(2.0 * half / ROOT_3, 0.09 / math.sqrt(180))  # ten kelvin below 18 °C
    assert cold.combined_u == pytest.approx(by_hand, rel=1e-12)
    assert "temperature" not in {source.name.split()[0] for source in warm.sources}
    assert warm.lacking == cold.lacking == ""
    unknown = made(bench.one_meter(amps=amps), bench.step).current
    assert "temperature was not recorded" in unknown.lacking


def test_a_statement_without_digits_leaves_the_last_digit_to_a_line_of_its_own(bench):
    amps = replace(bench.amps, digits=0)
    step = made(bench.one_meter(amps=amps), bench.step)
    assert line(step.current, "last digit").standard_u == pytest.approx(0.01 / math.sqrt(12.0))
    with_digits = made(bench.one_meter(), bench.step)
    assert not [one for one in with_digits.current.sources if "last digit" in one.name]


def test_the_zero_of_the_clamp_counts_with_its_scatter_its_degrees_and_its_drift(bench):
    maker = bench.one_meter()
    for at_s, offset in ((0, 0.1), (40, 0.4)):
        text = zero_text("amps", "A", Zero(offset, 0.06, 9))
        maker.take(Event(at_s * 1_000_000_000, EventKind.ZERO, text, "meter"))
    step = made(maker, bench.step)
    scatter, drift = line(step.current, "scatter of the zero"), line(step.current, "drift")
    assert scatter.standard_u == pytest.approx(0.02)
    assert scatter.degrees == 8.0
    assert drift.standard_u == pytest.approx(0.3 / ROOT_3)
    # A zero that is too high makes all currents too low, and both steps alike.
    later = made(maker, replace(bench.step, start_ns=1, steady_mean_a=4.0))
    assert line(later.current, "scatter of the zero").key == scatter.key


def test_the_floor_of_a_clamp_stays_in_after_a_zero_and_the_line_says_why(bench):
    maker = bench.one_meter(sensor=bench.clamp)
    bare = line(made(maker, bench.step).current, "floor of clamp")
    assert "drift" not in bare.name
    maker.take(Event(0, EventKind.ZERO, zero_text("amps", "A", Zero(0.1, 0.06, 9)), "meter"))
    kept = line(made(maker, bench.step).current, "floor of clamp")
    assert kept.name.endswith("kept for drift since the zero")
    assert kept.standard_u == bare.standard_u


def test_what_is_learnt_later_is_in_the_next_budget(bench):
    maker = bench.one_meter()
    before = made(maker, bench.step)
    assert made(maker, bench.step) is before  # nothing learnt, nothing made again
    text = zero_text("amps", "A", Zero(0.0, 0.6, 9))
    maker.take(Event(0, EventKind.ZERO, text, "meter"))
    assert made(maker, bench.step).current.combined_u > before.current.combined_u


def test_times_that_nobody_knows_are_said_to_be_missing_from_power_and_ratio(bench):
    step = made(bench.two_meters(time_u_s=None), bench.step)
    assert "times of amps and volts" in step.power.lacking
    assert "times" not in step.current.lacking


def test_a_step_without_current_or_voltage_has_no_budgets_of_them(bench):
    bare = replace(bench.step, steady_mean_a=None, steady_n=0, steady_sd_a=None)
    step = made(bench.one_meter(), bare)
    assert (step.current, step.power, step.ratio) == (None, None, None)
    assert step.voltage is not None
    dark = replace(bench.step, steady_mean_v=None, steady_volts_n=0, steady_sd_v=None)
    step = made(bench.one_meter(), dark)
    assert (step.voltage, step.power, step.ratio) == (None, None, None)
    assert step.current is not None


def test_a_current_that_may_be_none_is_no_divisor(bench):
    step = made(bench.one_meter(), replace(bench.step, steady_mean_a=0.01))
    assert step.ratio is None
    assert step.power is not None


def test_nothing_known_of_the_uncertainty_is_not_an_uncertainty_of_nothing(bench):
    single = replace(bench.step, steady_n=1, steady_sd_a=None)
    step = made(bench.one_meter(amps=None), single)
    assert (step.steady_expanded_a, step.steady_coverage) == (None, None)
    assert step.current.sources == ()
    assert "accuracy for motor-current is not stated" in step.current.lacking


@pytest.mark.parametrize("role", [Role.MOTOR_FEED, Role.MOTOR_CURRENT])
def test_any_role_can_be_asked_for_a_single_reading(bench, role):
    maker = bench.one_meter()
    found = maker.of_reading(role, "peak", 20.0, Scatter(1), (0, 1))
    percent, digits = (0.005, 0.02) if role is Role.MOTOR_FEED else (0.01, 0.03)
    assert found.combined_u == pytest.approx((percent * 20.0 + digits) / ROOT_3, rel=1e-12)
    assert maker.of_reading(Role.BATTERY, "battery", 12.0, Scatter(1), (0, 1)) is None


def test_a_statement_that_is_nearly_all_is_one_rectangle_and_u_95_percent_of_its_half_width(bench):
    current = made(bench.one_meter(), replace(bench.step, steady_sd_a=0.01)).current
    assert "one rectangular source" in current.reason
    # The table shows two lines of 44 % and more: that they are one rectangle must be said.
    assert "lines of one accuracy statement are one rectangle" in current.reason
    assert current.expanded == pytest.approx(0.95 * (0.01 * 8.0 + 0.03), rel=1e-3)
    # meter and clamp are two
    both = made(bench.one_meter(**bench.behind_clamp()), replace(bench.step, steady_sd_a=0.01))
    assert "two rectangular sources" in both.current.reason
    # Feed and return share a gain: their sum is no longer part of either statement.
    assert "rectangular" not in made(bench.one_meter(), bench.step).voltage.reason


def test_what_a_meter_says_of_its_clock_makes_no_second_copy_of_the_budgets_that_stay(bench):
    maker = bench.one_meter()
    before = made(maker, bench.step)
    version = maker.version
    maker.take(Event(1, EventKind.TIMING, "words that change nothing", "meter"))
    assert maker.version > version
    assert made(maker, bench.step) is before
