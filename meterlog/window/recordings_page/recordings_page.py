"""RecordingsPage: search on top, what was found, and below it what is known of the chosen ones."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QFrame, QLabel, QScrollArea, QSplitter, QVBoxLayout, QWidget

from meterlog.evidence.palette import Palette
from meterlog.window.long_work_strip import LongWorkStrip
from meterlog.window.recordings_page.currents_view import CurrentsView
from meterlog.window.recordings_page.folders_row import FoldersRow
from meterlog.window.recordings_page.good_ones_row import GoodOnesRow
from meterlog.window.recordings_page.hits_table import HitsTable
from meterlog.window.recordings_page.search_row import SearchRow
from meterlog.window.tab_order import order_tabs
from meterlog.window.words import say


class RecordingsPage(QWidget):
    """The page; what it shows is put there by its desk."""

    def __init__(self) -> None:
        super().__init__()
        self.search = SearchRow()
        self.table = HitsTable()
        self.detail = QLabel("")
        self.currents = CurrentsView()
        self.folders = FoldersRow()
        self.good_ones = GoodOnesRow()
        self.strip = LongWorkStrip()
        self.trouble = QLabel("")
        self.note = QLabel("")
        self._scroll = QScrollArea()
        self._lay_out()
        order_tabs(
            (
                *self.search.in_order(),
                self.table,
                self._scroll,
                *self.folders.in_order(),
                *self.good_ones.in_order(),
                self.strip.stop,
            )
        )

    def _lay_out(self) -> None:
        for label, rank, name in (
            (self.trouble, "caution", say("message")),
            (self.note, "second", say("what the folders say")),
        ):
            label.setProperty("rank", rank)
            label.setAccessibleName(name)
            label.setTextFormat(Qt.TextFormat.PlainText)
            label.setWordWrap(True)
            label.hide()
        self.detail.setTextFormat(Qt.TextFormat.PlainText)
        self.detail.setWordWrap(True)
        self.detail.setAlignment(Qt.AlignmentFlag.AlignTop)
        self.detail.setContentsMargins(4, 2, 4, 2)
        self._scroll.setWidgetResizable(True)
        self._scroll.setFrameShape(QFrame.Shape.NoFrame)
        self._scroll.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self._scroll.setAccessibleName(say("what is known of the chosen one"))
        self._scroll.setWidget(self.detail)
        below = QSplitter(Qt.Orientation.Horizontal)
        below.addWidget(self._scroll)
        below.addWidget(self.currents)
        below.setSizes([560, 440])
        split = QSplitter(Qt.Orientation.Vertical)
        split.addWidget(self.table)
        split.addWidget(below)
        split.setSizes([580, 420])
        for one in (below, split):
            one.setChildrenCollapsible(False)
        page = QVBoxLayout(self)
        page.setContentsMargins(8, 4, 8, 2)
        page.setSpacing(4)
        page.addWidget(self.search)
        page.addWidget(self.trouble)
        page.addWidget(split, 1)
        page.addWidget(self.note)
        page.addWidget(self.folders)
        page.addWidget(self.good_ones)
        page.addWidget(self.strip)

    def set_palette(self, palette: Palette, pixels: int) -> None:
        """Take other colours, and text of ``pixels`` height."""
        self.table.set_palette(palette, pixels)
        self.currents.set_palette(palette)

    def say(self, trouble: str, note: str) -> None:
        """Show what is wrong, and what the folders say; empty takes each away."""
        for label, words in ((self.trouble, trouble), (self.note, note)):
            if label.text() != words:
                label.setText(words)
            label.setVisible(bool(words))

    def show_usual(self, *, shown: bool) -> None:
        """Show what asks for and says how currents lie beside good ones, or hide it."""
        self.table.show_usual(shown=shown)
        if self.search.usual.isHidden() is shown:
            self.search.usual.setVisible(shown)

    def show_detail(self, words: str) -> None:
        """Show what is known of the chosen one, from its beginning."""
        if words != self.detail.text():
            self.detail.setText(words)
            self._scroll.verticalScrollBar().setValue(0)
            self._scroll.setAccessibleDescription(words)
