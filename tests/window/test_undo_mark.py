"""The mark made last is taken back while recording: at once in the picture, and kept."""

import pytest

from meterlog.model import EventKind, Limits, Role
from meterlog.recording import Recording
from meterlog.window.keys import Action
from meterlog.window.session import Phase
from meterlog.work import Run, Wiring, choose_meters

ROLES = ("motor-current=typed-amps.amps",)


@pytest.fixture
def recording(window, qtbot, tmp_path):
    """A window that records a meter typed by hand; gives it and what a bench would be told."""
    told = []
    session = window.desk.session
    session._on_mark = told.append
    choices = choose_meters(Wiring(("typed-amps@typed:",), ROLES))
    session.start(lambda: Run(choices, Limits(), tmp_path / "run"))
    qtbot.waitUntil(lambda: session.phase is Phase.RECORDING)
    yield window, told
    if session.phase is Phase.RECORDING:
        session.stop()
        assert session.wait(60.0)


def test_a_wrong_speed_and_a_wrong_tap_are_taken_back_and_kept(recording, qtbot):
    window, told = recording
    session = window.desk.session
    right, wrong = (session.mark(EventKind.SPEED, value) for value in ("2", "7"))
    assert session.type_reading("typed-amps", [4.0])
    qtbot.waitUntil(lambda: session.shown.traces.line(Role.MOTOR_CURRENT).count == 1)
    assert session.shown.speed() == 7
    window.desk.do(Action.UNDO)
    assert "speed 7" in session.trouble
    assert session.shown.speed() == 2
    assert wrong not in session.shown.events
    assert (told[-1].kind, told[-1].value) == (EventKind.SPEED, "2")
    tap = session.mark(EventKind.TAP)
    assert session.undo_mark() == tap
    session.glance()
    assert [one.kind for one in session.shown.events if one.kind in (EventKind.TAP,)] == []
    assert session.status.marks == 1
    session.stop()
    assert session.wait(60.0)
    assert session.shown.speed() == 2
    kept = Recording.open(session.folder)
    assert {right, wrong, tap} < set(kept.events)
    assert sum("withdrawn by hand" in note for note in session.review.notes) == 2


def test_without_a_mark_or_a_recording_it_is_said(recording):
    window, _ = recording
    session = window.desk.session
    assert session.undo_mark() is None
    assert "no mark to take back" in session.trouble
    session.stop()
    assert session.wait(60.0)
    window.desk.do(Action.UNDO)
    assert "Nothing is being recorded" in session.trouble
