"""TraceLots: chosen columns of a file as text, lot by lot: a long one needs little memory."""

from __future__ import annotations

from collections.abc import Iterator
from typing import BinaryIO

import numpy as np
import pyarrow as pa
import pyarrow.csv
from numpy.typing import NDArray

from meterlog.model.errors import TraceError
from meterlog.profile.plain_file import open_plain
from meterlog.recording.trace_error import shown, trace_error
from meterlog.recording.trace_layout import TraceLayout
from meterlog.recording.trace_text import first_odd_row, first_undecodable_line, line_of_row

_LOT_BYTES = 1 << 22
"""Of a lot, and so of the longest line at least. Arrow reads up to 32 of them ahead: with larger
ones, large files take half a gigabyte of memory more."""


class TraceLots:
    """Reads chosen columns as text, the column of time first, and says where something is wrong.

    Parameters
    ----------
    layout : TraceLayout
    names : tuple of str

    Attributes
    ----------
    progress : float
        0 to 1.

    Raises
    ------
    TraceError
        If a column is missing or stands there twice.
    """

    def __init__(self, layout: TraceLayout, names: tuple[str, ...]) -> None:
        self._layout = layout
        self._names = names
        self._places = [layout.column(name) for name in names]
        self._row = 0
        self._last_ns: int | None = None
        self.progress = 0.0

    def read(self) -> Iterator[pa.RecordBatch]:
        """Give the rows in lots, the columns in the order of their names.

        Raises
        ------
        TraceError
            For the first row that can't be read; names the line.
        """
        total = max(1, self._layout.path.stat().st_size)
        with open_plain(self._layout.path) as stream:
            try:
                for batch in self._open(stream):
                    if batch.num_rows:
                        yield batch
                        self._row += batch.num_rows
                        self.progress = stream.tell() / total if not stream.closed else 1.0
            except (pa.ArrowException, UnicodeError) as error:
                raise self._torn_row(error) from error

    def check_times(self, t_ns: NDArray[np.int64], texts: pa.StringArray) -> None:
        """Refuse times of the lot at hand that run back or lie before zero.

        Raises
        ------
        TraceError
            Names line and column.
        """
        before = t_ns[0] if self._last_ns is None else self._last_ns
        back = np.flatnonzero(np.diff(t_ns, prepend=before) < 0)
        if len(back):
            row = int(back[0])
            message = f"time goes backwards: {shown(texts[row].as_py())} after a later time."
            raise self.wrong(row, 0, message, "Sort the rows by time, or split the file there.")
        if t_ns[0] < 0:
            raise self.wrong(
                0,
                0,
                f"the time {shown(texts[0].as_py())} lies before zero.",
                "Shift the time column so that it begins at 0 or later, and the events with it.",
            )
        self._last_ns = int(t_ns[-1])

    def wrong(self, row: int, name: int, message: str, remedy: str) -> TraceError:
        """Give an error about row ``row`` of the lot at hand, in the ``name``-th column."""
        layout = self._layout
        line = line_of_row(layout.path, layout.encoding, layout.delimiter, self._row + row)
        return trace_error(layout.path, message, remedy, line=line, column=self._names[name])

    def _open(self, stream: BinaryIO) -> pa.RecordBatchReader:
        texts = [f"c{place}" for place in range(len(self._layout.header))]
        used = [texts[place] for place in self._places]
        encoding = "utf8" if self._layout.encoding == "utf-8-sig" else self._layout.encoding
        return pa.csv.open_csv(
            stream,
            read_options=pa.csv.ReadOptions(
                column_names=texts,
                skip_rows=self._layout.header_end,
                # A lot holds the heading whole, whatever is above it, and lines as long.
                block_size=max(_LOT_BYTES, 4 * sum(map(len, self._layout.header))),
                encoding=encoding,
                use_threads=False,
            ),
            parse_options=pa.csv.ParseOptions(
                delimiter=self._layout.delimiter, newlines_in_values=True
            ),
            convert_options=pa.csv.ConvertOptions(
                column_types=dict.fromkeys(used, pa.string()),
                include_columns=used,
                strings_can_be_null=False,
            ),
        )

    def _torn_row(self, error: Exception) -> TraceError:
        layout = self._layout
        odd = first_odd_row(layout.path, layout.encoding, layout.delimiter, len(layout.header))
        if odd is None:
            return self._unreadable(error)
        line, fields = odd
        return trace_error(
            layout.path,
            f"has {fields} fields, the header has {len(layout.header)}.",
            "Correct the line; a field that holds the delimiter needs double quotes.",
            line=line,
        )

    def _unreadable(self, error: Exception) -> TraceError:
        path = self._layout.path
        line = first_undecodable_line(path, self._layout.encoding)
        if line is not None:
            return trace_error(
                path,
                "holds bytes that are no text.",
                "Save the file as UTF-8.",
                line=line,
            )
        if "block" in str(error):
            return trace_error(
                path, "has a line of more than 4 MB.", "Give a file of lines (RFC 4180)."
            )
        return trace_error(path, f"can't be read: {error}.", "Give a CSV file (RFC 4180).")
