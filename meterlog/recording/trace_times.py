"""TraceTimes: a column of times, as seconds or as RFC 3339 date and time."""

from __future__ import annotations

import re
from dataclasses import dataclass
from datetime import datetime, timedelta

import numpy as np
import pyarrow as pa
import pyarrow.compute as pc
from numpy.typing import NDArray

from meterlog.instruments.arrow_numbers import truths_of, wholes_of
from meterlog.recording.arrow_arrays import text_array
from meterlog.recording.trace_cells import NotANumber, parse_cells

_RFC3339 = re.compile(r"(\d{4}-\d\d-\d\d)[Tt ](\d\d:\d\d:\d\d)(\.\d+)?([Zz]|[+-]\d\d:\d\d)")
_DATE = re.compile(r"\d{4}-\d\d-\d\d")
_LATEST_S = 9.2e9
"""Beyond this many seconds nanoseconds no longer fit into 64 bits."""


class NotATime(Exception):
    """A cell is no time; ``row`` counts from 0, ``why`` says what is wrong with it."""

    def __init__(self, row: int, text: str, why: str) -> None:
        super().__init__(why)
        self.row = row
        self.text = text
        self.why = why


@dataclass(frozen=True, slots=True)
class TimeForm:
    """How the times of one file are written.

    Attributes
    ----------
    is_dated : bool
        True for RFC 3339, False for seconds.
    zero_ns : int, nanoseconds
        What is subtracted: the first row's instant since 1970 for dates, 0 for seconds.
    offset_s : int, seconds
        UTC offset of the first row.
    """

    is_dated: bool
    zero_ns: int = 0
    offset_s: int = 0


def time_form(first: str) -> TimeForm:
    """Tell from the first time cell how times are written.

    Raises
    ------
    NotATime
        If it is a date and time, but not RFC 3339.
    """
    first = first.strip()
    if not _DATE.match(first):
        return TimeForm(is_dated=False)
    column = text_array([first])
    zero_ns = int(_instants(column)[0])
    offset = first[-6:] if first[-1] not in "Zz" else "+00:00"
    sign = -1 if offset[0] == "-" else 1
    offset_s = sign * (int(offset[1:3]) * 3600 + int(offset[4:6]) * 60)
    return TimeForm(is_dated=True, zero_ns=zero_ns, offset_s=offset_s)


def parse_times(texts: pa.StringArray, form: TimeForm, *, decimal_comma: bool) -> NDArray[np.int64]:
    """Read a column of times.

    Parameters
    ----------
    texts : pyarrow.Array of string, length n
    form : TimeForm
    decimal_comma : bool

    Returns
    -------
    ndarray, int64, shape (n,), nanoseconds since the recording's zero
        May fall and may be negative; the caller judges that.

    Raises
    ------
    NotATime
        For the first cell that is none.

    Source
    ------
    RFC 3339 section 5.6. Leap seconds (``:60``) are taken as the second that follows, as POSIX
    time does; fractions beyond nanoseconds are cut off.
    """
    if form.is_dated:
        return _instants(pc.utf8_trim_whitespace(texts)) - form.zero_ns
    try:
        cells = parse_cells(texts, decimal_comma=decimal_comma)
    except NotANumber as error:
        raise NotATime(error.row, error.text, _seconds_wanted(error.text)) from error
    seconds = cells.values
    odd = np.flatnonzero(~(np.abs(seconds) < _LATEST_S))
    if len(odd):
        row = int(odd[0])
        text = texts[row].as_py()
        raise NotATime(row, text, _seconds_wanted(text))
    return np.rint(seconds * 1e9).astype(np.int64)


def _seconds_wanted(text: str) -> str:
    if _DATE.match(text.strip()):
        return "is a date and time, but the first row has seconds"
    return "is empty" if not text.strip() else "is no number of seconds"


def _instants(texts: pa.StringArray) -> NDArray[np.int64]:
    plain = pc.utf8_upper(texts)
    plain = pc.replace_substring_regex(plain, r"(\.\d{9})\d+", r"\1")
    leap = truths_of(pc.match_substring_regex(plain, r"^.{17}60"))
    if leap.any():
        # RE2 takes one digit for the group: this is group 1, then 59.
        plain = pc.replace_substring_regex(plain, r"^(.{17})60", r"\159")
    try:
        stamps = pc.cast(plain, pa.timestamp("ns", "UTC"))
    except pa.ArrowInvalid as error:
        raise _first_odd(texts) from error
    found = np.array(wholes_of(pc.cast(stamps, pa.int64())))
    forms = pc.match_substring_regex(texts, f"^{_RFC3339.pattern}$")
    if not pc.all(forms).as_py():
        raise _first_odd(texts)
    found[leap] += 1_000_000_000
    return found


def _first_odd(texts: pa.StringArray) -> NotATime:
    for row, text in enumerate(texts.to_pylist()):
        why = _wrong_with(text)
        if why:
            return NotATime(row, text, why)
    return NotATime(0, texts[0].as_py(), "can't be read as a time")


def _wrong_with(text: str) -> str:
    if not text:
        return "is empty"
    match = _RFC3339.fullmatch(text)
    if match is None:
        if re.fullmatch(r"\d{4}-\d\d-\d\d[Tt ]\d\d:\d\d:\d\d(\.\d+)?", text):
            return "has no UTC offset: add Z or, for example, +01:00"
        return "is no date and time as 2026-05-04T10:20:30.5Z (RFC 3339)"
    try:
        clock = match[2].replace(":60", ":59") if match[2].endswith(":60") else match[2]
        instant = datetime.fromisoformat(f"{match[1]}T{clock}{match[4].upper()}")
    except ValueError as error:
        # Python's words about an offset are about its own types.
        return "does not exist" + ("" if "offset" in str(error) else f": {error}")
    if not timedelta(0) <= instant - datetime.fromisoformat("1677-09-22T00:00:00Z"):
        return "lies before 1677-09-22"
    return "" if instant.year < 2262 else "lies after 2261"
