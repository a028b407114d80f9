"""Across: the voltage over a linear controller at one speed, from what was read on its side."""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass
from typing import Protocol

from meterlog.analysis.budgets import BudgetMaker, Scatter, budget, combine
from meterlog.analysis.judged import Judged
from meterlog.model import Budget, Role, Step


class Level(Protocol):
    """Mean, standard deviation and count of some readings."""

    @property
    def mean(self) -> float:
        """Volts."""

    @property
    def sd(self) -> float:
        """Volts."""

    @property
    def n(self) -> int:
        """Number of readings."""


OtherVolts = Callable[[Role, int, int], Level | None]
"""Gives what a side voltage was from start to end, nanoseconds."""

_CARRIES = 0.1
"""A controller that slows the fan holds at least this part of the supply at the lowest speed."""

_SUPPLIES = (Role.RELAY_OUT, Role.BATTERY)


@dataclass(frozen=True, slots=True)
class Across:
    """The voltage over the controller.

    Attributes
    ----------
    volts : Budget
    words : str
        What it was made of, and what else it holds.
    """

    volts: Budget
    words: str


def across_low(judged: Judged, step: Step, other: OtherVolts | None) -> Across | None:
    """Give return less controller ground; less nothing where that was not read."""
    back = _read(judged, Role.MOTOR_RETURN, step, step.steady_back_v)
    if back is None:
        return None
    ground = _other(judged, Role.CONTROLLER_GROUND, step, other)
    if ground is None:
        return Across(back, "motor return to battery negative, its ground wire included")
    drop = combine("over the controller", back.value - ground.value, "V", [(back, 1), (ground, -1)])
    return Across(drop, "motor return to controller ground")


def across_high(judged: Judged, step: Step, other: OtherVolts | None) -> Across | None:
    """Give relay output (or battery) less motor feed; None where either was not read."""
    feed = _read(judged, Role.MOTOR_FEED, step, step.steady_feed_v)
    if feed is None:
        return None
    for role in _SUPPLIES:
        supply = _other(judged, role, step, other)
        if supply is None and role is Role.BATTERY:
            supply = _read(judged, role, step, step.steady_battery_v)
        if supply is not None:
            drop = combine(
                "over the controller", supply.value - feed.value, "V", [(supply, 1), (feed, -1)]
            )
            wires = " (fuse, relay and wires included)" if role is Role.BATTERY else ""
            return Across(drop, f"{role.value} to motor feed{wires}")
    return None


def carries(across: Across | None, step: Step) -> bool:
    """Tell whether this side slows the fan in ``step``: it holds a real part of the voltage."""
    motor = 0.0 if step.steady_mean_v is None else abs(step.steady_mean_v)
    return across is not None and across.volts.value >= _CARRIES * (across.volts.value + motor)


def _other(judged: Judged, role: Role, step: Step, other: OtherVolts | None) -> Budget | None:
    found = None if other is None else other(role, step.start_ns, step.end_ns)
    return None if found is None else _read(judged, role, step, found.mean, found)


def _read(
    judged: Judged, role: Role, step: Step, mean: float | None, scatter: Level | None = None
) -> Budget | None:
    """Give a voltage with its budget."""
    if mean is None or not math.isfinite(mean):
        return None
    maker = BudgetMaker(judged.instruments, judged.conditions)
    for event in judged.events:
        maker.take(event)
    if scatter is None:
        lot = Scatter(step.steady_volts_n, step.steady_sd_v, step.steady_lag1_v)
    else:
        lot = Scatter(scatter.n, scatter.sd)
    during = (step.start_ns, step.end_ns)
    made = maker.of_reading(role, role.value, mean, lot, during)
    return made or budget(role.value, mean, "V", (), f"the uncertainty of {role.value}")
