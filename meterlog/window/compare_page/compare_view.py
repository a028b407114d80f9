"""CompareView: the page: what is compared, what came of it, the picture and the table."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtWidgets import (
    QAbstractItemView,
    QHBoxLayout,
    QLabel,
    QListView,
    QListWidget,
    QPushButton,
    QSizePolicy,
    QVBoxLayout,
    QWidget,
)

from meterlog.evidence.palette import Palette
from meterlog.window.compare_page.difference_table import DifferenceTable
from meterlog.window.compare_page.laid_runs import LaidRuns, who_measured
from meterlog.window.compare_page.overlay_view import OverlayView
from meterlog.window.compare_page.sides_row import SidesRow
from meterlog.window.compare_page.told_first import (
    detail_lines,
    headline,
    refusal_words,
    unstated_words,
    warning_words,
)
from meterlog.window.long_work_strip import LongWorkStrip
from meterlog.window.tab_order import order_tabs
from meterlog.window.whole_lines import WholeLines
from meterlog.window.words import say


class CompareView(QWidget):
    """Widgets and where they stand; it decides nothing."""

    def __init__(self) -> None:
        super().__init__()
        self.sides = SidesRow()
        self.work = LongWorkStrip()
        self.refused = _said("alert", say("why these can't be compared"))
        self.verdict = _said("title", say("what came of the comparison"))
        self.warned = _said("caution", say("what speaks against the comparison"))
        self.unstated = _said("second", say("conditions that nobody stated"))
        self.lacking = _said("second", say("what must be chosen first"))
        self.picture = OverlayView()
        self.by_step = QPushButton(say("By step"))
        self.by_time = QPushButton(say("By time"))
        self.all = QPushButton(say("All"))
        for button, name in (
            (self.by_step, say("lay speed over speed")),
            (self.by_time, say("lay the whole runs over each other, from the first command on")),
        ):
            button.setCheckable(True)
            button.setAccessibleName(name)
        self.all.setAccessibleName(say("look at all of it"))
        self.copy = QPushButton(say("Copy as text"))
        self.copy.setAccessibleName(say("copy the comparison as text"))
        self.table = DifferenceTable()
        self.details = _list()
        self._lay_out()
        self.show_laid(None)

    def _lay_out(self) -> None:
        buttons = QHBoxLayout()
        buttons.setSpacing(3)
        for button in (self.by_step, self.by_time, self.all):
            buttons.addWidget(button)
        buttons.addStretch(1)
        buttons.addWidget(self.copy)
        self._left = QWidget()
        left = QVBoxLayout(self._left)
        left.setContentsMargins(0, 0, 0, 0)
        left.setSpacing(3)
        left.addLayout(buttons)
        left.addWidget(self.picture, 1)
        self._right = QWidget()
        right = QVBoxLayout(self._right)
        right.setContentsMargins(0, 0, 0, 0)
        right.setSpacing(3)
        right.addWidget(self.table)
        right.addWidget(self.details, 1)
        body = QHBoxLayout()
        body.setSpacing(8)
        body.addWidget(self._left, 1)
        body.addWidget(self._right, 1)
        column = QVBoxLayout(self)
        column.setContentsMargins(8, 2, 8, 0)
        column.setSpacing(3)
        for widget in (self.sides, self.work, self.refused, self.verdict, self.warned):
            column.addWidget(widget)
        for widget in (self.unstated, self.lacking):
            column.addWidget(widget)
        column.addLayout(body, 1)
        self._rest = QWidget()
        column.addWidget(self._rest, 1)

    def order_tabs(self) -> None:
        """Let Tab go as the eye goes."""
        order_tabs(
            (
                *self.sides.in_order(), self.work.stop, self.by_step, self.by_time, self.all,
                self.copy, self.table.table, self.details,
            )
        )  # fmt: skip

    def set_palette(self, palette: Palette, pixels: int) -> None:
        """Take other colours, and text of ``pixels`` height."""
        self.sides.set_pixels(pixels)
        self.picture.set_palette(palette, pixels)
        self.table.set_palette(palette, pixels)

    def show_laid(self, laid: LaidRuns | None) -> None:
        """Show a comparison; None: that there is none."""
        told = None if laid is None else laid.comparison
        for label, words in (
            (self.refused, "" if told is None else refusal_words(told)),
            (self.verdict, "" if told is None else headline(told)),
            (self.warned, "" if told is None else warning_words(told)),
            (self.unstated, "" if told is None else unstated_words(told)),
        ):
            _say(label, words)
        self.table.show_comparison(told)
        self.details.clear()
        if laid is not None and told is not None:
            self.details.addItems([*detail_lines(told), *who_measured(laid)])
        self.picture.show_runs(laid)
        self.show_looks()
        self._left.setVisible(laid is not None)
        self._right.setVisible(laid is not None)
        self._rest.setVisible(laid is None)

    def show_lacking(self, words: str) -> None:
        """Say what must be chosen first; empty: nothing."""
        _say(self.lacking, words)

    def show_trouble(self, words: str) -> None:
        """Say what went wrong, where the reason of a refusal stands; empty: nothing."""
        _say(self.refused, words)

    def show_looks(self) -> None:
        """Show on the buttons how the picture lies."""
        by_step = self.picture.axis.by_step
        self.by_step.setChecked(by_step)
        self.by_time.setChecked(not by_step)
        self.by_step.setEnabled(bool(self.table.speeds))


def _said(rank: str, name: str) -> QLabel:
    label = QLabel("")
    if rank:
        label.setProperty("rank", rank)
    label.setWordWrap(True)
    label.setAccessibleName(name)
    label.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Preferred)
    label.hide()
    return label


def _say(label: QLabel, words: str) -> None:
    label.setText(words)
    label.setVisible(bool(words))


def _list() -> QListWidget:
    listed = QListWidget()
    listed.setAccessibleName(say("who measured with what, conditions and notes"))
    listed.setWordWrap(True)
    listed.setItemDelegate(WholeLines(listed))
    listed.setTextElideMode(Qt.TextElideMode.ElideNone)
    listed.setResizeMode(QListView.ResizeMode.Adjust)
    listed.setVerticalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOn)
    listed.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
    listed.setVerticalScrollMode(QAbstractItemView.ScrollMode.ScrollPerPixel)
    listed.setFocusPolicy(Qt.FocusPolicy.TabFocus)
    return listed
