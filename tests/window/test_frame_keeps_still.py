"""Nothing moves under the hand, nothing typed is lost, and all is reached on a small screen."""

from dataclasses import replace

import pytest
from PySide6.QtCore import QPoint, Qt

from meterlog.model import Event, EventKind
from meterlog.model.errors import UsageError
from meterlog.window.pages import Page
from meterlog.window.scrolled import LEAST
from meterlog.window.session import Phase

S = 1_000_000_000


def test_a_click_on_the_trace_tells_its_time_however_late_it_is(window, show):
    show(window)
    page, told = window.desk.run_page, []
    page.clicked.connect(told.append)
    page.trace.clicked.emit(5.3)
    page.trace.clicked.emit(90_000.0)
    assert told == [5_300_000_000, 90_000 * S]


def test_beside_open_edits_undo_takes_back_the_last_of_them(window, show, monkeypatch):
    show(window)
    undone, edits = [], window.desk.edits
    monkeypatch.setattr(edits.panel, "undo_edit", lambda: undone.append(1))
    window.desk.undo()
    assert not undone
    assert window.desk.session.trouble  # nothing is being recorded
    window.desk.session.trouble = ""
    window.desk.run_page.show_aside(edits.panel)
    window.desk.undo()
    assert undone == [1]
    assert not window.desk.session.trouble


def test_a_note_that_is_being_typed_is_kept_when_the_window_is_closed(window, monkeypatch):
    lines, note = window.desk.lines, window.desk.run_page.note
    kept = []
    note.kept.connect(lambda words, at_ns: kept.append((words, at_ns)))
    note.ask(7 * S)
    note.field.setText("half a  note")
    lines.keep_note()
    assert not kept  # nothing is being recorded: there is nothing that it could be put into
    window.desk.session.phase = Phase.RECORDING
    monkeypatch.setattr(window.desk.session, "stop", lambda: None)
    lines.keep_note()
    assert kept == [("half a note", 7 * S)]
    lines.keep_note()
    assert len(kept) == 1
    window.desk.session.phase = Phase.IDLE


def test_full_screen_gives_a_maximized_window_back(window):
    window.showMaximized()
    window.turn_full_screen()
    assert window.isFullScreen()
    window.turn_full_screen()
    assert window.isMaximized()
    assert not window.isFullScreen()


@pytest.mark.parametrize(("wide", "high", "all_of_it"), [(1366, 768, True), (1920, 1080, False)])
def test_a_screen_too_small_for_the_window_is_taken_whole(
    window, monkeypatch, wide, high, all_of_it
):
    from PySide6.QtCore import QSize

    class Screen:
        def availableSize(self):  # noqa: N802 - Qt's own name
            return QSize(wide, high)

    monkeypatch.setattr(window, "screen", Screen)
    window.fit_screen()
    assert window.isMaximized() is all_of_it


def test_what_is_said_moves_no_page(window, show):
    show(window)
    window.say("")
    before = window.pages.mapTo(window, QPoint(0, 0))
    window.say("Something went wrong, and what to do.")
    assert window.said.isVisible()
    assert window.pages.mapTo(window, QPoint(0, 0)) == before


def test_how_long_a_state_holds_counts_from_the_speed_commanded_last(window, show):
    shown = show(window, live=True)
    span = shown.newest_span()
    assert shown.holds_since_ns(span) == max(
        [span.start_ns, *(e.t_ns for e in shown.events if e.kind is EventKind.SPEED)]
    )
    later = span.start_ns + 2 * S
    shown.events = (*shown.events, Event(later, EventKind.SPEED, "4"))
    assert shown.holds_since_ns(span) == later
    assert shown.holds_since_ns(replace(span, start_ns=later + S)) == later + S


def test_a_condition_that_cant_be_is_told_before_the_run_begins(window):
    meters = window.desk.meters_page
    line = meters.conditions.lines["ambient_c"]
    meters.rows[0].profile.setCurrentText("line-logger")
    meters.rows[0].set_url("socket://127.0.0.1:1")
    line.edit.setText("warm")  # and no Enter: the next key starts the run
    with pytest.raises(UsageError, match=r"a condition can't be taken.*warm") as told:
        meters.plan()
    assert "empty its line" in str(told.value)
    line.edit.setText("21.5")
    meters.plan()
    assert meters.conditions.conditions.ambient_c == 21.5
    line.edit.setText("")
    meters.plan()
    assert meters.conditions.conditions.ambient_c is None


@pytest.mark.parametrize(("wide", "high", "bars"), [(683, 384, True), (1024, 600, False)])
def test_a_window_that_is_too_small_is_scrolled_and_not_squeezed(window, qtbot, wide, high, bars):
    window.show()
    window.resize(wide, high)
    qtbot.waitUntil(lambda: (window.width(), window.height()) == (wide, high))
    area = window.centralWidget()
    assert (area.horizontalScrollBar().maximum() > 0) is bars
    assert (area.verticalScrollBar().maximum() > 0) is bars
    assert window.pages.width() <= max(wide, LEAST.width())


@pytest.mark.parametrize("page", [Page.JOB, Page.METERS, Page.CIRCUIT, Page.CLAIM])
def test_what_tab_goes_to_is_brought_into_sight(window, qtbot, page):
    window.resize(683, 384)
    window.show_page(page)
    window.activateWindow()
    qtbot.waitUntil(window.isActiveWindow)
    view, been, scrolled = window.centralWidget().viewport(), set(), set()
    for _ in range(80):
        qtbot.keyClick(window.focusWidget() or window, Qt.Key.Key_Tab)
        now = window.focusWidget()
        been.add(now)
        scrolled.add(window.centralWidget().horizontalScrollBar().value())
        assert view.rect().intersects(now.rect().translated(now.mapTo(view, QPoint(0, 0)))), now
    assert len(been) > 20
    assert len(scrolled) > 1
