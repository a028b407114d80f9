"""Figures: the steady current at one speed, over recordings and their dates."""

from __future__ import annotations

import math
import statistics
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime

from meterlog.work.library.hit import Hit


@dataclass(frozen=True, slots=True)
class SpeedPoint:
    """One recording's current at the speed.

    Attributes
    ----------
    day : float or None
        When it was started, local time: days, 1 for the first of January of the year 1; None where
        no date is known.
    mean_a : float, amperes
    expanded_a : float or None, amperes
        For about 95 %.
    hit : Hit
    """

    day: float | None
    mean_a: float
    expanded_a: float | None
    hit: Hit


@dataclass(frozen=True, slots=True)
class SpeedSeries:
    """The currents at one speed.

    Attributes
    ----------
    speed : int
    points : tuple of SpeedPoint
        By date, those without one last.
    mean_a : float, amperes
        Of the points, each counted once.
    spread_a : float or None, amperes
        Standard deviation of the points (n - 1); None below two.
    low_a, high_a : float, amperes
        Room for all points with their uncertainty, and for mean and spread.
    """

    speed: int
    points: tuple[SpeedPoint, ...]
    mean_a: float
    spread_a: float | None
    low_a: float
    high_a: float


def series_of(hits: Sequence[Hit]) -> tuple[SpeedSeries, ...]:
    """Give the currents at each speed that any of these recordings has, lowest speed first."""
    at: dict[int, list[SpeedPoint]] = {}
    for hit in hits:
        for one in hit.currents:
            point = SpeedPoint(_day(hit.started), one.mean_a, one.expanded_a, hit)
            at.setdefault(one.speed, []).append(point)
    return tuple(_series(speed, at[speed]) for speed in sorted(at))


def _series(speed: int, points: list[SpeedPoint]) -> SpeedSeries:
    values = [one.mean_a for one in points]
    spread = statistics.stdev(values) if len(values) > 1 else None
    points.sort(key=lambda one: math.inf if one.day is None else one.day)
    mean = statistics.fmean(values)
    u = [one.expanded_a or 0.0 for one in points]
    low = min(one.mean_a - more for one, more in zip(points, u, strict=True))
    high = max(one.mean_a + more for one, more in zip(points, u, strict=True))
    low, high = min(low, mean - (spread or 0.0)), max(high, mean + (spread or 0.0))
    return SpeedSeries(speed, tuple(points), mean, spread, low, high)


def _day(text: str) -> float | None:
    try:
        when = datetime.fromisoformat(text)
    except ValueError:
        return None
    seconds = (when.hour * 60 + when.minute) * 60 + when.second
    return when.toordinal() + seconds / 86_400.0
