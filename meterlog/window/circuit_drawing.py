"""CircuitDrawing: the circuit drawn from its profile; a click chooses a test point."""

from __future__ import annotations

from PySide6.QtCore import QEvent, QPointF, QRectF, Qt, Signal
from PySide6.QtGui import QColor, QHelpEvent, QMouseEvent, QPainter, QPaintEvent
from PySide6.QtWidgets import QSizePolicy, QToolTip, QWidget

from meterlog.evidence.circuit_marks import CircuitMarks
from meterlog.evidence.circuit_picture import paint_circuit, plan_of
from meterlog.evidence.palette import DAY, Palette
from meterlog.model import Circuit
from meterlog.window.numbers import in_numbers
from meterlog.window.sentences import sentence
from meterlog.window.words import later, say

_NONE = later("Choose the circuit above: it is drawn here, with its test points.")


class CircuitDrawing(QWidget):
    """The drawing. ``picked`` is emitted with the name of a test point."""

    picked = Signal(str)

    def __init__(self) -> None:
        super().__init__()
        self.circuit: Circuit | None = None
        self.marks = CircuitMarks()
        self._palette = DAY
        self._pixels = 12
        self.setMinimumSize(320, 200)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)
        self._name()

    def set_palette(self, palette: Palette, pixels: int) -> None:
        """Take other colours, and text of ``pixels`` height."""
        self._palette, self._pixels = palette, pixels
        self.update()

    def show_marks(self, circuit: Circuit | None, marks: CircuitMarks) -> None:
        """Show a circuit with its marks."""
        if circuit is self.circuit and marks == self.marks:
            return
        self.circuit, self.marks = circuit, marks
        self._name()
        self.update()

    def _name(self) -> None:
        if self.circuit is None:
            self.setAccessibleName(say("drawing of the circuit: none chosen"))
            return
        points = []
        for point in self.circuit.points:
            mark = self.marks.points.get(point.name)
            if mark is not None and mark.found is not None:
                points.append(
                    f"{mark.letter} {sentence(point.label)}: {in_numbers(mark.found_words)}"
                )
        found = "; ".join(points) or say("nothing measured in this state")
        self.setAccessibleName(
            say(
                "drawing of the circuit {title}: {found}",
                title=sentence(self.circuit.title),
                found=found,
            )
        )

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint the circuit."""
        del event
        painter = QPainter(self)
        rect = QRectF(self.rect()).adjusted(0.5, 0.5, -0.5, -0.5)
        painter.fillRect(rect, QColor(self._palette.panel))
        if self.circuit is None:
            painter.setPen(QColor(self._palette.faint))
            painter.drawText(
                rect, Qt.AlignmentFlag.AlignCenter | Qt.TextFlag.TextWordWrap, say(_NONE)
            )
        else:
            paint_circuit(
                painter, rect, self.circuit, self.marks, self._palette, self._pixels, sentence
            )
        painter.setPen(QColor(self._palette.edge))
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.drawRect(rect)
        painter.end()

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Choose the test point that was hit."""
        name = self._hit(event.position())
        if name:
            self.picked.emit(name)

    def event(self, event: QEvent) -> bool:
        """Say what is under the pointer."""
        if event.type() == QEvent.Type.ToolTip and isinstance(event, QHelpEvent):
            name = self._hit(event.pos().toPointF())
            if name and self.circuit is not None:
                point, mark = self.circuit.point(name), self.marks.points.get(name)
                words = [sentence(point.label), sentence(point.reach)]
                if mark is not None and mark.expected_words:
                    words.append(
                        say(
                            "should be: {expected_words}",
                            expected_words=in_numbers(mark.expected_words),
                        )
                    )
                QToolTip.showText(event.globalPos(), "\n".join(words), self)
            else:
                QToolTip.hideText()
            return True
        return super().event(event)

    def _hit(self, where: QPointF) -> str:
        if self.circuit is None:
            return ""
        rect = QRectF(self.rect()).adjusted(0.5, 0.5, -0.5, -0.5)
        return plan_of(self.circuit, rect, self._pixels).point_at(where)
