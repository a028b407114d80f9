"""What is fuzzed: a decoder, valid data for it with what they mean, and what a pause does."""

from __future__ import annotations

import random
import struct
from collections.abc import Callable
from dataclasses import dataclass

from pymodbus.framer import FramerRTU

from meterlog.instruments import (
    AsciiLineDecoder,
    BlockDecoder,
    Decoder,
    LcdFrameDecoder,
    ModbusDecoder,
    ScpiAnswerDecoder,
)
from meterlog.model import Channel, Quantity
from meterlog.profile import BlockLayout, LineFormat, ModbusTalk, Register

Valid = Callable[[random.Random], tuple[bytes, list[float]]]
ONE = (Channel("a", Quantity.VOLTAGE),)
TWO = (Channel("a", Quantity.VOLTAGE), Channel("b", Quantity.CURRENT))
SEGMENTS = (0x7D, 0x05, 0x5B, 0x1F, 0x27, 0x3E, 0x7E, 0x15, 0x7F, 0x3F)


@dataclass(frozen=True)
class Subject:
    """One decoder.

    ``valid`` gives one frame and the last row that it means. ``pause`` is what the conversation
    does when an answer does not come, or before it asks again; ``needs_pause`` tells after which
    garbage the decoder can't be expected to recover without it.
    """

    name: str
    make: Callable[[], Decoder]
    valid: Valid
    pause: Callable[[Decoder], None] | None = None
    needs_pause: Callable[[bytes], bool] = lambda _garbage: False
    words: tuple[bytes, ...] = ()


def _line(delimiter: str, decimal: str, time: bool) -> Valid:
    def valid(dice: random.Random) -> tuple[bytes, list[float]]:
        row = [round(dice.uniform(-99, 99), dice.randrange(4)) for _ in TWO]
        texts = [f"{value!r}".replace(".", decimal) for value in row]
        front = [str(dice.randrange(10**6))] if time else []
        return (delimiter.join(front + texts) + "\r\n").encode(), row

    return valid


def _answer(dice: random.Random) -> tuple[bytes, list[float]]:
    row = [round(dice.uniform(-99, 99), dice.randrange(9)) for _ in TWO]
    return ",".join(f"{value:+.10E}" for value in row).encode() + b"\n", [
        float(f"{value:+.10E}") for value in row
    ]


def _block(form: str) -> Valid:
    def valid(dice: random.Random) -> tuple[bytes, list[float]]:
        while True:
            rows = [[float(dice.randrange(-9999, 9999)) for _ in TWO] for _ in range(20)]
            whole = [[int(value) for value in row] for row in rows]
            numbers = whole if form[-1] == "h" else rows
            data = b"".join(struct.pack(form[0] + 2 * form[1], *row) for row in numbers)
            # Where the front of a block is lost, its samples are read as text: one that looks
            # like the front of another would hide the next block too.
            if not any(sign in data for sign in b"\r\n;,"):
                return b"#3%03d" % len(data) + data + b"\n", rows[-1]

    return valid


def _display(dice: random.Random) -> tuple[bytes, list[float]]:
    count, decimals = dice.randrange(10_000), dice.randrange(4)
    bits = [0] * 15
    bits[1], bits[13] = 7, 4
    for place, digit in enumerate(f"{count:04d}"):
        code = SEGMENTS[int(digit)]
        bits[2 + 2 * place], bits[3 + 2 * place] = code >> 4, code & 15
    if decimals:
        bits[10 - 2 * decimals] |= 8
    negative = dice.random() < 0.5
    bits[2] |= 8 * negative
    value = (-1 if negative else 1) * count / 10**decimals
    return bytes(place << 4 | bits[place] for place in range(1, 15)), [value]


def _sealed(body: bytes) -> bytes:
    return body + FramerRTU.compute_CRC(body).to_bytes(2, "big")


def _register(dice: random.Random) -> tuple[bytes, list[float]]:
    value = dice.randrange(-32_768, 32_767)
    return _sealed(struct.pack(">BBBh", 1, 4, 2, value)), [float(value)]


def _registers(dice: random.Random) -> tuple[bytes, list[float]]:
    whole, real = dice.randrange(-32_768, 32_767), dice.randrange(-999, 999) / 8
    first = _sealed(struct.pack(">BBBhf", 1, 3, 6, whole, real))
    second = _sealed(struct.pack(">BBBi", 1, 3, 4, whole * 3))
    return first + second, [float(whole), real, float(whole * 3)]


ONE_TALK = ModbusTalk(1, 4, registers=(Register(0x0200),))
MANY_TALK = ModbusTalk(1, 3, registers=(Register(0), Register(1, "float32"), Register(9, "int32")))
THREE = (*TWO, Channel("c", Quantity.VOLTAGE))
HEADS = (b"#0", b"#1", b"#3120", b"#9", b"#2", b"#216", b"9.91E37,", b"9.9E37", b"nan", b"\n", b";")
WORDS = (b"# VIRTUAL BENCH\r\n", b"OL,", b"inf\n", b"1,", b"\xff\xfe", b"1e400\n", b",", b"\t")
BITS = (b"\x01\x04\x02", b"\x01\x84\x02\xc2\xc1", b"\x01\x03\x06", b"\x01\x83", b"\x01")


def _has_hash(garbage: bytes) -> bool:
    return b"#" in garbage


def _restart(decoder: Decoder) -> None:
    assert isinstance(decoder, BlockDecoder | ScpiAnswerDecoder)
    decoder.restart()


def _ask(decoder: Decoder) -> None:
    assert isinstance(decoder, ModbusDecoder)
    decoder.expect(0)


SUBJECTS = (
    Subject(
        "ascii lines",
        lambda: AsciiLineDecoder(LineFormat(columns=("a", "b")), TWO),
        _line(",", ".", time=False),
        words=WORDS,
    ),
    Subject(
        "ascii lines, tabs, own time",
        lambda: AsciiLineDecoder(
            LineFormat(delimiter="\t", decimal=",", columns=("time", "a", "b")), TWO
        ),
        _line("\t", ",", time=True),
        words=WORDS,
    ),
    Subject(
        "scpi answers",
        lambda: ScpiAnswerDecoder(TWO),
        _answer,
        _restart,
        _has_hash,
        HEADS,
    ),
    Subject(
        "blocks int16",
        lambda: BlockDecoder(BlockLayout("int16", "normal", 0.001, 0, (32767.0,)), TWO),
        _block(">h"),
        _restart,
        _has_hash,
        HEADS,
    ),
    Subject(
        "blocks real32, known rows",
        lambda: BlockDecoder(BlockLayout("real32", "swapped", 0.0, 20), TWO),
        _block("<f"),
        _restart,
        _has_hash,
        HEADS,
    ),
    Subject("display frames", lambda: LcdFrameDecoder(ONE), _display, words=(b"\x17\x20", b"# V")),
    Subject("modbus, one frame", lambda: ModbusDecoder(ONE_TALK, ONE), _register, words=BITS),
    Subject(
        "modbus, two frames",
        lambda: ModbusDecoder(MANY_TALK, THREE),
        _registers,
        _ask,
        lambda _garbage: True,
        BITS,
    ),
)
