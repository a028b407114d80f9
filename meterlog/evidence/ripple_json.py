"""RippleJson: what the ripple shows, as plain numbers and texts, ready for JSON."""

from __future__ import annotations

import math
from collections.abc import Sequence

from meterlog.model import BarFlaw, RippleView


def ripple_to_list(views: Sequence[RippleView]) -> list[dict[str, object]]:
    """Give the ripple of each step as a JSON object.

    Parameters
    ----------
    views : sequence of RippleView

    Returns
    -------
    list of dict
        Times are seconds since the recording's zero; what is not known, or not finite, is None.
    """
    return [_view(view) for view in views]


def _number(value: float | None) -> float | None:
    return None if value is None or not math.isfinite(value) else value


def _view(view: RippleView) -> dict[str, object]:
    return {
        "speed": view.speed,
        "start_s": view.start_ns / 1e9,
        "end_s": view.end_ns / 1e9,
        "rate_hz": _number(view.rate_hz),
        "refusal": view.refusal,
        "needed_rate_hz": _number(view.needed_rate_hz),
        "commutation_hz": _number(view.commutation_hz),
        "commutation_expanded_hz": _number(view.commutation_u_hz),
        "bars": view.bars,
        "ripples_per_turn": view.ripples_per_turn,
        "bars_confidence": _number(view.bars_confidence),
        "turns_rpm": _number(view.turns_rpm),
        "turns_expanded_rpm": _number(view.turns_u_rpm),
        "track": [
            {"t_s": _number(t_s), "turns_rpm": _number(rpm)}
            for t_s, rpm in zip(view.track_s, view.track_rpm, strict=True)
        ],
        "profile": [_number(height) for height in view.profile],
        "flaws": [_flaw(flaw) for flaw in view.flaws],
        "ripple_percent": _number(view.ripple_percent),
        "brush_noise": _number(view.brush_noise),
        "statement": view.statement,
    }


def _flaw(flaw: BarFlaw) -> dict[str, object]:
    return {
        "bar": flaw.bar,
        "depth_percent": _number(100.0 * flaw.depth),
        "dead": flaw.dead,
        "confidence": _number(flaw.confidence),
    }
