"""HitsModel: what was found, as a table; thousands of rows cost what is seen of them."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import QAbstractTableModel, QModelIndex, QPersistentModelIndex, Qt, Signal

from meterlog.window.recordings_page.hit_words import COLUMNS, cells_of
from meterlog.window.words import say
from meterlog.work.library import Hit

_Index = QModelIndex | QPersistentModelIndex
_ROOT = QModelIndex()


class HitsModel(QAbstractTableModel):
    """Rows of hits. ``sorting`` is emitted with the column and direction that are asked for."""

    sorting = Signal(int, bool)

    def __init__(self) -> None:
        super().__init__()
        self.hits: tuple[Hit, ...] = ()
        self._cells: dict[int, tuple[str, ...]] = {}

    def show_hits(self, hits: Sequence[Hit]) -> None:
        """Show these."""
        self.beginResetModel()
        self.hits = tuple(hits)
        self._cells = {}
        self.endResetModel()

    def rowCount(self, parent: _Index = _ROOT) -> int:
        """Give the number of rows."""
        return 0 if parent.isValid() else len(self.hits)

    def columnCount(self, parent: _Index = _ROOT) -> int:
        """Give the number of columns."""
        return 0 if parent.isValid() else len(COLUMNS)

    def data(self, index: _Index, role: int = Qt.ItemDataRole.DisplayRole) -> object:
        """Give the words of a cell, and where it lies."""
        if not index.isValid() or index.row() >= len(self.hits):
            return None
        if role in {Qt.ItemDataRole.DisplayRole, Qt.ItemDataRole.AccessibleTextRole}:
            if index.row() not in self._cells:
                self._cells[index.row()] = cells_of(self.hits[index.row()])
            return self._cells[index.row()][index.column()]
        if role == Qt.ItemDataRole.ToolTipRole:
            hit = self.hits[index.row()]
            return f"{cells_of(hit)[index.column()]}\n{hit.folder}"
        return None

    def headerData(
        self,
        section: int,
        orientation: Qt.Orientation,
        role: int = Qt.ItemDataRole.DisplayRole,
    ) -> object:
        """Give the head of a column."""
        across = orientation is Qt.Orientation.Horizontal
        if across and role == Qt.ItemDataRole.DisplayRole and section < len(COLUMNS):
            return say(COLUMNS[section])
        if across and role == Qt.ItemDataRole.TextAlignmentRole:
            return Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter
        return None

    def sort(self, column: int, order: Qt.SortOrder = Qt.SortOrder.AscendingOrder) -> None:
        """Ask for another order; whoever searches gives it, in the background."""
        if 0 <= column < len(COLUMNS):
            self.sorting.emit(column, order is Qt.SortOrder.DescendingOrder)
