"""TraceCurve: one line of the trace; what has many readings in each pixel is painted as bars."""

from __future__ import annotations

import numpy as np
import pyqtgraph as pg
from numpy.typing import NDArray
from pyqtgraph.Qt.internals import PrimitiveArray
from PySide6.QtCore import QLineF, QRectF, Qt
from PySide6.QtGui import QColor, QPainter

from meterlog.evidence.column_bars import Bars, Blocks, joined_bars
from meterlog.evidence.pixel_columns import Drawn, PixelColumns

Floats = NDArray[np.float64]


class PlotRoom:
    """The stretch and the values that a plot shows: nothing outside is painted."""

    def __init__(self) -> None:
        self.rect = QRectF()

    @staticmethod
    def of(start_s: float, end_s: float, low: float, high: float) -> QRectF:
        """Give the room of a stretch and values."""
        return QRectF(start_s, low, end_s - start_s, high - low)


class RoomCurve(pg.PlotCurveItem):  # type: ignore[misc]  # pyqtgraph has no types
    """A curve that takes the room of its plot for its own: it is not looked for in its points."""

    def __init__(self, room: PlotRoom, connect: str = "pairs") -> None:
        self._room = room
        super().__init__(antialias=False, connect=connect)

    def boundingRect(self) -> QRectF:
        """Give the room of the plot."""
        return self._room.rect


class TraceCurve(RoomCurve):
    """One line."""

    def __init__(self, room: PlotRoom) -> None:
        super().__init__(room, "finite")
        self._columns: PixelColumns | None = None
        self._bars = PrimitiveArray(QLineF, 4)

    def show_drawn(self, drawn: Drawn) -> None:
        """Show columns of pixels, or readings as they are."""
        if isinstance(drawn, PixelColumns):
            self._columns = drawn
            fill_lines(self._bars, joined_bars(drawn))
            self.update()
            return
        self._columns = None
        self.setData(drawn[0] / 1e9, drawn[1], connect="finite")

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
        self._bars = PrimitiveArray(QLineF, 4)
        self._rects = PrimitiveArray(QRectF, 4)

    def show_blocks(self, blocks: Blocks | None) -> None:
        """Show rectangles and the bars beside them; None: nothing."""
        if blocks is None:
            if len(self._bars) or len(self._rects):
                self._bars.resize(0)
                self._rects.resize(0)
                self.update()
            return
        fill_lines(self._bars, blocks.bars)
        self._rects.resize(len(blocks.top))
        into = self._rects.ndarray()
        into[:, 0] = blocks.left_ns / 1e9
        into[:, 1] = blocks.bottom
        into[:, 2] = (blocks.right_ns - blocks.left_ns) / 1e9
        into[:, 3] = blocks.top - blocks.bottom
        self.update()

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
