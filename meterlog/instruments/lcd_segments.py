"""What one frame of LCD segments shows: digits, point, unit, multiplier and signs."""

from __future__ import annotations

import re
from typing import NamedTuple

FRAME_BYTES = 14
DIGITS = {
    0x7D: "0",
    0x05: "1",
    0x5B: "2",
    0x1F: "3",
    0x27: "4",
    0x3E: "5",
    0x7E: "6",
    0x15: "7",
    0x7F: "8",
    0x3F: "9",
    0x00: " ",
    0x68: "L",
}
"""Segments of a digit to what they show: a 10h, f 20h, e 40h, b 01h, g 02h, c 04h, d 08h."""
UNITS = (
    (12, 8, "A"),
    (12, 4, "V"),
    (12, 2, "Hz"),
    (11, 8, "F"),
    (11, 4, "Ω"),
    (10, 4, "%"),
    (13, 4, "°C"),
)
"""Place in the frame, bit, unit."""
MULTIPLIERS = ((9, 8, -6), (9, 4, -9), (9, 2, 3), (10, 8, -3), (10, 2, 6))
"""Place in the frame, bit, power of ten."""
_POINTS = ((3, 3), (5, 2), (7, 1))
"""Place in the frame, decimals of a number with its point there. The bit is 8."""
_NUMBER = re.compile(r" *[0-9]+")
_OVERLOAD = re.compile(r" *0?L *")


class Shown(NamedTuple):
    """What the display shows.

    Attributes
    ----------
    digits : str
        Of the number without its point; empty where there is none.
    overload : bool
        It shows L instead of a number.
    negative : bool
    decimals : int
        Digits behind the point.
    power : int
        The multiplier's power of ten, such as -3 for milli.
    unit : str
        ``V``, ``A``, ``Hz``, ``F``, ``Ω``, ``%``, ``°C`` or ``diode``.
    coupling : str
        ``DC``, ``AC``, ``AC+DC``, or empty when it shows neither.
    hold, relative, low_battery : bool
        The signs for a display that stands still, for readings relative to a stored one, and for
        a battery that is nearly empty.
    """

    digits: str
    overload: bool
    negative: bool
    decimals: int
    power: int
    unit: str
    coupling: str
    hold: bool
    relative: bool
    low_battery: bool

    @property
    def number(self) -> float:
        """What it shows, in V, A or another unit without multiplier; needs digits."""
        count = int(self.digits)
        power = self.power - self.decimals
        # A division by an exact power of ten is rounded once, as the literal would be.
        size = count / 10**-power if power < 0 else float(count * 10**power)
        return -size if self.negative else size

    @property
    def step(self) -> float:
        """The worth of one count of the last digit, in the unit without multiplier."""
        return float(f"1e{self.power - self.decimals}")


def read_frame(frame: bytes) -> Shown | None:
    """Give what a frame shows.

    Parameters
    ----------
    frame : bytes
        14 bytes whose high halves run from 1 to 14.

    Returns
    -------
    Shown or None
        None when it is not understood: segments that are no digit, more than one point, not
        exactly one unit, or more than one multiplier.

    Source
    ------
    The data sheet family of hand-held meter chips with a serial output, from memory. Checked by
    ``tests/reference/test_lcd_segments.py``.
    """
    bits = [byte & 0x0F for byte in frame]
    text = _text(bits)
    points = [decimals for place, decimals in _POINTS if bits[place] & 8]
    powers = [power for place, bit, power in MULTIPLIERS if bits[place] & bit]
    unit = _unit(bits)
    if text is None or not unit or len(points) > 1 or len(powers) > 1:
        return None
    decimals = points[0] if points else 0
    overload = _OVERLOAD.fullmatch(text) is not None
    if not (overload or text.isspace()) and not _is_number(text, decimals):
        return None
    return Shown(
        digits="" if overload else text.strip(),
        overload=overload,
        negative=bool(bits[1] & 8),
        decimals=decimals,
        power=powers[0] if powers else 0,
        unit=unit,
        coupling=("", "DC", "AC", "AC+DC")[bits[0] >> 2],
        hold=bool(bits[11] & 1),
        relative=bool(bits[11] & 2),
        low_battery=bool(bits[12] & 1),
    )


def _text(bits: list[int]) -> str | None:
    codes = ((bits[place] & 7) << 4 | bits[place + 1] for place in (1, 3, 5, 7))
    signs = [DIGITS.get(code) for code in codes]
    known = [sign for sign in signs if sign is not None]
    return "".join(known) if len(known) == len(signs) else None


def _is_number(text: str, decimals: int) -> bool:
    """Tell whether it is digits only, from the place behind the point on without a gap."""
    behind = text[len(text) - decimals :]
    return _NUMBER.fullmatch(text) is not None and " " not in behind


def _unit(bits: list[int]) -> str:
    """Give the one unit; empty when there is none, or more than one."""
    units = [unit for place, bit, unit in UNITS if bits[place] & bit]
    if len(units) > 1:
        return ""
    # A diode test shows volts too, or no unit at all.
    return "diode" if bits[9] & 1 else "".join(units)
