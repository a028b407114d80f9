"""Edges: the instant between two readings at which it happened."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray


def _between(t_ns: NDArray[np.int64], index: int, part: float) -> int:
    before, after = int(t_ns[index - 1]), int(t_ns[index])
    return before + round(min(max(part, 0.0), 1.0) * (after - before))


def threshold_edge(
    t_ns: NDArray[np.int64], values: NDArray[np.float64], index: int, threshold: float
) -> int:
    """Give the instant at which ``values`` passed ``threshold`` before row ``index``.

    Linear interpolation between rows ``index`` - 1 and ``index``; clipped to these two.
    """
    before, after = float(values[index - 1]), float(values[index])
    step = after - before
    return _between(t_ns, index, (threshold - before) / step if step else 1.0)


def _half_level(
    t_ns: NDArray[np.int64], values: NDArray[np.float64], index: int, level: float
) -> int | None:
    before, after = float(values[index - 1]), float(values[index])
    if (before >= level) == (after >= level):
        return None
    return _between(t_ns, index, (level - before) / (after - before))


def fall_edge(t_ns: NDArray[np.int64], amps: NDArray[np.float64], index: int) -> int:
    """Give the instant at which the current went, where row ``index`` is the first without.

    Half-way down from the level before. A meter that averages over its interval turns a step
    into a ramp of one reading; the ramp passes half its height when the step happened, whereas
    it reaches a threshold near zero up to one interval too late. The level before is the larger
    of the two readings before, as the nearer one may be that ramp.

    Parameters
    ----------
    t_ns : ndarray, int64, shape (n,), nanoseconds
    amps : ndarray, float64, shape (n,)
        Size of the current; n > index >= 1.
    index : int
    """
    far = float(amps[index - 2]) if index >= 2 else 0.0
    if not np.isfinite(far):
        far = 0.0
    half = (max(float(amps[index - 1]), far) + float(amps[index])) / 2.0
    at = _half_level(t_ns, amps, index, half)
    if at is None and index >= 2:
        at = _half_level(t_ns, amps, index - 1, half)
    return int(t_ns[index]) if at is None else at


def rise_edge(t_ns: NDArray[np.int64], amps: NDArray[np.float64], index: int) -> int:
    """Give the instant at which the current came, where row ``index`` is the first with it.

    Half-way up to the larger of that reading and the next; see :func:`fall_edge`.
    """
    beyond = float(amps[index + 1]) if index + 1 < len(amps) else 0.0
    if not np.isfinite(beyond):
        beyond = 0.0
    half = (max(float(amps[index]), beyond) + float(amps[index - 1])) / 2.0
    at = _half_level(t_ns, amps, index, half)
    if at is None and index + 1 < len(amps):
        at = _half_level(t_ns, amps, index + 1, half)
    return int(t_ns[index]) if at is None else at
