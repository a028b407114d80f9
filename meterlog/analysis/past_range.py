"""PastRange: readings of more than meter and sensor are stated for.

A clamp of 40 A shows something of 60 A, too, and mostly too little: its core is full. No data
sheet says how much. Neither a peak nor a level that lies there is known as well as its digits look.
"""

from __future__ import annotations

import math
from bisect import bisect_left
from collections.abc import Iterable, Sequence

from meterlog.model import (
    Budget,
    Channel,
    Doubt,
    DoubtKind,
    Instrument,
    Role,
    SensorKind,
    Step,
    channel_of,
)

PAST = "the current is more than the meter or the clamp is stated for"
PAST_READING = "the reading is more than the meter or the sensor is stated for"
ROUNDING = 1e-9
"""Of the top: what scaling alone may add to a reading that is the top itself."""
_REAL_PART = 0.005
"""Of the mean: so much must what lies beyond make of it. Chosen: well below what a clamp is good
for, and above the 0.26 % of one stray reading in 200 (41 A among 13.6 A, range 40 A)."""


def is_past(channel: Channel | None, size: float) -> bool:
    """Tell whether a size lies beyond what meter and sensor are stated for.

    Parameters
    ----------
    channel : Channel or None
    size : float, unit of the channel
    """
    top = None if channel is None else channel.top
    return top is not None and abs(size) > top * (1.0 + ROUNDING)


def reaches_past(
    channel: Channel | None, mean: float, sd: float | None, *, somewhere: bool = False
) -> bool:
    """Tell whether a mean is one of readings of which a real part lies beyond.

    Parameters
    ----------
    channel : Channel or None
    mean : float, unit of the channel
    sd : float or None, unit of the channel
        Standard deviation of the readings.
    somewhere : bool
        Some of them are known to lie beyond: those of the tops of a pulsed current then count, a
        single stray one does not.
    """
    top = None if channel is None else channel.top
    if top is None:
        return False
    pulses = somewhere and _mean_above(top, abs(mean), sd) > _REAL_PART * abs(mean)
    return pulses or is_past(channel, mean)


def _mean_above(level: float, mean: float, sd: float | None) -> float:
    """Give how much readings lie above a level at the most, on average over all of them.

    Source
    ------
    The mean of what is above is (E|x - s| + E(x - s)) / 2, and E|x - s| is at most the root of
    E(x - s) squared (Cauchy-Schwarz inequality).
    """
    return (math.hypot(sd or 0.0, mean - level) + mean - level) / 2.0


def current_parts(doubts: Iterable[Doubt]) -> tuple[tuple[int, int], ...]:
    """Give when the motor current was read beyond the range, in time order, each start and end."""
    for doubt in doubts:
        if doubt.kind is DoubtKind.PAST_RANGE and doubt.role is Role.MOTOR_CURRENT:
            return doubt.parts
    return ()


def one_within(parts: Sequence[tuple[int, int]], start_ns: int, end_ns: int) -> bool:
    """Tell whether one of the parts has something in common with a stretch."""
    last = bisect_left(parts, (end_ns + 1, 0)) - 1
    return last >= 0 and parts[last][1] >= start_ns


def step_is_past(
    instruments: Sequence[Instrument],
    step: Step,
    parts: Sequence[tuple[int, int]] = (),
    start_up_ns: int = 0,
) -> bool:
    """Tell whether the steady current of a step reaches beyond what its meter is stated for.

    Parameters
    ----------
    instruments : sequence of Instrument
    step : Step
    parts : sequence of (int, int), nanoseconds
        As :func:`current_parts` gives them.
    start_up_ns : int, nanoseconds
        For how long a start's peak may last: it is no part of what is steady.
    """
    mean, sd = step.steady_mean_a, step.steady_sd_a
    if mean is None:
        mean, sd = step.mean_a, step.sd_a
    if mean is None:
        return False
    somewhere = one_within(parts, step.start_ns + start_up_ns, step.end_ns)
    current = channel_of(instruments, Role.MOTOR_CURRENT)
    return reaches_past(current, mean, sd, somewhere=somewhere)


def volts_are_past(instruments: Sequence[Instrument], step: Step) -> bool:
    """Tell whether feed or return of a step lie beyond what their meters are stated for."""
    feed_v = step.steady_mean_v if step.steady_feed_v is None else step.steady_feed_v
    read = ((Role.MOTOR_FEED, feed_v), (Role.MOTOR_RETURN, step.steady_back_v))
    return any(
        volts is not None and is_past(channel_of(instruments, role), volts) for role, volts in read
    )


def surely_a(channel: Channel | None) -> float:
    """Give what flows at the least where a current beyond the range is read, amperes.

    A clamp shows more the more flows, so that what reads beyond its top is at least the top less
    the error that is stated there. 0 where no top is stated, or not all of the error.
    """
    if channel is None or channel.top is None:
        return 0.0
    sensor = channel.sensor
    if sensor.kind is not SensorKind.DIRECT and sensor.own_percent is None:
        return 0.0
    stated = channel.accuracy_at(channel.top)
    return 0.0 if stated is None else channel.top - stated.half_width(channel.top)


def least_mean_a(channel: Channel | None, mean: float, sd: float | None) -> float:
    """Give what flowed at the least on average, where some readings may lie beyond the range.

    Each reading counts as no more than the top, less the error that is stated there.

    Parameters
    ----------
    channel : Channel or None
    mean : float, amperes
        Of the readings.
    sd : float or None, amperes
    """
    surely = surely_a(channel)
    if channel is None or channel.top is None or not surely:
        return 0.0
    return abs(mean) - (channel.top - surely) - _mean_above(channel.top, abs(mean), sd)


def floor_words(made: Budget | None) -> str:
    """Say beside a value that it was read beyond the range; empty where it was not."""
    past = made is not None and PAST_READING in made.lacking
    return f" (at the least: {PAST_READING})" if past else ""
