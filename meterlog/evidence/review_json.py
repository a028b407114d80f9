"""ReviewJson: a review as plain numbers and texts, ready for JSON."""

from __future__ import annotations

import math

from meterlog.evidence.budgets_json import budgets_to_list
from meterlog.evidence.inferred_json import inferred_to_list, pulsed_to_list, rhythm_to_dict
from meterlog.evidence.motor_json import heat_to_list, motor_to_dict
from meterlog.evidence.ripple_json import ripple_to_list
from meterlog.evidence.startup_json import fuse_to_dict, startups_to_list
from meterlog.evidence.taps_json import taps_to_dict
from meterlog.evidence.verdict_json import verdict_to_dict
from meterlog.model import Doubt, Finding, Review, Span, Step

_STEP_FIGURES = (
    "n", "mean_v", "sd_v", "mean_a", "sd_a", "median_a", "min_a", "max_a", "steady_n",
    "steady_mean_v", "steady_mean_a", "steady_sd_a", "steady_expanded_a",
    "steady_coverage", "steady_lag1_a", "steady_volts_n", "steady_sd_v", "steady_lag1_v",
    "steady_feed_v", "steady_back_v", "steady_battery_v", "steady_command_v",
)  # fmt: skip


def review_to_dict(review: Review) -> dict[str, object]:
    """Give a review as a JSON object.

    Parameters
    ----------
    review : Review

    Returns
    -------
    dict
        ``one_part``, ``verdict``, ``decision_rule``, ``spans``, ``steps``, ``budgets``,
        ``findings``, ``taps``, ``inferred``, ``pulsed``, ``rhythm``, ``startups``, ``fuse``,
        ``motor``, ``heat``, ``ripple``, ``shortest_visible_dropout_s``, ``brief_dropouts``,
        ``catch_chances``, ``doubts`` and ``notes``; DEVELOPERS.md says what is in them. Times are
        seconds since the recording's zero; a number that is not known, or not finite, is None, so
        that strict JSON can be made of it.
    """
    return {
        "one_part": review.part,
        "verdict": verdict_to_dict(review.verdict),
        "decision_rule": review.decision_rule,
        "spans": [_span(span) for span in review.spans],
        "steps": [_step(step) for step in review.steps],
        "budgets": budgets_to_list(review.steps),
        "findings": [_finding(finding) for finding in review.findings],
        "taps": taps_to_dict(review.taps),
        "inferred": inferred_to_list(review.inferred),
        "pulsed": pulsed_to_list(review.pulsed),
        "rhythm": rhythm_to_dict(review.rhythm),
        "startups": startups_to_list(review.startups),
        "fuse": fuse_to_dict(review.fuse),
        "motor": motor_to_dict(review.motor),
        "heat": heat_to_list(review.heat),
        "ripple": ripple_to_list(review.ripple),
        "shortest_visible_dropout_s": _number(review.shortest_visible_dropout_s),
        "brief_dropouts": {"count": review.brief, "together_s": review.brief_s},
        "catch_chances": [
            {"duration_s": _number(chance.duration_s), "chance": _number(chance.chance)}
            for chance in review.catch_chances
        ],
        "doubts": [_doubt(doubt) for doubt in review.doubts],
        "notes": list(review.notes),
    }


def _number(value: float | None) -> float | None:
    return None if value is None or not math.isfinite(value) else value


def _span(span: Span) -> dict[str, object]:
    return {
        "kind": span.kind.value,
        "start_s": span.start_ns / 1e9,
        "end_s": span.end_ns / 1e9,
        "edge_s": max(span.start_edge_ns, span.end_edge_ns) / 1e9,
        "start_edge_s": span.start_edge_ns / 1e9,
        "end_edge_s": span.end_edge_ns / 1e9,
        "speed": span.speed,
        "detail": span.detail,
        "settled_by": [role.value for role in span.settled_by],
    }


def _step(step: Step) -> dict[str, object]:
    figures = {name: _number(getattr(step, name)) for name in _STEP_FIGURES}
    return {
        "speed": step.speed,
        "start_s": step.start_ns / 1e9,
        "end_s": step.end_ns / 1e9,
        "edge_s": step.edge_ns / 1e9,
        "found": step.found,
        "proposed_speed": step.proposed_speed,
        **figures,
    }


def _doubt(doubt: Doubt) -> dict[str, object]:
    return {
        "kind": doubt.kind.value,
        "start_s": doubt.start_ns / 1e9,
        "end_s": doubt.end_ns / 1e9,
        "instrument": doubt.source,
        "text": doubt.text,
        "offset_a": doubt.offset_a,
    }


def _finding(finding: Finding) -> dict[str, object]:
    return {
        "kind": finding.kind.value,
        "verdict": finding.verdict.value,
        "start_s": finding.start_ns / 1e9,
        "end_s": finding.end_ns / 1e9,
        "edge_s": finding.edge_ns / 1e9,
        "value": _number(finding.value),
        "unit": finding.unit,
        "expanded_uncertainty": _number(finding.expanded_uncertainty),
        "coverage_factor": finding.coverage_factor,
        "probability": _number(finding.probability),
        "limit": _number(finding.limit),
        "speed": finding.speed,
        "statement": finding.statement,
    }
