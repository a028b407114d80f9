"""OpenLength: how long an open may have been, for readings to be as they are."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray

from meterlog.analysis.inferred.open_model import RestartScale, shown

LENGTHS_S = np.geomspace(0.0005, 5.0, 140)
"""Lengths that are tried, 7 % apart."""
_STEP = float(LENGTHS_S[1] / LENGTHS_S[0])
_PLACES = 48
"""Ends of the open that are tried for each length."""
WITHIN_DEVIATIONS = 3.5
_MODEL_PART, _BASE_PART = 0.12, 0.01
"""What the model itself may be wrong by: a part of what it says, and of the base."""


def open_length_s(
    at_s: NDArray[np.float64],
    seen: NDArray[np.float64],
    noise: float,
    meter: tuple[float, float],
    scales: Sequence[RestartScale],
) -> tuple[float, float] | None:
    """Give the shortest and the longest open that explain some neighbouring readings.

    Parameters
    ----------
    at_s : ndarray, float64, shape (k,), seconds
        Middles of the averaging times, 0 for the reading that stands out most.
    seen : ndarray, float64, shape (k,)
        How far each reading left the base line, as a part of it.
    noise : float
        Standard deviation of one reading, as a part of the base.
    meter : tuple of float, seconds
        Interval and averaging time. An averaging time that is not stated (0) may be anything
        from none to a whole interval, and both are tried.
    scales : sequence of RestartScale
        Motors that are thought possible.

    Returns
    -------
    tuple of float, seconds; or None
        None where no open explains them.

    Source
    ------
    A set estimate: all lengths on a grid for which, with some motor and some moment, every
    reading is within its tolerance (no distribution is assumed). Common practice, no source.
    """
    interval_s, averaging_s = meter
    windows = (averaging_s,) if averaging_s > 0.0 else (0.0, interval_s)
    room = WITHIN_DEVIATIONS * noise + _BASE_PART
    anchor = int(np.argmin(np.abs(at_s)))
    lengths, places = LENGTHS_S[:, None], np.linspace(0.0, 1.0, _PLACES)
    found: NDArray[np.bool_] = np.zeros(len(LENGTHS_S), np.bool_)
    for window_s in windows:
        ended = -window_s / 2.0 - interval_s + places * (lengths + window_s + interval_s)
        which = np.repeat(np.arange(len(LENGTHS_S)), _PLACES)
        open_s, ended = LENGTHS_S[which], ended.ravel()
        for scale in scales:
            # The reading that stands out most rules out nearly everything, and costs little.
            near = slice(anchor, anchor + 1)
            some = _fits(scale, (open_s, ended), (at_s[near], seen[near]), window_s, room)
            left = open_s[some], ended[some]
            fits = _fits(scale, left, (at_s, seen), window_s, room)
            found[which[some][fits]] = True
    if not found.any():
        return None
    consistent = LENGTHS_S[found]
    return float(consistent[0] / _STEP), float(consistent[-1] * _STEP)


def _fits(
    scale: RestartScale,
    opens: tuple[NDArray[np.float64], NDArray[np.float64]],
    readings: tuple[NDArray[np.float64], NDArray[np.float64]],
    window_s: float,
    room: float,
) -> NDArray[np.bool_]:
    """Tell of each open, by length and end, whether all the readings are within tolerance."""
    at_s, seen = readings
    told = shown(scale, *opens, at_s, window_s)
    fits: NDArray[np.bool_] = np.all(
        np.abs(told - seen) <= room + _MODEL_PART * np.abs(told), axis=1
    )
    return fits
