"""Severities: how bad a fault is, by the cells of its severity and by where in each it lies."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from meterlog.circuit.figures import Floats
from meterlog.circuit.hypotheses import Cells

_EDGE = float(np.sqrt(3.0))
"""The edge of a cell, in standard deviations of what is spread evenly in it."""
_STEPS = 201
_LEAST_SD = 0.02
"""So that the steps can tell it."""


@dataclass(frozen=True, slots=True)
class Severity:
    """Median and about 95 % of a severity, in the unit of its mode."""

    median: float
    low: float
    high: float


def severity_of(
    cells: Cells, hypothesis: int, weights: Floats, place: Floats, variance: Floats
) -> Severity | None:
    """Give the severity of the first fault of a hypothesis.

    Within a cell the logarithm of the severity is spread evenly before anything is read; what was
    read multiplies that by a normal density. The result is what the cells have together.

    Parameters
    ----------
    cells : Cells
    hypothesis : int
    weights : float64[cells]
    place, variance : float64[cells]
        Mean and variance of the place within each cell, given the readings, as if it had been
        normal with mean 0 and variance 1 before them.

    Returns
    -------
    Severity or None
        None where the mode has none, or the hypothesis is out of the question.
    """
    own = np.flatnonzero(cells.hypothesis == hypothesis)
    own = own[np.isfinite(cells.severity[own, 0]) & (weights[own] > 0.0)]
    if not len(own):
        return None
    steps = np.linspace(-_EDGE, _EDGE, _STEPS)
    # What the readings say is the normal posterior over its normal prior; times an even one.
    spread = np.maximum(variance[own], _LEAST_SD**2)
    pull, precision = place[own] / spread, np.maximum(1.0 / spread - 1.0, 0.0)
    log = pull[:, None] * steps - 0.5 * precision[:, None] * steps**2
    log += (np.log(weights[own]) - 0.5 * np.log(spread) - 0.5 * place[own] * pull)[:, None]
    share = np.exp(log - log.max())
    width = cells.half_width[own, None] / _EDGE
    value = (np.log(cells.severity[own, 0])[:, None] + width * steps).ravel()
    order = np.argsort(value, kind="stable")
    part = np.cumsum(share.ravel()[order])
    at = np.searchsorted(part, part[-1] * np.array([0.5, 0.025, 0.975]))
    median, low, high = np.exp(value[order][np.minimum(at, len(order) - 1)])
    return Severity(float(median), float(low), float(high))
