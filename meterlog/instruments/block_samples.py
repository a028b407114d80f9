"""SampleReader: the payload of a binary block as numbers, a column a channel."""

from __future__ import annotations

from typing import Any

import numpy as np
from numpy.typing import NDArray

from meterlog.model import Flag
from meterlog.model.sentinels import OVERLOAD_FROM, mark_sentinels
from meterlog.profile import BlockLayout

Samples = tuple[NDArray[np.float64], NDArray[np.uint8]]
_FORMS = {"real32": "f4", "real64": "f8", "int16": "i2"}
_ROW = 2_048
_USUAL_POWER = 0.99 * OVERLOAD_FROM**2
"""Less, so that rounding does not matter."""


class SampleReader:
    """Reads payloads of one layout.

    Parameters
    ----------
    layout : BlockLayout
    width : int
        Number of channels.

    Attributes
    ----------
    row_bytes : int
        Length of one row.
    """

    def __init__(self, layout: BlockLayout, width: int) -> None:
        order = ">" if layout.byte_order == "normal" else "<"
        self._form: np.dtype[Any] = np.dtype(order + _FORMS[layout.number])
        self._width = width
        self.row_bytes = self._form.itemsize * width
        self._overload = _in_form(layout.overload, self._form)

    def read(self, payload: bytes | bytearray | memoryview) -> Samples:
        """Give the values and flags of a payload.

        Parameters
        ----------
        payload : bytes
            A whole number of rows.

        Returns
        -------
        tuple of ndarray, float64, and ndarray, uint8; shape (n, channels), Fortran order
            Raw units. What means overload or not-a-number is NaN and flagged.

        Source
        ------
        REAL,32 and REAL,64: IEEE 754 numbers; byte order: SCPI-1999, FORMat:BORDer (clause from
        memory). Checked by ``tests/reference/test_ieee_block_samples.py``.
        """
        raw = np.frombuffer(payload, self._form).reshape(-1, self._width)
        # A signalling not-a-number is no fault of this program.
        with np.errstate(invalid="ignore"):
            values = raw.astype(np.float64, order="F")
            beyond = [raw == number for number in self._overload]
        flags = np.zeros(raw.shape, np.uint8, order="F")
        for found in beyond:
            values[found] = np.nan
            flags[found] = int(Flag.OVERLOAD)
        if self._form.kind == "f" and not _usual(values):
            mark_sentinels(values, flags)
        return values, flags


def _usual(values: NDArray[np.float64]) -> bool:
    """Tell whether all are surely finite and below the sentinels; false for NaN.

    A sum of squares is at least the largest square, and is made in one pass. In short rows: long
    ones are shared out to threads, which wait for each other when the computer is busy.
    """
    flat = values.ravel(order="K")
    whole = len(flat) // _ROW * _ROW
    rows, rest = flat[:whole].reshape(-1, _ROW), flat[whole:]
    with np.errstate(over="ignore", invalid="ignore"):
        power = np.append(np.vecdot(rows, rows), np.vecdot(rest, rest))
    return bool(power.max() < _USUAL_POWER)


def _in_form(numbers: tuple[float, ...], form: np.dtype[Any]) -> list[np.generic]:
    """Give the numbers as the instrument sends them; leave out those it can't send."""
    if form.kind == "f":
        with np.errstate(over="ignore"):
            return list(np.array(numbers, float).astype(form))
    limits = np.iinfo(form)
    return [
        form.type(number)
        for number in numbers
        if limits.min <= number <= limits.max and number == round(number)
    ]
