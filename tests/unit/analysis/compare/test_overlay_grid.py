"""Currents on a grid: no peak lost, the same however the readings are cut."""

from itertools import pairwise

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from meterlog.analysis.compare import OverlayGrid, bins_for, overlay


def _trace(seed, count=500):
    dice = np.random.default_rng(seed)
    t = np.sort(dice.integers(0, 12 * 10**9, count))
    amps = dice.normal(10.0, 1.0, count)
    amps[dice.integers(0, count, 20)] = np.nan
    return t, amps


@settings(max_examples=50, deadline=None)
@given(st.integers(0, 100), st.lists(st.integers(0, 500), max_size=8))
def test_cut_anywhere_the_grid_is_the_same(seed, cuts):
    t, amps = _trace(seed)
    whole, cut = (OverlayGrid(10**9, 10.0, 40) for _ in range(2))
    whole.take(t, amps)
    edges = [0, *sorted(cuts), len(t)]
    for start, stop in pairwise(edges):
        cut.take(t[start:stop], amps[start:stop])
    assert np.array_equal(whole.amps(1.0), cut.amps(1.0), equal_nan=True)
    assert np.array_equal(whole.falls(1.0), cut.falls(1.0))


@given(st.integers(0, 50))
def test_lowest_and_highest_of_each_bin_are_those_of_its_readings(seed):
    t, amps = _trace(seed)
    grid = OverlayGrid(10**9, 10.0, 40)
    grid.take(t, amps)
    edges = 10**9 + np.round(np.linspace(0.0, 10.0, 41) * 1e9).astype(np.int64)
    seen = grid.amps(1.0)
    for k in range(40):
        inside = amps[(t >= edges[k]) & (t < edges[k + 1])]
        inside = inside[np.isfinite(inside)]
        if len(inside):
            assert seen[2 * k] == inside.min()
            assert seen[2 * k + 1] == inside.max()
        else:
            assert np.isnan(seen[2 * k : 2 * k + 2]).all()


def test_a_peak_of_one_reading_is_on_the_grid_at_its_time():
    t = np.arange(0, 10**10, 10**6)
    amps = np.full(len(t), 5.0)
    amps[3210] = 40.0
    grid = OverlayGrid(0, 10.0, 250)
    grid.take(t, amps)
    shown = grid.amps(1.0)
    assert shown.max() == 40.0
    assert grid.t_s[int(shown.argmax())] == pytest.approx(3.21, abs=0.02)


@given(st.integers(0, 50))
def test_which_end_came_first_is_that_of_the_readings(seed):
    t, amps = _trace(seed)
    grid = OverlayGrid(10**9, 10.0, 40)
    grid.take(t, amps)
    edges = 10**9 + np.round(np.linspace(0.0, 10.0, 41) * 1e9).astype(np.int64)
    for k in range(40):
        inside = (t >= edges[k]) & (t < edges[k + 1]) & np.isfinite(amps)
        if inside.any():
            lowest, highest = amps[inside].argmin(), amps[inside].argmax()
            times = t[inside]
            assert grid.falls(1.0)[k] == (times[highest] < times[lowest])
            assert grid.falls(-1.0)[k] == (times[lowest] < times[highest])


def test_beyond_its_own_end_nothing_is_taken():
    t, amps = np.arange(0, 10**10, 10**8), np.full(100, 5.0)
    amps[60:] = 13.5
    grid = OverlayGrid(0, 10.0, 7, 6 * 10**9)
    grid.take(t, amps)
    seen = grid.amps(1.0)
    assert np.nanmax(seen) == 5.0
    assert grid.t_s[np.isfinite(seen)].max() > 5.0
    assert np.isnan(seen[grid.t_s > 6.5]).all()


def test_a_clamp_the_other_way_round_is_turned():
    grid = OverlayGrid(0, 1.0, 1)
    grid.take(np.array([1, 2, 3]), np.array([-4.0, -9.0, -5.0]))
    assert grid.amps(-1.0).tolist() == [4.0, 9.0]


def test_of_several_good_motors_the_outermost_are_shown():
    grids = [OverlayGrid(0, 1.0, 1) for _ in range(3)]
    for grid, amps in zip(grids, ([4.0, 5.0], [3.0, 4.5], [8.0, 9.0]), strict=True):
        grid.take(np.array([1, 2]), np.array(amps))
    shown = overlay("speed 1", 1, grids, [1.0, 1.0, 1.0])
    assert shown.old_a == (3.0, 5.0)
    assert shown.new_a == (8.0, 9.0)
    assert len(shown.t_s) == len(shown.old_a) == 2


def test_a_slow_meter_gets_bins_it_can_fill():
    assert bins_for(60.0, 0.5) == 120
    assert bins_for(60.0, 1e-4) == 250
    assert bins_for(0.1, 0.5) == 1
    assert bins_for(60.0, 0.0) == 250
