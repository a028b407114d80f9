"""Possible: figures that a table may hold at all, whoever has made it."""

from __future__ import annotations

import math
from collections.abc import Mapping

MOST = 1e12
"""As of numbers in about.json: products of several stay finite."""
LEAST = 1e-6
"""A, V; chosen: no meter of a fan shows as little, and one by its square stays finite."""
FASTEST = 999
"""Commanded speed, as of events."""
_STEEPEST = 10.0
"""Chosen; of currents over voltage no exponent comes near it."""
_AMOUNTS = ("nominal_v", "current_a", "motor_v", "compared_at_v")
_WIDTHS = ("current_u_a", "motor_u_v", "exponent_u")


def is_amount(value: object) -> bool:
    """Tell whether it can be a current, a voltage or a factor by which something was reckoned."""
    return isinstance(value, float) and LEAST <= value <= MOST


def is_width(value: object) -> bool:
    """Tell whether it can be an uncertainty or a spread: below nought it would narrow U."""
    return isinstance(value, float) and 0.0 <= value <= MOST


def is_exponent(value: object) -> bool:
    """Tell whether it can be p in I ~ V^p."""
    return isinstance(value, float) and math.isfinite(value) and abs(value) <= _STEEPEST


def is_speed(value: object) -> bool:
    """Tell whether it can be a commanded speed."""
    return isinstance(value, int) and 0 <= value <= FASTEST


def may_stand(row: Mapping[str, object]) -> bool:
    """Tell whether what a row of one speed says may stand in a baseline."""
    return (
        is_speed(row["speed"])
        and is_exponent(row["exponent"])
        and all(is_amount(row[name]) for name in _AMOUNTS)
        and all(is_width(row[name]) for name in _WIDTHS)
    )
