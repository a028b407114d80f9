"""Numbers of a fixed count of decimals, many lines at once: what most meters send.

A number of up to 15 digits is a whole number below 2^53 divided by a power of ten below 10^22.
Both are exact in binary64, so one division gives the same nearest number as any correct parser.

Source
------
W. D. Clinger, "How to read floating point numbers accurately", PLDI 1990 (the exact case); from
memory. Checked against Python's ``float`` by ``tests/unit/instruments/test_fixed_fields.py``.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

import numpy as np
from numpy.typing import NDArray

MOST_CHARACTERS = 16
"""Of one number without its sign: 15 digits and the decimal sign."""
_LINE_FEED, _RETURN, _PLUS, _MINUS, _ZERO = b"\n\r+-0"


def read_fixed(
    lines: bytes, delimiter: int, decimal: int, columns: int, wanted: Sequence[int]
) -> NDArray[np.float64] | None:
    """Read lines of plain decimal numbers.

    Parameters
    ----------
    lines : bytes
        Whole lines, each ended by LF, or each by CR LF.
    delimiter, decimal : int
        The byte between fields, and the decimal sign. Neither a digit nor a sign nor each other.
    columns : int
        Fields of each line.
    wanted : sequence of int
        Places of the fields to read, from 0; the others may hold anything.

    Returns
    -------
    ndarray, float64, shape (lines, len(wanted)), Fortran order; or None
        None unless every line has so many fields and every wanted one is a number without
        exponent and blanks, with as many decimals as in the first line. Bit for bit what
        ``float`` gives.
    """
    raw = np.frombuffer(lines, np.uint8)
    ends = np.flatnonzero((raw == delimiter) | (raw == _LINE_FEED))
    if not len(ends) or len(ends) % columns or ends[-1] != len(raw) - 1:
        return None
    starts = np.empty_like(ends)
    starts[0] = 0
    starts[1:] = ends[:-1]
    starts[1:] += 1
    first, last = starts.reshape(-1, columns), ends.reshape(-1, columns)
    marks = raw[last]
    if (marks[:, -1] != _LINE_FEED).any() or (marks[:, :-1] != delimiter).any():
        return None
    returns = raw[last[:, -1] - 1] == _RETURN
    if returns.any():
        if not returns.all():
            return None
        last[:, -1] -= 1
    # So that any of the last characters of the first field is a place within the bytes.
    padded = np.concatenate([np.zeros(MOST_CHARACTERS + 1, np.uint8), raw])
    values = np.empty((len(last), len(wanted)), order="F")
    for decimals, places in _alike(lines, first[0], last[0], decimal, wanted).items():
        columns_wanted = [wanted[place] for place in places]
        # Columns of as many decimals go together: the cost is that of the calls, not the numbers.
        fields = _Fields(padded, first[:, columns_wanted].ravel(), last[:, columns_wanted].ravel())
        read = fields.numbers(decimals, decimal)
        if read is None:
            return None
        values[:, places] = read.reshape(-1, len(places))
    return values


def _alike(
    lines: bytes,
    starts: NDArray[np.intp],
    ends: NDArray[np.intp],
    decimal: int,
    wanted: Sequence[int],
) -> dict[int, list[int]]:
    """Give the wanted columns by the decimals that they have in the first line; -1 for none."""
    alike: dict[int, list[int]] = {}
    for place, column in enumerate(wanted):
        field = lines[starts[column] : ends[column]]
        at = field.find(decimal)
        decimals = len(field) - 1 - at if at >= 0 else -1
        alike.setdefault(decimals, []).append(place)
    return alike


class _Fields:
    """Fields of equally many decimals, as places in bytes with something before the first."""

    def __init__(
        self, padded: NDArray[np.uint8], starts: NDArray[np.intp], ends: NDArray[np.intp]
    ) -> None:
        self._padded = padded
        self._starts = starts
        self._ends = ends

    def _from_end(self, places: int) -> NDArray[np.uint8]:
        """Give the characters so many places before the last."""
        return self._padded[MOST_CHARACTERS - places :].take(self._ends)

    def numbers(self, decimals: int, decimal: int) -> NDArray[np.float64] | None:
        """Give the numbers; None where they are none of this form."""
        sizes = self._ends - self._starts
        if int(sizes.min()) < 1:
            return None
        first = self._padded[MOST_CHARACTERS + 1 :].take(self._starts)
        signed = bool(int(first.min()) < _ZERO)
        if signed:
            sizes = sizes - ((first == _MINUS) | (first == _PLUS))
        least, most = int(sizes.min()), int(sizes.max())
        if most > MOST_CHARACTERS or least < max(decimals + 2, 1) or decimals == 0:
            return None
        whole = self._whole(sizes, decimals, decimal)
        if whole is None:
            return None
        numbers: NDArray[np.float64] = whole / 10.0 ** max(decimals, 0)
        return np.negative(numbers, out=numbers, where=first == _MINUS) if signed else numbers

    def _whole(self, sizes: NDArray[np.intp], decimals: int, decimal: int) -> NDArray[Any] | None:
        """Give the digits as one whole number, the decimal sign left out."""
        least, most = int(sizes.min()), int(sizes.max())
        # Nine digits fit into 32 bits, which are read twice as fast.
        kind: type[np.int32 | np.int64] = np.int32 if most <= 9 else np.int64
        whole: NDArray[Any] = np.zeros(len(sizes), kind)
        largest = np.zeros(len(sizes), np.uint8)
        for place in range(most - 1, -1, -1):
            digits = self._from_end(place)
            if place == decimals:
                if (digits != decimal).any():
                    return None
                continue
            digits -= _ZERO
            if place >= least:
                digits[sizes <= place] = 0
            np.maximum(largest, digits, out=largest)
            whole *= 10
            whole += digits
        return None if int(largest.max()) > 9 else whole
