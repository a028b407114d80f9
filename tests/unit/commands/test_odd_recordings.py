"""``meterlog review`` and ``compare`` given recordings that say little or are broken."""

from __future__ import annotations

import uuid
from datetime import UTC, datetime

import numpy as np
import pytest

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

CHANNELS = (
    Channel("feed", Quantity.VOLTAGE, Role.MOTOR_FEED, interval_s=0.1),
    Channel("amps", Quantity.CURRENT, Role.MOTOR_CURRENT, interval_s=0.1),
)


@pytest.fixture
def recorded(tmp_path):
    """Record an invented fan that runs at speed 4, with so many readings."""

    def make(name, rows=200, amps=13.6):
        about = About(
            recording_id=str(uuid.uuid4()),
            started_utc=datetime.now(UTC),
            local_offset_s=0,
            zero_ns=0,
            program="test",
            origin=Origin.SIMULATED,
            instruments=(Instrument("meter", "test", "-", CHANNELS),),
            limits=load_limits("linear-12v"),
        )
        recorder = Recorder.create(tmp_path / name, about, keep_raw=False)
        recorder.take(Event(0, EventKind.SPEED, "4"))
        if rows:
            dice = np.random.default_rng(1)
            values = np.array([12.3, amps]) + dice.normal(0.0, 0.02, (rows, 2))
            t_ns = np.arange(rows, dtype=np.int64) * 100_000_000
            recorder.take(Block("meter", t_ns, values, np.zeros((rows, 2), np.uint8)))
        recorder.close("complete")
        seal(tmp_path / name)
        return tmp_path / name

    return make


def test_one_good_motor_is_too_few_for_a_baseline_and_no_fault_of_the_program(run, recorded):
    said = run("compare", "--baseline", recorded("good"), recorded("new", amps=13.2)).out
    assert "against 1 motor taken as good" in said
    assert "too few good motors" in " ".join(said.split())


def test_a_recording_without_readings_is_refused_by_that(run, recorded):
    said = run("compare", recorded("good"), recorded("empty", rows=0), code=1).out
    assert "empty holds no readings" in said
    assert "--speed-by-current" not in said


def test_a_refusal_names_the_damage_behind_it(run, recorded):
    good, bad = recorded("good"), recorded("bad")
    (stream,) = (bad / "data").glob("*.arrows")
    content = bytearray(stream.read_bytes())
    content[len(content) // 2] ^= 255
    stream.write_bytes(content)
    said = run("compare", good, bad, code=1).out
    assert "bad: NOT WHOLE" in said


def test_accepting_steps_where_a_speed_was_recorded_says_that_it_did_nothing(run, recorded):
    folder = recorded("good")
    said = " ".join(run("review", folder, "--accept-steps").out.split())
    assert "No found steps were accepted as commands: speeds were recorded" in said
    assert "No found steps" not in run("review", folder).out
