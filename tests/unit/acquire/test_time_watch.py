"""The computer sleeps or its clock is set while it records: said, and no time is changed."""

import time

import pytest

from meterlog.acquire import TimeWatch
from meterlog.acquire.time_watch import slept_ns
from meterlog.model import EventKind

SECOND = 1_000_000_000


class Clocks:
    """The computer's clocks, moved by hand."""

    def __init__(self, monkeypatch):
        self.monotonic, self.wall, self.asleep = 5 * SECOND, 1_800_000_000 * SECOND, 7 * SECOND
        monkeypatch.setattr(time, "monotonic_ns", lambda: self.monotonic)
        monkeypatch.setattr(time, "time_ns", lambda: self.wall)

    def run(self, ns):
        self.monotonic += ns
        self.wall += ns

    def sleep(self, ns):
        self.wall += ns
        self.asleep += ns


@pytest.fixture
def clocks(monkeypatch):
    return Clocks(monkeypatch)


@pytest.fixture
def watched(clocks):
    told = []
    watch = TimeWatch(told.append, slept=lambda: clocks.asleep)

    def go(seconds=2.0):
        for _ in range(round(seconds * 50)):
            clocks.run(20_000_000)
            watch.tick(clocks.monotonic - 5 * SECOND)

    go()
    return go, told


def test_nothing_is_said_while_nothing_happens(watched, clocks):
    go, told = watched
    for _ in range(20):
        clocks.wall += 400_000_000  # a time service sets it bit by bit
        go(1.1)
    assert told == []


def test_a_sleep_is_said_once_with_its_length(watched, clocks):
    go, told = watched
    clocks.sleep(2 * 3600 * SECOND)
    go()
    (event,) = told
    assert (event.kind, event.source) == (EventKind.TIMING, "")
    assert event.value.startswith("the computer slept for 2.0 h")
    assert "not counted in the times of this recording" in event.value
    assert 2 * SECOND <= event.t_ns <= 4 * SECOND


@pytest.mark.parametrize(
    ("step", "words"), [(3600.0, "set forward by 60.0 min"), (-5.0, "set back by 5.0 s")]
)
def test_a_clock_that_is_set_is_said_once(watched, clocks, step, words):
    go, told = watched
    clocks.wall += round(step * SECOND)
    go(4.0)
    (event,) = told
    assert words in event.value
    assert "slept" not in event.value


def test_asleep_and_set_are_told_apart(watched, clocks):
    go, told = watched
    clocks.sleep(600 * SECOND)
    clocks.wall -= 90 * SECOND
    go()
    assert "slept for 10.0 min" in told[0].value
    assert "set back by 90.0 s" in told[1].value


def test_where_the_system_does_not_tell_of_sleep_both_are_named(clocks):
    told = []
    watch = TimeWatch(told.append, slept=lambda: None)
    watch.tick(0)
    clocks.sleep(30 * SECOND)
    watch.tick(2 * SECOND)
    assert "forward by 30.0 s, or the computer slept" in told[0].value


def test_this_system_tells_and_was_not_asleep_between_two_looks():
    first, second = slept_ns(), slept_ns()
    assert first is not None
    assert abs(second - first) < SECOND
