"""LongWorkStrip: how far something has come, and the button that stops it."""

from __future__ import annotations

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QHBoxLayout, QLabel, QProgressBar, QPushButton, QWidget

from meterlog.window.words import say


class LongWorkStrip(QWidget):
    """One line; hidden while nothing goes on. ``cancelled`` is emitted by its button."""

    cancelled = Signal()

    def __init__(self) -> None:
        super().__init__()
        self.words = QLabel("")
        self.bar = QProgressBar()
        self.bar.setRange(0, 1000)
        self.bar.setTextVisible(True)
        self.stop = QPushButton(say("Cancel"))
        self.stop.clicked.connect(self.cancelled)
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.addWidget(self.words)
        row.addWidget(self.bar, 1)
        row.addWidget(self.stop)
        self.hide()

    def show_part(self, words: str, part: float, *, stopping: bool = False) -> None:
        """Show what goes on and the part done, 0 to 1."""
        self.words.setText(words)
        self.bar.setAccessibleName(words)
        self.stop.setAccessibleName(say("cancel: {words}", words=words))
        self.bar.setValue(round(part * 1000))
        self.stop.setDisabled(stopping)
        self.stop.setText(say("Stopping…") if stopping else say("Cancel"))
        self.show()
