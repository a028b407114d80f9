"""Traces for the benchmarks: a fan at speed 4 with dead segments. Invented."""

from __future__ import annotations

import uuid
from datetime import UTC, datetime
from pathlib import Path

import numpy as np

from meterlog.model import (
    About,
    Block,
    Channel,
    Event,
    EventKind,
    Instrument,
    Origin,
    Quantity,
    Role,
)
from meterlog.profile import load_limits
from meterlog.recording import Recorder, seal

ROLES = (
    ("feed", Quantity.VOLTAGE, Role.MOTOR_FEED),
    ("return", Quantity.VOLTAGE, Role.MOTOR_RETURN),
    ("current", Quantity.CURRENT, Role.MOTOR_CURRENT),
    ("battery", Quantity.VOLTAGE, Role.BATTERY),
)


def fan_instrument(interval_s: float, channels: int = 3) -> Instrument:
    """Give an instrument with the first ``channels`` of feed, return, current and battery."""
    return Instrument(
        "meter",
        "benchmark",
        "-",
        tuple(
            Channel(name, quantity, role, interval_s=interval_s)
            for name, quantity, role in ROLES[:channels]
        ),
    )


def fan_block(rows: int, interval_s: float, channels: int = 3) -> Block:
    """Give readings of a running fan with 20 dead segments."""
    rng = np.random.default_rng(1)
    values = np.empty((rows, channels), order="F")
    levels = (12.0, 0.16, 13.6, 12.4)
    for column in range(channels):
        values[:, column] = levels[column] + rng.normal(0.0, 0.05, rows)
    for k in range(20):
        start = int(rows * (k + 0.4) / 20)
        dead = slice(start, start + rows // 200)
        values[dead, 0] += 0.4
        values[dead, 1] -= 0.14
        values[dead, 2] -= 13.6
    t_ns = np.arange(rows, dtype=np.int64) * round(interval_s * 1e9)
    return Block("meter", t_ns, values, np.zeros(values.shape, np.uint8, order="F"))


def about(interval_s: float, channels: int = 3) -> About:
    """Give the head of a recording of it."""
    return About(
        recording_id=str(uuid.uuid4()),
        started_utc=datetime.now(UTC),
        local_offset_s=0,
        zero_ns=0,
        program="benchmark",
        origin=Origin.SIMULATED,
        instruments=(fan_instrument(interval_s, channels),),
        limits=load_limits("linear-12v"),
    )


def write_recording(folder: Path, head: About, block: Block, batch: int = 10_000) -> Path:
    """Write a sealed recording of ``block`` at speed 4."""
    recorder = Recorder.create(folder, head, keep_raw=False)
    recorder.take(Event(0, EventKind.SPEED, "4"))
    for start in range(0, len(block), batch):
        recorder.take(block.rows(start, start + batch))
    recorder.close()
    seal(folder)
    return folder
