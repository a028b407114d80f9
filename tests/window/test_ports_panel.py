"""The ports on the Meters page: nothing is asked but what is ticked, and what answers is shown."""

import os
import threading
import time
import tty

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QCheckBox, QLineEdit, QPushButton

from meterlog.acquire import Fit, LiveValue, Outcome, PortAnswer, PortProgress
from meterlog.instruments import PortInfo
from meterlog.profile import load_meter
from meterlog.window.language import FOLDER, speak_english, use_translations
from meterlog.window.ports_panel import PortsPanel
from meterlog.window.words import say

PORTS = [
    PortInfo("/dev/ttyUSB0", "an adapter", "1a2b", "3c4d", "SN7"),
    PortInfo("/dev/ttyUSB1"),
    PortInfo("/dev/ttyUSB2", usable=False, reason="you may not open it; run this"),
]
READING = (LiveValue("volts", 12.431, "V", "12.431 V"),)
FOUND = PortAnswer(
    "/dev/ttyUSB0",
    Outcome.FITS,
    (Fit("bench-scpi", "Bench", "answers *IDN?", READING), Fit("mine", "Mine", "too", ())),
    simulated=True,
)
SILENT = PortAnswer("/dev/ttyUSB1", Outcome.SILENT, reason="nothing was heard.")


class Asking:
    """Pretends to ask: the test says when which answer is there."""

    def __init__(self, ports, profiles):
        self.ports = [port.device for port in ports]
        self.profiles = profiles
        self.answers = {}
        self.started = self.cancelled = False

    def start(self):
        self.started = True

    def cancel(self):
        self.cancelled = True

    def wait(self, seconds):
        self.answers = {
            port: PortAnswer(port, Outcome.STOPPED, reason="stopped.") for port in self.ports
        }
        return True

    def progress(self):
        return tuple(
            PortProgress(port, "" if port in self.answers else "listening", self.answers.get(port))
            for port in self.ports
        )


@pytest.fixture
def made():
    return []


@pytest.fixture
def panel(qtbot, made):
    def make(ports, profiles):
        made.append(Asking(ports, profiles))
        return made[-1]

    panel = PortsPanel(lambda: PORTS, lambda: ["profiles"], make)
    qtbot.addWidget(panel)
    panel.show()
    return panel


def press(qtbot, button):
    qtbot.mouseClick(button, Qt.MouseButton.LeftButton)


def test_at_first_nothing_is_ticked_and_then_nothing_is_asked(panel, made, qtbot):
    assert not any(entry.included for entry in panel.entries)
    press(qtbot, panel.ask_button)
    assert made == []
    assert "Tick the ports that may be asked" in panel.said.text()


def test_only_ticked_ports_are_asked(panel, made, qtbot):
    panel.entries[1].may_ask.setChecked(True)
    assert panel.entries[1].words.text() == "may be asked"
    press(qtbot, panel.ask_button)
    assert (made[0].ports, made[0].started) == (["/dev/ttyUSB1"], True)
    assert made[0].profiles == ["profiles"]
    assert panel.entries[0].words.text() == "not to be asked"
    panel.stop()


def test_a_port_that_may_not_be_opened_can_not_be_ticked_and_shows_the_cure(panel):
    entry = panel.entries[2]
    assert not entry.may_ask.isEnabled()
    entry.may_ask.setChecked(True)
    assert not entry.included
    assert entry.words.text() == "you may not open it; run this"


def test_an_answer_is_shown_as_soon_as_it_is_there_and_can_be_used(panel, made, qtbot):
    for entry in panel.entries[:2]:
        entry.may_ask.setChecked(True)
    press(qtbot, panel.ask_button)
    first, second = panel.entries[:2]
    assert first.words.text() == "listening…"
    made[0].answers["/dev/ttyUSB0"] = FOUND
    qtbot.waitUntil(lambda: len(first.buttons) == 2)
    assert "a virtual meter" in first.words.text()
    assert second.words.text() == "listening…"
    assert "1 of 2 ports" in panel.said.text()
    assert panel.asking
    made[0].answers["/dev/ttyUSB1"] = SILENT
    qtbot.waitUntil(lambda: not panel.asking)
    assert second.words.text() == "nothing was heard."
    assert panel.said.text() == "2 ports asked: a meter was found on 1."
    assert first._lines[0].text() == "answers as bench-scpi · 12.431 V"
    assert first._lines[1].text() == "answers as mine · no reading"
    with qtbot.waitSignal(panel.taken) as taken:
        press(qtbot, first.buttons[0])
    assert taken.args == ["bench-scpi", "/dev/ttyUSB0"]


def test_the_button_stops_what_it_began(panel, made, qtbot):
    panel.entries[0].may_ask.setChecked(True)
    press(qtbot, panel.ask_button)
    assert panel.ask_button.text().startswith("Stop")
    press(qtbot, panel.ask_button)
    assert made[0].cancelled
    assert len(made) == 1
    made[0].answers["/dev/ttyUSB0"] = PortAnswer("/dev/ttyUSB0", Outcome.STOPPED, reason="stopped.")
    qtbot.waitUntil(lambda: panel.ask_button.text().startswith("Ask"))


def test_stopping_waits_until_the_ports_are_closed(panel, made, qtbot):
    panel.entries[0].may_ask.setChecked(True)
    press(qtbot, panel.ask_button)
    panel.stop()
    assert made[0].cancelled
    assert not panel.asking
    panel.stop()


def test_asked_again_the_old_answer_is_gone(panel, made, qtbot):
    entry = panel.entries[0]
    entry.may_ask.setChecked(True)
    press(qtbot, panel.ask_button)
    made[0].answers["/dev/ttyUSB0"] = FOUND
    qtbot.waitUntil(lambda: not panel.asking)
    press(qtbot, panel.ask_button)
    assert (entry.buttons, entry.answer) == ([], None)
    panel.stop()


def test_an_address_that_is_typed_is_a_ticked_port_that_stays(panel, made, qtbot):
    panel.address.setText("  socket://192.0.2.1:5025 ")
    press(qtbot, panel.add)
    panel.address.setText("socket://192.0.2.1:5025")
    qtbot.keyClick(panel.address, Qt.Key.Key_Return)
    assert [entry.port.device for entry in panel.entries].count("socket://192.0.2.1:5025") == 1
    panel.show_ports(PORTS[:1])
    press(qtbot, panel.ask_button)
    assert made[0].ports == ["socket://192.0.2.1:5025"]
    panel.stop()


def test_looking_again_keeps_ticks_and_answers_but_not_those_of_another_adapter(panel):
    panel.entries[0].may_ask.setChecked(True)
    panel.entries[1].may_ask.setChecked(True)
    kept = panel.entries[1]
    panel.show_ports([PortInfo("/dev/ttyUSB0", serial="OTHER"), PORTS[1], PortInfo("/dev/new")])
    assert [entry.included for entry in panel.entries] == [False, True, False]
    assert panel.entries[1] is kept
    assert panel.entries[0].port.serial == "OTHER"


def test_after_a_recording_it_does_not_go_on_saying_that_one_is_in_progress(panel):
    first = panel.said.text()
    try:
        use_translations(FOLDER / "de.qm")
        panel.bar(recording=True)
        assert "Aufzeichnung" in panel.said.text()
        panel.bar(recording=False)
        assert panel.said.text() == say(first)
        assert panel.said.text() != first
    finally:
        speak_english()


def test_without_any_port_it_says_what_to_do(qtbot, made):
    panel = PortsPanel(lambda: (), lambda: (), Asking)
    qtbot.addWidget(panel)
    assert "No serial port is plugged in" in panel.said.text()
    panel.ask()
    assert not panel.asking


def test_every_control_has_a_name_and_no_two_the_same(panel, qtbot):
    panel.entries[0].show_progress(PortProgress("/dev/ttyUSB0", "", FOUND))
    names = [
        control.accessibleName()
        for kind in (QCheckBox, QPushButton, QLineEdit)
        for control in panel.findChildren(kind)
    ]
    assert all(names)
    assert len(set(names)) == len(names)


def test_a_real_logger_on_a_pseudo_terminal_is_found_and_one_not_ticked_hears_nothing(qtbot):
    far, near = os.openpty()
    other, other_near = os.openpty()
    for end in (near, other_near):
        tty.setraw(end)
    over = threading.Event()

    def talk():
        while not over.is_set():
            os.write(far, b"12.431,0.872,4.950\r\n")
            time.sleep(0.01)

    talker = threading.Thread(target=talk)
    talker.start()
    ports = [PortInfo(os.ttyname(near)), PortInfo(os.ttyname(other_near))]
    panel = PortsPanel(lambda: ports, lambda: [load_meter("line-logger"), load_meter("bench-scpi")])
    qtbot.addWidget(panel)
    try:
        panel.entries[0].may_ask.setChecked(True)
        panel.ask()
        qtbot.waitUntil(lambda: not panel.asking, timeout=10_000)
        line = panel.entries[0]._lines[0].text()
        assert line == "answers as line-logger · 12.431 V, 0.872 V, 4.950 A"
        os.set_blocking(other, False)
        with pytest.raises(BlockingIOError):
            os.read(other, 1)
    finally:
        over.set()
        talker.join()
        for end in (far, near, other, other_near):
            os.close(end)
