"""Student's t without a table, against scipy and the tables of the guide.

Sources: scipy.stats.t and scipy.stats.norm; JCGM 100:2008, table G.2 is in
``test_uncertainty_guide.py``.
"""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy import stats

from meterlog.analysis.student import student_cdf, student_quantile

DEGREES = [1.0, 1.3, 2.0, 3.7, 10.0, 99.5, 101.0, 1999.0, 2001.0, 1e4, 1e6, 1e12]


@pytest.mark.parametrize("degrees", DEGREES)
def test_the_distribution_function_is_scipys_to_1e_10(degrees):
    for t in (0.01, 0.3, 1.0, 1.7, 2.0, 4.0, 13.97, 300.0, 1e6):
        for one in (t, -t):
            assert student_cdf(one, degrees) == pytest.approx(stats.t.cdf(one, degrees), abs=1e-10)


@pytest.mark.parametrize("degrees", DEGREES)
def test_the_quantile_is_scipys_to_1e_9(degrees):
    for p in (0.5, 0.6, 0.95, 0.97725, 0.995, 0.9995, 0.02, 1e-4):
        exact = float(stats.t.ppf(p, degrees))
        assert student_quantile(p, degrees) == pytest.approx(exact, rel=1e-9, abs=1e-9)


def test_infinitely_many_degrees_are_the_normal_distribution():
    assert student_cdf(1.4, math.inf) == pytest.approx(stats.norm.cdf(1.4), abs=1e-12)
    assert student_quantile(0.999, math.inf) == pytest.approx(stats.norm.ppf(0.999), rel=1e-9)
    assert (student_cdf(math.inf, 3.0), student_cdf(-math.inf, 3.0)) == (1.0, 0.0)


@given(st.floats(1.0, 1e5), st.floats(1e-6, 1.0 - 1e-6))
def test_the_quantile_undoes_the_distribution_function(degrees, p):
    assert student_cdf(student_quantile(p, degrees), degrees) == pytest.approx(p, abs=1e-11)


@given(st.floats(1.0, 1e5), st.floats(-50.0, 50.0), st.floats(0.0, 3.0))
def test_the_distribution_function_never_falls(degrees, t, more):
    assert student_cdf(t + more, degrees) >= student_cdf(t, degrees) - 1e-13


def test_a_probability_of_one_has_no_quantile():
    with pytest.raises(ValueError, match="no quantile"):
        student_quantile(1.0, 3.0)
    with pytest.raises(ValueError, match="no quantile"):
        student_quantile(0.0, 3.0)
