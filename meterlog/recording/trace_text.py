"""TraceText: a trace file read row by row as text, for headers, checks and messages."""

from __future__ import annotations

import csv
import re
from collections.abc import Iterator, Sequence
from itertools import islice
from pathlib import Path

from meterlog.profile.plain_file import open_plain, open_plain_text
from meterlog.recording.trace_error import trace_error

_LINE_END = re.compile(r"\r\n|\r|\n")
_QUOTES = "Quotes stand around a whole field; one inside it is written twice (RFC 4180)."
_CHUNK = 1 << 20
_LOOK = 1 << 22
"""Characters looked through for the end of a quoted field."""


def text_rows(
    path: Path, encoding: str, delimiter: str, *, strict: bool = True, names: Sequence[str] = ()
) -> Iterator[tuple[int, list[str]]]:
    """Read a file row by row.

    Parameters
    ----------
    path : Path
    encoding : str
        Bytes that are no text in it become U+FFFD.
    delimiter : str
    strict : bool
        Refuse quotes that are not as RFC 4180 wants them.
    names : sequence of str
        The columns, for messages.

    Yields
    ------
    line, cells : int, list of str
        The line on which the row ends, counted from 1 (a quoted field may hold line ends), and its
        fields. Blank lines have none.

    Raises
    ------
    TraceError
        If a row can't be taken apart; names line and column.
    """
    line = 0
    with open_plain_text(path, encoding) as stream:
        reader = csv.reader(stream, delimiter=delimiter, strict=strict)
        try:
            for cells in reader:
                line = reader.line_num
                yield line, cells
        except csv.Error as error:
            place, column, why = _odd_quote(path, encoding, delimiter, line)
            name = names[column - 1] if 0 < column <= len(names) else f"{column or ''}"
            raise trace_error(
                path,
                why or f"the row can't be read: {error}.",
                _QUOTES if why else "Give a CSV file (RFC 4180) with fields of usual length.",
                line=place,
                column=name,
            ) from error


def check_quotes(path: Path, encoding: str, delimiter: str, names: Sequence[str]) -> None:
    """Refuse a file with a quote that is never closed or ends in the middle of a field.

    Such a quote would swallow the rows up to the next one, or be read as if it were not there.

    Raises
    ------
    TraceError
        Names line and column.
    """
    with open_plain(path) as stream:
        if not any(b'"' in chunk for chunk in iter(lambda: stream.read(_CHUNK), b"")):
            return
    for _ in text_rows(path, encoding, delimiter, names=names):
        pass


def line_of_row(path: Path, encoding: str, delimiter: str, row: int) -> int:
    """Find the line of a data row, for a message; reads the file again, as only errors need it.

    Parameters
    ----------
    row : int
        Counted from 0, without the header and blank lines.

    Returns
    -------
    int
        Counted from 1: the line on which the row ends.
    """
    rows = (line for line, cells in text_rows(path, encoding, delimiter) if cells)
    return next(islice(rows, row + 1, None), 0)


def first_odd_row(path: Path, encoding: str, delimiter: str, width: int) -> tuple[int, int] | None:
    """Find the first row with another number of fields than the header.

    Returns
    -------
    (line, fields) or None
        None if all are as wide.
    """
    for line, cells in text_rows(path, encoding, delimiter):
        if cells and len(cells) != width:
            return line, len(cells)
    return None


def first_undecodable_line(path: Path, encoding: str) -> int | None:
    """Find the first line that is no text in ``encoding``; None when all are."""
    with open_plain_text(path, encoding) as stream:
        return next((k for k, text in enumerate(stream, 1) if "\ufffd" in text), None)


def _odd_quote(path: Path, encoding: str, delimiter: str, lines: int) -> tuple[int, int, str]:
    """Find what is wrong with the row after ``lines`` lines: its line, column and the reason."""
    with open_plain_text(path, encoding) as stream:
        for _ in islice(stream, lines):
            pass
        text = stream.read(_LOOK)
    field_end = re.compile(f"[{re.escape(delimiter)}\r\n]")
    at, column = 0, 1
    while at < len(text):
        if text[at] == '"':
            end = _closing(text, at)
            line = lines + 1 + len(_LINE_END.findall(text, 0, at))
            if end is None:
                return line, column, "a quote is opened and never closed."
            if end + 1 < len(text) and not field_end.match(text, end + 1):
                return line, column, "the field goes on after its closing quote."
            at = end + 1
        found = field_end.search(text, at)
        if found is None or found[0] != delimiter:
            break
        at, column = found.end(), column + 1
    return lines + 1, 0, ""


def _closing(text: str, at: int) -> int | None:
    """Give the place of the quote that closes the one at ``at``."""
    end = text.find('"', at + 1)
    while end >= 0 and text[end + 1 : end + 2] == '"':
        end = text.find('"', end + 2)
    return end if end >= 0 else None
