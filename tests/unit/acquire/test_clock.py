"""The clock: zero, wall time, offset."""

import time
from datetime import UTC, datetime, timedelta

from meterlog.acquire import Clock


def test_the_zero_is_now_and_time_counts_from_it():
    before_ns = time.monotonic_ns()
    clock = Clock.start()
    after_ns = time.monotonic_ns()
    assert before_ns <= clock.zero_ns <= after_ns
    assert 0 <= clock.now_ns() <= time.monotonic_ns() - before_ns


def test_the_wall_time_is_utc_and_the_offset_is_that_of_the_place(monkeypatch):
    monkeypatch.setenv("TZ", "XST-05:30")
    time.tzset()
    try:
        clock = Clock.start()
    finally:
        monkeypatch.undo()
        time.tzset()
    assert clock.started_utc.utcoffset() == timedelta(0)
    assert abs(datetime.now(UTC) - clock.started_utc) < timedelta(seconds=5)
    assert clock.local_offset_s == 19_800
