"""Header: the pages, what is on show, and the buttons that are always at hand."""

from __future__ import annotations

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QHBoxLayout, QLabel, QPushButton, QSizePolicy, QWidget

from meterlog.window.pages import TITLES


class Header(QWidget):
    """One row at the top of the window."""

    page_asked = Signal(int)
    start_asked = Signal()
    open_asked = Signal()
    looks_asked = Signal()

    def __init__(self) -> None:
        super().__init__()
        name = QLabel("meterlog")
        name.setProperty("rank", "title")
        self.pages = {one.page: self._button(one.words, one.name, checkable=True) for one in TITLES}
        self.start = self._button("Start", "start or stop recording")
        self.open = self._button("Open…", "open a recording")
        self.looks = self._button("Day / dark", "change between day and dark footwell colours")
        self.what = QLabel("")
        self.what.setAccessibleName("recording on show")
        self.what.setProperty("rank", "second")
        self.what.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Preferred)
        self.mark = QLabel("")
        self.mark.setProperty("rank", "mark")
        self.mark.setAccessibleName("origin of the readings")
        self.mark.hide()
        row = QHBoxLayout(self)
        row.setContentsMargins(8, 4, 8, 0)
        row.setSpacing(4)
        for widget in (name, *self.pages.values(), self.start):
            row.addWidget(widget)
        row.addWidget(self.what, 1)
        for widget in (self.mark, self.open, self.looks):
            row.addWidget(widget)
        for page, button in self.pages.items():
            button.clicked.connect(lambda _=False, to=page: self.page_asked.emit(to))
        self.start.clicked.connect(self.start_asked)
        self.open.clicked.connect(self.open_asked)
        self.looks.clicked.connect(self.looks_asked)

    @staticmethod
    def _button(words: str, name: str, *, checkable: bool = False) -> QPushButton:
        button = QPushButton(words)
        button.setAccessibleName(name)
        button.setCheckable(checkable)
        return button

    def show_page(self, index: int) -> None:
        """Mark the button of the page on show."""
        for page, button in self.pages.items():
            button.setChecked(index == page)

    def show_origin(self, words: str) -> None:
        """Show the mark of readings that were not measured; empty for measured ones."""
        self.mark.setText(words)
        self.mark.setVisible(bool(words))
