"""BatchReader: reads many lines at once, and only where it can't differ from LineReader."""

from __future__ import annotations

import numpy as np
import pyarrow as pa
import pyarrow.csv as pa_csv
from numpy.typing import NDArray

from meterlog.instruments.arrow_numbers import reals_of
from meterlog.instruments.ascii_fields import TIME, is_plain
from meterlog.instruments.fixed_fields import read_fixed
from meterlog.instruments.readings import Readings
from meterlog.model.sentinels import OVERLOAD_FROM
from meterlog.profile import LineFormat

_BYTE_ORDER_MARK = b"\xef\xbb\xbf"
_MOST_BY_ARRAY = 131_072


class BatchReader:
    """Reads a batch of whole lines by :func:`read_fixed`, or else by Arrow's CSV reader.

    The first is the faster on what a port hands over at a time, and enough for nearly every meter;
    it takes nothing but digits with a fixed count of decimals.

    Arrow understands more than a number (``nan``, ``inf``, a byte order mark) and knows neither
    comments nor overload. So a batch that holds, or could hold, anything but plain numbers is
    given back unread, for :class:`meterlog.instruments.ascii_fields.LineReader` to read line by
    line: one grammar, three speeds.

    Parameters
    ----------
    layout : LineFormat
    names : tuple of str
        Names of the channels in the order wanted.
    """

    def __init__(self, layout: LineFormat, names: tuple[str, ...]) -> None:
        self.usable = is_plain(layout)
        self._comment = layout.comment.encode()
        self._unit = layout.time_unit_s
        self._timed = TIME in layout.columns
        self._names = names
        if self.usable:
            self._set_options(layout)

    def _set_options(self, layout: LineFormat) -> None:
        wanted = {*self._names, TIME}
        columns = [
            name if name in wanted else f"\0{place}" for place, name in enumerate(layout.columns)
        ]
        self._parse = pa_csv.ParseOptions(
            delimiter=layout.delimiter, quote_char=False, double_quote=False, escape_char=False
        )
        included = [name for name in columns if name in wanted]
        self._convert = pa_csv.ConvertOptions(
            column_types=dict.fromkeys(included, pa.float64()),
            include_columns=included,
            null_values=[],
            decimal_point=layout.decimal,
        )
        self._columns = columns
        self._delimiter, self._decimal = layout.delimiter, layout.decimal
        # The channels in their order, then the time.
        order = [*self._names, TIME] if self._timed else self._names
        self._wanted = [columns.index(name) for name in order]

    def read(self, lines: bytes) -> Readings | None:
        """Read whole lines.

        Parameters
        ----------
        lines : bytes
            Ends with a line end.

        Returns
        -------
        Readings or None
            None when the lines are not all plain numbers; then nothing has been read.
        """
        if not self.usable or (self._comment and self._comment in lines):
            return None
        if lines.startswith(_BYTE_ORDER_MARK):
            return None
        fixed = self._fixed(lines)
        if fixed is not None:
            return self._split(fixed)
        try:
            table = pa_csv.read_csv(
                pa.py_buffer(lines),
                read_options=pa_csv.ReadOptions(
                    use_threads=False, column_names=self._columns, block_size=len(lines) + 1
                ),
                parse_options=self._parse,
                convert_options=self._convert,
            )
        except pa.ArrowInvalid:
            return None
        return self._readings(table)

    def _fixed(self, lines: bytes) -> NDArray[np.float64] | None:
        """Read by array what a port hands over at a time; of more, Arrow makes more."""
        if len(lines) > _MOST_BY_ARRAY:
            return None
        return read_fixed(
            lines, ord(self._delimiter), ord(self._decimal), len(self._columns), self._wanted
        )

    def _split(self, fixed: NDArray[np.float64]) -> Readings:
        width = len(self._names)
        values = fixed[:, :width]
        time = fixed[:, width] * self._unit if self._timed else None
        return Readings(values, np.zeros(values.shape, np.uint8, order="F"), time)

    def _readings(self, table: pa.Table) -> Readings | None:
        shape = (table.num_rows, len(self._names))
        values = np.empty(shape, order="F")
        for place, name in enumerate(self._names):
            values[:, place] = reals_of(table[name])
            if not _usual(values[:, place]):
                return None
        time = None
        if self._timed:
            time = reals_of(table[TIME])
            if not _usual(time):
                return None
            time = time * self._unit
        return Readings(values, np.zeros(shape, np.uint8, order="F"), time)


def _usual(column: np.ndarray[tuple[int, ...], np.dtype[np.float64]]) -> bool:
    """Tell whether all are finite and below the sentinels; false for NaN."""
    if not len(column):
        return True
    return bool(column.max() < OVERLOAD_FROM and column.min() > -OVERLOAD_FROM)
