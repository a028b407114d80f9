"""StandingOut: readings of the current that leave a steady base line for a moment, and come back.

Nothing is said here of why. A change of level, a slow sag and noise are passed over.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass

import numpy as np
from numpy.lib.stride_tricks import sliding_window_view
from numpy.typing import NDArray

from meterlog.analysis.alarm import LEAST_PART, alarm_deviations
from meterlog.analysis.inferred.page import Page
from meterlog.analysis.inferred.tails import Tails

SETTLING_S = 1.2
"""By then a restart is over, and what follows is base line again."""
NEAR, _FEWEST, _MOST = 16, 8, 60
"""Readings for the level beside; the fewest on each side; the most that tell the noise."""
_FEWEST_BOTH = 20
_SHOWN = 12
"""Readings after the one that stands out, at most."""
_TOLD_BY = 0.37
"""Part of the degrees of freedom that a median deviation keeps (its efficiency)."""
_ROUGH = 3.5
_Q95, _INNER = 1.96, 0.871
"""Size that one in twenty normal deviates exceeds, and the deviation of the others."""


@dataclass(frozen=True, slots=True, eq=False)
class Departure:
    """One moment at which the current left its base line.

    Attributes
    ----------
    t_ns : int
        Of the reading that stands out most.
    first_ns, last_ns : int
        Of the readings beside it that are still at the base.
    at_s, parts : ndarray, float64, shape (k,)
        Times of the readings around it, from ``t_ns`` on, and how far they left the base, as a
        part of it.
    base_a, seen_a : float, amperes
    sigma_a : float, amperes
        Deviation of one reading.
    degrees : float
        Degrees of freedom with which that is known.
    feed_v, back_v : float, volts
        How far the feed and the return moved with it; NaN where they were not read.
    feed_level_v : float, volts
        The feed itself.
    feed_change_v : float, volts
        By how much the feed is higher after than before, for good.
    feed_sigma_v, back_sigma_v : float, volts
    speed : int or None
    """

    t_ns: int
    first_ns: int
    last_ns: int
    at_s: NDArray[np.float64]
    parts: NDArray[np.float64]
    base_a: float
    seen_a: float
    sigma_a: float
    degrees: float
    feed_v: float
    back_v: float
    feed_level_v: float
    feed_change_v: float
    feed_sigma_v: float
    back_sigma_v: float
    speed: int | None

    @property
    def sigmas(self) -> float:
        """Deviations by which it stands out, signed."""
        return (self.seen_a - self.base_a) / self.sigma_a


@dataclass(frozen=True, slots=True)
class SlowMeter:
    """What must be known of the meter.

    Attributes
    ----------
    interval_s, averaging_s : float, seconds
    digit_a, digit_v : float
        The last digit of current and voltage; 0 where not stated.
    least_a : float, amperes
        Below this there is no current: such a reading is a measured zero, not a dip.
    volts_late_s : float, seconds
        So much earlier or later the voltages beside a current may have been read.
    """

    interval_s: float
    averaging_s: float
    digit_a: float
    digit_v: float
    least_a: float
    volts_late_s: float = 0.0

    @property
    def window_s(self) -> float:
        """The averaging time, or the longest that the rate allows."""
        return self.averaging_s or self.interval_s

    @property
    def low_readings(self) -> int:
        """So many neighbouring readings one short open can lower."""
        return math.ceil(self.window_s / self.interval_s - 1e-9) + 1

    @property
    def settling(self) -> int:
        """Readings until a restart is over."""
        return max(3, math.ceil(SETTLING_S / self.interval_s))

    @property
    def beside(self) -> int:
        """Readings to look back at and ahead to."""
        return self.settling + _MOST + 4


def departures(page: Page, meter: SlowMeter, tails: Tails) -> Iterator[Departure]:
    """Give the departures whose first rough sign is among a page's new readings, in time order.

    Parameters
    ----------
    page : Page
    meter : SlowMeter
    tails : Tails
        Given the deviations of the page's new readings.
    """
    rough = _rough(page, meter, tails)
    last_ns = -(2**62)
    apart_ns = round(max(SETTLING_S, 3 * meter.interval_s) * 1e9)
    for place, index in enumerate(rough.tolist()):
        if int(page.t_ns[index]) - last_ns < apart_ns:
            continue
        last_ns = int(page.t_ns[index])
        group = rough[place:]
        group = group[page.t_ns[group] - last_ns < apart_ns]
        found = _measure(page, group, meter)
        if found is not None:
            yield found


def _rough(page: Page, meter: SlowMeter, tails: Tails) -> NDArray[np.intp]:
    """Give readings that may stand out: far from the median of five a little before them."""
    if len(page.amps) < _FEWEST_BOTH:
        return np.empty(0, np.intp)
    amps = np.where(page.steady & (page.amps >= meter.least_a), page.amps, np.nan)
    before = np.full(len(amps), np.nan)
    # The reading right before may be half-way already, so the five end before it.
    before[6:] = np.sort(sliding_window_view(amps, 5)[:-2], axis=1)[:, 2]
    new = slice(page.first, page.last)
    away, level, speed = (amps - before)[new], before[new], page.speed[new]
    jumps = np.abs(np.diff(amps[new], prepend=np.nan))
    stands = np.zeros(len(away), np.bool_)
    for one in np.unique(speed).tolist():
        mine = speed == one
        known = jumps[mine & np.isfinite(jumps)]
        if not len(known):
            continue
        sigma = max(1.4826 * float(np.median(known)) / math.sqrt(2.0), 0.5 * meter.digit_a, 1e-9)
        tails.take(away[mine] / sigma)
        least = np.maximum(_ROUGH * sigma, LEAST_PART * level)
        stands |= mine & (np.abs(away) > least)
    places: NDArray[np.intp] = page.first + np.flatnonzero(stands)
    return places


def _measure(page: Page, group: NDArray[np.intp], meter: SlowMeter) -> Departure | None:
    """Measure the departure in a group of readings against the base line on both sides."""
    first = int(group[0])
    sides = _sides(page, first, meter)
    if sides is None:
        return None
    line = _line(page.t_ns, page.amps, sides)
    away = page.amps[group] - line.at(page.t_ns[group])
    anchor = int(group[np.argmin(away)])
    sigma = max(line.sigma, 0.5 * meter.digit_a, 1e-9)
    degrees = max(_TOLD_BY * line.n, 2.0)
    needed = alarm_deviations(meter.interval_s, degrees)
    least = max(needed * sigma, LEAST_PART * line.level)
    if -float(away.min()) < least:
        anchor = int(group[np.argmax(away)])
        if float(away.max()) < least:
            return None
    if abs(line.change) > max(4.0 * sigma, 0.05 * line.level):
        return None
    until = min(anchor + _shown(meter) + 1, len(page.amps))
    shown = np.arange(max(anchor - 2, 0), until)
    amps = page.amps[shown]
    parts = (amps - line.at(page.t_ns[shown])) / line.level
    if not np.isfinite(parts).all() or page.gap[shown[1:]].any() or amps.min() < meter.least_a:
        return None
    if _too_long(parts, 3.0 * sigma / line.level, meter):
        return None
    feed = _moved(page, page.feed, sides, anchor, meter)
    back = _moved(page, page.back, sides, anchor, meter)
    speed = float(page.speed[anchor])
    return Departure(
        t_ns=int(page.t_ns[anchor]),
        first_ns=int(page.t_ns[max(anchor - 1, 0)]),
        last_ns=int(page.t_ns[min(anchor + 1, len(page.t_ns) - 1)]),
        at_s=(page.t_ns[shown] - page.t_ns[anchor]) / 1e9,
        parts=parts,
        base_a=float(line.at(page.t_ns[anchor : anchor + 1])[0]),
        seen_a=float(page.amps[anchor]),
        sigma_a=sigma,
        degrees=degrees,
        feed_v=feed.away_v,
        back_v=back.away_v,
        feed_level_v=feed.level_v,
        feed_change_v=feed.change_v,
        feed_sigma_v=feed.sigma_v,
        back_sigma_v=back.sigma_v,
        speed=None if speed < 0.0 else round(speed),
    )


def _shown(meter: SlowMeter) -> int:
    return int(np.clip(math.ceil(0.4 / meter.interval_s), 2, _SHOWN))


def _too_long(parts: NDArray[np.float64], room: float, meter: SlowMeter) -> bool:
    """Tell whether more readings in a row are low than one short open can lower."""
    low = parts < -room
    longest = run = 0
    for one in low.tolist():
        run = run + 1 if one else 0
        longest = max(longest, run)
    return longest > meter.low_readings


@dataclass(frozen=True, slots=True, eq=False)
class _Sides:
    before: NDArray[np.intp]
    after: NDArray[np.intp]


def _sides(page: Page, index: int, meter: SlowMeter) -> _Sides | None:
    """Give the base line's readings before and after; None where they are too few."""
    steady = page.steady & (page.speed == page.speed[index]) & (page.amps >= meter.least_a)
    unlike = np.flatnonzero(~steady | page.gap)
    start = unlike[unlike < index]
    begin = int(start[-1]) + 1 if len(start) else 0
    stop = unlike[unlike > index]
    end = int(stop[0]) if len(stop) else len(page.amps)
    if not steady[index]:
        return None
    first_after = index + meter.settling + 1
    before = np.arange(max(begin, index - 2 - _MOST), index - 1)
    after = np.arange(first_after, min(end, first_after + _MOST))
    few = len(before) < _FEWEST or len(after) < _FEWEST
    return None if few or len(before) + len(after) < _FEWEST_BOTH else _Sides(before, after)


@dataclass(frozen=True, slots=True)
class _Line:
    """A straight base line through the levels on both sides, and the noise about it."""

    t_ns: float
    level: float
    slope: float
    change: float
    sigma: float
    n: int

    def at(self, t_ns: NDArray[np.int64]) -> NDArray[np.float64]:
        line: NDArray[np.float64] = self.level + self.slope * (t_ns.astype(np.float64) - self.t_ns)
        return line


def _line(t_ns: NDArray[np.int64], values: NDArray[np.float64], sides: _Sides) -> _Line:
    near_before, near_after = sides.before[-NEAR:], sides.after[:NEAR]
    low, high = float(np.median(values[near_before])), float(np.median(values[near_after]))
    t_low, t_high = float(t_ns[near_before].mean()), float(t_ns[near_after].mean())
    # Damaged times may stand still or run back: then there is no slope to tell.
    slope = (high - low) / (t_high - t_low) if t_high > t_low else 0.0
    rest = np.concatenate([
        values[near_before] - low - slope * (t_ns[near_before] - t_low),
        values[sides.before[:-NEAR]] - np.median(values[sides.before]),
        values[near_after] - high - slope * (t_ns[near_after] - t_high),
        values[sides.after[NEAR:]] - np.median(values[sides.after]),
    ])  # fmt: skip
    sizes = np.sort(np.abs(rest))
    inner = sizes[: math.ceil(0.95 * len(sizes))]
    sigma = max(
        1.4826 * float(np.median(sizes)),
        float(inner[-1]) / _Q95,
        float(np.sqrt(np.square(inner).mean())) / _INNER,
    )
    middle = (t_low + t_high) / 2.0
    return _Line(middle, (low + high) / 2.0, slope, high - low, sigma, len(rest))


@dataclass(frozen=True, slots=True)
class _Moved:
    """How far a voltage moved with the current, its deviation, its level, how far it stayed."""

    away_v: float = math.nan
    sigma_v: float = math.nan
    level_v: float = math.nan
    change_v: float = math.nan


def _moved(
    page: Page, values: NDArray[np.float64], sides: _Sides, anchor: int, meter: SlowMeter
) -> _Moved:
    late = math.ceil(meter.volts_late_s / meter.interval_s - 1e-9)
    beside = slice(max(anchor - late, 0), anchor + late + 1)
    both = np.concatenate((sides.before, sides.after, np.arange(beside.start, beside.stop)))
    if both[-1] >= len(values) or not np.isfinite(values[both]).all():
        return _Moved()
    line = _line(page.t_ns, values, sides)
    away = values[beside] - line.at(page.t_ns[beside])
    furthest = float(away[np.argmax(np.abs(away))])
    sigma = max(line.sigma, 0.5 * meter.digit_v, 1e-9)
    return _Moved(furthest, sigma, line.level, line.change)
