"""What was worked out of another circuit, or could not be, is not shown beside this one."""

import pytest

from meterlog.model import (
    Channel,
    CircuitCheck,
    CircuitState,
    CircuitVerdict,
    Event,
    EventKind,
    Instrument,
    Quantity,
    Role,
    Suspect,
    Zero,
    withdrawal,
)
from meterlog.model.errors import UsageError
from meterlog.model.zero_text import zero_text
from meterlog.profile import load_circuit
from meterlog.window.circuit_judge import Asked, CircuitJudge
from meterlog.window.merged_events import merged_events
from meterlog.window.probe import Probe
from tests.rig.held_work import HeldWork

FIRST, OTHER, WRONG = "low-side-linear-12v", "high-side-linear-12v", "pulsed-module-12v"
S = 1_000_000_000


@pytest.fixture
def held(monkeypatch):
    """The engine, held until the test lets it go; it suspects a part that bears the circuit's name.

    One circuit it can't work out.
    """

    def verdict(name):
        if name == WRONG:
            raise UsageError("can't be solved.", subject=name)
        return CircuitVerdict(name, (Suspect("motor", f"part of {name}", 0.9, 0.4),), "", "", None)

    held = HeldWork(verdict)

    class Held:
        def verdict(self, check):
            return held(check.circuit)

        def expected(self, _state):
            return ()

    monkeypatch.setattr(CircuitJudge, "_isolation", lambda *_: Held())
    yield held
    for name in (FIRST, OTHER, WRONG):
        held.let_go(name)


def test_an_answer_about_a_circuit_that_was_left_is_given_to_nobody(held, qtbot):
    judge = CircuitJudge()
    for name in (WRONG, OTHER):
        judge.ask(Asked(load_circuit(name), CircuitCheck(name), CircuitState()))
        qtbot.waitUntil(lambda: held.asked == [WRONG])
    held.let_go(WRONG)
    held.let_go(OTHER)
    answers = []

    def done():
        answers.append(judge.pull())
        assert not judge.busy

    qtbot.waitUntil(done, timeout=5000)
    told = [(one.asked.circuit.name, one.trouble) for one in answers if one is not None]
    assert told == [(OTHER, "")]


@pytest.fixture
def desk(window):
    window.show_page(2)
    return window.desk.circuit


def _settled(desk, qtbot):
    def done():
        desk.tick(seen=True)
        assert not desk.judge.busy

    qtbot.waitUntil(done, timeout=5000)


def _suspected(desk):
    return [one.label for one in desk.page.suspects.suspects]


def test_the_suspects_of_the_circuit_before_go_with_it(desk, held, qtbot):
    held.let_go(FIRST)
    desk.choose(FIRST)
    _settled(desk, qtbot)
    assert _suspected(desk) == [f"part of {FIRST}"]
    desk.choose(OTHER)
    assert _suspected(desk) == []
    held.let_go(OTHER)
    _settled(desk, qtbot)
    assert _suspected(desk) == [f"part of {OTHER}"]


def test_trouble_with_a_circuit_that_was_left_is_not_told_of_the_one_chosen(desk, held, qtbot):
    desk.choose(WRONG)
    qtbot.waitUntil(lambda: held.asked == [WRONG])
    desk.choose(FIRST)
    held.let_go(WRONG)
    qtbot.waitUntil(lambda: desk.tick(seen=True) or held.asked == [WRONG, FIRST], timeout=5000)
    assert desk.session.trouble == ""
    held.let_go(FIRST)
    _settled(desk, qtbot)
    assert desk.session.trouble == ""
    assert _suspected(desk) == [f"part of {FIRST}"]


def test_what_cannot_be_worked_out_does_not_stay_as_being_worked_out(desk, held, qtbot):
    held.let_go(WRONG)
    desk.choose(WRONG)
    assert desk.page.next_test.what.text() == "working out the circuit…"
    _settled(desk, qtbot)
    assert "can't be solved" in desk.page.next_test.what.text()
    assert "can't be solved" in desk.session.trouble


def test_a_zero_that_came_while_a_mark_was_taken_back_is_taken_by_the_probe():
    channel = Channel("feed", Quantity.VOLTAGE, Role.MOTOR_FEED, interval_s=0.1)
    probe = Probe([Instrument("meter", "meter", "invented", (channel,))])
    (one,) = probe.channels
    mark = Event(2 * S, EventKind.TAP)
    seen = merged_events((Event(S, EventKind.SPEED, "1"),), (mark,))
    probe.follow(seen)
    zero = Event(3 * S, EventKind.ZERO, zero_text("feed", "V", Zero(0.5, 0.001, 30)), "meter")
    now = merged_events(seen, (withdrawal(mark, 4 * S), zero))
    probe.follow(now)
    assert one.home.at(12.0, 5 * S, 6 * S).zero_offset == 0.5
    assert one.home.version == 1
    probe.follow(now)
    assert one.home.version == 1


def test_a_zero_that_is_told_after_a_later_mark_is_taken_by_the_probe():
    channel = Channel("feed", Quantity.VOLTAGE, Role.MOTOR_FEED, interval_s=0.1)
    probe = Probe([Instrument("meter", "meter", "invented", (channel,))])
    (one,) = probe.channels
    seen = (Event(3 * S + 1, EventKind.TAP),)
    probe.follow(seen)
    zero = Event(3 * S, EventKind.ZERO, zero_text("feed", "V", Zero(0.5, 0.001, 30)), "meter")
    probe.follow(merged_events(seen, (zero,)))
    assert one.home.at(12.0, 5 * S, 6 * S).zero_offset == 0.5
