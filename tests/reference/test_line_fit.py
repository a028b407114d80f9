"""The straight line of least squares against certified values, and against another program.

Sources: NIST Statistical Reference Datasets (StRD), linear regression, data set Norris (36
observations, lower level of difficulty; calibration of ozone monitors): data and certified values
typed from memory. That they belong together is proved by the fit itself: a wrong digit in either
would show in the fifth figure. And scipy.stats.linregress on the same points.
"""

import numpy as np
import pytest
from scipy import stats

from meterlog.acquire.times.clock_fit import ClockFit
from meterlog.acquire.times.line_fit import fit_line

# y, x
NORRIS = """
    0.1 0.2  338.8 337.4  118.1 118.2  888.0 884.6  9.2 10.1  228.1 226.5  668.5 666.3
    998.5 996.3  449.1 448.6  778.9 777.0  559.2 558.2  0.3 0.4  0.1 0.6  778.1 775.5
    668.8 666.9  339.3 338.0  448.9 447.5  10.8 11.6  557.7 556.0  228.3 228.1  998.0 995.8
    888.8 887.6  119.6 120.2  0.3 0.3  0.6 0.3  557.6 556.8  339.3 339.1  888.0 887.2
    998.5 999.0  778.9 779.0  10.2 11.1  117.6 118.3  228.9 229.2  668.4 669.1  449.2 448.9
    0.2 0.5
"""


def norris():
    numbers = np.array([float(text) for text in NORRIS.split()]).reshape(-1, 2)
    assert len(numbers) == 36
    return numbers[:, 1], numbers[:, 0]


def test_norris_is_met_to_twelve_figures():
    fit = fit_line(*norris())
    assert fit.intercept == pytest.approx(-0.262323073774029, rel=1e-12)
    assert fit.slope == pytest.approx(1.00211681802045, rel=1e-13)
    assert fit.intercept_u == pytest.approx(0.232818234301152, rel=1e-12)
    assert fit.slope_u == pytest.approx(0.429796848199937e-03, rel=1e-12)
    assert fit.scatter == pytest.approx(0.884796396144373, rel=1e-12)
    assert fit.points == 36


def test_a_line_far_from_the_origin_loses_no_digits():
    """A day of host nanoseconds as seconds, slope 1 + 50 ppm: as linregress finds it."""
    rng = np.random.default_rng(5)
    x = 86_400.0 + np.arange(150) * 2.0
    y = 7.0 + 1.000_05 * x + rng.normal(0.0, 1e-4, 150)
    fit, other = fit_line(x, y), stats.linregress(x, y)
    assert fit.slope == pytest.approx(other.slope, rel=1e-12)
    # linregress takes its errors from 1 - r squared, which here has few digits left.
    assert fit.slope_u == pytest.approx(other.stderr, rel=2e-3)
    assert fit.intercept_u == pytest.approx(other.intercept_stderr, rel=2e-3)
    left = np.linalg.lstsq(np.stack([np.ones(150), x - x.mean()], 1), y, rcond=None)[1][0]
    assert fit.scatter == pytest.approx(np.sqrt(left / 148), rel=1e-6)


def test_two_points_make_a_line_without_uncertainty_and_one_makes_none():
    fit = fit_line(np.array([1.0, 3.0]), np.array([2.0, 6.0]))
    assert (fit.slope, fit.intercept, fit.slope_u, fit.scatter) == (2.0, 0.0, None, None)
    assert fit_line(np.array([1.0]), np.array([2.0])) is None
    assert fit_line(np.array([1.0, 1.0]), np.array([2.0, 3.0])) is None


def test_the_clock_line_is_linregress_through_the_least_late_arrival_of_each_window():
    """One hour, 200 ppm slow, one-sided delays: the same points given to the other program."""
    rng = np.random.default_rng(7)
    own = np.arange(0.0, 300.0, 0.1)
    host = 1.0 + own * (1.0 + 200e-6)
    arrived = np.rint((host + rng.exponential(0.004, len(own))) * 1e9).astype(np.int64)
    fit = ClockFit(2.0, 150)
    for x, y in zip(own, arrived, strict=True):
        fit.add(float(x), int(y))
    line = fit.line
    points = []
    for start in range(0, len(own) - 20, 20):
        part = slice(start, start + 20)
        best = start + int(np.argmin(arrived[part] / 1e9 - own[part] * 1.0002))
        points.append((own[best], arrived[best] / 1e9))
    xs, ys = np.array(points[: line.points]).T
    other = stats.linregress(xs, ys)
    # Windows that stand out are left out here and not there, so not to the last digit.
    assert line.slope == pytest.approx(other.slope, abs=3.0 * other.stderr)
    assert line.slope_u == pytest.approx(other.stderr, rel=0.5)
    assert line.ppm == pytest.approx(-200.0, abs=3.0 * line.ppm_u + 0.1)
    assert line.ppm_u < 1.0
