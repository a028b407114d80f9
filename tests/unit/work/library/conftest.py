"""Small recordings and jobs, all invented, in a folder of their own."""

from datetime import UTC, datetime, timedelta
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
    Instrument,
    Job,
    Limits,
    Origin,
    Quantity,
    Role,
    SpeedLimits,
)
from meterlog.model.job_card import with_value
from meterlog.recording import Recorder, seal
from meterlog.work.job_cards import change_card
from meterlog.work.job_folder import CARD, JobWork, keep_work
from meterlog.work.library import Library

SECOND = 1_000_000_000
START = datetime(2026, 3, 4, 22, 30, tzinfo=UTC)


def make_recording(folder, number=0, *, amps=4.0, dead=False, sealed=True, ended=True, **job):
    """Record 10 s at speed 1, ten rows a second; 2 s of them dead where asked."""
    accuracy = Accuracy(1.0, 5, 0.01)
    channels = tuple(
        Channel(name, quantity, role, accuracy=accuracy, interval_s=0.1)
        for name, quantity, role in (
            ("feed", Quantity.VOLTAGE, Role.MOTOR_FEED),
            ("return", Quantity.VOLTAGE, Role.MOTOR_RETURN),
            ("current", Quantity.CURRENT, Role.MOTOR_CURRENT),
        )
    )
    about = About(
        f"00000000-0000-4000-8000-{number:012d}",
        START + timedelta(days=number),
        3600,
        0,
        "meterlog test",
        job.pop("origin", Origin.SIMULATED),
        (Instrument("line-logger", "line-logger", "invented", channels),),
        Limits(name="invented", speeds=MappingProxyType({1: SpeedLimits(2.0, 5.0)})),
        Job(**job),
    )
    recorder = Recorder.create(folder, about)
    t_ns = (np.arange(100) * SECOND // 10).astype(np.int64)
    values = np.tile([12.5, 8.0, amps], (100, 1))
    if dead:
        values[50:70] = (12.5, 0.1, 0.0)
    values += np.random.default_rng(number).normal(0.0, 0.01, values.shape)
    recorder.take(Event(0, EventKind.SPEED, "1"))
    recorder.take(Block("line-logger", t_ns, values, np.zeros(values.shape, np.uint8)))
    if ended:
        recorder.close("stopped")
    if sealed:
        seal(folder)
    return recorder


@pytest.fixture
def shelf(tmp_path):
    """Where recordings lie."""
    place = tmp_path / "shelf"
    place.mkdir()
    return place


@pytest.fixture
def recording(shelf):
    """Make a recording on the shelf: name, number of the day, and what its job says."""

    def make(name, number=0, **options):
        make_recording(shelf / name, number, **options)
        return shelf / name

    return make


@pytest.fixture
def job(shelf):
    """Make a job on the shelf: name, its card's fields, and recordings as (folder, side)."""

    def make(name, recordings=(), **fields):
        folder = shelf / "jobs" / name
        work = JobWork()
        for one, side in recordings:
            work = work.taking(one, side)

        def fill(card):
            for key, text in fields.items():
                card = with_value(card, key, text)
            return card

        change_card(folder / CARD, fill)
        keep_work(folder, work)
        return folder

    return make


@pytest.fixture
def library(tmp_path):
    """A library whose index is its own."""
    with Library(tmp_path / "cache" / "index.sqlite3") as made:
        yield made


@pytest.fixture
def record_on(shelf):
    """Begin a recording and leave it open; gives its recorder."""
    return lambda name: make_recording(shelf / name, sealed=False, ended=False)
