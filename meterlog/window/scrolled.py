"""Scrolled: the contents of a window that is smaller than they need, behind scroll bars."""

from __future__ import annotations

from PySide6.QtCore import QSize, Qt
from PySide6.QtGui import QKeyEvent, QResizeEvent
from PySide6.QtWidgets import QApplication, QFrame, QScrollArea, QWidget

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
        application = QApplication.instance()
        if isinstance(application, QApplication):
            application.focusChanged.connect(self._follow)

    def _follow(self, _before: QWidget | None, now: QWidget | None) -> None:
        """Bring what takes the focus into sight, in every area around it.

        Qt does so only in the area that the focus moved within. What shows even in part stays
        where it is: it may have been clicked.
        """
        if now is None or not self.isAncestorOf(now) or not now.visibleRegion().isEmpty():
            return
        around: QWidget | None = now
        while around is not None and around is not self:
            around = around.parentWidget()
            if isinstance(around, QScrollArea):
                around.ensureWidgetVisible(now)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Leave all keys to the window: arrows look along the trace."""
        event.ignore()
