"""Pulses: whether a page of voltages goes to and fro between two levels, and how fast."""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from meterlog.analysis.inferred.page import Page
from meterlog.analysis.read_pace import read_once

LEAST_SWING_V, LEAST_SWING_PART = 1.0, 0.25
LEAST_HZ = 10.0
"""Anything slower is a controller that tries again, or a hand."""
PER_PERIOD = 9.5
"""Readings a period from which frequency and duty are told."""
_FEWEST_ROWS, FEWEST_PERIODS = 32, 8
_ENDS = 0.01
"""Part of the readings left out at each end when the two levels are taken."""
_BETWEEN = 0.25
"""At most this part of the readings may be in the middle half between the levels; of a sine it is a
third."""
_REGULAR, _REGULAR_PART = 0.2, 0.8
"""So many of the periods differ by no more than this part from the median."""
_LINE_PART, _LINE_FROM = 0.35, 8
"""Part of the variance in one line of the spectrum, and periods of it in a page, from which
readings too slow for the pulses show their beat. Chattering at random spreads over all lines."""


@dataclass(frozen=True, slots=True)
class Times:
    """When something was read, and how far apart at the most.

    Attributes
    ----------
    first_ns, last_ns : int
        Meaningless where it was never read.
    apart_s : float, seconds
        Longest time between two neighbouring readings of it; endless below two.
    """

    first_ns: int
    last_ns: int
    apart_s: float

    def then(self, later: Times) -> Times:
        """Join with what was read in the stretch that follows."""
        between_s = (later.first_ns - self.last_ns) / 1e9
        apart_s = max(self.apart_s, between_s, later.apart_s)
        return Times(self.first_ns, later.last_ns, apart_s)


def _times(t_ns: NDArray[np.int64]) -> Times:
    if len(t_ns) < 2:
        return Times(0, 0, math.inf)
    return Times(int(t_ns[0]), int(t_ns[-1]), float(np.diff(t_ns).max()) / 1e9)


@dataclass(frozen=True, slots=True)
class Pulses:
    """Sums over the pulses of a page, or of several.

    Attributes
    ----------
    start_ns, end_ns : int
    speed : float
        As in a page.
    interval_s : float, seconds
        Between readings.
    period_s : float, seconds
        Median as seen; of the beat, where ``resolved`` is False.
    resolved : bool
        Frequency and duty can be told.
    pages, periods : int
    time_s, on_s : float, seconds
        Length of whole periods, and how much of it the voltage was on.
    n : int
    sum_v, sum_a : float
        Over the readings of whole periods; ``sum_a`` over ``n_a`` of them.
    n_a, n_on : int
    sum_on_v : float
        Over the readings on the upper level.
    by_feed : bool
        The feed itself goes to and fro.
    flowing, gone : Times
        Of the readings with current, and of those without.
    """

    start_ns: int
    end_ns: int
    speed: float
    interval_s: float
    period_s: float
    resolved: bool
    pages: int
    periods: int
    time_s: float
    on_s: float
    n: int
    sum_v: float
    sum_a: float
    n_a: int
    n_on: int
    sum_on_v: float
    by_feed: bool
    flowing: Times
    gone: Times

    @property
    def apart_s(self) -> float:
        """Longest time in which the current did not both flow and go, seconds.

        Endless where it always did the one.
        """
        return max(self.flowing.apart_s, self.gone.apart_s)

    def joined(self, later: Pulses) -> Pulses:
        """Give both stretches as one."""
        return Pulses(
            start_ns=self.start_ns,
            end_ns=later.end_ns,
            speed=self.speed,
            interval_s=max(self.interval_s, later.interval_s),
            period_s=max(self.period_s, later.period_s),
            resolved=self.resolved,
            pages=self.pages + later.pages,
            periods=self.periods + later.periods,
            time_s=self.time_s + later.time_s,
            on_s=self.on_s + later.on_s,
            n=self.n + later.n,
            sum_v=self.sum_v + later.sum_v,
            sum_a=self.sum_a + later.sum_a,
            n_a=self.n_a + later.n_a,
            n_on=self.n_on + later.n_on,
            sum_on_v=self.sum_on_v + later.sum_on_v,
            by_feed=self.by_feed or later.by_feed,
            flowing=self.flowing.then(later.flowing),
            gone=self.gone.then(later.gone),
        )


def pulses(page: Page, fewest: int = FEWEST_PERIODS, open_a: float = 0.0) -> Pulses | None:
    """Give the pulses in a page's new readings; None where the voltage does not pulse.

    Parameters
    ----------
    page : Page
    fewest : int
        Regular periods below which nothing is told.
    open_a : float, amperes
        Below this no current flows.

    Source
    ------
    Two levels by quantiles, edges with hysteresis where a straight line between readings passes
    the middle, frequency by counting whole periods: the way of IEEE Std 181 for pulses (from
    memory). Held against closed forms in ``tests/reference/test_pulse_average.py``.
    """
    new = slice(page.first, page.last)
    volts, t_ns = page.across[new], page.t_ns[new]
    known = np.isfinite(volts)
    if not known.all():
        volts, t_ns = volts[known], t_ns[known]
    if len(volts) < _FEWEST_ROWS or not swings(float(volts.min()), float(volts.max())):
        return None
    # Rows that are there twice would make readings look fast enough to show pulses.
    own = read_once(t_ns, volts)
    if not own.all():
        known[known] = own
        volts, t_ns = volts[own], t_ns[own]
    low, high = np.quantile(volts, (_ENDS, 1.0 - _ENDS)).tolist()
    if not swings(low, high):
        return None
    quarter = (high - low) / 4.0
    if float(np.mean((volts > low + quarter) & (volts < high - quarter))) > _BETWEEN:
        return None
    rises, falls = _edges(volts, t_ns, (low + high) / 2.0, 0.6 * quarter)
    if len(rises) < fewest + 1:
        return None
    interval_s = float(np.median(np.diff(t_ns))) / 1e9
    periods_s = np.diff(rises) / 1e9
    period_s = float(np.median(periods_s))
    resolved = period_s >= PER_PERIOD * interval_s
    regular = _regular(periods_s, interval_s, fewest) if resolved else _has_line(volts, t_ns)
    if not regular or (resolved and period_s * LEAST_HZ > 1.05):
        return None
    inside = (t_ns >= rises[0]) & (t_ns < rises[-1])
    after = np.searchsorted(falls, rises[:-1], side="right")
    ends = falls[np.minimum(after, len(falls) - 1)]  # all may bear one time
    all_amps = page.amps[new][known]
    amps = all_amps[inside]
    on_v = volts[volts > high - quarter]
    return Pulses(
        start_ns=max(int(rises[0] - period_s * 1e9), int(t_ns[0])),
        end_ns=min(int(rises[-1] + period_s * 1e9), int(t_ns[-1])),
        speed=_speed(page.speed[new][known][inside]),
        interval_s=interval_s,
        period_s=period_s,
        resolved=resolved,
        pages=1,
        periods=len(periods_s),
        time_s=float(rises[-1] - rises[0]) / 1e9,
        on_s=float((ends - rises[:-1]).sum()) / 1e9,
        n=int(inside.sum()),
        sum_v=float(volts[inside].sum()),
        sum_a=float(np.nansum(amps)),
        n_a=int(np.isfinite(amps).sum()),
        n_on=len(on_v),
        sum_on_v=float(on_v.sum()),
        by_feed=_feed_swings(page.feed[new]),
        flowing=_times(t_ns[all_amps >= open_a]),
        gone=_times(t_ns[all_amps < open_a]),
    )


def _speed(asked: NDArray[np.float64]) -> float:
    """Give the speed that pulses belong to: none pulses for off, where another was asked for.

    They may begin a reading before the mark, or end one after it.
    """
    running = asked[asked != 0.0]
    known = running if len(running) else asked
    return float(known[len(known) // 2])


def swings(low: float, high: float) -> bool:
    """Tell whether a voltage that goes from ``low`` to ``high``, volts, may be pulsed."""
    return high - low >= max(LEAST_SWING_V, LEAST_SWING_PART * max(abs(low), abs(high)))


def _feed_swings(feed: NDArray[np.float64]) -> bool:
    known = feed[np.isfinite(feed)]
    if not len(known):
        return False
    low, high = np.quantile(known, (_ENDS, 1.0 - _ENDS)).tolist()
    return swings(low, high)


def _edges(
    volts: NDArray[np.float64], t_ns: NDArray[np.int64], middle: float, room: float
) -> tuple[NDArray[np.float64], NDArray[np.float64]]:
    """Give the times in ns at which the voltage passes the middle, upwards and downwards."""
    sure = np.flatnonzero(np.abs(volts - middle) > room)
    up = volts[sure] > middle
    change = np.flatnonzero(up[1:] != up[:-1])
    before, after = sure[change], sure[change + 1]
    part = (middle - volts[before]) / (volts[after] - volts[before])
    apart = (t_ns[after] - t_ns[before]).astype(np.float64)
    at: NDArray[np.float64] = t_ns[before] + part * apart
    rising = up[change + 1]
    return at[rising], at[~rising]


def _regular(periods_s: NDArray[np.float64], interval_s: float, fewest: int) -> bool:
    middle = float(np.median(periods_s))
    alike = np.abs(periods_s - middle) <= max(_REGULAR * middle, 1.5 * interval_s)
    return bool(alike.sum() >= max(fewest, _REGULAR_PART * len(periods_s)))


def _has_line(volts: NDArray[np.float64], t_ns: NDArray[np.int64]) -> bool:
    """Tell whether one line of the spectrum holds much of what moves."""
    steps = np.diff(t_ns)
    if float(steps.max()) > 1.5 * float(np.median(steps)):
        return False
    window = np.hanning(len(volts))
    power = np.abs(np.fft.rfft((volts - volts.mean()) * window)) ** 2
    power[0] = 0.0
    best = int(np.argmax(power))
    total = float(power.sum())
    line = float(power[max(best - 2, 0) : best + 3].sum())
    return best >= _LINE_FROM and line >= _LINE_PART * total
