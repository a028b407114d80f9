"""Visibility: how short a dropout this meter could have seen at all."""

from __future__ import annotations

import math

from meterlog.model import CatchChance, Channel

_LENGTHS_S = (0.001, 0.002, 0.005, 0.01, 0.02, 0.05, 0.1, 0.2, 0.5, 1.0, 2.0, 5.0)


def _window_s(channel: Channel) -> float:
    """Give the averaging time; where it is not stated, the longest that the rate allows."""
    return channel.integration_s or channel.interval_s


def _readings(channel: Channel, min_dwell_s: float) -> int:
    """Give how many readings without current a dropout needs to seem as long as the dwell."""
    return max(1, math.ceil(min_dwell_s / channel.interval_s - 1e-9))


def shortest_visible_s(channel: Channel, min_dwell_s: float) -> float:
    """Give the shortest dropout that can't have been missed, in seconds.

    A reading shows a dropout for certain when its whole averaging time lies inside. Readings
    begin one interval apart; to count as a span the dropout must hold as many whole readings as
    the dwell is long, wherever it begins.

    Parameters
    ----------
    channel : Channel
        The motor current's. An averaging time that is not stated (0) counts as a whole interval.
    min_dwell_s : float, seconds

    Source
    ------
    Interval arithmetic on a sampling window; no outside source. Held against brute force by
    ``tests/unit/analysis/test_visibility.py``.
    """
    return _window_s(channel) + _readings(channel, min_dwell_s) * channel.interval_s


def catch_chance(channel: Channel, min_dwell_s: float, duration_s: float) -> float:
    """Give the chance, 0 to 1, that a dropout of ``duration_s`` at a random instant is seen.

    Source
    ------
    The start of the dropout is uniform over one interval; see :func:`shortest_visible_s`.
    """
    never = shortest_visible_s(channel, min_dwell_s) - channel.interval_s
    return min(1.0, max(0.0, (duration_s - never) / channel.interval_s))


def catch_chances(channel: Channel, min_dwell_s: float) -> tuple[CatchChance, ...]:
    """Give the chance for dropouts shorter than the shortest that is always visible."""
    certain = shortest_visible_s(channel, min_dwell_s)
    return tuple(
        CatchChance(length, catch_chance(channel, min_dwell_s, length))
        for length in _LENGTHS_S
        if length < certain
    )
