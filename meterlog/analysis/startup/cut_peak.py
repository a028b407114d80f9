"""CutPeak: a peak that stands at one value, as at the end of a meter's or clamp's range."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

LEAST_N = 4
FALL_STEPS = 20.0
"""So many of its own smallest steps the current must have fallen, on average over as many readings
as it stood still for. A peak that is round and only looks flat because a reading has no more
digits has fallen by 13/3 steps then: a parabola that stays within one step for ``n`` readings is
4 1/3 steps lower on average over the next ``n``."""
LIVELIER = 4
_DIGITS = (1.0, 0.1, 0.01)
_OFF_GRID = 1e-6
"""Of a digit: so far may a reading be from a whole number of them by its storing alone."""


def is_cut(amps: NDArray[np.float64]) -> bool:
    """Tell whether the highest reading of a start is not the peak of the current.

    It repeats exactly and then falls at once, while the readings after it do not repeat: those of
    a slow clamp that are passed on several times each do.

    Parameters
    ----------
    amps : ndarray, float64, shape (n,), amperes
        From the first reading with current on.
    """
    at_top = np.concatenate(([False], amps == amps.max(), [False]))
    starts, stops = np.flatnonzero(np.diff(at_top)).reshape(-1, 2).T
    which = int(np.argmax(stops - starts))
    start, stop = int(starts[which]), int(stops[which])
    count = stop - start
    after = amps[stop : stop + count]
    if count < LEAST_N or len(after) < count:
        return False
    # Steps right after the top are the slope of the fall itself: the meter's own show once it
    # runs steadily. Unless it reads the peak on another range, with fewer digits.
    steps = np.abs(np.diff(amps))
    moved = steps[steps > 0.0]
    step = max(float(moved.min()), _digit(amps[start : stop + count]))
    fallen = float(amps[start] - after.mean())
    return fallen >= FALL_STEPS * step and LIVELIER * _longest(after) <= count


def _digit(amps: NDArray[np.float64]) -> float:
    """Give the coarsest last digit that readings may have; 0 where none is to be seen."""
    for digit in _DIGITS:
        counts = amps / digit
        if np.abs(counts - np.round(counts)).max() <= _OFF_GRID:
            return digit
    return 0.0


def _longest(amps: NDArray[np.float64]) -> int:
    """Give the most equal readings in a row."""
    cuts = np.flatnonzero(np.diff(amps)) + 1
    return int(np.diff(np.concatenate(([0], cuts, [len(amps)]))).max())
