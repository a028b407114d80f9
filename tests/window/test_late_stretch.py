"""Figures that come late stand beside the edges and the recording that they are of, or nowhere."""

from pathlib import Path

import pytest
from PySide6.QtWidgets import QApplication

from meterlog.analysis.stretch_figures import StretchFigure
from meterlog.model import Role
from meterlog.model.errors import UsageError
from meterlog.window import measured_stretch
from meterlog.window.measured_stretch import MeasuredStretch
from tests.rig.held_work import HeldWork

S = 1_000_000_000
HERE, THERE = Path("here"), Path("there")


def _figures(asked):
    """Readings that are left out tell which question was answered: folder and first edge."""
    folder, start_ns, _ = asked
    if folder == Path("gone"):
        raise UsageError("is gone.", subject="that recording")
    many = start_ns // S + (1000 if folder == THERE else 0)
    return (StretchFigure("meter.u", Role.BATTERY, "V", 0, many),)


@pytest.fixture
def held(monkeypatch):
    held = HeldWork(_figures)
    monkeypatch.setattr(
        measured_stretch, "_figures", lambda folder, start, end, _: held((folder, start, end))
    )
    yield held
    held.let_all_go()


@pytest.fixture
def line(qtbot, held):
    line = MeasuredStretch()
    qtbot.addWidget(line)
    line.turn(0, 30 * S)
    _asked_next(line, qtbot, held, HERE, (HERE, 10 * S, 20 * S))
    return line


def _settled(line, qtbot, folder):
    def done():
        line.tick(folder, 60 * S)
        assert not line._work.busy

    qtbot.waitUntil(done)


def _asked_next(line, qtbot, held, folder, asked):
    def done():
        line.tick(folder, 60 * S)
        assert held.asked[-1:] == [asked]

    qtbot.waitUntil(done)


def test_edges_moved_meanwhile_get_figures_of_their_own_and_copy_takes_those(line, held, qtbot):
    line.drag(13.0, 20.0)
    line.tick(HERE, 60 * S)
    held.let_go((HERE, 10 * S, 20 * S))
    _asked_next(line, qtbot, held, HERE, (HERE, 13 * S, 20 * S))
    said = line.words.text()
    assert "13.0" not in said
    assert said == "" or (said.startswith("10.0") and "(10 without a value)" in said)
    held.let_go((HERE, 13 * S, 20 * S))
    _settled(line, qtbot, HERE)
    line.copy.click()
    copied = QApplication.clipboard().text()
    assert copied.startswith("13.0")
    assert "(13 without a value)" in copied


def test_figures_of_the_recording_before_are_not_shown_beside_another(line, held, qtbot):
    held.let_go((HERE, 10 * S, 20 * S))
    _settled(line, qtbot, HERE)
    assert "(10 without a value)" in line.words.text()
    line.tick(THERE, 60 * S)
    assert line.words.text() == ""
    line.tick(HERE, 60 * S)
    held.let_go((THERE, 10 * S, 20 * S))
    _settled(line, qtbot, HERE)
    assert "(10 without a value)" in line.words.text()


def test_what_is_asked_again_while_it_is_being_stopped_is_answered(line, held, qtbot):
    line.tick(THERE, 60 * S)
    line.tick(HERE, 60 * S)
    held.let_go((HERE, 10 * S, 20 * S))
    _settled(line, qtbot, HERE)
    assert "(10 without a value)" in line.words.text()
    assert held.asked == [(HERE, 10 * S, 20 * S)] * 2


def test_trouble_of_another_recording_is_not_told_beside_this_one(qtbot, held):
    line, gone = MeasuredStretch(), Path("gone")
    qtbot.addWidget(line)
    line.turn(0, 30 * S)
    line.tick(gone, 60 * S)
    line.tick(HERE, 60 * S)
    held.let_go((gone, 10 * S, 20 * S))
    _asked_next(line, qtbot, held, HERE, (HERE, 10 * S, 20 * S))
    assert line.words.text() == ""
