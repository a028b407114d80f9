"""The tail drops when nobody looks, and says how much."""

import threading

import numpy as np
from hypothesis import given
from hypothesis import strategies as st

from meterlog.model import Block, Event, EventKind, RawBytes
from meterlog.work import LiveTail


def rows(count, start=0):
    times = np.arange(start, start + count, dtype=np.int64)
    return Block("a", times, np.zeros((count, 1)), np.zeros((count, 1), np.uint8))


def test_what_is_drained_is_what_came_in_order():
    tail = LiveTail()
    blocks = [rows(3), rows(2, 3), rows(1, 5)]
    for block in blocks:
        tail.take(block)
    assert tail.drain() == blocks
    assert tail.drain() == []
    assert tail.dropped_rows == 0


@given(st.lists(st.integers(1, 40), max_size=30), st.integers(1, 100))
def test_waiting_and_dropped_rows_together_are_all_rows(sizes, most):
    tail = LiveTail(most)
    for size in sizes:
        tail.take(rows(size))
    waiting = [len(block) for block in tail.drain()]
    assert sum(waiting) + tail.dropped_rows == sum(sizes)
    assert sum(waiting) <= most or len(waiting) == 1
    assert waiting == sizes[len(sizes) - len(waiting) :]


def test_rows_drained_do_not_count_as_waiting():
    tail = LiveTail(10)
    tail.take(rows(9))
    tail.drain()
    tail.take(rows(9))
    assert tail.dropped_rows == 0


def test_events_are_kept_apart_and_raw_bytes_not_at_all():
    tail = LiveTail()
    tap = Event(5, EventKind.TAP)
    tail.take(tap)
    tail.take(RawBytes("a", 5, b"1,2\n"))
    assert tail.events == (tap,)
    assert tail.drain() == []


def test_nothing_is_lost_between_two_threads():
    tail = LiveTail(10**9)
    seen = []
    done = threading.Event()

    def feed():
        for start in range(2000):
            tail.take(rows(1, start))
        done.set()

    thread = threading.Thread(target=feed)
    thread.start()
    while not done.is_set():
        seen += tail.drain()
    thread.join()
    seen += tail.drain()
    assert [int(block.t_ns[0]) for block in seen] == list(range(2000))
