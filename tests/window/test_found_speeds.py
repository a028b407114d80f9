"""A recording in which nobody told the speeds: they are found, taken for commands, given back."""

import numpy as np
import pytest
from PySide6.QtCore import Qt

from meterlog.evidence.trace_store import TraceStore
from meterlog.model import Block, Step
from meterlog.recording import Recorder, seal
from meterlog.window.found_line import FoundLine
from meterlog.window.session import Phase
from meterlog.window.shown import Shown
from meterlog.window.steps_view import step_cells
from meterlog.work import review_folder

SECOND = 1_000_000_000


def _levels(key):
    """Give 40 s at 10 readings a second: off, 3 A, 6 A, off, with a little seeded noise."""
    noise = np.random.default_rng(7).normal(0.0, 0.01, (400, 3))
    volts = {0.0: (12.5, 12.5), 3.0: (12.3, 8.0), 6.0: (12.1, 5.0)}
    amps = np.repeat([0.0, 3.0, 6.0, 0.0], 100)
    values = np.array([(*volts[one], one) for one in amps]) + noise
    t_ns = np.arange(400, dtype=np.int64) * (SECOND // 10)
    return Block(key, t_ns, values, np.zeros((400, 3), np.uint8))


@pytest.fixture
def untold(window, qtbot, tmp_path, about_of):
    """A window with such a recording on show, and its folder."""
    about = about_of()
    folder = tmp_path / "untold"
    recorder = Recorder.create(folder, about)
    recorder.take(_levels(about.instruments[0].key))
    recorder.tick(20 * SECOND)
    recorder.close()
    seal(folder)
    window.desk.open(folder)
    qtbot.waitUntil(lambda: window.desk.session.phase is Phase.SHOWING)
    return window, folder


def _column(window):
    table = window.desk.run_page.steps.table
    return [table.item(row, 0).text() for row in range(table.rowCount())]


def _turned(qtbot, window, *, accepted):
    session = window.desk.session
    qtbot.waitUntil(
        lambda: session.phase is Phase.SHOWING and session.shown.accepted is accepted,
        timeout=20_000,
    )


def test_found_steps_are_proposed_with_a_question_mark_and_said_to_be_found(untold):
    window, _ = untold
    page = window.desk.run_page
    assert _column(window) == ["0?", "1?", "2?", "0?"]
    assert page.found.isVisible()
    assert "4 speed steps were found" in page.found.words.text()
    assert "found" in page.steps.title.text()
    assert page.state.words.startswith("speed not recorded")
    assert "C: found speeds" in window.keys.accessibleName()


def test_one_key_takes_them_as_commanded_and_gives_them_back(untold, qtbot):
    window, folder = untold
    before = window.desk.session.review
    qtbot.keyClick(window.focusWidget() or window, Qt.Key.Key_C)
    _turned(qtbot, window, accepted=True)
    assert window.desk.session.review == review_folder(folder, accept_steps=True)[1]
    assert _column(window) == ["0", "1", "2", "0"]
    assert window.desk.run_page.steps.title.text().endswith("taken as commanded")
    assert "nobody recorded them" in window.desk.run_page.found.words.text()
    assert "(found)" in window.desk.run_page.state.words
    qtbot.keyClick(window.focusWidget() or window, Qt.Key.Key_C)
    _turned(qtbot, window, accepted=False)
    assert window.desk.session.review == before
    assert _column(window) == ["0?", "1?", "2?", "0?"]


def test_what_is_judged_between_two_looks_is_shown(untold):
    """A small recording is read and judged before the window looks: it must not be passed over."""
    window, _ = untold
    session = window.desk.session
    window.desk.tick()
    session.turn_found_steps()
    session._work.join(20.0)
    assert session.phase is Phase.OPENING
    window.desk.tick()
    assert session.phase is Phase.SHOWING
    assert _column(window) == ["0", "1", "2", "0"]
    assert window.header.start.isEnabled()


def test_the_button_does_the_same_and_the_look_stays_where_it_was(untold, qtbot):
    window, _ = untold
    page = window.desk.run_page
    page._on_look(12.0, 18.0)
    qtbot.mouseClick(page.found.turn, Qt.MouseButton.LeftButton)
    _turned(qtbot, window, accepted=True)
    left, right = page.outlook.stretch(window.desk.session.shown.end_ns)
    assert (left / SECOND, right / SECOND) == pytest.approx((12.0, 18.0))
    assert page.found.turn.isEnabled()


def test_what_is_taken_as_commanded_changes_nothing_in_the_recording(untold, qtbot):
    window, folder = untold
    kept = {path: path.read_bytes() for path in folder.rglob("*") if path.is_file()}
    window.desk.session.turn_found_steps()
    _turned(qtbot, window, accepted=True)
    assert {path: path.read_bytes() for path in folder.rglob("*") if path.is_file()} == kept


def test_another_recording_begins_with_nothing_taken(untold, qtbot):
    window, folder = untold
    window.desk.session.turn_found_steps()
    _turned(qtbot, window, accepted=True)
    window.desk.open(folder)
    _turned(qtbot, window, accepted=False)


def test_recorded_speeds_leave_no_such_line_and_no_such_key(window, show, qtbot):
    shown = show(window)
    assert not window.desk.run_page.found.isVisible()
    assert "found speeds" not in window.keys.accessibleName()
    qtbot.keyClick(window.focusWidget() or window, Qt.Key.Key_C)
    assert window.desk.session.shown is shown
    assert not window.desk.session.busy


def test_while_recording_nothing_is_offered(qtbot, about_of):
    from dataclasses import replace

    line = FoundLine()
    qtbot.addWidget(line)
    shown = Shown(about_of(), TraceStore(about_of().instruments), live=True)
    shown.review = replace(shown.review, steps=(Step(None, 0, SECOND, found=True),))
    line.show_found(shown)
    assert line.isHidden()
    shown.live = False
    line.show_found(shown)
    assert not line.isHidden()


@pytest.mark.parametrize(
    ("step", "words"),
    [
        (Step(3, 0, SECOND), "3"),
        (Step(None, 0, SECOND), "—"),
        (Step(None, 0, SECOND, found=True, proposed_speed=2), "2?"),
        (Step(None, 0, SECOND, found=True), "—"),
    ],
)
def test_a_step_shows_the_command_or_the_proposal(step, words):
    assert step_cells(step)[0] == words


@pytest.mark.parametrize("size", [(1024, 600), (1280, 800)])
def test_line_and_button_fit_the_window(untold, qtbot, size):
    window, _ = untold
    window.resize(*size)
    qtbot.waitUntil(lambda: (window.width(), window.height()) == size)
    window.grab()
    page = window.desk.run_page
    for widget in (page.found.turn, page.found.words):
        right = widget.mapTo(window, widget.rect().bottomRight()).x()
        assert right <= window.width()
    assert page.found.turn.width() >= page.found.turn.sizeHint().width()
    assert page.findings.list.viewport().height() >= 100
    assert page.trace.height() > 150
