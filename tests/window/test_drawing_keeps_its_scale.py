"""The circuit is drawn in one scale, whatever is said below it of the point chosen."""

import pytest
from PySide6.QtWidgets import QApplication

from meterlog.circuit.cautions import CAUTIONS
from meterlog.model import CircuitState, CircuitVerdict, ProposedTest, Suspect
from meterlog.window.circuit_judge import CircuitJudge
from meterlog.window.circuit_keys import CircuitAction

NAME = "low-side-linear-12v"


class Proposing:
    """Proposes a test beside which all cautions stand."""

    def verdict(self, check):
        test = ProposedTest(
            "motor-return", None, CircuitState("on", 3), 1.0, 1.0, 0.2, 0.4, (),
            tuple(CAUTIONS.values()), "Measure the return.", "",
        )  # fmt: skip
        return CircuitVerdict(NAME, (Suspect("motor", "fan motor", 0.2, 0.1),), "", "", test)

    def expected(self, state):
        return ()


@pytest.fixture
def desk(window, qtbot, monkeypatch):
    monkeypatch.setattr(CircuitJudge, "_isolation", lambda _self, _circuit: Proposing())
    window.resize(1366, 768)
    window.show_page(2)
    desk = window.desk.circuit
    desk.choose(NAME)
    answered(desk, qtbot)
    return desk


def answered(desk, qtbot):
    def done():
        desk.tick(seen=True)
        assert desk.verdict is not None

    qtbot.waitUntil(done, timeout=5000)


def drawn(desk):
    for _ in range(3):
        QApplication.processEvents()
    return desk.page.drawing.height()


def test_while_an_entry_is_worked_out_nothing_is_drawn_anew_in_another_size(desk, qtbot):
    before, words = drawn(desk), desk.page.point.where.text()
    assert "As beside" in words
    for _ in range(3):
        desk.do(CircuitAction.SIGN, 0)
        assert desk.verdict is None
        assert desk.page.point.where.text() == words
        assert drawn(desk) == before
        answered(desk, qtbot)
        assert drawn(desk) == before


def test_from_point_to_point_it_never_grows_and_shrinks_again(desk):
    heights = []
    for _ in range(2):
        for point in desk.circuit.points:
            desk.go_to(point.name)
            heights.append(drawn(desk))
    half = len(heights) // 2
    assert len(set(heights[half:])) == 1
