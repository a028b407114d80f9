"""Frames of a hand-held meter's display: what becomes a reading, a flag or a remark."""

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from meterlog.instruments import LcdFrameDecoder
from meterlog.model import Accuracy, Channel, Event, EventKind, Flag, Quantity, Range
from meterlog.model.event import TO_BEGIN_WITH

SHAPES = {"0": "abcdef", "1": "bc", "2": "abdeg", "3": "abcdg", "4": "bcfg", "5": "acdfg"}
SHAPES |= {"6": "acdefg", "7": "abc", "8": "abcdefg", "9": "abcdfg", " ": "", "L": "def"}
SIGNS = {"u": (10, 8), "n": (10, 4), "k": (10, 2), "d": (10, 1), "m": (11, 8), "%": (11, 4)}
SIGNS |= {"M": (11, 2), "F": (12, 8), "R": (12, 4), "A": (13, 8), "V": (13, 4), "H": (13, 2)}
SIGNS |= {"C": (14, 4)}
MARKS = {"r": (12, 2), "h": (12, 1), "b": (13, 1)}
COUPLINGS = {"": 0, "DC": 4, "AC": 8, "AC+DC": 12}


def frame(
    text: str, unit: str = "V", coupling: str = "DC", multiplier: str = "", signs: str = ""
) -> bytes:
    """Draw a display: four digits with points between them, and signs by the letters above."""
    bits = [0] * 15
    bits[1] = COUPLINGS[coupling] | 3  # auto range, serial output on
    if text.startswith("-"):
        bits[2], text = 8, text[1:]
    place = 2
    for sign in text:
        if sign == ".":
            bits[place] |= 8
            continue
        lit = SHAPES[sign]
        bits[place] |= sum(bit for bit, one in ((4, "e"), (2, "f"), (1, "a")) if one in lit)
        bits[place + 1] = sum(
            bit for bit, one in ((8, "d"), (4, "c"), (2, "g"), (1, "b")) if one in lit
        )
        place += 2
    for one in unit + multiplier:
        at, bit = SIGNS[one]
        bits[at] |= bit
    for one in signs:
        at, bit = MARKS[one]
        bits[at] |= bit
    return bytes(place << 4 | bits[place] for place in range(1, 15))


NO_DATA, OVERLOAD, CHANGED = int(Flag.NO_DATA), int(Flag.OVERLOAD), int(Flag.RANGE_CHANGED)


def volts(scale: float = 1.0) -> Channel:
    ranges = tuple(
        Range(top * abs(scale), Accuracy(0.5, 2, resolution * abs(scale)))
        for top, resolution in ((0.6, 0.0001), (6.0, 0.001), (60.0, 0.01))
    )
    return Channel("volts", Quantity.VOLTAGE, scale=scale, ranges=ranges)


def amps() -> Channel:
    return Channel("amps", Quantity.CURRENT)


def read(*frames: bytes, channel: Channel | None = None):
    decoder = LcdFrameDecoder((channel or volts(),))
    readings = decoder.feed(b"".join(frames))
    return readings, decoder


def said(readings) -> list[tuple[int, EventKind, str]]:
    """Give the remarks but the one on the range to begin with."""
    return [
        (remark.row, remark.kind, remark.text)
        for remark in readings.remarks
        if not remark.text.endswith(TO_BEGIN_WITH)
    ]


@pytest.mark.parametrize(
    ("shown", "number"),
    [
        (frame("12.34"), 12.34),
        (frame("-12.34"), -12.34),
        (frame(" 1.23"), 1.23),
        (frame("0.007"), 0.007),
        (frame("0000"), 0.0),
        (frame("   5"), 5.0),
        (frame("123.4", multiplier="m"), 0.1234),
        (frame("1234", multiplier="u"), 0.001234),
        (frame("1.234", multiplier="k"), 1234.0),
        (frame("12.34", coupling=""), 12.34),
    ],
)
def test_what_is_shown_is_given_in_volts_as_a_person_would_write_it(shown, number):
    readings, decoder = read(shown)
    assert readings.values.tolist() == [[number]]
    assert readings.flags.tolist() == [[0]]
    assert said(readings) == []
    assert decoder.refused == 0


@pytest.mark.parametrize("text", [" 0L ", "0.L  ", " 0.L ", "- 0L ", "   L"])
def test_an_overload_is_flagged_and_never_a_number(text):
    readings, _ = read(frame(text))
    assert readings.flags.tolist() == [[OVERLOAD]]
    assert math.isnan(readings.values[0, 0])


def test_an_empty_display_is_no_data():
    readings, decoder = read(frame("    "))
    assert readings.flags.tolist() == [[NO_DATA]]
    assert decoder.refused == 0


@pytest.mark.parametrize(
    "wrong",
    [
        frame("1 23"),
        frame("12  "),
        frame("1. 34"),
        frame(" . 12"),
        frame("1L23"),
        frame("LL  "),
        frame("1.2.34"),
        frame("12.34", unit=""),
        frame("12.34", unit="VA"),
        frame("12.34", multiplier="mk"),
        frame("12.34").replace(b"\x20\x35", b"\x22\x35"),
    ],
)
def test_a_display_that_makes_no_sense_is_refused_and_costs_itself_only(wrong):
    readings, decoder = read(frame("12.34"), wrong, frame("12.35"))
    assert readings.values.tolist() == [[12.34], [12.35]]
    assert decoder.refused == 1
    assert decoder.last_refused == wrong


@pytest.mark.parametrize(
    ("shown", "words"),
    [
        (frame("12.34", unit="A"), "A DC"),
        (frame("12.34", coupling="AC"), "V AC"),
        (frame("12.34", coupling="AC+DC"), "V AC+DC"),
        (frame("12.34", unit="R", coupling=""), "Ω"),
        (frame("12.34", unit="H", coupling="AC"), "Hz AC"),
        (frame("12.34", unit="%", coupling=""), "%"),
        (frame("12.34", unit="F", coupling=""), "F"),
        (frame("12.34", unit="C", coupling=""), "°C"),
        (frame("0.612", unit="Vd"), "diode DC"),
        (frame("0.612", unit="d", coupling=""), "diode"),
    ],
)
def test_another_unit_gives_no_value_and_is_remarked_when_it_comes_and_when_it_goes(shown, words):
    right = frame("12.34")
    readings, decoder = read(right, shown, shown, right, right)
    assert readings.flags[:, 0].tolist() == [0, NO_DATA, NO_DATA, 0, 0]
    assert np.isnan(readings.values[:, 0]).tolist() == [False, True, True, False, False]
    assert said(readings) == [
        (1, EventKind.UNIT, f"the meter shows {words}, expected V: was its dial turned?"),
        (3, EventKind.UNIT, "shows V DC again"),
    ]
    assert decoder.refused == 0


def test_a_second_wrong_unit_is_remarked_anew():
    readings, _ = read(frame("1.234", unit="A"), frame("1.234", unit="R", coupling=""))
    assert [row for row, _, _ in said(readings)] == [0, 1]


def test_a_channel_of_amperes_takes_amperes_and_no_volts():
    readings, _ = read(frame("1.234", unit="A"), frame("1.234"), channel=amps())
    assert readings.flags[:, 0].tolist() == [0, NO_DATA]
    assert "expected A" in said(readings)[0][2]


def test_the_first_number_in_another_range_is_flagged_and_the_range_named():
    readings, decoder = read(
        frame("5.998"), frame("06.00"), frame("06.01"), frame("599.9", multiplier="m")
    )
    assert readings.flags[:, 0].tolist() == [0, CHANGED, 0, CHANGED]
    assert readings.values[:, 0].tolist() == [5.998, 6.0, 6.01, 0.5999]
    assert said(readings) == [
        (1, EventKind.RANGE, "range 60 V, steps of 0.01 V"),
        (3, EventKind.RANGE, "range 0.6 V, steps of 0.0001 V"),
    ]
    assert decoder.range_step == 0.0001


def test_the_first_number_tells_its_range_which_is_no_change():
    readings, _ = read(frame("    "), frame("06.00"), frame("06.01"))
    first = readings.remarks[0]
    assert (first.row, first.kind, first.text) == (
        1, EventKind.RANGE, "range 60 V, steps of 0.01 V, to begin with"
    )  # fmt: skip
    assert len(readings.remarks) == 1
    assert not Event(0, first.kind, first.text).changes_range
    assert readings.flags[:, 0].tolist() == [NO_DATA, 0, 0]


def test_a_range_that_the_profile_does_not_know_is_told_by_its_steps():
    readings, _ = read(frame("12.34"), frame("1234"))
    assert said(readings) == [(1, EventKind.RANGE, "another range, steps of 1 V")]


def test_a_range_is_told_in_the_unit_of_the_channel():
    readings, _ = read(frame("5.998"), frame("06.00"), channel=volts(scale=-10.0))
    assert said(readings) == [(1, EventKind.RANGE, "range 600 V, steps of 0.1 V")]
    assert readings.values[:, 0].tolist() == [5.998, 6.0]  # raw: the scale is not ours to apply


def test_what_shows_no_number_changes_no_range():
    readings, _ = read(
        frame("5.998"),
        frame("0.L  "),  # looking for its range
        frame(" 0.L "),
        frame("1234", unit="A"),
        frame("12.34", signs="h"),
        frame("    "),
        frame("5.997"),
    )
    ranges = [remark.text for remark in readings.remarks if remark.kind is EventKind.RANGE]
    assert ranges == ["range 6 V, steps of 0.001 V, to begin with"]
    assert readings.flags[-1, 0] == 0


@pytest.mark.parametrize(
    ("sign", "begins", "ends", "flag"),
    [
        ("b", "low battery", "battery is good", 0),
        ("h", "HOLD is on", "HOLD is off", NO_DATA),
        ("r", "REL is on", "REL is off", 0),
    ],
)
def test_a_sign_on_the_display_is_remarked_when_it_comes_and_when_it_goes(sign, begins, ends, flag):
    with_sign, without = frame("12.34", signs=sign), frame("12.34")
    readings, _ = read(without, with_sign, with_sign, without, without)
    assert readings.flags[:, 0].tolist() == [0, flag, flag, 0, 0]
    first, last = (r for r in readings.remarks if not r.text.endswith(TO_BEGIN_WITH))
    assert (first.row, first.kind, last.row, last.kind) == (
        1,
        EventKind.DEVICE,
        3,
        EventKind.DEVICE,
    )
    assert first.text.startswith(begins)
    assert last.text.startswith(ends)


def test_an_overload_that_is_held_is_no_overload_now():
    readings, _ = read(frame(" 0L ", signs="h"))
    assert readings.flags.tolist() == [[NO_DATA]]


def test_a_lost_byte_costs_its_frame_only():
    good, short = frame("12.34"), frame("12.35")
    readings, decoder = read(good, short[:5] + short[6:], good, good)
    assert readings.values[:, 0].tolist() == [12.34] * 3
    assert decoder.refused == 1


def test_the_rest_of_a_frame_that_was_joined_in_the_middle_is_not_counted():
    good = frame("12.34")
    readings, decoder = read(good[1:], good)
    assert (len(readings), decoder.refused) == (1, 0)
    decoder.feed(good[:3])
    decoder.skip_to_end()
    assert len(decoder.feed(good[3:] + good)) == 1
    assert decoder.refused == 0
    decoder.feed(good[3:] + good)
    assert decoder.refused == 1


def test_a_banner_of_text_is_skipped_as_junk():
    banner = b"# VIRTUAL BENCH simulated readings, invented meter\r\n"
    readings, decoder = read(banner, frame("12.34"))
    assert readings.values.tolist() == [[12.34]]
    assert decoder.refused > 0
    assert decoder.last_refused in banner


def test_a_wrong_line_speed_goes_on_being_counted():
    _, decoder = read(b"\x00\xff" * 700)
    assert decoder.refused == 100  # 1400 bytes, as frames of 14; the first 13 are not counted


def test_values_have_the_shape_and_order_of_readings():
    readings, decoder = read(frame("12.34"), frame("12.35"))
    empty = decoder.feed(b"")
    for part in (readings, empty):
        assert part.values.flags.f_contiguous
        assert part.flags.flags.f_contiguous
        assert (part.values.dtype, part.flags.dtype) == (np.float64, np.uint8)
        assert part.values.shape == part.flags.shape == (len(part), 1)
        assert part.own_time_s is None


@given(
    count=st.integers(0, 9999),
    decimals=st.integers(0, 3),
    negative=st.booleans(),
    multiplier=st.sampled_from(["", "m", "u", "n", "k", "M"]),
)
def test_any_number_on_the_display_is_read_as_python_reads_its_text(
    count, decimals, negative, multiplier
):
    digits = f"{count:04d}"
    text = digits[: 4 - decimals] + ("." + digits[4 - decimals :] if decimals else "")
    sign = "-" if negative else ""
    power = {"": 0, "m": -3, "u": -6, "n": -9, "k": 3, "M": 6}[multiplier]
    readings, _ = read(frame(sign + text, multiplier=multiplier))
    assert readings.values[0, 0] == float(f"{sign}{text}e{power}")
