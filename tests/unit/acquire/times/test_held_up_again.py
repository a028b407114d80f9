"""What holds a sender up often does so again before all of it has come: nothing is missing then."""

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from meterlog.acquire.times.stamping import Sending, Stamper
from meterlog.instruments import Readings

MS, S, PACE_MS = 1_000_000, 1_000_000_000, 20


def rows(count):
    return Readings(np.zeros((count, 1)), np.zeros((count, 1), np.uint8), None)


def true_ns(number):
    return S + number * PACE_MS * MS


def stamped(arrivals):
    """Give the stamper and all stamps; arrivals are (nanoseconds, how many together)."""
    stamper, out = Stamper(Sending(PACE_MS / 1e3)), []
    for arrived, count in arrivals:
        while stamper.waits and stamper._device.until_ns < arrived:
            out += stamper.check(stamper._device.until_ns)
        out += stamper.take(rows(count), arrived)
    out += stamper.gone()
    return stamper, np.array([t for one in out if one.readings is not None for t in one.t_ns])


PUNCTUAL = [(true_ns(n), 1) for n in range(100)]


@pytest.mark.parametrize(
    "held",
    [
        # Two after 144 ms, eleven more after another 115: as a loaded computer gave them.
        [(124, 2), (239, 11)],
        # One after 55 ms, five after 62 more, two after 36, then one by one.
        [(55, 1), (117, 5), (153, 2)],
        [(90, 1), (180, 8)],
        [(30, 1), (60, 1), (90, 4)],
    ],
)
def test_each_has_the_time_it_was_taken_at(held):
    arrivals, taken = list(PUNCTUAL), 100
    for late_ms, count in held:
        arrivals.append((true_ns(100) + late_ms * MS, count))
        taken += count
    after = arrivals[-1][0]
    arrivals += [(max(true_ns(n), after), 1) for n in range(taken, 200)]
    stamper, stamps = stamped(arrivals)
    assert np.abs(stamps - [true_ns(n) for n in range(200)]).max() <= PACE_MS * MS // 2
    assert stamper.lost == 0


@settings(max_examples=60)
@given(first=st.integers(100, 140), apart=st.integers(1, 4), more=st.integers(1, 4))
def test_two_losses_close_together_leave_a_gap_each_where_it_was(first, apart, more):
    lost = {first, first + apart, first + apart + more}
    kept = [n for n in range(200) if n not in lost]
    stamper, stamps = stamped([(true_ns(n), 1) for n in kept])
    assert np.abs(stamps - [true_ns(n) for n in kept]).max() <= MS
    assert stamper.lost == len(lost)


@settings(max_examples=60)
@given(
    lost=st.integers(1, 8),
    held_ms=st.integers(0, 150),
    count=st.integers(1, 6),
)
def test_what_is_lost_and_what_is_late_are_told_apart_by_what_comes_after(lost, held_ms, count):
    """Some are lost, then some are late: the gap is before them, as long as what was lost."""
    first = 100 + lost
    burst = true_ns(first + count - 1) + held_ms * MS
    arrivals = [*PUNCTUAL, (burst, count)]
    arrivals += [(max(true_ns(n), burst), 1) for n in range(first + count, 220)]
    stamper, stamps = stamped(arrivals)
    wanted = [true_ns(n) for n in (*range(100), *range(first, 220))]
    # What follows is right again, however long it took to see that.
    assert np.abs(stamps[-80:] - wanted[-80:]).max() <= MS
    assert stamper.lost == lost
    assert np.all(np.diff(stamps) >= 0)


def test_what_comes_when_its_time_was_given_away_is_counted():
    arrivals = [*PUNCTUAL, (true_ns(100) + 124 * MS, 2), (true_ns(100) + 424 * MS, 20)]
    arrivals += [(max(true_ns(n), arrivals[-1][0]), 1) for n in range(122, 200)]
    stamper, stamps = stamped(arrivals)
    assert stamper.lost == 0
    assert stamper.crowded > 0
    wrong = np.abs(stamps - [true_ns(n) for n in range(200)]) > PACE_MS * MS // 2
    assert stamper.crowded >= np.count_nonzero(wrong) - 2  # two were given away first
    assert np.all(np.diff(stamps) >= 0)
