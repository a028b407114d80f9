"""BudgetsText: the uncertainty budgets of the steps as tables for a terminal or a file."""

from __future__ import annotations

import math
import textwrap
from collections.abc import Sequence

from meterlog.analysis import with_uncertainty
from meterlog.evidence.budgets_json import budgets_of
from meterlog.model import Budget, Source, Step

_WIDTH = 100
_HEAD = ("source", "u", "unit", "shape", "degrees", "sensitivity", "contribution", "share")
_LEFT = frozenset({0, 2, 3})
_GAP = "  "
_NAME_LEAST = 16


def budgets_lines(steps: Sequence[Step]) -> list[str]:
    """Give a table for each figure of each step: what its uncertainty is made of.

    Parameters
    ----------
    steps : sequence of Step

    Returns
    -------
    list of str
        At most 100 characters each. Below each table stands the result in the form in which it is
        reported; ``share`` is the part of the variance, so that lines of one error that cancel each
        other are below zero or above the whole.
    """
    lines: list[str] = []
    for step in steps:
        for _, made in budgets_of(step):
            if lines:
                lines.append("")
            lines += budget_lines(made, _when(step))
    return lines or ["No budgets: no step has a steady current or voltage."]


def budget_lines(made: Budget, when: str = "") -> list[str]:
    """Give one budget as a table with its result below.

    Parameters
    ----------
    made : Budget
    when : str
        Added to the title.

    Returns
    -------
    list of str

    Source
    ------
    Table: EA-4/02 M:2022, clause 4 (its last column as a share). Result: clause 6.
    """
    title = textwrap.wrap(f"{made.name}{when}", _WIDTH)
    if not made.sources:
        return [*title, *_wrapped(_result(made))]
    cells = [_cells(source, _share(source, made)) for source in made.sources]
    others = (max(map(len, column)) for column in zip(_HEAD[1:], *cells, strict=True))
    room = max(_WIDTH - sum(size + len(_GAP) for size in others), _NAME_LEAST)
    rows = [
        row
        for source, own in zip(made.sources, cells, strict=True)
        for row in _rows(source.name, own, room)
    ]
    sizes = [max(len(row[k]) for row in (_HEAD, *rows)) for k in range(len(_HEAD))]
    table = [_line(_HEAD, sizes), _GAP.join("-" * size for size in sizes)]
    return [*title, *table, *(_line(row, sizes) for row in rows), *_wrapped(_result(made))]


def _when(step: Step) -> str:
    return f", {step.start_ns / 1e9:.1f} s to {step.end_ns / 1e9:.1f} s"


def _result(made: Budget) -> str:
    """Say the result: value, U, k, coverage probability and why that k (EA-4/02, clause 6)."""
    lacking = f" Not in: {made.lacking}." if made.lacking else ""
    if not made.sources:
        value = with_uncertainty(made.value, None, made.unit)
        return f"{value}; its uncertainty is not known.{lacking}"
    result = with_uncertainty(made.value, made.expanded, made.unit).removesuffix(f" {made.unit}")
    bound = " U is a lower bound." if made.lacking else ""
    return (
        f"({result}) {made.unit}: u = {made.combined_u:.3g} {made.unit}, k = {made.coverage:.2f}"
        f" ({made.reason}), coverage probability about 95 %.{lacking}{bound}"
    )


def _share(source: Source, made: Budget) -> float:
    """Give the part of the variance that goes with a line, in percent.

    A line of an error that others have too counts with the sum of them: c_i u_i (sum of all) over
    u^2, so that the shares add up to 100 %.
    """
    if made.combined_u <= 0.0:
        return 0.0
    same = [one.contribution for one in made.sources if source.key and one.key == source.key]
    together = sum(same) if same else source.contribution
    return 100.0 * (source.contribution / made.combined_u) * (together / made.combined_u)


def _cells(source: Source, share: float) -> tuple[str, ...]:
    return (
        f"{source.standard_u:.3g}",
        source.unit,
        source.shape.value,
        f"{source.degrees:.0f}" if math.isfinite(source.degrees) else "inf",
        f"{source.sensitivity:.4g}",
        f"{source.contribution:.3g}",
        f"{share:.1f} %",
    )


def _rows(name: str, cells: tuple[str, ...], room: int) -> list[tuple[str, ...]]:
    """Give the row of one line; a long name goes on in rows of its own."""
    names = textwrap.wrap(name, room, subsequent_indent="  ") or [""]
    return [(names[0], *cells), *((more, *("",) * len(cells)) for more in names[1:])]


def _line(cells: tuple[str, ...], sizes: list[int]) -> str:
    padded = [
        cell.ljust(size) if k in _LEFT else cell.rjust(size)
        for k, (cell, size) in enumerate(zip(cells, sizes, strict=True))
    ]
    return _GAP.join(padded).rstrip()


def _wrapped(text: str) -> list[str]:
    return textwrap.wrap(text, _WIDTH, initial_indent="  ", subsequent_indent="  ")
