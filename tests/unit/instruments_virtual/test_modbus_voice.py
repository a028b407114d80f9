"""Requests and answers as bytes; the check sum by the standard's own description.

Modbus over Serial Line V1.02, 6.2.2 (generation of the check sum) and Modbus Application Protocol
V1.1b3, 6.3, 6.4, 6.21, 7 (clauses from memory).
"""

import dataclasses
import struct

import pytest

from meterlog import __version__
from meterlog.instruments.virtual.meter import MeterModel
from meterlog.instruments.virtual.modbus_voice import ModbusVoice, frame_gap_s
from meterlog.instruments.virtual.play import Play
from meterlog.instruments.virtual.scenarios import find_scenario
from meterlog.instruments.virtual.script import speed
from meterlog.model import Quantity
from meterlog.profile import ModbusTalk, Register, load_meter


def summed(body):
    """Give a frame: ``body`` and its check sum, low byte first."""
    total = 0xFFFF
    for byte in body:
        total ^= byte
        for _ in range(8):
            total = (total >> 1) ^ 0xA001 if total & 1 else total >> 1
    return bytes(body) + struct.pack("<H", total)


class Panel:
    """A panel meter that is asked at a time set by hand."""

    def __init__(self, function=4, word_order="high-first", speedup=1.0, **registers):
        profile = load_meter("panel-meter")
        self.talk = ModbusTalk(
            1,
            function,
            word_order,
            tuple(registers.values()) or profile.modbus.registers,
        )
        profile = dataclasses.replace(profile, modbus=self.talk)
        self.play = Play(find_scenario("healthy-new"), 5, scripted=False)
        self.play.advance(0)
        self.model = MeterModel(profile, "healthy-new", 5)
        self.voice = ModbusVoice(self.play, self.model, speedup)
        self.now_s = 1.0
        self.voice.greet(self.now_s)

    def ask(self, *body, raw=None):
        """Send a frame, wait until the silence after it is over, and give the answer's body."""
        self.play.advance(self.play.steps_at(self.now_s))
        self.voice.hear(raw or summed(body), self.now_s)
        self.now_s += 0.05
        said = self.voice.say(self.now_s)
        if not said:
            return None
        (answer,) = said
        assert summed(answer[:-2]) == answer
        return list(answer[:-2])


def words(answer):
    assert answer[2] == len(answer) - 3
    return list(struct.unpack(f">{answer[2] // 2}h", bytes(answer[3:])))


def test_the_check_sum_used_here_is_that_of_the_standards_example():
    assert summed([2, 7]) == bytes.fromhex("02074112")


def test_the_volts_and_amperes_of_the_fan_stand_in_its_registers():
    panel = Panel()
    panel.play.do(speed(0.0, 4))
    panel.now_s = 4.0
    answer = panel.ask(1, 4, 0, 0, 0, 2)
    assert answer[:2] == [1, 4]
    volts, amps = words(answer)
    span = panel.play.span(panel.play.steps - 400, panel.play.steps).mean(axis=0)
    assert volts * 0.01 == pytest.approx(span[1], abs=0.1)
    assert amps * 0.01 == pytest.approx(span[3], rel=0.02)
    assert words(panel.ask(1, 4, 0, 1, 0, 1))[0] == pytest.approx(amps, abs=5)


def test_a_reading_stays_in_its_registers_for_one_interval():
    panel = Panel()
    panel.now_s = 2.001
    first = panel.ask(1, 4, 0, 0, 0, 2)
    panel.now_s = 2.02
    assert panel.ask(1, 4, 0, 0, 0, 2) == first
    later = []
    for count in range(10):
        panel.now_s = 2.2 + 0.1 * count
        later.append(panel.ask(1, 4, 0, 0, 0, 2))
    assert any(answer != first for answer in later)


@pytest.mark.parametrize(
    ("body", "code"),
    [
        ((1, 3, 0, 0, 0, 2), 1),  # holding registers: this meter has input registers
        ((1, 6, 0, 0, 0, 2), 1),
        ((1, 0x41), 1),
        ((1, 4, 0, 2, 0, 1), 2),
        ((1, 4, 0, 1, 0, 2), 2),
        ((1, 4, 0xFF, 0xFF, 0, 2), 2),
        ((1, 4, 0, 0, 0, 0), 3),
        ((1, 4, 0, 0, 0, 126), 3),
        ((1, 4, 0, 0, 0), 3),
        ((1, 0x2B, 0x0D, 1, 0), 1),
        ((1, 0x2B, 0x0E, 5, 0), 3),
        ((1, 0x2B, 0x0E, 4, 0x55), 2),
    ],
)
def test_what_it_can_not_do_is_an_exception_of_the_standard(body, code):
    assert Panel().ask(*body) == [1, body[1] | 0x80, code]


def test_the_standards_example_of_an_exception_comes_out_byte_for_byte():
    panel = Panel()
    panel.play.advance(panel.play.steps_at(1.0))
    # 01 84 02 and its check sum, as a controller's manual prints it.
    panel.voice.hear(summed([1, 4, 0, 2, 0, 1]), 1.0)
    assert panel.voice.say(1.1) == [bytes.fromhex("018402C2C1")]


@pytest.mark.parametrize(
    "raw",
    [
        summed([2, 4, 0, 0, 0, 2]),  # for another device
        summed([0, 4, 0, 0, 0, 2]),  # for all: nobody answers
        summed([1, 4, 0, 0, 0, 2])[:-1] + b"\x00",
        b"\x01\x04",
        bytes(300),
    ],
)
def test_what_is_not_for_it_or_damaged_gets_no_answer_and_harms_nothing(raw):
    panel = Panel()
    assert panel.ask(raw=raw) is None
    assert panel.ask(1, 4, 0, 0, 0, 2)[:2] == [1, 4]


def test_a_request_in_pieces_is_one_unless_there_is_a_silence_between():
    panel = Panel()
    frame = summed([1, 4, 0, 0, 0, 2])
    gap_s = frame_gap_s(9600)
    panel.play.advance(panel.play.steps_at(2.0))
    panel.voice.hear(frame[:3], 1.0)
    panel.voice.hear(frame[3:], 1.0 + 0.9 * gap_s)
    assert panel.voice.say(1.0 + 1.5 * gap_s) == []
    assert len(panel.voice.say(1.0 + 2.0 * gap_s)) == 1
    panel.voice.hear(frame[:3], 1.5)
    panel.voice.hear(frame[3:], 1.5 + 1.1 * gap_s)
    assert panel.voice.say(1.6) == []


def test_the_silence_is_that_of_the_standard_and_one_of_the_wall():
    # Modbus over Serial Line V1.02, 2.5.1.1: 3.5 characters of 11 bits; 1.750 ms above 19200 Bd.
    assert frame_gap_s(9600) == pytest.approx(4.0104e-3, abs=1e-7)
    assert frame_gap_s(19_200) == pytest.approx(2.0052e-3, abs=1e-7)
    assert frame_gap_s(115_200) == pytest.approx(1.75e-3)
    fast = Panel(speedup=10.0)
    fast.voice.hear(b"\x01", 1.0)
    assert fast.voice.due_s() == pytest.approx(1.0 + 10.0 * frame_gap_s(9600))


def test_it_says_that_it_is_virtual_when_asked_who_it_is():
    answer = bytes(Panel().ask(1, 0x2B, 0x0E, 1, 0))
    assert answer[:8] == bytes([1, 0x2B, 0x0E, 1, 0x83, 0, 0, 3])
    rest, said = answer[8:], {}
    while rest:
        said[rest[0]] = rest[2 : 2 + rest[1]]
        rest = rest[2 + rest[1] :]
    assert said == {0: b"VIRTUAL BENCH", 1: b"panel-meter", 2: __version__.encode()}


def test_one_object_can_be_asked_for_and_an_unknown_one_begins_anew():
    panel = Panel()
    assert bytes(panel.ask(1, 0x2B, 0x0E, 4, 0)[8:]) == b"\x00\x0dVIRTUAL BENCH"
    assert panel.ask(1, 0x2B, 0x0E, 1, 0x30)[7:9] == [3, 0]
    assert panel.ask(1, 0x2B, 0x0E, 1, 2)[7:9] == [1, 2]


@pytest.mark.parametrize("number", ["int16", "uint16", "int32", "uint32", "float32"])
@pytest.mark.parametrize("order", ["high-first", "low-first"])
def test_numbers_of_every_kind_and_word_order_read_back(number, order):
    panel = Panel(
        function=3,
        word_order=order,
        volts=Register(10, number),
        amps=Register(14, number),
    )
    body = panel.ask(1, 3, 0, 10, 0, 4)
    data = bytes(body[3:7]) if panel.talk.registers[0].words == 2 else bytes(body[3:5])
    if order == "low-first" and len(data) == 4:
        data = data[2:] + data[:2]
    form = {"int16": ">h", "uint16": ">H", "int32": ">i", "uint32": ">I", "float32": ">f"}[number]
    assert struct.unpack(form, data)[0] == pytest.approx(1247, abs=10)
    # Between the two channels are registers that are reserved.
    assert bytes(panel.ask(1, 3, 0, 12, 0, 2)[3:]) == bytes(4)


def test_overload_is_the_profiles_number_or_the_end_of_the_scale():
    for register, wanted in (
        (Register(0, "int16", (32_767.0,)), b"\x7f\xff"),
        (Register(0, "int16"), b"\x7f\xff"),
        (Register(0, "uint16", (40_000.0,)), b"\x9c\x40"),
        (Register(0, "float32"), b"\x7f\x80\x00\x00"),
    ):
        panel = Panel(volts=register, amps=Register(4))
        panel.model.set_range(Quantity.VOLTAGE, 1.0)
        answer = panel.ask(1, 4, 0, 0, 0, register.words)
        assert bytes(answer[3:]) == wanted
