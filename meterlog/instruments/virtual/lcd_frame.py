"""Frames of LCD segments: a display's picture as the 14 bytes that its chip sends."""

from __future__ import annotations

from dataclasses import dataclass

FRAME_BYTES = 14
DIGITS = 4
_SEGMENTS = {
    " ": "", "0": "abcdef", "1": "bc", "2": "abdeg", "3": "abcdg", "4": "bcfg", "5": "acdfg",
    "6": "acdefg", "7": "abc", "8": "abcdefg", "9": "abcdfg", "L": "def",
}  # fmt: skip
_UPPER = {"a": 1, "f": 2, "e": 4}
_LOWER = {"b": 1, "g": 2, "c": 4, "d": 8}
_SIGNS = {
    "AC": (1, 8), "DC": (1, 4), "AUTO": (1, 2), "RS232": (1, 1),
    "u": (10, 8), "n": (10, 4), "k": (10, 2), "diode": (10, 1),
    "m": (11, 8), "%": (11, 4), "M": (11, 2), "beep": (11, 1),
    "F": (12, 8), "OHM": (12, 4), "REL": (12, 2), "HOLD": (12, 1),
    "A": (13, 8), "V": (13, 4), "Hz": (13, 2), "BATTERY": (13, 1),
}  # fmt: skip


@dataclass(frozen=True, slots=True)
class Picture:
    """What a display shows.

    Attributes
    ----------
    digits : str
        Four of ``0`` to ``9``, ``L`` and blank.
    point : int
        After which digit the decimal point stands, 1 to 3; 0 for none.
    minus : bool
    signs : frozenset of str
        Units (``V``, ``A``, ``OHM``), multipliers (``m``, ``u``, ``k``, ``M``) and the like.
    """

    digits: str
    point: int = 0
    minus: bool = False
    signs: frozenset[str] = frozenset()


def lcd_frame(picture: Picture) -> bytes:
    """Give the frame of a picture.

    Returns
    -------
    bytes
        14, the k-th with k in its upper half and four segments in its lower one.

    Source
    ------
    The layout that many hand-held meters share, and the segments of a seven-segment digit; from
    memory, no published standard.
    """
    lower = [0] * (FRAME_BYTES + 1)
    for index, sign in enumerate(picture.digits):
        first = 2 + 2 * index
        for segment in _SEGMENTS[sign]:
            if segment in _UPPER:
                lower[first] |= _UPPER[segment]
            else:
                lower[first + 1] |= _LOWER[segment]
    if picture.minus:
        lower[2] |= 8
    if picture.point:
        lower[2 + 2 * picture.point] |= 8
    for sign in picture.signs:
        place, bit = _SIGNS[sign]
        lower[place] |= bit
    return bytes(place << 4 | lower[place] for place in range(1, FRAME_BYTES + 1))
