"""told_seconds: the time of a mark as people read it; files keep it to the nanosecond."""

from __future__ import annotations

from decimal import Decimal, InvalidOperation

_PLACES = (3, 6)
"""To the millisecond; to the microsecond where only that tells two times apart."""
_MOST = 10**9


def told_seconds(seconds: str | Decimal, beside: str | Decimal = "") -> str:
    """Give a time with as many digits as tell something: ``12.346``, ``12.3``.

    Parameters
    ----------
    seconds : str or Decimal
        In seconds; what is no time stays as it is.
    beside : str or Decimal
        Another time in the same sentence, which may not read the same unless it is the same.

    Returns
    -------
    str
    """
    time, other = _time(seconds), _time(beside)
    if time is None:
        return str(seconds)
    for places in _PLACES:
        short = _rounded(time, places)
        if other is None or other == time or _rounded(other, places) != short:
            return short
    return str(seconds)


def _time(text: str | Decimal) -> Decimal | None:
    try:
        time = Decimal(text)
    except InvalidOperation:
        return None
    # A file may say any number, which written out could fill the memory.
    return time if time.is_finite() and time.copy_abs() < _MOST else None


def _rounded(time: Decimal, places: int) -> str:
    text = f"{time:.{places}f}".rstrip("0").rstrip(".")
    return text.removeprefix("-") if text == "-0" else text
