"""UtcText: instants as RFC 3339 text, many at a time."""

from __future__ import annotations

import numpy as np
import pyarrow as pa
from numpy.typing import NDArray

from meterlog.model import nanoseconds_of

__all__ = ["nanoseconds_of", "utc_text", "utc_texts"]

_SECOND = 1_000_000_000
_DAY = 86_400
_LENGTH = 30


def _digits(count: int, width: int) -> NDArray[np.uint8]:
    texts = "".join(f"{number:0{width}d}" for number in range(count))
    return np.frombuffer(texts.encode(), np.uint8).reshape(count, width)


_TWO = _digits(60, 2)
_THREE = _digits(1000, 3)


def utc_texts(since_epoch_ns: NDArray[np.int64]) -> pa.StringArray:
    """Give instants as text such as ``2026-05-04T10:20:30.123456789Z``.

    Parameters
    ----------
    since_epoch_ns : ndarray, int64, shape (n,), nanoseconds since 1970-01-01T00:00:00Z

    Returns
    -------
    pyarrow.StringArray, length n
        Nine digits of fraction each, so that no reading's time is rounded.

    Source
    ------
    RFC 3339 section 5.6. Checked in ``tests/unit/evidence/test_utc_text.py`` against Python's
    ``datetime.fromisoformat``.
    """
    count = len(since_epoch_ns)
    seconds, fraction = np.divmod(since_epoch_ns, _SECOND)
    days, clock = np.divmod(seconds, _DAY)
    text = np.empty((count, _LENGTH), np.uint8)
    text[:, :10] = _dates(days)
    text[:, [10, 13, 16, 19, 29]] = np.frombuffer(b"T::.Z", np.uint8)
    hours, rest = np.divmod(clock.astype(np.int32), 3600)
    minutes, rest = np.divmod(rest, 60)
    for place, part in ((11, hours), (14, minutes), (17, rest)):
        text[:, place : place + 2] = _TWO[part]
    micro, nano = np.divmod(fraction.astype(np.int32), 1000)
    milli, micro = np.divmod(micro, 1000)
    for place, part in ((20, milli), (23, micro), (26, nano)):
        text[:, place : place + 3] = _THREE[part]
    ends = np.arange(0, (count + 1) * _LENGTH, _LENGTH, dtype=np.int32)
    return pa.Array.from_buffers(pa.string(), count, [None, pa.py_buffer(ends), pa.py_buffer(text)])


def _dates(days: NDArray[np.int64]) -> NDArray[np.uint8]:
    # Few different days stand in one lot of readings.
    which, index = np.unique(days, return_inverse=True)
    texts = np.datetime_as_string(which.astype("datetime64[D]"))
    letters = np.frombuffer("".join(texts.tolist()).encode(), np.uint8).reshape(-1, 10)
    return letters[index]


def utc_text(since_epoch_ns: int) -> str:
    """Give one instant as text; see :func:`utc_texts`."""
    text: str = utc_texts(np.array([since_epoch_ns], np.int64))[0].as_py()
    return text
