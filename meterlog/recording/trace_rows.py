"""TraceRows: the rows of a trace file, lot by lot."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

import numpy as np
import pyarrow as pa
from numpy.typing import NDArray

from meterlog.recording.trace_cells import NotANumber, parse_cells
from meterlog.recording.trace_error import shown
from meterlog.recording.trace_layout import TraceLayout
from meterlog.recording.trace_lots import TraceLots
from meterlog.recording.trace_times import NotATime, TimeForm, parse_times, time_form


@dataclass(frozen=True, slots=True, eq=False)
class Rows:
    """Some rows.

    Attributes
    ----------
    t_ns : ndarray, int64, shape (n,), nanoseconds since the recording's zero
    values : ndarray, float64, shape (n, columns)
    flags : ndarray, uint8, shape (n, columns)
    """

    t_ns: NDArray[np.int64]
    values: NDArray[np.float64]
    flags: NDArray[np.uint8]


class TraceRows:
    """Reads chosen columns of a trace.

    Parameters
    ----------
    layout : TraceLayout
    time_column : str
    columns : tuple of str

    Attributes
    ----------
    form : TimeForm
        Known once the first lot has been read.

    Raises
    ------
    TraceError
        If a column is missing or stands there twice.
    """

    def __init__(self, layout: TraceLayout, time_column: str, columns: tuple[str, ...]) -> None:
        self._decimal_comma = layout.decimal_comma
        self._lots = TraceLots(layout, (time_column, *columns))
        self._begun = False
        self.form = TimeForm(is_dated=False)

    @property
    def progress(self) -> float:
        """What has been read, 0 to 1."""
        return self._lots.progress

    def read(self) -> Iterator[Rows]:
        """Give the rows in lots.

        Yields
        ------
        Rows

        Raises
        ------
        TraceError
            For the first cell or row that is wrong; names line and column.
        """
        for batch in self._lots.read():
            yield self._rows(batch)

    def _rows(self, batch: pa.RecordBatch) -> Rows:
        t_ns = self._times(batch.column(0))
        values = np.empty((len(t_ns), batch.num_columns - 1), order="F")
        flags = np.empty(values.shape, np.uint8, order="F")
        for k in range(values.shape[1]):
            try:
                cells = parse_cells(batch.column(k + 1), decimal_comma=self._decimal_comma)
            except NotANumber as error:
                raise self._lots.wrong(
                    error.row, k + 1, f"{shown(error.text)} is no number.", _REMEDY
                ) from error
            values[:, k], flags[:, k] = cells.values, cells.flags
        return Rows(t_ns, values, flags)

    def _times(self, texts: pa.StringArray) -> NDArray[np.int64]:
        try:
            if not self._begun:
                self.form = time_form(texts[0].as_py())
                self._begun = True
            t_ns = parse_times(texts, self.form, decimal_comma=self._decimal_comma)
        except NotATime as error:
            message = f"the time {shown(error.text)} {error.why}."
            raise self._lots.wrong(error.row, 0, message, "Correct or remove the line.") from error
        self._lots.check_times(t_ns, texts)
        return t_ns


_REMEDY = "Leave the cell empty where there is no reading; write OL for an overload."
