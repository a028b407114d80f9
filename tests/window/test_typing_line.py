"""Readings typed by hand in the window: the line, the keys, the digits, the trace."""

from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest
from PySide6.QtCore import Qt

from meterlog.acquire import ReaderState
from meterlog.evidence.trace_store import TraceStore
from meterlog.model import Block, Channel, Event, Flag, Instrument, Quantity, Review, Role
from meterlog.model.errors import UsageError
from meterlog.window.meter_row import MeterRow
from meterlog.window.pages import Page
from meterlog.window.session import Phase
from meterlog.window.shown import Shown
from meterlog.window.status_strip import meter_words
from meterlog.work import LiveTail, RunStatus

SECOND = 1_000_000_000


def hand(key, role, name="volts"):
    channel = Channel(name, role.quantity or Quantity.VOLTAGE, role, interval_s=10.0)
    return Instrument(key, key, "typed:", (channel,), typed=True)


VOLTS = hand("typed-volts", Role.MOTOR_FEED)
AMPS = hand("typed-amps", Role.MOTOR_CURRENT, "amps")


class FakeRun:
    """A few lines that stand in for a run: they keep what is typed."""

    def __init__(self, about):
        self.about, self.folder = about, Path("invented")
        self.tail, self.typed, self.marks, self.at_ns = LiveTail(), [], [], 20 * SECOND

    def type_reading(self, key, values):
        if len(values) != 1:
            raise UsageError(f"{len(values)} numbers are not one for each channel.", subject=key)
        self.typed.append((key, tuple(values)))
        column = np.array([values])
        flags = np.full(column.shape, int(Flag.TYPED), np.uint8)
        self.tail.take(Block(key, np.array([self.at_ns]), column, flags))

    def mark(self, kind, value="", at_ns=None):
        self.marks.append((kind, value))
        return Event(self.at_ns, kind, value)

    def now_ns(self):
        return self.at_ns + 4 * SECOND

    def status(self):
        return RunStatus()

    def review(self):
        return Review()


@pytest.fixture
def typing(window, about_of):
    """Show a run of some instruments in the window; gives the run."""

    def begin(*instruments):
        about = replace(about_of(), instruments=instruments)
        run = FakeRun(about)
        session = window.desk.session
        session.shown = Shown(about, TraceStore(instruments), live=True)
        session.phase, session.folder, session._run = Phase.RECORDING, run.folder, run
        if window.desk.page is not Page.RUN:
            window.show_page(Page.RUN)
        window.desk.tick()
        return run

    return begin


def _press(qtbot, window, key):
    qtbot.keyClick(window.focusWidget() or window, key)


@pytest.mark.parametrize("key", [Qt.Key.Key_Equal, Qt.Key.Key_R])
def test_a_key_opens_the_line_and_enter_keeps_a_reading_and_waits_for_the_next(
    window, typing, qtbot, key
):
    run = typing(VOLTS)
    line = window.desk.run_page.typing
    assert not line.isVisible()
    _press(qtbot, window, key)
    assert line.isVisible()
    qtbot.keyClicks(line.field, "12,43")
    qtbot.keyClick(line.field, Qt.Key.Key_Return)
    assert run.typed == [("typed-volts", (12.43,))]
    assert line.said.text() == "taken: typed-volts: volts 12.43 V"
    assert line.isVisible()
    assert line.field.text() == ""
    qtbot.keyClicks(line.field, "12.5")
    qtbot.keyClick(line.field, Qt.Key.Key_Enter)
    assert run.typed[1:] == [("typed-volts", (12.5,))]
    assert run.marks == []
    qtbot.keyClick(line.field, Qt.Key.Key_Escape)
    assert not line.isVisible()
    _press(qtbot, window, Qt.Key.Key_4)
    assert [value for _, value in run.marks] == ["4"]


def test_what_is_no_reading_stays_in_the_line_with_the_reason(window, typing, qtbot):
    run = typing(VOLTS)
    line = window.desk.run_page.typing
    _press(qtbot, window, Qt.Key.Key_Equal)
    for words, reason in (("twelve", "is no number"), ("12 13", "2 numbers are not one")):
        line.field.setText(words)
        qtbot.keyClick(line.field, Qt.Key.Key_Return)
        assert reason in line.said.text()
        assert line.field.text() == words
    assert run.typed == []


def test_a_voltage_that_can_not_be_is_taken_and_asked_about(window, typing, qtbot):
    run = typing(VOLTS)
    line = window.desk.run_page.typing
    _press(qtbot, window, Qt.Key.Key_R)
    qtbot.keyClicks(line.field, "126")
    qtbot.keyClick(line.field, Qt.Key.Key_Return)
    assert run.typed == [("typed-volts", (126.0,))]
    assert "taken: typed-volts: volts 126 V. ⚠ 126 V?" in line.said.text()


def test_of_several_meters_the_one_chosen_gets_the_reading(window, typing, qtbot):
    run = typing(VOLTS, AMPS)
    line = window.desk.run_page.typing
    _press(qtbot, window, Qt.Key.Key_Equal)
    assert line.meter.isVisible()
    line.meter.setCurrentIndex(1)
    assert line.field.placeholderText() == "amps (A)"
    line.field.setText("5.1")
    qtbot.keyClick(line.field, Qt.Key.Key_Return)
    assert run.typed == [("typed-amps", (5.1,))]


def test_without_a_typed_meter_the_line_says_so_and_swallows_what_is_typed(
    window, typing, qtbot, about_of
):
    run = typing(*about_of().instruments)
    line = window.desk.run_page.typing
    _press(qtbot, window, Qt.Key.Key_R)
    assert "⚠ No meter of this recording is typed by hand" in line.said.text()
    for key in (Qt.Key.Key_1, Qt.Key.Key_2, Qt.Key.Key_Period, Qt.Key.Key_4, Qt.Key.Key_Return):
        _press(qtbot, window, key)
    assert (run.marks, run.typed) == ([], [])
    assert not window.desk._stop.pending, "Enter was no first press for stop"
    assert line.field.text() == "12.4"
    _press(qtbot, window, Qt.Key.Key_Escape)
    assert not line.isVisible()
    assert line.field.text() == ""


@pytest.mark.parametrize("key", [Qt.Key.Key_R, Qt.Key.Key_N])
def test_without_a_recording_no_key_that_follows_starts_one(window, show, qtbot, key):
    show(window)
    begun = []
    window.desk.session.start = begun.append
    _press(qtbot, window, key)
    for one in (Qt.Key.Key_1, Qt.Key.Key_S, Qt.Key.Key_Return, Qt.Key.Key_Enter):
        _press(qtbot, window, one)
    page = window.desk.run_page
    told = page.typing.said if key is Qt.Key.Key_R else page.note.hint
    assert told.isVisible()
    assert "Nothing is being recorded" in told.text()
    assert begun == []
    _press(qtbot, window, Qt.Key.Key_Escape)
    assert not told.isVisible()


def test_what_is_being_typed_stays_when_a_recording_begins_or_ends(window, typing, show, qtbot):
    show(window)
    line = window.desk.run_page.typing
    _press(qtbot, window, Qt.Key.Key_R)
    qtbot.keyClicks(line.field, "12.4")
    run = typing(VOLTS)
    assert line.field.hasFocus()
    assert (line.field.text(), line.said.text()) == ("12.4", "")
    _press(qtbot, window, Qt.Key.Key_Return)
    assert run.typed == [("typed-volts", (12.4,))]
    qtbot.keyClicks(line.field, "12")
    window.desk.session.phase = Phase.SHOWING
    window.desk.tick()
    _press(qtbot, window, Qt.Key.Key_Return)
    assert line.field.text() == "12"
    assert "Nothing is being recorded" in line.said.text()
    assert run.typed[1:] == []
    window.pages.setFocus()
    window.desk.session.phase = Phase.RECORDING
    window.desk.tick()
    assert not line.isVisible(), "one that nobody types into closes"


def test_digits_mark_and_trace_say_that_it_is_typed_and_how_long_ago(window, typing):
    run = typing(VOLTS, AMPS)
    page = window.desk.run_page
    window.desk.tick()
    assert "nothing yet" in page.volts.note
    run.type_reading("typed-volts", [12.43])
    window.desk.tick()
    assert (page.volts.text, page.volts.note) == ("12.43", "typed by hand 4 s ago")
    assert "typed by hand" in page.volts.accessibleName()
    (line, curve) = page.trace._volts.curves[0]
    assert line.typed
    assert [points.tolist() for points in curve.getData()] == [[20.0], [12.43]]
    assert "motor&nbsp;feed,&nbsp;typed&nbsp;by&nbsp;hand" in page.trace.key.text()
    run.at_ns += 60 * SECOND
    run.now_ns = lambda: run.at_ns
    page.show_judgement(window.desk.session)
    assert page.volts.text == "—"
    assert page.volts.note == "typed by hand 60 s ago"


def test_the_status_line_says_typed_instead_of_connected():
    states = (ReaderState("clamp", alive=True), ReaderState("hand", alive=True, typed=True))
    assert meter_words(RunStatus(meters=states)) == "clamp: connected · hand: typed by hand"


def test_a_meter_that_is_typed_asks_for_no_port(qtbot):
    row = MeterRow(["line-logger", "typed-volts"], ())
    qtbot.addWidget(row)
    assert row.port.isEnabled()
    row.profile.setCurrentText("typed-volts")
    assert not row.port.isEnabled()
    assert row.meter_words() == "typed-volts@typed:"
    row.profile.setCurrentText("line-logger")
    assert row.port.isEnabled()
    assert row.url() == ""
