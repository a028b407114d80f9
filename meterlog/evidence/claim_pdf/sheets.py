"""Sheets: pages that fill from top to bottom, kept as what to draw until their number is known."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass

from PySide6.QtCore import QPointF, QRectF, QSizeF
from PySide6.QtGui import QColor, QFontMetricsF, QPaintDevice, QPainter, QPen

from meterlog.evidence.claim_pdf.page_look import (
    BODY,
    BOTTOM,
    CHAPTER,
    PAPER,
    SECTION,
    SIDE,
    TOP,
    Look,
)
from meterlog.evidence.claim_pdf.wrapped_words import shortened, wrapped

Draw = Callable[[QPainter], None]
_TOGETHER = 4
"""Lines of a paragraph that is not parted by the end of a page."""
_LEADING = 1.12
"""Distance of lines, as a part of the font's own height."""


@dataclass(frozen=True, slots=True)
class Mark:
    """Where a chapter begins, for the reader's list of contents."""

    title: str
    page: int


@dataclass(frozen=True, slots=True)
class _Block:
    """What is laid on the next page that has room for it."""

    least: float
    lay: Callable[[float], None]


class Sheets:
    """Takes words, pictures and tables, and begins a new page where one is full.

    Parameters
    ----------
    device : QPaintDevice
        On which the pages will be painted: fonts are measured for it.
    paper : QSizeF
        Of a page, in its units.

    Attributes
    ----------
    pages : list of list of callable
        What is drawn on each page.
    marks : list of Mark
    y : float
        Where the next block begins.
    left, right, bottom : float
        Bounds of what a page holds.
    is_shortened : bool
        Some text had more lines than it might have.
    """

    def __init__(self, device: QPaintDevice, paper: QSizeF) -> None:
        self.device = device
        self.paper = paper
        self.pages: list[list[Draw]] = []
        self.marks: list[Mark] = []
        self.left, self.right = SIDE, paper.width() - SIDE
        self.top, self.bottom = TOP, paper.height() - BOTTOM
        self.y = self.top
        self.is_shortened = False
        self._waiting: list[_Block] = []
        self.new_page()

    @property
    def width(self) -> float:
        """Room from left to right."""
        return self.right - self.left

    @property
    def room(self) -> float:
        """What is left of the page, from top to bottom."""
        return self.bottom - self.y

    def new_page(self) -> None:
        """Begin a page; nothing happens on one that is still empty."""
        if self.pages and not self.pages[-1]:
            return
        self.pages.append([])
        self.y = self.top
        while self._waiting and (self.y == self.top or self.room >= self._waiting[0].least):
            self._waiting.pop(0).lay(self.room)

    def block(self, least: float, lay: Callable[[float], None]) -> None:
        """Let something be laid here if there is room, else at the top of the next page.

        What follows it in the meantime fills this page, up to the next chapter.

        Parameters
        ----------
        least : float
            Room that it needs.
        lay : callable
            Called once, with the room that there is on its page.
        """
        if not self._waiting and self.room >= least:
            lay(self.room)
        else:
            self._waiting.append(_Block(least, lay))

    def settle(self) -> None:
        """Lay what waits for a page of its own."""
        while self._waiting:
            self.new_page()

    def need(self, height: float) -> None:
        """Begin a page where there is less room than this."""
        if self.room < min(height, self.bottom - self.top):
            self.new_page()

    def space(self, height: float) -> None:
        """Leave some room; none at the top of a page."""
        if self.y > self.top:
            self.y = min(self.y + height, self.bottom)

    def draw(self, one: Draw) -> None:
        """Draw something on this page."""
        self.pages[-1].append(one)

    def line_height(self, look: Look) -> float:
        """Give the distance of lines."""
        return QFontMetricsF(look.font(), self.device).height() * _LEADING

    def lines_of(self, text: str, look: Look, width: float, most: int | None = None) -> list[str]:
        """Break a text; see :func:`wrapped` and :func:`shortened`."""
        lines = wrapped(text, look.font(), width, self.device, most)
        self.is_shortened = self.is_shortened or (most is not None and len(lines) > most)
        return shortened(lines, most)

    def write_line(self, text: str, look: Look, x: float, y: float) -> None:
        """Write one line with its top at ``y``."""
        font, colour = look.font(), QColor(look.colour)
        at = QPointF(x, y + QFontMetricsF(font, self.device).ascent())

        def write(painter: QPainter) -> None:
            painter.setFont(font)
            painter.setPen(colour)
            painter.drawText(at, text)

        if text:
            self.draw(write)

    def words(
        self,
        text: str,
        look: Look = BODY,
        *,
        indent: float = 0.0,
        lead: str = "",
        most: int | None = None,
    ) -> None:
        """Write a paragraph, over as many pages as it takes.

        Where something waits for the next page, it would come to lie within the paragraph: that
        goes behind it as a whole, if a page holds it.

        Parameters
        ----------
        text : str
        look : Look
        indent : float
        lead : str
            Stands left of the first line, within the indent, such as a bullet.
        most : int or None
            Lines at most; the last one says that there are more.
        """
        high = self.line_height(look)
        lines = self.lines_of(text, look, self.width - indent, most)
        if len(lines) <= _TOGETHER or self._waiting:
            self.need(high * len(lines))
        for number, line in enumerate(lines):
            self.need(high)
            if lead and not number:
                self.write_line(lead, look, self.left + indent - 11.0, self.y)
            self.write_line(line, look, self.left + indent, self.y)
            self.y += high

    def listed(self, texts: Sequence[str], look: Look = BODY, most: int | None = None) -> None:
        """Write paragraphs with a bullet each."""
        for text in texts:
            self.words(text, look, indent=14.0, lead="•", most=most)
            self.space(1.5)

    def heading(self, text: str, *, chapter: bool = False, keep: float = 60.0) -> None:
        """Write a heading; ``keep`` is the room below without which it goes to the next page."""
        if chapter:
            self.settle()
        look = CHAPTER if chapter else SECTION
        lines = self.lines_of(text, look, self.width)
        high = self.line_height(look)
        self.space(14.0 if chapter else 11.0)
        self.need(high * len(lines) + keep)
        if chapter:
            self.marks.append(Mark(text, len(self.pages) - 1))
        for line in lines:
            self.write_line(line, look, self.left, self.y)
            self.y += high
        if chapter:
            self.rule(PAPER.accent)
        self.y += 4.0

    def rule(self, colour: str = PAPER.rule, wide: float = 1.0) -> None:
        """Draw a line across the page."""
        start, end = QPointF(self.left, self.y), QPointF(self.right, self.y)

        def line(painter: QPainter) -> None:
            painter.setPen(QPen(QColor(colour), wide))
            painter.drawLine(start, end)

        self.draw(line)
        self.y += 1.0 + wide

    def fill(self, rect: QRectF, colour: str) -> None:
        """Fill a rectangle of this page; what comes later lies on it."""
        self.draw(lambda painter: painter.fillRect(rect, QColor(colour)))

    def picture(self, height: float, paint: Callable[[QPainter, QRectF], None]) -> None:
        """Let something be painted across the page, as high as said or as a page allows."""
        high = min(height, self.bottom - self.top)
        self.need(high)
        rect = QRectF(self.left, self.y, self.width, high)

        def within(painter: QPainter) -> None:
            painter.save()
            paint(painter, rect)
            painter.restore()

        self.draw(within)
        self.y += high + 4.0

    def adopt(self, other: Sheets) -> None:
        """Take over the pages of another that was begun on the same paper; this one is empty."""
        self.pages, self.marks, self.y = other.pages, other.marks, other.y
