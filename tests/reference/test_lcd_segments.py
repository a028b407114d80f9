"""Frames of LCD segments against the segment table of the chip's data sheet.

Source: the data sheet family of hand-held meter chips with a serial output of 14 bytes, from
memory. The segment codes are checked against the shapes of a seven-segment digit (a on top, then
clockwise to f, g in the middle: common practice, no source); the frames were built by hand from
the table.
"""

import pytest

from meterlog.instruments import LcdFrameDecoder
from meterlog.instruments.lcd_segments import DIGITS, read_frame
from meterlog.model import Channel, Flag, Quantity

SEGMENTS = {"a": 0x10, "f": 0x20, "e": 0x40, "b": 0x01, "g": 0x02, "c": 0x04, "d": 0x08}
LIT = {
    "0": "abcdef",
    "1": "bc",
    "2": "abdeg",
    "3": "abcdg",
    "4": "bcfg",
    "5": "acdfg",
    "6": "acdefg",
    "7": "abc",
    "8": "abcdefg",
    "9": "abcdfg",
    " ": "",
    "L": "def",
}


def test_every_digit_lights_the_segments_that_make_its_shape():
    lit = {sum(SEGMENTS[one] for one in segments): sign for sign, segments in LIT.items()}
    assert lit == DIGITS


@pytest.mark.parametrize(
    ("frame", "number", "unit"),
    [
        ("17 20 35 45 5B 69 7F 82 97 A0 B0 C0 D4 E0", 12.34, "V"),
        ("17 2F 3D 4B 5E 67 7E 81 95 A0 B0 C0 D8 E0", -0.567, "A"),
    ],
)
def test_a_frame_built_from_the_table_is_read_as_it_was_meant(frame, number, unit):
    shown = read_frame(bytes.fromhex(frame))
    assert (shown.number, shown.unit, shown.coupling) == (number, unit, "DC")
    assert (shown.overload, shown.hold, shown.relative, shown.low_battery) == (False,) * 4


def test_an_overload_on_the_resistance_position_is_neither_volts_nor_a_number():
    frame = bytes.fromhex("13 20 30 47 5D 6E 78 80 90 A2 B0 C4 D0 E0")
    shown = read_frame(frame)
    assert (shown.overload, shown.unit, shown.power, shown.decimals) == (True, "Ω", 3, 2)
    readings = LcdFrameDecoder((Channel("volts", Quantity.VOLTAGE),)).feed(frame)
    assert readings.flags.tolist() == [[int(Flag.NO_DATA)]]


@pytest.mark.parametrize(
    ("change", "seen"),
    [
        # byte, bit, what the table says that this bit is
        ((1, 8), ("coupling", "AC+DC")),
        ((2, 8), ("negative", True)),
        ((4, 8), ("decimals", 3)),
        ((6, 8), ("decimals", 2)),
        ((8, 8), ("decimals", 1)),
        ((10, 8), ("power", -6)),
        ((10, 4), ("power", -9)),
        ((10, 2), ("power", 3)),
        ((10, 1), ("unit", "diode")),
        ((11, 8), ("power", -3)),
        ((11, 2), ("power", 6)),
        ((12, 2), ("relative", True)),
        ((12, 1), ("hold", True)),
        ((13, 1), ("low_battery", True)),
    ],
)
def test_each_bit_means_what_the_table_says_and_nothing_else(change, seen):
    plain = bytearray.fromhex("15 27 3D 47 5D 67 7D 87 9D A0 B0 C0 D4 E0")  # 0000 V DC
    place, bit = change
    changed = bytearray(plain)
    changed[place - 1] |= bit
    before, after = read_frame(bytes(plain))._asdict(), read_frame(bytes(changed))._asdict()
    name, value = seen
    assert after.pop(name) == value
    assert before.pop(name) != value
    assert before == after


@pytest.mark.parametrize(
    ("place", "bit", "unit"),
    [(13, 8, "A"), (13, 4, "V"), (13, 2, "Hz"), (12, 8, "F"), (12, 4, "Ω"), (11, 4, "%")],
)
def test_each_unit_has_its_bit(place, bit, unit):
    frame = bytearray.fromhex("15 27 3D 47 5D 67 7D 87 9D A0 B0 C0 D0 E0")
    assert read_frame(bytes(frame)) is None  # no unit at all
    frame[place - 1] |= bit
    assert read_frame(bytes(frame)).unit == unit
