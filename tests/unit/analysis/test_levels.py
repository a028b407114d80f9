"""Levels are means of whole tenths of a second, whatever the rows' cuts, and of what was read."""

from itertools import pairwise

import numpy as np
import pytest

from meterlog.analysis.levels import BIN_NS, Levels, runs_of
from meterlog.analysis.rows import Rows


def rows(t_s, amps, feed=None, back=None, **marks):
    amps = np.asarray(amps, float)
    columns = [None if column is None else np.asarray(column, float) for column in (feed, back)]
    ones = np.ones(len(amps), np.bool_)
    t_ns = np.round(np.asarray(t_s) * 1e9).astype(np.int64)
    return Rows(t_ns, amps, *columns, ones, ~ones, **marks)


def filled(parts):
    levels = Levels()
    for part in parts:
        levels.take(part)
    return levels


def whole(levels):
    return levels.part(0, len(levels))


def test_a_bin_is_the_mean_of_its_tenth_of_a_second():
    part = whole(filled([rows([0.01, 0.05, 0.10, 0.19, 0.35], [1, 3, 5, 7, 9], [12] * 5)]))
    assert part.t_ns.tolist() == [0, BIN_NS, 3 * BIN_NS]
    assert part.amps.tolist() == [2.0, 6.0, 9.0]
    assert part.feed.tolist() == [12.0] * 3
    assert np.isnan(part.back).all()


@pytest.mark.parametrize("places", [[3], [1, 2, 3, 4], [5, 50, 51, 99], list(range(1, 200, 7))])
def test_cuts_make_no_difference(places):
    rng = np.random.default_rng(1)
    all_rows = rows(np.arange(200) * 0.013, rng.normal(5, 1, 200), rng.normal(12, 1, 200))
    expected = whole(filled([all_rows]))
    cut = whole(filled([all_rows.part(a, b) for a, b in pairwise([0, *places, 200])]))
    assert cut.t_ns.tolist() == expected.t_ns.tolist()
    np.testing.assert_allclose(cut.amps, expected.amps, rtol=1e-12)
    np.testing.assert_allclose(cut.feed, expected.feed, rtol=1e-12)


def test_what_is_held_over_or_missing_does_not_count():
    new = np.array([True, False, True])
    part = whole(filled([rows([0.01, 0.02, 0.03], [1, 100, 3], [12, np.nan, 14], amps_new=new)]))
    assert part.amps.tolist() == [2.0]
    assert part.feed.tolist() == [13.0]


def test_within_gives_whole_bins_only():
    levels = filled([rows(np.arange(0.05, 1.0, 0.1), np.arange(10))])
    assert levels.within(100_000_000, 300_000_000).amps.tolist() == [1.0, 2.0]
    assert levels.within(100_000_001, 299_999_999).amps.tolist() == []
    assert levels.within(500_000_000, 400_000_000).amps.tolist() == []


def test_it_grows_beyond_its_first_room():
    count = 5000
    part = whole(filled([rows(np.arange(count) * 0.1 + 0.05, np.arange(count))]))
    assert part.amps.tolist() == list(range(count))


def test_runs_are_neighbours_in_time():
    t_ns = np.array([0, 1, 2, 4, 5, 9], np.int64) * BIN_NS
    mask = np.array([True, True, False, True, True, True])
    tenth = BIN_NS
    assert runs_of(mask, t_ns) == [
        (0, 2 * tenth),
        (4 * tenth, 6 * tenth),
        (9 * tenth, 10 * tenth),
    ]
    assert runs_of(np.zeros(6, np.bool_), t_ns) == []
