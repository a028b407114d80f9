"""Columns that are kept while a picture is moved are those that would be asked for."""

from itertools import pairwise

import numpy as np
from hypothesis import given
from hypothesis import strategies as st

from meterlog.evidence.kept_columns import Extremes, KeptColumns
from meterlog.evidence.pixel_columns import column_edges, whole_columns

T_NS = np.sort(np.random.default_rng(2).integers(0, 100_000, 4_000))
VALUES = np.random.default_rng(3).normal(size=4_000)


def _fetched(edges):
    bounds = np.searchsorted(T_NS, edges)
    parts = [VALUES[a:b] for a, b in pairwise(bounds)]
    low = np.array([part.min(initial=np.inf) for part in parts])
    high = np.array([part.max(initial=-np.inf) for part in parts])
    return Extremes(low[None], high[None], np.diff(bounds) > 0)


moves = st.lists(
    st.tuples(
        st.sampled_from([400, 401, 1_000, 12_345]),  # width in ns
        st.integers(-2_000, 100_000),
        st.sampled_from([7, 40, 97]),
    ),
    min_size=1,
    max_size=12,
)


@given(moves, st.booleans())
def test_however_a_picture_is_moved_its_columns_are_those_of_the_readings(moves, on_grid):
    kept = KeptColumns()
    for width, start, columns in moves:
        stretch = whole_columns(start, start + width, columns - 0.4, on_grid=on_grid)
        asked = stretch.start_ns, stretch.reach_ns, stretch.columns
        found, true = kept.columns(*asked, _fetched), _fetched(column_edges(*asked))
        np.testing.assert_array_equal(found.low, true.low)
        np.testing.assert_array_equal(found.high, true.high)
        np.testing.assert_array_equal(found.has_rows, true.has_rows)


def test_of_a_picture_that_is_moved_only_what_comes_in_is_asked_for():
    kept, asked = KeptColumns(), []

    def fetch(edges):
        asked.append(len(edges) - 1)
        return _fetched(edges)

    for start in (5_000, 5_300, 5_100, 5_100, 60_000):
        stretch = whole_columns(start, start + 10_000, 100.0, on_grid=True)
        kept.columns(stretch.start_ns, stretch.reach_ns, stretch.columns, fetch)
    # All; three come in and the last held one more instant; two and the last; the last; all.
    assert asked == [100, 4, 2, 1, 1, 100]


def test_a_stretch_on_the_grid_differs_by_less_than_a_column():
    for start, end, wide in (
        (0, 10**9, 1027.5),
        (123_456_789, 987_654_321, 333.0),
        (5, 905, 640.0),
    ):
        one = whole_columns(start, end, wide, on_grid=True)
        step = (one.reach_ns - one.start_ns) / one.columns
        assert step == round(step)
        assert abs(one.start_ns - start) <= step
        # A column is a whole number of nanoseconds.
        assert abs((one.end_ns - one.start_ns) - (end - start)) <= wide / 2 + 1
