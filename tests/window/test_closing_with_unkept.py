"""What would be lost when the window closes holds it, until it is closed once more."""

import pytest

from meterlog.model.errors import DiskFailed
from meterlog.window.pages import Page
from meterlog.window.session import Phase


@pytest.fixture
def typed(window, monkeypatch):
    """A window in which something was typed that can't be kept, turned to another page."""

    def fail(key, text):
        raise DiskFailed("can't be written: no space left.", remedy="Free some space.")

    monkeypatch.setattr(window.desk.at_hand, "enter", fail)
    window.show_page(Page.JOB)
    job = window.desk.parts[Page.JOB]
    job.page.form.boxes["vehicle"].edit.setText("Kestrel van (invented)")
    window.show_page(Page.RECORDINGS)
    yield window, job
    monkeypatch.undo()
    window.close()


def test_one_closing_shows_what_would_be_lost_and_the_second_one_closes(typed, qtbot):
    window, job = typed
    assert not window.close()
    qtbot.wait(300)
    assert window.isVisible()
    assert window.desk.page is Page.JOB
    assert "Not kept: vehicle. Close once more" in job.page.said.text()
    assert "closes by itself" not in window.said.text()
    assert window.close()


def test_what_could_not_be_kept_since_is_told_before_it_is_lost(typed, qtbot):
    window, job = typed
    assert not window.close()
    job.page.form.boxes["plate"].edit.setText("QX 1")
    job.page.form.commit()
    assert not window.close()
    assert "vehicle" in job.page.said.text()
    assert "plate" in job.page.said.text()
    assert window.close()


def test_what_could_not_be_kept_holds_a_window_that_closes_by_itself(typed, qtbot):
    window, job = typed
    session = window.desk.session
    session.phase = Phase.SEALING
    window.desk._closing.waits = True
    window.desk.tick()
    session.phase = Phase.SHOWING
    qtbot.waitUntil(lambda: "Close once more" in job.page.said.text())
    qtbot.wait(300)
    assert window.isVisible()
    assert window.close()


def test_a_signal_waits_for_nobody(typed, qtbot):
    window, _ = typed
    window.close_at_once()
    qtbot.waitUntil(lambda: not window.isVisible())


@pytest.mark.parametrize(
    ("phase", "words"),
    [
        (Phase.CONNECTING, "Ports are being opened…"),
        (Phase.SEALING, "Sealing the recording…"),
        (Phase.MENDING, "The window closes by itself when this is done."),
    ],
)
def test_what_is_waited_for_is_said(window, monkeypatch, phase, words):
    session = window.desk.session
    monkeypatch.setattr(type(session), "busy", True)
    session.phase = phase
    assert not window.close()
    assert words in window.said.text()
    monkeypatch.undo()
    session.phase = Phase.IDLE
