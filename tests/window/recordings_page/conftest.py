"""Recordings on the shelf of a whole window, all invented, and an index of the test's own."""

from datetime import timedelta

import numpy as np
import pytest

from meterlog.model import Block, Event, EventKind, Job
from meterlog.model.job_card import with_value
from meterlog.recording import Recorder, seal
from meterlog.window.pages import Page
from meterlog.work.job_cards import change_card
from meterlog.work.job_folder import CARD, JobWork, Side, keep_work


@pytest.fixture(autouse=True)
def index_of_its_own(monkeypatch, tmp_path):
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / "cache"))


@pytest.fixture
def shelf(tmp_path):
    """The folder that the window's recordings lie in."""
    return tmp_path


@pytest.fixture
def recording(shelf, about_of):
    """Make a recording of 10 s at speed 1: name, days since the first, vehicle, amperes."""

    def make(name, day=0, vehicle="Kestrel van (invented)", amps=4.0, *, sealed=True, place=None):
        known = about_of()
        job = Job(work_order=f"WO {name}", vehicle=vehicle, part="FM-20", complaint="no air")
        about = type(known)(
            f"00000000-0000-4000-8000-{day:012d}",
            known.started_utc + timedelta(days=day),
            *(0, 0, known.program, known.origin, known.instruments, known.limits, job),
        )
        folder = (place or shelf) / name
        recorder = Recorder.create(folder, about)
        t_ns = np.arange(100, dtype=np.int64) * 100_000_000
        values = np.tile([12.5, 8.0, amps], (100, 1))
        values += np.random.default_rng(day).normal(0.0, 0.01, values.shape)
        recorder.take(Event(0, EventKind.SPEED, "1"))
        key = known.instruments[0].key
        recorder.take(Block(key, t_ns, values, np.zeros(values.shape, np.uint8)))
        recorder.close("stopped")
        if sealed:
            seal(folder)
        return folder

    return make


@pytest.fixture
def job(shelf):
    """Make a job: name, the recording with its old part, vehicle."""

    def make(name, old, vehicle="Löwe hatch (invented)"):
        folder = shelf / "jobs" / name
        change_card(folder / CARD, lambda card: with_value(card, "vehicle", vehicle))
        keep_work(folder, JobWork().taking(old, Side.OLD))
        return folder

    return make


@pytest.fixture
def turned(window, qtbot):
    """Turn a window to the page, and wait until what is there has been read."""

    def turn(many):
        window.show_page(Page.RECORDINGS)
        desk = window.desk.parts[Page.RECORDINGS]

        def read():
            desk.tick()
            assert (len(desk.page.table.hits.hits), desk.work.trouble) == (many, "")

        qtbot.waitUntil(read, timeout=15000)
        return desk

    yield turn
    window.close()
