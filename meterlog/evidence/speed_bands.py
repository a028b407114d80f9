"""Speed bands: which current limits held when, from the commanded-speed events."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from meterlog.model import Event, EventKind, Limits


@dataclass(frozen=True, slots=True)
class SpeedBand:
    """The current limits of one stretch at one commanded speed.

    Attributes
    ----------
    speed : int
    start_ns, end_ns : int, nanoseconds
    min_a, max_a : float or None, amperes
        None where that side is open.
    """

    speed: int
    start_ns: int
    end_ns: int
    min_a: float | None
    max_a: float | None


def speed_bands(events: Sequence[Event], limits: Limits, end_ns: int) -> tuple[SpeedBand, ...]:
    """Give the limits in force from each speed event to the next, up to ``end_ns``.

    Speeds without limits, speed 0 among them as a rule, give no band; a speed event that can't be
    understood ends the band before it.
    """
    marks = [event for event in events if event.kind is EventKind.SPEED]
    ends = [*(mark.t_ns for mark in marks[1:]), end_ns][: len(marks)]
    bands = []
    for mark, end in zip(marks, ends, strict=True):
        try:
            speed = mark.speed
        except ValueError:
            continue
        limit = limits.at(speed)
        if limit.min_a is None and limit.max_a is None:
            continue
        bands.append(SpeedBand(speed, mark.t_ns, max(end, mark.t_ns), limit.min_a, limit.max_a))
    return tuple(bands)
