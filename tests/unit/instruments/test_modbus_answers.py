"""Answers of a Modbus RTU device: numbers, rows, exceptions, echoes and junk."""

import math
import subprocess
import sys

import pytest
from pymodbus.framer import FramerRTU

from meterlog.instruments import ModbusDecoder, ModbusRequests
from meterlog.model import Channel, EventKind, Flag, Quantity
from meterlog.profile import ModbusTalk, Register

OK, OVERLOAD, NO_DATA = 0, int(Flag.OVERLOAD), int(Flag.NO_DATA)


def talk(*registers: Register, **more) -> ModbusTalk:
    return ModbusTalk(**{"device": 7, "function": 4, **more, "registers": registers})


def decoder(*registers: Register, **more) -> ModbusDecoder:
    channels = tuple(Channel(f"c{at}", Quantity.VOLTAGE) for at in range(len(registers)))
    return ModbusDecoder(talk(*registers, **more), channels)


def sealed(body: bytes) -> bytes:
    return body + FramerRTU.compute_CRC(body).to_bytes(2, "big")


def answer(words: str, device: int = 7, function: int = 4) -> bytes:
    data = bytes.fromhex(words)
    return sealed(bytes((device, function, len(data))) + data)


def refusal(code: int, device: int = 7, function: int = 4) -> bytes:
    return sealed(bytes((device, function | 0x80, code)))


@pytest.mark.parametrize(
    ("number", "words", "order", "value"),
    [
        ("int16", "FFFB", "high-first", -5.0),
        ("uint16", "FFFB", "high-first", 65_531.0),
        ("int32", "FFFF FFFE", "high-first", -2.0),
        ("int32", "FFFE FFFF", "low-first", -2.0),
        ("uint32", "0001 0002", "high-first", 65_538.0),
        ("uint32", "0002 0001", "low-first", 65_538.0),
        ("float32", "4148 0000", "high-first", 12.5),
        ("float32", "0000 4148", "low-first", 12.5),
    ],
)
def test_every_form_of_number_is_read(number, words, order, value):
    readings = decoder(Register(0, number), word_order=order).feed(answer(words))
    assert readings.values.tolist() == [[value]]
    assert readings.flags.tolist() == [[OK]]
    assert readings.own_time_s is None


@pytest.mark.parametrize(
    ("register", "words", "flag"),
    [
        (Register(0, "int16", (32767.0,)), "7FFF", OVERLOAD),
        (Register(0, "uint16", (65535.0,)), "FFFF", OVERLOAD),
        (Register(0, "float32", (0.1,)), "3DCC CCCD", OVERLOAD),
        (Register(0, "float32", (1e38,)), "7E96 7699", OVERLOAD),
        (Register(0, "float32"), "7F80 0000", OVERLOAD),
        (Register(0, "float32"), "7FC0 0000", NO_DATA),
        (Register(0, "float32"), "7E95 1BEE", NO_DATA),
        (Register(0, "int16"), "7FFF", OK),
    ],
)
def test_overload_and_not_a_number_are_flagged(register, words, flag):
    readings = decoder(register).feed(answer(words))
    assert readings.flags.tolist() == [[flag]]
    assert math.isnan(readings.values[0, 0]) == (flag != OK)


def test_a_number_too_large_for_32_bits_is_no_fault_in_a_profile():
    assert len(decoder(Register(0, "float32", (1e300,))).feed(answer("4148 0000"))) == 1


def test_channels_stand_in_the_order_of_the_profile_not_of_the_registers():
    machine = decoder(Register(5), Register(3, "uint32"))
    readings = machine.feed(answer("0000 0007 0009"))
    assert readings.values.tolist() == [[9.0, 7.0]]
    assert readings.values.flags.f_contiguous


def test_a_row_is_given_when_every_frame_has_been_answered():
    machine = decoder(Register(0), Register(10))
    machine.expect(0)
    assert len(machine.feed(answer("0001"))) == 0
    assert machine.complete_answers == 1
    machine.expect(1)
    assert machine.feed(answer("0002")).values.tolist() == [[1.0, 2.0]]
    assert machine.complete_answers == 2
    assert machine.feed(answer("0003") + answer("0004")).values.tolist() == [[3.0, 4.0]]


def test_asking_for_the_first_again_begins_a_new_row():
    machine = decoder(Register(0), Register(10))
    machine.feed(answer("0001"))
    machine.expect(0)
    machine.feed(answer("0003"))
    machine.expect(1)
    assert machine.feed(answer("0004")).values.tolist() == [[3.0, 4.0]]


def test_a_row_never_mixes_old_answers_with_new_ones():
    machine = decoder(Register(0), Register(10))
    machine.expect(1)
    machine.feed(answer("0002"))
    machine.expect(0)
    assert len(machine.feed(answer("0003"))) == 0
    machine.expect(1)
    assert machine.feed(answer("0004")).values.tolist() == [[3.0, 4.0]]


def test_asking_for_the_second_again_keeps_the_first():
    machine = decoder(Register(0), Register(10))
    machine.feed(answer("0001"))
    machine.expect(1)
    machine.feed(answer("0002")[:3])
    machine.expect(1)
    assert machine.refused == 1
    assert machine.feed(answer("0002")).values.tolist() == [[1.0, 2.0]]


def test_there_is_no_frame_that_was_not_planned():
    with pytest.raises(IndexError, match="no frame 2"):
        decoder(Register(0), Register(10)).expect(2)


def test_half_an_answer_is_forgotten_at_a_restart():
    machine = decoder(Register(0), Register(10))
    machine.feed(answer("0001") + answer("0002")[:4])
    machine.restart()
    assert machine.feed(answer("0003") + answer("0004")).values.tolist() == [[3.0, 4.0]]
    assert machine.refused == 0


def test_an_exception_is_an_answer_without_values_and_is_told_once():
    machine = decoder(Register(0), Register(10))
    pair = answer("0001") + refusal(2)
    readings = machine.feed(pair + pair + answer("0001") + answer("0002") + pair)
    assert readings.flags.tolist() == [[OK, NO_DATA], [OK, NO_DATA], [OK, OK], [OK, NO_DATA]]
    told = [(remark.row, remark.kind, remark.text) for remark in readings.remarks]
    words = "register 10: exception 02, illegal data address"
    assert told == [(0, EventKind.DEVICE, words), (3, EventKind.DEVICE, words)]
    assert machine.refused == 0
    assert machine.complete_answers == 8


def test_an_exception_is_told_with_the_row_that_it_spoils():
    machine = decoder(Register(0), Register(10))
    assert machine.feed(answer("0001") + answer("0002") + refusal(6)).remarks == ()
    readings = machine.feed(answer("0002"))
    assert readings.flags.tolist() == [[NO_DATA, OK]]
    assert [remark.row for remark in readings.remarks] == [0]


def test_another_exception_is_told_anew_and_an_unknown_one_by_its_number():
    readings = decoder(Register(0)).feed(refusal(6) + refusal(0x55))
    assert [remark.text for remark in readings.remarks] == [
        "register 0: exception 06, server device busy",
        "register 0: exception 55, not in the standard",
    ]


@pytest.mark.parametrize(
    "junk",
    [
        b"\x00",
        b"\xff\xff",
        answer("0001", device=8),
        answer("0001", function=3),
        answer("0001 0002"),
        answer("0001")[:-1] + b"\x00",
        sealed(b"\x07\x04\x04\x00\x01"),  # says four bytes and has two
        answer("0001")[:4],
        refusal(2)[:4],
    ],
)
def test_what_is_no_answer_costs_itself_only(junk):
    machine = decoder(Register(0))
    readings = machine.feed(junk + answer("0002"))
    assert readings.values.tolist() == [[2.0]]
    assert machine.refused == 1
    assert machine.last_refused == junk


@pytest.mark.parametrize("address", [0, 8, 0x0200])
def test_a_request_that_comes_back_is_passed_over(address):
    machine = decoder(Register(address))
    (request,) = ModbusRequests(talk(Register(address))).frames
    readings = machine.feed(request + answer("0002") + request + refusal(6))
    assert readings.flags.tolist() == [[OK], [NO_DATA]]
    assert machine.refused == 0
    assert machine.complete_answers == 2


def test_every_channel_needs_a_register():
    with pytest.raises(ValueError, match="2 channels, but 1 registers"):
        ModbusDecoder(talk(Register(0)), (Channel("a", Quantity.VOLTAGE),) * 2)


def test_the_other_dialects_do_not_pay_for_the_library():
    code = "import sys, meterlog.instruments; raise SystemExit('pymodbus' in sys.modules)"
    assert subprocess.run([sys.executable, "-c", code], check=False).returncode == 0
