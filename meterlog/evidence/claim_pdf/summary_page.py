"""SummaryPage: the first page, on which a reviewer can decide."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from datetime import datetime

from PySide6.QtCore import QRectF, Qt
from PySide6.QtGui import QColor, QFontMetricsF, QPainter, QPen

from meterlog.evidence.claim_content import ClaimContent, ClaimSide
from meterlog.evidence.claim_pdf.calibration import calibration_lines, meter_name
from meterlog.evidence.claim_pdf.facts_block import lay_facts
from meterlog.evidence.claim_pdf.job_section import WITHOUT_CUSTOMER, part_words
from meterlog.evidence.claim_pdf.key_readings import add_key_readings, add_key_words
from meterlog.evidence.claim_pdf.limits_section import limits_bases
from meterlog.evidence.claim_pdf.page_edges import claim_mark, claim_title, side_title
from meterlog.evidence.claim_pdf.page_look import ALERT, BODY, FAINT, PAPER, STRONG, TITLE, Look
from meterlog.evidence.claim_pdf.sheets import Sheets
from meterlog.evidence.claim_pdf.utc_words import utc_words
from meterlog.evidence.origin_words import origin_words
from meterlog.model import Outcome, RunVerdict, SpanKind

_MOST = (40, 16, 12, 9, 7, 6, 5, 4, 3)
"""Lines of a paragraph at most, tried in turn until all stands on one page."""
_BARE = (9, 7, 5, 4, 3, 2, 1)
"""Where even the shortest are too long, the table of readings becomes a sentence, and they are
tried again."""
_MISSING = 4
"""Missing entries that are named here; with many more nobody reads any."""
_VERDICT = 5
"""Lines that a verdict's paragraph may have at least: the page is there for it."""
_GOOD = PAPER.spans[SpanKind.RUNNING].line
_STAMPS = {
    Outcome.FAULT: (PAPER.alert, PAPER.on_alert),
    Outcome.IN_ORDER: (_GOOD, "#ffffff"),
}


def add_summary(sheets: Sheets, content: ClaimContent) -> None:
    """Put the summary on the first page, its paragraphs shortened until they fit.

    Before a paragraph is shortened, the table of readings becomes a sentence. Of a verdict's what
    to measure next is left out first, what speaks against it never: see :attr:`RunVerdict.shorter`.

    Parameters
    ----------
    sheets : Sheets
        Empty.
    content : ClaimContent
    """
    whole = [(_MOST[0], True), (_MOST[0], False)]
    parts = [*((most, True) for most in _MOST), *((most, False) for most in _BARE)]
    tries = [*((*one, False) for one in whole), *((*one, True) for one in parts)]
    for number, (most, table, may_shorten) in enumerate(tries, 1):
        trial = Sheets(sheets.device, sheets.paper)
        _lay(trial, content, most, table=table)
        fits = len(trial.pages) == 1 and (may_shorten or not trial.is_shortened)
        if fits or number == len(tries):
            sheets.adopt(trial)
            return


def _lay(sheets: Sheets, content: ClaimContent, most: int, *, table: bool) -> None:
    sheets.words(claim_title(content), TITLE, most=min(most, 3))
    sheets.rule(PAPER.accent, 2.0)
    _banner(sheets, content)
    if content.without_customer:
        sheets.words(WITHOUT_CUSTOMER, STRONG)
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
        ("Pack made", _made(content)),
    ]
    lay_facts(sheets, facts, most=most)
    parts = [("Old part", part_words(card.old_part)), ("New part", part_words(card.new_part))]
    lay_facts(sheets, parts, columns=1, most=most)
    for title, text in (
        ("Complaint, in the customer's words", card.complaint),
        ("Cause", card.cause),
        ("Correction", card.correction),
    ):
        if text.strip():
            _titled(sheets, title)
            sheets.words(text, most=most)
    for side in content.sides:
        _side(sheets, side, most)
    if table:
        add_key_readings(sheets, content.sides)
    else:
        add_key_words(sheets, content.sides, most)
    for basis in limits_bases(side.recording.about.limits for side in content.sides):
        sheets.words(basis, FAINT, most=min(most, 2))
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
    checks = [one.outcome() for part in content.recordings for one in part.checks]
    lacking = [f"{side_title(one)}: {text}" for one in content.circuits for text in one.lacking]
    if checks or lacking:
        yield "Circuit", [*checks, *lacking]
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
    doubts = content.doubtful
    if doubts:
        yield "Doubtful on the job card", list(doubts)
    if content.missing:
        yield "Not stated, and likely to be asked for", [_missing(content.missing)]
    if content.amendments:
        many = len(content.amendments)
        yield "Edits", [f"{many} made on top of the recordings; they are listed in what follows."]


def _missing(missing: Sequence[str]) -> str:
    """Say how much the job card does not say, and the first of it; all of it stands there."""
    if len(missing) <= _MISSING:
        return " ".join(missing)
    first = " ".join(missing[:_MISSING])
    return f'{len(missing)} things, the first of them: {first} All are listed under "The job".'


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
    said = _origins(content)
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


def _origins(content: ClaimContent) -> list[str]:
    """Say what readings are that no meter sent; of which part, where they differ."""
    parts: dict[str, list[str]] = {}
    for one in content.recordings:
        for words in origin_words(one.recording):
            parts.setdefault(words, []).append(one.name)
    return [
        words if len(names) == len(content.recordings) else f"{' and '.join(names)}: {words}"
        for words, names in parts.items()
    ]


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
    sheets.words(_recorded(side), FAINT, most=min(most, 2))
    if verdict is None:
        sheets.words("No verdict: the recording was not judged as a whole.")
    else:
        _told(sheets, verdict, max(most, _VERDICT))
    against = [*(f"NOT WHOLE: {text}" for text in side.recording.damage), *side.lacking]
    kept = against[: max(most, 1)]
    for text in kept:
        sheets.words(text, ALERT, most=most)
    if len(against) > len(kept):
        sheets.words(f"and {len(against) - len(kept)} more, on the pages that follow", ALERT)


def _told(sheets: Sheets, verdict: RunVerdict, most: int) -> None:
    """Put the longest paragraph that so many lines hold, not the beginning of a longer one.

    What speaks against a verdict does not stand at the paragraph's beginning.
    """
    texts = (verdict.paragraph, *(f"{one} …" for one in verdict.shorter))
    fitting = (one for one in texts if len(sheets.lines_of(one, BODY, sheets.width)) <= most)
    text = next(fitting, texts[-1])
    sheets.is_shortened = sheets.is_shortened or text is not texts[0]
    sheets.words(text, most=most)


def _recorded(side: ClaimSide) -> str:
    """Say when it was recorded, for how long, and by what."""
    about = side.recording.about
    meters = ", ".join(meter_name(one) for one in about.instruments) or "no meter"
    length = f"{side.recording.length_ns / 1e9:.0f} s"
    return f"Recorded {utc_words(about.started_utc)}, {length}; by {meters}"


def _made(content: ClaimContent) -> str:
    try:
        return utc_words(datetime.fromisoformat(content.made_utc))
    except ValueError:
        return content.made_utc


def _stamp(sheets: Sheets, outcome: Outcome, left: float) -> None:
    ground, ink = _STAMPS.get(outcome, (PAPER.caution, PAPER.on_caution))
    look = Look(12, bold=True, colour=ink)
    metrics = QFontMetricsF(look.font(), sheets.device)
    wide = metrics.horizontalAdvance(outcome.value) + 16.0
    sheets.fill(QRectF(left, sheets.y - 1.0, wide, metrics.height() + 3.0), ground)
    sheets.write_line(outcome.value, look, left + 8.0, sheets.y + 0.5)
