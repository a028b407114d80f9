"""CheckPanel: whether a pack or a recording is as it was made, and who signed it."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import (
    QFrame,
    QHBoxLayout,
    QLabel,
    QProgressBar,
    QPushButton,
    QVBoxLayout,
    QWidget,
)

from meterlog.window.claim_page.claim_options import PlainLine
from meterlog.window.claim_page.side_choice import tell, told_label
from meterlog.window.sentences import sentence
from meterlog.window.words import say

if TYPE_CHECKING:
    from meterlog.evidence.checked import Checked


class CheckPanel(QFrame):
    """``file`` and ``folder`` are emitted to choose what is to be checked."""

    file = Signal()
    folder = Signal()

    def __init__(self) -> None:
        super().__init__()
        self.setProperty("rank", "panel")
        heading = QLabel(say("Check a pack or a recording"))
        heading.setProperty("rank", "title")
        self.by_file = QPushButton(say("Zip or PDF…"))
        self.by_file.setAccessibleName(say("check a pack: choose its zip or PDF"))
        self.by_folder = QPushButton(say("Folder…"))
        self.by_folder.setAccessibleName(say("check a pack or a recording: choose its folder"))
        self.by_file.clicked.connect(self.file)
        self.by_folder.clicked.connect(self.folder)
        self.key = PlainLine()
        self.key.setAccessibleName(say("fingerprint of the key that must have signed"))
        self.key.setPlaceholderText(say("fingerprint of its maker's key, if told by another way"))
        self.busy = QProgressBar()
        self.busy.setRange(0, 0)
        self.busy.setAccessibleName(say("checking"))
        self.busy.hide()
        self.verdict = told_label("title", say("outcome of the check"))
        self.head = told_label("", say("what was checked"))
        self.lines = told_label("", say("what the check found"))
        self.lines.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
        row = QHBoxLayout()
        row.addWidget(self.by_file)
        row.addWidget(self.by_folder)
        row.addWidget(self.key, 1)
        column = QVBoxLayout(self)
        column.setContentsMargins(7, 4, 7, 6)
        column.setSpacing(3)
        column.addWidget(heading)
        column.addLayout(row)
        for widget in (self.busy, self.verdict, self.head, self.lines):
            column.addWidget(widget)

    def show_busy(self, name: str) -> None:
        """Say what is being checked."""
        self._show("title", "", say("checking {name}…", name=name), "")
        self.busy.show()

    def show_checked(self, checked: Checked) -> None:
        """Show the outcome; it is told in words, not by colour alone."""
        rank, verdict = ("title", say("Intact")) if checked.intact else ("alert", say("CHANGED"))
        self._show(rank, verdict, sentence(checked.head), "\n".join(map(sentence, checked.lines)))

    def show_trouble(self, words: str) -> None:
        """Say why nothing was checked."""
        self._show("caution", say("Not checked"), words, "")

    def _show(self, rank: str, verdict: str, head: str, lines: str) -> None:
        self.busy.hide()
        if self.verdict.property("rank") != rank:
            self.verdict.setProperty("rank", rank)
            self.verdict.style().polish(self.verdict)
        tell(self.verdict, verdict)
        tell(self.head, head)
        tell(self.lines, lines)

    def in_order(self) -> tuple[QWidget, ...]:
        """Give what Tab goes through, in the order in which it is read."""
        return self.by_file, self.by_folder, self.key
