"""WithdrawButton: withdraw a mark, or put it back; as wide for either."""

from __future__ import annotations

from PySide6.QtCore import QSize, Qt
from PySide6.QtWidgets import QPushButton, QStyle, QStyleOptionButton

from meterlog.window.words import say


class WithdrawButton(QPushButton):
    """Keeps its place whichever of the two it says."""

    def __init__(self) -> None:
        self._either = say("Withdraw"), say("Put back")
        super().__init__(self._either[0])

    def offer_back(self, *, out: bool) -> None:
        """Say what it would do with the mark that is chosen.

        Parameters
        ----------
        out : bool
            The mark is withdrawn.
        """
        self.setText(self._either[out])

    def sizeHint(self) -> QSize:
        """Give the room of the longer words."""
        size, option = super().sizeHint(), QStyleOptionButton()
        self.initStyleOption(option)
        for words in self._either:
            option.text = words
            letters = self.fontMetrics().size(Qt.TextFlag.TextShowMnemonic, words)
            size = size.expandedTo(
                self.style().sizeFromContents(
                    QStyle.ContentsType.CT_PushButton, option, letters, self
                )
            )
        return size

    def minimumSizeHint(self) -> QSize:
        """Give the same."""
        return self.sizeHint()
