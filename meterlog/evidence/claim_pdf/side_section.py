"""SideSection: one run, before or after the repair: trace, verdict, steps, findings, taps."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from PySide6.QtCore import QRectF
from PySide6.QtGui import QFontMetricsF, QPainter

from meterlog.evidence.claim_content import ClaimSide
from meterlog.evidence.claim_pdf.card_part import recorded_part
from meterlog.evidence.claim_pdf.facts_block import lay_facts
from meterlog.evidence.claim_pdf.page_edges import side_title
from meterlog.evidence.claim_pdf.page_look import ALERT, FAINT, PAPER, STRONG, Look
from meterlog.evidence.claim_pdf.sheets import Sheets
from meterlog.evidence.claim_pdf.steps_table import MOST, add_steps, findings_rows
from meterlog.evidence.claim_pdf.table_block import Column, Row, lay_table
from meterlog.evidence.claim_pdf.utc_words import utc_words
from meterlog.evidence.claim_pdf.verdict_section import add_verdict
from meterlog.evidence.conditions_text import stated_conditions
from meterlog.evidence.inferred_text import inferred_lines
from meterlog.evidence.motor_text import motor_lines
from meterlog.evidence.origin_words import origin_words
from meterlog.evidence.ripple_text import ripple_lines
from meterlog.evidence.seal_state import seal_state
from meterlog.evidence.startup_text import startup_lines
from meterlog.evidence.taps_text import FORM_SOURCE
from meterlog.evidence.trace_picture import TraceScene, paint, scene_of
from meterlog.evidence.verify import seal_digest
from meterlog.model import Job, Limits, Review, Tap, TapEvidence
from meterlog.model.job_card import JobCard

_SHARE = 2.0 / 3.0
"""The trace is painted so much larger, as its lines and words are made for a screen."""
_HIGH, _LEAST_HIGH = 520.0, 400.0
"""Of the trace: as a page has room."""
_FINDINGS = (
    Column("verdict"),
    Column("finding"),
    Column("from s", right=True),
    Column("to s", right=True),
    Column("± s", right=True),
    Column("speed", right=True),
    Column("value", right=True),
    Column("limit", right=True),
    Column("within, prob.", right=True),
)
_TAPS = (
    Column("tap at s", right=True),
    Column("attempt", right=True),
    Column("before A", right=True),
    Column("after A", right=True),
    Column("motor"),
    Column("what came of it"),
)
_CHECKS = (Column("point of the accepted form"), Column("verdict"), Column("what was found"))
_COLUMNS = Look(10, fixed=True)
"""A hundred letters of it go across a page."""


def add_side(sheets: Sheets, side: ClaimSide, card: JobCard) -> None:
    """Put the chapter of one run.

    Parameters
    ----------
    sheets : Sheets
    side : ClaimSide
    card : JobCard
        Says of its part what the recording does not.
    """
    about, recording = side.recording.about, side.recording
    sheets.heading(side_title(side), chapter=True, keep=150.0)
    for words in origin_words(recording):
        sheets.words(words, STRONG)
    for words in (*(f"NOT WHOLE: {text}" for text in recording.damage), *side.lacking):
        sheets.words(words, ALERT)
    sheets.space(4.0)
    lay_facts(
        sheets,
        [
            ("Recording", about.recording_id),
            ("Started", utc_words(about.started_utc, seconds=True)),
            ("Length", f"{recording.length_ns / 1e9:.1f} s"),
            ("State", seal_state(recording)),
            ("Limits", about.limits.name),
            ("Recorded by", about.program),
            ("Seal", seal_digest(recording.folder)),
        ],
    )
    said = [
        ("Part", recorded_part(about.job.part, side.name, card)),
        ("Conditions", stated_conditions(about.job) or "not stated"),
    ]
    lay_facts(sheets, said, columns=1)
    if about.instruments:
        _trace(sheets, _without_words(scene_of(recording, side.review)))
    add_verdict(sheets, side.review.verdict)
    add_steps(sheets, side.review, about.limits)
    _findings(sheets, side.review, about.limits)
    _taps(sheets, side.review.taps)
    _more(sheets, side.review)


def _without_words(scene: TraceScene) -> TraceScene:
    """Leave out of the picture what stands beside it, and would be cut off there."""
    about = replace(scene.about, job=Job(), program="")
    return replace(scene, about=about, review=replace(scene.review, notes=()))


def _trace(sheets: Sheets, scene: TraceScene) -> None:
    def draw(painter: QPainter, rect: QRectF) -> None:
        painter.translate(rect.topLeft())
        painter.scale(_SHARE, _SHARE)
        whole = QRectF(0.0, 0.0, rect.width() / _SHARE, rect.height() / _SHARE)
        paint(painter, whole, scene, PAPER)

    def lay(room: float) -> None:
        sheets.space(6.0)
        sheets.picture(min(_HIGH, room - 10.0), draw)

    sheets.block(_LEAST_HIGH + 10.0, lay)


def _findings(sheets: Sheets, review: Review, limits: Limits) -> None:
    sheets.heading("Findings", keep=80.0)
    if not review.findings:
        sheets.words("No findings.")
        return
    lay_table(sheets, _FINDINGS, findings_rows(review.findings[:MOST], limits))
    more = len(review.findings) - MOST
    if more > 0:
        sheets.words(f"and {more} more: findings.csv has all of them.", FAINT)


def _taps(sheets: Sheets, evidence: TapEvidence | None) -> None:
    if evidence is None:
        return
    sheets.heading("Tap test", keep=80.0)
    sheets.words(evidence.summary)
    sheets.words(f"Accepted form of a tap test: {evidence.accepted.value}.", STRONG)
    sheets.words(FORM_SOURCE, FAINT)
    sheets.space(4.0)
    lay_table(sheets, _TAPS, [_tap(one) for one in evidence.taps[:MOST]])
    more = len(evidence.taps) - MOST
    if more > 0:
        sheets.words(f"and {more} more: taps.csv has all of them.", FAINT)
    rows = [Row((one.name, one.verdict.value, one.words)) for one in evidence.checks]
    lay_table(sheets, _CHECKS, rows)


def _tap(tap: Tap) -> Row:
    return Row(
        (
            f"{tap.t_ns / 1e9:.2f}",
            str(tap.attempt),
            "" if tap.before_a is None else f"{abs(tap.before_a):.2f}",
            "" if tap.after_a is None else f"{abs(tap.after_a):.2f}",
            f"{tap.before}, then {tap.after}",
            _came(tap),
        )
    )


def _came(tap: Tap) -> str:
    edge = tap.returned_edge_s or 0.0
    if tap.answered and tap.late:
        return f"back up to {edge:.2f} s before the mark"
    if tap.answered:
        return f"back after {tap.returned_s or 0.0:.2f} s (± {edge:.2g} s)"
    return "the current went" if tap.stopped else ""


def _more(sheets: Sheets, review: Review) -> None:
    """Put what is laid out by columns: dropouts not seen, starts and fuse, motor, ripple."""
    blocks: Sequence[tuple[str, list[str]]] = (
        ("Dropouts that no reading shows", inferred_lines(
            review.inferred, review.pulsed, review.rhythm)),
        ("Starts and fuse", startup_lines(review.startups, review.fuse)),
        ("Motor and controller", motor_lines(review.motor, review.heat)),
        ("Ripple", ripple_lines(review.ripple)),
    )  # fmt: skip
    for title, lines in blocks:
        if lines:
            sheets.heading(title, keep=40.0)
            lay_columns(sheets, lines)


def lay_columns(sheets: Sheets, lines: Sequence[str]) -> None:
    """Write lines that are laid out by columns, with letters of one width."""
    letter = QFontMetricsF(_COLUMNS.font(), sheets.device).horizontalAdvance("0")
    for line in lines:
        indent = len(line) - len(line.lstrip())
        sheets.words(line.lstrip(), _COLUMNS, indent=letter * indent)
