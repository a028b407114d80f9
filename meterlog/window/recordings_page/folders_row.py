"""FoldersRow: which folders are looked into, which of them is gone, and what was cut off."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from pathlib import Path

from PySide6.QtCore import QSignalBlocker, Signal
from PySide6.QtWidgets import QHBoxLayout, QLabel, QPushButton, QSizePolicy, QWidget

from meterlog.window.steady_boxes import SteadyComboBox
from meterlog.window.words import later, say, say_many

_ALL = later("all folders")


class FoldersRow(QWidget):
    """One line. ``narrowed`` is emitted when other folders are to be looked into."""

    narrowed = Signal()
    watch_asked = Signal()
    forget_asked = Signal(object)
    mend_asked = Signal()
    judge_asked = Signal()

    def __init__(self) -> None:
        super().__init__()
        self.folders = SteadyComboBox()
        self.folders.setAccessibleName(say("folders to look into"))
        self.folders.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Fixed)
        self.folders.setMinimumWidth(160)
        self.watch = QPushButton(say("Watch a folder…"))
        self.watch.setAccessibleName(
            say("look into another folder too, such as a share or a stick")
        )
        self.forget = QPushButton(say("Leave it out"))
        self.forget.setAccessibleName(
            say("look into this folder no more; nothing in it is touched")
        )
        self.mend = QPushButton("")
        self.judge = QPushButton("")
        self.many = QLabel("")
        self.many.setAccessibleName(say("how many were found"))
        self._watched: frozenset[Path] = frozenset()
        self._roots: tuple[Path, ...] = ()
        self.folders.currentIndexChanged.connect(self._on_folder)
        self.watch.clicked.connect(self.watch_asked)
        self.forget.clicked.connect(lambda: self.forget_asked.emit(self.folders.currentData()))
        self.mend.clicked.connect(self.mend_asked)
        self.judge.clicked.connect(self.judge_asked)
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.addWidget(self.many)
        row.addWidget(QLabel(say("in")))
        row.addWidget(self.folders, 1)
        for button in (self.forget, self.watch, self.mend, self.judge):
            row.addWidget(button)
        for button in (self.forget, self.mend, self.judge):
            button.hide()

    def in_order(self) -> tuple[QWidget, ...]:
        """Give what Tab goes through, in the order in which it is read."""
        return self.folders, self.forget, self.watch, self.mend, self.judge

    def show_folders(
        self, roots: Sequence[Path], watched: Sequence[Path], gone: Mapping[Path, str]
    ) -> None:
        """List the folders; those that can't be looked into say so."""
        self._watched = frozenset(watched)
        words = [say(_ALL), *(_told(root, gone) for root in roots)]
        shown = [self.folders.itemText(at) for at in range(self.folders.count())]
        if words == shown and tuple(roots) == self._roots:
            return
        kept = self.folders.currentData()
        self._roots = tuple(roots)
        with QSignalBlocker(self.folders):
            self.folders.clear()
            for text, root in zip(words, (None, *roots), strict=True):
                self.folders.addItem(text, root)
            self.folders.setCurrentIndex(self._roots.index(kept) + 1 if kept in self._roots else 0)
        self._on_folder()

    def roots(self) -> tuple[Path, ...]:
        """Give the folders to look into."""
        one = self.folders.currentData()
        return self._roots if one is None else (one,)

    def show_many(self, shown: int | None) -> None:
        """Say how many were found; None: nobody knows."""
        self.many.setText("" if shown is None else say("{shown} found", shown=shown))

    def show_searching(self) -> None:
        """Say that what is on show was found to an older question."""
        self.many.setText(say("searching…"))

    def show_cut_off(self, many: int, *, busy: bool) -> None:
        """Offer to seal what was cut off."""
        self.mend.setText(
            say_many(
                many,
                "{many} cut off: seal it (C)",
                "{many} cut off: seal them (C)",
                many=many,
            )
        )
        self.mend.setAccessibleName(say("seal {many} that were cut off, as recovered", many=many))
        self.mend.setVisible(bool(many))
        self.mend.setDisabled(busy)

    def show_to_judge(self, many: int) -> None:
        """Offer to judge what has no verdict; 0 offers nothing."""
        self.judge.setText(say("Judge {many}", many=many))
        self.judge.setAccessibleName(say("judge the {many} without a verdict", many=many))
        self.judge.setVisible(bool(many))

    def _on_folder(self) -> None:
        self.forget.setVisible(self.folders.currentData() in self._watched)
        self.narrowed.emit()


def _told(root: Path, gone: Mapping[Path, str]) -> str:
    return say("{root} — not there now", root=root) if root in gone else str(root)
