"""SuspectsView: the suspected units with their odds, as words and bars."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import QRectF, QSize, Qt
from PySide6.QtGui import QColor, QFont, QFontMetricsF, QPainter, QPaintEvent
from PySide6.QtWidgets import QSizePolicy, QWidget

from meterlog.circuit.wording import percent
from meterlog.evidence.palette import DAY, Palette
from meterlog.model import Suspect
from meterlog.window.sentences import sentence
from meterlog.window.words import say

MOST = 5
_LEAST = 0.01


class SuspectsView(QWidget):
    """One row a unit: percent, bar, name, and its likeliest fault where there is room."""

    def __init__(self) -> None:
        super().__init__()
        self.suspects: tuple[Suspect, ...] = ()
        self.settled = ""
        self._palette = DAY
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Minimum)
        self.show_suspects((), "")

    def set_palette(self, palette: Palette) -> None:
        """Take other colours."""
        self._palette = palette
        self.update()

    def show_suspects(self, suspects: Sequence[Suspect], settled: str) -> None:
        """Show the likeliest of these; ``settled`` is the unit that is told."""
        shown = tuple(one for one in suspects if one.probability >= _LEAST)[:MOST]
        self.suspects, self.settled = shown, settled
        told = "; ".join(f"{one.label} {percent(one.probability)}" for one in shown)
        self.setAccessibleName(say("suspects: {told}", told=told or say("none yet")))
        self.setToolTip("\n".join(_whole(one) for one in shown))
        self.updateGeometry()
        self.update()

    def _row(self) -> float:
        return QFontMetricsF(self.font()).height() * 1.35

    def sizeHint(self) -> QSize:
        """Give the room of the rows."""
        return QSize(220, round(self._row() * max(len(self.suspects), 1)) + 4)

    def minimumSizeHint(self) -> QSize:
        """Give the same: no row may be cut off."""
        return self.sizeHint()

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint the rows."""
        del event
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        row = self._row()
        for at, suspect in enumerate(self.suspects):
            self._paint(painter, QRectF(0.0, at * row, self.width(), row), suspect)
        painter.end()

    def _paint(self, painter: QPainter, rect: QRectF, suspect: Suspect) -> None:
        palette = self._palette
        bold = QFont(self.font())
        bold.setBold(True)
        plain, strong = QFontMetricsF(self.font()), QFontMetricsF(bold)
        flags = Qt.AlignmentFlag.AlignVCenter | Qt.AlignmentFlag.AlignLeft
        odds = strong.horizontalAdvance(say("over 99 % "))
        painter.setFont(bold)
        painter.setPen(QColor(palette.ink))
        shown = QRectF(rect.left(), rect.top(), odds, rect.height())
        painter.drawText(shown, flags, sentence(percent(suspect.probability)))
        bar = QRectF(shown.right(), rect.top() + 0.25 * rect.height(), odds, 0.5 * rect.height())
        told = suspect.unit == self.settled
        fill = QRectF(bar.left(), bar.top(), bar.width() * suspect.probability, bar.height())
        strongly = told or suspect.probability > 0.5
        painter.fillRect(fill, QColor(palette.alert if strongly else palette.accent))
        painter.setPen(QColor(palette.edge))
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.drawRect(bar)
        room = QRectF(rect)
        room.setLeft(bar.right() + 6.0)
        name = strong.elidedText(
            f"► {suspect.label}" if told else suspect.label,
            Qt.TextElideMode.ElideRight,
            room.width(),
        )
        painter.setPen(QColor(palette.ink))
        painter.drawText(room, flags, name)
        room.setLeft(room.left() + strong.horizontalAdvance(name) + 6.0)
        if suspect.faults and room.width() > 4.0 * plain.height():
            painter.setFont(self.font())
            painter.setPen(QColor(palette.faint))
            words = plain.elidedText(
                sentence(suspect.faults[0].words), Qt.TextElideMode.ElideRight, room.width()
            )
            painter.drawText(room, flags, words)


def _whole(suspect: Suspect) -> str:
    faults = "; ".join(
        f"{sentence(one.words)} {sentence(percent(one.probability))}" for one in suspect.faults[:3]
    )
    return f"{sentence(percent(suspect.probability))} {suspect.label}" + (
        f": {faults}" if faults else ""
    )
