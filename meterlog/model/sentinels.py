"""Sentinels: the large numbers by which an instrument says overload or not-a-number."""

from __future__ import annotations

import math

import numpy as np
from numpy.typing import NDArray

from meterlog.model.block import Flag

NOT_A_NUMBER = 9.91e37
OVERLOAD_FROM = 9.0e37
"""9.9E37 is infinity; meters that hold it in 32 bits or fewer digits send a little less."""
TOLERANCE = 1e-6


def tell_number(number: float) -> tuple[float, Flag]:
    """Give a number as it is to be kept, and what is to be known about it.

    Parameters
    ----------
    number : float
        As read, infinities and NaN included.

    Returns
    -------
    tuple of float and Flag
        The number with ``OK``, or NaN with ``OVERLOAD`` (±infinity, ±9.9E37 and anything as
        large) or ``NO_DATA`` (NaN, 9.91E37).

    Source
    ------
    SCPI-1999, volume 1, 7.2.1.4 and 7.2.1.5 (clauses from memory). The tolerance covers 9.91E37
    rounded to 32 bits.
    """
    if math.isnan(number) or abs(number - NOT_A_NUMBER) <= TOLERANCE * NOT_A_NUMBER:
        return math.nan, Flag.NO_DATA
    if abs(number) >= OVERLOAD_FROM:
        return math.nan, Flag.OVERLOAD
    return number, Flag.OK


def mark_sentinels(values: NDArray[np.float64], flags: NDArray[np.uint8]) -> None:
    """Do in place, for a whole array, what :func:`tell_number` does for one number.

    Parameters
    ----------
    values : ndarray, float64, shape (n, channels) or (n,)
        Sentinels become NaN.
    flags : ndarray, uint8, of the same shape
        Flags are added; a value that is flagged already is left alone.
    """
    usual = np.abs(values) < OVERLOAD_FROM
    if usual.all():
        return
    found = ~usual & (flags == 0)
    numbers = values[found]
    nothing = np.isnan(numbers) | (np.abs(numbers - NOT_A_NUMBER) <= TOLERANCE * NOT_A_NUMBER)
    values[found] = np.nan
    flags[found] = np.where(nothing, int(Flag.NO_DATA), int(Flag.OVERLOAD))
