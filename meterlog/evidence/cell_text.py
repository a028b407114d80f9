"""CellText: text that may stand in a table which a spreadsheet opens."""

from __future__ import annotations

import csv
import io
import math
from collections.abc import Iterable, Sequence

_RUN_BY_SPREADSHEETS = ("=", "+", "-", "@", "\t", "\r")

Cell = str | int | float | None


def defused(text: str) -> str:
    """Give text that no spreadsheet runs as a formula.

    Parameters
    ----------
    text : str

    Returns
    -------
    str
        With an apostrophe in front where the first character would start a formula.

    Source
    ------
    OWASP, "CSV Injection": cells that begin with ``=``, ``+``, ``-``, ``@``, tab or carriage
    return.
    """
    return f"'{text}" if text.startswith(_RUN_BY_SPREADSHEETS) else text


def _written(cell: Cell) -> Cell:
    if isinstance(cell, str):
        return defused(cell)
    return None if isinstance(cell, float) and not math.isfinite(cell) else cell


def csv_lines(rows: Iterable[Sequence[Cell]]) -> bytes:
    """Give rows as CSV.

    Parameters
    ----------
    rows : iterable of sequence of str, int, float or None
        Text is defused; numbers are written so that they read back exactly; None and
        what is not finite is empty.

    Returns
    -------
    bytes
        UTF-8; CRLF ends each record.

    Source
    ------
    RFC 4180, section 2.
    """
    text = io.StringIO(newline="")
    writer = csv.writer(text, lineterminator="\r\n")
    for row in rows:
        writer.writerow([_written(cell) for cell in row])
    return text.getvalue().encode("utf-8", "backslashreplace")
