"""JobsShown: beside each folder of a job what its card says, where a folder is chosen."""

from __future__ import annotations

from pathlib import Path

from PySide6.QtCore import QModelIndex, QPersistentModelIndex, QSortFilterProxyModel, Qt
from PySide6.QtWidgets import QFileDialog, QFileSystemModel, QHeaderView, QTreeView

from meterlog.model.errors import MeterlogError
from meterlog.model.visible_text import one_line
from meterlog.window.words import say
from meterlog.work.job_cards import load_card
from meterlog.work.job_folder import CARD

_TYPE = 2
"""Column of the dialog that says of every folder that it is one."""
_DISPLAY = Qt.ItemDataRole.DisplayRole
_Index = QModelIndex | QPersistentModelIndex


class JobsShown(QSortFilterProxyModel):
    """Says work order and vehicle in the place of the kind of file.

    Parameters
    ----------
    dialog : QFileDialog
        One of Qt's own.
    """

    def __init__(self, dialog: QFileDialog) -> None:
        super().__init__(dialog)
        self._words: dict[str, str] = {}
        dialog.setProxyModel(self)
        for tree in dialog.findChildren(QTreeView):
            head = tree.header()
            head.setStretchLastSection(False)
            head.setSectionResizeMode(_TYPE, QHeaderView.ResizeMode.Stretch)
            tree.hideColumn(1)  # the size, which a folder has not

    def data(self, index: _Index, role: int = _DISPLAY) -> object:
        """Give what is shown of a folder."""
        source = self.sourceModel()
        if index.column() == _TYPE and role == _DISPLAY and isinstance(source, QFileSystemModel):
            return self._said(source.filePath(self.mapToSource(index)))
        return super().data(index, role)

    def headerData(self, section: int, orientation: Qt.Orientation, role: int = _DISPLAY) -> object:
        """Name the column."""
        if section == _TYPE and role == _DISPLAY and orientation is Qt.Orientation.Horizontal:
            return say("Job")
        return super().headerData(section, orientation, role)

    def _said(self, folder: str) -> str:
        if folder not in self._words:
            try:
                card = load_card(Path(folder) / CARD)
            except MeterlogError:
                # A folder of another kind, or one that is refused, with the reason, when chosen.
                self._words[folder] = ""
            else:
                parts = (card.work_order, card.vehicle)
                self._words[folder] = one_line(" · ".join(one for one in parts if one))
        return self._words[folder]
