"""FlagRuns: a column of flags as runs, so that hours of "all is well" take a few bytes."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

Runs = tuple[NDArray[np.int32], NDArray[np.uint8]]


def to_runs(flags: NDArray[np.uint8]) -> Runs:
    """Give a flag column as run ends and run values.

    Parameters
    ----------
    flags : ndarray, uint8, shape (n,)
        n at least 1.

    Returns
    -------
    ends : ndarray, int32, shape (runs,)
        Exclusive end of each run; the last is n.
    values : ndarray, uint8, shape (runs,)

    Source
    ------
    Apache Arrow columnar format 1.3, "Run-End Encoded Layout".
    """
    differ = flags[1:] != flags[:-1]
    if not differ.any():  # all is well, as nearly always
        return np.array([len(flags)], np.int32), flags[:1].copy()
    changes = np.flatnonzero(differ)
    ends = np.empty(len(changes) + 1, np.int32)
    ends[:-1] = changes
    ends[:-1] += 1
    ends[-1] = len(flags)
    return ends, np.ascontiguousarray(flags[ends - 1])


def from_runs(runs: Runs, out: NDArray[np.uint8]) -> bool:
    """Write a flag column out of its runs.

    Parameters
    ----------
    runs : tuple of ndarray
        As :func:`to_runs` gives them.
    out : ndarray, uint8, shape (n,)
        Overwritten.

    Returns
    -------
    bool
        False if the runs do not cover n rows exactly, in rising order; ``out`` is then undefined.
    """
    ends, values = runs
    if len(ends) == 0 or len(ends) != len(values) or ends[-1] != len(out):
        return False
    if len(ends) == 1:
        out[:] = values[0]
        return True
    lengths = np.diff(ends, prepend=np.int32(0))
    if lengths.min() < 1:
        return False
    out[:] = np.repeat(values, lengths)
    return True
