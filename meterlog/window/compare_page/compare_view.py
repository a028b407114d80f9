"""CompareView: the page: what is compared, what came of it, the picture and the table."""

from __future__ import annotations

from PySide6.QtWidgets import QHBoxLayout, QLabel, QPushButton, QSizePolicy, QVBoxLayout, QWidget

from meterlog.evidence.palette import Palette
from meterlog.window.compare_page.beside_good import Beside
from meterlog.window.compare_page.difference_table import DifferenceTable
from meterlog.window.compare_page.good_panel import GoodPanel, lines_list, verdict_words
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
        self.details = lines_list(say("who measured with what, conditions and notes"))
        self.good = GoodPanel()
        self.good_verdict = _said("title", say("how the new part lies beside good ones"))
        self.no_good = _said("second", say("why there are no good ones beside it"))
        self.good_wrong = _said("caution", say("what is wrong with the table of good ones"))
        self.beside_pair = QPushButton(say("Before / after"))
        self.beside_good = QPushButton(say("Good ones (F9)"))
        for button, name in (
            (self.beside_pair, say("look at the difference from the part before")),
            (self.beside_good, say("look at the difference from good ones of the part number")),
        ):
            button.setCheckable(True)
            button.setAccessibleName(name)
        self._laid = self._held = False
        self._lay_out()
        self.show_laid(None)

    def _lay_out(self) -> None:
        buttons = QHBoxLayout()
        buttons.setSpacing(3)
        for button in (self.by_step, self.by_time, self.all):
            buttons.addWidget(button)
        buttons.addStretch(1)
        buttons.addWidget(self.copy)
        self._left, left = _column()
        left.addLayout(buttons)
        left.addWidget(self.picture, 1)
        self._turn = QWidget()
        turn = QHBoxLayout(self._turn)
        turn.setContentsMargins(0, 0, 0, 0)
        turn.setSpacing(3)
        turn.addWidget(self.beside_pair)
        turn.addWidget(self.beside_good)
        turn.addStretch(1)
        self._pair, pair = _column()
        pair.addWidget(self.table)
        pair.addWidget(self.details, 1)
        self._right, right = _column()
        right.addWidget(self._turn)
        right.addWidget(self._pair, 1)
        right.addWidget(self.good, 1)
        body = QHBoxLayout()
        body.setSpacing(8)
        body.addWidget(self._left, 1)
        body.addWidget(self._right, 1)
        column = QVBoxLayout(self)
        column.setContentsMargins(8, 2, 8, 0)
        column.setSpacing(3)
        for widget in (self.sides, self.work, self.refused, self.verdict, self.warned):
            column.addWidget(widget)
        for widget in (
            self.unstated, self.lacking, self.good_wrong, self.good_verdict, self.no_good,
        ):  # fmt: skip
            column.addWidget(widget)
        column.addLayout(body, 1)
        self._rest = QWidget()
        column.addWidget(self._rest, 1)

    def order_tabs(self) -> None:
        """Let Tab go as the eye goes."""
        order_tabs(
            (
                *self.sides.in_order(), self.work.stop, self.by_step, self.by_time, self.all,
                self.copy, self.beside_pair, self.beside_good, self.table.table, self.details,
                self.good.table.table, self.good.details,
            )
        )  # fmt: skip

    def set_palette(self, palette: Palette, pixels: int) -> None:
        """Take other colours, and text of ``pixels`` height."""
        self.sides.set_pixels(pixels)
        self.picture.set_palette(palette, pixels)
        self.table.set_palette(palette, pixels)
        self.good.set_palette(palette, pixels)

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
        self._laid = laid is not None
        self.turn_to(good=self.beside_good.isChecked())

    def show_beside(self, beside: Beside | None, trouble: str = "") -> None:
        """Show how the new part lies beside good ones; None: nothing."""
        self._held = beside is not None and beside.held is not None
        _say(self.good_verdict, "" if beside is None else verdict_words(beside))
        _say(self.no_good, "" if beside is None else beside.words)
        _say(self.good_wrong, trouble)
        self.good.show_beside(beside)
        self.turn_to(good=self.beside_good.isChecked())

    def turn_to(self, *, good: bool) -> None:
        """Show the difference from good ones, or that from the part before, where it is there."""
        shown = self._held and (good or not self._laid)
        self.beside_good.setChecked(good)
        self.beside_pair.setChecked(not good)
        self._turn.setVisible(self._held and self._laid)
        self._pair.setVisible(not shown)
        self.good.setVisible(shown)
        self._left.setVisible(self._laid)
        self._right.setVisible(self._laid or self._held)
        self._rest.setVisible(not (self._laid or self._held))

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


def _column() -> tuple[QWidget, QVBoxLayout]:
    """Make a widget with a column in it."""
    widget = QWidget()
    column = QVBoxLayout(widget)
    column.setContentsMargins(0, 0, 0, 0)
    column.setSpacing(3)
    return widget, column


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
