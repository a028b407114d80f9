"""Sides: current is gone, and the voltages say whether motor, feed or ground side is to blame.

==============  =====================  =========================  ========================
kind            motor feed             motor return               across the motor
==============  =====================  =========================  ========================
dead            held                   near ground                >= 90 % of the feed
feed-lost       fallen, then decaying  near ground                decays (motor generates)
ground-lost     held                   rises towards the feed     decays to nothing
==============  =====================  =========================  ========================

A turning motor that has lost its feed generates: 9 V, then 5, then 3 within a second. That is
never "the supply is present". A load taken off only raises a feed that is whole, so while the
motor may still turn the feed counts as held only if it has not fallen at all; later it may sag,
as when the engine is switched off.

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
HELD_TURNING = 0.95
"""While the motor may turn, the feed has held at this part of its level before or more."""
HELD = 0.8
"""Later, the feed has held at this part or more; an engine switched off takes about a tenth."""
RISEN = 0.04
"""The return has risen by this part of the nominal voltage or more."""

Volts = NDArray[np.float64]


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


@dataclass(frozen=True, slots=True, eq=False)
class Asked:
    """What is known besides the voltages.

    Attributes
    ----------
    speed : int or None
        Commanded speed, 1 or more; None when nobody recorded it.
    feed_v, back_v : float or None, volts
        Feed and return before the current went.
    flowed : bool
        Current flowed right before.
    turning : ndarray, bool, shape (n,)
        Rows in which the motor may still turn from then.
    """

    speed: int | None
    feed_v: float | None
    back_v: float | None
    flowed: bool
    turning: NDArray[np.bool_]

    def blame(self, side: Side) -> np.uint8:
        """Give ``side``, or off when nobody is known to have asked for anything."""
        return np.uint8(Side.OFF if self.speed is None else side)


def _held(feed: Volts, asked: Asked, limits: Limits) -> NDArray[np.bool_]:
    """Tell where the feed has held."""
    before = asked.feed_v
    if before is None:
        return feed >= limits.supply_present_v
    if before < limits.supply_present_v:
        # A regulated feed runs the motor below battery voltage on low steps.
        return feed >= FULL_ACROSS * before
    floor = before * np.where(asked.turning, HELD_TURNING, HELD)
    # A feed that was hardly above the least is not asked for more than it had.
    least = min(limits.supply_present_v, HELD_TURNING * before)
    return feed >= np.maximum(floor, least)


def _risen(back: Volts, asked: Asked, limits: Limits) -> NDArray[np.bool_] | None:
    """Tell where the return has risen from where it was; None when that is not known."""
    if asked.back_v is None:
        return None
    return back - asked.back_v >= RISEN * limits.nominal_v


def _by_feed_alone(feed: Volts, asked: Asked, limits: Limits) -> NDArray[np.uint8]:
    held = _held(feed, asked, limits)
    return np.where(held, np.uint8(Side.NO_CURRENT), asked.blame(Side.FEED_LOST))


def _by_return_alone(back: Volts, asked: Asked, limits: Limits) -> NDArray[np.uint8]:
    up = back >= limits.supply_present_v
    risen = _risen(back, asked, limits)
    if risen is not None:
        up |= risen
    return np.where(up, asked.blame(Side.GROUND_LOST), np.uint8(Side.NO_CURRENT))


def _by_both(feed: Volts, back: Volts, asked: Asked, limits: Limits) -> NDArray[np.uint8]:
    across = feed - back
    full = (across >= FULL_ACROSS * feed) & (across >= limits.driven_v)
    open_side = asked.blame(Side.NO_CURRENT)
    risen = _risen(back, asked, limits)
    if risen is None:
        ground: NDArray[np.uint8] | np.uint8 = asked.blame(Side.GROUND_LOST)
    else:
        risen |= back >= FULL_ACROSS * feed
        ground = np.where(risen, asked.blame(Side.GROUND_LOST), open_side)
    # A low feed that never carried the motor is a regulated one rather than a lost one.
    gone = asked.flowed | (feed < limits.driven_v)
    lost = np.where(gone, asked.blame(Side.FEED_LOST), open_side)
    held = _held(feed, asked, limits)
    return np.where(held, np.where(full, np.uint8(Side.DEAD), ground), lost)


def sides(
    feed: Volts | None, back: Volts | None, asked: Asked, limits: Limits
) -> NDArray[np.uint8]:
    """Tell for each row without current which side is to blame.

    Parameters
    ----------
    feed, back : ndarray or None, float64, shape (n,), volts
        Motor feed and motor return, NaN where not read; None without such a channel.
    asked : Asked
        For these rows.
    limits : Limits

    Returns
    -------
    ndarray of uint8, shape (n,), :class:`Side` values
    """
    if feed is None and back is None:
        return np.full(len(asked.turning), np.uint8(Side.NO_CURRENT))
    if feed is not None and back is not None:
        answer = _by_both(feed, back, asked, limits)
        unread = np.isnan(feed) | np.isnan(back)
    elif feed is not None:
        answer, unread = _by_feed_alone(feed, asked, limits), np.isnan(feed)
    else:
        assert back is not None  # noqa: S101 - one of the two is there
        answer, unread = _by_return_alone(back, asked, limits), np.isnan(back)
    return np.where(unread, np.uint8(Side.UNDETERMINED), answer)


SETTLING_WORDS = {
    Role.MOTOR_FEED: "motor feed voltage",
    Role.MOTOR_RETURN: "motor return voltage",
    Role.COMMAND: "the commanded speed",
}
"""What :func:`would_settle` names, in words."""


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
