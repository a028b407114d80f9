"""TraceCells: the text cells of a column as numbers and flags."""

from __future__ import annotations

import re
from dataclasses import dataclass

import numpy as np
import pyarrow as pa
import pyarrow.compute as pc
from numpy.typing import NDArray

from meterlog.instruments.arrow_numbers import reals_of, truths_of
from meterlog.model import Flag
from meterlog.model.sentinels import mark_sentinels
from meterlog.recording.arrow_arrays import text_array

OVERLOAD_TEXTS = ("ol", "+ol", "-ol", "0l", "ovld", "overload", "inf", "+inf", "-inf", "infinity")
"""Lower-case cell texts that mean "beyond the range": what displays and programs write for it."""
NO_DATA_TEXTS = ("", "nan", "+nan", "-nan", "null", "none", "n/a", "---", "----")

NUMBER = re.compile(r"[+-]?(?:\d+(?:\.\d*)?|\.\d+)(?:[eE][+-]?\d+)?", re.ASCII)
"""What is a number in a cell, apart from the texts above. Each digit can be read in one way only: a
cell of a hundred thousand of them, and then a letter, would else be tried for minutes."""


class NotANumber(Exception):
    """A cell is none; ``row`` counts from 0 within the column, ``text`` is what stands there."""

    def __init__(self, row: int, text: str) -> None:
        super().__init__(text)
        self.row = row
        self.text = text


@dataclass(frozen=True, slots=True, eq=False)
class Cells:
    """A column.

    Attributes
    ----------
    values : ndarray, float64, shape (n,)
        NaN where a flag says that there is no value.
    flags : ndarray, uint8, shape (n,)
        :class:`~meterlog.model.Flag` bits.
    """

    values: NDArray[np.float64]
    flags: NDArray[np.uint8]


def parse_cells(texts: pa.StringArray, *, decimal_comma: bool) -> Cells:
    """Read a column of readings.

    Parameters
    ----------
    texts : pyarrow.Array of string, length n
    decimal_comma : bool
        A comma stands for the decimal point.

    Returns
    -------
    Cells
        Empty cells, ``nan`` and 9.91E37 are NO_DATA; ``OL``, ``inf`` and 9.9E37 are OVERLOAD, as
        :func:`meterlog.model.sentinels.tell_number` has it.

    Raises
    ------
    NotANumber
        For the first cell that is neither a number nor one of those texts.
    """
    texts = pc.utf8_trim_whitespace(texts)
    values = _quick(texts)
    if values is None:
        values, flags = _slow(texts, decimal_comma=decimal_comma)
    else:
        flags = np.zeros(len(values), np.uint8)
    mark_sentinels(values, flags)
    return Cells(values, flags)


def _quick(texts: pa.StringArray) -> NDArray[np.float64] | None:
    """Read plain numbers at full speed; None if any cell is something else."""
    try:
        return np.array(reals_of(pc.cast(texts, pa.float64())))
    except pa.ArrowInvalid:
        return None


def _slow(
    texts: pa.StringArray, *, decimal_comma: bool
) -> tuple[NDArray[np.float64], NDArray[np.uint8]]:
    words = pc.utf8_lower(texts)
    over = pc.is_in(words, text_array(OVERLOAD_TEXTS))
    none = pc.is_in(words, text_array(NO_DATA_TEXTS))
    plain = pc.replace_substring(texts, ",", ".") if decimal_comma else texts
    plain = pc.replace_substring_regex(plain, r"^\+", "")
    plain = pc.if_else(pc.or_(over, none), text_array(["nan"])[0], plain)
    values = _quick(plain)
    if values is None:
        raise _first_odd(plain, texts)
    flags = np.where(truths_of(over), Flag.OVERLOAD, Flag.OK).astype(np.uint8)
    flags[truths_of(none)] = Flag.NO_DATA
    return values, flags


def _first_odd(plain: pa.StringArray, texts: pa.StringArray) -> NotANumber:
    for row, text in enumerate(plain.to_pylist()):
        if text != "nan" and not NUMBER.fullmatch(text):
            return NotANumber(row, texts[row].as_py())
    return NotANumber(0, texts[0].as_py())
