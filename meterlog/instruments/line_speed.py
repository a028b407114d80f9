"""What bytes that nobody understands say of the line's speed."""

from __future__ import annotations

from enum import Enum
from itertools import pairwise

FRAMING_SHARE = 0.05
"""A line at the right speed with so many bytes without stop bit would be no line at all (common
practice, no source)."""
FOREIGN_SHARE = 0.1
"""Noise on a good line spoils single bytes; a wrong speed spoils nearly all. Checked with a model
of a receiver at another speed in ``tests/unit/instruments/test_line_speed.py``."""
ORDERED_SHARE = 0.75
_TEXT = frozenset(b"\t\r\n") | frozenset(range(0x20, 0x7F))
_ANY_BYTE = frozenset({"scpi-blocks", "modbus-rtu"})
_LAST_PLACE = 14


class Doubt(Enum):
    """Why bytes are not understood."""

    SPEED = "speed"
    """Speed or form of the line is another than the profile's."""
    TEXT = "text"
    """Readable text, but of another kind."""
    FRAMES = "frames"
    """Frames of display segments."""


def foreign_share(data: bytes) -> float:
    """Give the share of bytes that no line of text holds: not ASCII, or a control sign."""
    return sum(byte not in _TEXT for byte in data) / len(data) if data else 0.0


def ordered_share(data: bytes) -> float:
    """Give the share of neighbours of which the later has the next place in a display's frame."""
    if len(data) < 2:
        return 0.0
    steps = sum(later >> 4 == (byte >> 4) % _LAST_PLACE + 1 for byte, later in pairwise(data))
    return steps / (len(data) - 1)


def doubt(data: bytes, dialect: str, framing_share: float = 0.0) -> Doubt | None:
    """Tell why none of these bytes could be understood.

    A receiver at the wrong speed finds the start bits of text at wrong places: at too high a
    speed each bit is read several times and bytes such as 0x00, 0x80, 0xE0, 0xF8 and 0xFF come,
    at too low a speed any bytes do, and many lack their stop bit. Text in its place is readable.

    Parameters
    ----------
    data : bytes
        The newest some hundred that came, none of which gave a reading.
    dialect : str
        One of :data:`meterlog.profile.DIALECTS`.
    framing_share : float
        Bytes without stop bit, by the system's count, as a share of those that came; 0 where it
        keeps none.

    Returns
    -------
    Doubt or None
        None when that can't be told.

    Source
    ------
    Asynchronous serial transmission with start and stop bit (ITU-T V.4, from memory); the
    thresholds are common practice, no source.
    """
    if not data:
        return None
    if framing_share >= FRAMING_SHARE:
        return Doubt.SPEED
    if ordered_share(data) >= ORDERED_SHARE:
        # The speed is right. Where frames are expected, the decoder itself says what is wrong.
        return None if dialect == "lcd-frames" else Doubt.FRAMES
    foreign = foreign_share(data)
    if foreign < FOREIGN_SHARE:
        return Doubt.TEXT
    return None if dialect in _ANY_BYTE else Doubt.SPEED
