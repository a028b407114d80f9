"""PageEdges: what stands at the head and the foot of every page."""

from __future__ import annotations

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QFontMetricsF, QPainter, QPen

from meterlog.evidence.claim_content import ClaimCircuit, ClaimContent, ClaimSide
from meterlog.evidence.claim_pdf.page_look import PAPER, SMALL, Look
from meterlog.evidence.claim_pdf.sheets import Draw, Sheets
from meterlog.evidence.claim_pdf.wrapped_words import clean_words
from meterlog.model.origin_mark import origin_mark

_FOOT = 8
_WORDS_FROM = 30.0


_SIDES = {"before": "Before the repair", "after": "After the repair"}


def side_title(side: ClaimSide | ClaimCircuit) -> str:
    """Give what a side is called, or a check that stands alone."""
    if isinstance(side, ClaimCircuit):
        return side.name.replace("circuit", "Circuit check kept by itself").replace("-", ", ")
    return _SIDES.get(side.name, side.name)


def claim_title(content: ClaimContent) -> str:
    """Give what the whole is called."""
    card = content.card
    parts = (
        card.claim_number and f"claim {card.claim_number}",
        card.work_order and f"work order {card.work_order}",
    )
    told = ", ".join(part for part in parts if part)
    words = clean_words(f"Cabin fan: {told}" if told else "Cabin fan: warranty claim")
    return " ".join(words.split())


def claim_mark(content: ClaimContent) -> str:
    """Give the words that mark readings that no meter sent; of which part, where they differ."""
    marks = {one.name: origin_mark(one.recording.about) for one in content.recordings}
    parts: dict[str, list[str]] = {}
    for name, mark in marks.items():
        parts.setdefault(mark, []).append(name.upper())
    if len(parts) == 1:
        return next(iter(parts))
    return " · ".join(f"{', '.join(names)}: {mark}" for mark, names in parts.items() if mark)


def add_edges(sheets: Sheets, content: ClaimContent) -> None:
    """Put head and foot on all pages; call it when nothing is added any more."""
    count = len(sheets.pages)
    for number, page in enumerate(sheets.pages, 1):
        page.append(_foot(sheets, content, f"page {number} of {count}"))
        if number > 1:
            page.append(_head(sheets, content))


def _head(sheets: Sheets, content: ClaimContent) -> Draw:
    mark, title = claim_mark(content), claim_title(content)
    strong = Look(11, bold=True, colour=PAPER.on_caution)

    def head(painter: QPainter) -> None:
        left, right = sheets.left, sheets.right
        small = QFontMetricsF(SMALL.font(), sheets.device)
        if mark:
            metrics = QFontMetricsF(strong.font(), sheets.device)
            wide = min(metrics.horizontalAdvance(mark) + 16.0, 0.6 * sheets.width)
            stamp = QRectF(right - wide, 18.0, wide, 19.0)
            painter.fillRect(stamp, QColor(PAPER.caution))
            painter.setFont(strong.font())
            painter.setPen(QColor(PAPER.on_caution))
            words = metrics.elidedText(mark, Qt.TextElideMode.ElideRight, wide - 6.0)
            painter.drawText(stamp, Qt.AlignmentFlag.AlignCenter, words)
            right -= wide + 12.0
        painter.setFont(SMALL.font())
        painter.setPen(QColor(PAPER.faint))
        words = small.elidedText(title, Qt.TextElideMode.ElideRight, right - left)
        painter.drawText(QPointF(left, _WORDS_FROM), words)

    return head


def _foot(sheets: Sheets, content: ClaimContent, number: str) -> Draw:
    signed = f"signing key {content.fingerprint}" if content.fingerprint else "not signed"
    ids = [f"{one.name} {one.recording.about.recording_id}" for one in content.recordings]
    look = Look(_FOOT, colour=PAPER.faint)
    metrics = QFontMetricsF(look.font(), sheets.device)
    strong = Look(9, bold=True)
    aside = QFontMetricsF(strong.font(), sheets.device).horizontalAdvance(number)
    high = metrics.height() * 1.1
    lines = [
        *sheets.lines_of(signed, look, sheets.width - aside - 20.0, 2),
        *sheets.lines_of("recordings: " + (", ".join(ids) or "none"), look, sheets.width, 2),
    ]
    top = sheets.bottom + 10.0

    def foot(painter: QPainter) -> None:
        painter.setPen(QPen(QColor(PAPER.edge), 0.8))
        painter.drawLine(QPointF(sheets.left, top), QPointF(sheets.right, top))
        painter.setFont(strong.font())
        painter.setPen(QColor(PAPER.ink))
        painter.drawText(QPointF(sheets.right - aside, top + 12.0), number)
        painter.setFont(look.font())
        painter.setPen(QColor(PAPER.faint))
        for at, line in enumerate(lines):
            painter.drawText(QPointF(sheets.left, top + 12.0 + at * high), line)

    return foot
