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
    steps = np.abs(np.diff(amps[start : stop + count]))
    moved = steps[steps > 0.0]
    fallen = float(amps[start] - after.mean())
    return fallen >= FALL_STEPS * float(moved.min()) and LIVELIER * _longest(after) <= count


def _longest(amps: NDArray[np.float64]) -> int:
    """Give the most equal readings in a row."""
    cuts = np.flatnonzero(np.diff(amps)) + 1
    return int(np.diff(np.concatenate(([0], cuts, [len(amps)]))).max())
