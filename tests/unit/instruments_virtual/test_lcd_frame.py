"""Frames against rows worked out by hand from the table of segments (from memory, no standard)."""

import pytest

from meterlog.instruments.virtual.lcd_frame import Picture, lcd_frame

SHOWN = {
    # 12.34 V DC, automatic range
    "17 20 35 45 5B 69 7F 82 97 A0 B0 C0 D4 E0": Picture(
        "1234", 2, signs=frozenset({"V", "DC", "AUTO", "RS232"})
    ),
    # -0.567 A DC, automatic range
    "17 2F 3D 4B 5E 67 7E 81 95 A0 B0 C0 D8 E0": Picture(
        "0567", 1, minus=True, signs=frozenset({"A", "DC", "AUTO", "RS232"})
    ),
    # overload on a kilohm range
    "13 20 30 47 5D 6E 78 80 90 A2 B0 C4 D0 E0": Picture(
        " 0L ", 2, signs=frozenset({"OHM", "k", "AUTO", "RS232"})
    ),
}
SEGMENTS = {
    "0": 0x7D, "1": 0x05, "2": 0x5B, "3": 0x1F, "4": 0x27, "5": 0x3E, "6": 0x7E, "7": 0x15,
    "8": 0x7F, "9": 0x3F, " ": 0x00, "L": 0x68,
}  # fmt: skip


@pytest.mark.parametrize("frame", SHOWN)
def test_a_picture_becomes_the_frame_worked_out_by_hand(frame):
    assert lcd_frame(SHOWN[frame]) == bytes.fromhex(frame)


@pytest.mark.parametrize("sign", SEGMENTS)
@pytest.mark.parametrize("place", range(4))
def test_each_digit_has_its_segments_at_every_place(sign, place):
    digits = [" "] * 4
    digits[place] = sign
    frame = lcd_frame(Picture("".join(digits)))
    codes = [(frame[k] & 7) << 4 | frame[k + 1] & 15 for k in (1, 3, 5, 7)]
    assert codes == [SEGMENTS[sign] if k == place else 0 for k in range(4)]
    assert [byte >> 4 for byte in frame] == list(range(1, 15))


@pytest.mark.parametrize(
    ("sign", "place", "bit"),
    [("HOLD", 12, 1), ("BATTERY", 13, 1), ("m", 11, 8), ("u", 10, 8), ("M", 11, 2), ("AC", 1, 8)],
)
def test_each_sign_lights_its_one_bit(sign, place, bit):
    dark, lit = lcd_frame(Picture("    ")), lcd_frame(Picture("    ", signs=frozenset({sign})))
    assert [k + 1 for k in range(14) if dark[k] != lit[k]] == [place]
    assert dark[place - 1] ^ lit[place - 1] == bit
