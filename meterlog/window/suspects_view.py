"""SuspectsView: the suspected units with their odds, as words and bars."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import QRectF, QSize, Qt
from PySide6.QtGui import QColor, QFont, QFontMetricsF, QPainter, QPaintEvent, QResizeEvent
from PySide6.QtWidgets import QSizePolicy, QWidget

from meterlog.circuit.wording import percent
from meterlog.evidence.palette import DAY, Palette
from meterlog.model import Suspect
from meterlog.window.sentences import sentence
from meterlog.window.words import say

MOST = 5
_LEAST = 0.01
_STRONG = 0.2
"""From here on a unit's likeliest fault is shown whole."""
_GAP = 6.0


class SuspectsView(QWidget):
    """One row a unit: percent, bar, name, and its likeliest fault, below it where it is longer."""

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
        told = "; ".join(
            f"{sentence(one.label)} {sentence(percent(one.probability))}" for one in shown
        )
        self.setAccessibleName(say("suspects: {told}", told=told or say("none yet")))
        self.setToolTip("\n".join(_whole(one) for one in shown))
        self.updateGeometry()
        self.update()

    def _row(self) -> float:
        return QFontMetricsF(self.font()).height() * 1.35

    def sizeHint(self) -> QSize:
        """Give the room of the rows."""
        lines = sum(1 + self._goes_below(one) for one in self.suspects)
        return QSize(220, round(self._row() * max(lines, 1)) + 4)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Ask for other room where faults go below their units, or no longer do."""
        super().resizeEvent(event)
        self.updateGeometry()

    def _metrics(self) -> tuple[QFontMetricsF, QFontMetricsF]:
        bold = QFont(self.font())
        bold.setBold(True)
        return QFontMetricsF(self.font()), QFontMetricsF(bold)

    def _names_from(self) -> float:
        """Give the x behind percent and bar, where names begin."""
        return 2.0 * self._metrics()[1].horizontalAdvance(say("over 99 % ")) + _GAP

    def _goes_below(self, suspect: Suspect) -> bool:
        """Tell whether the likeliest fault of a unit that counts has no room behind its name."""
        if not suspect.faults or suspect.probability < _STRONG:
            return False
        plain, strong = self._metrics()
        name = strong.horizontalAdvance(self._name(suspect))
        words = plain.horizontalAdvance(_fault(suspect))
        return self._names_from() + name + _GAP + words > self.width()

    def _name(self, suspect: Suspect) -> str:
        name = sentence(suspect.label)
        return f"► {name}" if suspect.unit == self.settled else name

    def minimumSizeHint(self) -> QSize:
        """Give the same: no row may be cut off."""
        return self.sizeHint()

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint the rows."""
        del event
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        row = self._row()
        at = 0
        for suspect in self.suspects:
            self._paint(painter, QRectF(0.0, at * row, self.width(), row), suspect)
            at += 1 + self._goes_below(suspect)
        painter.end()

    def _paint(self, painter: QPainter, rect: QRectF, suspect: Suspect) -> None:
        palette = self._palette
        bold = QFont(self.font())
        bold.setBold(True)
        plain, strong = self._metrics()
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
        room.setLeft(bar.right() + _GAP)
        name = strong.elidedText(self._name(suspect), Qt.TextElideMode.ElideRight, room.width())
        painter.setPen(QColor(palette.ink))
        painter.drawText(room, flags, name)
        if self._goes_below(suspect):
            room.translate(0.0, self._row())
            room.setLeft(0.5 * odds)
        else:
            room.setLeft(room.left() + strong.horizontalAdvance(name) + _GAP)
        if suspect.faults and room.width() > 4.0 * plain.height():
            painter.setFont(self.font())
            painter.setPen(QColor(palette.faint))
            words = plain.elidedText(_fault(suspect), Qt.TextElideMode.ElideRight, room.width())
            painter.drawText(room, flags, words)


def _fault(suspect: Suspect) -> str:
    """Give the likeliest fault; its unit's name stands before it already."""
    return sentence(suspect.faults[0].words).removeprefix(f"{sentence(suspect.label)}: ")


def _whole(suspect: Suspect) -> str:
    faults = "; ".join(
        f"{sentence(one.words)} {sentence(percent(one.probability))}" for one in suspect.faults[:3]
    )
    return f"{sentence(percent(suspect.probability))} {sentence(suspect.label)}" + (
        f": {faults}" if faults else ""
    )
