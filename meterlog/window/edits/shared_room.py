"""SharedRoom: words over a list; what the words need they take from the list, and nothing moves."""

from __future__ import annotations

from PySide6.QtCore import QSize
from PySide6.QtWidgets import QListWidget, QVBoxLayout, QWidget

from meterlog.window.wrapped_label import WrappedLabel

_LINES = 7
"""Height of both together at least, in lines of plain text."""


class SharedRoom(QWidget):
    """Asks for the same room whatever the words are.

    Parameters
    ----------
    said : WrappedLabel
        All of its words stand in its tip, too.
    below : QListWidget
    """

    def __init__(self, said: WrappedLabel, below: QListWidget) -> None:
        super().__init__()
        self.said = said
        # Where words are many, the list gives way altogether.
        below.setMinimumHeight(1)
        room = QVBoxLayout(self)
        room.setContentsMargins(0, 0, 0, 0)
        room.setSpacing(3)
        room.addWidget(said)
        room.addWidget(below, 1)

    def say(self, words: str) -> None:
        """Show words over the list."""
        self.said.setText(words)
        self.said.setToolTip(words)
        self.said.setVisible(bool(words))

    def hasHeightForWidth(self) -> bool:
        """Tell that the height depends on nothing: else that of the words would be asked for."""
        return False

    def sizeHint(self) -> QSize:
        """Give a fixed number of lines."""
        return QSize(super().sizeHint().width(), _LINES * self.fontMetrics().lineSpacing())

    def minimumSizeHint(self) -> QSize:
        """Give the same height."""
        return QSize(super().minimumSizeHint().width(), self.sizeHint().height())
