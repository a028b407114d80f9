"""BesideBox: the label at the left of a box."""

from __future__ import annotations

from PySide6.QtCore import QSize
from PySide6.QtWidgets import QComboBox, QLabel


class BesideBox(QLabel):
    """A label as high as the box that it names, whatever the height of the text comes to."""

    def __init__(self, words: str, box: QComboBox) -> None:
        super().__init__(words)
        self.setBuddy(box)
        self._box = box

    def sizeHint(self) -> QSize:
        """Give the room of the words, and the height of the box."""
        size = super().sizeHint()
        return QSize(size.width(), max(size.height(), self._box.sizeHint().height()))

    def minimumSizeHint(self) -> QSize:
        """Give the same: where there is little room, the box keeps its height too."""
        return self.sizeHint()
