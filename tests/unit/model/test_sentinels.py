"""Sentinels one by one and in arrays: the same answer."""

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from meterlog.model import Flag
from meterlog.model.sentinels import mark_sentinels, tell_number

NUMBERS = st.one_of(
    st.floats(width=32),
    st.floats(),
    st.sampled_from([9.9e37, -9.9e37, 9.91e37, 9.0e37, 8.99e37, math.inf, -math.inf, math.nan]),
)


@given(rows=st.lists(st.tuples(NUMBERS, NUMBERS), max_size=20))
def test_an_array_is_marked_as_its_numbers_are_one_by_one(rows):
    values = np.array(rows, float).reshape(-1, 2)
    flags = np.zeros(values.shape, np.uint8)
    told = [[tell_number(float(number)) for number in row] for row in values]
    mark_sentinels(values, flags)
    want = np.array([[number for number, _ in row] for row in told]).reshape(-1, 2)
    np.testing.assert_array_equal(values, want)
    assert flags.tolist() == [[int(flag) for _, flag in row] for row in told]


def test_what_is_flagged_already_is_left_alone():
    values = np.array([[np.nan, 9.9e37]])
    flags = np.array([[int(Flag.OVERLOAD), 0]], np.uint8)
    mark_sentinels(values, flags)
    assert flags.tolist() == [[int(Flag.OVERLOAD), int(Flag.OVERLOAD)]]


@pytest.mark.parametrize("order", ["C", "F"])
def test_a_million_sentinels_take_no_longer_than_a_glance(order):
    # One by one they took seconds: the test's time limit is far, but the suite would be felt.
    values = np.full((250_000, 4), np.nan, order=order)
    flags = np.zeros(values.shape, np.uint8, order=order)
    mark_sentinels(values, flags)
    assert (flags == int(Flag.NO_DATA)).all()
