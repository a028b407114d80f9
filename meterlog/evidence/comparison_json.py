"""ComparisonJson: a comparison as plain numbers and texts, ready for JSON."""

from __future__ import annotations

import math
from collections.abc import Sequence

from meterlog.model import (
    Budget,
    ComparedRun,
    Comparison,
    ConditionCheck,
    FigureDifference,
    Overlay,
    StepDifference,
)


def comparison_to_dict(comparison: Comparison) -> dict[str, object]:
    """Give a comparison as a JSON object.

    Parameters
    ----------
    comparison : Comparison

    Returns
    -------
    dict
        A number that is not known, or not finite, is None, so that strict JSON can be made of it.
    """
    return {
        "old": [_run(one) for one in comparison.old],
        "new": _run(comparison.new),
        "refusal": comparison.refusal,
        "summary": comparison.summary,
        "verdict_says": _question(comparison),
        "max_difference_percent": _number(comparison.max_difference_percent),
        "conditions": [_condition(one) for one in comparison.conditions],
        "steps": [_step(one) for one in comparison.steps],
        "figures": [_figure(one) for one in comparison.figures],
        "overlays": [_overlay(one) for one in comparison.overlays],
        "notes": list(comparison.notes),
    }


def _question(comparison: Comparison) -> str:
    """Say what the verdict of a step answers."""
    if len(comparison.old) > 1:
        return "fail: the new one is not within what good ones draw"
    if comparison.max_difference_percent is not None:
        return "fail: the two differ by more than max_difference_percent"
    return "fail: the two differ beyond the uncertainty, which is no fault of the new one"


def _number(value: float | None) -> float | None:
    return None if value is None or not math.isfinite(value) else value


def _run(run: ComparedRun) -> dict[str, object]:
    return {
        "name": run.name,
        "id": run.recording_id,
        "part": run.part,
        "started_utc": run.started_utc,
        "origin": run.origin,
    }


def _condition(check: ConditionCheck) -> dict[str, object]:
    return {
        "name": check.name,
        "old": check.old,
        "new": check.new,
        "weight": check.weight,
        "words": check.words,
    }


def _value(name: str, value: Budget | None, unit: str) -> dict[str, object]:
    """Give a value and its expanded uncertainty under keys that hold the unit."""
    tail = f"_{unit}" if unit else ""
    return {
        f"{name}{tail}": None if value is None else _number(value.value),
        f"{name}_expanded{tail}": (
            None if value is None or not value.sources else _number(value.expanded)
        ),
    }


def _step(step: StepDifference) -> dict[str, object]:
    low, high = (None, None) if step.tolerance_a is None else step.tolerance_a
    return {
        "speed": step.speed,
        "verdict": None if step.verdict is None else step.verdict.value,
        "probability": _number(step.probability),
        "old_v": _number(step.old_v),
        "new_v": _number(step.new_v),
        "reference_v": _number(step.reference_v),
        **_value("old", step.old_a, "a"),
        **_value("new", step.new_a, "a"),
        **_value("difference", step.difference_a, "a"),
        "difference_coverage": (
            None if step.difference_a is None else _number(step.difference_a.coverage)
        ),
        **_value("ratio", step.ratio, ""),
        "baseline_count": step.count,
        "baseline_mean_a": _number(step.baseline_mean_a),
        "baseline_sd_a": _number(step.baseline_sd_a),
        "tolerance_low_a": _number(low),
        "tolerance_high_a": _number(high),
        "words": step.words,
    }


def _figure(figure: FigureDifference) -> dict[str, object]:
    return {
        "name": figure.name,
        "unit": figure.unit,
        "speed": figure.speed,
        "old": _number(figure.old),
        "new": _number(figure.new),
        "words": figure.words,
    }


def _numbers(values: Sequence[float]) -> list[float | None]:
    return [_number(one) for one in values]


def _overlay(overlay: Overlay) -> dict[str, object]:
    return {
        "name": overlay.name,
        "speed": overlay.speed,
        "t_s": _numbers(overlay.t_s),
        "old_a": _numbers(overlay.old_a),
        "new_a": _numbers(overlay.new_a),
    }
