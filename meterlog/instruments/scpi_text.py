"""What a SCPI instrument says in words and numbers."""

from __future__ import annotations

import re

from meterlog.instruments.ascii_fields import number_pattern
from meterlog.instruments.line_speed import FOREIGN_SHARE, foreign_share
from meterlog.model import Flag, Identity
from meterlog.model.sentinels import tell_number

_NUMBER = re.compile(number_pattern(".").decode())
_ENTRY = re.compile(r"[+-]?[0-9]{1,6}\s*,\s*([\"']).*\1\s*")
_ERROR = re.compile(r"([+-]?[0-9]{1,6})\s*(?:,\s*(.*))?", re.DOTALL)


def parse_number(text: str) -> tuple[float, Flag]:
    """Give a numeric answer, with what is to be known about it.

    Parameters
    ----------
    text : str
        NR1, NR2, NR3 or the forgiving form NRf; ``NAN`` and ``INF`` in letters too. Blanks around
        it do not matter.

    Returns
    -------
    tuple of float and Flag
        The number with ``OK``, or NaN with ``OVERLOAD`` (±9.9E37 and beyond) or ``NO_DATA``
        (9.91E37).

    Raises
    ------
    ValueError
        If the text is no number.

    Source
    ------
    IEEE 488.2-1992, 8.7.2 to 8.7.4; SCPI-1999 volume 1, 7.2.1.4 and 7.2.1.5 (clauses from
    memory). Checked by ``tests/reference/test_scpi_numbers.py``.
    """
    bare = text.strip(" \t\r\n")
    if not _NUMBER.fullmatch(bare) and bare.lower().lstrip("+-") not in {"nan", "inf", "infinity"}:
        raise ValueError(f"{text[:60]!r} is no number")
    return tell_number(float(bare))


def parse_identity(text: str) -> Identity:
    """Give the four fields of an answer to ``*IDN?``.

    Fewer fields leave the rest empty. More than four are put into the last, commas and all: the
    firmware is where makers write freely. A serial number or firmware of ``0`` means none.

    Parameters
    ----------
    text : str

    Returns
    -------
    Identity

    Source
    ------
    IEEE 488.2-1992, 10.14 (clause from memory).
    """
    printable = "".join(sign for sign in text if sign.isprintable())
    fields = [field.strip() for field in printable.split(",", 3)]
    fields += [""] * (4 - len(fields))
    serial, firmware = ("" if field == "0" else field for field in fields[2:])
    return Identity(fields[0], fields[1], serial, firmware)


def parse_error(text: str) -> tuple[int, str]:
    """Give number and text of one entry of the error queue.

    Parameters
    ----------
    text : str
        Such as ``-113,"Undefined header"``. The text may be missing or not quoted.

    Returns
    -------
    tuple of int and str
        0 when the queue was empty; the text without its quotes.

    Raises
    ------
    ValueError
        If there is no number at the front.

    Source
    ------
    SCPI-1999, volume 2, 21.8 (clause from memory). A quote within the text is doubled
    (IEEE 488.2-1992, 8.7.8, from memory).
    """
    match = _ERROR.fullmatch(text.strip(" \t\r\n"))
    if match is None:
        raise ValueError(f"{text[:60]!r} is no entry of an error queue")
    said = (match.group(2) or "").strip()
    if len(said) >= 2 and said[0] == said[-1] and said[0] in "\"'":
        said = said[1:-1].replace(said[0] * 2, said[0])
    return int(match.group(1)), said


def is_left_over(text: str) -> bool:
    """Tell whether a line is no answer to ``*IDN?``: numbers, an error's entry, or no text.

    Parameters
    ----------
    text : str
        A line without its end.
    """
    if _ENTRY.fullmatch(text) or foreign_share(text.encode("latin-1")) >= FOREIGN_SHARE:
        return True
    try:
        for field in text.split(","):
            parse_number(field)
    except ValueError:
        return False
    return True
