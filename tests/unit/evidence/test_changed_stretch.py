"""Outside of the stretch that is told, what was painted before is what would be painted now."""

import math

import numpy as np
from hypothesis import given
from hypothesis import strategies as st

from meterlog.evidence.changed_stretch import changed_area, changed_line
from meterlog.evidence.column_bars import joined_bars
from meterlog.evidence.pixel_columns import PixelColumns, drawn_columns

COLUMNS = 20
END = 2_000
_VALUE = st.sampled_from([0.0, 1.0, 5.0, math.nan])
_READINGS = st.lists(st.tuples(st.integers(0, END), _VALUE), max_size=160).map(
    lambda rows: sorted(rows, key=lambda row: row[0])
)


def _drawn(rows):
    t_ns = np.array([t for t, _ in rows], dtype=np.int64)
    return drawn_columns(t_ns, np.array([v for _, v in rows]), 0, END, COLUMNS)


def _strokes(drawn):
    """Give what is painted: from where to where, as a set."""
    if isinstance(drawn, PixelColumns):
        bars = joined_bars(drawn)
        return set(zip(bars.x0_ns, bars.y0, bars.x1_ns, bars.y1, strict=True))
    t_ns, values = (one.tolist() for one in drawn)
    strokes = zip(t_ns, values, t_ns[1:], values[1:], strict=False)
    return {one for one in strokes if not any(map(math.isnan, one))}


def _holds(before, now):
    edges = changed_line(before, now)
    others = _strokes(before) ^ _strokes(now)
    if edges is None:
        assert not others
        return
    assert edges[0] <= edges[1]
    for x0, _, x1, _ in others:
        assert edges[0] <= x0 <= x1 <= edges[1]


@given(_READINGS, st.data())
def test_of_a_line_that_grew(rows, data):
    cut = data.draw(st.integers(0, len(rows)))
    _holds(_drawn(rows[:cut]), _drawn(rows))


@given(_READINGS, _READINGS)
def test_of_any_two_lines(rows, others):
    _holds(_drawn(rows), _drawn(others))


@given(_READINGS)
def test_the_same_line_is_not_painted_again_and_the_first_wholly(rows):
    assert changed_line(_drawn(rows), _drawn(rows)) is None
    assert changed_line(None, _drawn(rows)) == (-math.inf, math.inf)


def test_a_line_that_grew_by_one_reading_is_painted_from_the_last_one_on():
    t_ns, values = np.arange(5) * 100, np.full(5, 3.0)
    assert changed_line((t_ns[:4], values[:4]), (t_ns, values)) == (300.0, 400.0)
    shown = drawn_columns(np.arange(0, 1_000, 2), np.full(500, 3.0), 0, END, COLUMNS)
    more = drawn_columns(np.arange(0, 1_110, 2), np.full(555, 3.0), 0, END, COLUMNS)
    assert changed_line(shown, more) == (900.0, 1_200.0)


def test_columns_of_another_stretch_are_painted_wholly():
    t_ns, values = np.arange(0, END, 2), np.full(END // 2, 3.0)
    shown = drawn_columns(t_ns, values, 0, END, COLUMNS)
    moved = drawn_columns(t_ns, values, 100, END + 100, COLUMNS)
    assert changed_line(shown, moved) == (-math.inf, math.inf)
    assert changed_line(shown, (t_ns, values)) == (-math.inf, math.inf)


_SIDE = st.lists(_VALUE, min_size=COLUMNS, max_size=COLUMNS).map(np.array)


@given(_SIDE, _SIDE, _SIDE, _SIDE)
def test_columns_of_an_area_outside_are_the_same(bottom, top, other_bottom, other_top):
    edges = np.arange(COLUMNS + 1) * 100
    told = changed_area((edges, bottom, top), (edges, other_bottom, other_top))
    others = [
        k
        for k in range(COLUMNS)
        if not np.array_equal((bottom[k], top[k]), (other_bottom[k], other_top[k]), equal_nan=True)
    ]
    assert told == ((edges[others[0]], edges[others[-1] + 1]) if others else None)


def test_an_area_that_comes_goes_or_moves_is_painted_wholly():
    edges, side = np.arange(COLUMNS + 1) * 100, np.ones(COLUMNS)
    area = edges, side, side + 1.0
    assert changed_area(None, None) is None
    for before, now in ((None, area), (area, None), (area, (edges + 1, side, side + 1.0))):
        assert changed_area(before, now) == (-math.inf, math.inf)
