"""InferredJson: what no single reading shows, as plain numbers and texts, ready for JSON."""

from __future__ import annotations

import math
from collections.abc import Sequence

from meterlog.model import Inferred, PulsedFeed, Rhythm


def inferred_to_list(inferred: Sequence[Inferred]) -> list[dict[str, object]]:
    """Give opens that were not seen as JSON objects; see ``review_json.py`` for the form."""
    return [
        {
            "kind": one.kind.value,
            "start_s": one.start_ns / 1e9,
            "end_s": one.end_ns / 1e9,
            "open_least_s": _number(one.open_s[0]),
            "open_most_s": _number(one.open_s[1]),
            "base_a": _number(one.base_a),
            "seen_a": _number(one.seen_a),
            "sigmas": _number(one.sigmas),
            "speed": one.speed,
            "after_tap_s": _number(one.after_tap_s),
            "statement": one.statement,
        }
        for one in inferred
    ]


def pulsed_to_list(pulsed: Sequence[PulsedFeed]) -> list[dict[str, object]]:
    """Give pulsed stretches as JSON objects; what the rate can't show is None."""
    return [
        {
            "start_s": one.start_ns / 1e9,
            "end_s": one.end_ns / 1e9,
            "speed": one.speed,
            "frequency_hz": _number(one.frequency_hz),
            "frequency_expanded_hz": _number(one.frequency_u_hz),
            "duty": _number(one.duty),
            "on_v": _number(one.on_v),
            "average_v": _number(one.average_v),
            "average_a": _number(one.average_a),
            "pulses_within_s": _number(one.within_s),
            "statement": one.statement,
        }
        for one in pulsed
    ]


def rhythm_to_dict(rhythm: Rhythm | None) -> dict[str, object] | None:
    """Give the rhythm of the dropouts as a JSON object; None where there is none to tell."""
    if rhythm is None:
        return None
    return {
        "kind": rhythm.kind.value,
        "dropouts": rhythm.count,
        "period_s": _number(rhythm.period_s),
        "period_sd_s": _number(rhythm.period_sd_s),
        "on_s": _number(rhythm.on_s),
        "off_s": _number(rhythm.off_s),
        "chance": _number(rhythm.chance),
        "statement": rhythm.statement,
    }


def _number(value: float | None) -> float | None:
    return None if value is None or not math.isfinite(value) else value
