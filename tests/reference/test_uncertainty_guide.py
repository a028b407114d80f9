"""Budgets and coverage factors against the worked examples of the guide.

Sources: JCGM 100:2008 (GUM), 4.3.7 example 2 continued in 5.1.5 (digital voltmeter; inputs from
memory), table 1 (twenty temperatures), 4.3.9 and F.2.2.1, G.4.1, table G.2, H.1 (end gauge);
scipy.stats for Student's t.
"""

import math

import numpy as np
import pytest
from scipy import stats

from meterlog.analysis import coverage_factor
from meterlog.analysis.budgets import BudgetMaker, Scatter, budget
from meterlog.analysis.moments import Moments
from meterlog.analysis.uncertainty import effective_count
from meterlog.model import Accuracy, Channel, Instrument, Quantity, Role, Shape, Source

VOLTMETER = Accuracy(14e-4, 1, 2e-6, basis="JCGM 100 4.3.7: 14e-6 of reading + 2e-6 of 1 V range")


def voltmeter():
    channel = Channel("feed", Quantity.VOLTAGE, Role.MOTOR_FEED, accuracy=VOLTMETER)
    return BudgetMaker([Instrument("meter", "test", "-", (channel,))])


def test_the_voltmeter_of_4_3_7_has_a_half_width_of_15_microvolts():
    single = voltmeter().of_reading(Role.MOTOR_FEED, "v", 0.928571, Scatter(1), (0, 1))
    assert math.sqrt(3.0) * single.combined_u == pytest.approx(15e-6, rel=1e-4)
    assert single.combined_u == pytest.approx(8.66e-6, rel=1e-3)


def test_combined_with_a_type_a_part_of_12_microvolts_it_is_14_8_microvolts():
    # Type A 12 uV as the standard deviation of the mean of 20 readings without correlation.
    lot = Scatter(20, 12e-6 * math.sqrt(20), 0.0)
    u = voltmeter().of_reading(Role.MOTOR_FEED, "v", 0.928571, lot, (0, 1))
    assert u.combined_u == pytest.approx(14.8e-6, rel=1e-3)
    degrees = 19 * (u.combined_u / 12e-6) ** 4  # Welch-Satterthwaite, G.4.1
    assert u.degrees == pytest.approx(degrees, rel=1e-9)
    assert u.coverage == pytest.approx(stats.t.ppf(0.97725, degrees), rel=1e-5)


def test_the_twenty_temperatures_of_table_1():
    text = """96.90 98.18 98.25 98.61 99.03 99.49 99.56 99.74 99.89 100.07 100.33 100.42 100.68
    100.95 101.11 101.20 101.57 101.84 102.36 102.72"""
    moments = Moments()
    moments.add(np.array(text.split(), float))
    assert moments.mean == pytest.approx(100.145, abs=1e-9)
    assert moments.sd == pytest.approx(1.488844483, abs=1e-9)
    assert Scatter(moments.n, moments.sd).u == pytest.approx(0.332915747, abs=1e-8)
    assert Scatter(moments.n, moments.sd).degrees == 19.0


def test_the_last_digit_alone_is_0_29_of_it():
    # F.2.2.1
    channel = Channel("feed", Quantity.VOLTAGE, Role.MOTOR_FEED, accuracy=Accuracy(0.0, 0, 0.01))
    maker = BudgetMaker([Instrument("meter", "test", "-", (channel,))])
    u = maker.of_reading(Role.MOTOR_FEED, "v", 12.0, Scatter(1), (0, 1))
    assert u.combined_u == pytest.approx(0.29 * 0.01, rel=0.006)
    assert u.combined_u == pytest.approx(0.01 / math.sqrt(12.0), rel=1e-12)


# Table G.2, columns 95 %, 95.45 % and 99 %.
TABLE = {
    1: (12.71, 13.97, 63.66), 2: (4.30, 4.53, 9.92), 3: (3.18, 3.31, 5.84), 4: (2.78, 2.87, 4.60),
    5: (2.57, 2.65, 4.03), 6: (2.45, 2.52, 3.71), 7: (2.36, 2.43, 3.50), 8: (2.31, 2.37, 3.36),
    10: (2.23, 2.28, 3.17), 20: (2.09, 2.13, 2.85), 50: (2.01, 2.05, 2.68),
    math.inf: (1.960, 2.000, 2.576),
}  # fmt: skip


@pytest.mark.parametrize("degrees", TABLE)
def test_the_coverage_factors_of_table_g_2_to_all_printed_digits(degrees):
    for probability, printed in zip((0.95, 0.9545, 0.99), TABLE[degrees], strict=True):
        half_digit = 0.00051 if degrees == math.inf else 0.0051
        assert coverage_factor(degrees, probability) == pytest.approx(printed, abs=half_digit)


def test_less_than_one_degree_of_freedom_counts_as_one():
    assert coverage_factor(0.2) == coverage_factor(1.0)


def test_effective_degrees_of_freedom_of_g_4_1():
    # Relative u of 0.25, 0.57 and 0.82 % with 9, 4 and 14 degrees.
    lines = [
        Source("a", 0.25, "%", degrees=9), Source("b", 0.57, "%", degrees=4),
        Source("c", 0.82, "%", degrees=14),
    ]  # fmt: skip
    found = budget("y", 100.0, "%", lines, probability=0.95)
    assert found.combined_u == pytest.approx(1.03, abs=0.005)
    assert found.degrees == pytest.approx(18.9987, abs=1e-3)  # printed 19.0, from the rounded u
    assert found.coverage == pytest.approx(2.09, abs=0.005)
    assert found.expanded == pytest.approx(2.2, abs=0.05)
    assert found.reason == "Student's t for 19.0 effective degrees of freedom"


def test_the_end_gauge_of_h_1_at_99_percent():
    inner = [
        Source("a", 5.8, "nm", degrees=24), Source("b", 3.9, "nm", degrees=5),
        Source("c", 6.7, "nm", degrees=8),
    ]  # fmt: skip
    part = budget("difference", 215.0, "nm", inner)
    assert part.combined_u == pytest.approx(9.7, abs=0.05)
    few = 5.8**4 / 24 + 3.9**4 / 5 + 6.7**4 / 8
    assert pytest.approx(25.6, abs=0.05) == 9.7**4 / few
    assert part.degrees == pytest.approx(25.45, abs=0.01)  # from the unrounded u
    lines = [
        Source("standard", 25.0, "nm", degrees=18), Source("difference", 9.7, "nm", degrees=25.6),
        Source("thermal", 2.9, "nm", degrees=50), Source("temperature", 16.6, "nm", degrees=2),
    ]  # fmt: skip
    whole = budget("length", 838.0, "nm", lines, probability=0.99)
    assert whole.combined_u == pytest.approx(32.0, abs=0.5)
    assert math.floor(whole.degrees) == 16
    assert coverage_factor(16, 0.99) == pytest.approx(2.92, abs=0.005)
    # Printed 93 nm with the degrees cut to 16 and u rounded to 32; we cut and round nothing.
    assert coverage_factor(16, 0.99) * 32.0 == pytest.approx(93.0, abs=0.5)
    assert whole.expanded == pytest.approx(92.0, abs=0.5)


def test_two_readings_close_together_prove_little():
    found = budget("v", 18.025, "V", [Source("scatter", 0.007 / math.sqrt(2), "V", degrees=1)])
    assert found.expanded == pytest.approx(13.97 * 0.007 / math.sqrt(2), rel=1e-3)


def test_correlated_readings_are_worth_fewer():
    # Closed form for a first-order autoregressive series, checked on a long simulated one.
    rng = np.random.default_rng(3)
    r, n, runs = 0.6, 400, 3000
    noise = rng.normal(size=(runs, n))
    series = np.empty_like(noise)
    series[:, 0] = noise[:, 0] / math.sqrt(1 - r * r)
    for i in range(1, n):
        series[:, i] = r * series[:, i - 1] + noise[:, i]
    spread = series.mean(axis=1).std(ddof=1)
    single = 1 / math.sqrt(1 - r * r)
    assert spread == pytest.approx(single / math.sqrt(effective_count(n, r)), rel=0.05)
    assert effective_count(n, -0.5) == n


@pytest.mark.parametrize("shape", [Shape.TRIANGULAR, Shape.U_SHAPED, Shape.NORMAL])
def test_only_rectangles_that_dominate_take_the_factor_of_rectangles(shape):
    assert budget("x", 0.0, "V", [Source("a", 1.0, "V", shape=shape)]).coverage == pytest.approx(
        2.0
    )
