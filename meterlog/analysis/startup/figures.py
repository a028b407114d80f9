"""Figures of one start: its peak, how long it takes, and what it heats."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from meterlog.analysis.read_pace import pace_ns
from meterlog.analysis.startup.capture import Capture
from meterlog.analysis.startup.cut_peak import is_cut

WITHIN = 0.1
"""Settled is what stays within this part of the steady current."""
SMOOTH_NS = 20_000_000
"""Readings closer than this are averaged over it before they are held against that band: the
commutator's ripple and a pulsed feed are not the start (common practice, no source)."""
_TAIL = 0.25
"""The last quarter of what is kept stands for steady running where no step tells it."""
_LASTING = 3
"""So many readings at least must lie within the band, and a smoothing time."""


@dataclass(frozen=True, slots=True)
class Settling:
    """When the current came to stay near its steady value: instant, and ± nanoseconds."""

    t_ns: int
    edge_ns: int


@dataclass(frozen=True, slots=True)
class Figures:
    """Figures of one start, times in nanoseconds since the recording's zero.

    Attributes
    ----------
    peak_a : float, amperes
    peak_ns : int
    tail_a : float or None, amperes
        Mean of the last quarter of what is kept; None where too little is kept for that.
    settling : Settling or None
        None where it did not settle within what is kept, or nothing steady is known.
    i2t_a2s : float, ampere squared seconds
    i2t_end_ns : int
        Until when that was added up.
    interval_ns : int
        Median time between readings; one that is there twice counts once.
    blind : bool
        Readings were missing.
    cut : bool
        The readings stand at the peak's value, as at the end of a range.
    """

    peak_a: float
    peak_ns: int
    tail_a: float | None
    settling: Settling | None
    i2t_a2s: float
    i2t_end_ns: int
    interval_ns: int
    blind: bool
    cut: bool


def figures(capture: Capture, start_up_ns: int, steady_a: float | None) -> Figures:
    """Give the figures of a start.

    Parameters
    ----------
    capture : Capture
        Ended where the current went again or another speed was commanded.
    start_up_ns : int, nanoseconds
        For how long the current squared is added up, at most; a start that is kept for less has
        no steady current of its own.
    steady_a : float or None, amperes
        What it settled at, where that is known; None: the mean of the last quarter.
    """
    t, amps = capture.t_ns, capture.amps
    top = 1 + int(np.argmax(amps[1:]))
    tail = _tail(capture, start_up_ns)
    level = tail if steady_a is None else steady_a
    end = max(int(np.searchsorted(t, capture.onset_ns + start_up_ns, side="right")), 2)
    return Figures(
        peak_a=float(amps[top]),
        peak_ns=int(t[top]),
        tail_a=tail,
        settling=None if level is None else settling(t[1:], amps[1:], level),
        i2t_a2s=i2t(t[:end], amps[:end]),
        i2t_end_ns=int(t[end - 1]),
        interval_ns=pace_ns(t[1:], amps[1:]) or pace_ns(t, amps),
        blind=capture.blind_ns is not None,
        cut=is_cut(amps[1:]),
    )


def i2t(t_ns: NDArray[np.int64], amps: NDArray[np.float64]) -> float:
    """Give the integral of the current squared over time, ampere squared seconds.

    Source
    ------
    Trapezoids between readings; what a fuse's "I2t" means: ISO 8820-1 (heat at constant
    resistance), from memory.
    """
    return float(np.trapezoid(np.square(amps), (t_ns - t_ns[0]) / 1e9))


def _tail(capture: Capture, start_up_ns: int) -> float | None:
    t = capture.t_ns
    length = int(t[-1]) - capture.onset_ns
    if length < start_up_ns:
        return None
    last = capture.amps[t > int(t[-1]) - round(_TAIL * length)]
    return float(last.mean()) if len(last) >= _LASTING else None


def settling(
    t_ns: NDArray[np.int64], amps: NDArray[np.float64], steady_a: float
) -> Settling | None:
    """Give when the current came within 10 % of ``steady_a`` to stay.

    Parameters
    ----------
    t_ns : ndarray, int64, shape (n,)
        From the first reading with current to the end of what is known.
    amps : ndarray, float64, shape (n,), amperes
    steady_a : float, amperes

    Returns
    -------
    Settling or None
        Between the last reading outside the band and the first inside it, linear; where readings
        are averaged, ± half that time. None where it never settled.

    Source
    ------
    Settling time as of a step response: the last time the band is entered; IEC 60050-351
    ("settling time"), from memory, with a band of 10 % instead of 2 or 5.
    """
    smooth, half_ns = _smoothed(t_ns, amps)
    off = np.abs(smooth - steady_a) - WITHIN * steady_a
    outside = np.flatnonzero(off > 0.0)
    if not len(outside):
        return Settling(int(t_ns[0]), half_ns)
    last = int(outside[-1])
    left = len(off) - 1 - last
    if left < _LASTING or int(t_ns[-1] - t_ns[last]) < SMOOTH_NS:
        return None
    gap = int(t_ns[last + 1] - t_ns[last])
    part = float(off[last] / (off[last] - off[last + 1]))
    return Settling(int(t_ns[last]) + round(part * gap), max(gap, half_ns))


def _smoothed(
    t_ns: NDArray[np.int64], amps: NDArray[np.float64]
) -> tuple[NDArray[np.float64], int]:
    """Give means over the smoothing time around each reading, and its half; or as they are."""
    first, last = _around(t_ns, SMOOTH_NS // 2)
    if int((last - first).max()) < _LASTING:
        return amps, 0
    # At the beginning fewer readings lie before than after: as many are taken from either side.
    # At the end there is no need for means of so few.
    here = np.arange(int(np.searchsorted(t_ns, t_ns[-1] - SMOOTH_NS // 2)) + 1)
    reach = np.maximum(np.minimum(here - first[here], last[here] - 1 - here), 0)
    sums = np.concatenate(([0.0], np.cumsum(amps)))
    return (sums[here + reach + 1] - sums[here - reach]) / (2 * reach + 1), SMOOTH_NS // 2


def _around(t_ns: NDArray[np.int64], half_ns: int) -> tuple[NDArray[np.intp], NDArray[np.intp]]:
    """Give the first reading within ``half_ns`` of each reading, and the one after the last."""
    gap = int(t_ns[1] - t_ns[0]) if len(t_ns) > 1 else 0
    if gap > 0 and bool((np.diff(t_ns) == gap).all()):  # no need to search where all are even
        here, reach = np.arange(len(t_ns)), half_ns // gap
        return np.maximum(here - reach, 0), np.minimum(here + reach + 1, len(t_ns))
    return np.searchsorted(t_ns, t_ns - half_ns), np.searchsorted(t_ns, t_ns + half_ns, "right")
