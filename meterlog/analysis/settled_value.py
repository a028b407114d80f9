"""SettledValue: what a meter shows once it stands still, or why there is no such value yet."""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from meterlog.analysis.budgets import Scatter
from meterlog.model import Flag

LEAST_S = 1.0
LEAST_COUNT = 3
"""A value is taken over at least so long and so many readings; common practice, no source."""
MOST_S = 5.0
"""And over at most so long, or as long as the fewest readings take with a slow meter."""
_MOVES = 0.003
_FLICKERS = 0.04
"""Parts of the value by which it may drift or jump and still count as standing; from memory: a fan
with its commutator makes a meter's reading jump by 1 or 2 %."""
_SMALL = 0.01
_SMALL_FLICKER = 0.1
"""The same near 0, in V or A, for a meter whose last digit is not known."""
_DIGITS_MOVED, _DIGITS_FLICKERED = 3.0, 10.0
_T_LIMIT = 3.0
"""A drift below so many of its own standard deviations is none."""
_SILENT_INTERVALS, _SILENT_S = 3.5, 1.0


@dataclass(frozen=True, slots=True)
class Settled:
    """A value that stands.

    Attributes
    ----------
    value : float, unit of the channel
        Mean of the readings.
    scatter : Scatter
        Of the readings.
    start_ns, end_ns : int, nanoseconds since the recording's zero
        Of the first and the last of them.
    """

    value: float
    scatter: Scatter
    start_ns: int
    end_ns: int


@dataclass(frozen=True, slots=True)
class Unsettled:
    """Why there is no value to be taken.

    Attributes
    ----------
    words : str
        Such as ``still moving: 11.80 to 12.40 V``.
    """

    words: str


class NewestReadings:
    """The newest readings of one channel, in bounded memory, however they come in.

    Parameters
    ----------
    interval_s : float, seconds
        From one reading to the next.
    """

    def __init__(self, interval_s: float) -> None:
        self.interval_s = interval_s
        self.span_s = max(MOST_S, (LEAST_COUNT + 1) * interval_s)
        self.t_ns = np.empty(0, np.int64)
        self.values = np.empty(0)
        self.flags = np.empty(0, np.uint8)

    def take(
        self, t_ns: NDArray[np.int64], values: NDArray[np.float64], flags: NDArray[np.uint8]
    ) -> None:
        """Take readings, shape (n,) each, in time order."""
        if not t_ns.shape[0]:
            return
        after = t_ns >= t_ns[-1] - round(self.span_s * 1e9)
        still = self.t_ns >= t_ns[-1] - round(self.span_s * 1e9)
        self.t_ns = np.concatenate([self.t_ns[still], t_ns[after]])
        self.values = np.concatenate([self.values[still], values[after]])
        self.flags = np.concatenate([self.flags[still], flags[after]])


def settled_value(
    newest: NewestReadings, now_ns: int, unit: str, resolution: float = 0.0
) -> Settled | Unsettled:
    """Give the value a meter has settled on, from its newest readings.

    The window is the newest second, longer where it holds fewer than three readings. A value
    stands when its first and last third agree within 0.3 %, three digits or what their scatter
    explains, and no reading jumps out of 4 % or ten digits.

    Parameters
    ----------
    newest : NewestReadings
    now_ns : int, nanoseconds since the recording's zero
    unit : str
        For the words.
    resolution : float, unit of the channel
        Of the meter's last digit; 0 where not known.

    Returns
    -------
    Settled or Unsettled
    """
    t_ns, values, flags = newest.t_ns, newest.values, newest.flags
    if not t_ns.shape[0]:
        return Unsettled("no reading has come in yet")
    old_s = (now_ns - int(t_ns[-1])) / 1e9
    if old_s > max(_SILENT_INTERVALS * newest.interval_s, _SILENT_S):
        return Unsettled(f"the newest reading is {old_s:.1f} s old: is the meter still there?")
    window = t_ns >= t_ns[-1] - round(LEAST_S * 1e9)
    if int(window.sum()) < LEAST_COUNT:
        window = np.arange(t_ns.shape[0]) >= t_ns.shape[0] - LEAST_COUNT
    whole_s = (int(t_ns[-1]) - int(t_ns[0])) / 1e9
    if whole_s < LEAST_S - newest.interval_s or int(window.sum()) < LEAST_COUNT:
        return Unsettled("wait: too few readings yet for a value that stands")
    if (flags[window] & Flag.OVERLOAD).any():
        return Unsettled("the meter shows an overload: choose a wider range")
    if np.isnan(values[window]).any():
        return Unsettled("readings are missing just now: hold the probe still")
    return _standing(t_ns[window], values[window], unit, resolution)


def _standing(
    t_ns: NDArray[np.int64], values: NDArray[np.float64], unit: str, resolution: float
) -> Settled | Unsettled:
    mean = float(values.mean())
    low, high = float(values.min()), float(values.max())
    jumps = _DIGITS_FLICKERED * resolution if resolution > 0.0 else _SMALL_FLICKER
    if high - low > max(_FLICKERS * abs(mean), jumps):
        moved = _drift(values)
        word = "still moving" if abs(moved) > 0.5 * (high - low) else "it flickers"
        return Unsettled(f"{word}: {low:.2f} to {high:.2f} {unit} within a second or so")
    third = max(values.shape[0] // 3, 1)
    sd = float(values.std(ddof=1))
    moves = _DIGITS_MOVED * resolution if resolution > 0.0 else _SMALL
    by_chance = _T_LIMIT * _short_term(values) * math.sqrt(2.0 / third)
    if abs(_drift(values)) > max(_MOVES * abs(mean), moves, by_chance):
        return Unsettled(f"still moving: by {_drift(values):+.3f} {unit} within a second or so")
    return Settled(mean, Scatter(values.shape[0], sd, None), int(t_ns[0]), int(t_ns[-1]))


def _drift(values: NDArray[np.float64]) -> float:
    third = max(values.shape[0] // 3, 1)
    return float(values[-third:].mean() - values[:third].mean())


def _short_term(values: NDArray[np.float64]) -> float:
    """Give the standard deviation from one reading to the next, which no drift adds to.

    Source
    ------
    Mean square successive difference: J. von Neumann et al., Ann. Math. Stat. 12 (1941) 153 (from
    memory).
    """
    return float(np.sqrt(np.mean(np.diff(values) ** 2) / 2.0))
