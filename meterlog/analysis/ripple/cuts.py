"""Cuts: windows that were followed by another line than the ripple's, all cut at the same place.

A line that comes p times where the ripple comes n times tells the ripple's place but for whole
multiples of n / p: where that is no whole number, each window is cut anywhere within a ripple.
Windows cut unalike and laid upon each other smear the pattern, and seem to differ turn by turn.
"""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

import numpy as np
from numpy.typing import NDArray

from meterlog.analysis.ripple.repeat import LONGEST
from meterlog.analysis.ripple.tracking import PLACES


def later_by(windows: Sequence[NDArray[np.float64]], length: int, ratio: float) -> list[float]:
    """Give by how much later each window must be cut to be cut as the longest one is.

    Parameters
    ----------
    windows : sequence of ndarray, float64, shape (ripples, PLACES)
        Each begins anywhere in the pattern.
    length : int, ripples
        Of the pattern.
    ratio : float
        Ripples for each wave of the line that was followed.

    Returns
    -------
    list of float, ripples, 0 to less than 1
        All 0 where the ratio is a whole number.

    Source
    ------
    Lag of the largest circular correlation; any textbook of signal processing. Only lags are told
    that the ratio makes possible, multiples of one over its denominator.
    """
    parts = Fraction(ratio).limit_denominator(LONGEST).denominator
    if parts == 1 or len(windows) < 2:
        return [0.0] * len(windows)
    patterns = [_mean_pattern(waves, length) for waves in windows]
    first = np.fft.rfft(patterns[int(np.argmax([len(waves) for waves in windows]))])
    later = []
    for pattern in patterns:
        fits = np.fft.irfft(first * np.conj(np.fft.rfft(pattern)), len(pattern))
        ahead = int(np.argmax(fits)) / PLACES
        later.append(round(-ahead * parts) % parts / parts)
    return later


def _mean_pattern(waves: NDArray[np.float64], length: int) -> NDArray[np.float64]:
    whole = len(waves) // length * length
    turns = waves[:whole].reshape(-1, length * PLACES)
    pattern: NDArray[np.float64] = turns.mean(axis=0) - turns.mean()
    return pattern
