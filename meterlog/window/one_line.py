"""OneLine: how high a line of words of one rank stands, so that its room can be kept free."""

from __future__ import annotations

from PySide6.QtWidgets import QLabel, QWidget


class OneLine(QLabel):
    """Never shown; it takes the letters and the padding that such words would have.

    Parameters
    ----------
    rank : str
        As the style sheet knows it.
    parent : QWidget
        Where the words would stand.
    """

    def __init__(self, rank: str, parent: QWidget) -> None:
        super().__init__("X", parent)
        self.setProperty("rank", rank)
        self.hide()

    @property
    def pixels(self) -> int:
        """Its height now."""
        self.ensurePolished()
        return self.sizeHint().height()
