"""RunPlace: by which limits the next run is judged, and in which folder it is kept."""

from __future__ import annotations

from pathlib import Path

from PySide6.QtCore import QEvent
from PySide6.QtWidgets import QHBoxLayout, QLabel, QLineEdit, QVBoxLayout, QWidget

from meterlog.profile import names
from meterlog.window.one_line import OneLine
from meterlog.window.steady_boxes import SteadyComboBox
from meterlog.window.words import say


class RunPlace(QWidget):
    """Two fields, and under them why nothing can be kept in the folder, where that is so.

    Parameters
    ----------
    folder : Path
        Proposed.
    """

    def __init__(self, folder: Path) -> None:
        super().__init__()
        self.limits = SteadyComboBox()
        self.limits.setAccessibleName(say("limits by which the current is judged"))
        self.limits.addItems(list(names("limits")))
        self.folder = QLineEdit(str(folder))
        self.folder.setAccessibleName(say("folder for recordings"))
        self.barred = QLabel("")
        self.barred.setProperty("rank", "caution")
        self.barred.setWordWrap(True)
        self.barred.setAccessibleName(say("why nothing can be kept in the folder"))
        self._line = OneLine("caution", self)
        policy = self.barred.sizePolicy()
        policy.setRetainSizeWhenHidden(True)
        self.barred.setSizePolicy(policy)
        self.barred.hide()
        row = QHBoxLayout()
        for words, field, share in (
            (say("limits"), self.limits, 1),
            (say("folder"), self.folder, 2),
        ):
            row.addWidget(QLabel(words))
            row.addWidget(field, share)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.addLayout(row)
        column.addWidget(self.barred)

    def changeEvent(self, event: QEvent) -> None:
        """Keep a line free for the words: they come while the hand is on what stands below."""
        super().changeEvent(event)
        if event.type() in {QEvent.Type.FontChange, QEvent.Type.StyleChange}:
            self.barred.setMinimumHeight(self._line.pixels)

    def bar(self, words: str) -> None:
        """Say why no recording can be kept in the folder; empty where one can."""
        self.barred.setText(words)
        self.barred.setVisible(bool(words))
