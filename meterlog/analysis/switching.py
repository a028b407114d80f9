"""Switchings: the instants at which a channel shows that the fan was switched on or off."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from meterlog.analysis.edges import fall_edge, rise_edge
from meterlog.analysis.schmitt import hold
from meterlog.model import Quantity, Role

ROLES = (
    Role.MOTOR_CURRENT,
    Role.MOTOR_RETURN,
    Role.MOTOR_FEED,
    Role.RELAY_OUT,
    Role.DROP,
)
"""Channels that step at the instant at which the fan is switched, the best first. A command and a
relay's coil come before it, and a battery hardly moves."""
LOWER, UPPER = 0.3, 0.7
"""Below and above these parts of its whole step a channel is off and on."""
SMALLEST = 0.2
"""A step smaller than this part of the largest value is ripple or sag, no switching. Our own."""
SMALLEST_A = 0.5
"""And a current this small is no fan. Our own."""
_OUTER = (2.0, 98.0)
_QUARTER = 0.25
_SILENCE = 3.0


@dataclass(frozen=True, slots=True)
class Switching:
    """One instant at which the fan was switched, as one channel shows it.

    Attributes
    ----------
    t_ns : int, nanoseconds since the recording's zero
        Half-level crossing, interpolated between readings.
    on : bool
        Switched on; False: off.
    """

    t_ns: int
    on: bool


def switchings(
    t_ns: NDArray[np.int64], values: NDArray[np.float64], role: Role, interval_s: float
) -> list[Switching]:
    """Find the instants at which a channel passed half its step.

    Parameters
    ----------
    t_ns : ndarray, int64, shape (n,), nanoseconds since the recording's zero
    values : ndarray, float64, shape (n,), volts or amperes
        NaN where there is none.
    role : Role
        The motor's return goes down when the fan goes on; all others go up.
    interval_s : float, seconds
        From one reading to the next. Beside a gap of more than three, no instant is told.

    Returns
    -------
    list of Switching
        In time order; empty when the channel shows no step that could be the fan's.
    """
    there = np.isfinite(values)
    t_ns, values = t_ns[there], np.abs(values[there])
    if len(values) < 2:
        return []
    low, high = _levels(values)
    if high - low < max(SMALLEST * high, SMALLEST_A if _is_current(role) else 0.0, 1e-9):
        return []
    level = (values - low) / (high - low)
    if role is Role.MOTOR_RETURN:
        level = 1.0 - level
    level = np.maximum(level, 0.0)
    inputs = np.where(level >= UPPER, 1, np.where(level <= LOWER, -1, 0)).astype(np.int8)
    on = hold(inputs, initial=bool(level[0] >= 0.5))
    gap_ns = _SILENCE * interval_s * 1e9
    found = []
    for index in np.flatnonzero(on[1:] != on[:-1]) + 1:
        first = _before(level, int(index))
        if np.any(np.diff(t_ns[max(first - 1, 0) : index + 2]) > gap_ns):
            continue
        found.append(_edge(t_ns, level, first, int(index), on=bool(on[index])))
    return found


def _levels(values: NDArray[np.float64]) -> tuple[float, float]:
    """Give the usual level of what is low and of what is high: an inrush is not the usual."""
    least, most = np.percentile(values, _OUTER)
    is_high = values > least + _QUARTER * (most - least)
    if not is_high.any() or is_high.all():
        return float(least), float(most)
    return float(np.median(values[~is_high])), float(np.median(values[is_high]))


def _is_current(role: Role) -> bool:
    return role.quantity is Quantity.CURRENT


def _before(level: NDArray[np.float64], index: int) -> int:
    """Give the last reading still in the state before; those in between are on their way."""
    first = index - 1
    while first > 0 and LOWER < level[first] < UPPER:
        first -= 1
    return first


def _edge(
    t_ns: NDArray[np.int64], level: NDArray[np.float64], first: int, index: int, *, on: bool
) -> Switching:
    if on:
        # Half of the level reached, which with an inrush is above 1.
        return Switching(rise_edge(t_ns, level, first + 1), on)
    return Switching(fall_edge(t_ns, level, index), on)
