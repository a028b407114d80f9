"""Times that are made instead of read are those that were there, or they are not made."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from meterlog.recording.even_times import are_even, even_rows_before, even_times, steps_of
from meterlog.recording.pyramid_form import FIRST_CELL, word_sums


def _cells(t_ns):
    cells = t_ns.reshape(-1, FIRST_CELL)
    return cells[:, 0].copy(), word_sums(cells.view(np.uint64))


@given(
    start=st.integers(0, 2**53),
    step=st.integers(0, 2**33),
    count=st.integers(2, 40),
    odd=st.lists(st.tuples(st.integers(0, 40 * 64), st.integers(-3, 3)), max_size=3),
)
def test_only_cells_whose_rows_lie_evenly_are_told_to(start, step, count, odd):
    t_ns = start + step * np.arange(count * FIRST_CELL, dtype=np.int64)
    for at, by in odd:
        if at < len(t_ns):
            t_ns[at] += by
    first_ns, checks = _cells(t_ns)
    steps = steps_of(first_ns)
    even = are_even(first_ns, steps, checks)
    made = even_times(first_ns, steps)
    cells = t_ns.reshape(-1, FIRST_CELL)
    np.testing.assert_array_equal(even, (made == cells).all(axis=1))
    if not odd:
        assert even.all()


@given(
    step=st.integers(0, 5),
    count=st.integers(1, 6),
    gaps=st.lists(st.integers(0, 400), min_size=6, max_size=6),
    asked=st.lists(st.integers(-50, 4_000), min_size=1, max_size=30),
)
def test_rows_before_an_instant_are_counted_as_in_all_their_times(step, count, gaps, asked):
    first_ns = np.cumsum([0, *(step * FIRST_CELL + gap for gap in gaps[: count - 1])])
    steps = np.full(count, step)
    t_ns = even_times(first_ns, steps).ravel()
    asked = np.array(asked)
    expected = np.searchsorted(t_ns, asked)
    np.testing.assert_array_equal(even_rows_before(asked, first_ns, steps), expected)


@pytest.mark.parametrize("bit", [0, 31, 32, 51])
def test_a_check_that_is_off_by_one_bit_is_no_match(bit):
    t_ns = 5 * 2**32 - 3_000_000 + 100_000 * np.arange(4 * FIRST_CELL, dtype=np.int64)
    first_ns, checks = _cells(t_ns)
    assert are_even(first_ns, steps_of(first_ns), checks).all()
    checks[1] ^= np.uint64(1) << np.uint64(bit)
    assert are_even(first_ns, steps_of(first_ns), checks).tolist() == [True, False, True, True]
