"""ReadPace: how far apart readings are; one that is there twice is one reading."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray


def read_once(t_ns: NDArray[np.int64], *values: NDArray[np.float64]) -> NDArray[np.bool_]:
    """Tell which rows are readings of their own.

    A row that repeats time and values of the one before, as in a file that was put together of
    two or written twice, is none. Rows that share a time and differ are: their times are coarser
    than they are apart.

    Parameters
    ----------
    t_ns : ndarray, int64, shape (n,), nanoseconds, rising
    *values : ndarray, float64, shape (n,)
        What was read then; what has no value repeats nothing.

    Returns
    -------
    ndarray, bool, shape (n,)
    """
    own = np.ones(len(t_ns), np.bool_)
    again = np.diff(t_ns) == 0
    if again.any():
        for column in values:
            again &= column[1:] == column[:-1]
        own[1:] = ~again
    return own


def pace_ns(t_ns: NDArray[np.int64], amps: NDArray[np.float64]) -> int:
    """Give the median time between readings of their own, nanoseconds; 0 for a single one."""
    apart = np.diff(t_ns[read_once(t_ns, amps)])
    return int(np.median(apart)) if len(apart) else 0
