"""LineReader: reads one line of a free-running logger. It defines what is understood."""

from __future__ import annotations

import math
import re
from typing import NamedTuple

from meterlog.model import Flag
from meterlog.model.sentinels import OVERLOAD_FROM
from meterlog.profile import LineFormat

BLANKS = b" \t"
TIME = "time"


class Line(NamedTuple):
    """One line as read. A tuple, because making one costs a third of a frozen dataclass.

    Attributes
    ----------
    numbers : list of float, raw units
        One a channel, in the order of the channels, sentinels not yet told apart.
    flags : list of int, or None
        One a channel; None stands for all zero.
    time : float, units of the time column
        0 when the line has none.
    """

    numbers: list[float]
    flags: list[int] | None
    time: float


def number_pattern(decimal: str) -> bytes:
    """Give the pattern of one number, without groups.

    Possessive quantifiers never try a split twice, so that a long row of digits costs time in
    proportion to its length and no more.

    Source
    ------
    The forgiving form of NRf, IEEE 488.2-1992, 7.7.2.1 (clause from memory).
    """
    point = re.escape(decimal).encode()
    return (
        rb"[+-]?(?:[0-9]++(?:" + point + rb"[0-9]*+)?|" + point + rb"[0-9]++)(?:[Ee][+-]?[0-9]++)?"
    )


def is_plain(layout: LineFormat) -> bool:
    """Tell whether a line of numbers can be read as such, without asking what each field means.

    Not so when the delimiter could stand within a number, when a run of blanks delimits, or when
    a number is itself an overload text.
    """
    number = re.compile(number_pattern(layout.decimal))
    texts = (text.lstrip("+-").encode() for text in layout.overload_texts)
    return (
        len(layout.delimiter.encode()) == 1
        and layout.delimiter not in " 0123456789+-eE\r\n" + layout.decimal
        and not any(number.fullmatch(text) for text in texts)
    )


class LineReader:
    """Reads single lines of one format.

    A field is a number (NRf with the format's decimal sign), or, with or without a sign, one of
    the overload texts, ``nan`` or ``inf`` in any case. Blanks around it do not matter. Skipped
    columns may hold anything. A line with another number of fields is not understood.

    Parameters
    ----------
    layout : LineFormat
    names : tuple of str
        Names of the channels in the order wanted.
    """

    def __init__(self, layout: LineFormat, names: tuple[str, ...]) -> None:
        self._delimiter = layout.delimiter.encode()
        self._comma = layout.decimal == ","
        self._width = len(layout.columns)
        self._places = [layout.columns.index(name) for name in names]
        self._time = layout.columns.index(TIME) if TIME in layout.columns else None
        self._overload = frozenset(text.encode() for text in layout.overload_texts)
        self._number = re.compile(number_pattern(layout.decimal))
        wanted = [name for name in layout.columns if name in {*names, TIME}]
        self._order = [wanted.index(name) for name in names]
        self._time_group = wanted.index(TIME) if TIME in wanted else None
        self._numbers = _numbers_only(layout, wanted) if is_plain(layout) else None

    def read(self, line: bytes) -> Line | None:
        """Read one line without its end; None when it is not understood."""
        match = self._numbers.fullmatch(line) if self._numbers else None
        if match is None:
            return self._read_fields(line)
        fields = match.groups()
        numbers = [*map(float, map(self._pointed, fields) if self._comma else fields)]
        time = 0.0 if self._time_group is None else numbers[self._time_group]
        if abs(time) >= OVERLOAD_FROM:
            return None
        return Line([numbers[place] for place in self._order], None, time)

    def _pointed(self, field: bytes) -> bytes:
        return field.replace(b",", b".") if self._comma else field

    def _split(self, line: bytes) -> list[bytes]:
        if self._delimiter == b" ":
            return [field for field in re.split(rb"[ \t]+", line) if field]
        return [field.strip(BLANKS) for field in line.split(self._delimiter)]

    def _read_fields(self, line: bytes) -> Line | None:
        fields = self._split(line)
        if len(fields) != self._width:
            return None
        told = [self._field(fields[place]) for place in self._places]
        time = self._own_time(fields)
        numbers = [field[0] for field in told if field is not None]
        if time is None or len(numbers) != len(told):
            return None
        return Line(numbers, [int(field[1]) for field in told if field is not None], time)

    def _own_time(self, fields: list[bytes]) -> float | None:
        if self._time is None:
            return 0.0
        field = fields[self._time]
        if not self._number.fullmatch(field):
            return None
        time = float(self._pointed(field))
        return time if abs(time) < OVERLOAD_FROM else None

    def _field(self, field: bytes) -> tuple[float, Flag] | None:
        unsigned = field[1:] if field[:1] in {b"+", b"-"} else field
        if field in self._overload or unsigned in self._overload:
            return math.nan, Flag.OVERLOAD
        if self._number.fullmatch(field):
            return float(self._pointed(field)), Flag.OK
        word = unsigned.lower()
        if word == b"nan":
            return math.nan, Flag.NO_DATA
        return (math.nan, Flag.OVERLOAD) if word in {b"inf", b"infinity"} else None


def _numbers_only(layout: LineFormat, wanted: list[str]) -> re.Pattern[bytes]:
    """Give the pattern of a line that holds nothing but numbers: the common case, in one go."""
    around = b"[ ]*+" if layout.delimiter == "\t" else b"[ \t]*+"
    delimiter = re.escape(layout.delimiter.encode())
    number = around + b"(" + number_pattern(layout.decimal) + b")" + around
    anything = b"[^" + delimiter + b"]*+"
    parts = [number if name in wanted else anything for name in layout.columns]
    return re.compile(delimiter.join(parts))
