"""PhotoList: the photos of the card, small, with what was lost of them."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import PurePath

from PySide6.QtCore import QSize, Qt, Signal
from PySide6.QtGui import QIcon, QKeyEvent, QPixmap
from PySide6.QtWidgets import (
    QHBoxLayout,
    QLabel,
    QListWidget,
    QListWidgetItem,
    QPushButton,
    QVBoxLayout,
    QWidget,
)

from meterlog.window.job_page.photo_files import Thumb
from meterlog.window.long_work_strip import LongWorkStrip
from meterlog.window.whole_lines import WholeLines
from meterlog.window.words import say

_REMOVING = {Qt.Key.Key_Delete, Qt.Key.Key_Backspace}


class _List(QListWidget):
    remove = Signal()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Let Delete take a photo off."""
        if event.key() in _REMOVING:
            self.remove.emit()
        else:
            super().keyPressEvent(event)


class PhotoList(QWidget):
    """``add`` is emitted to choose files, ``remove`` with the name of a photo."""

    add = Signal()
    remove = Signal(str)

    def __init__(self) -> None:
        super().__init__()
        self.title = QLabel(say("Photos"))
        self.title.setProperty("rank", "title")
        self.adding = QPushButton(say("Add photos…"))
        self.adding.setAccessibleName(say("choose pictures for the job"))
        self.adding.clicked.connect(self.add)
        self.removing = QPushButton(say("Take off"))
        self.removing.setAccessibleName(say("take the chosen photo off the card"))
        self.removing.clicked.connect(self._on_remove)
        self.list = _List()
        self.list.setAccessibleName(say("photos of the job"))
        self.list.setItemDelegate(WholeLines(self.list))
        self.list.setWordWrap(True)
        self.list.remove.connect(self._on_remove)
        self.list.currentRowChanged.connect(lambda _: self._allow())
        self.copying = LongWorkStrip()
        head = QHBoxLayout()
        head.addWidget(self.title, 1)
        head.addWidget(self.adding)
        head.addWidget(self.removing)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(3)
        column.addLayout(head)
        column.addWidget(self.copying)
        column.addWidget(self.list, 1)
        self.show_photos(())

    def set_text_height(self, pixels: int) -> None:
        """Take text of another height: small pictures are five lines high."""
        self.list.setIconSize(QSize(thumb_pixels(pixels), thumb_pixels(pixels)))

    def show_photos(self, thumbs: Sequence[Thumb]) -> None:
        """Show photos in the order of the card."""
        row = self.list.currentRow()
        self.list.clear()
        lost = sum(1 for one in thumbs if one.why.startswith("GONE"))
        self.title.setText(say("Photos: {thumbs}", thumbs=len(thumbs)) if thumbs else say("Photos"))
        for one in thumbs:
            name = PurePath(one.name).name
            item = QListWidgetItem(f"{name}\n{one.why}" if one.why else name)
            item.setData(Qt.ItemDataRole.UserRole, one.name)
            item.setToolTip(one.name)
            if one.image is not None:
                item.setIcon(QIcon(QPixmap.fromImage(one.image)))
            self.list.addItem(item)
        if not thumbs:
            none = QListWidgetItem(say("None yet: label with date code, odometer, plug, filter."))
            none.setFlags(Qt.ItemFlag.NoItemFlags)
            self.list.addItem(none)
        elif row >= 0:
            self.list.setCurrentRow(min(row, len(thumbs) - 1))
        self.list.setAccessibleDescription(say("{lost} gone", lost=lost) if lost else "")
        self._allow()

    def _allow(self) -> None:
        self.removing.setEnabled(self._chosen() is not None)

    def _chosen(self) -> str | None:
        row = self.list.currentRow()
        name = self.list.item(row).data(Qt.ItemDataRole.UserRole) if row >= 0 else None
        return name if isinstance(name, str) else None

    def _on_remove(self) -> None:
        name = self._chosen()
        if name is not None:
            self.remove.emit(name)

    def in_order(self) -> tuple[QWidget, ...]:
        """Give what Tab goes through, in the order in which it is read."""
        return self.adding, self.removing, self.copying.stop, self.list


def thumb_pixels(pixels: int) -> int:
    """Give the longer side of a small picture for text of ``pixels`` height."""
    return pixels * 5
