"""Clocks: how finely time is told, who sets the wall clock, whether the computer stays awake."""

from __future__ import annotations

import shutil
import subprocess
import sys
import time
from collections.abc import Iterator
from datetime import UTC, datetime
from pathlib import Path

from meterlog.acquire import SleepBlock
from meterlog.work.doctor.look import Line, State

COARSE_S = 1e-3
_SEEN_STEPS = 50
_EARLIEST = 2025
_ASK_S = 2.0
_SETTLE_S = 0.3
_SET = "Have the system set it by network time; a recording's date rests on it."


def look_at_clocks() -> Iterator[Line]:
    """Look at the monotonic and the wall clock."""
    step_s = _smallest_step_s()
    words = f"monotonic time in steps of {step_s * 1e9:.0f} ns"
    if step_s > COARSE_S:
        yield Line("clock", State.LOOK, words, "Times of readings are no finer than this.")
    else:
        yield Line("clock", State.OK, words)
    yield _wall(datetime.now(UTC).year, told=synchronized())


def _wall(year: int, *, told: bool | None) -> Line:
    if year < _EARLIEST:
        return Line("clock", State.BAD, f"the wall clock says {year}", _SET)
    if told is None:
        return Line("clock", State.OK, "whether network time sets the wall clock can't be told")
    if told:
        return Line("clock", State.OK, "the wall clock is set by network time")
    return Line("clock", State.LOOK, "the wall clock is not set by network time", _SET)


def _smallest_step_s() -> float:
    steps: list[int] = []
    before = time.monotonic_ns()
    while len(steps) < _SEEN_STEPS:
        now = time.monotonic_ns()
        if now > before:
            steps.append(now - before)
        before = now
    return min(steps) / 1e9


def synchronized() -> bool | None:
    """Tell whether network time sets the clock; None where the system does not say."""
    if sys.platform != "linux":
        return None
    if Path("/run/systemd/timesync/synchronized").exists():
        return True
    program = shutil.which("timedatectl")
    if program is None:
        return None
    asked = [program, "show", "--property=NTPSynchronized", "--value"]
    try:
        done = subprocess.run(asked, capture_output=True, text=True, check=False, timeout=_ASK_S)
    except (OSError, subprocess.TimeoutExpired):
        return None
    return {"yes": True, "no": False}.get(done.stdout.strip())


def look_at_sleep() -> Iterator[Line]:
    """Try to keep the computer awake, as a recording does, and let go of it again."""
    block = SleepBlock()
    try:
        end = time.monotonic() + _SETTLE_S
        # Whoever is asked may refuse a moment later.
        while block.holds and time.monotonic() < end:
            time.sleep(0.05)
        holds, words = block.holds, block.words
    finally:
        block.release()
    if holds:
        yield Line("sleep", State.OK, "can be blocked while recording")
        return
    why, _, do = words.partition("; ")
    yield Line("sleep", State.LOOK, why, f"{do[:1].upper()}{do[1:]}.")
