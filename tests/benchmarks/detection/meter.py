"""Meter: how a trace becomes readings - pace, averaging, digits, noise, errors, gaps, probes."""

from __future__ import annotations

from dataclasses import dataclass, field

import numpy as np
from true_trace import Trace

from meterlog.model import (
    Accuracy,
    Block,
    Channel,
    Flag,
    Instrument,
    Quantity,
    Role,
)

ROLES = {"feed": Role.MOTOR_FEED, "return": Role.MOTOR_RETURN, "current": Role.MOTOR_CURRENT}
FINE_S = 5e-4
"""Averages are taken over instants about so far apart where something is switched."""


@dataclass(frozen=True)
class Meter:
    """One meter. ``error``: -1 to 1, where it lies within its accuracy statement, per channel."""

    key: str
    columns: tuple[str, ...]
    interval: float
    window: float
    stated_window: float
    jitter: float
    accuracy: dict[str, Accuracy]
    error: dict[str, float]
    noise: dict[str, float]
    slow_noise: dict[str, float]
    drift_a_per_s: float = 0.0
    offset_s: float = 0.0
    offset_u_s: float = 0.0
    lost: float = 0.0
    bursts: list[tuple[float, float]] = field(default_factory=list)
    range_top: float = np.inf
    low_range: float = 0.0
    blank: float = 0.0
    smooth: bool = False
    loose: list[tuple[str, float, float, float]] = field(default_factory=list)

    def instrument(self) -> Instrument:
        """Give what the program knows of it."""
        channels = tuple(
            Channel(
                name,
                Quantity.CURRENT if name == "current" else Quantity.VOLTAGE,
                ROLES[name],
                interval_s=self.interval,
                integration_s=self.stated_window,
                accuracy=self.accuracy[name],
            )
            for name in self.columns
        )
        return Instrument(self.key, "invented", "-", channels, time_u_s=self.offset_u_s or None)


@dataclass(frozen=True)
class Read:
    """Readings: ``block`` as the program gets it, ``true_a`` as an ideal meter had read them."""

    block: Block
    true_a: np.ndarray | None
    blanks: list[tuple[float, float]]


def _averaged(trace: Trace, t: np.ndarray, window: float, *, smooth: bool) -> np.ndarray:
    """Give (3, n): amps, feed, return, averaged over ``window`` around each instant."""
    if window <= 0.0:
        return np.array(trace.at(t, instant=not smooth))
    instant = not smooth and window < 0.02
    edges = np.sort(trace.starts)
    first = np.searchsorted(edges, t - window / 2.0 - 0.002)
    busy = np.searchsorted(edges, t + window / 2.0) > first
    out = np.empty((3, len(t)))
    fine = int(np.clip(np.ceil(window / FINE_S), 4, 1200))
    few = int(np.clip(np.ceil(window / 0.002), 4, 8)) if not instant else min(fine, 16)
    for mask, count in ((busy, fine), (~busy, few)):
        index = np.flatnonzero(mask)
        offsets = ((np.arange(count) + 0.5) / count - 0.5) * window
        for part in np.array_split(index, max(1, len(index) * count // 400_000)):
            at = np.maximum(t[part][:, None] + offsets[None, :], 0.0)
            out[:, part] = np.array(trace.at(at, instant=instant)).mean(axis=2)
    return out


def _slow(rng: np.random.Generator, count: int, interval: float) -> np.ndarray:
    """Give noise of unit size with more at low frequencies: a sum of decaying memories."""
    total = np.zeros(count)
    for tau in (0.03, 0.3, 3.0):
        knots = rng.normal(size=int(count * interval / tau) + 3)
        total += np.interp(np.arange(count) * interval / tau, np.arange(len(knots)), knots)
    return total / np.sqrt(3.0)


def _blanks(meter: Meter, t: np.ndarray, amps: np.ndarray) -> list[tuple[float, float]]:
    """Give when a meter that chooses its range shows nothing: after each change of range."""
    if not meter.blank:
        return []
    # Up at the top of the lower range, down at a tenth less than that.
    low = False
    result, until = [], -1.0
    for at, value in zip(t.tolist(), np.abs(amps).tolist(), strict=True):
        if at < until:
            continue
        change = value > meter.low_range if low else value < 0.9 * meter.low_range
        if change:
            low = not low
            result.append((at - 0.5 * meter.interval, at + meter.blank))
            until = at + meter.blank
    return result


def read(rng: np.random.Generator, meter: Meter, trace: Trace, length: float) -> Read:
    """Let the meter read the trace for ``length`` seconds."""
    count = int((length - meter.window - 0.01) / meter.interval)
    t = meter.window / 2.0 + rng.uniform(0.0, meter.interval) + np.arange(count) * meter.interval
    t += rng.uniform(-meter.jitter, meter.jitter, count) * meter.interval
    t = t[(t > 0.0) & (t < length)]
    kept = rng.random(len(t)) >= meter.lost
    for start, end in meter.bursts:
        kept &= (t < start) | (t > end)
    t = t[kept]
    truth = _averaged(trace, t, meter.window, smooth=meter.smooth)
    stamps = t + meter.offset_s
    t_ns = np.maximum.accumulate(np.round(np.maximum(stamps, 0.0) * 1e9).astype(np.int64))
    values = np.empty((len(t), len(meter.columns)), order="F")
    flags = np.zeros((len(t), len(meter.columns)), np.uint8, order="F")
    blanks: list[tuple[float, float]] = []
    for column, name in enumerate(meter.columns):
        true = truth[("current", "feed", "return").index(name)]
        shown = _shown(rng, meter, name, true, t)
        for probe, start, end, ghost in meter.loose:
            if probe == name:
                off = (t >= start) & (t < end)
                shown[off] = np.round(ghost / 0.01) * 0.01
        if name == "current":
            blanks = _blanks(meter, t, true)
            for start, end in blanks:
                off = (t > start) & (t < end)
                shown[off] = np.nan
                flags[off, column] |= int(Flag.NO_DATA)
            over = np.abs(shown) > meter.range_top
            shown[over] = np.nan
            flags[over, column] |= int(Flag.OVERLOAD)
        values[:, column] = shown
    true_a = truth[0] if "current" in meter.columns else None
    return Read(Block(meter.key, t_ns, values, flags), true_a, blanks)


def _shown(
    rng: np.random.Generator, meter: Meter, name: str, true: np.ndarray, t: np.ndarray
) -> np.ndarray:
    """Put the meter's own error, noise and digits on what it should have read."""
    stated = meter.accuracy[name]
    # The rounding below is part of what the statement covers, not on top of it.
    digits = max(stated.digits - 0.5, 0.0)
    fixed = digits * stated.resolution + stated.floor
    share = stated.percent_of_reading / 100.0
    shown = true * (1.0 + meter.error[name] * share) + meter.error[name] * fixed
    shown = shown + rng.normal(0.0, meter.noise[name], len(true))
    shown += meter.slow_noise[name] * _slow(rng, len(true), meter.interval)
    if name == "current":
        shown += meter.drift_a_per_s * t
    return np.round(shown / stated.resolution) * stated.resolution
