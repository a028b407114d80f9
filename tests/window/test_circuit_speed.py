"""One speed for the Circuit page and the recording, whichever way it is set."""

import pytest
from PySide6.QtCore import Qt

from meterlog.model import (
    CircuitState,
    CircuitVerdict,
    Event,
    EventKind,
    ProposedTest,
    Review,
    Suspect,
)
from meterlog.model.errors import DiskFailed
from meterlog.window.circuit_judge import CircuitJudge
from meterlog.window.session import Phase
from meterlog.work import RunStatus, fresh_folder
from meterlog.work.live_tail import LiveTail

NAME = "low-side-linear-12v"
_Key = Qt.Key


class Proposing:
    """Proposes to measure the motor's return at speed 3 with its plug off."""

    def verdict(self, check):
        state = CircuitState("on", 3, unplugged=frozenset({"motor"}))
        test = ProposedTest(
            "motor-return", None, state, 1.0, 1.0, 0.2, 0.4, (), (), "Measure the return.", "",
        )  # fmt: skip
        return CircuitVerdict(NAME, (Suspect("motor", "fan motor", 0.2, 0.1),), "", "", test)

    def expected(self, state):
        return ()


class Keeping:
    """A run that keeps marks, until its disk is full."""

    def __init__(self, about, folder):
        self.about, self.folder, self.marks, self.tail = about, folder, [], LiveTail()
        self.full = False

    def mark(self, kind, value="", at_ns=None):
        if self.full:
            raise DiskFailed("is full.", subject="disk", remedy="Free some space.")
        self.marks.append(Event(len(self.marks), kind, value))
        return self.marks[-1]

    def now_ns(self):
        return len(self.marks)

    def status(self):
        return RunStatus(events=tuple(self.marks))

    def review(self):
        return Review()


@pytest.fixture
def run(window, qtbot, monkeypatch, about_of, tmp_path):
    """A run in progress on the Circuit page of the window; no circuit is chosen yet."""
    monkeypatch.setattr(CircuitJudge, "_isolation", lambda _self, _circuit: Proposing())
    folder = fresh_folder("running", tmp_path)
    (folder / "data").mkdir(parents=True)
    made = Keeping(about_of(), folder)
    window.desk.session.adopt(made)
    window.show_page(2)
    _look(window)
    yield made
    window.desk.session.phase = Phase.IDLE


def _look(window):
    window.desk._glanced_s = float("-inf")
    window.desk.tick()


def _choose(window, qtbot):
    desk = window.desk.circuit
    desk.choose(NAME)

    def done():
        _look(window)
        assert desk.verdict is not None

    qtbot.waitUntil(done, timeout=5000)


def _speeds(run):
    return [one.value for one in run.marks if one.kind is EventKind.SPEED]


def _same(window, run, speed):
    _look(window)
    assert window.desk.circuit.state.speed == speed
    assert window.desk.session.shown.speed() == speed
    assert window.desk.circuit.page.state_row.speeds[speed].isChecked()
    return _speeds(run)


def test_a_speed_commanded_before_the_circuit_was_chosen_is_the_circuits(window, qtbot, run):
    qtbot.keyClick(window.pages, _Key.Key_3)
    _choose(window, qtbot)
    assert _same(window, run, 3) == ["3"]
    window.desk.circuit.choose("high-side-linear-12v")
    assert window.desk.circuit.state.speed == 3
    assert _speeds(run) == ["3"], "to choose a circuit commands nothing"


def test_that_the_circuit_chosen_lacks_the_speed_recorded_is_said(window, qtbot, run):
    qtbot.keyClick(window.pages, _Key.Key_9)
    window.desk.circuit.choose(NAME)
    assert "has speeds 0 to 4 only" in window.desk.session.trouble
    assert _speeds(run) == ["9"]


def test_set_as_proposed_marks_its_speed_once(window, qtbot, run):
    _choose(window, qtbot)
    qtbot.keyClick(window.pages, _Key.Key_B)
    assert _same(window, run, 3) == ["3"]
    assert window.desk.circuit.state.unplugged == {"motor"}
    qtbot.keyClick(window.pages, _Key.Key_P)
    qtbot.keyClick(window.pages, _Key.Key_B)
    assert _speeds(run) == ["3"], "the speed was not set a second time"


def test_a_click_marks_as_the_key_does(window, qtbot, run):
    _choose(window, qtbot)
    row = window.desk.circuit.page.state_row
    qtbot.mouseClick(row.speeds[4], Qt.MouseButton.LeftButton)
    assert _same(window, run, 4) == ["4"]
    qtbot.keyClick(window.pages, _Key.Key_2)
    assert _same(window, run, 2) == ["4", "2"]


def test_a_speed_that_could_not_be_kept_is_not_shown(window, qtbot, run):
    _choose(window, qtbot)
    qtbot.keyClick(window.pages, _Key.Key_2)
    run.full = True
    row = window.desk.circuit.page.state_row
    for set_it in (
        lambda: qtbot.mouseClick(row.speeds[4], Qt.MouseButton.LeftButton),
        lambda: qtbot.keyClick(window.pages, _Key.Key_4),
        lambda: qtbot.keyClick(window.pages, _Key.Key_B),
    ):
        set_it()
        assert "is full" in window.desk.session.trouble
        assert [n for n, one in row.speeds.items() if one.isChecked()] == [2]
    assert window.desk.circuit.state == CircuitState("on", 2)


def test_without_a_recording_a_click_and_a_key_set_the_circuit_alone(window, qtbot, run):
    window.desk.session.phase = Phase.SHOWING
    _choose(window, qtbot)
    row = window.desk.circuit.page.state_row
    qtbot.mouseClick(row.speeds[4], Qt.MouseButton.LeftButton)
    assert window.desk.circuit.state.speed == 4
    qtbot.keyClick(window.pages, _Key.Key_1)
    assert window.desk.circuit.state.speed == 1
    assert not run.marks
