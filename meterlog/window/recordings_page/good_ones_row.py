"""GoodOnesRow: by which table of baselines the recordings are held, and what is known of it."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from PySide6.QtCore import QSignalBlocker, Signal
from PySide6.QtWidgets import QHBoxLayout, QLabel, QPushButton, QSizePolicy, QWidget

from meterlog.window.elided_label import ElidedLabel
from meterlog.window.good_ones.beside_words import table_told
from meterlog.window.good_ones.kept_choice import BY_ITSELF, NO_TABLE
from meterlog.window.steady_boxes import SteadyComboBox
from meterlog.window.words import say


class GoodOnesRow(QWidget):
    """One line. ``chosen`` is emitted with a choice as it is kept, ``browse`` to look for one."""

    chosen = Signal(object)
    browse = Signal()

    def __init__(self) -> None:
        super().__init__()
        self.tables = SteadyComboBox()
        self.tables.setAccessibleName(say("table of good ones that the currents are held against"))
        self.tables.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Fixed)
        self.tables.setMinimumWidth(160)
        self.other = QPushButton(say("Table…"))
        self.other.setAccessibleName(
            say("choose the table of baselines that meterlog screen has written, or its folder")
        )
        self.told = ElidedLabel("")
        self.told.setAccessibleName(say("what the table of good ones holds"))
        self.tables.currentIndexChanged.connect(
            lambda _: self.chosen.emit(self.tables.currentData())
        )
        self.other.clicked.connect(self.browse)
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.addWidget(QLabel(say("Good ones")))
        row.addWidget(self.tables, 3)
        row.addWidget(self.other)
        row.addWidget(self.told, 2)

    def in_order(self) -> tuple[QWidget, ...]:
        """Give what Tab goes through, in the order in which it is read."""
        return self.tables, self.other

    def show_tables(self, tables: Sequence[Path], choice: str | None) -> None:
        """List what can be chosen.

        Parameters
        ----------
        tables : sequence of Path
            As found, that written last first.
        choice : str or None
            What is chosen, as it is kept.
        """
        found = table_told(tables[0]) if tables else say("none found")
        lines: list[tuple[str, str | None]] = [
            (say("found by itself: {found}", found=found), BY_ITSELF),
            (say("none"), NO_TABLE),
            *((table_told(one), str(one)) for one in tables),
        ]
        values = [value for _, value in lines]
        if choice not in values and choice is not None:
            lines.append((table_told(Path(choice)), choice))
            values.append(choice)
        shown = [self.tables.itemText(at) for at in range(self.tables.count())]
        if shown == [words for words, _ in lines] and self.tables.currentData() == choice:
            return
        with QSignalBlocker(self.tables):
            self.tables.clear()
            for words, value in lines:
                self.tables.addItem(words, value)
            self.tables.setCurrentIndex(values.index(choice))
        self.tables.setToolTip(self.tables.currentText())

    def tell(self, words: str) -> None:
        """Say what is known of the table."""
        if words != self.told.text():
            self.told.setText(words)
