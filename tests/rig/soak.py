"""A day of two meters at many times the speed of time, every reading counted end to end.

    python tests/rig/soak.py [--hours H] [--interval S] [--speed X] [--folder DIR]

A second process sends over real pseudo terminals and moves the virtual time on; this one records
as the program does (readers, bus, disk, judge, live picture's tail), asks for status and judgement
as a window does, marks speeds and taps, and samples its own memory. Afterwards all is read back.
The disk's own times (flush after 70 ms, sync after 0.9 s) stay real ones.
"""

from __future__ import annotations

import argparse
import json
import os
import pty
import subprocess
import sys
import tempfile
import time
import tty
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field, replace
from datetime import UTC, datetime
from pathlib import Path
from unittest import mock

import soak_heap  # noqa: F401 - first of all: see there
import soak_sender
from soak_checks import Checked, check_recording
from soak_sender import DONE, FETCHED, GO, HOLD, NOW, PLACES, SECOND, SENT, Pace

import meterlog
from meterlog.acquire import Bus, Clock, Item, MeterChoice
from meterlog.commands.sweeper import Sweeper
from meterlog.model import EventKind, Limits, RawBytes, Role
from meterlog.profile import load_meter
from meterlog.work import Run

HOUR_NS = 3_600 * SECOND
_SAMPLE_NS = HOUR_NS // 6
_SPEED_NS = HOUR_NS // 2
_TAP_NS = HOUR_NS
_MOST_WAITING = 200
"""The sender waits while more does: at a hundred times the speed of time a queue comes and goes
that takes megabytes, which would be measured as the program's memory."""
_FLAT = 0.02
_ROLES = (Role.MOTOR_FEED, Role.MOTOR_RETURN, Role.MOTOR_CURRENT)


class SoakClock(Clock):
    """The clock of the recorder: the time that the sender has moved on to."""

    board: memoryview

    @classmethod
    def start(cls) -> SoakClock:
        """Give a clock; its zero is the sender's."""
        return cls(0, datetime.now(UTC), 0)

    def now_ns(self) -> int:
        """Give the virtual time."""
        return self.board[NOW]


class CountingBus(Bus):
    """Tells the sender how many readings have been fetched, each with its time, and to wait."""

    def put(self, item: Item) -> None:
        """Put an item on the bus; bytes come before what is made of them."""
        super().put(item)
        if isinstance(item, RawBytes):
            meter = int(item.source.rpartition("-")[2]) - 1
            SoakClock.board[FETCHED + meter] += item.data.count(b"\n")
        if self.waiting > _MOST_WAITING:
            SoakClock.board[HOLD] = 1


@dataclass
class Soaked:
    """What was seen while it ran.

    Attributes
    ----------
    memory : list of (float, int)
        Virtual hours, resident bytes of the recording process.
    marks : int
    most_waiting : int
        Items between readers and disk.
    glances : dict of int to float
        Number of a sixth of a virtual hour, seconds that the longest glance at status and
        judgement took in it. No more is kept: a soak that grows itself would measure that.
    real_s : float
    faults : tuple of str
    """

    memory: list[tuple[float, int]] = field(default_factory=list)
    marks: int = 0
    most_waiting: int = 0
    glances: dict[int, float] = field(default_factory=dict)
    real_s: float = 0.0
    faults: tuple[str, ...] = ()

    def longest_glance_s(self) -> tuple[float, float]:
        """Give the longest glances in the first and the last quarter."""
        longest = [self.glances[at] for at in sorted(self.glances)]
        quarter = max(1, len(longest) // 4)
        first, last = (max(part, default=0.0) for part in (longest[:quarter], longest[-quarter:]))
        return round(first, 3), round(last, 3)

    def growth(self) -> float | None:
        """Give by which part the largest memory after the first hour is above that then."""
        later = [size for hours, size in self.memory if hours >= 1.0]
        return max(later) / later[0] - 1.0 if len(later) > 1 else None


def _resident() -> int:
    pages = int(Path("/proc/self/statm").read_text(encoding="ascii").split()[1])
    return pages * os.sysconf("SC_PAGE_SIZE")


def soak(pace: Pace, place: Path) -> tuple[Soaked, Checked]:
    """Record it all, then read it back."""
    ports = [pty.openpty() for _ in range(pace.meters)]
    for _, near in ports:
        tty.setraw(near)
    board_path = place / "board"
    board_path.write_bytes(bytes(PLACES * 8))
    try:
        with board_path.open("r+b") as file:
            SoakClock.board = soak_sender.shared(file.fileno())
            run = Run(_choices(pace, ports), Limits(), place / "recording")
            with (
                mock.patch("meterlog.work.run.Clock", SoakClock),
                mock.patch("meterlog.work.run.Bus", CountingBus),
            ):
                run.start()
            _end_half_lines(ports)
            with _sender(pace, board_path, ports):
                soaked = _watch(run, pace, SoakClock.board)
            soaked.faults = run.status().faults
            run.stop()
            sent = [SoakClock.board[SENT + meter] for meter in range(pace.meters)]
    finally:
        for pair in ports:
            for handle in pair:
                os.close(handle)
    return soaked, check_recording(run.folder, pace, sent, soaked.marks)


def _end_half_lines(ports: list[tuple[int, int]]) -> None:
    """End the half line that a reader expects after opening; it counts as no reading."""
    for meter, (far, _) in enumerate(ports):
        os.write(far, b"\n")
        while not SoakClock.board[FETCHED + meter]:
            time.sleep(0.001)
        SoakClock.board[FETCHED + meter] = 0


def _choices(pace: Pace, ports: list[tuple[int, int]]) -> list[MeterChoice]:
    profile = load_meter("line-logger")
    choices = []
    for meter, (_, near) in enumerate(ports):
        channels = tuple(
            replace(one, interval_s=pace.interval_s, role=Role.OTHER if meter else role)
            for one, role in zip(profile.channels, _ROLES, strict=True)
        )
        own = replace(profile, channels=channels)
        choices.append(MeterChoice(own, os.ttyname(near), f"meter-{meter + 1}", channels))
    return choices


@contextmanager
def _sender(pace: Pace, board: Path, ports: list[tuple[int, int]]) -> Iterator[None]:
    handles = [far for far, _ in ports]
    words = [str(one) for one in (board, pace.hours, pace.interval_s, pace.speed, *handles)]
    command = [sys.executable, soak_sender.__file__, *words]
    child = subprocess.Popen(command, pass_fds=handles)
    try:
        yield
    finally:
        if child.wait(60):
            raise RuntimeError(f"the sender ended with {child.returncode}")


def _watch(run: Run, pace: Pace, board: memoryview) -> Soaked:
    """Do what a window and a technician do until all has been sent and fetched."""
    soaked, began_s, sweeper = Soaked(), time.monotonic(), Sweeper()
    next_sample = next_speed = next_tap = next_look_s = 0.0
    board[GO] = 1
    while not (board[DONE] and _all_read(run, pace)):
        now_ns = board[NOW]
        if now_ns >= next_speed:
            run.mark(EventKind.SPEED, str(1 + soaked.marks % 4))
            soaked.marks, next_speed = soaked.marks + 1, now_ns + _SPEED_NS
        if now_ns >= next_tap:
            run.mark(EventKind.TAP)
            soaked.marks, next_tap = soaked.marks + 1, now_ns + _TAP_NS
        if now_ns >= next_sample:
            soaked.memory.append((now_ns / HOUR_NS, _resident()))
            next_sample = now_ns + _SAMPLE_NS
        asked_s = time.monotonic()
        status = run.status()  # with the live judgement, made afresh four times a second
        place, took_s = now_ns // _SAMPLE_NS, time.monotonic() - asked_s
        soaked.glances[place] = max(took_s, soaked.glances.get(place, 0.0))
        soaked.most_waiting = max(soaked.most_waiting, status.waiting)
        board[HOLD] = int(status.waiting > _MOST_WAITING)
        run.tail.drain()  # a window does so 25 times a second
        sweeper.sweep_when_due()
        if time.monotonic() >= next_look_s:
            run.review()
            next_look_s = time.monotonic() + 1.0
        time.sleep(0.02)
    soaked.memory.append((board[NOW] / HOUR_NS, _resident()))
    soaked.real_s = time.monotonic() - began_s
    return soaked


def _all_read(run: Run, pace: Pace) -> bool:
    """Tell whether each meter's last reading has come; waits a second where one has not."""
    until = time.monotonic() + 1.0
    while time.monotonic() < until:
        if all(meter.readings >= pace.readings for meter in run.status().meters):
            return True
        time.sleep(0.01)
    return True  # what is missing now is lost, and told by the count


def told(pace: Pace, soaked: Soaked, checked: Checked) -> dict[str, object]:
    """Give all figures by name, and what did not hold."""
    growth = soaked.growth()
    wrong = list(checked.wrong) + [f"a part failed: {one}" for one in soaked.faults]
    if growth is not None and growth >= _FLAT:
        wrong.append(f"memory grew by {growth:.1%} after the first hour")
    virtual_s = pace.hours * 3600.0
    return {
        "program": meterlog.__version__,
        "virtual_h": pace.hours,
        "real_s": round(soaked.real_s, 1),
        "times_real": round(virtual_s / soaked.real_s, 1),
        "meters": pace.meters,
        "interval_s": pace.interval_s,
        **checked.figures,
        "marks": soaked.marks,
        "most_waiting": soaked.most_waiting,
        "longest_glance_s_first_and_last_quarter": soaked.longest_glance_s(),
        "memory_mb": [[round(h, 2), round(size / 1e6, 2)] for h, size in soaked.memory],
        "memory_growth_after_first_hour": growth,
        "wrong": wrong,
    }


def main() -> int:
    """Soak; 1 when something did not hold."""
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--hours", type=float, default=24.0, help="of virtual time")
    parser.add_argument("--interval", type=float, default=0.2, help="virtual seconds")
    parser.add_argument("--speed", type=float, default=1e6, help="at most so many times real time")
    parser.add_argument("--meters", type=int, default=2)
    parser.add_argument("--folder", type=Path, help="keep the recording in this folder")
    options = parser.parse_args()
    pace = Pace(options.meters, options.interval, options.hours, options.speed)
    with tempfile.TemporaryDirectory() as place:
        kept = options.folder or Path(place)
        kept.mkdir(parents=True, exist_ok=True)
        said = told(pace, *soak(pace, kept))
    print(json.dumps(said, indent=1))
    return 1 if said["wrong"] else 0


if __name__ == "__main__":
    sys.exit(main())
