"""KeptLine: one channel of a long recording, drawn from its pyramid; nothing of it in memory."""

from __future__ import annotations

from collections import OrderedDict
from collections.abc import Mapping

import numpy as np
from numpy.typing import NDArray

from meterlog.evidence.pixel_columns import Points, column_edges, joined_columns, pixel_columns
from meterlog.evidence.trace_line import TraceLine, with_gaps
from meterlog.model import Channel
from meterlog.recording import Pyramid, PyramidUnusable
from meterlog.recording.pyramid_pixels import Pixels

_ROWS_A_COLUMN = 256
"""Up to here reading all rows of a stretch is as fast as asking the pyramid."""
_KEPT = 4
"""Stretches that are kept: a picture asks for the same one once for each of its lines."""

Drawn = Mapping[int, Points]


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
        self._kept: OrderedDict[tuple[int, int, int], Drawn] = OrderedDict()

    def shown(self, channel: int, start_ns: int, end_ns: int, columns: int) -> Points:
        """Give the points of one channel; see :meth:`TraceLine.shown`.

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
                return np.empty(0, np.int64), np.empty(0)
            self._kept[wanted] = found
            if len(self._kept) > _KEPT:
                self._kept.popitem(last=False)
        return found[channel]

    def _drawn(self, start_ns: int, end_ns: int, columns: int) -> Drawn:
        begin = self.pyramid.rows_before(start_ns)
        end = self.pyramid.rows_before(end_ns + 1)
        if end - begin > 2 * columns + 3:
            return self._columns(begin, end, column_edges(start_ns, end_ns, columns))
        first, last = max(begin - 1, 0), min(end + 1, self.pyramid.rows)
        t_ns, values = self.pyramid.read(first, last, list(self.silent_ns))
        return {
            channel: pixel_columns(*with_gaps(t_ns, one, silent_ns), start_ns, end_ns, columns)
            for one, (channel, silent_ns) in zip(values, self.silent_ns.items(), strict=True)
        }

    def _columns(self, begin: int, end: int, edges: NDArray[np.int64]) -> Drawn:
        channels = list(self.silent_ns)
        if end - begin > _ROWS_A_COLUMN * (len(edges) - 1):
            pixels = self.pyramid.pixels(edges, begin, end, channels)
        else:
            pixels = Pixels(edges, channels)
            pixels.take_rows(*self.pyramid.read(begin, end, channels))
        kept = np.flatnonzero(pixels.has_rows)
        low, high = pixels.low[:, kept], pixels.high[:, kept]
        none = low > high
        low[none] = high[none] = np.nan
        gaps = np.flatnonzero(np.diff(kept) > 1) + 1
        silences = self._silences(edges, kept, gaps)
        return {
            channel: joined_columns(
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

    def shown(self, start_ns: int, end_ns: int, columns: int) -> Points:
        """Give the points that show a stretch on ``columns`` pixels, exactly."""
        return self._meter.shown(self._index, start_ns, end_ns, columns)
