"""TraceCurve: one line of the trace; what has many readings in each pixel is painted as bars.

While the axes stand still only what came in is painted: the rest of the plot costs most of a frame.
On a screen scaled by no whole number all is painted; see :meth:`RoomCurve.update`.
"""

from __future__ import annotations

import numpy as np
import pyqtgraph as pg
from numpy.typing import NDArray
from pyqtgraph.Qt.internals import PrimitiveArray
from PySide6.QtCore import QLineF, QRectF, Qt
from PySide6.QtGui import QColor, QPainter

from meterlog.evidence.changed_stretch import Edges, changed_area, changed_line
from meterlog.evidence.column_bars import Bars, filled_blocks, joined_bars
from meterlog.evidence.motor_voltage import Area
from meterlog.evidence.pixel_columns import Drawn, PixelColumns

Floats = NDArray[np.float64]
_BESIDE = 2
"""Columns beside what has changed that a line of one pixel may reach into."""


class PlotRoom:
    """The stretch and the values that a plot shows: nothing outside is painted."""

    def __init__(self) -> None:
        self.rect = QRectF()
        self.column_s = 0.0

    def strip(self, edges: Edges) -> QRectF:
        """Give the part of the room that a stretch takes, edges in nanoseconds."""
        beside = _BESIDE * self.column_s
        left = max(self.rect.left(), edges[0] / 1e9 - beside)
        right = min(self.rect.right(), edges[1] / 1e9 + beside)
        return QRectF(left, self.rect.top(), max(right - left, 0.0), self.rect.height())

    @staticmethod
    def of(start_s: float, end_s: float, low: float, high: float) -> QRectF:
        """Give the room of a stretch and values."""
        return QRectF(start_s, low, end_s - start_s, high - low)


class RoomCurve(pg.PlotCurveItem):  # type: ignore[misc]  # pyqtgraph has no types
    """A curve that takes the room of its plot for its own: it is not looked for in its points."""

    def __init__(self, room: PlotRoom, connect: str = "pairs") -> None:
        self._room = room
        self._alone: Edges | None = None
        super().__init__(antialias=False, connect=connect)

    def boundingRect(self) -> QRectF:
        """Give the room of the plot."""
        return self._room.rect

    def prepareGeometryChange(self) -> None:
        """Tell that the room changes; other points in the same room are no other geometry."""
        if self._alone is None:
            super().prepareGeometryChange()

    def update(self, *rect: QRectF) -> None:
        """Have it painted anew: of a stretch of it only that, where a stretch can be painted."""
        if self._alone is not None and self._is_in_whole_pixels:
            super().update(self._room.strip(self._alone))
        else:
            super().update(*rect)

    @property
    def _is_in_whole_pixels(self) -> bool:
        """True where Qt paints a stretch as it paints it among the rest.

        On a screen at 125 or 150 % a plot begins amid a pixel of the screen, and bars lie on the
        edges between pixels. Which one such a bar takes Qt rounds anew with each stretch to which
        painting is held: columns stay empty.
        """
        view = self.getViewWidget()
        return view is not None and float(view.devicePixelRatioF()).is_integer()


class TraceCurve(RoomCurve):
    """One line."""

    def __init__(self, room: PlotRoom) -> None:
        super().__init__(room, "finite")
        self._columns: PixelColumns | None = None
        self._before: Drawn | None = None
        self._bars = PrimitiveArray(QLineF, 4)

    def show_drawn(self, drawn: Drawn) -> None:
        """Show columns of pixels, or readings as they are."""
        self._alone = changed_line(self._before, drawn)
        if self._alone is None:
            return
        if isinstance(drawn, PixelColumns):
            self._before = self._columns = drawn
            fill_lines(self._bars, joined_bars(drawn))
            self.update()
        else:
            # What is given may be a look at readings that are moved about later.
            self._before, self._columns = (drawn[0].copy(), drawn[1].copy()), None
            self.setData(self._before[0] / 1e9, self._before[1], connect="finite")
        self._alone = None

    def getData(self) -> tuple[Floats | None, Floats | None]:
        """Give times in seconds and values of the line."""
        if self._columns is None:
            found: tuple[Floats | None, Floats | None] = super().getData()
            return found
        t_ns, values = self._columns.points
        return t_ns / 1e9, values

    def paint(self, painter: QPainter, option: object, widget: object) -> None:
        """Paint the bars, or the line."""
        if self._columns is None:
            super().paint(painter, option, widget)
        elif len(self._bars):
            painter.setPen(self.opts["pen"])
            painter.drawLines(*self._bars.drawargs())


class TraceArea(RoomCurve):
    """What lies between two lines."""

    def __init__(self, room: PlotRoom) -> None:
        super().__init__(room)
        self._area: Area | None = None
        self._bars = PrimitiveArray(QLineF, 4)
        self._rects = PrimitiveArray(QRectF, 4)

    def show_area(self, area: Area | None) -> None:
        """Show columns filled as :func:`.between_feed_and_return` gives them; None: nothing."""
        self._alone = changed_area(self._area, area)
        if self._alone is None:
            return
        self._area = area
        self._fill(area)
        self.update()
        self._alone = None

    def _fill(self, area: Area | None) -> None:
        if area is None:
            self._bars.resize(0)
            self._rects.resize(0)
            return
        blocks = filled_blocks(*area)
        fill_lines(self._bars, blocks.bars)
        self._rects.resize(len(blocks.top))
        into = self._rects.ndarray()
        into[:, 0] = blocks.left_ns / 1e9
        into[:, 1] = blocks.bottom
        into[:, 2] = (blocks.right_ns - blocks.left_ns) / 1e9
        into[:, 3] = blocks.top - blocks.bottom

    def paint(self, painter: QPainter, *_: object) -> None:
        """Paint them."""
        pen = self.opts["pen"]
        if len(self._rects):
            painter.setPen(Qt.PenStyle.NoPen)
            painter.setBrush(QColor(pen.color()))
            painter.drawRects(*self._rects.drawargs())
        if len(self._bars):
            painter.setPen(pen)
            painter.drawLines(*self._bars.drawargs())


def fill_lines(into: PrimitiveArray, bars: Bars) -> None:
    """Put bars into an array of lines, times in seconds."""
    into.resize(len(bars.y0))
    lines = into.ndarray()
    np.divide(bars.x0_ns, 1e9, out=lines[:, 0])
    lines[:, 1] = bars.y0
    np.divide(bars.x1_ns, 1e9, out=lines[:, 2])
    lines[:, 3] = bars.y1
