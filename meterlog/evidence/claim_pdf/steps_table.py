"""StepsTable: what the motor drew at each speed, with U, limit and verdict."""

from __future__ import annotations

import math
from collections.abc import Sequence

from meterlog.analysis import with_uncertainty
from meterlog.evidence.claim_pdf.page_look import FAINT
from meterlog.evidence.claim_pdf.sheets import Sheets
from meterlog.evidence.claim_pdf.table_block import Column, Row, lay_table
from meterlog.evidence.findings_table import shown_value
from meterlog.model import Budget, Finding, FindingKind, Limits, Review, Step

MOST = 200
"""Rows of a table; the tables that are attached have all."""
_COLUMNS = (
    Column("speed", right=True),
    Column("from s", right=True),
    Column("to s", right=True),
    Column("steady readings", right=True),
    Column("motor voltage V", right=True),
    Column("motor current A", right=True),
    Column("k", right=True),
    Column("limits A", right=True),
    Column("within, prob.", right=True),
    Column("verdict"),
)


def add_steps(sheets: Sheets, review: Review, limits: Limits) -> None:
    """Put the table of steps, and what its figures are."""
    if not review.steps:
        return
    sheets.heading("Per step", keep=80.0)
    judged = {
        (one.start_ns, one.end_ns): one
        for one in review.findings
        if one.kind is FindingKind.STEP_CURRENT
    }
    rows = [
        _row(step, judged.get((step.start_ns, step.end_ns)), limits) for step in review.steps[:MOST]
    ]
    lay_table(sheets, _COLUMNS, rows)
    more = len(review.steps) - MOST
    if more > 0:
        sheets.words(f"and {more} more: steps.csv has all of them.", FAINT)
    said = (
        "Steady running: without start-up and without lost current. ± is for about 95 %, made with"
        " the factor k. Within: probability that the true current is within its limits."
    )
    said += not_in_words(review.steps[:MOST])
    if any(step.found for step in review.steps[:MOST]):
        said += " Found: nobody recorded the speed, and the change was found in the current."
    sheets.words(said, FAINT)


def not_in_words(steps: Sequence[Step], *, volts: bool = True) -> str:
    """Say what the ± of steps do not hold, as a sentence that follows; empty for nothing.

    Parameters
    ----------
    steps : sequence of Step
    volts : bool
        The motor voltage is told, too.
    """
    told = [one for step in steps for one in (step.current, step.voltage if volts else None)]
    lacking = [one.lacking for one in told if one is not None and one.sources]
    each = dict.fromkeys(words for one in lacking for words in one.split("; ") if words)
    return f" Not in the ±, which is a lower bound: {'; '.join(each)}." if each else ""


def _row(step: Step, finding: Finding | None, limits: Limits) -> Row:
    made = step.current
    return Row(
        (
            _speed(step),
            f"{step.start_ns / 1e9:.1f}",
            f"{step.end_ns / 1e9:.1f}",
            str(step.steady_n),
            _sized(step.voltage, step.steady_mean_v, None),
            _sized(made, step.steady_mean_a, step.steady_expanded_a),
            f"{made.coverage:.2f}" if made is not None and made.sources else "",
            limits_words(limits, step.speed),
            "" if finding is None or finding.probability is None else f"{finding.probability:.3f}",
            "not judged" if finding is None else finding.verdict.value,
        )
    )


def _speed(step: Step) -> str:
    if step.speed is not None:
        return f"{step.speed} found" if step.found else (str(step.speed) if step.speed else "off")
    return "?" if step.proposed_speed is None else f"{step.proposed_speed}? found"


def _sized(made: Budget | None, mean: float | None, expanded: float | None) -> str:
    if made is not None:
        return value_words(made.value, made.expanded if made.sources else None)
    return value_words(mean, expanded)


def value_words(value: float | None, expanded: float | None) -> str:
    """Give a figure with its expanded uncertainty; empty where it is not known."""
    if value is None or not math.isfinite(value):
        return ""
    return with_uncertainty(value, expanded, "").strip()


def limits_words(limits: Limits, speed: int | None) -> str:
    """Give from what to what the current may be at a speed; empty where nothing is said."""
    allowed = limits.at(speed)
    if allowed.min_a is None and allowed.max_a is None:
        return ""
    low = "" if allowed.min_a is None else f"{allowed.min_a:g}"
    high = "" if allowed.max_a is None else f"{allowed.max_a:g}"
    return f"{low} to {high}".strip()


def findings_rows(findings: Sequence[Finding], limits: Limits) -> list[Row]:
    """Give findings as rows: verdict, what, when, value and limits, the sentence beneath.

    Of a step's current both limits stand there, where there are two: the finding holds but the
    one that decided.
    """
    return [
        Row(
            (
                one.verdict.value,
                one.kind.value,
                f"{one.start_ns / 1e9:.3f}",
                f"{one.end_ns / 1e9:.3f}",
                f"{one.edge_ns / 1e9:.3f}",
                "" if one.speed is None else str(one.speed),
                _with_unit(shown_value(one), one),
                _limit(one, limits),
                "" if one.probability is None else f"{one.probability:.3f}",
            ),
            one.statement,
        )
        for one in findings
    ]


def _limit(one: Finding, limits: Limits) -> str:
    if one.limit is None:
        return ""
    if one.kind is FindingKind.STEP_CURRENT:
        allowed = limits.at(one.speed)
        both = (allowed.min_a, allowed.max_a)
        if None not in both and one.limit in both:
            return f"{limits_words(limits, one.speed)} {one.unit}"
    return f"{one.limit:.4g} {one.unit}"


def _with_unit(value: float | None, one: Finding) -> str:
    if value is None or not math.isfinite(value):
        return ""
    return with_uncertainty(value, one.expanded_uncertainty, one.unit)
