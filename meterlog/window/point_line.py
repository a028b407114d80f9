"""PointLine: the test point that the next reading belongs to, the live value there, and typing."""

from __future__ import annotations

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QHBoxLayout, QLabel, QPushButton, QSizePolicy, QVBoxLayout, QWidget

from meterlog.window.note_line import NoteField
from meterlog.window.numbers import in_numbers
from meterlog.window.steady_boxes import SteadyComboBox
from meterlog.window.words import later, say

_LINES = 3
"""So many lines the words about most points take, with what can hurt there."""
_BY_ITSELF = later("probe: by its role")


class PointLine(QWidget):
    """Words about the point, the live value and the ways to enter one.

    ``take``, ``asked`` (previous: -1, next: 1), ``no_reach`` and ``typed`` are emitted.
    """

    take = Signal()
    asked = Signal(int)
    no_reach = Signal()
    typed = Signal(str)

    def __init__(self) -> None:
        super().__init__()
        self.where = QLabel("")
        self.where.setWordWrap(True)
        self.where.setAccessibleName(say("test point chosen"))
        self.where.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Preferred)
        self.where.setAlignment(Qt.AlignmentFlag.AlignTop)
        self.live = QLabel("")
        self.live.setAccessibleName(say("live value"))
        self.live.setProperty("rank", "title")
        self.back = self._button("◄", say("previous test point"))
        self.on = self._button("►", say("next test point"))
        self.enter = self._button(
            say("Take  (Space)"), say("take the settled reading at this test point")
        )
        self.enter.setProperty("rank", "first")
        self.unreachable = self._button(say("Can't reach"), say("this test point can't be reached"))
        self.unreachable.setCheckable(True)
        self.probe = SteadyComboBox()
        self.probe.setAccessibleName(say("channel of the probe that goes about"))
        self.field = NoteField()
        self.field.setAccessibleName(say("reading typed at this test point"))
        self.field.setPlaceholderText(say("or type (R): {number}", number=in_numbers("12.43")))
        self.field.setMaxLength(40)
        self.set_pixels(12)
        self._before: QWidget | None = None
        self._lay_out()
        self.back.clicked.connect(lambda: self.asked.emit(-1))
        self.on.clicked.connect(lambda: self.asked.emit(1))
        self.enter.clicked.connect(self.take)
        self.unreachable.clicked.connect(self.no_reach)
        self.field.returnPressed.connect(self._on_typed)
        self.field.dropped.connect(self.leave)
        self.show_channels(())

    def set_pixels(self, pixels: int) -> None:
        """Make room for a reading in text of ``pixels`` height, and no more."""
        self.field.setMaximumWidth(round(15.8 * pixels))
        self._keep_lines(anew=True)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Keep room for as many lines as the words take in another width."""
        super().resizeEvent(event)
        if event.size().width() != event.oldSize().width():
            self._keep_lines(anew=True)

    def _keep_lines(self, *, anew: bool = False) -> None:
        """Give the words the most room that they have had: the drawing above keeps its scale."""
        least = _LINES * self.where.fontMetrics().lineSpacing()
        if anew:
            self.where.setMinimumHeight(0)
        # Not less than what was kept: Qt counts that in.
        needed = self.where.heightForWidth(self.where.width())
        self.where.setMinimumHeight(max(least, needed))

    def _lay_out(self) -> None:
        row = QHBoxLayout()
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(4)
        for widget in (self.back, self.on, self.enter):
            row.addWidget(widget)
        row.addWidget(self.live, 1)
        row.addWidget(self.probe)
        row.addWidget(self.field)
        row.addWidget(self.unreachable)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(2)
        column.addWidget(self.where)
        column.addLayout(row)

    @staticmethod
    def _button(words: str, name: str) -> QPushButton:
        button = QPushButton(words)
        button.setAccessibleName(name)
        return button

    def in_order(self) -> list[QWidget]:
        """Give all controls as the eye goes."""
        return [self.back, self.on, self.enter, self.probe, self.field, self.unreachable]

    def show_point(self, words: str, *, reached: bool, lasting: bool = True) -> None:
        """Show what is known of the point; what is not ``lasting`` gets no room for good."""
        self.where.setText(words)
        if lasting:
            self._keep_lines()
        self.unreachable.setChecked(not reached)

    def show_live(self, words: str) -> None:
        """Show the live value, or why there is none."""
        if words != self.live.text():
            self.live.setText(words)

    def show_channels(self, names: tuple[str, ...]) -> None:
        """Offer voltage channels for the probe; the choice stays if it is still there."""
        before = self.probe.currentText()
        self.probe.clear()
        self.probe.addItems([say(_BY_ITSELF), *names])
        self.probe.setCurrentIndex(max(self.probe.findText(before), 0))
        self.probe.setVisible(len(names) > 1)

    def next_channel(self) -> bool:
        """Choose the next channel for the probe; False where there are none to choose from."""
        if self.probe.count() < 3:  # by its role, and one channel
            return False
        self.probe.setCurrentIndex((self.probe.currentIndex() + 1) % self.probe.count())
        return True

    @property
    def channel(self) -> str:
        """The channel chosen for the probe; empty: by its role."""
        return self.probe.currentText() if self.probe.currentIndex() > 0 else ""

    def ask(self) -> None:
        """Go to the field for a typed reading."""
        if not self.field.hasFocus():
            self._before = self.window().focusWidget()
        self.field.setFocus()

    def leave(self) -> None:
        """Leave the field for where the eye was before."""
        self.field.clear()
        if self._before is not None:
            self._before.setFocus()
        else:
            self.field.clearFocus()

    def _on_typed(self) -> None:
        if self.field.text().strip():
            self.typed.emit(self.field.text())
        else:
            self.leave()
