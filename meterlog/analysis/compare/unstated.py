"""Unstated: what meters may be off by that nobody has said, in a difference of two currents."""

from __future__ import annotations

import math
from collections.abc import Sequence

from meterlog.analysis.budgets.usual_error import usual_more
from meterlog.analysis.compare.shared_errors import shared_meters
from meterlog.analysis.compare.side import Side
from meterlog.analysis.motor.reference import EXPONENT
from meterlog.model import Budget, Quantity, Role

VOLTS_PERCENT = 1.0
"""Error of a usual voltmeter of which nobody has said it (common practice, no source)."""


def unstated_a(sides: Sequence[Side], amps: Sequence[Budget]) -> float:
    """Give the half-width of the usual error that a difference lacks, amperes; 0 for none.

    Parameters
    ----------
    sides : sequence of Side
        The new one last; one alone has nothing that cancels against another.
    amps : sequence of Budget
        The current of each.

    Source
    ------
    Usual errors of clamps, shunts and meters: common practice, no source. Of one meter on both
    sides the part that goes with the current cancels; its zero does not.
    """
    *old, new = [_usual(side, one.value) for side, one in zip(sides, amps, strict=True)]
    *old_zero, new_zero = [_usual(side, 0.0) for side in sides]
    current = (Role.MOTOR_CURRENT,)
    if all(shared_meters(side.about, sides[-1].about, current) for side in sides[:-1]):
        return math.hypot(max(old_zero, default=0.0), new_zero)
    return math.hypot(max(old, default=0.0), new)


def _usual(side: Side, amps: float) -> float:
    home = side.current
    if home is None:
        return 0.0
    half = usual_more(home, amps, at_rest=False)
    if _has_unstated_volts(side):
        # A voltage read wrong brings the current to the wrong place on its curve.
        half = math.hypot(half, EXPONENT * amps * VOLTS_PERCENT / 100.0)
    return half


def _has_unstated_volts(side: Side) -> bool:
    read = (Role.MOTOR_FEED, Role.MOTOR_RETURN)
    return any(
        channel.accuracy is None
        for instrument in side.about.instruments
        for channel in instrument.channels
        if channel.role in read and channel.quantity is Quantity.VOLTAGE
    )
