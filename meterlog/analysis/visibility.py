"""Visibility: how short a dropout this meter could have seen at all."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import replace

import numpy as np
from numpy.typing import NDArray

from meterlog.analysis.alarm import FASTEST_S, LEAST_PART, alarm_deviations
from meterlog.analysis.align import SILENCE_INTERVALS
from meterlog.analysis.catching import MOST, Pace, Threshold, caught
from meterlog.model import Block, CatchChance, Channel, Instrument, Limits, Role, Step

_LENGTHS_S = (0.001, 0.002, 0.005, 0.01, 0.02, 0.05, 0.1, 0.2, 0.5, 1.0, 2.0, 5.0)


CLOSE = 1.1
"""Times jitter by so much of an interval without anything being missing."""
_BINS = 32
"""Bins of an interval by which it is remembered how far apart readings came."""
_MOST_LEVELS = 6


def read_beside(instruments: Sequence[Instrument], key: str) -> bool:
    """Tell whether another meter than ``key`` reads the motor's feed or return.

    Parameters
    ----------
    instruments : sequence of Instrument
        Of several channels in one role the first counts.
    key : str
    """
    homes: dict[Role, str] = {}
    for instrument in instruments:
        for channel in instrument.channels:
            homes.setdefault(channel.role, instrument.key)
    return any(homes.get(role, key) != key for role in (Role.MOTOR_FEED, Role.MOTOR_RETURN))


class PaceSeen:
    """Follows how far apart the readings of a channel really came.

    A profile states the pace a meter should have; one that is slower, or that now and then leaves
    a reading out, could have missed a longer dropout. Pauses that count as missing data are
    stretches of their own and not counted here.

    Parameters
    ----------
    key : str
        Of the channel's instrument.
    column : int
        Of the channel in its blocks.
    channel : Channel
    beside : bool
        Whether another meter reads the voltages.
    """

    def __init__(self, key: str, column: int, channel: Channel, *, beside: bool = False) -> None:
        self._key = key
        self._beside = beside
        self._column = column
        self._channel = channel
        self._silent_ns = round(SILENCE_INTERVALS * channel.interval_s * 1e9)
        self._last_ns: int | None = None
        self._widest_ns = 0
        bins = round(SILENCE_INTERVALS * _BINS) + 1
        self._counts = np.zeros(bins)
        self._sums = np.zeros(bins)

    def take(self, block: Block) -> None:
        """Take the next block of any instrument."""
        if block.source != self._key or not len(block):
            return
        t_ns = block.t_ns[np.isfinite(block.values[:, self._column])]
        if not len(t_ns):
            return
        if self._last_ns is not None:
            t_ns = np.concatenate(([self._last_ns], t_ns))
        self._last_ns = int(t_ns[-1])
        apart = np.diff(t_ns)
        # Times that run back are damage, and told elsewhere; one instant twice tells no pace.
        apart = apart[(apart > 0) & (apart <= self._silent_ns)]
        if len(apart):
            self._widest_ns = max(self._widest_ns, int(apart.max()))
            self._count(apart)

    def _count(self, apart: NDArray[np.int64]) -> None:
        scale = _BINS / (self._channel.interval_s * 1e9)
        low = int(apart.min() * scale)
        if low == int(apart.max() * scale):  # the usual case, and the cheap one
            self._counts[low] += len(apart)
            self._sums[low] += float(apart.sum())
            return
        bins = (apart * scale).astype(np.intp)
        self._counts += np.bincount(bins, minlength=len(self._counts))
        self._sums += np.bincount(bins, apart, len(self._sums))

    @property
    def channel(self) -> Channel:
        """The channel with the widest interval seen, where that is wider than its own."""
        widest_s = self._widest_ns / 1e9
        if widest_s <= CLOSE * self._channel.interval_s:
            return self._channel
        return replace(self._channel, interval_s=widest_s)

    @property
    def pace(self) -> Pace | None:
        """How far apart readings came; None before two at different instants."""
        seen = np.flatnonzero(self._counts)
        if not self._sums.sum():  # none, or all at one instant
            return None
        gaps_s = self._sums[seen] / self._counts[seen] / 1e9
        return Pace(tuple(gaps_s.tolist()), tuple(self._counts[seen].tolist()), self._beside)


def _window_s(channel: Channel) -> float:
    """Give the averaging time; where it is not stated, the longest that the rate allows."""
    return channel.integration_s or channel.interval_s


def _readings(channel: Channel, min_dwell_s: float) -> int:
    """Give how many readings without current a dropout needs to seem as long as the dwell."""
    return max(1, math.ceil(min_dwell_s / channel.interval_s - 1e-9))


def shortest_visible_s(channel: Channel, min_dwell_s: float) -> float:
    """Give the shortest dropout that can't have been missed, in seconds.

    A reading shows a dropout for certain when its whole averaging time lies inside. Readings
    begin one interval apart; a dropout that holds as many whole readings as the dwell is long,
    wherever it begins, counts as a span whatever the edges look like.

    Parameters
    ----------
    channel : Channel
        The motor current's, its interval the widest that came. An averaging time that is not
        stated (0) counts as a whole interval.
    min_dwell_s : float, seconds

    Source
    ------
    Interval arithmetic on a sampling window; no outside source. Held against brute force by
    ``tests/unit/analysis/test_visibility.py``.
    """
    return _window_s(channel) + _readings(channel, min_dwell_s) * channel.interval_s


def catch_chance(
    channel: Channel, min_dwell_s: float, duration_s: float, pace: Pace | None = None
) -> float:
    """Give the chance, 0 to 1, that a dropout of ``duration_s`` at a random instant is seen.

    Parameters
    ----------
    channel : Channel
    min_dwell_s, duration_s : float, seconds
    pace : Pace or None
        How the readings came; None for one interval apart.

    Source
    ------
    See :func:`meterlog.analysis.catching.caught`; here with nothing known of the running current,
    so that only readings count whose whole averaging time lies inside.
    """
    pace = pace or Pace((channel.interval_s,))
    window_s = _window_s(channel)
    return float(caught((duration_s,), pace, window_s, min_dwell_s, Threshold())[0])


def catch_chances(
    channel: Channel,
    min_dwell_s: float,
    levels: Sequence[tuple[Threshold, float]] = (),
    pace: Pace | None = None,
) -> tuple[CatchChance, ...]:
    """Give the chance for dropouts shorter than the shortest that is always visible: never 1.

    Parameters
    ----------
    channel : Channel
        The motor current's, its interval the widest that came.
    min_dwell_s : float, seconds
    levels : sequence of (Threshold, float)
        As :func:`running_levels` gives them: the chance is the mean over them. Without any, only
        readings count that show no current at all.
    pace : Pace or None
        How the readings came; None for one interval apart.

    Source
    ------
    See :func:`meterlog.analysis.catching.caught`; calibrated against the made-up runs of
    ``tests/benchmarks/detection``.
    """
    certain = shortest_visible_s(channel, min_dwell_s)
    lengths = [length for length in _LENGTHS_S if length < certain]
    pace = pace or Pace((channel.interval_s,))
    chances, whole = np.zeros(len(lengths)), 0.0
    for threshold, share in levels or ((Threshold(), 1.0),):
        chances += share * caught(lengths, pace, _window_s(channel), min_dwell_s, threshold)
        whole += share
    means = np.minimum(chances / whole, MOST).tolist()
    return tuple(CatchChance(length, chance) for length, chance in zip(lengths, means, strict=True))


def running_levels(limits: Limits, steps: Sequence[Step]) -> tuple[tuple[Threshold, float], ...]:
    """Give from where on the current counts as gone, as a part of what ran, step by step.

    Parameters
    ----------
    limits : Limits
    steps : sequence of Step
        Of the recording so far.

    Returns
    -------
    tuple of (Threshold, float)
        Each with how many readings it is for; of the longest steps only.
    """
    back_a = limits.open_current_a * (1.0 + limits.hysteresis)
    ran = [
        (abs(step.steady_mean_a), float(step.steady_n))
        for step in steps
        if step.steady_mean_a and abs(step.steady_mean_a) > back_a and step.steady_n
    ]
    ran.sort(key=lambda one: -one[1])
    return tuple(
        (Threshold(limits.open_current_a / amps, back_a / amps), count)
        for amps, count in ran[:_MOST_LEVELS]
    )


def shortest_dip_s(
    window_s: float, interval_s: float, base_a: float, noise_a: float
) -> float | None:
    """Give the shortest open that leaves a dip which chance does not, in seconds.

    Parameters
    ----------
    window_s, interval_s : float, seconds
        Averaging time and interval of the current's meter.
    base_a, noise_a : float, amperes
        The running current, and the standard deviation of a reading.

    Returns
    -------
    float or None
        None where no open within one reading does.

    Source
    ------
    An open of x takes x / window of the current out of one reading. The restart that follows puts
    some of it back, so that this is the least; see ``inferred/standing_out.py``.
    """
    deviations = alarm_deviations(interval_s, math.inf)
    part = max(LEAST_PART, deviations * noise_a / base_a) if base_a > 0.0 else math.inf
    return part * window_s if part < 1.0 else None


def dip_note(channel: Channel, steps: Sequence[Step]) -> list[str]:
    """Say which dropouts, too short to be seen, may still leave a dip; empty for fast meters.

    Parameters
    ----------
    channel : Channel
        The motor current's.
    steps : sequence of Step
        For how much the current scatters.
    """
    window_s = channel.integration_s  # not stated: nobody knows what an open leaves
    digit_a = channel.accuracy.resolution if channel.accuracy else 0.0
    lengths = [
        shortest_dip_s(
            window_s,
            channel.interval_s,
            abs(step.steady_mean_a),
            max(step.steady_sd_a or 0.0, 0.5 * digit_a),
        )
        for step in steps
        if step.steady_mean_a
    ]
    known = [length for length in lengths if length is not None]
    if not known or not window_s or max(channel.interval_s, window_s) < FASTEST_S:
        return []
    return [
        f"Shorter dropouts than this meter is sure to show may leave a dip, from about"
        f" {min(known) * 1e3:.2g} ms on; what a dip came of is inferred, never measured."
    ]
