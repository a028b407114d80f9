"""The motor fit against the reference implementation of orthogonal distance regression.

Sources
-------
P. T. Boggs, J. E. Rogers, "Orthogonal Distance Regression" (1990); its authors' own program
ODRPACK, as scipy.odr or, where that is gone, the package odrpack. Without error in the voltages:
scipy.optimize.curve_fit.
"""

import math
import warnings

import numpy as np
import pytest
from scipy.optimize import curve_fit

from meterlog.analysis.motor.curve import Curve
from meterlog.analysis.motor.solving import solve

VOLTS = np.array([4.02, 5.47, 7.55, 9.93, 13.04])
AMPS = np.array([2.47, 3.71, 6.30, 9.87, 15.70])
U_VOLTS = 0.02 + 0.002 * VOLTS
U_AMPS = 0.03 + 0.004 * AMPS
BRUSH = 1.2


def _model(volts, resistance, no_load, constant):
    curve = Curve(resistance, no_load, constant, BRUSH)
    return np.array([curve.amps_at(float(one)) for one in np.atleast_1d(volts)])


def _scipy_odr():
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        return pytest.importorskip("scipy.odr")


def test_both_coordinates_uncertain_agrees_with_odrpack():
    odr = _scipy_odr()
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        data = odr.RealData(VOLTS, AMPS, sx=U_VOLTS, sy=U_AMPS)
        model = odr.Model(lambda beta, x: _model(x, *beta))
        run = odr.ODR(data, model, beta0=[0.2, 1.0, 0.2], sstol=1e-15, partol=1e-15, maxit=500)
        run.set_job(fit_type=0, deriv=1)
        out = run.run()
    mine = solve(VOLTS, AMPS, U_VOLTS, U_AMPS, BRUSH)
    found = [mine.curve.resistance_ohm, mine.curve.no_load_a, mine.curve.fan_constant_a_v2]
    assert found == pytest.approx(list(out.beta), rel=2e-4)
    own = np.diag(np.concatenate((U_VOLTS, U_AMPS)) ** 2)
    covariance = mine.influence @ own @ mine.influence.T
    # Second derivatives, which the program leaves in and the law of propagation leaves out.
    assert np.sqrt(np.diag(covariance)) == pytest.approx(np.sqrt(np.diag(out.cov_beta)), rel=0.02)


def test_the_sum_of_squares_is_as_small_as_odrpack_makes_it():
    odr = _scipy_odr()
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        data = odr.RealData(VOLTS, AMPS, sx=U_VOLTS, sy=U_AMPS)
        out = odr.ODR(data, odr.Model(lambda b, x: _model(x, *b)), beta0=[0.2, 1.0, 0.2]).run()
    mine = solve(VOLTS, AMPS, U_VOLTS, U_AMPS, BRUSH).curve
    slopes = np.array([mine.slope(float(one)) for one in VOLTS])
    misses = AMPS - np.array([mine.amps_at(float(one)) for one in VOLTS])
    # To first order the squared distance of a point is its miss over its effective variance.
    square = float((misses**2 / (U_AMPS**2 + (slopes * U_VOLTS) ** 2)).sum())
    assert square == pytest.approx(out.sum_square, rel=0.01)


def test_with_sure_voltages_it_is_ordinary_least_squares():
    tiny = np.full_like(VOLTS, 1e-7)
    mine = solve(VOLTS, AMPS, tiny, U_AMPS, BRUSH)
    beta, covariance = curve_fit(
        _model, VOLTS, AMPS, p0=[0.2, 1.0, 0.2], sigma=U_AMPS, absolute_sigma=True, xtol=1e-12
    )
    found = [mine.curve.resistance_ohm, mine.curve.no_load_a, mine.curve.fan_constant_a_v2]
    assert found == pytest.approx(list(beta), rel=1e-4)
    own = np.diag(np.concatenate((tiny, U_AMPS)) ** 2)
    made = mine.influence @ own @ mine.influence.T
    assert made == pytest.approx(covariance, rel=0.02)


def test_what_a_point_does_to_the_figures_is_seen_by_moving_it():
    """The sensitivities by which everything is propagated, against finite differences."""
    calm = solve(VOLTS, AMPS, U_VOLTS, U_AMPS, BRUSH)
    exact = np.array([calm.curve.amps_at(float(one)) for one in VOLTS])
    base = solve(VOLTS, exact, U_VOLTS, U_AMPS, BRUSH)
    for place in range(len(VOLTS)):
        h = 1e-4
        moved = exact.copy()
        moved[place] += h
        other = solve(VOLTS, moved, U_VOLTS, U_AMPS, BRUSH).curve
        seen = (other.resistance_ohm - base.curve.resistance_ohm) / h
        assert base.influence[0, len(VOLTS) + place] == pytest.approx(seen, rel=0.02)
        assert math.isfinite(seen)
