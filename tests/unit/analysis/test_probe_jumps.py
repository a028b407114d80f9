"""The step just behind a break, told without windows of numpy's, as those would tell it."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from numpy.lib.stride_tricks import sliding_window_view

from meterlog.analysis.probe_jumps import WINDOW, _just_before

apart = st.lists(st.integers(1, 4), min_size=WINDOW + 8, max_size=40)


@given(apart, st.integers(0, 40), st.integers(1, 6))
def test_it_is_what_the_windows_say(apart, count, lag):
    apart = np.array(apart, np.int64)
    wanted = sliding_window_view(apart[WINDOW - 1 :], lag)[:count].argmax(axis=1) == 1
    np.testing.assert_array_equal(_just_before(apart, count, lag), wanted)


@pytest.mark.parametrize("lag", [1, 2, 5])
def test_nothing_of_nothing(lag):
    assert len(_just_before(np.ones(WINDOW - 1, np.int64), 3, lag)) == 0
