"""MotorJson: the motor's figures and the controller's heat as plain numbers, ready for JSON."""

from __future__ import annotations

import math
from collections.abc import Sequence

from meterlog.model import Budget, ControllerHeat, MotorFit


def motor_to_dict(fit: MotorFit | None) -> dict[str, object] | None:
    """Give a motor fit as a JSON object; None of nothing.

    Parameters
    ----------
    fit : MotorFit or None

    Returns
    -------
    dict or None
        With a refusal all figures are None. Units stand in the keys: ohm, A, A/V², V.
    """
    if fit is None:
        return None
    expanded = [_number(one.expanded) for one in fit.figures] or [None, None, None]
    return {
        "refusal": fit.refusal,
        "resistance_ohm": _number(fit.resistance_ohm),
        "resistance_expanded_ohm": expanded[0],
        "no_load_a": _number(fit.no_load_a),
        "no_load_expanded_a": expanded[1],
        "fan_constant_a_per_v2": _number(fit.fan_constant_a_v2),
        "fan_constant_expanded_a_per_v2": expanded[2],
        "covariance": [[_number(one) for one in row] for row in fit.covariance],
        "brush_v": fit.brush_v,
        "chi2_per_degree": _number(fit.chi2_per_degree),
        "exponent": _number(fit.exponent),
        "reference_v": fit.reference_v,
        **_value("at_reference", fit.at_reference, "a"),
        **_value("stall_extrapolated", fit.stall_a, "a"),
        "points": [
            {
                "speed": one.speed,
                "motor_v": _number(one.volts),
                "current_a": _number(one.amps),
                "residual_a": _number(one.residual_a),
            }
            for one in fit.points
        ],
        "left_out": list(fit.left_out),
    }


def heat_to_list(heat: Sequence[ControllerHeat]) -> list[dict[str, object]]:
    """Give the heat in the controller at each speed as JSON objects."""
    return [
        {
            "speed": one.speed,
            "drop_v": _number(one.drop_v),
            **_value("heat", one.heat_w, "w"),
            **_value("motor", one.motor_w, "w"),
            "efficiency": _number(one.efficiency),
            "limit_w": _number(one.limit_w),
            "verdict": None if one.verdict is None else one.verdict.value,
            "probability": _number(one.probability),
        }
        for one in heat
    ]


def _number(value: float | None) -> float | None:
    return None if value is None or not math.isfinite(value) else value


def _value(name: str, value: Budget | None, unit: str) -> dict[str, object]:
    return {
        f"{name}_{unit}": None if value is None else _number(value.value),
        f"{name}_expanded_{unit}": (
            None if value is None or not value.sources else _number(value.expanded)
        ),
    }
