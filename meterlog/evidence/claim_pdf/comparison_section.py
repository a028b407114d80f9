"""ComparisonSection: new against old, speed by speed, with the conditions of both."""

from __future__ import annotations

from collections.abc import Sequence

from meterlog.evidence.claim_pdf.card_part import recorded_part
from meterlog.evidence.claim_pdf.facts_block import lay_facts
from meterlog.evidence.claim_pdf.overlay_plot import PANELS, paint_overlay
from meterlog.evidence.claim_pdf.page_look import ALERT, BODY
from meterlog.evidence.claim_pdf.sheets import Sheets
from meterlog.evidence.claim_pdf.table_block import Column, Row, lay_table
from meterlog.evidence.comparison_text import (
    baseline_cells,
    started_words,
    step_cells,
    verdict_cell,
)
from meterlog.evidence.conditions_text import condition_label
from meterlog.model import ComparedRun, Comparison, ConditionCheck, Overlay
from meterlog.model.job_card import JobCard

_PAIR = ("speed", "at V", "old A", "new A", "new - old A", "new / old")
_GOOD = ("speed", "at V", "good ones A", "within A", "new A", "new - mean A")
_PLOT = 210.0


def add_comparison(sheets: Sheets, comparison: Comparison | None, card: JobCard) -> None:
    """Put the chapter; nothing where there is nothing to compare.

    Parameters
    ----------
    sheets : Sheets
    comparison : Comparison or None
    card : JobCard
        Says of a part what its recording does not.
    """
    if comparison is None:
        return
    sheets.heading("New against old", chapter=True, keep=160.0)
    runs = [("Old", _run(one, "before", card)) for one in comparison.old]
    lay_facts(sheets, [*runs, ("New", _run(comparison.new, "after", card))], columns=1)
    sheets.space(4.0)
    if comparison.refusal:
        sheets.words(comparison.refusal, ALERT)
    sheets.words(comparison.summary, BODY)
    laid = [one for one in comparison.overlays if one.t_s]
    by_speed = [one for one in laid if one.speed is not None]
    laid = by_speed or laid  # the whole run only where no speed can be laid over its like
    for first in range(0, len(laid), PANELS):
        _overlay(sheets, laid[first : first + PANELS])
    if comparison.steps:
        sheets.space(6.0)
        _steps(sheets, comparison)
    sheets.listed([one.words for one in comparison.figures])
    if comparison.conditions:
        sheets.heading("Conditions", keep=70.0)
        _conditions(sheets, comparison.conditions)
    if comparison.notes:
        sheets.heading("Notes on the comparison", keep=30.0)
        sheets.listed(comparison.notes)


def _overlay(sheets: Sheets, row: Sequence[Overlay]) -> None:
    def lay(_room: float) -> None:
        sheets.space(6.0)
        sheets.picture(_PLOT, lambda painter, rect: paint_overlay(painter, rect, row))

    sheets.block(_PLOT + 10.0, lay)


def _run(run: ComparedRun, side: str, card: JobCard) -> str:
    part = f", {run.part}" if run.part else f", part {recorded_part('', side, card)}"
    return f"{run.name}{part} ({run.origin}, {started_words(run)}), recording {run.recording_id}"


def _steps(sheets: Sheets, comparison: Comparison) -> None:
    baseline = any(step.count for step in comparison.steps)
    differ = comparison.max_difference_percent is None and not baseline
    heads = _GOOD if baseline else _PAIR
    columns = [Column(head, right=True) for head in heads]
    columns.append(Column("result" if differ else "verdict"))
    cells = baseline_cells if baseline else step_cells
    rows = [
        Row((*cells(one), verdict_cell(one, differ=differ)), one.words) for one in comparison.steps
    ]
    lay_table(sheets, columns, rows)


def _conditions(sheets: Sheets, checks: Sequence[ConditionCheck]) -> None:
    said = [one for one in checks if one.old or one.new]
    rows = [
        Row(
            (
                condition_label(one.name),
                one.old or "not stated",
                one.new or "not stated",
                one.weight,
                one.words,
            )
        )
        for one in said
    ]
    heads = ("condition", "old", "new", "", "what it does")
    lay_table(sheets, [Column(head) for head in heads], rows)
    unsaid = [condition_label(one.name) for one in checks if one not in said]
    if unsaid:
        sheets.words(f"Not stated on either side: {'; '.join(unsaid)}.")
