"""KeptLine: one channel of a long recording, drawn from its pyramid; nothing of it in memory."""

from __future__ import annotations

from collections import OrderedDict
from collections.abc import Mapping

import numpy as np
from numpy.typing import NDArray

from meterlog.evidence.kept_columns import Extremes, KeptColumns
from meterlog.evidence.pixel_columns import Drawn, PixelColumns, column_edges, drawn_columns
from meterlog.evidence.trace_line import TraceLine, with_gaps
from meterlog.model import Channel
from meterlog.recording import Pyramid, PyramidUnusable

_ROWS_A_COLUMN = 160
"""Up to here reading all rows of a stretch is as fast as asking the pyramid."""
_KEPT = 4
"""Stretches that are kept: a picture asks for the same one once for each of its lines."""

Lines = Mapping[int, Drawn]


class KeptMeter:
    """One instrument's lines, all drawn from one pyramid.

    Parameters
    ----------
    pyramid : Pyramid

    Attributes
    ----------
    silent_ns : dict of int to int, nanoseconds
        What a silence is longer than, for each channel that is drawn.
    trouble : str
        Why nothing more can be drawn; empty while all is well.
    is_unusable : bool
        True if the pyramid is to blame, or readings that are not as they were: made anew, it helps.
    """

    def __init__(self, pyramid: Pyramid) -> None:
        self.pyramid = pyramid
        self.trouble = ""
        self.is_unusable = False
        self.silent_ns: dict[int, int] = {}
        self.last_ns, self.last = pyramid.last_row()
        self.low, self.high = pyramid.extremes_of_all()
        self._kept: OrderedDict[tuple[int, int, int], Lines] = OrderedDict()
        self._columns = KeptColumns()
        self._counted: OrderedDict[int, int] = OrderedDict()

    def drawn(self, channel: int, start_ns: int, end_ns: int, columns: int) -> Drawn:
        """Give what is drawn of one channel; see :meth:`TraceLine.drawn`.

        Nothing, and :attr:`trouble`, once the pyramid or the readings can't be read any more: a
        picture is no place for an error.
        """
        wanted = (start_ns, end_ns, columns)
        found = self._kept.get(wanted)
        if found is None:
            if self.trouble:
                return np.empty(0, np.int64), np.empty(0)
            try:
                found = self._drawn(start_ns, end_ns, max(columns, 1))
            except (PyramidUnusable, OSError) as error:
                self.trouble = str(error)
                self.is_unusable = isinstance(error, PyramidUnusable)
                self._kept.clear()
                self._columns.forget()
                return np.empty(0, np.int64), np.empty(0)
            self._kept[wanted] = found
            if len(self._kept) > _KEPT:
                self._kept.popitem(last=False)
        return found[channel]

    def _drawn(self, start_ns: int, end_ns: int, columns: int) -> Lines:
        begin, end = self._rows_before(start_ns), self._rows_before(end_ns + 1)
        if end - begin > 2 * columns + 3:
            found = self._columns.columns(start_ns, end_ns, columns, self._extremes)
            return self._joined(found, column_edges(start_ns, end_ns, columns))
        first, last = max(begin - 1, 0), min(end + 1, self.pyramid.rows)
        t_ns, values = self.pyramid.read(first, last, list(self.silent_ns))
        return {
            channel: drawn_columns(*with_gaps(t_ns, one, silent_ns), start_ns, end_ns, columns)
            for one, (channel, silent_ns) in zip(values, self.silent_ns.items(), strict=True)
        }

    def _extremes(self, edges: NDArray[np.int64]) -> Extremes:
        channels = list(self.silent_ns)
        begin, end = self._rows_before(int(edges[0])), self._rows_before(int(edges[-1]))
        many = end - begin > _ROWS_A_COLUMN * (len(edges) - 1)
        ask = self.pyramid.pixels if many else self.pyramid.pixels_by_rows
        found = ask(edges, begin, end, channels)
        return Extremes(found.low, found.high, found.has_rows)

    def _rows_before(self, t_ns: int) -> int:
        """Count the rows before an instant; those asked for last are known."""
        found = self._counted.get(t_ns)
        if found is None:
            found = self._counted[t_ns] = self.pyramid.rows_before(t_ns)
            if len(self._counted) > 2 * _KEPT:
                self._counted.popitem(last=False)
        return found

    def _joined(self, found: Extremes, edges: NDArray[np.int64]) -> Lines:
        kept = np.flatnonzero(found.has_rows)
        low, high = found.low[:, kept], found.high[:, kept]
        none = low > high
        low[none] = high[none] = np.nan
        gaps = np.flatnonzero(np.diff(kept) > 1) + 1
        silences = self._silences(edges, kept, gaps)
        return {
            channel: PixelColumns(
                edges, kept, low[k], high[k], gaps[(silences > silent_ns) & (silent_ns > 0)]
            )
            for k, (channel, silent_ns) in enumerate(self.silent_ns.items())
        }

    def _silences(
        self, edges: NDArray[np.int64], kept: NDArray[np.intp], gaps: NDArray[np.intp]
    ) -> NDArray[np.int64]:
        """Give how long it was silent in the empty columns before some that hold readings."""
        silences = edges[kept[gaps]] - edges[kept[gaps - 1] + 1]
        # Sure to be a silence without looking where the columns alone are longer than one.
        for at in np.flatnonzero(silences <= max(self.silent_ns.values(), default=0)):
            row = self.pyramid.rows_before(int(edges[kept[gaps[at]]]))
            times, _ = self.pyramid.read(row - 1, row + 1)
            silences[at] = times[1] - times[0]
        return silences


class KeptLine(TraceLine):
    """One channel; see :class:`~meterlog.evidence.trace_line.TraceLine`. It takes no readings.

    Parameters
    ----------
    label : str
    channel : Channel
    meter : KeptMeter
    index : int
        Number of the channel within the instrument.
    """

    def __init__(self, label: str, channel: Channel, meter: KeptMeter, index: int) -> None:
        super().__init__(label, channel, tail=8, cap=8)
        meter.silent_ns[index] = self.silent_ns
        self._meter = meter
        self._index = index
        self.count = meter.pyramid.rows
        self.last_ns = meter.last_ns
        self.last = float(meter.last[index])
        self.last_flags = meter.pyramid.last_flags[index]
        low, high = float(meter.low[index]), float(meter.high[index])
        if low <= high:
            self.low, self.high = low, high

    def drawn(self, start_ns: int, end_ns: int, columns: int) -> Drawn:
        """Give what shows a stretch on ``columns`` pixels, exactly."""
        return self._meter.drawn(self._index, start_ns, end_ns, columns)
