"""SummaryPage: the first page, on which a reviewer can decide."""

from __future__ import annotations

from collections.abc import Iterator

from PySide6.QtCore import QRectF, Qt
from PySide6.QtGui import QColor, QFontMetricsF, QPainter, QPen

from meterlog.evidence.claim_content import ClaimContent, ClaimSide
from meterlog.evidence.claim_pdf.calibration import calibration_lines
from meterlog.evidence.claim_pdf.facts_block import lay_facts
from meterlog.evidence.claim_pdf.job_section import part_words
from meterlog.evidence.claim_pdf.key_readings import add_key_readings
from meterlog.evidence.claim_pdf.page_edges import claim_mark, claim_title, side_title
from meterlog.evidence.claim_pdf.page_look import ALERT, FAINT, PAPER, STRONG, TITLE, Look
from meterlog.evidence.claim_pdf.sheets import Sheets
from meterlog.evidence.origin_words import origin_words
from meterlog.model import Outcome, SpanKind

_MOST = (40, 16, 12, 9, 7, 5, 4, 3, 2, 1)
"""Lines of a paragraph at most, tried in turn until all stands on one page."""
_TABLE_FROM = 5
"""Where paragraphs must be shorter than this, the table of readings goes first."""
_GOOD = PAPER.spans[SpanKind.RUNNING].line
_STAMPS = {
    Outcome.FAULT: (PAPER.alert, PAPER.on_alert),
    Outcome.IN_ORDER: (_GOOD, "#ffffff"),
}


def add_summary(sheets: Sheets, content: ClaimContent) -> None:
    """Put the summary on the first page, its paragraphs shortened until they fit.

    Parameters
    ----------
    sheets : Sheets
        Empty.
    content : ClaimContent
    """
    for most in _MOST:
        trial = Sheets(sheets.device, sheets.paper)
        _lay(trial, content, most)
        if len(trial.pages) == 1 or most == _MOST[-1]:
            sheets.adopt(trial)
            return


def _lay(sheets: Sheets, content: ClaimContent, most: int) -> None:
    sheets.words(claim_title(content), TITLE, most=min(most, 3))
    sheets.rule(PAPER.accent, 2.0)
    _banner(sheets, content)
    card = content.card
    sheets.space(6.0)
    facts = [
        ("Claimant", card.claimant),
        ("Vehicle", card.vehicle),
        ("Customer", card.customer),
        ("Plate", card.plate),
        ("VIN", card.vin),
        ("Odometer in", card.odometer),
        ("Odometer out", card.odometer_out),
        ("Hours", card.hours),
        ("Failed on", card.failed_on),
        ("Repaired on", card.repaired_on),
        ("Fitted by", card.fitted_by),
        ("Measured by", card.technician),
        ("Old part is at", card.old_part_kept),
    ]
    lay_facts(sheets, facts, most=most)
    parts = [("Old part", part_words(card.old_part)), ("New part", part_words(card.new_part))]
    lay_facts(sheets, parts, columns=1, most=most)
    if card.complaint.strip():
        _titled(sheets, "Complaint, in the customer's words")
        sheets.words(card.complaint, most=most)
    for side in content.sides:
        _side(sheets, side, most)
    if most >= _TABLE_FROM:
        add_key_readings(sheets, content.sides)
    for title, texts in _blocks(content):
        _titled(sheets, title)
        kept = texts[: max(most, 1)]
        left = len(texts) - len(kept)
        sheets.listed(kept, most=most) if len(texts) > 1 else sheets.words(texts[0], most=most)
        if left:
            sheets.words(f"and {left} more, on the pages that follow", FAINT, indent=14.0)
    if sheets.is_shortened:
        sheets.space(4.0)
        sheets.words("Where … stands, the pages that follow have the rest.", FAINT)


def _blocks(content: ClaimContent) -> Iterator[tuple[str, list[str]]]:
    """Give what follows the verdicts: title and paragraphs, empty ones left out."""
    comparison = content.comparison
    if comparison is not None:
        yield "New against old", [comparison.refusal or comparison.summary]
    checks = [one.pointer() for side in content.sides for one in side.checks]
    if checks:
        yield "Circuit", checks
    taps = [
        f"{side_title(side)}: {side.review.taps.summary} Accepted form of a tap test:"
        f" {side.review.taps.accepted.value}."
        for side in content.sides
        if side.review.taps is not None
    ]
    if taps:
        yield "Tap test", taps
    meters = calibration_lines(content)
    if meters:
        yield "Meters whose calibration is not shown to be in date", meters
    if content.missing:
        yield (
            "Not stated, and likely to be asked for",
            ["; ".join(words.removesuffix(".") for words in content.missing)],
        )
    if content.amendments:
        many = len(content.amendments)
        yield "Edits", [f"{many} made on top of the recordings; they are listed in what follows."]


def _titled(sheets: Sheets, title: str) -> None:
    sheets.space(5.0)
    sheets.words(title, Look(10, bold=True, colour=PAPER.accent))


def _banner(sheets: Sheets, content: ClaimContent) -> None:
    """Mark large what no meter sent from a vehicle."""
    mark = claim_mark(content)
    if not mark:
        return
    look = Look(26, bold=True, colour=PAPER.on_caution)
    metrics = QFontMetricsF(look.font(), sheets.device)
    if metrics.horizontalAdvance(mark) > sheets.width - 20.0:
        look = Look(15, bold=True, colour=PAPER.on_caution)
    said = dict.fromkeys(words for side in content.sides for words in origin_words(side.recording))
    lines = sheets.lines_of(mark, look, sheets.width - 20.0)
    high = sheets.line_height(look)
    sheets.space(4.0)
    rect = QRectF(sheets.left, sheets.y, sheets.width, high * len(lines) + 8.0)
    sheets.fill(rect, PAPER.caution)

    def words(painter: QPainter) -> None:
        painter.setPen(QPen(QColor(PAPER.on_caution), 2.0))
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.drawRect(rect)
        painter.setFont(look.font())
        painter.drawText(rect, Qt.AlignmentFlag.AlignCenter, "\n".join(lines))

    sheets.draw(words)
    sheets.y = rect.bottom() + 4.0
    for text in said:
        sheets.words(text, STRONG)


def _side(sheets: Sheets, side: ClaimSide, most: int) -> None:
    """Put the verdict of one run: what it comes to, and its paragraph."""
    verdict = side.review.verdict
    title = side_title(side)
    sheets.space(8.0)
    look = Look(13, bold=True)
    sheets.need(40.0)
    sheets.write_line(title, look, sheets.left, sheets.y)
    if verdict is not None:
        wide = QFontMetricsF(look.font(), sheets.device).horizontalAdvance(title)
        _stamp(sheets, verdict.outcome, sheets.left + wide + 12.0)
    sheets.y += sheets.line_height(look) + 2.0
    if verdict is None:
        sheets.words("No verdict: the recording was not judged as a whole.")
    else:
        sheets.words(verdict.paragraph, most=most)
    whole = [f"NOT WHOLE: {text}" for text in side.recording.damage]
    for text in (*whole, *side.lacking)[: max(most, 1)]:
        sheets.words(text, ALERT, most=most)


def _stamp(sheets: Sheets, outcome: Outcome, left: float) -> None:
    ground, ink = _STAMPS.get(outcome, (PAPER.caution, PAPER.on_caution))
    look = Look(12, bold=True, colour=ink)
    metrics = QFontMetricsF(look.font(), sheets.device)
    wide = metrics.horizontalAdvance(outcome.value) + 16.0
    sheets.fill(QRectF(left, sheets.y - 1.0, wide, metrics.height() + 3.0), ground)
    sheets.write_line(outcome.value, look, left + 8.0, sheets.y + 0.5)
