"""Small recordings of numbered rows, and what must be in them."""

from __future__ import annotations

from datetime import UTC, datetime
from pathlib import Path

import numpy as np

from meterlog.model import About, Block, Channel, Event, EventKind, Instrument, Origin, Quantity
from meterlog.model.errors import DiskFailed
from meterlog.recording import MovingRecorder, Recorder, Recording

ABOUT = About(
    "00000000-0000-4000-8000-000000000001",
    datetime(2026, 5, 4, tzinfo=UTC),
    0,
    0,
    "meterlog test",
    Origin.SIMULATED,
    (Instrument("meter", "p", "x", (Channel("u", Quantity.VOLTAGE),)),),
)


def numbered(first: int, rows: int) -> Block:
    """Give rows whose time and value tell their number."""
    number = np.arange(first, first + rows)
    values = (number * 0.25)[:, None]
    return Block("meter", number * 1_000_000, values, np.zeros(values.shape, np.uint8))


READ_BACK = (ABOUT, numbered)


def model_recording(folder: Path, rows: int) -> None:
    """Make a closed recording of so many rows, in batches of 50."""
    recorder = Recorder.create(folder, ABOUT)
    recorder.take(Event(0, EventKind.SPEED, "1"))
    for first in range(0, rows, 50):
        recorder.take(numbered(first, min(50, rows - first)))
        recorder.flush()
    recorder.close()


def spill_of(place: Path, rows: int, failed_at: int) -> Path:
    """Make a recording that went on elsewhere at some row; give its last part."""
    recorder = MovingRecorder(place / "run", ABOUT, places=lambda: [place / "elsewhere"])
    recorder.take(numbered(0, failed_at // 2))
    recorder._recorder.sync()
    recorder.take(numbered(failed_at // 2, failed_at - failed_at // 2))
    recorder._recorder.flush()
    try:
        recorder._move(DiskFailed("could not be written: invented.", subject="x"))
    except DiskFailed:
        recorder.take(numbered(failed_at, rows - failed_at))
    recorder.close()
    return recorder.parts[-1]


def numbers_in(folder: Path, least: int, most: int | None = None) -> list[str]:
    """Give what is wrong with the rows of a recording: they must be 0, 1, 2 and so on."""
    recording = Recording.open(folder)
    blocks = list(recording.blocks("meter"))
    values = np.concatenate([one.values[:, 0] for one in blocks]) if blocks else np.empty(0)
    t_ns = np.concatenate([one.t_ns for one in blocks]) if blocks else np.empty(0, np.int64)
    number = np.arange(len(values))
    wrong = []
    if not np.array_equal(values, number * 0.25) or not np.array_equal(t_ns, number * 1_000_000):
        wrong.append(f"{folder.name}: not the rows from 0 on")
    if len(values) < least or (most is not None and len(values) > most):
        wrong.append(f"{folder.name}: {len(values)} rows, {least} were handed over")
    return wrong
