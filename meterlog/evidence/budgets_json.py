"""BudgetsJson: the budgets of the steps as plain numbers and texts, ready for JSON."""

from __future__ import annotations

import math
from collections.abc import Sequence

from meterlog.model import Budget, Source, Step

BUDGETS = ("current", "voltage", "power", "ratio")
"""The fields of a step that hold budgets, in the order they are shown."""


def budgets_to_list(steps: Sequence[Step]) -> list[dict[str, object]]:
    """Give the budgets of steps as JSON objects, one a budget, in order of the steps.

    Parameters
    ----------
    steps : sequence of Step

    Returns
    -------
    list of dict
        ``speed``, ``start_s``, ``end_s``, ``figure`` (current, voltage, power or ratio) and what
        :func:`budget_to_dict` gives. Times are seconds since the recording's zero; a number that
        is not known, or not finite, is None.
    """
    return [
        {
            "speed": step.speed,
            "start_s": step.start_ns / 1e9,
            "end_s": step.end_ns / 1e9,
            "figure": figure,
            **budget_to_dict(made),
        }
        for step in steps
        for figure, made in budgets_of(step)
    ]


def budgets_of(step: Step) -> list[tuple[str, Budget]]:
    """Give the budgets that a step has, each with the name of its field."""
    found = [(figure, getattr(step, figure)) for figure in BUDGETS]
    return [(figure, made) for figure, made in found if made is not None]


def budget_to_dict(made: Budget) -> dict[str, object]:
    """Give one budget as a JSON object.

    Parameters
    ----------
    made : Budget

    Returns
    -------
    dict
        Without sources nothing is known of the uncertainty: then its figures are None.
    """
    known = bool(made.sources)
    return {
        "name": made.name,
        "value": _number(made.value),
        "unit": made.unit,
        "combined_u": _number(made.combined_u) if known else None,
        "effective_degrees": _number(made.degrees) if known else None,
        "coverage_factor": _number(made.coverage) if known else None,
        "expanded_u": _number(made.expanded) if known else None,
        "coverage_reason": made.reason if known else "",
        "lacking": made.lacking,
        "sources": [_source(source) for source in made.sources],
    }


def _source(source: Source) -> dict[str, object]:
    return {
        "name": source.name,
        "standard_u": _number(source.standard_u),
        "unit": source.unit,
        "shape": source.shape.value,
        "degrees": _number(source.degrees),
        "sensitivity": _number(source.sensitivity),
        "contribution": _number(source.contribution),
        "key": source.key,
        "basis": source.basis,
    }


def _number(value: float) -> float | None:
    return value if math.isfinite(value) else None
