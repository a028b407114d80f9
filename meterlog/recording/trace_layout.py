"""TraceLayout: what a trace file's bytes and first line say about the rest."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path

from meterlog.model.errors import TraceError
from meterlog.profile.plain_file import open_plain
from meterlog.recording.trace_error import shown, suggestion, trace_error
from meterlog.recording.trace_text import check_quotes, text_rows

DELIMITERS = (",", ";", "\t")
_NOT_CP1252 = frozenset(b"\x81\x8d\x8f\x90\x9d")


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
                self.path, f"has no column {shown(name)}.", suggestion(name, self.header), line=1
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
        _check_kind(path)
        with open_plain(path) as stream:
            start = stream.read(1 << 16)
        encoding = _encoding(path, start)
        layouts = [_layout(path, encoding, delimiter) for delimiter in DELIMITERS]
        best = max(
            layouts,
            key=lambda layout: (len(set(wanted) & set(layout.header)), len(layout.header)),
        )
        check_quotes(path, encoding, best.delimiter, best.header)
    except OSError as error:
        raise trace_error(path, f"can't be read: {error.strerror}.", "Check the name.") from error
    if not best.header:
        raise trace_error(path, "is empty.", "Give a file with a header line and readings.")
    return best


def _check_kind(path: Path) -> None:
    if path.is_dir():
        raise trace_error(path, "is a folder.", "Give the CSV file itself.")
    if path.exists() and not path.is_file():
        # It is read more than once, which a pipe does not allow.
        raise trace_error(path, "is no regular file.", "Save it to a file first.")


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
        return "cp1252" if not set(start) & _NOT_CP1252 else "latin-1"
    return "utf-8-sig"


def _layout(path: Path, encoding: str, delimiter: str) -> TraceLayout:
    """Take the first line that holds anything as the header."""
    try:
        for line, cells in text_rows(path, encoding, delimiter, strict=False):
            if any(cell.strip() for cell in cells):
                return TraceLayout(
                    path, encoding, delimiter, tuple(cell.strip() for cell in cells), line
                )
    except TraceError:
        # Perhaps not by this delimiter; if by none, the check of the quotes says what is wrong.
        pass
    return TraceLayout(path, encoding, delimiter, (), 0)
