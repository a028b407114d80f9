"""CellText: rows as text that may stand in a table which a spreadsheet opens."""

from __future__ import annotations

import csv
import io
import math
from collections.abc import Iterable, Sequence

from meterlog.evidence.table_form import TableForm
from meterlog.recording import defused

__all__ = ["Cell", "csv_lines", "defused"]

Cell = str | int | float | None

AS_USUAL = TableForm()


def _written(cell: Cell, form: TableForm) -> str | int | None:
    if isinstance(cell, str):
        return defused(cell)
    if isinstance(cell, float):
        return form.number(cell) if math.isfinite(cell) else None
    return cell


def csv_lines(rows: Iterable[Sequence[Cell]], form: TableForm = AS_USUAL) -> bytes:
    """Give rows as CSV.

    Parameters
    ----------
    rows : iterable of sequence of str, int, float or None
        Text is defused; numbers are written so that they read back exactly; None and
        what is not finite is empty.
    form : TableForm

    Returns
    -------
    bytes
        UTF-8; CRLF ends each record.

    Source
    ------
    RFC 4180, section 2.
    """
    text = io.StringIO(newline="")
    writer = csv.writer(text, delimiter=form.delimiter, lineterminator="\r\n")
    for row in rows:
        writer.writerow([_written(cell, form) for cell in row])
    return text.getvalue().encode("utf-8", "backslashreplace")
