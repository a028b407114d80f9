"""Bars and blocks cover what the columns hold, and nothing else."""

import numpy as np
from hypothesis import given
from hypothesis import strategies as st

from meterlog.evidence.column_bars import filled_blocks, joined_bars
from meterlog.evidence.pixel_columns import PixelColumns

EDGES = np.arange(0, 11 * 201, 11)
heights = st.one_of(st.integers(0, 60).map(float), st.just(float("nan")))


@given(st.lists(st.tuples(heights, heights), min_size=1, max_size=200))
def test_blocks_and_the_bars_beside_them_fill_each_column_from_bottom_to_top(columns):
    bottom, top = (np.array(one) for one in zip(*columns, strict=True))
    edges = EDGES[: len(columns) + 1]
    blocks = filled_blocks(edges, bottom, top)
    found = np.zeros((len(columns), 60), np.bool_)
    for left, right, low, high in zip(
        blocks.left_ns, blocks.right_ns, blocks.bottom, blocks.top, strict=True
    ):
        found[int(left) // 11 : int(right) // 11, int(low) : int(high)] = True
    bars = blocks.bars
    for at, low, high in zip(bars.x0_ns, bars.y0, bars.y1, strict=True):
        found[int(at // 11), int(low) : int(high)] = True
    for k, (low, high) in enumerate(columns):
        expected = np.zeros(60, np.bool_)
        if high > low:
            expected[int(low) : int(high)] = True
        np.testing.assert_array_equal(found[k], expected)


def _bars(kept, low, high, breaks=()):
    arrays = (np.array(one, dtype) for one, dtype in ((kept, int), (low, float), (high, float)))
    bars = joined_bars(PixelColumns(EDGES, *arrays, np.array(breaks, int)))
    ends = (bars.x0_ns, bars.y0, bars.x1_ns, bars.y1)
    return list(zip(*(one.tolist() for one in ends), strict=True))


def test_bars_of_columns_that_do_not_meet_are_lengthened_by_half_of_what_lies_between():
    assert _bars([3, 4, 5], [1, 6, 0], [2, 8, 3]) == [
        (38.5, 1.0, 38.5, 4.0),
        (49.5, 4.0, 49.5, 8.0),
        (60.5, 0.0, 60.5, 4.5),
    ]


def test_bars_are_not_joined_across_a_silence_or_a_column_without_a_value():
    nan = float("nan")
    assert _bars([3, 5], [1, 6], [2, 8], [1]) == [(38.5, 1.0, 38.5, 2.0), (60.5, 6.0, 60.5, 8.0)]
    assert _bars([3, 4, 5], [1, nan, 6], [2, nan, 8]) == [
        (38.5, 1.0, 38.5, 2.0),
        (60.5, 6.0, 60.5, 8.0),
    ]


def test_across_empty_columns_that_are_no_silence_a_line_leads():
    assert _bars([3, 6], [1, 6], [2, 8])[-1] == (38.5, 2.0, 71.5, 6.0)
