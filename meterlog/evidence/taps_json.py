"""TapsJson: the tap evidence as plain numbers and texts, ready for JSON."""

from __future__ import annotations

import math

from meterlog.model import Tap, TapEvidence


def taps_to_dict(evidence: TapEvidence | None) -> dict[str, object] | None:
    """Give the tap evidence as a JSON object; None where nobody tapped.

    Returns
    -------
    dict or None
        ``summary``, ``accepted``, ``attempts``, ``tried``, ``answered``, ``chance``,
        ``permutations``, ``gone_a``, ``returned_a``, ``across_v``, ``supply_v``, ``slowest_s``,
        ``slowest_edge_s``, ``checks`` (each ``name``, ``verdict``, ``words``) and ``taps``. Times
        are seconds since the recording's zero; what is not known is None.
    """
    if evidence is None:
        return None
    return {
        "summary": evidence.summary,
        "accepted": evidence.accepted.value,
        "attempts": evidence.attempts,
        "tried": evidence.tried,
        "answered": evidence.answered,
        "chance": _number(evidence.chance),
        "permutations": evidence.permutations,
        "gone_a": _number(evidence.gone_a),
        "returned_a": _number(evidence.returned_a),
        "across_v": _number(evidence.across_v),
        "supply_v": _number(evidence.supply_v),
        "slowest_s": _number(evidence.slowest_s),
        "slowest_edge_s": _number(evidence.slowest_edge_s),
        "checks": [
            {"name": check.name, "verdict": check.verdict.value, "words": check.words}
            for check in evidence.checks
        ],
        "taps": [_tap(tap) for tap in evidence.taps],
    }


def _tap(tap: Tap) -> dict[str, object]:
    return {
        "t_s": tap.t_ns / 1e9,
        "attempt": tap.attempt,
        "speed": tap.speed,
        "before": tap.before,
        "after": tap.after,
        "before_a": _number(tap.before_a),
        "after_a": _number(tap.after_a),
        "returned_s": _number(tap.returned_s),
        "returned_edge_s": _number(tap.returned_edge_s),
        "answered": tap.answered,
        "stopped": tap.stopped,
        "late": tap.late,
    }


def _number(value: float | None) -> float | None:
    return None if value is None or not math.isfinite(value) else value
