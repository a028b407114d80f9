"""Errors about a trace, always with file, line and column."""

from __future__ import annotations

import csv
import difflib
import itertools
from collections.abc import Sequence
from pathlib import Path

from meterlog.model.errors import TraceError


def trace_error(
    path: Path, message: str, remedy: str = "", *, line: int | None = None, column: str = ""
) -> TraceError:
    """Give an error about a place in a trace or events file.

    Parameters
    ----------
    path : Path
    message, remedy : str
    line : int or None
        Counted from 1.
    column : str
        Empty for none.

    Returns
    -------
    TraceError
    """
    place = "" if line is None else f"line {line}, "
    place += f"column {column!r}, " if column else ""
    subject = f"{path}, {place}".rstrip(", ")
    return TraceError(message, subject=subject, remedy=remedy)


def suggestion(word: str, known: Sequence[str]) -> str:
    """Give "Did you mean ...?" and the known words, for a remedy."""
    known = [str(name) for name in known]
    near = difflib.get_close_matches(word.lower(), [name.lower() for name in known], 1)
    first = next((name for name in known if near and name.lower() == near[0]), "")
    hint = f"Did you mean {first!r}? " if first else ""
    return f"{hint}There are: {', '.join(known) or 'none'}."


def line_of_row(path: Path, encoding: str, delimiter: str, row: int) -> int:
    """Find the line of a data row, for a message; reads the file again, as only errors need it.

    Parameters
    ----------
    row : int
        Counted from 0, without the header and blank lines.

    Returns
    -------
    int
        Counted from 1: the line on which the row ends (a quoted field may hold line ends).
    """
    with path.open(encoding=encoding, newline="", errors="replace") as stream:
        reader = csv.reader(stream, delimiter=delimiter)
        rows = (reader.line_num for cells in reader if cells)
        return next(itertools.islice(rows, row + 1, None), 0)


def first_odd_row(path: Path, encoding: str, delimiter: str, width: int) -> tuple[int, int] | None:
    """Find the first row with another number of fields than the header.

    Returns
    -------
    (line, fields) or None
        None if all are as wide.
    """
    with path.open(encoding=encoding, newline="", errors="replace") as stream:
        reader = csv.reader(stream, delimiter=delimiter)
        for cells in reader:
            if cells and len(cells) != width:
                return reader.line_num, len(cells)
    return None
