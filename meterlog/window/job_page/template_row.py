"""TemplateRow: fill the card from a template, or keep it as one."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import QObject, Qt, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QLineEdit, QPushButton, QWidget

from meterlog.window.steady_boxes import SteadyComboBox
from meterlog.window.words import later, say

_NONE = later("none yet")


class _Name(QLineEdit):
    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Let Esc leave it."""
        if event.key() == Qt.Key.Key_Escape:
            self.clearFocus()
        else:
            super().keyPressEvent(event)


class TemplateRow:
    """Controls for templates; ``fill`` and ``keep`` are emitted by ``signals``.

    They stand in a row of the page, so this is no widget itself.
    """

    def __init__(self) -> None:
        self.signals = _Signals()
        self.box = SteadyComboBox()
        self.box.setAccessibleName(say("template"))
        self.box.setMinimumContentsLength(8)
        self.fill = QPushButton(say("Fill in"))
        self.fill.setAccessibleName(say("fill empty fields from the template"))
        self.name = _Name()
        self.name.setAccessibleName(say("name for a new template"))
        self.name.setPlaceholderText(say("new name"))
        self.name.setMinimumWidth(90)
        self.keep = QPushButton(say("Keep"))
        self.keep.setAccessibleName(say("keep what repeats on this card as a template"))
        self.show_names(())
        self.fill.clicked.connect(lambda: self.signals.fill.emit(self.box.currentText()))
        self.keep.clicked.connect(self._on_keep)
        self.name.returnPressed.connect(self._on_keep)

    def _on_keep(self) -> None:
        self.signals.keep.emit(self.name.text().strip())

    def show_names(self, names: Sequence[str]) -> None:
        """Offer templates; the one that was chosen stays so."""
        chosen = self.box.currentText()
        self.box.clear()
        self.box.addItems(list(names))
        if chosen in names:
            self.box.setCurrentText(chosen)
        # Not hidden: who never kept one shall see that there are templates.
        if not names:
            self.box.addItem(say(_NONE))
        self.box.setEnabled(bool(names))
        self.fill.setEnabled(bool(names))

    def groups(self) -> list[tuple[str, list[QWidget]]]:
        """Give what stands in the row."""
        return [(say("Template"), [self.box, self.fill, self.name, self.keep])]

    def in_order(self) -> tuple[QWidget, ...]:
        """Give what Tab goes through, in the order in which it is read."""
        return self.box, self.fill, self.name, self.keep


class _Signals(QObject):
    """Where the signals of what is no widget come from."""

    fill = Signal(str)
    keep = Signal(str)
