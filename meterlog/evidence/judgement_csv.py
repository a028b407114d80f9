"""JudgementCsv: the lines of all budgets, the start-ups and the taps as rows of tables."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence

from meterlog.evidence.budgets_json import budgets_of
from meterlog.evidence.cell_text import Cell
from meterlog.evidence.judgement_columns import BUDGET_COLUMNS, START_COLUMNS, TAP_COLUMNS
from meterlog.evidence.table_column import Table
from meterlog.model import Budget, Review, StartUp, Step, Tap

YES = {True: "yes", False: "no"}


def judgement_tables(review: Review) -> dict[str, Table]:
    """Give the tables that a review has something for.

    Parameters
    ----------
    review : Review

    Returns
    -------
    dict of str to Table
        By file name. No table is empty.
    """
    budgets = [
        row
        for step in review.steps
        for name, made in budgets_of(step)
        for row in _budget(step, name, made)
    ]
    taps = review.taps.taps if review.taps is not None else ()
    tables = {
        "budgets.csv": Table(
            "Uncertainty budgets",
            "One line a source of error of one figure of one step; the figure stands in each.",
            BUDGET_COLUMNS,
            budgets,
        ),
        "startups.csv": Table(
            "Start-ups",
            "One line a start of the motor.",
            START_COLUMNS,
            [_start(one) for one in review.startups],
        ),
        "taps.csv": Table(
            "Taps", "One line a mark of a tap.", TAP_COLUMNS, [_tap(one) for one in taps]
        ),
    }
    return {name: table for name, table in tables.items() if table.rows}


def _budget(step: Step, figure: str, made: Budget) -> Iterator[Sequence[Cell]]:
    """Give a row a line; one without a line where nothing is known of the uncertainty."""
    known = bool(made.sources)
    result: Sequence[Cell] = (
        step.speed,
        step.start_ns / 1e9,
        step.end_ns / 1e9,
        figure,
        made.value,
        made.unit,
        made.combined_u if known else None,
        _degrees(made.degrees) if known else None,
        made.coverage if known else None,
        made.expanded if known else None,
        made.lacking,
    )
    for one in made.sources:
        line: Sequence[Cell] = (
            one.name,
            one.standard_u,
            one.unit,
            one.shape.value,
            _degrees(one.degrees),
            one.sensitivity,
            one.contribution,
            one.basis,
            one.key,
        )
        yield (*result, *line)
    if not known:
        yield (*result, *[None] * (len(BUDGET_COLUMNS) - len(result)))


def _degrees(degrees: float) -> Cell:
    """Write infinitely many as such: an empty cell would say that the number is not known."""
    return "INF" if math.isinf(degrees) else degrees


def _start(one: StartUp) -> Sequence[Cell]:
    return (
        one.t_ns / 1e9, one.edge_ns / 1e9, one.speed, one.cause, one.peak_a, one.peak_u_a,
        YES[one.peak_floor], one.peak_after_s, one.steady_a, one.ratio, one.settle_s,
        one.settle_edge_s, one.i2t_a2s, one.i2t_s,
    )  # fmt: skip


def _tap(tap: Tap) -> Sequence[Cell]:
    return (
        tap.t_ns / 1e9, tap.attempt, tap.speed, tap.before, tap.after, tap.before_a, tap.after_a,
        tap.returned_s, tap.returned_edge_s, YES[tap.answered], YES[tap.stopped], YES[tap.late],
    )  # fmt: skip
