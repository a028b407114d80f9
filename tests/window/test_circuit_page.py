"""The Circuit page: state, readings and signs by key and mouse, and what follows from them."""

import numpy as np
import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QPushButton

from meterlog.model import (
    Block,
    CircuitState,
    CircuitVerdict,
    Event,
    EventKind,
    Expectation,
    PossibleResult,
    ProposedTest,
    Sign,
    Suspect,
)
from meterlog.recording import Recording
from meterlog.window.circuit_judge import CircuitJudge
from meterlog.window.circuit_keys import CIRCUIT_BINDINGS, SIGNS, CircuitAction
from meterlog.window.keys import Action
from meterlog.window.last_setup import LastSetup
from meterlog.window.pages import Page
from meterlog.window.session import Phase
from meterlog.work import LiveTail, RunStatus, fresh_folder
from meterlog.work.circuit_checks import circuit_checks

NAME = "low-side-linear-12v"
_Key = Qt.Key


class FakeIsolation:
    """Twelve lines that stand in for the engine: the motor, more surely with each entry."""

    def verdict(self, check):
        count = len(check.readings) + len(check.signs)
        odds = 1.0 - 0.5 ** (count + 1)
        told = "motor" if count > 2 else ""
        state = CircuitState("on", 3)
        results = (PossibleResult(None, 1.0, "", 0.5, (("motor", 0.9),), "motor"),)
        test = ProposedTest(
            "motor-return", None, state, 1.0, 1.0, 0.2, 0.4, results, ("Moving fan.",),
            "Measure the return.", "Near 0 V leaves the motor.",
        )  # fmt: skip
        suspects = (Suspect("motor", "fan motor", odds, odds / 2),)
        return CircuitVerdict(
            NAME, suspects, told, "The motor." if told else "", None if told else test
        )

    def expected(self, state):
        return (Expectation("motor-feed", state, 11.9, 12.7),)


@pytest.fixture
def page(window, qtbot, monkeypatch):
    """A window on the Circuit page with a circuit chosen; gives the window and its circuit desk."""
    monkeypatch.setattr(CircuitJudge, "_isolation", lambda _self, _circuit: FakeIsolation())
    window.show_page(2)
    desk = window.desk.circuit
    desk.choose(NAME)
    _answered(window, qtbot)
    return window, desk


def _answered(window, qtbot):
    desk = window.desk.circuit

    def done():
        desk.tick(seen=True)
        assert not desk.judge.busy
        assert desk.verdict is not None

    qtbot.waitUntil(done, timeout=5000)


def _press(qtbot, window, key, modifier=Qt.KeyboardModifier.NoModifier):
    qtbot.keyClick(window.focusWidget() or window, key, modifier)


def _type(qtbot, window, words):
    _press(qtbot, window, _Key.Key_R)
    field = window.desk.circuit.page.point.field
    assert window.focusWidget() is field
    qtbot.keyClicks(field, words)
    qtbot.keyClick(field, _Key.Key_Return)


def test_each_key_of_the_page_has_one_meaning_and_every_action_a_key():
    keys = [key for binding in CIRCUIT_BINDINGS for key in binding.keys]
    assert len(keys) == len(set(keys))
    assert {one.action for one in CIRCUIT_BINDINGS} >= set(CircuitAction)


def test_the_page_is_turned_to_by_key_and_by_button(window, qtbot):
    _press(qtbot, window, _Key.Key_E)
    assert window.pages.currentIndex() == 2
    assert window.header.pages[Page.CIRCUIT].isChecked()
    assert "take the reading" in window.keys.accessibleName()
    _press(qtbot, window, _Key.Key_M)
    assert window.pages.currentIndex() == 0
    window.header.pages[Page.CIRCUIT].click()
    assert window.pages.currentIndex() == 2


def test_the_circuit_is_chosen_by_its_title_and_remembered(window, qtbot, monkeypatch):
    monkeypatch.setattr(CircuitJudge, "_isolation", lambda _self, _circuit: FakeIsolation())
    window.show_page(2)
    desk = window.desk.circuit
    box = desk.page.state_row.box
    assert box.count() >= 13
    at = box.findData(NAME)
    assert "Low-side" in box.itemText(at)
    box.setCurrentIndex(at)
    box.activated.emit(at)
    assert desk.circuit.name == NAME
    assert LastSetup().load().circuit == NAME
    assert "Low-side" in desk.page.drawing.accessibleName()
    _answered(window, qtbot)


def test_the_state_is_set_by_keys(page, qtbot):
    window, desk = page
    _press(qtbot, window, _Key.Key_3)
    assert desk.state == CircuitState("on", 3)
    assert not window.said.isVisible(), "no recording is needed to set the state"
    _press(qtbot, window, _Key.Key_K)
    assert desk.state.key == "engine"
    _press(qtbot, window, _Key.Key_P)
    assert len(desk.state.unplugged) == 1
    _press(qtbot, window, _Key.Key_L)
    assert desk.state.pulled == {"main-fuse"}
    _press(qtbot, window, _Key.Key_9)
    assert desk.state.speed == 3
    assert "0 to 4" in window.said.text()


def test_the_state_is_set_by_mouse(page, qtbot):
    _, desk = page
    row = desk.page.state_row
    for button in (row.keys["off"], row.speeds[2], row.plugs["motor"], row.fuses["coil-fuse"]):
        qtbot.mouseClick(button, Qt.MouseButton.LeftButton)
    assert desk.state == CircuitState(
        "off", 2, unplugged=frozenset({"motor"}), pulled=frozenset({"coil-fuse"})
    )


def test_a_jumper_goes_from_one_point_to_another(page, qtbot):
    window, desk = page
    desk.go_to("battery")
    _press(qtbot, window, _Key.Key_J)
    desk.go_to("motor-feed")
    _press(qtbot, window, _Key.Key_J)
    assert desk.state.jumpers == {("battery-plus", "motor-feed")}
    assert desk.page.state_row.bare.isVisible()
    qtbot.mouseClick(desk.page.state_row.bare, Qt.MouseButton.LeftButton)
    assert not desk.state.jumpers


def test_a_point_is_chosen_by_click_by_arrows_and_by_the_key_for_next(page, qtbot):
    window, desk = page
    drawing = desk.page.drawing
    qtbot.waitUntil(lambda: drawing.width() > 400)
    from PySide6.QtCore import QRectF

    from meterlog.evidence.circuit_picture import plan_of

    rect = QRectF(drawing.rect()).adjusted(0.5, 0.5, -0.5, -0.5)
    at = plan_of(desk.circuit, rect, drawing._pixels).points["motor-feed"]
    qtbot.mouseClick(drawing, Qt.MouseButton.LeftButton, pos=at.toPoint())
    assert drawing.marks.chosen == "motor-feed"
    assert "11.9 … 12.7 V" in desk.page.point.where.text()
    _press(qtbot, window, _Key.Key_Right)
    assert drawing.marks.chosen == "motor-return"
    _press(qtbot, window, _Key.Key_Left)
    _press(qtbot, window, _Key.Key_Left)
    assert drawing.marks.chosen != "motor-feed"
    _press(qtbot, window, _Key.Key_Period)
    assert drawing.marks.chosen == drawing.marks.next_point == "motor-return"
    _press(qtbot, window, _Key.Key_B)
    assert desk.state == CircuitState("on", 3)


def test_typed_readings_count_are_kept_and_can_be_undone(page, qtbot, tmp_path):
    window, desk = page
    desk.go_to("motor-feed")
    _type(qtbot, window, "12,31 V")
    (reading,) = desk.log.check.readings
    assert (reading.point, reading.value) == ("motor-feed", 12.31)
    assert "usual hand meter" in reading.basis
    _answered(window, qtbot)
    assert "✓ 12.31 ± 0.09 V" in desk.page.point.where.text()
    assert "12.31" in desk.page.entries.item(0).text()
    _press(qtbot, window, _Key.Key_Z, Qt.KeyboardModifier.ControlModifier)
    assert not desk.log.check.readings
    _press(qtbot, window, _Key.Key_Y)
    assert len(desk.log.check.readings) == 1
    _press(qtbot, window, _Key.Key_Backspace)
    assert not desk.log.check.readings
    _press(qtbot, window, _Key.Key_Y, Qt.KeyboardModifier.ControlModifier)
    desk.close()
    (folder,) = [one for one in tmp_path.iterdir() if (one / "data").is_dir()]
    (check,), damage = circuit_checks(Recording.open(folder))
    assert damage == ()
    assert [one.value for one in check.readings] == [12.31]


def test_what_is_no_reading_is_refused_and_stays_in_the_field(page, qtbot):
    window, desk = page
    desk.go_to("motor-feed")
    _type(qtbot, window, "12.3 A")
    window.desk._glanced_s = float("-inf")
    window.desk.tick()
    assert "not in V" in window.said.text()
    assert desk.page.point.field.text() == "12.3 A"
    assert not desk.log.check.readings
    qtbot.keyClick(desk.page.point.field, _Key.Key_Escape)


def test_each_sign_has_a_key_and_a_button(page, qtbot):
    window, desk = page
    _press(qtbot, window, _Key.Key_F3)
    qtbot.mouseClick(desk.page.signs.buttons[9], Qt.MouseButton.LeftButton)
    assert [(one.sign, one.value) for one in desk.log.check.signs] == [
        (Sign.FAN, "dead"),
        (Sign.CLICK, "none"),
    ]
    assert len(SIGNS) == len(desk.page.signs.buttons) == 10
    assert not window.said.isVisible()


def test_suspects_move_and_the_verdict_is_told(page, qtbot):
    window, desk = page
    assert "fan motor 50 %" in desk.page.suspects.accessibleName()
    assert "Measure the return." in desk.page.next_test.what.text()
    assert "Moving fan." in desk.page.next_test.cautions.text()
    for key in (_Key.Key_F3, _Key.Key_F5, _Key.Key_F9):
        _press(qtbot, window, key)
        _answered(window, qtbot)
    assert "fan motor 94 %" in desk.page.suspects.accessibleName()
    assert desk.page.next_test.verdict.text() == "The motor."
    assert not desk.page.next_test.what.isVisible()


def test_what_cannot_be_reached_is_said_and_taken_back(page, qtbot):
    window, desk = page
    desk.go_to("head-command")
    _press(qtbot, window, _Key.Key_X)
    assert desk.log.check.no_reach == {"head-command"}
    assert desk.page.point.unreachable.isChecked()
    _press(qtbot, window, _Key.Key_X)
    assert not desk.log.check.no_reach


def test_the_complaint_goes_with_the_readings(page, qtbot):
    window, desk = page
    desk.go_to("motor-feed")
    _press(qtbot, window, _Key.Key_H)
    _type(qtbot, window, "12.3")
    _press(qtbot, window, _Key.Key_H)
    _type(qtbot, window, "12.3")
    assert [one.complaint for one in desk.log.check.readings] == [True, False]


class FakeRun:
    """A run that keeps marks, with readings put into its tail."""

    def __init__(self, about, folder):
        self.about, self.folder, self.marks, self.tail = about, folder, [], LiveTail()
        self.now = 0

    def mark(self, kind, value="", at_ns=None):
        self.marks.append(Event(self.now if at_ns is None else at_ns, kind, value))
        return self.marks[-1]

    def now_ns(self):
        return self.now

    def status(self):
        return RunStatus(events=tuple(self.marks))

    def review(self):
        from meterlog.model import Review

        return Review()


@pytest.fixture
def recording(page, qtbot, about_of, tmp_path):
    """The same while a meter reads feed, return and current; gives a function that feeds it."""
    window, desk = page
    folder = fresh_folder("running", tmp_path)
    folder.mkdir(parents=True)
    (folder / "data").mkdir()
    run = FakeRun(about_of(), folder)
    window.desk.session.adopt(run)
    window.desk._glanced_s = float("-inf")
    window.desk.tick()

    def feed(feed_v, back_v, amps):
        rows = np.column_stack([np.asarray(one, float) for one in (feed_v, back_v, amps)])
        t_ns = run.now + (np.arange(len(rows)) * 1e8).astype(np.int64)
        run.tail.take(Block("line-logger", t_ns, rows, np.zeros(rows.shape, np.uint8)))
        run.now = int(t_ns[-1])
        window.desk._glanced_s = float("-inf")
        window.desk.tick()

    yield window, desk, run, feed
    window.desk.session.phase = Phase.IDLE


def test_one_key_takes_the_settled_value_of_the_channel_that_fits(recording, qtbot):
    window, desk, run, feed = recording
    feed([12.2] * 30, [8.0] * 30, [3.8] * 30)
    for point, value in (("motor-feed", 12.2), ("motor-return", 8.0), ("motor-current", 3.8)):
        desk.go_to(point)
        assert "stands" in desk.page.point.live.text()
        _press(qtbot, window, _Key.Key_Space)
        assert desk.log.check.readings[-1].value == pytest.approx(value)
        assert desk.log.check.readings[-1].source.startswith("line-logger.")
    kept = [event for event in run.marks if event.kind is EventKind.CIRCUIT]
    assert len(kept) == 4, "which circuit, and three readings, in the recording that runs"
    assert not [event for event in run.marks if event.kind is EventKind.TAP]


def test_a_value_that_moves_is_not_taken(recording, qtbot):
    window, desk, _, feed = recording
    feed(np.linspace(4.0, 12.0, 30), [8.0] * 30, [3.8] * 30)
    desk.go_to("motor-feed")
    _press(qtbot, window, _Key.Key_Space)
    assert "still moving" in window.said.text()
    assert not desk.log.check.readings


def test_elsewhere_the_probe_has_to_be_chosen_when_several_could_be_it(recording, qtbot):
    window, desk, _, feed = recording
    feed([12.2] * 30, [8.0] * 30, [3.8] * 30)
    desk.go_to("relay-87")
    _press(qtbot, window, _Key.Key_Space)
    assert "choose the probe" in window.said.text()
    probe = desk.page.point.probe
    assert probe.isVisible()
    _press(qtbot, window, _Key.Key_V)
    assert probe.currentIndex() == 1
    _press(qtbot, window, _Key.Key_Space)
    assert desk.log.check.readings[-1].value == pytest.approx(12.2)


def test_a_commanded_speed_goes_into_the_recording_and_the_state_follows(recording, qtbot):
    window, desk, run, _ = recording
    _press(qtbot, window, _Key.Key_2)
    assert [one.value for one in run.marks if one.kind is EventKind.SPEED] == ["2"]
    assert desk.state.speed == 2
    window.show_page(1)
    _press(qtbot, window, _Key.Key_4)
    assert desk.state.speed == 4


def test_without_a_meter_the_key_says_what_to_do(page, qtbot):
    window, desk = page
    _press(qtbot, window, _Key.Key_V)
    assert "no other voltage channel" in window.said.text()
    desk.go_to("motor-feed")
    _press(qtbot, window, _Key.Key_Space)
    assert "press R" in window.said.text()
    assert not desk.log.check.readings


def test_every_control_has_a_name(page):
    _, desk = page
    for button in desk.page.findChildren(QPushButton):
        assert button.accessibleName(), button.text()


def test_a_real_circuit_is_judged_in_the_background(window, qtbot):
    window.show_page(2)
    desk = window.desk.circuit
    desk.choose(NAME)
    assert desk.page.next_test.what.text() == "working out the circuit…"
    qtbot.waitUntil(lambda: desk.verdict is not None, timeout=15000)
    assert desk.verdict.next_test is not None
    assert desk.page.drawing.marks.points["motor-feed"].healthy is not None
    assert Action.CIRCUIT in {one.action for one in CIRCUIT_BINDINGS}
