"""Uncertainty and verdicts against the worked examples of the guides.

Sources: JCGM 100:2008 (GUM), 4.3.7 example 2 continued in 5.1.5 (digital voltmeter; inputs from
memory), table 1 (twenty temperatures); JCGM 106:2012, 8.3.2 (guarded acceptance).
"""

import math

import numpy as np
import pytest
from scipy import stats

from meterlog.analysis import coverage_factor, uncertainty_of_mean, within
from meterlog.analysis.moments import Moments
from meterlog.analysis.uncertainty import Stated, effective_count
from meterlog.model import Accuracy, Verdict

VOLTMETER = Accuracy(14e-4, 1, 2e-6, basis="JCGM 100 4.3.7: 14e-6 of reading + 2e-6 of 1 V range")


def test_the_voltmeter_of_4_3_7_has_a_half_width_of_15_microvolts():
    half = VOLTMETER.half_width(0.928571)
    assert half == pytest.approx(15e-6, rel=1e-4)
    assert half / math.sqrt(3) == pytest.approx(8.66e-6, rel=1e-3)


def test_combined_with_a_type_a_part_of_12_microvolts_it_is_14_8_microvolts():
    # Type A 12 uV as the standard deviation of the mean of 20 readings without correlation.
    u = uncertainty_of_mean(0.928571, 20, 12e-6 * math.sqrt(20), 0.0, Stated(VOLTMETER))
    assert u.expanded / u.coverage == pytest.approx(14.8e-6, rel=1e-3)
    degrees = 19 * (14.8 / 12) ** 4  # Welch-Satterthwaite, G.4.1
    assert u.coverage == pytest.approx(stats.t.ppf(0.97725, degrees), rel=0.01)


def test_the_twenty_temperatures_of_table_1():
    text = """96.90 98.18 98.25 98.61 99.03 99.49 99.56 99.74 99.89 100.07 100.33 100.42 100.68
    100.95 101.11 101.20 101.57 101.84 102.36 102.72"""
    moments = Moments()
    moments.add(np.array(text.split(), float))
    assert moments.mean == pytest.approx(100.145, abs=1e-9)
    assert moments.sd == pytest.approx(1.488844483, abs=1e-9)
    u = uncertainty_of_mean(moments.mean, moments.n, moments.sd, None, Stated(None))
    assert u.expanded / u.coverage == pytest.approx(0.332915747, abs=1e-8)


@pytest.mark.parametrize("degrees", [1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 12, 15, 20, 30, 50, 100, 1e6])
def test_the_coverage_factor_is_students_for_95_45_percent(degrees):
    # JCGM 100:2008, table G.2; scipy as an independent source.
    assert coverage_factor(degrees) == pytest.approx(stats.t.ppf(0.97725, degrees), rel=0.006)


def test_two_readings_close_together_prove_little():
    u = uncertainty_of_mean(18.025, 2, 0.007, None, Stated(None))
    assert u.expanded == pytest.approx(13.97 * 0.007 / math.sqrt(2), rel=1e-3)
    assert within(18.025, u.expanded, None, 18.0)[0] is Verdict.CANT_TELL


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


@pytest.mark.parametrize(
    ("value", "u", "verdict"),
    [(17.0, 0.9, Verdict.PASS), (18.5, 0.9, Verdict.CANT_TELL), (19.0, 0.9, Verdict.FAIL)],
)
def test_a_verdict_needs_the_whole_interval_on_one_side(value, u, verdict):
    assert within(value, u, 10.0, 18.0) == (verdict, 18.0)


def test_at_the_edge_of_acceptance_the_probability_of_conformity_is_97_7_percent():
    # JCGM 106, 8.3.2: guard band U = 2u on one side gives p_c >= 0.97725.
    limit, u = 18.0, 0.45
    at = limit - 2 * u
    assert within(at, 2 * u, None, limit)[0] is Verdict.PASS
    assert within(at + 1e-9, 2 * u, None, limit)[0] is Verdict.CANT_TELL
    assert stats.norm.cdf((limit - at) / u) == pytest.approx(0.97725, abs=1e-5)


def test_without_any_limit_everything_passes_and_nothing_decided():
    assert within(5.0, 1.0, None, None) == (Verdict.PASS, None)
