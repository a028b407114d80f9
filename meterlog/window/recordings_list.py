"""RecordingsList: the newest recordings of a folder, to be opened with one touch."""

from __future__ import annotations

from pathlib import Path

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import (
    QLabel,
    QListWidget,
    QListWidgetItem,
    QPushButton,
    QVBoxLayout,
    QWidget,
)

from meterlog.recording import find_unsealed

NEWEST = 40


def newest_recordings(parent: Path) -> list[Path]:
    """Give the newest recordings in a folder, newest first; none where it can't be read."""
    try:
        found = [p for p in parent.iterdir() if (p / "data" / "about.json").is_file()]
        return sorted(found, key=lambda p: p.stat().st_mtime, reverse=True)[:NEWEST]
    except OSError:
        return []


class RecordingsList(QWidget):
    """A list. ``chosen`` is emitted with the folder to open, ``mend`` with those cut off."""

    chosen = Signal(object)
    mend = Signal(object)

    def __init__(self) -> None:
        super().__init__()
        title = QLabel("Recordings")
        title.setProperty("rank", "title")
        self.list = QListWidget()
        self.list.setAccessibleName("recordings, newest first")
        self.list.itemActivated.connect(self._on_choice)
        self._unsealed: tuple[Path, ...] = ()
        self.cut_off = QPushButton("")
        self.cut_off.setAccessibleName("seal the recordings that were cut off")
        self.cut_off.clicked.connect(self._on_mend)
        self.cut_off.hide()
        layout = QVBoxLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.addWidget(title)
        layout.addWidget(self.list, 1)
        layout.addWidget(self.cut_off)

    def show_folder(self, parent: Path) -> None:
        """Show the recordings of a folder; one that was never sealed says so."""
        self.list.clear()
        for folder in newest_recordings(parent):
            sealed = (folder / "bagit.txt").is_file()
            item = QListWidgetItem(folder.name if sealed else f"{folder.name}  (not sealed)")
            item.setData(Qt.ItemDataRole.UserRole, folder)
            item.setToolTip(str(folder))
            self.list.addItem(item)
        self._unsealed = find_unsealed(parent)
        many = len(self._unsealed)
        self.cut_off.setText(f"{many} cut off: seal {'it' if many == 1 else 'them'} as recovered")
        self.cut_off.setVisible(bool(many))
        if not self.list.count():
            self.list.addItem(QListWidgetItem("None yet."))

    def in_order(self) -> tuple[QWidget, ...]:
        """Give what Tab goes through, in the order in which it is read."""
        return self.list, self.cut_off

    def _on_mend(self) -> None:
        self.mend.emit(self._unsealed)

    def _on_choice(self, item: QListWidgetItem) -> None:
        folder = item.data(Qt.ItemDataRole.UserRole)
        if folder is not None:
            self.chosen.emit(folder)
