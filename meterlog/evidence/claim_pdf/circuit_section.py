"""CircuitSection: one check of a circuit: drawing, readings, suspects, drops, what it rests on."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import QRectF
from PySide6.QtGui import QPainter

from meterlog.circuit import Isolation
from meterlog.circuit.cautions import confirming_cautions
from meterlog.circuit.wording import percent
from meterlog.evidence.circuit_basis_text import meter_lines, odds_lines, unmeasured_lines
from meterlog.evidence.circuit_files import JudgedCheck
from meterlog.evidence.circuit_marks import (
    DRAWING_KEY,
    CircuitMarks,
    marks_of,
    point_letters,
)
from meterlog.evidence.circuit_picture import paint_circuit
from meterlog.evidence.circuit_png import drawn_state
from meterlog.evidence.claim_pdf.page_look import FAINT, PAPER, STRONG
from meterlog.evidence.claim_pdf.sheets import Sheets
from meterlog.evidence.claim_pdf.table_block import Column, Row, lay_table
from meterlog.model import Circuit, ProposedTest, Suspect
from meterlog.model.circuit_words import label_of, state_words, unit_of

_SHARE = 2.0 / 3.0
_PIXELS = 14
_HIGH = 400.0
_SHOWN = 0.005
"""Suspects below half a percent are only counted."""
_LETTERS = "The letters are those of the table of readings and of the points below."
_READINGS = (
    Column("entry", right=True),
    Column("test point"),
    Column("state"),
    Column("found", right=True),
    Column("should be", right=True),
    Column(""),
    Column("complaint"),
)
_SUSPECTS = (
    Column("odds", right=True),
    Column("unit"),
    Column("without best", right=True),
    Column("likeliest faults"),
)
_FITS = {True: "as expected", False: "NOT as expected", None: ""}
_THERE = {True: "was there", False: "was not", None: "not said"}


def add_circuit(sheets: Sheets, one: JudgedCheck, title: str) -> None:
    """Put the chapter of one check.

    Parameters
    ----------
    sheets : Sheets
    one : JudgedCheck
    title : str
        Of the chapter.
    """
    circuit, check, verdict = one.circuit, one.check, one.verdict
    sheets.heading(title, chapter=True, keep=90.0)
    sheets.words(circuit.title, STRONG)
    sheets.words(verdict.settled_words or "Nothing is told yet; more tests are proposed.")
    _drawing(sheets, one)
    _readings(sheets, one)
    _suspects(sheets, verdict.suspects)
    sections: Sequence[tuple[str, Sequence[str]]] = (
        ("Voltage drops", [
            f"{drop.words} ({state_words(circuit, drop.state)})" for drop in verdict.drops]),
        ("Doubtful readings", [doubt.words for doubt in verdict.doubted]
            or ["None: no entry contradicts the others."]),
        ("Next", _next(verdict.next_test)),
        ("Cautions", confirming_cautions(circuit, verdict)),
        ("Notes on the check", verdict.notes),
        ("By what it was read", meter_lines(check)),
        ("Not measured", unmeasured_lines(circuit, check)),
        ("Where the odds come from", odds_lines(circuit, verdict, _shown(verdict.suspects))),
    )  # fmt: skip
    for heading, texts in sections:
        if texts:
            sheets.heading(heading, keep=30.0)
            sheets.listed(texts)


def _drawing(sheets: Sheets, one: JudgedCheck) -> None:
    """Put the drawing with what is to be known to read it, all on one page."""
    circuit = one.circuit
    state = drawn_state(one.check)
    expected = Isolation(circuit).expected(state)
    marks = marks_of(circuit, one.check, one.verdict, state, expected)
    letters = point_letters(circuit)
    points = "   ".join(f"{letters[point.name]} {point.label}" for point in circuit.points)
    below = (f"{DRAWING_KEY} {_LETTERS}", points)
    lines = sum(len(sheets.lines_of(words, FAINT, sheets.width)) for words in below)

    def lay(_room: float) -> None:
        sheets.space(4.0)
        sheets.words(f"Drawn in: {state_words(circuit, state)}.", FAINT)
        sheets.picture(_HIGH, lambda painter, rect: _paint(painter, rect, circuit, marks))
        for words in below:
            sheets.words(words, FAINT)

    sheets.block(_HIGH + 12.0 + (lines + 1) * sheets.line_height(FAINT), lay)


def _paint(painter: QPainter, rect: QRectF, circuit: Circuit, marks: CircuitMarks) -> None:
    painter.translate(rect.topLeft())
    painter.scale(_SHARE, _SHARE)
    whole = QRectF(0.0, 0.0, rect.width() / _SHARE, rect.height() / _SHARE)
    paint_circuit(painter, whole, circuit, marks, PAPER, _PIXELS)


def _readings(sheets: Sheets, one: JudgedCheck) -> None:
    circuit, check = one.circuit, one.check
    letters = point_letters(circuit)
    expected = {(each.point, each.state): each for each in one.verdict.expectations}
    doubted = {each.id for each in one.verdict.doubted}
    rows: list[tuple[int, Row]] = []
    for reading in check.readings:
        unit = unit_of(circuit, reading.point)
        beside = expected.get((reading.point, reading.state))
        should = "" if beside is None else f"{beside.healthy_low:.2f} to {beside.healthy_high:.2f}"
        fits = "" if beside is None else _FITS[beside.fits]
        cells = (
            str(reading.id),
            f"{letters.get(reading.point, '')} {label_of(circuit, reading.point)}".strip(),
            state_words(circuit, reading.state),
            f"{reading.value:.3f} ± {2.0 * reading.standard_u:.2g} {unit}",
            f"{should} {unit}" if should else "",
            "doubted" if reading.id in doubted else fits,
            _THERE[reading.complaint],
        )
        rows.append((reading.id, Row(cells)))
    for sign in check.signs:
        there = "doubted" if sign.id in doubted else ""
        where = state_words(circuit, sign.state)
        seen = (str(sign.id), sign.sign.value, where, sign.value, "", there, "")
        rows.append((sign.id, Row(seen)))
    if rows:
        sheets.heading("Readings and signs", keep=70.0)
        lay_table(sheets, _READINGS, [row for _, row in sorted(rows, key=lambda pair: pair[0])])


def _shown(suspects: Sequence[Suspect]) -> list[Suspect]:
    return [one for one in suspects if one.probability >= _SHOWN]


def _suspects(sheets: Sheets, suspects: Sequence[Suspect]) -> None:
    shown = _shown(suspects)
    if not shown:
        return
    sheets.heading("Suspects", keep=70.0)
    rows = [
        Row(
            (
                percent(one.probability),
                one.label,
                percent(one.without_best),
                "; ".join(f"{each.words} {percent(each.probability)}" for each in one.faults[:3]),
            )
        )
        for one in shown
    ]
    lay_table(sheets, _SUSPECTS, rows)
    left = len(suspects) - len(shown)
    more = f" And {left} more below half a percent." if left else ""
    said = "Without best: the least that is left when any one entry is taken away."
    sheets.words(said + more, FAINT)


def _next(test: ProposedTest | None) -> list[str]:
    if test is None:
        return []
    meaning = [one.words for one in test.outcomes] or [test.meaning]
    return [test.words, *meaning, *(f"CAUTION: {words}" for words in test.cautions)]
