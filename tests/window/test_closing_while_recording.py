"""To close the window while something is recorded asks as Stop does; the system does not wait."""

import os
import signal

import pytest
from PySide6.QtCore import Qt

from meterlog.commands.window_signals import closed_by_signals
from meterlog.window.session import Phase

_Key = Qt.Key


@pytest.fixture
def recording(window, show, monkeypatch):
    """A window while something is recorded; gives it and how often the run was stopped."""
    show(window, live=True)
    session = window.desk.session
    session.phase = Phase.RECORDING
    stopped = []

    def stop():
        stopped.append(1)
        session.phase = Phase.SHOWING

    monkeypatch.setattr(session, "stop", stop)
    yield window, stopped
    session.phase = Phase.SHOWING


def test_the_first_time_it_goes_on_and_says_what_would_close(recording):
    window, stopped = recording
    assert not window.close()
    assert "Close once more, or press Enter" in window.said.text()
    assert window.header.start.text() != "Stop"
    window.desk.tick()
    assert not stopped
    assert window.isVisible()


def test_the_second_time_it_stops_and_closes(recording, qtbot):
    window, stopped = recording
    window.close()
    window.close()
    qtbot.waitUntil(lambda: not window.isVisible())
    assert stopped == [1]


def test_enter_says_yes_and_closes_too(recording, qtbot):
    window, stopped = recording
    window.close()
    qtbot.keyClick(window.pages, _Key.Key_Return)
    qtbot.waitUntil(lambda: not window.isVisible())
    assert stopped == [1]


def test_enter_twice_stops_and_leaves_the_window(recording, qtbot):
    window, stopped = recording
    for _ in range(2):
        qtbot.keyClick(window.pages, _Key.Key_Return)
    qtbot.wait(120)
    assert stopped == [1]
    assert window.isVisible()


def test_a_second_time_long_after_is_a_first_one(recording):
    window, stopped = recording
    window.close()
    window.desk._stop._first_s -= 2.5
    assert not window.close()
    window.desk.tick()
    assert not stopped


@pytest.mark.parametrize("which", ["SIGTERM", "SIGINT", "SIGHUP"])
def test_a_signal_asks_nobody(recording, qtbot, which):
    if not hasattr(signal, which):
        pytest.skip("no such signal here")
    window, stopped = recording
    with closed_by_signals():
        os.kill(os.getpid(), getattr(signal, which))
        qtbot.waitUntil(lambda: not window.isVisible())
    assert stopped == [1]


def test_the_end_of_the_session_asks_nobody(recording, qtbot, qapp):
    window, stopped = recording
    # What it is sent with only the system can make. To disconnect what is not connected fails.
    assert qapp.commitDataRequest.disconnect(window.close_at_once)
    window.close_at_once()
    qtbot.waitUntil(lambda: not window.isVisible())
    assert stopped == [1]
