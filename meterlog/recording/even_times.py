"""EvenTimes: times of rows that lie evenly, made instead of read.

Most long recordings come from a meter that samples at a steady rate. A cell's record says when its
first row was taken and holds a check of all its times; where times that go on evenly from there
match that check, they are those in the file, as surely as times that had been read.
"""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from meterlog.recording.pyramid_form import FIRST_CELL, Words, key_sums, word_sums

_STEPS = np.arange(FIRST_CELL)
_HALF = 32


def steps_of(first_ns: NDArray[np.int64]) -> NDArray[np.int64]:
    """Give how far apart the rows of cells that lie side by side would be.

    Parameters
    ----------
    first_ns : ndarray, int64, shape (..., n), nanoseconds
        When each cell begins.

    Returns
    -------
    ndarray, int64, shape (..., n), nanoseconds
        Of the last cell that of the one before it.
    """
    steps = np.zeros(first_ns.shape, np.int64)
    steps[..., :-1] = (first_ns[..., 1:] - first_ns[..., :-1]) // FIRST_CELL
    if first_ns.shape[-1] > 1:
        steps[..., -1] = steps[..., -2]
    return steps


def are_even(
    first_ns: NDArray[np.int64], steps_ns: NDArray[np.int64], checks: Words
) -> NDArray[np.bool_]:
    """Tell which cells' rows lie evenly.

    Parameters
    ----------
    first_ns, steps_ns : ndarray, int64, shape (n,), nanoseconds
    checks : ndarray, uint64, shape (n,)
        Of the cells' times.
    """
    last_ns = first_ns + (FIRST_CELL - 1) * steps_ns
    low, sloping, high = _sums()
    # Sums of a row that rises evenly, without the row; the upper halves of its words are the same.
    begins = first_ns.view(np.uint64)
    sums = begins * low + steps_ns.view(np.uint64) * sloping + (begins >> np.uint64(_HALF)) * high
    turns = np.flatnonzero((first_ns >> _HALF) != (last_ns >> _HALF))
    if len(turns):
        sums[turns] = word_sums(even_times(first_ns[turns], steps_ns[turns]).view(np.uint64))
    found: NDArray[np.bool_] = sums == checks
    return found


def even_times(first_ns: NDArray[np.int64], steps_ns: NDArray[np.int64]) -> NDArray[np.int64]:
    """Give the times of cells' rows, shape (n, 64)."""
    times = np.multiply(steps_ns[:, None], _STEPS)
    times += first_ns[:, None]
    return times


def even_rows_before(
    t_ns: NDArray[np.int64], first_ns: NDArray[np.int64], steps_ns: NDArray[np.int64]
) -> NDArray[np.int64]:
    """Count the rows of cells side by side, whose rows lie evenly, before some instants.

    Parameters
    ----------
    t_ns : ndarray, int64, shape (m,), nanoseconds
    first_ns, steps_ns : ndarray, int64, shape (n,), nanoseconds
        Of at least one cell; steps of 0 are rows of one instant.
    """
    cells = np.maximum(np.searchsorted(first_ns, t_ns) - 1, 0)
    behind, steps = t_ns - first_ns[cells], steps_ns[cells]
    within = np.where(behind > 0, -(-behind // np.maximum(steps, 1)), 0)
    within[(steps == 0) & (behind > 0)] = FIRST_CELL
    counted: NDArray[np.int64] = cells * FIRST_CELL + np.minimum(within, FIRST_CELL)
    return counted


def _sums() -> tuple[np.uint64, np.uint64, np.uint64]:
    """Give what a first time, a step and an upper half count in a check, modulo 2^64."""
    keys, high_keys = key_sums(FIRST_CELL)
    return keys.sum(), (keys * _STEPS.astype(np.uint64)).sum(), high_keys.sum()
