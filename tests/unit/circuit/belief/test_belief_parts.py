"""Patterns of sittings, and severities put together from cells, each by itself."""

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.stats import norm

from meterlog.circuit.hypotheses import Cells, Hypothesis
from meterlog.circuit.severities import severity_of
from meterlog.circuit.sittings import patterns_of


@given(st.integers(1, 8), st.floats(-3.0, 0.0))
def test_the_patterns_kept_stand_for_all(sittings, away):
    alone = np.zeros((2, sittings, 2))
    alone[:, :, 0] = away
    open_ = np.ones(sittings, dtype=bool)
    found = patterns_of(alone, open_, np.zeros((2, sittings), dtype=bool))
    # Sittings that are independent: half each, and so the product over all of them.
    whole = sittings * math.log(0.5 + 0.5 * math.exp(away))
    for cell in (0, 1):
        own = found.which == cell
        log = found.log_share[own] + (found.there[own] == 0.0).sum(axis=1) * away
        assert np.logaddexp.reduce(log) == pytest.approx(whole, abs=1e-4)


def test_what_was_said_and_what_makes_no_difference_is_not_split():
    alone = np.zeros((1, 3, 2))
    alone[0, 0, 0] = -math.inf
    found = patterns_of(alone, np.array([False, True, True]), np.array([[True, True, False]]))
    assert found.there.tolist() == [[1.0, 0.5, 0.0], [1.0, 0.5, 1.0]]
    assert np.exp(found.log_share) == pytest.approx([0.5, 0.5])


def test_no_cells_have_no_patterns():
    found = patterns_of(np.zeros((0, 2, 2)), np.ones(2, dtype=bool), np.zeros((0, 2), dtype=bool))
    assert found.there.shape == (0, 2)


@pytest.mark.parametrize("read", [-0.7, 0.05, 0.4, 0.9, 1.9, 3.2])
@pytest.mark.parametrize("sd", [0.1, 0.4])
def test_a_severity_is_that_of_one_even_prior_however_it_was_cut(read, sd):
    # Logarithm of the severity even from -1 to 3, cut at 0 and 1; it was read with this sd.
    edges = np.array([-1.0, 0.0, 1.0, 3.0])
    middle, half = (edges[1:] + edges[:-1]) / 2.0, np.diff(edges) / 2.0
    slope = half / math.sqrt(3.0)
    weights = half / half.sum() * norm(middle, np.hypot(sd, slope)).pdf(read)
    place = slope * (read - middle) / (slope**2 + sd**2)
    variance = sd**2 / (slope**2 + sd**2)
    at = np.arange(3)
    severity = np.column_stack([np.exp(middle), np.full(3, np.nan)])
    hypothesis = Hypothesis(frozenset({"a"}), (), 1.0, False, "a", 0.0, 0.0)
    cells = Cells((hypothesis,), at * 0, np.log(half / half.sum()), severity, half, at, 3)
    found = severity_of(cells, 0, weights / weights.sum(), place, variance)
    exact = norm(read, sd)
    low, high = exact.cdf(edges[0]), exact.cdf(edges[-1])
    for one, part in ((found.median, 0.5), (found.low, 0.025), (found.high, 0.975)):
        assert math.log(one) == pytest.approx(exact.ppf(low + part * (high - low)), abs=0.03)
