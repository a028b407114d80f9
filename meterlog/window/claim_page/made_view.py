"""MadeView: the pack that was made: its files, who signed it, and what could not be put in."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QFrame, QHBoxLayout, QLabel, QPushButton, QVBoxLayout, QWidget

from meterlog.window.claim_page.side_choice import tell, told_label
from meterlog.window.numbers import number
from meterlog.window.sentences import sentence
from meterlog.window.words import say

if TYPE_CHECKING:
    from meterlog.work.claim import ClaimMade


class MadeView(QFrame):
    """Hidden until there is a pack. ``opened`` and ``checked`` are emitted with a path."""

    opened = Signal(object)
    checked = Signal(object)

    def __init__(self) -> None:
        super().__init__()
        self.setProperty("rank", "panel")
        self.folder: Path | None = None
        self.heading = QLabel("")
        self.heading.setProperty("rank", "title")
        self.heading.setWordWrap(True)
        self.files = told_label("", say("files of the pack"))
        self.remarks = told_label("caution", say("what could not be put into the pack"))
        self.open_folder = _button(say("Open its folder"), say("open the folder of the pack"))
        self.open_pdf = _button(say("Open the PDF"), say("open the PDF of the pack"))
        self.check = _button(say("Check it"), say("check the pack that was made"))
        self.open_folder.clicked.connect(lambda: self.opened.emit(self.folder))
        self.open_pdf.clicked.connect(lambda: self.opened.emit(self._file(".pdf")))
        self.check.clicked.connect(lambda: self.checked.emit(self._file(".zip")))
        self._paths: tuple[Path, ...] = ()
        row = QHBoxLayout()
        for button in (self.open_folder, self.open_pdf, self.check):
            row.addWidget(button)
        row.addStretch(1)
        column = QVBoxLayout(self)
        column.setContentsMargins(7, 4, 7, 6)
        column.setSpacing(3)
        for widget in (self.heading, self.files, self.remarks):
            column.addWidget(widget)
        column.addLayout(row)
        self.hide()

    def _file(self, ending: str) -> Path | None:
        return next((one for one in self._paths if one.suffix == ending), self.folder)

    def show_made(self, folder: Path, made: ClaimMade) -> None:
        """Show a pack.

        Parameters
        ----------
        folder : Path
        made : ClaimMade
        """
        self.folder, self._paths = folder, made.files
        self.heading.setText(say("The pack is made: {folder}", folder=folder.name))
        signed = (
            say("Signed by the key {fingerprint}", fingerprint=made.fingerprint)
            if made.fingerprint
            else say("Not signed")
        )
        sizes = [f"{path.name}, {_size(path)}" for path in made.files]
        missing = len(made.missing)
        lacking = (
            say("{missing} not stated on the job card; the pack says so.", missing=missing)
            if missing
            else ""
        )
        tell(self.files, "\n".join((*sizes, f"{signed}.", lacking)).strip())
        tell(self.remarks, "\n".join((*map(sentence, made.doubts), *made.remarks)))
        self.show()

    def forget(self) -> None:
        """Show no pack any more."""
        self.folder, self._paths = None, ()
        self.hide()

    def in_order(self) -> tuple[QWidget, ...]:
        """Give what Tab goes through, in the order in which it is read."""
        return self.open_folder, self.open_pdf, self.check


def _size(path: Path) -> str:
    try:
        size = path.stat().st_size
    except OSError:
        return say("GONE")
    return (
        f"{number(size / 1e6, '.1f')} MB"
        if size >= 1e6
        else f"{number(max(size / 1e3, 0.1), '.1f')} kB"
    )


def _button(words: str, name: str) -> QPushButton:
    button = QPushButton(words)
    button.setAccessibleName(name)
    return button
