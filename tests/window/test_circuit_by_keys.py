"""The Circuit page without a mouse: what to do, why, and what can hurt, by keys alone."""

from dataclasses import replace

import pytest
from PySide6.QtCore import Qt

from meterlog.circuit.cautions import CAUTIONS
from meterlog.model import (
    CircuitState,
    CircuitVerdict,
    Expectation,
    PossibleResult,
    ProposedTest,
    Suspect,
)
from meterlog.window.circuit_judge import CircuitJudge
from meterlog.window.circuit_point_words import point_words

NAME = "low-side-linear-12v"
_Key = Qt.Key


class Judging:
    """The motor from the third entry on; until then the next test is at its return."""

    def verdict(self, check):
        suspects = (Suspect("motor", "fan motor", 0.9, 0.6),)
        if len(check.readings) + len(check.signs) > 2:
            return CircuitVerdict(NAME, suspects, "motor", "The motor.", None)
        results = tuple(
            PossibleResult(None, None, "", 0.5, (), words)
            for words in ("near 0 V leaves fan motor", "about 12 V leaves main fuse")
        )
        test = ProposedTest(
            "motor-return", None, CircuitState("on", 3), 1.0, 1.0, 0.2, 0.4, results,
            ("Moving fan.",), "Measure the return.", "All in one sentence.",
        )  # fmt: skip
        return CircuitVerdict(NAME, suspects, "", "", test)

    def expected(self, state):
        return (Expectation("motor-feed", state, 11.9, 12.7),)


@pytest.fixture
def judging(monkeypatch):
    monkeypatch.setattr(CircuitJudge, "_isolation", lambda _self, _circuit: Judging())


@pytest.fixture
def page(window, qtbot, judging):
    """A window on the Circuit page with a circuit chosen; gives the window and its circuit desk."""
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


def _press(qtbot, window, key):
    qtbot.keyClick(window.focusWidget() or window, key)


def test_each_outcome_of_the_next_test_has_a_line_of_its_own(page):
    _, desk = page
    lines = desk.page.next_test.meaning.text().splitlines()
    assert lines == ["• near 0 V leaves fan motor", "• about 12 V leaves main fuse"]


def test_why_nothing_is_proposed_is_said(page, qtbot):
    window, desk = page
    for key in (_Key.Key_F3, _Key.Key_F5, _Key.Key_F9):
        _press(qtbot, window, key)
        _answered(window, qtbot)
    for key in (_Key.Key_Period, _Key.Key_B):
        _press(qtbot, window, key)
        assert "the verdict stands" in window.said.text()
    assert "Fused jumper only" in desk.page.next_test.cautions.text(), "to confirm it by"


def test_the_circuit_is_chosen_by_keys_alone(window, qtbot, judging):
    window.show_page(2)
    desk = window.desk.circuit
    _press(qtbot, window, _Key.Key_Space)
    assert "(C)" in window.said.text()
    box = desk.page.state_row.box
    _press(qtbot, window, _Key.Key_C)
    qtbot.waitUntil(box.view().isVisible)
    qtbot.keyClick(box.view(), _Key.Key_Down)
    qtbot.keyClick(box.view(), _Key.Key_Return)
    qtbot.waitUntil(lambda: desk.circuit is not None)
    assert not window.desk.session.recording, "Enter chose the circuit and started nothing"
    _answered(window, qtbot)


def test_both_circuits_of_a_kind_are_told_apart_by_the_first_words(window):
    window.show_page(2)
    box = window.desk.circuit.page.state_row.box
    shown = [box.itemText(at)[:5] for at in range(1, box.count())]
    assert {"12 V:", "24 V:"} <= set(shown)


def test_entries_of_the_check_before_are_told_where_they_are(page, qtbot):
    window, desk = page
    _press(qtbot, window, _Key.Key_F3)
    _answered(window, qtbot)
    desk.choose("pulsed-module-12v")
    assert "stays in" in window.desk.session.trouble
    assert str(desk.log.folder) in window.desk.session.trouble
    assert not desk.log.can_undo
    _answered(window, qtbot)


def test_words_that_need_more_room_are_read_by_keys(page, qtbot):
    window, desk = page
    view = desk.page.next_test
    view.show_words(" ".join(["words"] * 900))
    bar = desk.page._words.verticalScrollBar()
    qtbot.waitUntil(lambda: bar.maximum() > 0)
    _press(qtbot, window, _Key.Key_PageDown)
    assert bar.value() > 0
    _press(qtbot, window, _Key.Key_PageUp)
    assert bar.value() == 0
    bar.setValue(bar.maximum())
    view.show_words("others")
    assert bar.value() == 0
    assert "PgDn" in window.keys.accessibleName()


def test_the_cautions_are_named_at_the_point_even_where_they_stand_beside(page, qtbot):
    _, desk = page
    desk.go_to("motor-feed")
    words = desk.page.point.where.text()
    assert CAUTIONS["airbag"] in words
    assert "As beside (PgDn): " not in words
    (suspect,) = desk.verdict.suspects
    test = replace(desk.verdict.next_test, cautions=(CAUTIONS["airbag"],))
    told = CircuitVerdict(NAME, (suspect,), "", "", test)
    mark = desk.page.drawing.marks.points["motor-feed"]
    point = desk.circuit.point("motor-feed")
    words = point_words(desk.circuit, point, mark, desk.state, told)
    assert words.endswith("⚠ As beside (PgDn): Airbag wiring behind the dash.")
    assert CAUTIONS["airbag"] not in words
    assert CAUTIONS["moving-fan"] in words


def test_undo_and_redo_say_which_entry_it_was(page, qtbot):
    window, desk = page
    desk.go_to("motor-feed")
    _press(qtbot, window, _Key.Key_U)
    assert "nothing to take back" in window.said.text()
    _press(qtbot, window, _Key.Key_F3)
    _press(qtbot, window, _Key.Key_R)
    qtbot.keyClicks(window.focusWidget(), "12.31")
    _press(qtbot, window, _Key.Key_Return)
    _press(qtbot, window, _Key.Key_U)
    assert window.said.text() == "Taken back: entry 2, motor plug, feed wire: 12.31 V."
    assert "Should be: 11.9 … 12.7 V" in desk.page.point.where.text()
    _press(qtbot, window, _Key.Key_U)
    assert window.said.text() == "Taken back: entry 1, fan: dead."
    _press(qtbot, window, _Key.Key_Y)
    assert window.said.text() == "Put in again: entry 1, fan: dead."
    _answered(window, qtbot)


def test_a_jumper_warns_before_it_is_put_in_and_can_be_dropped(page, qtbot):
    window, desk = page
    desk.go_to("battery")
    _press(qtbot, window, _Key.Key_J)
    _press(qtbot, window, _Key.Key_Right)
    words = desk.page.point.where.text()
    assert words.startswith("FUSED JUMPER from battery positive post")
    assert CAUTIONS["jumper"] in words
    _press(qtbot, window, _Key.Key_Left)
    _press(qtbot, window, _Key.Key_J)
    assert not desk.page.point.where.text().startswith("FUSED JUMPER")
    assert not desk.state.jumpers
    desk.go_to("motor-current")
    _press(qtbot, window, _Key.Key_J)
    assert "choose a round test point" in window.said.text()
