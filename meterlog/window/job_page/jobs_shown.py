"""JobsShown: beside each folder of a job what its card says, where a folder is chosen."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from pathlib import Path

from PySide6.QtCore import QModelIndex, QPersistentModelIndex, QSortFilterProxyModel, Qt, QTimer
from PySide6.QtWidgets import QFileDialog, QFileSystemModel, QHeaderView, QTreeView

from meterlog.model.errors import MeterlogError
from meterlog.model.visible_text import one_line
from meterlog.window.long_work import LongWork, Progress
from meterlog.window.words import say
from meterlog.work.job_cards import load_card
from meterlog.work.job_folder import CARD

_TYPE = 2
"""Column of the dialog that says of every folder that it is one."""
_FETCH_MS = 30
_AT_ONCE = 16
"""Cards read before they are shown: a screenful comes in a blink, and a slow share bit by bit."""
_UNREAD = "…"
_DISPLAY = Qt.ItemDataRole.DisplayRole
_Index = QModelIndex | QPersistentModelIndex


class JobsShown(QSortFilterProxyModel):
    """Says work order and vehicle in the place of the kind of file.

    Cards are read in a thread: on a share that hangs each takes as long as it likes.

    Parameters
    ----------
    dialog : QFileDialog
        One of Qt's own.
    """

    def __init__(self, dialog: QFileDialog) -> None:
        super().__init__(dialog)
        self._words: dict[str, str] = {}
        self._asked: dict[str, None] = {}
        self._reading: LongWork[Mapping[str, str]] = LongWork("cards")
        self._under_way: tuple[str, ...] = ()
        self._timer = QTimer(self)
        self._timer.setInterval(_FETCH_MS)
        self._timer.timeout.connect(self._fetch)
        dialog.finished.connect(self._end)
        dialog.setProxyModel(self)
        self._trees = dialog.findChildren(QTreeView)
        for tree in self._trees:
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
        if folder not in self._words and folder not in self._asked:
            self._asked[folder] = None
            self._timer.start()
        return self._words.get(folder, _UNREAD)

    def _fetch(self) -> None:
        """Take what has been read, and have read what was asked for meanwhile."""
        read = self._reading.fetch()
        if read is not None:
            words, trouble = read
            if words is not None:
                self._words |= words
            elif trouble:
                self._words |= dict.fromkeys(self._under_way, trouble)
            for folder in self._under_way:
                self._asked.pop(folder, None)
            self._under_way = ()
            for tree in self._trees:
                tree.viewport().update()
        if self._reading.busy:
            return
        # The newest first: what was asked for and scrolled out of sight can wait.
        self._under_way = tuple(self._asked)[: -_AT_ONCE - 1 : -1]
        if self._under_way:
            folders = self._under_way
            self._reading.begin(lambda tell: _read(folders, tell))
        else:
            self._timer.stop()

    def _end(self) -> None:
        self._timer.stop()
        self._reading.cancel()


def _read(folders: Iterable[str], tell: Progress) -> Mapping[str, str]:
    words = {}
    for folder in folders:
        tell(0.0)
        words[folder] = _card_words(folder)
    return words


def _card_words(folder: str) -> str:
    try:
        card = load_card(Path(folder) / CARD)
    except MeterlogError:
        # A folder of another kind, or one that is refused, with the reason, when chosen.
        return ""
    return one_line(" · ".join(one for one in (card.work_order, card.vehicle) if one))
