"""CircuitJudge: in the background, the newest question only, and trouble in words."""

from meterlog.model import CircuitCheck, CircuitReading, CircuitState, CircuitVerdict
from meterlog.profile import load_circuit
from meterlog.window.circuit_judge import Asked, CircuitJudge

NAME = "low-side-linear-12v"


def test_only_the_newest_question_that_waits_is_answered(qtbot, monkeypatch):
    asked = []

    class Counting:
        def verdict(self, check):
            asked.append(check)
            return CircuitVerdict(NAME, (), "", "", None)

        def expected(self, _state):
            return ()

    monkeypatch.setattr(CircuitJudge, "_isolation", lambda _self, _circuit: Counting())
    judge = CircuitJudge()
    circuit = load_circuit(NAME)
    for speed in range(4):
        judge.ask(Asked(circuit, CircuitCheck(NAME), CircuitState("on", speed)))
    answers = []
    qtbot.waitUntil(lambda: answers.append(judge.pull()) or not judge.busy, timeout=5000)
    states = [one.asked.state.speed for one in [*answers, judge.pull()] if one is not None]
    assert states == [0, 3]
    assert len(asked) == 2


def test_what_cannot_be_worked_out_is_said(qtbot):
    judge = CircuitJudge()
    reading = CircuitReading(1, CircuitState(), "nowhere", 1.0, 0.1)
    judge.ask(Asked(load_circuit(NAME), CircuitCheck(NAME, readings=(reading,)), CircuitState()))
    answers = []
    qtbot.waitUntil(lambda: answers.append(judge.pull()) or answers[-1] is not None, timeout=15000)
    assert answers[-1].verdict is None
    assert "nowhere" in answers[-1].trouble
