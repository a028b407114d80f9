"""Scrolled: the contents of a window that is smaller than they need, behind scroll bars."""

from __future__ import annotations

from PySide6.QtCore import QSize, Qt
from PySide6.QtGui import QKeyEvent, QResizeEvent
from PySide6.QtWidgets import QFrame, QScrollArea, QWidget

LEAST = QSize(960, 540)
"""Pixels that the contents need: what a screen of 1024 x 600 leaves of itself."""


class _Sheet(QWidget):
    """Gives its contents all of its room; without a layout, whose wishes a scroll area obeys."""

    def __init__(self, contents: QWidget) -> None:
        super().__init__()
        self._contents = contents
        contents.setParent(self)
        self.setMinimumSize(LEAST)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Pass the size on."""
        super().resizeEvent(event)
        self._contents.setGeometry(self.rect())


class Scrolled(QScrollArea):
    """Gives its contents :data:`LEAST` at least; what is in focus is brought into sight.

    Parameters
    ----------
    contents : QWidget
    """

    def __init__(self, contents: QWidget) -> None:
        super().__init__()
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self.setWidgetResizable(True)
        self.setWidget(_Sheet(contents))

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Leave all keys to the window: arrows look along the trace."""
        event.ignore()
