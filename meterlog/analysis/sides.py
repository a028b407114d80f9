"""Sides: current is gone, and the voltages say whether motor, feed or ground side is to blame.

==============  =====================  =========================  ========================
kind            motor feed             motor return               across the motor
==============  =====================  =========================  ========================
dead            held                   near ground                >= 90 % of the feed
feed-lost       fallen, then decaying  near ground                decays (motor generates)
ground-lost     held                   rises towards the feed     decays to nothing
==============  =====================  =========================  ========================

A turning motor that has lost its feed generates: 9 V, then 5, then 3 within a second. That is
never "the supply is present": the feed counts as held only above the limit for a present supply
AND at most a fifth below where it was before the current went.

Source: follows from Kirchhoff's voltage law on the series circuit battery, feed, motor,
controller, ground; the pattern table is common practice, no source.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import IntEnum

import numpy as np
from numpy.typing import NDArray

from meterlog.model import Limits, Role, SpanKind

FULL_ACROSS = 0.9
"""The motor has full voltage at this part of the feed or more."""
FEED_HELD = 0.8
"""The feed has held at this part of its level before or more; a load taken off only raises it,
and an engine switched off lowers it by about a tenth."""


class Side(IntEnum):
    """Answer for one row."""

    UNDETERMINED = 0
    OFF = 1
    DEAD = 2
    FEED_LOST = 3
    GROUND_LOST = 4
    NO_CURRENT = 5


SIDE_KIND: dict[Side, SpanKind | None] = {
    Side.UNDETERMINED: None,
    Side.OFF: SpanKind.OFF,
    Side.DEAD: SpanKind.DEAD,
    Side.FEED_LOST: SpanKind.FEED_LOST,
    Side.GROUND_LOST: SpanKind.GROUND_LOST,
    Side.NO_CURRENT: SpanKind.NO_CURRENT,
}


@dataclass(frozen=True, slots=True)
class Asked:
    """What is known besides the voltages.

    Attributes
    ----------
    speed : int or None
        Commanded speed, 1 or more; None when nobody recorded it.
    feed_before : float or None, volts
        Feed before the current went.
    """

    speed: int | None
    feed_before: float | None


def _held(feed: NDArray[np.float64], before: float | None, limits: Limits) -> NDArray[np.bool_]:
    """Tell where the feed has held."""
    if before is not None and before < limits.supply_present_v:
        # A regulated feed runs the motor below battery voltage on low steps.
        return feed >= FULL_ACROSS * before
    floor = 0.0 if before is None else FEED_HELD * before
    return feed >= max(limits.supply_present_v, floor)


def _by_feed_alone(feed: NDArray[np.float64], asked: Asked, limits: Limits) -> NDArray[np.uint8]:
    lost = Side.OFF if asked.speed is None else Side.FEED_LOST
    held = _held(feed, asked.feed_before, limits)
    return np.where(held, np.uint8(Side.NO_CURRENT), np.uint8(lost))


def _by_return_alone(back: NDArray[np.float64], asked: Asked, limits: Limits) -> NDArray[np.uint8]:
    risen = Side.OFF if asked.speed is None else Side.GROUND_LOST
    return np.where(back >= limits.supply_present_v, np.uint8(risen), np.uint8(Side.NO_CURRENT))


def _by_both(
    feed: NDArray[np.float64], back: NDArray[np.float64], asked: Asked, limits: Limits
) -> NDArray[np.uint8]:
    held = _held(feed, asked.feed_before, limits)
    across = feed - back
    full = (across >= FULL_ACROSS * feed) & (across >= limits.driven_v)
    # Nobody said what was asked for: a motor without full voltage is then simply not driven.
    idle = asked.speed is None
    ground = np.uint8(Side.OFF if idle else Side.GROUND_LOST)
    lost = np.uint8(Side.OFF if idle else Side.FEED_LOST)
    return np.where(held, np.where(full, np.uint8(Side.DEAD), ground), lost)


def sides(
    feed: NDArray[np.float64] | None,
    back: NDArray[np.float64] | None,
    asked: Asked,
    limits: Limits,
) -> NDArray[np.uint8] | Side:
    """Tell for each row without current which side is to blame.

    Parameters
    ----------
    feed, back : ndarray or None, float64, shape (n,), volts
        Motor feed and motor return; None without such a channel.
    asked : Asked
    limits : Limits

    Returns
    -------
    ndarray of uint8, shape (n,), :class:`Side` values; or one Side for all rows when there is no
    voltage channel.
    """
    if feed is not None and back is not None:
        return _by_both(feed, back, asked, limits)
    if feed is not None:
        return _by_feed_alone(feed, asked, limits)
    if back is not None:
        return _by_return_alone(back, asked, limits)
    return Side.NO_CURRENT


def would_settle(*, feed: bool, back: bool, speed: bool) -> tuple[Role, ...]:
    """Name the channels that, had they been there, would have told the side."""
    missing = []
    if not feed:
        missing.append(Role.MOTOR_FEED)
    if not back:
        missing.append(Role.MOTOR_RETURN)
    if not speed:
        missing.append(Role.COMMAND)
    return tuple(missing)
