"""A small sealed recording and its review for the tests of this folder. All of it is invented."""

from __future__ import annotations

from datetime import UTC, datetime

import numpy as np
import pytest

from meterlog.model import (
    About,
    Block,
    CatchChance,
    Channel,
    Event,
    EventKind,
    Finding,
    FindingKind,
    Flag,
    Instrument,
    Limits,
    Origin,
    Quantity,
    RawBytes,
    Review,
    Role,
    Span,
    SpanKind,
    Step,
    Verdict,
)
from meterlog.recording import Recorder, Recording, seal

SECOND = 1_000_000_000


def instruments():
    return (
        Instrument(
            "logger",
            "invented-logger",
            "/dev/invented",
            (
                Channel("in1", Quantity.VOLTAGE, Role.MOTOR_FEED),
                Channel("in2", Quantity.CURRENT, Role.MOTOR_CURRENT),
                Channel("=1+1", Quantity.VOLTAGE),
            ),
        ),
        Instrument(
            "bench", "invented-meter", "x", (Channel("u", Quantity.VOLTAGE, Role.MOTOR_RETURN),)
        ),
    )


def logger_block():
    number = np.arange(40)
    values = np.stack([12.0 + number / 3, 5.0 - number / 7, number * 1e-9], axis=1)
    flags = np.zeros(values.shape, np.uint8)
    flags[3, 1] = Flag.OVERLOAD
    flags[4, :2] = Flag.NO_DATA
    flags[:, 2] = Flag.ZEROED
    values[3, 1] = values[4, 0] = values[4, 1] = np.nan
    return Block("logger", number * 100_000_000 + 1, values, flags)


def bench_block():
    number = np.arange(5)
    return Block("bench", number * SECOND, number[:, None] / 9.0, np.zeros((5, 1), np.uint8))


def review():
    return Review(
        spans=(
            Span(SpanKind.OFF, 0, SECOND, 0, 1000, None, "not asked to run"),
            Span(SpanKind.DEAD, SECOND, 3 * SECOND, 1000, 2000, 2, "full voltage, no current"),
        ),
        steps=(Step(2, SECOND, 3 * SECOND, 20, 12.5, 0.1, 5.0, 0.2, 5.1, 4.0, 6.0),),
        findings=(
            Finding(
                FindingKind.DEAD, Verdict.FAIL, SECOND, 3 * SECOND, 2000, 0.01, "A", 0.02, 0.3, 2,
                "No current for 2.0 s although 12.5 V stood across the motor.", 2.0,
            ),
            Finding(
                FindingKind.STEP_CURRENT, Verdict.CANT_TELL, SECOND, 3 * SECOND, 0, float("nan"),
                "A", None, None, None, "=The current could not be judged.",
            ),
        ),
        shortest_visible_dropout_s=0.2,
        catch_chances=(CatchChance(0.1, 0.5),),
        notes=("Accuracy not stated.",),
    )  # fmt: skip


def make(folder, origin=Origin.MEASURED, *, sealed=True):
    about = About(
        recording_id="8f2d8d0c-51c5-4d0b-8f3e-6f0f8bb1a001",
        started_utc=datetime(2026, 5, 4, 10, 20, 30, 5000, tzinfo=UTC),
        local_offset_s=7200,
        zero_ns=0,
        program="meterlog test",
        origin=origin,
        instruments=instruments(),
        limits=Limits(text="nominal_v = 12.0"),
    )
    recorder = Recorder.create(folder, about)
    recorder.take(RawBytes("logger", 1, b"12.0 5.0\r\n"))
    recorder.take(logger_block().rows(0, 17))
    recorder.flush()
    recorder.take(logger_block().rows(17, 40))
    recorder.take(bench_block())
    recorder.take(Event(SECOND, EventKind.SPEED, "2"))
    recorder.take(Event(2 * SECOND, EventKind.NOTE, '@says "hä", twice\r\nand again'))
    recorder.close()
    if sealed:
        seal(folder)
    return Recording.open(folder)


class Desk:
    """What the tests make and look at."""

    second = SECOND
    make = staticmethod(make)
    review = staticmethod(review)
    logger_block = staticmethod(logger_block)
    bench_block = staticmethod(bench_block)


@pytest.fixture
def desk():
    return Desk()


@pytest.fixture
def recording(tmp_path):
    return make(tmp_path / "run")
