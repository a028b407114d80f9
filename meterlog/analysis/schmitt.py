"""Hysteresis: a threshold that is left only when passed back by a margin, on whole arrays."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray


def runs(codes: NDArray[np.uint8]) -> NDArray[np.intp]:
    """Give the index at which each run of equal codes begins, shape (runs,)."""
    if not len(codes):
        return np.empty(0, np.intp)
    return np.concatenate(([0], np.flatnonzero(codes[1:] != codes[:-1]) + 1))


def zones(values: NDArray[np.float64], thresholds: Sequence[float]) -> NDArray[np.uint8]:
    """Count for each value how many thresholds it reaches (value >= threshold).

    Parameters
    ----------
    values : ndarray, shape (n,)
    thresholds : sequence of float
        Any order, at most 255.

    Returns
    -------
    ndarray, uint8, shape (n,)
    """
    codes = np.zeros(len(values), np.uint8)
    for threshold in thresholds:
        codes += values >= threshold
    return codes


def hold(inputs: NDArray[np.int8], *, initial: bool) -> NDArray[np.bool_]:
    """Resolve set (+1), clear (-1) and hold (0) to on and off.

    Parameters
    ----------
    inputs : ndarray, int8, shape (n,)
    initial : bool
        The state before the first input.

    Returns
    -------
    ndarray, bool, shape (n,)
        State after each input. Splitting the inputs and passing on the last state gives the
        same answer.
    """
    if inputs.all():  # none to hold, as nearly always
        return inputs > 0
    index = np.where(inputs != 0, np.arange(1, len(inputs) + 1), 0)
    np.maximum.accumulate(index, out=index)
    states: NDArray[np.bool_] = np.concatenate(([initial], inputs > 0))
    return states[index]
