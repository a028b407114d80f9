"""When a reading was taken, told from when it arrived."""

import numpy as np
from hypothesis import given
from hypothesis import strategies as st

from meterlog.acquire.stamping import Stamper
from meterlog.instruments import Readings

MS = 1_000_000


def rows(count: int, own: list[float] | None = None) -> Readings:
    time = None if own is None else np.array(own)
    return Readings(np.zeros((count, 1)), np.zeros((count, 1), np.uint8), time)


def test_a_reading_is_the_middle_of_its_integration_time():
    assert Stamper(0.02, 0.01).stamp(rows(1), 100 * MS).tolist() == [95 * MS]


def test_a_lump_is_spread_backwards_at_the_interval():
    stamps = Stamper(0.02, 0.0).stamp(rows(3), 100 * MS)
    assert stamps.tolist() == [60 * MS, 80 * MS, 100 * MS]
    assert stamps.dtype == np.int64


def test_a_lump_too_long_for_the_time_since_the_last_is_spread_over_that_time():
    stamper = Stamper(0.02, 0.0)
    stamper.stamp(rows(1), 100 * MS)
    assert stamper.stamp(rows(4), 120 * MS).tolist() == [105 * MS, 110 * MS, 115 * MS, 120 * MS]


def test_nothing_is_before_the_zero():
    assert Stamper(0.02, 0.1).stamp(rows(2), 10 * MS).tolist() == [0, 0]


def test_an_answer_lies_between_query_and_arrival_when_the_integration_is_unknown():
    assert Stamper(0.2, 0.0).stamp(rows(1), 300 * MS, 100 * MS).tolist() == [200 * MS]
    assert Stamper(0.2, 0.1).stamp(rows(1), 300 * MS, 100 * MS).tolist() == [250 * MS]


def test_own_times_keep_their_distances_whatever_the_arrival():
    stamper = Stamper(0.02, 0.0)
    first = stamper.stamp(rows(2, [5.00, 5.02]), 100 * MS)
    later = stamper.stamp(rows(2, [5.04, 5.06]), 190 * MS)
    assert [*first.tolist(), *later.tolist()] == [80 * MS, 100 * MS, 120 * MS, 140 * MS]


def test_own_times_never_reach_into_the_future():
    stamper = Stamper(0.02, 0.0)
    stamper.stamp(rows(1, [0.0]), 100 * MS)
    assert stamper.stamp(rows(1, [1.0]), 200 * MS).tolist() == [200 * MS]


def test_an_own_clock_that_starts_again_is_tied_anew():
    stamper = Stamper(0.02, 0.0)
    stamper.stamp(rows(1, [1000.0]), 100 * MS)
    assert stamper.stamp(rows(2, [0.0, 0.02]), 500 * MS).tolist() == [480 * MS, 500 * MS]
    assert stamper.stamp(rows(1, [0.12]), 700 * MS).tolist() == [600 * MS]


def test_an_own_clock_that_runs_over_within_a_lump_is_tied_anew():
    stamper = Stamper(0.02, 0.0)
    assert stamper.stamp(rows(3, [9.98, 0.0, 0.02]), 500 * MS).tolist() == [
        460 * MS,
        480 * MS,
        500 * MS,
    ]
    assert stamper.stamp(rows(1, [0.05]), 600 * MS).tolist() == [530 * MS]


@given(
    lumps=st.lists(st.tuples(st.integers(0, 10**9), st.integers(1, 50)), min_size=1, max_size=20),
    interval_s=st.floats(1e-6, 10.0),
    integration_s=st.floats(0.0, 1.0),
    own=st.none() | st.lists(st.floats(-1e6, 1e6), min_size=1, max_size=60),
)
def test_time_never_runs_backwards_and_never_beyond_the_arrival(
    lumps, interval_s, integration_s, own
):
    stamper = Stamper(interval_s, integration_s)
    arrived, last, used = 0, 0, 0
    for gap, count in lumps:
        arrived += gap
        times = None if own is None else [own[(used + row) % len(own)] for row in range(count)]
        used += count
        stamps = stamper.stamp(rows(count, times), arrived)
        assert len(stamps) == count
        assert stamps[0] >= last
        assert np.all(np.diff(stamps) >= 0)
        assert stamps[-1] <= arrived
        last = int(stamps[-1])
