"""SideChoice: which recording goes in for one side of the repair, and what it is."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QFrame, QHBoxLayout, QLabel, QPushButton, QVBoxLayout, QWidget

from meterlog.window.claim_page.recording_facts import RecordingFacts
from meterlog.window.sentences import sentence
from meterlog.window.steady_boxes import SteadyComboBox
from meterlog.window.words import later, say

_NONE = later("none")


class SideChoice(QFrame):
    """``chosen`` is emitted with a folder or None, ``other`` to choose a folder elsewhere.

    Parameters
    ----------
    title : str
    name : str
        For who can't see the box.
    """

    chosen = Signal(object)
    other = Signal()

    def __init__(self, title: str, name: str) -> None:
        super().__init__()
        self.setProperty("rank", "panel")
        heading = QLabel(title)
        heading.setProperty("rank", "title")
        self.mark = QLabel("")
        self.mark.setProperty("rank", "mark")
        self.mark.setAccessibleName(say("origin of the readings, {name}", name=name))
        self.mark.hide()
        self.box = SteadyComboBox()
        self.box.setAccessibleName(name)
        self.box.setMinimumContentsLength(18)
        self.box.setSizeAdjustPolicy(
            SteadyComboBox.SizeAdjustPolicy.AdjustToMinimumContentsLengthWithIcon
        )
        self.box.activated.connect(lambda _: self.chosen.emit(self.folder))
        self.browse = QPushButton(say("Other…"))
        self.browse.setAccessibleName(say("choose another folder: {name}", name=name))
        self.browse.clicked.connect(self.other)
        self.facts = told_label("second", say("about the {name}", name=name))
        self.warnings = told_label("caution", say("warnings about the {name}", name=name))
        head = QHBoxLayout()
        head.addWidget(heading)
        head.addWidget(self.mark)
        head.addStretch(1)
        row = QHBoxLayout()
        row.addWidget(self.box, 1)
        row.addWidget(self.browse)
        column = QVBoxLayout(self)
        column.setContentsMargins(7, 4, 7, 6)
        column.setSpacing(3)
        column.addLayout(head)
        column.addLayout(row)
        column.addWidget(self.facts)
        column.addWidget(self.warnings)

    @property
    def folder(self) -> Path | None:
        """The recording that is chosen; None for none."""
        found = self.box.currentData()
        return found if isinstance(found, Path) else None

    def show_list(self, recordings: Sequence[tuple[Path, str]], chosen: Path | None) -> None:
        """Offer recordings, (folder, which part) each, the newest first."""
        self.box.clear()
        self.box.addItem(say(_NONE), None)
        for folder, part in recordings:
            self.box.addItem(f"{folder.name}  ({sentence(part)})", folder)
            self.box.setItemData(self.box.count() - 1, str(folder), Qt.ItemDataRole.ToolTipRole)
        at = next((n for n, (folder, _) in enumerate(recordings, 1) if folder == chosen), 0)
        self.box.setCurrentIndex(at)

    def show_facts(self, facts: RecordingFacts | None) -> None:
        """Say what the chosen recording is; None: it is being read, or there is none."""
        if self.folder is None:
            tell(self.facts, say("No recording: the pack will say nothing of this side."))
            tell(self.warnings, "")
            tell(self.mark, "")
            return
        if facts is None:
            tell(self.facts, say("being read…"))
            tell(self.warnings, "")
            tell(self.mark, "")
            return
        edits = [say("Edit on top: {one_}", one_=sentence(one)) for one in facts.edits]
        tell(self.facts, "\n".join((*facts.lines, *edits)))
        tell(self.warnings, sentence("\n".join((*facts.warnings, facts.trouble)).strip()))
        tell(self.mark, facts.mark)

    def in_order(self) -> tuple[QWidget, ...]:
        """Give what Tab goes through, in the order in which it is read."""
        return self.box, self.browse


def told_label(rank: str, name: str) -> QLabel:
    """Make a label for words that come and go."""
    label = QLabel("")
    label.setProperty("rank", rank)
    label.setAccessibleName(name)
    label.setTextFormat(Qt.TextFormat.PlainText)
    label.setWordWrap(True)
    label.hide()
    return label


def tell(label: QLabel, words: str) -> None:
    """Show words; empty takes the label away."""
    label.setText(words)
    label.setVisible(bool(words))
