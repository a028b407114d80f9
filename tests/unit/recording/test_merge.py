"""Merging: rows and events of several instruments in time order."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from meterlog.model import Block, Event, EventKind, join
from meterlog.recording.merge import merge


def _blocks(key, times, size):
    for start in range(0, len(times), size):
        t_ns = np.array(times[start : start + size], np.int64)
        values = np.arange(start, start + len(t_ns), dtype=float)[:, None]
        yield Block(key, t_ns, values, np.zeros(values.shape, np.uint8))


_TIMES = st.lists(st.integers(0, 30), max_size=25).map(sorted)


@given(_TIMES, _TIMES, st.integers(1, 6), st.integers(1, 6), _TIMES)
def test_every_row_and_event_comes_once_and_in_its_place(one, two, size_one, size_two, marks):
    events = [Event(t, EventKind.NOTE, str(k)) for k, t in enumerate(marks)]
    items = list(merge([_blocks("a", one, size_one), _blocks("b", two, size_two)], events))
    for key, times in (("a", one), ("b", two)):
        parts = [item for item in items if isinstance(item, Block) and item.source == key]
        if times:
            whole = join(parts)
            assert whole.t_ns.tolist() == times
            assert whole.values[:, 0].tolist() == list(range(len(times)))
    assert [item for item in items if isinstance(item, Event)] == events
    for place, item in enumerate(items):
        if isinstance(item, Event):
            before = [t for b in items[:place] if isinstance(b, Block) for t in b.t_ns]
            after = [t for b in items[place:] if isinstance(b, Block) for t in b.t_ns]
            assert all(t < item.t_ns for t in before)
            assert all(t >= item.t_ns for t in after)


def test_no_source_runs_ahead_of_another_by_more_than_a_block():
    fast = list(range(1000))
    slow = list(range(0, 1000, 100))
    reached = {"a": -1, "b": -1}
    for item in merge([_blocks("a", fast, 50), _blocks("b", slow, 2)], []):
        reached[item.source] = int(item.t_ns[-1])
        assert reached["a"] - reached["b"] <= 200
        assert reached["b"] - reached["a"] <= 100
    assert reached == {"a": 999, "b": 900}


@pytest.mark.timeout(60)
@pytest.mark.parametrize("times", [(5, 1), (0, 9, 9, 2), (2**62, -(2**62), 0)])
def test_times_that_run_back_end_and_lose_no_row(times):
    t_ns = np.array(times, np.int64)
    odd = Block("a", t_ns, np.zeros((len(t_ns), 1)), np.zeros((len(t_ns), 1), np.uint8))
    good = Block("b", np.arange(3), np.zeros((3, 1)), np.zeros((3, 1), np.uint8))
    found = list(merge([iter([odd, odd]), iter([good])], [Event(3, EventKind.TAP)]))
    rows = dict.fromkeys("ab", 0)
    for one in found:
        if isinstance(one, Block):
            rows[one.source] += len(one)
    assert rows == {"a": 2 * len(times), "b": 3}
    assert sum(isinstance(one, Event) for one in found) == 1
