"""MarksList: the technician's marks of a recording as they are now, and those withdrawn."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import QSignalBlocker, Qt, Signal
from PySide6.QtWidgets import QAbstractItemView, QListWidget, QListWidgetItem

from meterlog.model import Event
from meterlog.window.edits.pending_edit import mark_words
from meterlog.window.words import later, say

_WITHDRAWN = later("withdrawn: counts for nothing")


class MarksList(QListWidget):
    """A list of marks in time order. ``chosen`` is emitted with the Event, or None."""

    chosen = Signal(object)

    def __init__(self) -> None:
        super().__init__()
        self.setAccessibleName(say("marks"))
        self.setSelectionMode(QAbstractItemView.SelectionMode.SingleSelection)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self._withdrawn: frozenset[Event] = frozenset()
        self.currentItemChanged.connect(lambda *_: self.chosen.emit(self.mark()))

    def show_marks(self, standing: Sequence[Event], withdrawn: Sequence[Event]) -> None:
        """List marks; the one that was chosen, or the nearest of its kind, stays chosen."""
        before = self.mark()
        self._withdrawn = frozenset(withdrawn)
        marks = sorted((*standing, *withdrawn), key=lambda one: one.t_ns)
        with QSignalBlocker(self):
            self.clear()
            for mark in marks:
                out = mark in self._withdrawn
                item = QListWidgetItem(
                    f"✕ {mark_words(mark)}  ({say(_WITHDRAWN)})" if out else mark_words(mark)
                )
                item.setToolTip(item.text())
                item.setData(Qt.ItemDataRole.UserRole, mark)
                self.addItem(item)
            if before is not None:
                self.choose_near(before.t_ns, before)
        self.chosen.emit(self.mark())

    def choose_near(self, t_ns: int, like: Event | None = None) -> bool:
        """Choose the mark nearest to an instant, of the kind of ``like``; False without one."""
        marks = [
            (abs(mark.t_ns - t_ns), row)
            for row in range(self.count())
            if (mark := self._at(row)) is not None and (like is None or mark.kind is like.kind)
        ]
        if not marks:
            return False
        self.setCurrentRow(min(marks)[1])
        return True

    def mark(self) -> Event | None:
        """Give the mark that is chosen."""
        return self._at(self.currentRow())

    def is_withdrawn(self) -> bool:
        """Tell whether the mark that is chosen counts for nothing."""
        return self.mark() in self._withdrawn

    def _at(self, row: int) -> Event | None:
        if not 0 <= row < self.count():
            return None
        found = self.item(row).data(Qt.ItemDataRole.UserRole)
        return found if isinstance(found, Event) else None
