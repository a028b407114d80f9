"""Boxes to choose from that the mouse wheel leaves alone: whoever scrolls a page chooses nothing.

Without this a wheel turned to look further down changes the port or the clamp under the pointer.
"""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtGui import QWheelEvent
from PySide6.QtWidgets import QComboBox, QSpinBox, QWidget


class SteadyComboBox(QComboBox):
    """A combo box that leaves the wheel to the page; an open list still scrolls."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)

    def wheelEvent(self, event: QWheelEvent) -> None:
        """Leave it to what the box stands in."""
        event.ignore()


class SteadySpinBox(QSpinBox):
    """A spin box that leaves the wheel to the page."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)

    def wheelEvent(self, event: QWheelEvent) -> None:
        """Leave it to what the box stands in."""
        event.ignore()
