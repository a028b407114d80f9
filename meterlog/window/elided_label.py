"""ElidedLabel: one line of words that gives way, and says by dots that it goes on."""

from __future__ import annotations

from PySide6.QtCore import QSize, Qt
from PySide6.QtGui import QFontMetricsF, QPainter, QPaintEvent
from PySide6.QtWidgets import QLabel, QSizePolicy, QStyle, QStyleOption, QWidget

_LEAST_LETTERS = 6


class ElidedLabel(QLabel):
    """All of it stands in the tip, and is said to who can't see it.

    Parameters
    ----------
    words : str
    parent : QWidget or None
    """

    def __init__(self, words: str = "", parent: QWidget | None = None) -> None:
        super().__init__(words, parent)
        self.setSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Preferred)

    def minimumSizeHint(self) -> QSize:
        """Give the room of a few letters; none where nothing is said."""
        whole = super().minimumSizeHint()
        if not self.text():
            return QSize(0, whole.height())
        few = round(QFontMetricsF(self.font()).averageCharWidth() * _LEAST_LETTERS)
        return QSize(min(few, whole.width()), whole.height())

    def setText(self, words: str) -> None:
        """Show words; where there is too little room, their beginning."""
        if words != self.text():
            super().setText(words)
            self.setToolTip(words)

    def shown(self) -> str:
        """Give what can be read now."""
        metrics = QFontMetricsF(self.font())
        room = float(self.contentsRect().width())
        return metrics.elidedText(self.text(), Qt.TextElideMode.ElideRight, room)

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint the background of the style sheet, and the words that fit."""
        del event
        painter = QPainter(self)
        option = QStyleOption()
        option.initFrom(self)
        self.style().drawPrimitive(QStyle.PrimitiveElement.PE_Widget, option, painter, self)
        painter.setPen(self.palette().windowText().color())
        middle = Qt.AlignmentFlag.AlignVCenter | Qt.AlignmentFlag.AlignLeft
        painter.drawText(self.contentsRect(), middle, self.shown())
        painter.end()
