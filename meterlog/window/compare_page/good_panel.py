"""GoodPanel: the new part beside what good ones of its number draw, out of a table of baselines."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QAbstractItemView, QListWidget, QVBoxLayout
from PySide6.QtWidgets import QWidget as _Widget

from meterlog.evidence.palette import Palette
from meterlog.model import ComparedRun
from meterlog.window.compare_page.beside_good import Beside
from meterlog.window.compare_page.difference_table import DifferenceTable
from meterlog.window.compare_page.told_first import headline
from meterlog.window.good_ones import beside_lines, caution_lines, from_words
from meterlog.window.origin_words import mark_words
from meterlog.window.remedies_here import remedy_here
from meterlog.window.sentences import sentence
from meterlog.window.whole_lines import WholeLines
from meterlog.window.words import say

_NAMED = 5


class GoodPanel(_Widget):
    """Table and details; it decides nothing."""

    def __init__(self) -> None:
        super().__init__()
        self.table = DifferenceTable()
        self.table.table.setAccessibleName(say("the new part beside good ones at each speed"))
        self.details = lines_list(say("good ones: where they come from, cautions and notes"))
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(3)
        column.addWidget(self.table)
        column.addWidget(self.details, 1)

    def set_palette(self, palette: Palette, pixels: int) -> None:
        """Take other colours, and rows for text of ``pixels`` height."""
        self.table.set_palette(palette, pixels)

    def show_beside(self, beside: Beside | None) -> None:
        """Show how the new part lies beside good ones; None: nothing."""
        held = None if beside is None else beside.held
        self.table.show_comparison(None if held is None else held.comparison)
        self.details.clear()
        if beside is not None:
            self.details.addItems(_details(beside))


def verdict_words(beside: Beside) -> str:
    """Write in one line how the new part lies beside good ones; empty where it was not held."""
    held = beside.held
    if held is None:
        return ""
    result = headline(held.comparison)
    told = say("Beside good {number}: {result}", number=held.number, result=result)
    return " · ".join(one for one in (mark_words(held.mark), told) if one)


def lines_list(name: str) -> QListWidget:
    """Make a list of whole lines for who reads, none of them cut off."""
    listed = QListWidget()
    listed.setAccessibleName(name)
    listed.setWordWrap(True)
    listed.setItemDelegate(WholeLines(listed))
    listed.setTextElideMode(Qt.TextElideMode.ElideNone)
    listed.setVerticalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOn)
    listed.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
    listed.setVerticalScrollMode(QAbstractItemView.ScrollMode.ScrollPerPixel)
    listed.setFocusPolicy(Qt.FocusPolicy.TabFocus)
    return listed


def _details(beside: Beside) -> list[str]:
    held = beside.held
    if held is None or beside.table is None or beside.made is None:
        return []
    told = held.comparison
    lines = [remedy_here(told.refusal)] if told.refusal else []
    lines += caution_lines(told)
    lines.append(from_words(held, beside.table, beside.made))
    lines += beside_lines(held)
    if told.refusal:
        return lines
    lines += [sentence(told.summary)]
    lines += [say("Note: {note}", note=remedy_here(note)) for note in told.notes]
    lines += [say("good: {run}", run=_run_words(one)) for one in told.old[:_NAMED]]
    more = len(told.old) - _NAMED
    if more > 0:
        lines.append(say("and {more} more good ones", more=more))
    return lines


def _run_words(run: ComparedRun) -> str:
    day = run.started_utc[:16].replace("T", " ")
    when = f"{day} UTC" if day else say("date not known")
    return f"{run.part}, {when}, {run.name}"
