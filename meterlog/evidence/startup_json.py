"""StartupJson: starts and the fuse as plain numbers and texts, ready for JSON."""

from __future__ import annotations

import math
from collections.abc import Sequence

from meterlog.model import Budget, FuseCheck, OpeningMargin, StartUp


def startups_to_list(startups: Sequence[StartUp]) -> list[dict[str, object]]:
    """Give one object a start; times in seconds since the recording's zero, None for not known."""
    return [_start(one) for one in startups]


def fuse_to_dict(check: FuseCheck | None) -> dict[str, object] | None:
    """Give the fuse's check as an object; None where the limits name no fuse."""
    if check is None:
        return None
    return {
        "rating_a": check.rating_a,
        "kind": check.kind,
        "load_percent": _load(check.load),
        "load_speed": check.speed,
        "max_load_percent": check.max_load_percent,
        "load_verdict": check.load_verdict.value,
        "load_probability": _number(check.load_probability),
        "margins": [_margin(row) for row in check.margins],
        "nuisance_verdict": check.nuisance.value,
        "statement": check.words,
    }


def _number(value: float | None) -> float | None:
    return None if value is None or not math.isfinite(value) else value


def _start(one: StartUp) -> dict[str, object]:
    return {
        "start_s": one.t_ns / 1e9,
        "edge_s": one.edge_ns / 1e9,
        "speed": one.speed,
        "cause": one.cause,
        "peak_a": _number(one.peak_a),
        "peak_expanded_a": _number(one.peak_u_a),
        "peak_after_s": _number(one.peak_after_s),
        "peak_is_floor": one.peak_floor,
        "peak_is_cut_off": one.peak_cut,
        "peak_is_beyond_range": one.peak_over,
        "peak_is_past_what_is_stated": one.peak_past,
        "steady_a": _number(one.steady_a),
        "ratio": _number(one.ratio),
        "settle_s": _number(one.settle_s),
        "settle_edge_s": _number(one.settle_edge_s),
        "i2t_a2s": _number(one.i2t_a2s),
        "i2t_over_s": _number(one.i2t_s),
    }


def _load(load: Budget | None) -> dict[str, object] | None:
    if load is None:
        return None
    known = bool(load.sources)
    return {
        "value": _number(load.value),
        "expanded_uncertainty": _number(load.expanded) if known else None,
        "coverage_factor": _number(load.coverage) if known else None,
        "lacking": load.lacking,
    }


def _margin(row: OpeningMargin) -> dict[str, object]:
    return {
        "percent_of_rating": row.percent,
        "current_a": row.amps,
        "longest_s": row.longest_s,
        "least_s": row.least_s,
        "most_s": row.most_s,
        "opens_after_s": row.opens_after_s,
        "opens_by_s": row.opens_by_s,
        "margin": _number(row.margin),
        "basis": row.basis,
    }
