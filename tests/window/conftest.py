"""Fixtures of the window tests: an invented recording, and a window on it."""

import gc
import shutil
import sys
from datetime import UTC, datetime
from pathlib import Path
from types import MappingProxyType

import numpy as np
import pytest

from meterlog.evidence.trace_store import TraceStore
from meterlog.model import (
    About,
    Block,
    Channel,
    Event,
    EventKind,
    Finding,
    FindingKind,
    Instrument,
    Job,
    Limits,
    Origin,
    Quantity,
    Review,
    Role,
    Span,
    SpanKind,
    SpeedLimits,
    Step,
    Verdict,
)
from meterlog.window.main_window import MainWindow
from meterlog.window.pages import Page
from meterlog.window.session import Phase
from meterlog.window.shown import Shown
from meterlog.window.where_i_was import Where, WhereIWas

RIG = str(Path(__file__).resolve().parents[1] / "rig")
sys.path.insert(0, RIG)
try:
    import shelf as shelf_rig
finally:
    sys.path.remove(RIG)

SECOND = 1_000_000_000
KEY = "line-logger"


def seconds(value):
    return round(value * SECOND)


def make_about(origin=Origin.SIMULATED):
    channels = tuple(
        Channel(name, quantity, role, interval_s=0.1)
        for name, quantity, role in (
            ("feed", Quantity.VOLTAGE, Role.MOTOR_FEED),
            ("return", Quantity.VOLTAGE, Role.MOTOR_RETURN),
            ("current", Quantity.CURRENT, Role.MOTOR_CURRENT),
        )
    )
    meter = Instrument(KEY, KEY, "invented", channels, simulated=origin is Origin.SIMULATED)
    limits = Limits(name="invented", speeds=MappingProxyType({1: SpeedLimits(2.0, 5.0)}))
    return About(
        "00000000-0000-4000-8000-000000000000",
        datetime(2030, 1, 2, 3, 4, 5, tzinfo=UTC),
        0,
        0,
        "meterlog test",
        origin,
        (meter,),
        limits,
        Job(work_order="WO 1 (invented)"),
    )


def make_block(start_s, end_s, rows):
    """Give readings at 10 a second; ``rows`` is (feed, return, current)."""
    count = round((end_s - start_s) * 10)
    t_ns = (start_s * SECOND + np.arange(count) * SECOND // 10).astype(np.int64)
    values = np.tile(np.array(rows, dtype=np.float64), (count, 1))
    flags = np.where(np.isnan(values), 2, 0).astype(np.uint8)
    return Block(KEY, t_ns, values, flags)


def make_review():
    finding = Finding(
        FindingKind.DEAD,
        Verdict.FAIL,
        seconds(4),
        seconds(5),
        seconds(0.1),
        0.0,
        "A",
        0.05,
        0.3,
        1,
        "Dead segment at speed 1 for 1.00 s.",
    )
    spans = (
        Span(SpanKind.OFF, 0, seconds(2), speed=0),
        Span(SpanKind.RUNNING, seconds(2), seconds(4), speed=1),
        Span(SpanKind.DEAD, seconds(4), seconds(5), speed=1),
        Span(SpanKind.RUNNING, seconds(5), seconds(8), speed=1),
    )
    step = Step(
        1, seconds(2), seconds(8), 60, steady_mean_v=4.25, steady_mean_a=3.81, steady_max_a=7.0
    )
    return Review(spans, (step,), (finding,), 0.3, (), ("All of it is invented.",))


def make_shown(*, live=False, origin=Origin.SIMULATED):
    about = make_about(origin)
    traces = TraceStore(about.instruments)
    for block in (
        make_block(0, 2, (12.5, 12.5, 0.0)),
        make_block(2, 4, (12.25, 8.0, 3.81)),
        make_block(4, 5, (12.5, 0.25, 0.0)),
        make_block(5, 8, (12.25, 8.0, 3.81)),
    ):
        traces.take(block)
    events = (
        Event(seconds(2), EventKind.SPEED, "1"),
        Event(seconds(4.9), EventKind.TAP),
    )
    return Shown(about, traces, make_review(), events, live=live)


def put_on_show(window, shown, phase=Phase.SHOWING):
    session = window.desk.session
    session.shown, session.phase, session.folder = shown, phase, Path("invented")
    window.show_page(1)
    window.desk.tick()


@pytest.fixture(autouse=True)
def swept_by_the_main_thread():
    """No other thread may come upon a closed window: that locks up Qt. See tests/conftest.py."""
    gc.disable()


@pytest.fixture(autouse=True)
def settings_of_its_own(monkeypatch, tmp_path):
    """No test reads or writes what the person at this computer chose last."""
    monkeypatch.setenv("XDG_CONFIG_HOME", str(tmp_path / "settings"))
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / "cache"))


@pytest.fixture
def window(qtbot, monkeypatch, tmp_path):
    """A whole window, filled, with nothing on show; its recordings folder is empty."""
    monkeypatch.setattr("meterlog.window.meters_page.recordings_folder", lambda: tmp_path)
    # As if the Trace page had been the last one: most tests have no need of the Job page.
    WhereIWas().keep(Where(Page.RUN))
    window = MainWindow()
    qtbot.addWidget(window)
    window.resize(1280, 800)
    window.show()
    qtbot.waitExposed(window)
    window.fill()
    return window


@pytest.fixture(scope="session")
def made_motors(tmp_path_factory):
    """Recordings of invented motors, made once: good ones, screened, and two others."""
    from meterlog.work.screening import ScreenRequest, Workers, screen

    place = tmp_path_factory.mktemp("made") / "motors"
    short = {"seconds": 3.0, "rate": 10.0}
    for number in range(0, 27, 3):
        shelf_rig.make(place / "good" / f"good-{number:02d}", number, **short)
    shelf_rig.make(place / "heavy", 30, load=1.45, part="FM-20, serial 9", **short)
    shelf_rig.make(place / "strange", 31, part="ZZ-1, serial 1", **short)
    asked = ScreenRequest(
        (str(place / "good"),), place / "screening", workers=Workers(1, threads=True)
    )
    screen(asked, lambda _done, _whole: None)
    return place


@pytest.fixture
def motors(made_motors, tmp_path, monkeypatch):
    """A copy of them in the window's folder of recordings; no table lies elsewhere."""
    monkeypatch.setenv("XDG_DATA_HOME", str(tmp_path / "data"))
    return Path(shutil.copytree(made_motors, tmp_path / "motors"))


@pytest.fixture
def about():
    """What an invented recording says of itself."""
    return make_about()


@pytest.fixture
def show():
    """Put an invented recording on show in a window; gives what is shown."""

    def put(window, **options):
        shown = make_shown(**options)
        put_on_show(window, shown)
        return shown

    return put


@pytest.fixture
def block_of():
    """Make readings: start and end in seconds, (feed, return, current)."""
    return make_block


@pytest.fixture
def about_of():
    """Make the head of an invented recording; options: origin."""
    return make_about
