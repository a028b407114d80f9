"""A long table gives what plain arrays would, whatever of it lies elsewhere."""

from itertools import pairwise
from unittest import mock

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from meterlog.analysis import long_table
from meterlog.analysis.long_table import BLOCK, MOST_HELD, LongTable, sums_of

TAKES = {
    "always": lambda number: True,
    "never": lambda number: False,
    "at first": lambda number: number <= 3,
    "now and then": lambda number: number % 5 in {1, 2},
    "later": lambda number: number > 4,
}


def columns(count, seed=1):
    """Keys with gaps, another whole number, and two reals."""
    rng = np.random.default_rng(seed)
    keys = np.cumsum(rng.integers(1, 4, count)) - 5
    wholes = np.array((keys, rng.integers(-(2**62), 2**62, count)))
    return wholes, rng.normal(0.0, 1.0, (2, count)) * 10.0 ** rng.integers(-9, 9, (2, count))


def filled(attic, wholes, reals, places):
    table = LongTable(2, 2, attic)
    for a, b in pairwise(sorted({0, wholes.shape[1], *places})):
        table.append(wholes[:, a:b], reals[:, a:b])
    return table


def same(table, wholes, reals, first, last):
    for found in (table.rows(first, last), joined(table.lots(first, last))):
        assert np.array_equal(found[0], wholes[:, first:last])
        assert np.array_equal(found[1], reals[:, first:last])


def joined(lots):
    parts = [(np.empty((2, 0), np.int64), np.empty((2, 0))), *lots]
    return tuple(np.concatenate(one, axis=1) for one in zip(*parts, strict=True))


@settings(max_examples=150, deadline=None)
@given(data=st.data(), takes=st.sampled_from(list(TAKES)), count=st.integers(1, 700))
def test_rows_are_those_of_plain_arrays_wherever_they_are_cut(plain, data, takes, count):
    wholes, reals = columns(count)
    with mock.patch.multiple(long_table, BLOCK=8, MOST_HELD=64, _FIRST_ROOM=4):
        attic = plain.MemoryAttic(TAKES[takes])
        table = filled(attic, wholes, reals, data.draw(st.lists(st.integers(0, count))))
        assert len(table) == count
        borders = st.one_of(st.integers(0, count), st.integers(0, count // 8).map(lambda n: 8 * n))
        for _ in range(8):
            first, last = sorted((data.draw(borders), data.draw(borders)))
            same(table, wholes, reals, first, last)
            key = int(wholes[0, min(first, count - 1)]) + data.draw(st.integers(-2, 2))
            for side in ("left", "right"):
                assert table.find(key, side) == np.searchsorted(wholes[0], key, side)
        if takes == "always" and count > 64 + 16:
            assert table.held <= 64
        if takes == "never":
            assert table.held == count


@pytest.mark.parametrize("first", [*range(1, BLOCK, 97), BLOCK - 1, BLOCK])
def test_no_more_is_held_than_said_however_the_rows_began(plain, first):
    """Room that is doubled from an odd beginning had passed by what may be held."""
    count = 2 * MOST_HELD
    wholes, reals = columns(count)
    table = LongTable(2, 2, plain.MemoryAttic(TAKES["always"]))
    for a, b in pairwise([0, first, *range(first + BLOCK, count, BLOCK)]):
        table.append(wholes[:, a:b], reals[:, a:b])
        assert table.held <= MOST_HELD
        assert table.wholes.shape[1] <= MOST_HELD


@pytest.mark.parametrize("takes", list(TAKES))
def test_true_sizes(plain, takes):
    count = 3 * MOST_HELD + 137
    wholes, reals = columns(count)
    table = filled(plain.MemoryAttic(TAKES[takes]), wholes, reals, range(0, count, 777))
    for first, last in (
        (0, count),
        (BLOCK - 1, BLOCK + 1),
        (5 * BLOCK, 6 * BLOCK),
        (count - MOST_HELD, count),
        (7, 7),
        (count, count),
    ):
        same(table, wholes, reals, first, last)
    for at in (0, 1, BLOCK - 1, BLOCK, count - 1):
        assert table.find(int(wholes[0, at]), "left") == at
        assert table.find(int(wholes[0, at]), "right") == at + 1


def test_nothing_is_laid_aside_of_a_short_recording_and_memory_stays_bounded(plain):
    attic = plain.MemoryAttic()
    wholes, reals = columns(20 * MOST_HELD)
    table = filled(attic, wholes[:, :MOST_HELD], reals[:, :MOST_HELD], range(0, MOST_HELD, 100))
    assert attic.asked == 0
    table = filled(attic, wholes, reals, range(0, 20 * MOST_HELD, 100))
    assert table.wholes.shape[1] == table.reals.shape[1] == MOST_HELD
    assert table.held >= MOST_HELD // 2


def test_the_last_row_may_change_also_right_after_others_were_laid_aside(plain):
    wholes, reals = columns(2 * MOST_HELD)
    table = LongTable(2, 2, plain.MemoryAttic())
    for at in range(2 * MOST_HELD):
        table.make_room(1)
        table.wholes[:, table.held], table.reals[:, table.held] = wholes[:, at], 0.0
        table.held += 1
        table.reals[:, table.held - 1] += reals[:, at]
    same(table, wholes, reals, 0, 2 * MOST_HELD)


def test_what_was_laid_aside_can_not_be_changed_by_who_reads_it(plain):
    wholes, reals = columns(2 * MOST_HELD)
    table = filled(plain.MemoryAttic(), wholes, reals, [])
    first, _ = next(table.lots(0, 5))
    with pytest.raises(ValueError, match="read-only"):
        first[0, 0] = 1


@settings(max_examples=100, deadline=None)
@given(
    count=st.one_of(st.integers(1, 300), st.integers(301, 40_000)),
    cuts=st.lists(st.floats(0, 1), max_size=12),
    seed=st.integers(0, 9),
)
def test_sums_in_lots_are_numpys_own_to_the_last_bit(count, cuts, seed):
    rng = np.random.default_rng(seed)
    table = rng.normal(5.0, 3.0, (3, count + 11)) * 10.0 ** rng.integers(-6, 6, (3, count + 11))
    part = table[:, 4 : 4 + count]
    places = sorted({0, count, *(round(cut * count) for cut in cuts)})
    lots = [part[:, a:b] for a, b in pairwise(places)]
    assert np.array_equal(sums_of(lots, count), part.sum(axis=1))
