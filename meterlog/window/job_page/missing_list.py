"""MissingList: what a reviewer will ask and the card does not say; each line leads to its field."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QLabel, QListWidget, QListWidgetItem, QVBoxLayout, QWidget

from meterlog.window.whole_lines import WholeLines
from meterlog.window.words import say


class MissingList(QWidget):
    """``chosen`` is emitted with the key of a field."""

    chosen = Signal(str)

    def __init__(self) -> None:
        super().__init__()
        self.title = QLabel("")
        self.title.setProperty("rank", "title")
        self.list = QListWidget()
        self.list.setAccessibleName(say("missing for a claim, most asked for first"))
        self.list.setItemDelegate(WholeLines(self.list))
        self.list.setWordWrap(True)
        self.list.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        # Not itemActivated: it needs two clicks where the desktop says so.
        self.list.itemClicked.connect(self._on_choice)
        self.list.itemActivated.connect(self._on_choice)
        self._shown: tuple[tuple[str, str], ...] | None = None
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(3)
        column.addWidget(self.title)
        column.addWidget(self.list, 1)

    def show_missing(self, missing: Sequence[tuple[str, str]]) -> None:
        """Show what is missing: (key of the field, words) each."""
        if tuple(missing) == self._shown:
            return
        self._shown = tuple(missing)
        self.title.setText(
            say("Missing for a claim: {missing}", missing=len(missing))
            if missing
            else say("Nothing is missing for a claim")
        )
        self.list.clear()
        for key, words in missing:
            item = QListWidgetItem(say(words))
            item.setData(Qt.ItemDataRole.UserRole, key)
            self.list.addItem(item)
        self.list.setVisible(bool(missing))

    def _on_choice(self, item: QListWidgetItem) -> None:
        key = item.data(Qt.ItemDataRole.UserRole)
        if isinstance(key, str):
            self.chosen.emit(key)
