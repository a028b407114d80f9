"""A second run that comes late is laid only where it is still wanted, and on what holds now."""

from pathlib import Path

import pytest
from PySide6.QtWidgets import QWidget

from meterlog.evidence.trace_store import TraceStore
from meterlog.model import Event, EventKind, withdrawal
from meterlog.model.errors import UsageError
from meterlog.window import second_behind
from meterlog.window.job_at_hand import JobAtHand
from meterlog.window.merged_events import merged_events
from meterlog.window.second_behind import SecondBehind
from meterlog.window.second_run import SecondRun
from meterlog.window.session import Session
from meterlog.window.shown import Shown
from meterlog.work.job_folder import Side
from tests.rig.held_work import HeldWork

S = 1_000_000_000


@pytest.fixture
def held(monkeypatch, about_of):
    def read(folder):
        if folder.name == "gone":
            raise UsageError("is gone.", subject=str(folder))
        about = about_of()
        start = (Event(3 * S, EventKind.SPEED, "1"),)
        return SecondRun(folder, about, TraceStore(about.instruments), start)

    held = HeldWork(read)
    monkeypatch.setattr(second_behind.SecondRun, "load", lambda folder, _tell: held(folder))
    yield held
    held.let_all_go()


@pytest.fixture
def second(qtbot, held, tmp_path, about_of):
    """A recording on show, and a job with a run of the other part."""
    session, over = Session(), QWidget()
    qtbot.addWidget(over)
    about = about_of()
    start = (Event(5 * S, EventKind.SPEED, "1"),)
    session.shown = Shown(about, TraceStore(about.instruments), events=start)
    session.folder = tmp_path / "shown"
    at_hand = JobAtHand(lambda: tmp_path, tmp_path / "settings")
    at_hand.take_recording(tmp_path / "other")
    at_hand.fit(Side.NEW)
    return SecondBehind(session, at_hand, over)


def _settled(second, qtbot):
    def done():
        second.tick()
        assert not second._work.busy

    qtbot.waitUntil(done)


def test_a_run_that_was_taken_away_before_it_came_is_not_laid(second, held, qtbot, tmp_path):
    second.turn()
    second.turn()
    held.let_go(tmp_path / "other")
    _settled(second, qtbot)
    assert second.laid is None


def test_trouble_with_a_run_that_was_taken_away_is_not_told(second, held, qtbot, tmp_path):
    second.load(tmp_path / "gone")
    second.turn()
    held.let_go(tmp_path / "gone")
    _settled(second, qtbot)
    assert (second.laid, second._session.trouble) == (None, "")


def test_the_key_pressed_again_while_reading_is_being_stopped_brings_it(
    second, held, qtbot, tmp_path, monkeypatch
):
    def stopped(folder, tell):
        run = held(folder)
        tell(1.0)
        return run

    monkeypatch.setattr(second_behind.SecondRun, "load", stopped)
    for _ in range(3):
        second.turn()
    held.let_go(tmp_path / "other")
    _settled(second, qtbot)
    assert second.laid is not None
    assert second.laid.shift_ns == 2 * S


def test_of_two_folders_asked_for_the_second_one_is_laid(second, held, qtbot, tmp_path):
    second.load(Path("first"))
    second.load(tmp_path / "chosen")
    held.let_go(Path("first"))
    held.let_go(tmp_path / "chosen")
    _settled(second, qtbot)
    assert second.laid is not None
    assert second.laid.folder == tmp_path / "chosen"


def test_a_start_that_is_taken_back_lays_it_on_the_next_one(second, held, qtbot, tmp_path):
    held.let_go(tmp_path / "other")
    second.turn()
    _settled(second, qtbot)
    shown = second._session.shown
    undone = withdrawal(shown.events[0], 6 * S)
    shown.events = merged_events(shown.events, (undone,))
    second.tick()
    assert second.laid is None
    assert "waits for a commanded speed" in second._session.trouble
    shown.events = merged_events(shown.events, (Event(9 * S, EventKind.SPEED, "1"),))
    second.tick()
    assert second.laid is not None
    assert second.laid.shift_ns == 6 * S
    assert second._session.trouble == ""
