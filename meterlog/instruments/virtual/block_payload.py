"""Rows of samples as an IEEE 488.2 block."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from meterlog.instruments.virtual.meter import Shown
from meterlog.profile import BlockLayout

_TYPES = {"real32": "f4", "real64": "f8", "int16": "i2"}
_ORDERS = {"normal": ">", "swapped": "<"}
_INFINITY = 9.9e37
_MOST_INT = 32_767


def row_bytes(number: str, channels: int) -> int:
    """Give the length of one row."""
    return int(np.dtype(_TYPES[number]).itemsize) * channels


def numbers(shown: Shown, number: str, overload: tuple[float, ...]) -> NDArray[np.float64]:
    """Give the rows as the numbers that go out.

    Parameters
    ----------
    shown : Shown
    number : str
        ``real32``, ``real64`` or ``int16``.
    overload : tuple of float
        The profile's own numbers for it: the first, and for negative values the second where
        there is one.

    Returns
    -------
    ndarray, float64, shape (n, channels)
        Overload as these, or else as ±9.9E37, which are infinity in SCPI, or the largest integer.
    """
    values = shown.raw.copy()
    over = shown.overload
    top = _INFINITY
    if number == "int16":
        values = np.round(values)
        over = over | (np.abs(values) > _MOST_INT)
        top = float(_MOST_INT)
    above = overload[0] if overload else top
    below = overload[1] if len(overload) > 1 else (overload[0] if overload else -top)
    return np.where(over, np.where(shown.negative, below, above), values)


def block(values: NDArray[np.float64], number: str, byte_order: str, *, endless: bool) -> bytes:
    """Give the block that holds ``values``, row after row.

    Parameters
    ----------
    values : ndarray, float64, shape (n, channels)
    number, byte_order : str
        As in :class:`meterlog.profile.BlockLayout`.
    endless : bool
        True for the form of indefinite length, which ends with the message.

    Source
    ------
    IEEE 488.2-1992, 8.7.9 and 8.7.10 (clauses from memory).
    """
    payload = values.astype(_ORDERS[byte_order] + _TYPES[number]).tobytes()
    if endless:
        return b"#0" + payload
    size = str(len(payload)).encode()
    return b"#" + str(len(size)).encode() + size + payload


def asked_format(text: str, layout: BlockLayout) -> str | None:
    """Give the form of number that ``FORMat`` asks for; None for one that there is not.

    Parameters
    ----------
    text : str
        Such as ``REAL,32``, ``INT,16`` or ``ASC``.
    layout : BlockLayout
        Tells which form is meant where the length is left out.
    """
    name, _, length = text.upper().replace(" ", "").partition(",")
    kind = {"REAL": "real", "INT": "int", "INTEGER": "int"}.get(name)
    if name in {"ASC", "ASCII"}:
        return "text"
    if kind is None:
        return None
    if not length and layout.number.startswith(kind):
        return layout.number
    found = f"{kind}{length or {'real': '32', 'int': '16'}[kind]}"
    return found if found in _TYPES else None
