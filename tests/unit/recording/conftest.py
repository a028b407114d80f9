"""Recordings made for the tests of this folder. Jobs, parts and readings are invented."""

from __future__ import annotations

from datetime import UTC, datetime
from types import MappingProxyType

import numpy as np
import pytest

from meterlog.model import (
    About,
    Accuracy,
    Block,
    Channel,
    Event,
    EventKind,
    Flag,
    Identity,
    Instrument,
    Job,
    Limits,
    Origin,
    Quantity,
    Role,
    SpeedLimits,
)
from meterlog.recording import Recorder


def instrument(key="bench", channels=2):
    roles = (Role.MOTOR_FEED, Role.MOTOR_CURRENT, Role.MOTOR_RETURN)
    return Instrument(
        key,
        "invented-meter",
        "socket://localhost:1",
        tuple(
            Channel(
                f"ch{k}",
                Quantity.CURRENT if role is Role.MOTOR_CURRENT else Quantity.VOLTAGE,
                role,
                scale=10.0,
                offset=0.25,
                interval_s=0.1,
                integration_s=0.02,
                accuracy=Accuracy(0.5, 3, 0.001, 0.02, "invented, for a test"),
            )
            for k, role in enumerate(roles[:channels])
        ),
        Identity("Invented Meters", "Model 7", "0815", "1.2", "2031-01-31"),
    )


def about_of(*instruments, origin=Origin.MEASURED):
    return About(
        recording_id="3f0a5a0e-9d5a-4d5e-8a43-0f5a3c0e9d11",
        started_utc=datetime(2026, 5, 4, 10, 20, 30, 123456, tzinfo=UTC),
        local_offset_s=7200,
        zero_ns=123_456_789,
        program="meterlog test",
        origin=origin,
        instruments=instruments,
        limits=Limits(speeds=MappingProxyType({1: SpeedLimits(2.0, None)}), text="nominal_v = 12"),
        job=Job(work_order="W-1", complaint="läuft nur, wenn man draufhaut"),
    )


def block_of(key, first, rows, channels=2, *, seed=0):
    """Rows ``first`` to ``first + rows`` of an endless invented trace, some of them overloads."""
    number = np.arange(first, first + rows)
    t_ns = number * 1_000_003 + 7
    values = np.sin(number[:, None] * (1.3 + np.arange(channels))) * 14 + seed
    flags = np.zeros(values.shape, np.uint8)
    over = number % 7 == 3
    values[over, 0] = np.nan
    flags[over, 0] = Flag.OVERLOAD
    flags[number % 5 == 1, channels - 1] = Flag.ZEROED
    return Block(key, t_ns.astype(np.int64), values, flags)


class Maker:
    """Makes recordings in a test's own folder."""

    def __init__(self, folder):
        self.folder = folder
        self.instrument = staticmethod(instrument)
        self.about = staticmethod(about_of)
        self.block = staticmethod(block_of)

    def small(self, name="run", *, batches=(3, 1, 5, 2), channels=2, close=True):
        """A recording whose batches have the given numbers of rows, and three events."""
        one = instrument(channels=channels)
        recorder = Recorder.create(self.folder / name, about_of(one))
        recorder.take(Event(0, EventKind.SPEED, "2"))
        first = 0
        for rows in batches:
            recorder.take(block_of(one.key, first, rows, channels))
            recorder.flush()
            first += rows
        recorder.take(Event(3_000_000, EventKind.TAP))
        recorder.take(Event(4_000_000, EventKind.NOTE, 'says "now", =runs\nagain'))
        if close:
            recorder.close()
        return recorder


@pytest.fixture
def maker(tmp_path):
    return Maker(tmp_path)


@pytest.fixture(scope="module")
def lasting_maker(tmp_path_factory):
    """A maker for all tests of a file, which must leave alone what it makes."""
    return Maker(tmp_path_factory.mktemp("lasting"))


@pytest.fixture
def same():
    """Compare two Blocks bit by bit."""

    def check(one, other):
        assert one.source == other.source
        np.testing.assert_array_equal(one.t_ns, other.t_ns)
        np.testing.assert_array_equal(one.values, other.values)
        np.testing.assert_array_equal(one.flags, other.flags)

    return check
