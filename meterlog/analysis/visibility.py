"""Visibility: how short a dropout this meter could have seen at all."""

from __future__ import annotations

from meterlog.model import CatchChance, Channel

_LENGTHS_S = (0.001, 0.002, 0.005, 0.01, 0.02, 0.05, 0.1, 0.2, 0.5, 1.0, 2.0, 5.0)


def shortest_visible_s(channel: Channel, min_dwell_s: float) -> float:
    """Give the shortest dropout that can't have been missed, in seconds.

    A reading shows a dropout for certain when its whole integration time lies inside. Readings
    begin one interval apart, so a dropout of interval + integration time always holds one whole
    reading. To count as a span it must also seem at least ``min_dwell_s`` long, and its seen
    length may be one interval less than its true length.

    Parameters
    ----------
    channel : Channel
        The motor current's.
    min_dwell_s : float, seconds

    Source
    ------
    Interval arithmetic on a sampling window; no outside source.
    """
    interval, window = channel.interval_s, channel.integration_s
    return max(interval + window, interval + min_dwell_s)


def catch_chance(channel: Channel, min_dwell_s: float, duration_s: float) -> float:
    """Give the chance, 0 to 1, that a dropout of ``duration_s`` at a random instant is seen.

    Source
    ------
    The start of the dropout is uniform over one interval; see :func:`shortest_visible_s`.
    """
    certain = shortest_visible_s(channel, min_dwell_s)
    never = certain - channel.interval_s
    return min(1.0, max(0.0, (duration_s - never) / channel.interval_s))


def catch_chances(channel: Channel, min_dwell_s: float) -> tuple[CatchChance, ...]:
    """Give the chance for dropouts shorter than the shortest that is always visible."""
    certain = shortest_visible_s(channel, min_dwell_s)
    return tuple(
        CatchChance(length, catch_chance(channel, min_dwell_s, length))
        for length in _LENGTHS_S
        if length < certain
    )
