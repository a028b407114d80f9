from pathlib import Path

import pytest
from PySide6.QtCore import Qt

from meterlog.model import Event, EventKind, Review
from meterlog.model.errors import DiskFailed
from meterlog.window.keys import BINDINGS, Action
from meterlog.window.pages import Page
from meterlog.window.session import Phase
from meterlog.work import LiveTail, RunStatus


class FakeRun:
    """Ten lines that stand in for a run: they keep the marks."""

    def __init__(self, about):
        self.about, self.folder, self.marks = about, Path("invented"), []
        self.tail, self.stopped, self.failed = LiveTail(), "", ""

    def mark(self, kind, value="", at_ns=None):
        self.marks.append(Event(5 if at_ns is None else at_ns, kind, value))
        return self.marks[-1]

    def now_ns(self):
        return 42

    def stop(self, outcome):
        self.stopped = outcome
        raise DiskFailed("a fake can't be sealed.")

    def status(self):
        return RunStatus(failed=self.failed, events=tuple(self.marks))

    def review(self):
        return Review()


@pytest.fixture
def running(window, show):
    """A window that believes that it records; gives the window and its run."""
    shown = show(window, live=True)
    run = FakeRun(shown.about)
    window.desk.session._run = run
    window.desk.session.phase = Phase.RECORDING
    window.desk.tick()
    return window, run


def _press(qtbot, window, key, modifier=Qt.KeyboardModifier.NoModifier):
    qtbot.keyClick(window.focusWidget() or window, key, modifier)


def test_digit_keys_command_their_speeds(running, qtbot):
    window, run = running
    for digit in range(10):
        _press(qtbot, window, Qt.Key(Qt.Key.Key_0.value + digit))
    assert [e.value for e in run.marks] == [str(digit) for digit in range(10)]
    assert {e.kind for e in run.marks} == {EventKind.SPEED}
    assert set(run.marks) <= set(window.desk.session.shown.events)


def test_each_tap_key_marks_a_tap(running, qtbot):
    window, run = running
    for key in (Qt.Key.Key_Plus, Qt.Key.Key_T, Qt.Key.Key_Space):
        _press(qtbot, window, key)
    assert [e.kind for e in run.marks] == [EventKind.TAP] * 3


def test_one_key_marks_that_the_leads_were_moved(running, qtbot):
    window, run = running
    _press(qtbot, window, Qt.Key.Key_W)
    assert [(e.kind, e.value) for e in run.marks] == [(EventKind.WIGGLE, "leads")]
    assert "W: leads moved" in window.keys.accessibleName()


def test_the_numeric_pad_marks_too(running, qtbot):
    window, run = running
    _press(qtbot, window, Qt.Key.Key_3, Qt.KeyboardModifier.KeypadModifier)
    assert [e.value for e in run.marks] == ["3"]


def test_keys_work_wherever_the_focus_is(running, qtbot):
    window, run = running
    for widget in (
        window.desk.run_page.findings.list,
        window.header.looks,
        window.desk.run_page.steps.table,
    ):
        widget.setFocus()
        assert window.focusWidget() is widget
        qtbot.keyClick(widget, Qt.Key.Key_2)
    assert [e.value for e in run.marks] == ["2", "2", "2"]


def test_a_note_belongs_to_the_instant_its_key_was_pressed(running, qtbot):
    window, run = running
    _press(qtbot, window, Qt.Key.Key_N)
    field = window.desk.run_page.note.field
    assert window.focusWidget() is field
    qtbot.keyClicks(field, "smoke at 3, t+1")
    assert run.marks == []
    qtbot.keyClick(field, Qt.Key.Key_Return)
    assert run.marks == [Event(42, EventKind.NOTE, "smoke at 3, t+1")]
    assert not window.desk.run_page.note.isVisible()
    assert not window.said.isVisible(), "the Enter that keeps a note is no first press for stop"


def test_escape_drops_a_note_and_keys_work_again(running, qtbot):
    window, run = running
    _press(qtbot, window, Qt.Key.Key_Minus)
    field = window.desk.run_page.note.field
    qtbot.keyClicks(field, "no")
    qtbot.keyClick(field, Qt.Key.Key_Escape)
    assert not window.desk.run_page.note.isVisible()
    _press(qtbot, window, Qt.Key.Key_T)
    assert [e.kind for e in run.marks] == [EventKind.TAP]


def test_one_enter_does_not_stop_and_says_what_would(running, qtbot):
    window, run = running
    _press(qtbot, window, Qt.Key.Key_Enter)
    assert run.stopped == ""
    assert window.said.isVisible()
    assert "once more" in window.said.text()


def test_a_second_enter_stops(running, qtbot):
    window, run = running
    _press(qtbot, window, Qt.Key.Key_Enter)
    _press(qtbot, window, Qt.Key.Key_Enter)
    qtbot.waitUntil(lambda: window.desk.session.phase is Phase.SHOWING)
    assert run.stopped == "stopped"
    assert "a fake can't be sealed" in window.said.text()


def test_a_second_enter_after_a_long_while_is_a_first_one(running, qtbot):
    window, run = running
    _press(qtbot, window, Qt.Key.Key_Enter)
    window.desk._stop._first_s -= 2.5
    _press(qtbot, window, Qt.Key.Key_Enter)
    assert run.stopped == ""


def test_a_mark_without_a_recording_says_so_and_is_not_kept(window, show, qtbot):
    show(window)
    _press(qtbot, window, Qt.Key.Key_T)
    assert window.said.isVisible()
    assert "Nothing is being recorded" in window.said.text()


def test_following_and_looking_back_change_with_one_key(window, show, qtbot):
    show(window, live=True)
    page = window.desk.run_page
    assert page.outlook.follows
    _press(qtbot, window, Qt.Key.Key_Period)
    assert not page.outlook.follows
    before = page.outlook.stretch(0)
    _press(qtbot, window, Qt.Key.Key_Right)
    assert page.outlook.stretch(0)[0] > before[0]
    width = page.outlook.width_s
    _press(qtbot, window, Qt.Key.Key_Up)
    assert page.outlook.width_s < width
    _press(qtbot, window, Qt.Key.Key_F)
    assert page.outlook.follows


def test_keys_held_with_control_mark_nothing_and_digits_turn_pages(running, qtbot):
    window, run = running
    for key, page in (
        (Qt.Key.Key_2, Page.METERS),
        (Qt.Key.Key_3, Page.CIRCUIT),
        (Qt.Key.Key_4, Page.RUN),
    ):
        _press(qtbot, window, key, Qt.KeyboardModifier.ControlModifier)
        assert window.pages.currentIndex() == page
    _press(qtbot, window, Qt.Key.Key_T, Qt.KeyboardModifier.ControlModifier)
    assert run.marks == []


def test_ctrl_and_a_digit_turns_the_page_while_typing_and_esc_leaves_the_field(running, qtbot):
    window, run = running
    window.show_page(Page.METERS)
    field = window.desk.meters_page.folder
    field.setFocus()
    qtbot.keyClick(field, Qt.Key.Key_Escape)
    assert not field.hasFocus()
    field.setFocus()
    qtbot.keyClick(field, Qt.Key.Key_4, Qt.KeyboardModifier.ControlModifier)
    assert window.pages.currentIndex() == Page.RUN
    assert run.marks == []


def test_typing_a_folder_on_the_meters_page_is_no_command(running, qtbot):
    window, run = running
    window.show_page(0)
    field = window.desk.meters_page.folder
    field.clear()
    field.setFocus()
    qtbot.keyClicks(field, "van 4 +t")
    assert field.text() == "van 4 +t"
    assert run.marks == []


def test_each_key_has_one_meaning_and_every_action_a_key():
    keys = [key for binding in BINDINGS for key in binding.keys]
    assert len(keys) == len(set(keys))
    assert {binding.action for binding in BINDINGS} == set(Action)


def test_the_key_map_is_on_screen(window):
    window.show_page(1)
    assert window.keys.isVisible()
    for words in ("speed", "tap", "note", "twice: stop"):
        assert words in window.keys.accessibleName()


def test_the_screen_goes_on_and_says_in_red_that_nothing_is_kept(running, block_of):
    window, run = running
    run.failed = "No space left on device"
    run.tail.take(block_of(8, 9, (12.0, 7.0, 4.44)))
    window.desk._glanced_s = float("-inf")
    window.desk.tick()
    assert window.alarm.isVisible()
    assert window.alarm.text() == "NOTHING IS BEING KEPT: No space left on device"
    assert window.desk.run_page.amperes.text == "4.44"
    run.failed = ""
    window.desk._glanced_s = float("-inf")
    window.desk.tick()
    assert not window.alarm.isVisible()


def test_marks_are_numbered_and_can_be_explained_later(running, qtbot):
    window, run = running
    for _ in range(2):
        _press(qtbot, window, Qt.Key.Key_H)
    assert [one.value for one in run.marks] == ["mark 1", "mark 2"]
