"""Modbus frames and check sums against the standard's own.

Sources: Modbus over Serial Line V1.02, 2.5.1.2 and 6.2.2 (check sum: start FFFF, polynomial A001
reflected, low byte first; the example 02 07 -> 1241h). The check value 4B37h of the text 123456789
is that of the catalogues of check sums for the name CRC-16/MODBUS. Modbus Application Protocol
V1.1b3: 6.3 (function 03, the example of registers 108 to 110), 6.4 (function 04, the example of
register 9), section 7 (exceptions and their codes; those above 06 from memory). Whole frames: the
standard's examples with address 1 and check sum added. Clause numbers from memory.
"""

import math

import pytest
from pymodbus.framer import FramerRTU

from meterlog.instruments import ModbusDecoder, ModbusRequests
from meterlog.model import Channel, EventKind, Flag, Quantity
from meterlog.profile import ModbusTalk, Register


def channels(count: int) -> tuple[Channel, ...]:
    return tuple(Channel(f"c{place}", Quantity.VOLTAGE) for place in range(count))


def check_sum(data: bytes) -> int:
    """Give the check sum bit by bit, as the standard's text describes it."""
    register = 0xFFFF
    for byte in data:
        register ^= byte
        for _ in range(8):
            odd = register & 1
            register >>= 1
            if odd:
                register ^= 0xA001
    return register


HOLDING = ModbusTalk(device=1, function=3, registers=tuple(Register(a) for a in (107, 108, 109)))
INPUT = ModbusTalk(device=1, function=4, registers=(Register(8),))


def test_the_check_sum_is_that_of_the_standard():
    assert check_sum(bytes.fromhex("0207")) == 0x1241
    assert check_sum(b"123456789") == 0x4B37
    for data in (bytes.fromhex("0207"), b"123456789", bytes(range(256))):
        assert FramerRTU.compute_CRC(data) == int.from_bytes(
            check_sum(data).to_bytes(2, "little"), "big"
        )


@pytest.mark.parametrize(
    ("talk", "frame"),
    [(HOLDING, "01 03 00 6B 00 03 74 17"), (INPUT, "01 04 00 08 00 01 B0 08")],
)
def test_a_request_is_the_frame_of_the_standards_example(talk, frame):
    assert ModbusRequests(talk).frames == (bytes.fromhex(frame),)


@pytest.mark.parametrize(
    ("talk", "frame", "values"),
    [
        (HOLDING, "01 03 06 02 2B 00 00 00 64 05 7A", [555.0, 0.0, 100.0]),
        (INPUT, "01 04 02 00 0A 39 37", [10.0]),
    ],
)
def test_an_answer_gives_the_numbers_of_the_standards_example(talk, frame, values):
    decoder = ModbusDecoder(talk, channels(len(values)))
    assert decoder.feed(bytes.fromhex(frame)).values.tolist() == [values]
    assert decoder.complete_answers == 1
    assert decoder.refused == 0


@pytest.mark.parametrize(
    ("talk", "frame"), [(HOLDING, "01 83 02 C0 F1"), (INPUT, "01 84 02 C2 C1")]
)
def test_an_exception_is_told_in_the_standards_words(talk, frame):
    decoder = ModbusDecoder(talk, channels(len(talk.registers)))
    readings = decoder.feed(bytes.fromhex(frame))
    (remark,) = readings.remarks
    assert (remark.row, remark.kind) == (0, EventKind.DEVICE)
    assert remark.text.endswith("exception 02, illegal data address")
    assert readings.flags.tolist() == [[int(Flag.NO_DATA)] * len(talk.registers)]
    assert all(math.isnan(value) for value in readings.values[0])


@pytest.mark.parametrize(
    ("code", "words"),
    [
        (1, "illegal function"),
        (2, "illegal data address"),
        (3, "illegal data value"),
        (4, "server device failure"),
        (5, "acknowledge"),
        (6, "server device busy"),
        (8, "memory parity error"),
        (0x0A, "gateway path unavailable"),
        (0x0B, "gateway target device failed to respond"),
    ],
)
def test_every_exception_code_has_its_words(code, words):
    frame = bytes((1, 0x84, code))
    readings = ModbusDecoder(INPUT, channels(1)).feed(
        frame + check_sum(frame).to_bytes(2, "little")
    )
    assert f"exception {code:02X}, {words}" in readings.remarks[0].text


def test_a_frame_for_another_function_is_no_answer():
    # The standard's exception example for function 01, at address 0A.
    decoder = ModbusDecoder(INPUT, channels(1))
    assert len(decoder.feed(bytes.fromhex("0A 81 02 B0 53"))) == 0
    assert decoder.complete_answers == 0
    assert decoder.refused == 1
