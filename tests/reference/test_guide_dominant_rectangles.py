"""Dominant rectangles against the worked examples of the accreditation bodies.

Source: EA-4/02 M:2022, supplement 2: S9 (hand-held multimeter at 100 V DC), S10 (vernier calliper),
and S3 and S2 for the ordinary case. S9's inputs for the calibrator from memory.
The guide's factor leaves out that the rest blurs the edges of a rectangle; ours holds 95 % with it,
as propagating the distributions does (JCGM 101:2008, 5.2 and 7.7).
"""

import math

import numpy as np
import pytest

from meterlog.analysis import with_uncertainty
from meterlog.analysis.budgets import budget
from meterlog.analysis.budgets.coverage import coverage
from meterlog.analysis.budgets.posterior import probability_below
from meterlog.analysis.budgets.shares import Share
from meterlog.model import Shape, Source

ROOT_3 = math.sqrt(3.0)
RECTANGLE = Shape.RECTANGULAR


def multimeter(calibrator_v=0.011):
    return budget(
        "error of indication",
        0.1,
        "V",
        [
            Source("calibrator, certificate", 0.001, "V", -1.0),
            Source("last digit", 0.05 / ROOT_3, "V", shape=RECTANGLE),
            Source("calibrator, drift", calibrator_v / ROOT_3, "V", -1.0, RECTANGLE),
        ],
    )


def test_s9_the_multimeter_whose_last_digit_dominates():
    found = multimeter()
    assert found.combined_u == pytest.approx(0.030, abs=0.0005)
    # Printed 1.65, of the rectangle alone, which holds 93.4 % here.
    assert 1.65 < found.coverage < 1.71
    assert found.reason.startswith("one rectangular source dominates (EA-4/02, S9)")
    assert found.expanded == pytest.approx(0.0501, abs=5e-5)
    assert with_uncertainty(found.value, found.expanded, "V") == "0.100 ± 0.050 V"
    assert round(found.expanded, 2) == 0.05  # printed (0.10 +- 0.05) V


def test_a_rectangle_that_stands_alone_has_the_factor_of_s9():
    line = Source("last digit", 0.05 / ROOT_3, "V", shape=RECTANGLE)
    found = budget("error of indication", 0.1, "V", [line])
    assert found.coverage == pytest.approx(0.95 * ROOT_3, rel=1e-12)
    assert found.reason == "one rectangular source dominates (EA-4/02, S9)"


@pytest.mark.parametrize("rest", [0.05, 0.15, 0.22, 0.29])
@pytest.mark.parametrize("halves", [(1.0,), (1.0, 0.5), (1.0, 0.95)])
def test_95_percent_of_a_million_draws_lie_within_u_whatever_the_rest(halves, rest):
    """Propagation of distributions by Monte Carlo: JCGM 101:2008, 7."""
    rng = np.random.default_rng(5)
    size = math.hypot(*halves) / ROOT_3
    lines = [Source("half", half / ROOT_3, "V", shape=RECTANGLE) for half in halves]
    found = budget("value", 0.0, "V", [*lines, Source("rest", rest * size, "V")])
    off = rng.normal(0.0, rest * size, 1_000_000)
    for half in halves:
        off += rng.uniform(-half, half, len(off))
    assert "dominate" in found.reason
    assert float(np.mean(np.abs(off) <= found.expanded)) == pytest.approx(0.95, abs=8e-4)


@pytest.mark.parametrize("size", [1e-310, 1e-200, 1e-9, 1e9, 1e200])
def test_the_factor_is_the_same_whatever_the_unit_and_no_size_breaks_it(size):
    for halves in ((1.0,), (1.0, 0.5)):
        lines = [Source("half", half / ROOT_3 * size, "V", shape=RECTANGLE) for half in halves]
        found = budget("value", 0.0, "V", [*lines, Source("rest", 0.12 * size, "V")])
        assert 0.0 <= probability_below(found, 0.3 * size) <= 1.0
        if 1e-150 < size < 1e150:
            sharp = {1: 0.95 * ROOT_3, 2: 1.82}[len(halves)]
            assert sharp < found.coverage < sharp * 1.06
            assert probability_below(found, found.expanded) == pytest.approx(0.975, abs=2e-4)


def test_where_the_rest_is_three_tenths_of_the_rectangle_it_no_longer_dominates():
    # rest / dominant = 0.2227 as printed; a calibrator of 0.015 V makes it 0.302
    assert "S9" in multimeter().reason
    assert "S9" not in multimeter(0.015).reason


def test_s10_the_calliper_with_two_rectangles():
    # Contributions in micrometres: gauge block 0.46, temperature 1.15 x 1.7, last digit 15 and
    # mechanical effects 29.
    lines = [
        Source("gauge block", 0.8 / ROOT_3, "µm", shape=RECTANGLE),
        Source("temperature", 2.0 / ROOT_3, "K", 1.7, RECTANGLE),
        Source("last digit", 25.0 / ROOT_3, "µm", shape=RECTANGLE),
        Source("mechanical effects", 50.0 / ROOT_3, "µm", shape=RECTANGLE),
    ]
    found = budget("error of indication", 100.0, "µm", lines)
    assert [round(source.contribution, 2) for source in lines[:2]] == [0.46, 1.96]
    # Printed 33 from lines rounded to 15 and 29; by the half-widths it is 32.34.
    assert math.hypot(0.46, 1.96, 15.0, 29.0) == pytest.approx(33.0, abs=0.5)
    assert found.combined_u == pytest.approx(32.34, abs=0.005)
    assert found.coverage == pytest.approx(1.83, abs=0.005)
    assert found.expanded == pytest.approx(60.0, abs=1.0)
    assert found.reason == "two rectangular sources dominate (EA-4/02, S10)"


def test_two_equal_rectangles_make_a_triangle():
    # beta = 0: k = (1 - sqrt(0.05)) sqrt(6); the quantile of the triangle itself
    k, _ = coverage([Share(1.0, math.inf, RECTANGLE)] * 2)
    assert k == pytest.approx((1.0 - math.sqrt(0.05)) * math.sqrt(6.0), rel=1e-12)


@pytest.mark.parametrize(("first", "second"), [(50.0, 25.0), (50.0, 40.0), (50.0, 17.0)])
def test_the_factor_of_two_rectangles_covers_95_percent_of_their_sum(first, second):
    # Independent of the formula: the trapezoid is the sum, counted on a fine grid of both.
    k, _ = coverage([Share(a / ROOT_3, math.inf, RECTANGLE) for a in (first, second)])
    reach = k * math.hypot(first, second) / ROOT_3
    steps = 2000
    places = [(2 * i + 1) / steps - 1 for i in range(steps)]
    # of the second rectangle, how much of the first lies within the reach
    inside = sum(
        (min(first, reach - second * p) - max(-first, -reach - second * p)) / (2 * first)
        for p in places
    )
    assert inside / steps == pytest.approx(0.95, abs=2e-4)


def test_s3_the_resistor_and_s2_the_weight_are_ordinary():
    resistor = [
        Source("comparison", 2.5, "mohm"),
        Source("standard", 5.8, "mohm", shape=RECTANGLE),
        Source("temperature", 1.6, "mohm", shape=RECTANGLE),
        Source("parasitic", 3.2, "mohm", shape=Shape.TRIANGULAR),
        Source("connection", 4.1, "mohm", shape=RECTANGLE),
        Source("ratio", 0.7, "mohm", degrees=4),
    ]
    found = budget("resistor", 10e6, "mohm", resistor)
    assert found.combined_u == pytest.approx(8.33, abs=0.05)
    assert found.coverage == pytest.approx(2.0, abs=0.005)
    assert found.expanded == pytest.approx(17.0, abs=0.5)
    weight = [22.5, 8.66, 14.4, 5.77, 5.77]
    found = budget("weight", 0.0, "mg", [Source("x", u, "mg") for u in weight])
    assert found.combined_u == pytest.approx(29.3, abs=0.1)
    assert found.expanded == pytest.approx(59.0, abs=1.0)
