"""GuideStrip: plain sentences that walk through a job, one at a time."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import QTimer
from PySide6.QtWidgets import QHBoxLayout, QLabel, QPushButton, QWidget

from meterlog.window.sentences import sentence
from meterlog.window.words import say

SECONDS_EACH = 9


class GuideStrip(QWidget):
    """A strip with one sentence; the next comes after a while, or by key or button.

    Parameters
    ----------
    sentences : sequence of str
        None of them: the strip stays hidden.
    """

    def __init__(self, sentences: Sequence[str]) -> None:
        super().__init__()
        self._sentences = tuple(sentences)
        self._at = 0
        self.words = QLabel("")
        self.words.setWordWrap(True)
        self.words.setAccessibleName(say("what to watch now"))
        self.more = QPushButton(say("Next (G or /)"))
        self.more.setAccessibleName(say("next sentence of the guide"))
        self.more.clicked.connect(self.forward)
        layout = QHBoxLayout(self)
        layout.setContentsMargins(8, 2, 8, 2)
        layout.addWidget(self.words, 1)
        layout.addWidget(self.more)
        self._timer = QTimer(self)
        self._timer.setInterval(SECONDS_EACH * 1000)
        self._timer.timeout.connect(self.forward)
        self.setVisible(bool(self._sentences))
        if self._sentences:
            self._show()
            self._timer.start()

    def _show(self) -> None:
        self.words.setText(
            f"{self._at + 1}/{len(self._sentences)}  {sentence(self._sentences[self._at])}"
        )
        self.more.setVisible(self._at + 1 < len(self._sentences))

    def forward(self) -> None:
        """Show the next sentence; the last one stays."""
        if self._at + 1 >= len(self._sentences):
            self._timer.stop()
            return
        self._at += 1
        self._show()
        self._timer.start()
