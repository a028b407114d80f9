"""Humps: how many ripples a pattern holds, whatever line it was followed by."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from meterlog.analysis.ripple.line import blanked
from meterlog.analysis.ripple.repeat import LONGEST

_FEWEST = 5
_LEAST_PART = 0.45
"""Lines below half of the ripple's are seldom the strongest of those that are looked for."""
_POINTS = 12
_AS_HIGH = 0.8
"""A finer division is taken when its common hump is at least this part of the highest."""
_CLEARLY = 1.5
"""Another division than the one followed must show humps this much higher."""


def humps_in(pattern: NDArray[np.float64], followed: int) -> int:
    """Count the humps in one pattern.

    Cut into as many parts as there are humps, the parts are alike: their median hump is high.
    Deep notches, whose lines may be stronger than the ripple's, are blanked. Half as many are not
    thought of: two unlike brushes make every second ripple of an odd count higher.

    Parameters
    ----------
    pattern : ndarray, float64, shape (n,)
        Evenly spaced over one repetition.
    followed : int
        Waves of the line by which it was followed; kept unless another count is clearly better.

    Source
    ------
    Epoch folding (D. A. Leahy et al., Astrophys. J. 266 (1983) 160, from memory), with medians for
    means.
    """
    low = max(_FEWEST, round(_LEAST_PART * followed))
    counts = [n for n in range(low, LONGEST + 1) if 2 * n != followed]
    if followed not in counts:
        return followed
    shallow = blanked(pattern)
    heights = np.array([_common(shallow, count) for count in counts])
    best = int(np.flatnonzero(heights >= _AS_HIGH * heights.max())[-1])
    clear = heights[best] >= _CLEARLY * heights[counts.index(followed)]
    return counts[best] if clear else followed


def _common(pattern: NDArray[np.float64], count: int) -> float:
    """Give the rms of the median of ``count`` equal parts, each about its own mean."""
    places = (np.arange(count * _POINTS) + 0.5) / (count * _POINTS) * len(pattern) - 0.5
    around = np.concatenate((pattern[-1:], pattern, pattern[:1]))
    parts = np.interp(places + 1.0, np.arange(len(around)), around).reshape(count, _POINTS)
    parts = parts - np.median(parts, axis=1)[:, None]
    return float(np.median(parts, axis=0).std())
