"""Quantities read together, against the worked examples with correlation.

Sources: JCGM 100:2008, H.2 (simultaneous resistance and reactance) and H.3 (calibration line);
GTC, a published library for uncertainties, as referee on random budgets.
"""

import math

import numpy as np
import pytest
from GTC import dof, uncertainty, value
from GTC.core import multiple_ureal, ureal
from hypothesis import given, settings
from hypothesis import strategies as st

from meterlog.analysis.budgets import budget, combine, simultaneous
from meterlog.analysis.budgets.simultaneous import covariance_lines
from meterlog.model import Source

VOLTS = [5.007, 4.994, 5.005, 4.990, 4.999]
AMPERES = [0.019663, 0.019639, 0.019640, 0.019685, 0.019678]
RADIANS = [1.0456, 1.0438, 1.0468, 1.0428, 1.0433]


def made_of(parts, name, amount, sensitivities):
    return combine(name, amount, "ohm", list(zip(parts, sensitivities, strict=True)))


def impedance(parts):
    """Give R, X and Z of H.2, by the equations of that example."""
    v, i, phi = (part.value for part in parts)
    z = v / i
    c, s = math.cos(phi), math.sin(phi)
    return (
        made_of(parts, "R", z * c, (c / i, -z * c / i, -z * s)),
        made_of(parts, "X", z * s, (s / i, -z * s / i, z * c)),
        made_of(parts, "Z", z, (1.0 / i, -z / i, 0.0)),
    )


def covariance(one, other):
    """Give the covariance of two budgets by the variance of their sum."""
    both = combine("sum", 0.0, "", [(one, 1.0), (other, 1.0)])
    return (both.combined_u**2 - one.combined_u**2 - other.combined_u**2) / 2.0


def correlation(one, other):
    return covariance(one, other) / one.combined_u / other.combined_u


@pytest.fixture
def read():
    readings = np.array([VOLTS, AMPERES, RADIANS])
    return simultaneous(("V", "I", "phi"), ("V", "A", "rad"), readings, "five sets")


def test_h_2_means_uncertainties_and_correlations_of_the_inputs(read):
    assert [part.value for part in read] == pytest.approx([4.9990, 0.0196610, 1.04446], rel=1e-9)
    found = [part.combined_u for part in read]
    assert found == pytest.approx([0.00320936, 0.00000947101, 0.000752064], rel=1e-5)
    v, i, phi = read
    assert correlation(v, i) == pytest.approx(-0.36, abs=0.005)
    assert correlation(v, phi) == pytest.approx(0.86, abs=0.005)
    assert correlation(i, phi) == pytest.approx(-0.65, abs=0.006)  # printed -0.65; -0.6451


def test_h_2_resistance_reactance_and_impedance_to_all_printed_digits(read):
    r, x, z = impedance(read)
    assert (round(r.value, 3), round(x.value, 3), round(z.value, 3)) == (127.732, 219.847, 254.260)
    assert r.combined_u == pytest.approx(0.071, abs=0.0005)
    assert x.combined_u == pytest.approx(0.295, abs=0.001)  # printed 0.295; 0.29558
    assert z.combined_u == pytest.approx(0.236, abs=0.0005)
    assert r.combined_u == pytest.approx(0.071071, abs=1e-5)
    assert x.combined_u == pytest.approx(0.295582, abs=1e-5)
    assert z.combined_u == pytest.approx(0.236336, abs=1e-5)
    assert correlation(r, x) == pytest.approx(-0.588, abs=0.0006)
    assert correlation(r, z) == pytest.approx(-0.485, abs=0.0006)
    assert correlation(x, z) == pytest.approx(0.993, abs=0.0006)


def test_h_2_a_function_of_five_sets_has_four_degrees_of_freedom_whatever_it_is(read):
    # Willink, Metrologia 44 (2007): unlike Welch-Satterthwaite on parts taken as independent
    assert [one.degrees for one in impedance(read)] == pytest.approx([4.0, 4.0, 4.0])


def test_h_2_leaving_the_correlation_out_gives_2_7_times_too_much(read):
    alone = [
        budget(part.name, part.value, part.unit, [Source("mean", part.combined_u, part.unit)])
        for part in read
    ]
    r, x, z = impedance(alone)
    found = (r.combined_u, x.combined_u, z.combined_u)
    assert found == pytest.approx((0.1945, 0.2009, 0.2041), abs=1e-4)


def test_h_3_the_calibration_line_at_30_degrees():
    # Intercept -0.1712 u 0.0029, slope 0.00218 u 0.00067, r = -0.930, 9 degrees of freedom.
    u_1, u_2, r = 0.0029, 0.00067, -0.930
    matrix = np.array([[u_1**2, r * u_1 * u_2], [r * u_1 * u_2, u_2**2]])
    lines = covariance_lines(matrix, ("°C", "1"), "line", 9.0, "fit")
    first = budget("intercept", -0.1712, "°C", lines[0])
    slope = budget("slope", 0.00218, "1", lines[1])
    at_30 = combine("b(30)", -0.1712 + 10.0 * 0.00218, "°C", [(first, 1.0), (slope, 10.0)])
    assert at_30.value == pytest.approx(-0.1494, abs=5e-5)
    assert at_30.combined_u == pytest.approx(0.0041, abs=5e-5)
    assert at_30.degrees == pytest.approx(9.0)
    # without the covariance it would be 0.0073
    assert math.hypot(u_1, 10 * u_2) == pytest.approx(0.0073, abs=5e-5)


def test_quantities_that_move_as_one_have_one_line_in_common():
    same = np.array([VOLTS, [2.0 * v for v in VOLTS], [7.0] * 5])
    one, other, still = simultaneous("abc", ("V", "V", "V"), same, "set")
    assert combine("nothing", 0.0, "V", [(one, 2.0), (other, -1.0)]).combined_u < 1e-12
    assert still.sources == ()


@pytest.mark.parametrize("shape", [(3, 1), (2, 5)])
def test_too_few_readings_or_names_are_refused(shape):
    with pytest.raises(ValueError, match="no 3 quantities"):
        simultaneous("abc", "VVV", np.ones(shape), "set")


numbers = st.floats(0.05, 20.0)
signs = st.sampled_from([-1.0, 1.0])
random_lines = st.lists(
    st.tuples(
        st.floats(0.001, 1.0), numbers, signs, st.integers(0, 3), st.sampled_from([2.0, 5.0, 80.0])
    ),
    min_size=2,
    max_size=8,
)


@settings(max_examples=60, deadline=None)
@given(lines=random_lines)
def test_random_budgets_with_common_errors_agree_with_the_library(lines):
    # Key 0 stands for an error by itself; each other key is one error, with one input of the
    # library, that enters with the sum of its sensitivities.
    sources, inputs, output = [], {}, 0.0
    for place, (u, c, sign, key, degrees) in enumerate(lines):
        name = f"key {key}" if key else f"alone {place}"
        u_of, degrees_of, _ = inputs.setdefault(name, (u, degrees, ureal(0.0, u, degrees)))
        sources.append(
            Source(name, u_of, "V", sign * c, degrees=degrees_of, key=f"key {key}" if key else "")
        )
        output += sign * c * inputs[name][2]
    found = budget("y", 0.0, "V", sources)
    scale = max(abs(source.contribution) for source in sources)
    assert found.combined_u == pytest.approx(uncertainty(output), rel=1e-9, abs=1e-9 * scale)
    if found.combined_u > 1e-6 * scale:
        assert found.degrees == pytest.approx(dof(output), rel=1e-6)


@settings(max_examples=40, deadline=None)
@given(
    readings=st.lists(
        st.tuples(st.floats(-1.0, 1.0), st.floats(-1.0, 1.0), st.floats(-1.0, 1.0)),
        min_size=4,
        max_size=9,
    ),
    means=st.tuples(numbers, numbers, numbers),
)
def test_a_quotient_of_sets_of_readings_agrees_with_the_library(readings, means):
    table = np.array(readings).T * 0.02 + np.array(means)[:, None]
    if (table.std(axis=1) < 1e-6).any():
        return
    a, b, c = simultaneous("abc", ("V", "A", "V"), table, "set")
    count = table.shape[1]
    cov = np.cov(table) / count
    u = np.sqrt(np.diag(cov))
    x, y, z = multiple_ureal(list(table.mean(axis=1)), list(u), count - 1)
    for i, one in enumerate((x, y, z)):
        for j in range(i):
            r = float(np.clip(cov[i, j] / u[i] / u[j], -1.0, 1.0))
            one.set_correlation(r, (x, y, z)[j])
    other = x / y * z
    amount = a.value / b.value * c.value
    ours = combine(
        "q",
        amount,
        "V",
        [(a, amount / a.value), (b, -amount / b.value), (c, amount / c.value)],
    )
    assert ours.value == pytest.approx(value(other), rel=1e-9)
    scale = max(abs(amount / p.value) * p.combined_u for p in (a, b, c))
    assert ours.combined_u == pytest.approx(uncertainty(other), rel=1e-6, abs=1e-7 * scale)
    if ours.combined_u > 1e-4 * scale:
        assert ours.degrees == pytest.approx(dof(other), rel=1e-6)
        assert ours.degrees == pytest.approx(count - 1.0, rel=1e-6)
