"""The interval of a trace: the largest that is typical, told from all rows however they come."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from meterlog.recording.trace_pace import ALONE_S, TracePace


def interval_of(steps_s, lots=1):
    steps_ns = np.rint(np.asarray(steps_s, float) * 1e9).astype(np.int64)
    t_ns = np.concatenate(([0], np.cumsum(steps_ns)))
    pace = TracePace()
    for part in np.array_split(t_ns, lots):
        pace.take(part)
    return pace.interval_s


@pytest.mark.parametrize(
    ("steps_s", "interval_s"),
    [
        ([0.1] * 50, 0.1),
        ([0.02] * 30 + [0.0] * 30, 0.02),  # two rows of each instant
        ([0.01] * 3000 + [0.1] * 300, 0.1),  # a logger that changes over
        ([0.1] * 300 + [0.01] * 3000, 0.1),
        ([0.01] * 12_000 + [1.0] * 24, 1.0),  # 0.2 % of the rows, 17 % of the time
        ([0.001, 0.332] * 60, 0.332),  # readings that come in pairs
        (([0.001] * 15 + [0.318]) * 40, 0.318),  # and in lumps of 16
        (([0.001] * 49 + [0.951]) * 20, 0.951),  # 2 % of the rows, 95 % of the time
        (([0.02] * 500 + [4.0]) * 5, 0.02),  # somebody paused it five times
        (([0.1] * 99 + [0.2]) * 30, 0.1),  # one reading in a hundred is missing
        ([0.02, 0.02, 4.96, 0.02], 0.02),
        ([3.0], 3.0),
        ([], ALONE_S),
    ],
)
def test_the_interval_is_the_largest_typical_step(steps_s, interval_s):
    assert interval_of(steps_s) == pytest.approx(interval_s, rel=1e-9)


def test_jitter_of_a_tenth_bends_the_interval_by_less_than_a_twentieth():
    steps_s = np.random.default_rng(3).normal(0.1, 0.01, 4000)
    assert interval_of(steps_s) == pytest.approx(0.1, rel=0.05)


def test_losses_at_random_do_not_multiply_the_interval():
    kept = np.flatnonzero(np.random.default_rng(4).random(200_000) > 0.03)
    assert interval_of(np.diff(kept) * 0.02) == pytest.approx(0.02)


@given(
    st.lists(st.sampled_from([0.0, 0.001, 0.01, 0.1, 0.11, 2.0]), max_size=60), st.integers(1, 9)
)
def test_it_does_not_depend_on_where_the_lots_are_cut(steps_s, lots):
    assert interval_of(steps_s, lots) == pytest.approx(interval_of(steps_s), rel=1e-12)


def test_times_near_the_end_of_what_64_bits_hold_are_taken():
    pace = TracePace()
    pace.take(np.array([0, 1, 9_200_000_000_000_000_000]))
    assert 0 < pace.interval_s <= 9.2e9
