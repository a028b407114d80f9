"""Probabilities of conformity and decision rules against the guide.

Sources: JCGM 106:2012, 7.3 (lower limit 0.989, upper limit 0.919), 7.4 (two limits 0.663), 8.2,
8.3.2 (guarded acceptance) and 8.3.3 (guarded rejection, 106.59); the examples' inputs from memory.
Distributions: scipy.stats, and sums of random numbers for blurred rectangles.
"""

import math

import numpy as np
import pytest
from scipy import stats

from meterlog.analysis.budgets import budget, conformity
from meterlog.analysis.budgets.posterior import probability_below
from meterlog.model import DecisionRule, Limits, Shape, Source, Verdict

GUARDED, SIMPLE = Limits(), Limits(decision=DecisionRule.SIMPLE)
ROOT_3 = math.sqrt(3.0)


def normal(value, u, degrees=math.inf):
    return budget("y", value, "A", [Source("all", u, "A", degrees=degrees)])


def rectangles(value, *halves, rest=0.0):
    lines = [Source("wide", a / ROOT_3, "A", shape=Shape.RECTANGULAR) for a in halves]
    return budget("y", value, "A", [*lines, Source("rest", rest, "A")])


@pytest.mark.parametrize(
    ("value", "u", "low", "high", "printed", "exact"),
    [
        (509.7, 8.6, 490.0, None, 0.99, 0.98901),  # burst strength, kPa
        (-5.47, 0.05, None, -5.40, 0.92, 0.91924),  # breakdown voltage, V
        (13.6, 1.8, 12.5, 16.3, 0.66, 0.66263),  # viscosity of oil, mm2/s
    ],
)
def test_the_probabilities_of_section_7(value, u, low, high, printed, exact):
    found = conformity(normal(value, u), low, high, GUARDED)
    assert found.probability == pytest.approx(exact, abs=1e-5)
    assert round(found.probability, 2) == printed


def test_the_speed_that_is_proven_too_high_with_99_9_percent():
    # u = 2 % of the reading, limit 100: at the acceptance limit 106.59 the chance of being within
    # is 0.1 %. Guard band: 3.0902 u = r U with U = 2 u.
    at = 100.0 / (1.0 - 0.02 * stats.norm.ppf(0.999))
    assert at == pytest.approx(106.59, abs=0.005)
    limits = Limits(guard_factor=float(stats.norm.ppf(0.999)) / 2.0)
    for value, verdict in ((at + 1e-6, Verdict.FAIL), (at - 1e-6, Verdict.CANT_TELL)):
        found = conformity(normal(value, 0.02 * value), None, 100.0, limits)
        assert found.verdict is verdict
        assert found.probability == pytest.approx(0.001, abs=1e-6)


def test_at_the_edge_of_acceptance_the_probability_of_conformity_is_97_7_percent():
    # 8.3.2: guard band U = 2 u on one side gives p >= 0.97725.
    limit, u = 18.0, 0.45
    inside = conformity(normal(limit - 2 * u, u), None, limit, GUARDED)
    assert inside.verdict is Verdict.PASS
    assert inside.probability == pytest.approx(0.97725, abs=1e-5)
    assert conformity(normal(limit - 2 * u + 1e-9, u), None, limit, GUARDED).verdict is (
        Verdict.CANT_TELL
    )


@pytest.mark.parametrize(
    ("value", "guarded", "simple"),
    [
        (17.0, Verdict.PASS, Verdict.PASS),
        (17.5, Verdict.CANT_TELL, Verdict.PASS),
        (18.5, Verdict.CANT_TELL, Verdict.FAIL),
        (19.0, Verdict.FAIL, Verdict.FAIL),
    ],
)
def test_guard_bands_leave_room_for_not_knowing_and_simple_acceptance_none(value, guarded, simple):
    found = conformity(normal(value, 0.45), 10.0, 18.0, GUARDED)
    assert (found.verdict, found.limit) == (guarded, 18.0)
    plain = conformity(normal(value, 0.45), 10.0, 18.0, SIMPLE)
    assert (plain.verdict, plain.limit) == (simple, 18.0)
    assert plain.probability == found.probability


def test_simple_acceptance_at_the_limit_is_wrong_one_time_in_two():
    found = conformity(normal(18.0, 0.45), None, 18.0, SIMPLE)
    assert found.verdict is Verdict.PASS
    assert found.probability == pytest.approx(0.5)


def test_a_wider_guard_band_needs_a_wider_distance():
    wide = Limits(guard_factor=1.5)
    assert conformity(normal(17.0, 0.45), None, 18.0, wide).verdict is Verdict.CANT_TELL
    assert conformity(normal(16.6, 0.45), None, 18.0, wide).verdict is Verdict.PASS
    assert conformity(normal(19.0, 0.45), None, 18.0, wide).verdict is Verdict.CANT_TELL


def test_with_four_degrees_of_freedom_a_risk_of_1_percent_needs_3_75_u_not_2_33():
    assert 1.0 - probability_below(normal(0.0, 1.0, 4), 3.747) == pytest.approx(0.01, abs=1e-5)
    assert 1.0 - probability_below(normal(0.0, 1.0), 2.3263) == pytest.approx(0.01, abs=1e-5)


@pytest.mark.parametrize("degrees", [1, 2.5, 7, 40, math.inf])
@pytest.mark.parametrize("z", [-3.0, -0.7, 0.0, 1.2, 5.0])
def test_the_t_of_few_degrees_is_scipys(degrees, z):
    exact = stats.t.cdf(z, degrees) if math.isfinite(degrees) else stats.norm.cdf(z)
    assert probability_below(normal(10.0, 0.3, degrees), 10.0 + 0.3 * z) == pytest.approx(
        exact, abs=1e-10
    )


@pytest.mark.parametrize("z", [-1.1, -0.9, -0.2, 0.5, 0.99, 1.2])
def test_a_rectangle_by_itself_is_uniform_and_without_risk_beyond_its_edge(z):
    exact = stats.uniform.cdf(z, -1.0, 2.0)
    assert probability_below(rectangles(4.0, 0.5), 4.0 + 0.5 * z) == pytest.approx(exact, abs=1e-6)


def test_two_rectangles_by_themselves_make_a_trapezoid():
    wide = stats.trapezoid(1.0 / 3.0, 2.0 / 3.0, loc=-0.75, scale=1.5)  # halves 0.5 and 0.25
    for off in (-0.7, -0.3, 0.0, 0.2, 0.6):
        found = probability_below(rectangles(4.0, 0.5, 0.25), 4.0 + off)
        assert found == pytest.approx(wide.cdf(off), abs=1e-6)


@pytest.mark.parametrize(("halves", "rest"), [((1.0,), 0.15), ((1.0, 0.6), 0.15)])
def test_rectangles_blurred_by_the_rest_are_what_random_numbers_make(halves, rest):
    rng = np.random.default_rng(5)
    n = 400_000
    drawn = sum(rng.uniform(-a, a, n) for a in halves) + rng.normal(0.0, rest, n)
    for off in (-1.3, -0.8, 0.1, 0.95):
        found = probability_below(rectangles(0.0, *halves, rest=rest), off)
        assert found == pytest.approx(float(np.mean(drawn <= off)), abs=0.003)


def test_the_expanded_uncertainty_of_a_rectangle_leaves_2_5_percent_on_either_side():
    value = rectangles(10.0, 1.0)
    assert 1.0 - probability_below(value, 10.0 + value.expanded) == pytest.approx(0.025, abs=1e-6)


def test_without_limits_everything_passes_and_nothing_decided():
    found = conformity(normal(5.0, 1.0), None, None, GUARDED)
    assert (found.verdict, found.probability, found.limit) == (Verdict.PASS, None, None)


def test_where_no_uncertainty_is_known_the_value_decides_and_no_probability_is_told():
    bare = budget("y", 18.1, "A", ())
    found = conformity(bare, 10.0, 18.0, GUARDED)
    assert (found.verdict, found.probability, found.limit) == (Verdict.FAIL, None, 18.0)


def test_a_value_without_any_uncertainty_on_the_limit_is_within():
    certain = budget("y", 10.0, "A", [Source("none", 0.0, "A")])
    assert conformity(certain, 10.0, 18.0, GUARDED).probability == 1.0
    assert conformity(certain, 10.1, 18.0, GUARDED).probability == 0.0
