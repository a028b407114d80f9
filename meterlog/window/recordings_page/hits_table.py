"""HitsTable: the table of what was found; Enter opens."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import (
    QItemSelection,
    QItemSelectionModel,
    QModelIndex,
    QPersistentModelIndex,
    QSize,
    Qt,
    Signal,
)
from PySide6.QtGui import QKeyEvent, QResizeEvent
from PySide6.QtWidgets import QAbstractItemView, QHeaderView, QTableView

from meterlog.evidence.palette import Palette
from meterlog.window.recordings_page.hit_words import SHARES, USUAL
from meterlog.window.recordings_page.hits_model import HitsModel
from meterlog.window.words import say
from meterlog.work.library import Hit

_SHEET = """
QTableView {{ background: {panel}; color: {ink}; border: 1px solid {edge}; border-radius: 3px;
    selection-background-color: {accent}; selection-color: {on_accent};
    alternate-background-color: {ground}; }}
QTableView:focus {{ border: 2px solid {accent}; }}
QTableView::item {{ padding: 0 4px; }}
QTableView::item:selected {{ background: {accent}; color: {on_accent}; }}
QTableCornerButton::section {{ background: {ground}; border: none; }}
"""
_Index = QModelIndex | QPersistentModelIndex
_ENTER = {Qt.Key.Key_Return, Qt.Key.Key_Enter}


class HitsTable(QTableView):
    """``opened`` is emitted with a hit, ``chosen`` whenever other rows are."""

    opened = Signal(object)
    chosen = Signal()

    def __init__(self) -> None:
        super().__init__()
        self.hits = HitsModel()
        self._filling = False
        self.setModel(self.hits)
        self.setAccessibleName(say("what was found; Enter opens"))
        self.setSelectionBehavior(QAbstractItemView.SelectionBehavior.SelectRows)
        self.setSelectionMode(QAbstractItemView.SelectionMode.ExtendedSelection)
        self.setEditTriggers(QAbstractItemView.EditTrigger.NoEditTriggers)
        self.setVerticalScrollMode(QAbstractItemView.ScrollMode.ScrollPerPixel)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setAlternatingRowColors(True)
        self.setShowGrid(False)
        self.setWordWrap(False)
        self.setTabKeyNavigation(False)
        self.setSortingEnabled(True)
        self.horizontalHeader().setSortIndicator(0, Qt.SortOrder.DescendingOrder)
        # The head would ask at each painting whether all rows of a column are chosen.
        self.horizontalHeader().setSelectionModel(QItemSelectionModel(self.hits, self))
        self.horizontalHeader().setSectionResizeMode(QHeaderView.ResizeMode.Interactive)
        # Heights that depend on what is in the rows would have all of them looked at.
        self.verticalHeader().setSectionResizeMode(QHeaderView.ResizeMode.Fixed)
        self.verticalHeader().hide()
        self.hideColumn(USUAL)
        self.doubleClicked.connect(self._on_double_click)

    def set_palette(self, palette: Palette, pixels: int) -> None:
        """Take other colours, and rows for text of ``pixels`` height."""
        colours = {
            name: getattr(palette, name)
            for name in ("panel", "ink", "edge", "accent", "on_accent", "ground")
        }
        self.setStyleSheet(_SHEET.format(**colours))
        self.verticalHeader().setMinimumSectionSize(1)
        self.verticalHeader().setDefaultSectionSize(round(pixels * 1.9))

    def minimumSizeHint(self) -> QSize:
        """Give room for a few rows."""
        return QSize(200, self.verticalHeader().defaultSectionSize() * 4)

    def show_hits(self, hits: Sequence[Hit]) -> None:
        """Show these; rows that were chosen stay so, and the view stays where it was."""
        if tuple(hits) == self.hits.hits:
            return
        kept = {hit.folder for hit in self.chosen_hits()}
        at = self.current_hit()
        bar = self.verticalScrollBar().value()
        self._filling = True
        self.hits.show_hits(hits)
        self._choose({row for row, hit in enumerate(hits) if hit.folder in kept})
        rows = (row for row, hit in enumerate(hits) if at is not None and hit.folder == at.folder)
        row = next(rows, 0 if hits else -1)
        index = self.hits.index(row, 0)
        keep = QItemSelectionModel.SelectionFlag.NoUpdate
        both = QItemSelectionModel.SelectionFlag.Select | QItemSelectionModel.SelectionFlag.Rows
        self.selectionModel().setCurrentIndex(index, keep if kept else both)
        self.verticalScrollBar().setValue(bar)
        self._filling = False
        self.chosen.emit()

    def _choose(self, rows: set[int]) -> None:
        """Choose rows, each run of neighbours at once."""
        selection = QItemSelection()
        last = self.hits.columnCount() - 1
        for row in sorted(rows - {row + 1 for row in rows}):
            end = row
            while end + 1 in rows:
                end += 1
            selection.select(self.hits.index(row, 0), self.hits.index(end, last))
        self.selectionModel().select(selection, QItemSelectionModel.SelectionFlag.ClearAndSelect)

    def chosen_hits(self) -> tuple[Hit, ...]:
        """Give the rows that are chosen, from the top."""
        ranges = sorted(
            (one.top(), one.bottom()) for one in self.selectionModel().selection().toList()
        )
        known = self.hits.hits
        rows = dict.fromkeys(row for top, end in ranges for row in range(top, end + 1))
        return tuple(known[row] for row in rows if row < len(known))

    def current_hit(self) -> Hit | None:
        """Give the row the focus is on."""
        row = self.currentIndex().row()
        return self.hits.hits[row] if 0 <= row < len(self.hits.hits) else None

    def selectionChanged(self, now: QItemSelection, before: QItemSelection) -> None:
        """Tell that other rows are chosen."""
        super().selectionChanged(now, before)
        if not self._filling:
            self.chosen.emit()

    def currentChanged(self, now: _Index, before: _Index) -> None:
        """Tell that the focus is on another row."""
        super().currentChanged(now, before)
        if not self._filling:
            self.chosen.emit()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Open with Enter."""
        hit = self.current_hit()
        if event.key() in _ENTER and hit is not None:
            self.opened.emit(hit)
            return
        super().keyPressEvent(event)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Share the width out among the columns."""
        super().resizeEvent(event)
        self._share_out()

    def show_usual(self, *, shown: bool) -> None:
        """Show the column that says how currents lie beside good ones, or hide it."""
        if self.isColumnHidden(USUAL) is shown:
            self.setColumnHidden(USUAL, not shown)
            self._share_out()

    def _share_out(self) -> None:
        room = self.viewport().width()
        shares = {at: one for at, one in enumerate(SHARES) if not self.isColumnHidden(at)}
        for column, share in shares.items():
            self.setColumnWidth(column, room * share // sum(shares.values()))

    def _on_double_click(self, index: QModelIndex) -> None:
        if index.row() < len(self.hits.hits):
            self.opened.emit(self.hits.hits[index.row()])
