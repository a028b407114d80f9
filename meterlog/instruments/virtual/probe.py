"""Probe: which point of the circuit each channel of a meter is connected to."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

import numpy as np
from numpy.typing import NDArray

from meterlog.model import Channel, Quantity, Role
from meterlog.model.errors import UsageError

ACROSS_MOTOR = "across-motor"
CLAMPS = {"clamp-1mv-per-a": 0.001, "clamp-10mv-per-a": 0.01, "clamp-100mv-per-a": 0.1}
"""Points that are a current clamp on the motor's wire, in volts per ampere: for a channel that
reads volts."""
POINTS = (
    Role.BATTERY.value,
    Role.MOTOR_FEED.value,
    Role.MOTOR_RETURN.value,
    Role.MOTOR_CURRENT.value,
    Role.CONTROLLER_GROUND.value,
    ACROSS_MOTOR,
    *CLAMPS,
)
"""Names of the points that can be measured; the first five as in a step's ``Points``."""

_BY_NAME = {
    "battery": Role.BATTERY,
    "supply": Role.BATTERY,
    "feed": Role.MOTOR_FEED,
    "volts": Role.MOTOR_FEED,
    "return": Role.MOTOR_RETURN,
    "ground": Role.CONTROLLER_GROUND,
}
_IN_ORDER = (Role.MOTOR_FEED, Role.MOTOR_RETURN, Role.BATTERY, Role.CONTROLLER_GROUND)


def _usual(channel: Channel, taken: Sequence[str]) -> str:
    if channel.quantity is Quantity.CURRENT:
        return Role.MOTOR_CURRENT.value
    named = _BY_NAME.get(channel.name.lower())
    if named is not None:
        return named.value
    free = [role.value for role in _IN_ORDER if role.value not in taken]
    return free[0] if free else Role.MOTOR_FEED.value


def _check(channel: Channel, point: str) -> None:
    if point not in POINTS:
        raise UsageError(
            f"there is no point {point!r}.",
            subject=f"channel {channel.name}",
            remedy=f"There are: {', '.join(POINTS)}.",
        )
    is_current = point == Role.MOTOR_CURRENT.value
    if is_current != (channel.quantity is Quantity.CURRENT):
        raise UsageError(
            f"reads {channel.quantity.value}, which {point} has not.",
            subject=f"channel {channel.name}",
            remedy="Choose another point.",
        )


def place(channels: Sequence[Channel], wanted: Mapping[str, str]) -> tuple[str, ...]:
    """Give the point of each channel.

    Parameters
    ----------
    channels : sequence of Channel
    wanted : mapping of channel name to point
        Others go where their name or quantity suggests: ``feed``, ``return``, ``battery``,
        ``ground``; a current always to the motor's current.

    Returns
    -------
    tuple of str
        One of :data:`POINTS` per channel.

    Raises
    ------
    UsageError
        If a channel or a point is not there, or their quantities differ.
    """
    names = {channel.name for channel in channels}
    for name in wanted:
        if name not in names:
            raise UsageError(
                "this meter has no such channel.",
                subject=f"channel {name}",
                remedy=f"It has: {', '.join(sorted(names))}.",
            )
    taken = list(wanted.values())
    points = []
    for channel in channels:
        point = wanted.get(channel.name) or _usual(channel, taken)
        _check(channel, point)
        taken.append(point)
        points.append(point)
    return tuple(points)


def is_clamped(point: str) -> bool:
    """Tell whether what is measured there comes through a current clamp."""
    return point == Role.MOTOR_CURRENT.value or point in CLAMPS


def pick(means: NDArray[np.float64], points: Sequence[str]) -> NDArray[np.float64]:
    """Give the columns that are measured.

    Parameters
    ----------
    means : ndarray, shape (n, 5), volts and amperes
        Columns as in a step's ``Points``.
    points : sequence of str

    Returns
    -------
    ndarray, shape (n, len(points)), volts and amperes
    """
    columns = []
    for point in points:
        if point == ACROSS_MOTOR:
            columns.append(means[:, 1] - means[:, 2])
        elif point in CLAMPS:
            columns.append(means[:, POINTS.index(Role.MOTOR_CURRENT.value)] * CLAMPS[point])
        else:
            columns.append(means[:, POINTS.index(point)])
    return np.column_stack(columns)
