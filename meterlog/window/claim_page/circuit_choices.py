"""CircuitChoices: which circuit checks that were kept by themselves go in."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from pathlib import Path

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QCheckBox, QFrame, QHBoxLayout, QLabel, QPushButton, QVBoxLayout

from meterlog.window.claim_page.recording_facts import RecordingFacts
from meterlog.window.claim_page.side_choice import tell, told_label
from meterlog.window.sentences import sentence
from meterlog.window.words import say


class CircuitChoices(QFrame):
    """A box to tick for each.

    ``other`` is emitted to choose a folder elsewhere, ``ticked`` when others go in.
    """

    other = Signal()
    changed = Signal()
    ticked = Signal()

    def __init__(self) -> None:
        super().__init__()
        self.setProperty("rank", "panel")
        heading = QLabel(say("Circuit checks kept by themselves"))
        heading.setProperty("rank", "title")
        self.browse = QPushButton(say("Other…"))
        self.browse.setAccessibleName(say("choose the folder of a circuit check"))
        self.browse.clicked.connect(self.other)
        self.none = told_label("second", say("circuit checks"))
        self.warnings = told_label("caution", say("warnings about the circuit checks"))
        self.ticks: dict[Path, QCheckBox] = {}
        self._left_out: set[Path] = set()
        head = QHBoxLayout()
        head.addWidget(heading, 1)
        head.addWidget(self.browse)
        self._column = QVBoxLayout()
        column = QVBoxLayout(self)
        column.setContentsMargins(7, 4, 7, 6)
        column.setSpacing(3)
        column.addLayout(head)
        column.addWidget(self.none)
        column.addLayout(self._column)
        column.addWidget(self.warnings)

    def show_list(self, folders: Sequence[Path]) -> None:
        """Offer checks; those that were not left out go in."""
        if tuple(self.ticks) != tuple(folders):
            for old in self.ticks.values():
                old.hide()
                old.deleteLater()
            self.ticks = {folder: self._tick(folder) for folder in folders}
            self.changed.emit()
        tell(
            self.none,
            "" if folders else say("None. Those made while recording go in with the run."),
        )

    def _tick(self, folder: Path) -> QCheckBox:
        tick = QCheckBox(folder.name)
        tick.setAccessibleName(say("put in the circuit check {folder}", folder=folder.name))
        tick.setToolTip(str(folder))
        tick.setChecked(folder not in self._left_out)
        tick.toggled.connect(lambda on, folder=folder: self._on_tick(folder, on=on))
        self._column.addWidget(tick)
        return tick

    def _on_tick(self, folder: Path, *, on: bool) -> None:
        if on:
            self._left_out.discard(folder)
        else:
            self._left_out.add(folder)
        self.ticked.emit()

    @property
    def folders(self) -> tuple[Path, ...]:
        """The checks that go in."""
        return tuple(folder for folder, tick in self.ticks.items() if tick.isChecked())

    def show_facts(self, facts: Mapping[Path, RecordingFacts]) -> None:
        """Say what speaks against a check."""
        lines = []
        for folder in self.ticks:
            known = facts.get(folder)
            told = (known.mark, *known.warnings, known.trouble) if known is not None else ()
            lines += [f"{folder.name}: {sentence(one)}" for one in told if one]
        tell(self.warnings, "\n".join(lines))

    def in_order(self) -> tuple[QPushButton | QCheckBox, ...]:
        """Give what Tab goes through, in the order in which it is read."""
        return self.browse, *self.ticks.values()
