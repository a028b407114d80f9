"""TableBlock: a table that flows over pages, its heading repeated, its cells wrapped."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from PySide6.QtCore import QPointF, QRectF
from PySide6.QtGui import QColor, QFontMetricsF, QPainter, QPen

from meterlog.evidence.claim_pdf.page_look import (
    PAPER,
    TABLE,
    TABLE_FIXED,
    TABLE_HEAD,
    Look,
)
from meterlog.evidence.claim_pdf.sheets import Sheets
from meterlog.evidence.claim_pdf.wrapped_words import clean_words

_GAP = 10.0
_PAD = 2.5
_LEAST = 34.0
_SHADE = "#eef1f0"
_LOUD = frozenset({"fail", "they differ", "NOT as expected", "OVERDUE"})
"""Cells that are to be seen at once."""


@dataclass(frozen=True, slots=True)
class Column:
    """One column.

    Attributes
    ----------
    head : str
    right : bool
        Figures stand to the right.
    fixed : bool
        All letters of one width, as for checksums.
    """

    head: str
    right: bool = False
    fixed: bool = False


@dataclass(frozen=True, slots=True)
class Row:
    """One row; ``beneath`` is a sentence that goes with it, across the whole table."""

    cells: tuple[str, ...]
    beneath: str = ""


@dataclass(frozen=True, slots=True)
class _Cell:
    """The lines of one cell, and where they stand."""

    lines: list[str]
    look: Look
    left: float
    width: float
    right: bool


def lay_table(sheets: Sheets, columns: Sequence[Column], rows: Sequence[Row]) -> None:
    """Put a table on the pages.

    Parameters
    ----------
    sheets : Sheets
    columns : sequence of Column
    rows : sequence of Row
        As many cells as there are columns. A row stays on one page where a page can hold it.
    """
    if not rows:
        return
    widths = _widths(sheets, columns, rows)
    high = sheets.line_height(TABLE)
    head = _cells(sheets, columns, widths, [one.head for one in columns], head=True)
    head_high = max(len(cell.lines) for cell in head) * high + 2.0 * _PAD
    first = _height(_cells(sheets, columns, widths, rows[0].cells), high)
    sheets.need(head_high + first + high)
    _head(sheets, head, head_high, high)
    for row in rows:
        cells = _cells(sheets, columns, widths, row.cells)
        beneath = _beneath(sheets, row.beneath)
        whole = _height(cells, high) + (_height([beneath], high) if beneath else 0.0)
        if sheets.room < whole <= sheets.bottom - sheets.top - head_high:
            sheets.new_page()
            _head(sheets, head, head_high, high)
        _body(sheets, cells, head, head_high, high)
        if beneath:
            _body(sheets, [beneath], head, head_high, high)
        sheets.rule()
    sheets.y += 5.0


def _widths(sheets: Sheets, columns: Sequence[Column], rows: Sequence[Row]) -> list[float]:
    """Give each column what it needs where that fits; else the wide ones share what is left."""
    room = sheets.width - _GAP * (len(columns) - 1)
    natural = []
    for at, column in enumerate(columns):
        metrics = QFontMetricsF(_look(column, "").font(), sheets.device)
        strong = QFontMetricsF(TABLE_HEAD.font(), sheets.device)
        cells = (
            metrics.horizontalAdvance(part)
            for row in rows
            for part in clean_words(row.cells[at]).split("\n")
        )
        # Bold where it is loud: as wide as that.
        head = max(map(strong.horizontalAdvance, column.head.split(" ")))
        loud = max((strong.horizontalAdvance(row.cells[at]) for row in rows
                    if row.cells[at] in _LOUD), default=0.0)  # fmt: skip
        natural.append(max([head, loud, _LEAST, *cells]) + 1.0)
    strong = QFontMetricsF(TABLE_HEAD.font(), sheets.device)
    heads = [strong.horizontalAdvance(column.head) + 1.0 for column in columns]
    return _shared(natural, heads, room)


def _shared(natural: Sequence[float], heads: Sequence[float], room: float) -> list[float]:
    widths = list(natural)
    left = room - sum(widths)
    if left >= 0.0:
        # First headings on one line, then all alike, so that the table is as wide as the page.
        for at, head in enumerate(heads):
            more = min(max(head - widths[at], 0.0), left)
            widths[at] += more
            left -= more
        return [width + left / len(widths) for width in widths]
    # The narrow ones get all they need, the others like parts of the rest.
    order = sorted(range(len(widths)), key=widths.__getitem__)
    left, waiting = room, len(widths)
    for at in order:
        widths[at] = min(widths[at], left / waiting)
        left -= widths[at]
        waiting -= 1
    return widths


def _look(column: Column, text: str) -> Look:
    if column.fixed:
        return TABLE_FIXED
    return Look(10, bold=True, colour=PAPER.alert) if text in _LOUD else TABLE


def _cells(
    sheets: Sheets,
    columns: Sequence[Column],
    widths: Sequence[float],
    texts: Sequence[str],
    *,
    head: bool = False,
) -> list[_Cell]:
    made, left = [], sheets.left
    for column, width, text in zip(columns, widths, texts, strict=True):
        look = TABLE_HEAD if head else _look(column, text)
        lines = sheets.lines_of(text, look, width)
        made.append(_Cell(lines, look, left, width, column.right))
        left += width + _GAP
    return made


def _beneath(sheets: Sheets, text: str) -> _Cell | None:
    if not text:
        return None
    look = Look(10, colour=PAPER.faint)
    indent = 16.0
    width = sheets.width - indent
    return _Cell(sheets.lines_of(text, look, width), look, sheets.left + indent, width, right=False)


def _height(cells: Sequence[_Cell], high: float) -> float:
    return max(len(cell.lines) for cell in cells) * high + 2.0 * _PAD


def _head(sheets: Sheets, cells: Sequence[_Cell], height: float, high: float) -> None:
    sheets.fill(QRectF(sheets.left - 3.0, sheets.y, sheets.width + 6.0, height), _SHADE)
    _lines(sheets, cells, 0, max(len(cell.lines) for cell in cells), high)
    at = sheets.y

    def edge(painter: QPainter) -> None:
        painter.setPen(QPen(QColor(PAPER.edge), 1.0))
        painter.drawLine(QPointF(sheets.left - 3.0, at), QPointF(sheets.right + 3.0, at))

    sheets.draw(edge)


def _body(
    sheets: Sheets, cells: Sequence[_Cell], head: Sequence[_Cell], head_high: float, high: float
) -> None:
    """Write a row; one that is longer than a page goes on under a heading of its own."""
    count, done = max(len(cell.lines) for cell in cells), 0
    while done < count:
        fits = int((sheets.room - 2.0 * _PAD) / high)
        if fits < 1:
            sheets.new_page()
            _head(sheets, head, head_high, high)
            continue
        now = min(fits, count - done)
        _lines(sheets, cells, done, done + now, high)
        done += now


def _lines(sheets: Sheets, cells: Sequence[_Cell], first: int, last: int, high: float) -> None:
    top = sheets.y + _PAD
    for cell in cells:
        metrics = QFontMetricsF(cell.look.font(), sheets.device)
        for number, line in enumerate(cell.lines[first:last]):
            aside = cell.width - metrics.horizontalAdvance(line) if cell.right else 0.0
            sheets.write_line(line, cell.look, cell.left + max(aside, 0.0), top + number * high)
    sheets.y += (last - first) * high + 2.0 * _PAD
