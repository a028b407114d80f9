"""ComparisonText: a comparison as lines for a terminal or a file."""

from __future__ import annotations

import textwrap
from collections.abc import Sequence

from meterlog.analysis import with_uncertainty
from meterlog.analysis.compare import is_covered
from meterlog.evidence.comparison_opening import not_whole
from meterlog.evidence.conditions_text import condition_label
from meterlog.evidence.unbroken import unbroken
from meterlog.model import Budget, ComparedRun, Comparison, ConditionCheck, StepDifference, Verdict

_WIDTH = 100
_HEAD = ("speed", "at V", "old A", "new A", "new - old A", "new / old", "verdict")
_HEAD_GOOD = ("speed", "at V", "good ones A", "within A", "new A", "new - mean A", "verdict")


def comparison_lines(comparison: Comparison, width: int = _WIDTH) -> list[str]:
    """Give a comparison as plain text.

    Parameters
    ----------
    comparison : Comparison
    width : int
        Characters a line of prose, at least 60.

    Returns
    -------
    list of str
        Who against whom, what of them is not whole, the summary, the table of speeds each with its
        sentence, the conditions, the notes.
    """
    lines = [f"old: {_run(one)}" for one in comparison.old]
    lines.append(f"new: {_run(comparison.new)}")
    told_first = not_whole(comparison)
    lines += [line for one in told_first for line in unbroken(one, max(60, width))]
    lines.append("")
    lines += _wrapped(comparison.summary, width)
    if comparison.steps:
        lines += ["", *_table(comparison, width)]
    if comparison.figures:
        lines.append("")
        lines += [line for one in comparison.figures for line in _wrapped(one.words, width)]
    if comparison.conditions:
        lines += ["", *_conditions(comparison.conditions, width)]
    notes = [one for one in comparison.notes if one not in told_first]
    if notes:
        lines.append("")
        lines += [line for one in notes for line in _wrapped(f"note: {one}", width)]
    return lines


def _run(run: ComparedRun) -> str:
    part = f", {run.part}" if run.part else ""
    return f"{run.name}{part} ({run.origin}, {started_words(run)})"


def started_words(run: ComparedRun) -> str:
    """Say when a run began, such as ``2026-05-04 10:20 UTC``, or that nobody knows."""
    if not run.started_utc:
        return "at a time that is not known"
    return f"{run.started_utc[:16].replace('T', ' ')} UTC"


def _wrapped(text: str, width: int, lead: str = "") -> list[str]:
    return textwrap.wrap(
        text, max(60, width), initial_indent=lead, subsequent_indent=lead or "    " * bool(lead)
    )


def _table(comparison: Comparison, width: int) -> list[str]:
    steps = comparison.steps
    baseline = any(step.count for step in steps)
    differ = comparison.max_difference_percent is None and not baseline
    head = _HEAD_GOOD if baseline else (*_HEAD[:-1], "result" if differ else "verdict")
    cells = baseline_cells if baseline else step_cells
    rows = [(*cells(step), verdict_cell(step, differ=differ)) for step in steps]
    sizes = [max(len(row[k]) for row in (head, *rows)) for k in range(len(head))]
    lines = [_line(head, sizes), "  ".join("-" * size for size in sizes)]
    for step, row in zip(steps, rows, strict=True):
        lines += [_line(row, sizes), *_wrapped(step.words, width, "    ")]
    return lines


def _line(cells: Sequence[str], sizes: Sequence[int]) -> str:
    padded = [
        cell.ljust(size) if k == len(sizes) - 1 else cell.rjust(size)
        for k, (cell, size) in enumerate(zip(cells, sizes, strict=True))
    ]
    return "  ".join(padded).rstrip()


def step_cells(step: StepDifference) -> tuple[str, ...]:
    """Give one speed's figures: speed, volts, old, new, difference, ratio."""
    return (
        str(step.speed),
        _at(step),
        _sized(step.old_a),
        _sized(step.new_a),
        _sized(step.difference_a),
        _sized(step.ratio),
    )


def baseline_cells(step: StepDifference) -> tuple[str, ...]:
    """Give one speed's figures against good ones: speed, volts, mean, interval, new, difference."""
    bounds = step.tolerance_a
    return (
        str(step.speed),
        _at(step),
        _sized(step.old_a),
        "" if bounds is None else f"{bounds[0]:.3g} to {bounds[1]:.3g}",
        _sized(step.new_a),
        _sized(step.difference_a),
    )


def verdict_cell(step: StepDifference, *, differ: bool) -> str:
    """Give the verdict of one speed.

    Where it is only asked whether two motors ``differ``, that they do is no fault of the new one.
    """
    if step.verdict is None:
        return ""
    if differ and step.verdict is Verdict.FAIL:
        return "they differ"
    if differ and step.verdict is Verdict.CANT_TELL and is_covered(step):
        return "none seen"  # as its sentence says; nobody asked whether they are alike
    return step.verdict.value


def _sized(value: Budget | None) -> str:
    if value is None:
        return ""
    return with_uncertainty(value.value, value.expanded if value.sources else None, "").strip()


def _at(step: StepDifference) -> str:
    return "as read" if step.reference_v is None else f"{step.reference_v:.2f}"


def _conditions(checks: Sequence[ConditionCheck], width: int) -> list[str]:
    """Give a line for each condition of which anything is known, and one for all others."""
    lines = ["conditions (old / new)"]
    unsaid = [condition_label(one.name) for one in checks if not one.old and not one.new]
    for check in checks:
        if check.old or check.new:
            lines += _condition(check, width)
    if unsaid:
        lines += _wrapped(f"not stated on either side: {'; '.join(unsaid)}", width, "    ")
    return lines


def _condition(check: ConditionCheck, width: int) -> list[str]:
    sides = f"{check.old or 'not stated'} / {check.new or 'not stated'}"
    words = f": {check.words}" if check.words else ""
    return textwrap.wrap(
        f"{condition_label(check.name)}: {sides}, {check.weight}{words}",
        max(60, width),
        initial_indent="    ",
        subsequent_indent="        ",
    )
