"""TraceLayout: what a trace file's bytes and first line say about the rest."""

from __future__ import annotations

import csv
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import TextIO

from meterlog.recording.trace_error import suggestion, trace_error

DELIMITERS = (",", ";", "\t")


@dataclass(frozen=True, slots=True)
class TraceLayout:
    """How to read a trace.

    Attributes
    ----------
    path : Path
    encoding : str
    delimiter : str
    header : tuple of str
        Column names as they stand, blanks around them removed.
    header_end : int
        The line on which the header ends, counted from 1.
    """

    path: Path
    encoding: str
    delimiter: str
    header: tuple[str, ...]
    header_end: int

    @property
    def decimal_comma(self) -> bool:
        """True where a comma can be a decimal mark, since it is no delimiter."""
        return self.delimiter != ","

    def column(self, name: str) -> int:
        """Give the place of a column.

        Raises
        ------
        TraceError
            If there is none of this name, or more than one.
        """
        count = self.header.count(name)
        if count == 0:
            raise trace_error(
                self.path, f"has no column {name!r}.", suggestion(name, self.header), line=1
            )
        if count > 1:
            raise trace_error(
                self.path,
                f"{count} columns have this name.",
                "Rename them in the file so that each name stands once.",
                line=1,
                column=name,
            )
        return self.header.index(name)


def trace_layout(path: Path, wanted: Sequence[str]) -> TraceLayout:
    """Look at the start of a file of comma-, semicolon- or tab-separated values.

    Parameters
    ----------
    path : Path
    wanted : sequence of str
        Columns that will be asked for: the delimiter that shows most of them is the right one.

    Returns
    -------
    TraceLayout

    Raises
    ------
    TraceError
        If the file is not there, can't be read, or is empty.

    Source
    ------
    RFC 4180 for the quoting; semicolon and tab as delimiter are common practice, no source.
    """
    try:
        with path.open("rb") as stream:
            start = stream.read(1 << 16)
        encoding = _encoding(path, start)
        with path.open(encoding=encoding, newline="") as stream:
            found = [_header(stream, delimiter) for delimiter in DELIMITERS]
    except OSError as error:
        raise trace_error(path, f"can't be read: {error.strerror}.", "Check the name.") from error
    layouts = [
        TraceLayout(path, encoding, delimiter, header, end)
        for delimiter, (header, end) in zip(DELIMITERS, found, strict=True)
    ]
    best = max(
        layouts,
        key=lambda layout: (len(set(wanted) & set(layout.header)), len(layout.header)),
    )
    if not best.header:
        raise trace_error(path, "is empty.", "Give a file with a header line and readings.")
    return best


def _encoding(path: Path, start: bytes) -> str:
    if start.startswith((b"\xff\xfe", b"\xfe\xff")):
        return "utf-16"
    if b"\0" in start:
        raise trace_error(
            path, "is no text file.", "Export the readings as CSV (comma-separated values)."
        )
    try:
        start[: start.rfind(b"\n") + 1 or len(start)].decode("utf-8")
    except UnicodeDecodeError:
        # Windows programs in Western Europe; only names can differ, digits are the same.
        return "cp1252"
    return "utf-8-sig"


def _header(stream: TextIO, delimiter: str) -> tuple[tuple[str, ...], int]:
    """Give the names in the first line that holds anything, and the line it ends on."""
    stream.seek(0)
    reader = csv.reader(stream, delimiter=delimiter)
    for cells in reader:
        if any(cell.strip() for cell in cells):
            return tuple(cell.strip() for cell in cells), reader.line_num
    return (), 0
