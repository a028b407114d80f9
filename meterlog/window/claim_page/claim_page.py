"""ClaimPage: on the left what goes into a pack, on the right how it is made and checked."""

from __future__ import annotations

from PySide6.QtCore import Qt, QTimer
from PySide6.QtWidgets import (
    QFrame,
    QPushButton,
    QScrollArea,
    QSplitter,
    QVBoxLayout,
    QWidget,
)

from meterlog.window.claim_page.card_summary import CardSummary
from meterlog.window.claim_page.check_panel import CheckPanel
from meterlog.window.claim_page.circuit_choices import CircuitChoices
from meterlog.window.claim_page.claim_options import ClaimOptions
from meterlog.window.claim_page.made_view import MadeView
from meterlog.window.claim_page.side_choice import SideChoice, told_label
from meterlog.window.long_work_strip import LongWorkStrip
from meterlog.window.tab_order import order_tabs
from meterlog.window.words import say


class ClaimPage(QWidget):
    """The page; what it shows is put there by the claim desk."""

    def __init__(self) -> None:
        super().__init__()
        self.before = SideChoice(say("Before the repair"), say("recording before the repair"))
        self.after = SideChoice(say("After the repair"), say("recording after the repair"))
        self.circuits = CircuitChoices()
        self.card = CardSummary()
        self.options = ClaimOptions()
        self.make = QPushButton(say("Make the claim pack"))
        self.make.setProperty("rank", "first")
        self.make.setAccessibleName(say("make the claim pack"))
        self.making = LongWorkStrip()
        self.said = told_label("caution", say("message about the claim"))
        self.made = MadeView()
        self.check = CheckPanel()
        self._left = _column((self.before, self.after, self.circuits, self.card))
        self._right = _column(
            (self.options, self.make, self.making, self.said, self.made, self.check),
        )
        split = QSplitter(Qt.Orientation.Horizontal)
        split.addWidget(self._left)
        split.addWidget(self._right)
        split.setSizes([500, 500])
        split.setChildrenCollapsible(False)
        page = QVBoxLayout(self)
        page.setContentsMargins(6, 4, 6, 2)
        page.addWidget(split, 1)
        self.circuits.changed.connect(self.order_tabs)
        self.order_tabs()

    def order_tabs(self) -> None:
        """Let Tab go as the eye goes, also through what was added later."""
        order_tabs(
            [
                *self.before.in_order(),
                *self.after.in_order(),
                *self.circuits.in_order(),
                *self.options.in_order(),
                self.make,
                self.making.stop,
                *self.made.in_order(),
                *self.check.in_order(),
            ]
        )

    def read_on(self, by: int) -> None:
        """Scroll by a page: words have no focus that would bring them into sight."""
        for area in (self._left, self._right):
            bar = area.verticalScrollBar()
            line = self.fontMetrics().height()
            bar.setValue(bar.value() + by * max(bar.pageStep() - line, line))

    def bring_into_sight(self, widget: QWidget) -> None:
        """Scroll to something on the right that has just come up."""
        # Its height is known only when it has been laid out.
        QTimer.singleShot(0, widget, lambda: self._right.ensureWidgetVisible(widget, 0, 4))


def _column(widgets: tuple[QWidget, ...]) -> QScrollArea:
    inside = QWidget()
    column = QVBoxLayout(inside)
    column.setContentsMargins(0, 0, 4, 0)
    column.setSpacing(5)
    for widget in widgets:
        column.addWidget(widget)
    column.addStretch(1)
    area = QScrollArea()
    area.setWidget(inside)
    area.setWidgetResizable(True)
    area.setFrameShape(QFrame.Shape.NoFrame)
    area.setFocusPolicy(Qt.FocusPolicy.NoFocus)
    area.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAsNeeded)
    return area
