"""TickAxis: an axis of the trace that paints the ticks it is given, and nothing else."""

from __future__ import annotations

from collections.abc import Sequence

import pyqtgraph as pg
from PySide6.QtCore import QLineF, QRectF, Qt
from PySide6.QtGui import QColor, QFont, QFontMetricsF, QPainter, QPen

Tick = tuple[float, str]

_LENGTH = 5.0
"""Of a tick, into the plot, in pixels."""
_APART = (5.0, 2.0)
"""Pixels between the plot and the words: beside it, below it."""
_BEYOND = 15.0
"""Pixels by which words may reach beyond the axis."""


class TickAxis(pg.AxisItem):  # type: ignore[misc]  # pyqtgraph has no types
    """An axis on the left or at the bottom.

    Parameters
    ----------
    side : str
        ``left`` or ``bottom``.
    """

    def __init__(self, side: str) -> None:
        super().__init__(side)
        self.enableAutoSIPrefix(enable=False)  # else the label is laid out anew with each range
        self._ticks: tuple[Tick, ...] = ()
        self._font = QFont()
        self._line, self._ink = QPen(), QPen()
        self._sizes: dict[str, tuple[float, float]] = {}

    def set_look(self, edge: str, ink: str, font: QFont | None = None) -> None:
        """Take colours of the line and of the words, and their font (None: as it is)."""
        self._line, self._ink = QPen(QColor(edge), 1.0), QPen(QColor(ink))
        if font is not None:
            self._font, self._sizes = font, {}
        self.update()

    def show_ticks(self, ticks: Sequence[Tick]) -> None:
        """Show these ticks: place and words of each."""
        if tuple(ticks) != self._ticks:
            self._ticks = tuple(ticks)
            self.update()

    def boundingRect(self) -> QRectF:
        """Give the room of the axis, its ticks and its words."""
        size = self.size()
        return QRectF(-_BEYOND, -_BEYOND, size.width() + 2 * _BEYOND, size.height() + 2 * _BEYOND)

    def paint(self, painter: QPainter, *_: object) -> None:
        """Paint the line, the ticks and the words."""
        low, high = self.range
        size = self.size()
        is_left = self.orientation == "left"
        long = size.height() if is_left else size.width()
        if high <= low or long <= 0.0:
            return
        if len(self._sizes) > 500:
            self._sizes.clear()
        painter.setFont(self._font)
        right = size.width()
        lines = [QLineF(-1.0, 1.0, long + 1.0, 1.0)]
        if is_left:
            lines = [QLineF(right - 1.0, -1.0, right - 1.0, long + 1.0)]
        words: list[tuple[QRectF, str]] = []
        for value, text in self._ticks:
            part = (value - low) / (high - low)
            if not -1e-9 <= part <= 1.0 + 1e-9:
                continue
            wide, tall = self._size_of(text)
            if is_left:
                y = long * (1.0 - part)
                lines.append(QLineF(right, y, right + _LENGTH, y))
                words.append((QRectF(right - _APART[0] - wide, y - tall / 2, wide, tall), text))
            else:
                x = long * part
                lines.append(QLineF(x, 0.0, x, -_LENGTH))
                if x >= wide / 2 - _BEYOND and x + wide / 2 <= long + _BEYOND:
                    words.append((QRectF(x - wide / 2, _APART[1], wide, tall), text))
        painter.setPen(self._line)
        painter.drawLines(lines)
        painter.setPen(self._ink)
        flags = Qt.AlignmentFlag.AlignCenter | Qt.TextFlag.TextDontClip
        for rect, text in words:
            painter.drawText(rect, int(flags), text)

    def _size_of(self, text: str) -> tuple[float, float]:
        found = self._sizes.get(text)
        if found is None:
            metrics = QFontMetricsF(self._font)
            found = self._sizes[text] = (metrics.horizontalAdvance(text), metrics.height())
        return found
