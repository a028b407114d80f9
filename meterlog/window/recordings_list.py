"""RecordingsList: the newest recordings of a folder, to be opened with one touch."""

from __future__ import annotations

import os
from dataclasses import dataclass
from pathlib import Path

from PySide6.QtCore import Qt, QTimer, Signal
from PySide6.QtWidgets import (
    QLabel,
    QListWidget,
    QListWidgetItem,
    QPushButton,
    QVBoxLayout,
    QWidget,
)

from meterlog.recording import find_unsealed
from meterlog.window.long_work import LongWork
from meterlog.window.words import say, say_many

NEWEST = 40
_LOOK_MS = 10


def newest_recordings(parent: Path) -> list[Path]:
    """Give the newest recordings in a folder, newest first; none where it can't be read."""
    try:
        found = [p for p in parent.iterdir() if (p / "data" / "about.json").is_file()]
        return sorted(found, key=lambda p: p.stat().st_mtime, reverse=True)[:NEWEST]
    except OSError:
        return []


@dataclass(frozen=True, slots=True)
class _Found:
    """What lies in a folder: the newest with whether they are sealed, and those cut off."""

    newest: tuple[tuple[Path, bool], ...]
    unsealed: tuple[Path, ...]
    barred: str


def _look_into(parent: Path) -> _Found:
    newest = tuple((one, (one / "bagit.txt").is_file()) for one in newest_recordings(parent))
    return _Found(newest, find_unsealed(parent), _barred(parent))


def _barred(parent: Path) -> str:
    """Say why no recording can be made in a folder; empty where one can, as far as is told."""
    # Folders that are not there yet are made.
    there = next((place for place in (parent, *parent.parents) if os.path.lexists(place)), parent)
    if not there.is_dir():
        return say("{there} is no folder. Choose another folder.", there=there)
    if not os.access(there, os.W_OK | os.X_OK):
        return say("You may not write in {there}. Choose another folder.", there=there)
    return ""


class RecordingsList(QWidget):
    """A list. ``chosen`` is emitted with the folder to open, ``mend`` with those cut off.

    ``looked`` is emitted with why nothing can be kept in the folder; empty where it can.

    The folder is read in a thread: with thousands of recordings, or on a disk that has to wake up,
    it takes too long for the window to wait.
    """

    chosen = Signal(object)
    mend = Signal(object)
    looked = Signal(str)

    def __init__(self) -> None:
        super().__init__()
        title = QLabel(say("Recordings"))
        title.setProperty("rank", "title")
        self.list = QListWidget()
        self.list.setAccessibleName(say("recordings, newest first"))
        self.list.itemActivated.connect(self._on_choice)
        self._unsealed: tuple[Path, ...] = ()
        self._reading: LongWork[_Found] = LongWork("recordings")
        self._wanted: Path | None = None
        self._folder: Path | None = None
        self._timer = QTimer(self)
        self._timer.setInterval(_LOOK_MS)
        self._timer.timeout.connect(self._fetch)
        self.cut_off = QPushButton("")
        self.cut_off.setAccessibleName(say("seal the recordings that were cut off"))
        self.cut_off.clicked.connect(self._on_mend)
        self.cut_off.hide()
        layout = QVBoxLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.addWidget(title)
        layout.addWidget(self.list, 1)
        layout.addWidget(self.cut_off)

    def show_folder(self, parent: Path) -> None:
        """Show the recordings of a folder; one that was never sealed says so."""
        self._wanted = parent
        if parent != self._folder:
            # What lies in the folder before is not in this one; a disk may have to wake up.
            self._folder = parent
            self._show(_Found((), (), ""), say("being read…"))
        self._go_on()
        self._timer.start()

    @property
    def reading(self) -> bool:
        """True until what was asked for is on show."""
        return self._reading.busy or self._wanted is not None

    def _go_on(self) -> None:
        parent = self._wanted
        if parent is not None and self._reading.begin(lambda _: _look_into(parent)):
            self._wanted = None

    def _fetch(self) -> None:
        outcome = self._reading.fetch()
        if outcome is not None and self._wanted is None:
            found = outcome[0] or _Found((), (), outcome[1])
            self._show(found)
            self.looked.emit(found.barred)
        self._go_on()
        if not self.reading:
            self._timer.stop()

    def _show(self, found: _Found, none: str = "") -> None:
        chosen = self.list.selectedItems()
        before = chosen[0].data(Qt.ItemDataRole.UserRole) if chosen else None
        self.list.clear()
        for folder, sealed in found.newest:
            item = QListWidgetItem(
                folder.name if sealed else say("{folder}  (not sealed)", folder=folder.name)
            )
            item.setData(Qt.ItemDataRole.UserRole, folder)
            item.setToolTip(str(folder))
            self.list.addItem(item)
            if folder == before:
                self.list.setCurrentItem(item)
        self._unsealed = found.unsealed
        many = len(self._unsealed)
        self.cut_off.setText(
            say_many(
                many,
                "{many} cut off: seal it as recovered",
                "{many} cut off: seal them as recovered",
                many=many,
            )
        )
        self.cut_off.setVisible(bool(many))
        if not self.list.count():
            self.list.addItem(QListWidgetItem(none or say("None yet.")))

    def in_order(self) -> tuple[QWidget, ...]:
        """Give what Tab goes through, in the order in which it is read."""
        return self.list, self.cut_off

    def _on_mend(self) -> None:
        self.mend.emit(self._unsealed)

    def _on_choice(self, item: QListWidgetItem) -> None:
        folder = item.data(Qt.ItemDataRole.UserRole)
        if folder is not None:
            self.chosen.emit(folder)
