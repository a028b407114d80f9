"""Lines that a busy computer or a stalled sender held up on their way, over a real port."""

import itertools
import os
import pty
import re
import time
import tty
from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from dataclasses import replace

import numpy as np
import pytest

from meterlog.acquire import Acquisition, Clock, MeterChoice
from meterlog.analysis import Reviewer
from meterlog.model import Block, Event, EventKind, Flag, Limits, RawBytes, Role, SpanKind
from meterlog.profile import load_meter

pytestmark = [pytest.mark.pty, pytest.mark.calm(0.004)]

MS = 1_000_000


class Bench:
    """A line logger at the far end of a pseudo terminal, and all that was made of its lines."""

    def __init__(self) -> None:
        self.ours, self._theirs = pty.openpty()
        tty.setraw(self._theirs)
        profile = load_meter("line-logger")
        name = os.ttyname(self._theirs)
        choice = MeterChoice(profile, name, "line-logger", profile.channels)
        self.clock = Clock.start()
        self.acquisition = Acquisition([choice], self.clock)
        self.instruments = self.acquisition.connect()
        self.items: list = []
        self.written = 0
        self.acquisition.start(self.items.append)
        os.write(self.ours, b"\n")

    def write(self, count: int = 1) -> None:
        """Write so many lines at once, numbered on."""
        for _ in range(count):
            self.written += 1
            os.write(self.ours, b"12.0,0.5,%d.0\n" % self.written)

    def skip(self, count: int) -> None:
        """Lose so many lines."""
        self.written += count

    def pace(self, count: int, begun: float, first: int) -> None:
        """Write lines number ``first`` on at their times, one every 20 ms."""
        for number in range(first, first + count):
            self.wait_until(begun, number)
            self.write()

    @staticmethod
    def wait_until(begun: float, number: float) -> None:
        time.sleep(max(begun + 0.02 * number - time.monotonic(), 0.0))

    def await_rows(self, count: int) -> None:
        deadline = time.monotonic() + 60.0
        while len(self.readings()[0]) < count:
            assert time.monotonic() < deadline
            time.sleep(0.005)

    def blocks(self) -> list[Block]:
        return [item for item in list(self.items) if isinstance(item, Block)]

    def readings(self) -> tuple[np.ndarray, np.ndarray]:
        """Give numbers and times of the rows with data."""
        rows = [
            (round(value), int(t))
            for block in self.blocks()
            for value, t, flag in zip(
                block.values[:, 2], block.t_ns, block.flags[:, 2], strict=True
            )
            if not flag & Flag.NO_DATA
        ]
        return np.array([n for n, _ in rows]), np.array([t for _, t in rows])

    def no_data(self) -> list[int]:
        return [
            int(t)
            for block in self.blocks()
            for t, flag in zip(block.t_ns, block.flags[:, 2], strict=True)
            if flag & Flag.NO_DATA
        ]

    def said(self, kind: EventKind) -> list[str]:
        events = [item for item in list(self.items) if isinstance(item, Event)]
        return [event.value for event in events if event.kind is kind]

    def close(self) -> None:
        self.acquisition.stop()
        os.close(self.ours)
        os.close(self._theirs)


@contextmanager
def bench() -> Iterator[Bench]:
    one = Bench()
    try:
        yield one
    finally:
        one.close()


def judged(meter: Bench) -> list[SpanKind]:
    """Give what the review makes of the recording: the fan always runs."""
    (instrument,) = meter.instruments
    roles = {"feed": Role.MOTOR_FEED, "return": Role.MOTOR_RETURN, "current": Role.MOTOR_CURRENT}
    channels = tuple(replace(one, role=roles[one.name]) for one in instrument.channels)
    reviewer = Reviewer([replace(instrument, channels=channels)], Limits(locked_current_a=1e6))
    for item in meter.items:
        if not isinstance(item, RawBytes):
            reviewer.feed(item)
    return [span.kind for span in reviewer.finish().spans]


def in_order(times: Sequence[int]) -> bool:
    return all(a <= b for a, b in itertools.pairwise(times))


def test_lines_held_up_on_the_way_get_their_intervals_back():
    """A busy computer hands over four late lines one after the other; none was missing."""
    with bench() as meter:
        for pause_s in [0.02] * 12 + [0.1, 0.0004, 0.0004, 0.0004, 0.0004] + [0.02] * 4:
            time.sleep(pause_s)
            meter.write()
        meter.await_rows(meter.written)
        numbers, stamps = meter.readings()
    assert numbers.tolist() == list(range(1, meter.written + 1))
    held_up = stamps[11:17].tolist()
    assert max(b - a for a, b in itertools.pairwise(held_up)) < 45 * MS


def test_half_a_second_of_late_lines_leaves_no_gap_though_the_silence_was_told_at_once():
    with bench() as meter:
        begun = time.monotonic()
        meter.pace(40, begun, 0)
        meter.wait_until(begun, 40 + 16)  # 320 ms: silent after 250
        assert any("silent" in text for text in meter.said(EventKind.LINK))
        meter.wait_until(begun, 65)
        for _ in range(26):
            meter.write()
            time.sleep(0.001)
        meter.pace(20, begun, 66)
        meter.await_rows(meter.written)
        numbers, stamps = meter.readings()
        assert meter.no_data() == []
        meter.acquisition.stop()
        told = meter.said(EventKind.TIMING)
        kinds = judged(meter)
    assert SpanKind.NO_DATA not in kinds
    assert numbers.tolist() == list(range(1, 87))
    # Against the line through the punctual ones: within half an interval of the truth.
    line = np.polyfit(numbers[15:40], stamps[15:40], 1)
    assert np.abs(stamps[15:] - np.polyval(line, numbers[15:])).max() < 10 * MS
    assert "missing: 0" in told[-1]
    pace = float(re.search(r"a reading every (\S+) s", told[-1])[1])
    assert abs(pace - 0.02) < 0.0002
    assert any(re.match(r"2\d readings came late, .* none of them is missing", t) for t in told)
    assert "standard uncertainty" in told[-1]


def test_lines_that_never_came_stay_a_gap_with_rows_that_say_so():
    with bench() as meter:
        begun = time.monotonic()
        meter.pace(40, begun, 0)
        meter.skip(30)
        meter.pace(30, begun, 70)
        meter.await_rows(70)
        numbers, stamps = meter.readings()
        nothing = meter.no_data()
        meter.acquisition.stop()
        told = meter.said(EventKind.TIMING)
        everything = [int(t) for block in meter.blocks() for t in block.t_ns]
        kinds = judged(meter)
    assert SpanKind.NO_DATA in kinds
    assert numbers.tolist() == [*range(1, 41), *range(71, 101)]
    assert 2 <= len(nothing) <= 5
    assert stamps[39] < nothing[0] < nothing[-1] < stamps[40]
    assert abs(int(stamps[40] - stamps[39]) - 620 * MS) < 15 * MS
    assert in_order(everything)
    lost = [text for text in told if text.startswith("30 readings never came")]
    assert len(lost) == 1
    assert "missing: 30" in told[-1]


def test_a_silence_longer_than_a_second_is_written_while_it_lasts():
    with bench() as meter:
        begun = time.monotonic()
        meter.pace(30, begun, 0)
        last = meter.clock.now_ns()
        deadline = time.monotonic() + 60.0
        while not meter.no_data():
            assert time.monotonic() < deadline
            time.sleep(0.01)
        waited = meter.clock.now_ns() - last
        assert 950 * MS < waited < 1300 * MS
        assert len(meter.no_data()) >= 6
        assert meter.no_data()[0] - last < 350 * MS
