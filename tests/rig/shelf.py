"""A shelf of invented recordings: good motors, bad ones, damaged ones, in folders by month."""

from __future__ import annotations

import shutil
from collections.abc import Sequence
from datetime import UTC, datetime, timedelta
from pathlib import Path
from types import MappingProxyType

import numpy as np

from meterlog.model import (
    About,
    Accuracy,
    Block,
    Channel,
    Conditions,
    Event,
    EventKind,
    Instrument,
    Job,
    Limits,
    Origin,
    Quantity,
    Role,
    SpeedLimits,
)
from meterlog.recording import Recorder, seal

SECOND = 1_000_000_000
START = datetime(2026, 3, 4, 8, 0, tzinfo=UTC)
NUMBERS = ("FM-20", "FM-24", "KB-310")
_CHANNELS = (
    ("feed", Quantity.VOLTAGE, Role.MOTOR_FEED),
    ("return", Quantity.VOLTAGE, Role.MOTOR_RETURN),
    ("current", Quantity.CURRENT, Role.MOTOR_CURRENT),
)
_ACROSS_V = (4.6, 7.4, 10.3, 13.0)
_EXPONENT = 1.6
LIMITS = Limits(
    name="invented",
    speeds=MappingProxyType({
        speed: SpeedLimits(0.6 * amps, 1.5 * amps)
        for speed, amps in enumerate((3.1, 6.5, 10.8, 15.6), start=1)
    }),
)  # fmt: skip


def about(number: int, *, origin: Origin = Origin.MEASURED, rate: float = 20.0, **job) -> About:
    """Give the head of recording ``number``."""
    accuracy = Accuracy(1.0, 5, 0.01)
    channels = tuple(
        Channel(name, quantity, role, accuracy=accuracy, interval_s=1.0 / rate)
        for name, quantity, role in _CHANNELS
    )
    part = NUMBERS[number % len(NUMBERS)]
    said = {
        "part": f"{part}, serial {number:05d}",
        "vehicle": f"Kestrel {number} (invented)",
        "measured_under": Conditions(engine="running", filter="used"),
        **job,
    }
    return About(
        f"00000000-0000-4000-8000-{number:012d}",
        START + timedelta(hours=number),
        3600,
        0,
        "meterlog test",
        origin,
        (Instrument("line-logger", "line-logger", "invented", channels),),
        LIMITS,
        Job(**said),
    )


def readings(
    number: int,
    *,
    seconds: float = 10.0,
    rate: float = 20.0,
    dead: bool = False,
    load: float = 1.0,
) -> tuple[np.ndarray, np.ndarray, list[Event]]:
    """Give times, values and commands: off, then four speeds, each for so many seconds."""
    dice = np.random.default_rng(number)
    rows = int(5 * seconds * rate)
    t_ns = (np.arange(rows) * SECOND / rate).astype(np.int64)
    speed = np.minimum((t_ns / SECOND / seconds).astype(int), 4)
    own = load * (1.0 + 0.03 * dice.standard_normal())
    supply = 13.9 + 0.2 * dice.standard_normal()
    across = np.array((0.0, *_ACROSS_V))[speed] + (supply - 13.9) * (speed > 0)
    amps = own * 15.0 * (across / 13.0) ** _EXPONENT
    if dead:
        gone = (t_ns > 3.4 * seconds * SECOND) & (t_ns < 3.7 * seconds * SECOND)
        amps[gone] = 0.0
    feed = supply - 0.02 * amps
    values = np.column_stack([feed, feed - across, amps])
    values += dice.normal(0.0, (0.01, 0.01, 0.02), values.shape)
    events = [
        Event(round(step * seconds * SECOND), EventKind.SPEED, str(step)) for step in range(5)
    ]
    return t_ns, values, events


def make(folder: Path, number: int, *, sealed: bool = True, dead: bool = False, **more) -> Path:
    """Make one recording."""
    timing = {key: more.pop(key) for key in ("seconds", "rate", "load") if key in more}
    own = about(number, **more, **{key: timing[key] for key in ("rate",) if key in timing})
    recorder = Recorder.create(folder, own, keep_raw=False)
    t_ns, values, events = readings(number, dead=dead, **timing)
    for event in events:
        recorder.take(event)
    for start in range(0, len(t_ns), 500):
        part = slice(start, start + 500)
        flags = np.zeros(values[part].shape, np.uint8)
        recorder.take(Block("line-logger", t_ns[part], values[part], flags))
    recorder.close("complete")
    if sealed:
        seal(folder)
    return folder


def damage(folder: Path, kind: int) -> None:
    """Damage a recording in one of four ways."""
    arrows = folder / "data" / "line-logger.arrows"
    if kind == 0:
        content = bytearray(arrows.read_bytes())
        content[len(content) // 2] ^= 0x10
        arrows.write_bytes(bytes(content))
    elif kind == 1:
        (folder / "data" / "about.json").write_bytes(b"{")
    elif kind == 2:
        (folder / "data" / "about.json").unlink()
    else:
        (folder / "bagit.txt").unlink()


def fill(place: Path, numbers: Sequence[int], **more) -> None:
    """Fill a folder: of twenty recordings one is of a dead motor, one simulated, one damaged."""
    for number in numbers:
        folder = place / f"2026-{number % 12 + 1:02d}" / f"run-{number:06d}"
        kind = number % 20
        origin = Origin.SIMULATED if kind == 5 else Origin.MEASURED
        make(folder, number, dead=kind == 3, origin=origin, **more)
        if kind == 7:
            damage(folder, number // 20 % 4)


def empty(place: Path) -> None:
    """Take a shelf away."""
    shutil.rmtree(place, ignore_errors=True)
