"""CircuitPage: the circuit drawn, its state, readings at its test points, and who is suspected."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QFrame, QScrollArea, QSplitter, QVBoxLayout, QWidget

from meterlog.evidence.palette import Palette
from meterlog.window.circuit_drawing import CircuitDrawing
from meterlog.window.circuit_state_row import CircuitStateRow
from meterlog.window.entries_view import EntriesView
from meterlog.window.next_test_view import NextTestView
from meterlog.window.point_line import PointLine
from meterlog.window.signs_row import SignsRow
from meterlog.window.suspects_view import SuspectsView
from meterlog.window.tab_order import order_tabs


class CircuitPage(QWidget):
    """The page; what it shows is put there by the circuit desk."""

    def __init__(self) -> None:
        super().__init__()
        self.state_row = CircuitStateRow()
        self.drawing = CircuitDrawing()
        self.point = PointLine()
        self.signs = SignsRow()
        self.next_test = NextTestView()
        self.suspects = SuspectsView()
        self.entries = EntriesView()
        self._words = QScrollArea()
        self._split = QSplitter(Qt.Orientation.Horizontal)
        self._lay_out()
        self.state_row.listed.connect(self._order_tabs)
        self._order_tabs()
        self.next_test.changed.connect(lambda: self._words.verticalScrollBar().setValue(0))

    def _lay_out(self) -> None:
        left = QWidget()
        pictures = QVBoxLayout(left)
        pictures.setContentsMargins(0, 0, 0, 0)
        pictures.setSpacing(3)
        pictures.addWidget(self.drawing, 1)
        pictures.addWidget(self.point)
        right = self._right()
        self._split.addWidget(left)
        self._split.addWidget(right)
        self._split.setStretchFactor(0, 13)
        self._split.setStretchFactor(1, 7)
        self._split.setSizes([650, 350])
        self._split.setChildrenCollapsible(False)
        page = QVBoxLayout(self)
        page.setContentsMargins(6, 4, 6, 2)
        page.setSpacing(4)
        page.addWidget(self.state_row)
        page.addWidget(self._split, 1)
        page.addWidget(self.signs)

    def _right(self) -> QWidget:
        words = QWidget()
        column = QVBoxLayout(words)
        column.setContentsMargins(4, 0, 6, 0)
        column.setSpacing(6)
        column.addWidget(self.next_test)
        column.addStretch(1)
        area = self._words
        area.setWidgetResizable(True)
        area.setFrameShape(QFrame.Shape.NoFrame)
        area.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        area.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        area.setWidget(words)
        top = QWidget()
        above = QVBoxLayout(top)
        above.setContentsMargins(0, 0, 0, 0)
        above.setSpacing(4)
        above.addWidget(self.suspects)
        above.addWidget(area, 1)
        right = QSplitter(Qt.Orientation.Vertical)
        right.addWidget(top)
        right.addWidget(self.entries)
        right.setStretchFactor(0, 7)
        right.setStretchFactor(1, 3)
        right.setSizes([700, 300])
        right.setChildrenCollapsible(False)
        return right

    def read_on(self, by: int) -> None:
        """Scroll the words about the next test by their height; a hand needs no mouse for it."""
        bar = self._words.verticalScrollBar()
        line = self.next_test.fontMetrics().height()
        bar.setValue(bar.value() + by * max(bar.pageStep() - line, line))

    def set_palette(self, palette: Palette, pixels: int) -> None:
        """Take other colours, and text of ``pixels`` height."""
        self.drawing.set_palette(palette, pixels)
        self.point.set_pixels(pixels)
        self.suspects.set_palette(palette)

    def _order_tabs(self) -> None:
        order_tabs(
            [
                *self.state_row.in_order(),
                *self.point.in_order(),
                *self.signs.in_order(),
                self.entries,
            ]
        )
