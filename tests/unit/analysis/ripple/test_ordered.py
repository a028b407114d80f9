"""Percentiles and medians by sorting are numpy's own, to the last bit."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from hypothesis.extra.numpy import arrays

from meterlog.analysis.ripple.ordered import medians, percentiles

FINITE = st.floats(-1e6, 1e6)


@given(
    arrays(np.float64, st.integers(1, 60), elements=FINITE),
    st.lists(st.floats(0.0, 100.0), min_size=1, max_size=4),
)
def test_percentiles_are_numpys(values, parts):
    assert percentiles(values, *parts) == np.percentile(values, parts).tolist()


@pytest.mark.parametrize("count", [1, 2, 3, 7, 8, 100, 4_001, 8_000])
def test_percentiles_of_many_readings_are_numpys(count):
    values = 12.0 + np.random.default_rng(count).normal(0.0, 0.01, count)
    parts = (2.0, 35.0, 50.0, 65.0, 98.0)
    assert percentiles(values, *parts) == np.percentile(values, parts).tolist()


@given(
    st.tuples(st.integers(1, 5), st.integers(1, 40)).flatmap(
        lambda shape: arrays(np.float64, shape, elements=FINITE)
    )
)
def test_medians_are_numpys(rows):
    np.testing.assert_array_equal(medians(rows), np.median(rows, axis=1))
    np.testing.assert_array_equal(medians(rows[0]), np.median(rows[0]))


def test_nothing_given_is_changed():
    values = np.array([3.0, 1.0, 2.0])
    medians(values), percentiles(values, 50.0)
    assert values.tolist() == [3.0, 1.0, 2.0]
