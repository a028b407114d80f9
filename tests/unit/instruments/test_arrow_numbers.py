"""Arrow's numbers as arrays are what Arrow itself makes of them."""

import itertools

import numpy as np
import pyarrow as pa
import pytest
from hypothesis import given
from hypothesis import strategies as st

from meterlog.instruments.arrow_numbers import reals_of, truths_of, wholes_of

CUTS = st.lists(st.integers(0, 20), max_size=3)


def cut(values, kind, places):
    """Give them in chunks, and a part of a longer array."""
    whole = pa.array([*values, *values], kind)[len(values) :]
    ends = [0, *sorted(min(one, len(values)) for one in places), len(values)]
    chunks = [whole[start:end] for start, end in itertools.pairwise(ends)]
    return whole, pa.chunked_array(chunks, kind)


@given(values=st.lists(st.none() | st.floats(), max_size=20), places=CUTS)
def test_reals_with_nulls_as_nan(values, places):
    for column in cut(values, pa.float64(), places):
        wanted = np.array([np.nan if one is None else one for one in values], float)
        np.testing.assert_array_equal(reals_of(column), wanted)


@given(values=st.lists(st.integers(-(2**63), 2**63 - 1), max_size=20), places=CUTS)
def test_whole_numbers(values, places):
    for column in cut(values, pa.int64(), places):
        assert wholes_of(column).tolist() == values


@given(values=st.lists(st.booleans(), max_size=20), places=CUTS)
def test_truths(values, places):
    for column in cut(values, pa.bool_(), places):
        assert truths_of(column).dtype == bool
        assert truths_of(column).tolist() == values


@pytest.mark.parametrize("give", [wholes_of, truths_of])
def test_nulls_are_not_taken_for_numbers(give):
    kind = pa.int64() if give is wholes_of else pa.bool_()
    with pytest.raises(ValueError, match="1 nulls"):
        give(pa.array([None], kind))
