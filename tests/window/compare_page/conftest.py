"""Fixtures of the page Before / after: recordings of invented motors, and the page on them."""

from dataclasses import replace
from datetime import UTC, datetime
from types import MappingProxyType
from uuid import NAMESPACE_URL, uuid5

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
from meterlog.model.conditions import Conditions
from meterlog.recording import Recorder, seal
from meterlog.window.compare_page import CompareDesk
from meterlog.window.job_at_hand import JobAtHand
from meterlog.window.session import Session
from meterlog.work.job_folder import JobWork, Kept, Side

SECOND = 1_000_000_000
KEY = "bench"
VOLTS = {1: 5.0, 2: 9.0}
AMPS = {1: 4.0, 2: 9.0}


def _channel(name, quantity, role, interval_s):
    accuracy = Accuracy(0.3, 2.0, 0.01, basis="invented")
    return Channel(name, quantity, role, interval_s=interval_s, accuracy=accuracy)


def record(
    folder, *, more=1.0, dwell_s=(2, 6, 6), gap_s=None, commanded=True, filter_state="new",
    origin=Origin.SIMULATED, nominal_v=12.0, place="vehicle", each_s=0.05,
):  # fmt: skip
    """Record off, then two speeds, ``more`` times the current of a healthy motor; slow: typed."""
    typed = each_s >= 1.0
    channels = (
        _channel("feed", Quantity.VOLTAGE, Role.MOTOR_FEED, each_s),
        _channel("return", Quantity.VOLTAGE, Role.MOTOR_RETURN, each_s),
        _channel("current", Quantity.CURRENT, Role.MOTOR_CURRENT, each_s),
    )
    meter = Instrument(
        KEY, KEY, "invented", channels, simulated=origin is Origin.SIMULATED, typed=typed
    )
    limits = Limits(
        name="invented",
        nominal_v=nominal_v,
        speeds=MappingProxyType({1: SpeedLimits(2.0, 5.0), 2: SpeedLimits(6.0, 12.0)}),
    )
    conditions = replace(Conditions(), filter=filter_state, place=place)
    job = Job(part=f"{folder.name} (invented)", technician="N. Obody", measured_under=conditions)
    about = About(
        str(uuid5(NAMESPACE_URL, str(folder))),
        datetime(2030, 1, 2, 3, 4, 5, tzinfo=UTC),
        0,
        0,
        "meterlog test",
        origin,
        (meter,),
        limits,
        job,
    )
    recorder = Recorder.create(folder, about)
    dice = np.random.default_rng(len(folder.name))
    start_s = 0
    for speed, long_s in enumerate(dwell_s):
        if commanded:
            recorder.take(Event(start_s * SECOND, EventKind.SPEED, str(speed)))
        t_s = start_s + np.arange(round(long_s / each_s)) * each_s
        if gap_s is not None:
            t_s = t_s[(t_s < gap_s[0]) | (t_s > gap_s[1])]
        volts, amps = VOLTS.get(speed, 0.0), more * AMPS.get(speed, 0.0)
        since = t_s - start_s
        values = np.stack(
            (
                np.full(t_s.shape, 13.0),
                np.full(t_s.shape, 13.0 - volts),
                amps * (1.0 + np.exp(-since / 0.2)),
            ),
            axis=1,
        ) + 0.003 * dice.standard_normal((t_s.shape[0], 3))
        t_ns = np.round(t_s * 1e9).astype(np.int64)
        recorder.take(Block(KEY, t_ns, values, np.zeros(values.shape, np.uint8)))
        start_s += long_s
    recorder.tick(start_s * SECOND)
    recorder.close()
    seal(folder)
    return folder.resolve()


@pytest.fixture(scope="session")
def shelf(tmp_path_factory):
    """Give the folder of what is recorded once for all tests."""
    return tmp_path_factory.mktemp("motors")


@pytest.fixture(scope="session")
def worn(shelf):
    """The old motor: a third more current; a gap of 1 s within speed 1."""
    return record(shelf / "worn", more=1.33, gap_s=(4.0, 5.0), filter_state="used")


@pytest.fixture(scope="session")
def healthy(shelf):
    """The new motor, speed 2 run for longer."""
    return record(shelf / "healthy", dwell_s=(1, 6, 9))


@pytest.fixture(scope="session")
def good(shelf):
    """Motors known to be good, in a folder of their own."""
    (shelf / "good").mkdir()
    return tuple(record(shelf / "good" / f"good-{k}", more=0.98 + 0.02 * k) for k in range(3))


@pytest.fixture
def recorded():
    """Record another motor: folder, then options."""
    return record


@pytest.fixture
def job(tmp_path):
    """Make a job of old and new recordings."""

    def make(old=(), new=()):
        at_hand = JobAtHand(lambda: tmp_path / "shelf", tmp_path / "settings")
        kept = [Kept(one, Side.OLD) for one in old] + [Kept(one, Side.NEW) for one in new]
        at_hand.work = JobWork(recordings=tuple(kept))
        return at_hand

    return make


@pytest.fixture
def finished(qtbot):
    """Wait until a page has compared."""

    def wait(desk):
        def done():
            desk.tick()
            assert not desk._work.busy

        qtbot.waitUntil(done, timeout=20_000)

    return wait


@pytest.fixture
def page(qtbot, job, finished):
    """Turn to the page of a job of old and new recordings, and wait for what it compares."""

    def make(old=(), new=()):
        desk = CompareDesk(job(old, new), Session())
        qtbot.addWidget(desk.widget)
        desk.widget.resize(1280, 700)
        desk.widget.show()
        desk.begin()
        finished(desk)
        return desk

    return make
