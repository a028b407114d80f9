"""PageLook: fonts, sizes and colours of the pages of a claim."""

from __future__ import annotations

from dataclasses import dataclass, replace

from PySide6.QtCore import QSizeF
from PySide6.QtGui import QFont, QFontDatabase

from meterlog.evidence.claim_content import PageSize
from meterlog.evidence.palette import DAY

PAPER = replace(DAY, name="paper", ground="#ffffff", panel="#ffffff")
"""The day's colours on white: paper has a ground of its own."""
UNITS_PER_INCH = 96.0
"""All lengths on a page are in these, about the pixels of a screen: 10 are 7.5 points."""
SIDE, TOP, BOTTOM = 54.0, 50.0, 58.0
"""Margins."""

_MM = UNITS_PER_INCH / 25.4
_PAPER = {
    PageSize.A4: QSizeF(210.0 * _MM, 297.0 * _MM),
    PageSize.LETTER: QSizeF(8.5 * UNITS_PER_INCH, 11.0 * UNITS_PER_INCH),
}
_WISHED = "DejaVu Sans"
_WISHED_FIXED = "DejaVu Sans Mono"


@dataclass(frozen=True, slots=True)
class Look:
    """How words look.

    Attributes
    ----------
    pixels : int
        Height of the font, in the page's units.
    bold : bool
    colour : str, ``#rrggbb``
    fixed : bool
        All letters of one width, for lines that are laid out by columns.
    """

    pixels: int = 11
    bold: bool = False
    colour: str = PAPER.ink
    fixed: bool = False

    def font(self) -> QFont:
        """Give the font: one that has the signs used here, where it is installed."""
        font = QFont()
        wished = _WISHED_FIXED if self.fixed else _WISHED
        if wished in QFontDatabase.families():
            font.setFamily(wished)
        elif self.fixed:
            font = QFontDatabase.systemFont(QFontDatabase.SystemFont.FixedFont)
        font.setPixelSize(self.pixels)
        font.setBold(self.bold)
        # A search for "file" finds no word whose first two letters are one sign.
        font.setFeature(QFont.Tag("liga"), 0)
        return font


BODY = Look()
STRONG = Look(bold=True)
FAINT = Look(10, colour=PAPER.faint)
TABLE = Look(10)
TABLE_HEAD = Look(10, bold=True)
TABLE_FIXED = Look(9, fixed=True)
SMALL = Look(9, colour=PAPER.faint)
TITLE = Look(22, bold=True)
CHAPTER = Look(17, bold=True, colour=PAPER.accent)
SECTION = Look(13, bold=True, colour=PAPER.accent)
ALERT = Look(bold=True, colour=PAPER.alert)


def paper_size(page: PageSize) -> QSizeF:
    """Give width and height of a page, in the page's units.

    Source
    ------
    A4: ISO 216, 210 mm by 297 mm. Letter: 8.5 in by 11 in.
    """
    return _PAPER[page]
