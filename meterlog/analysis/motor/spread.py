"""Spread: what the errors of the points make of the figures, with what they share."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray

from meterlog.analysis.motor.points import Point
from meterlog.model import Budget, Shape, Source

Array = NDArray[np.float64]

BRUSH_SHARE = 0.3
"""The brushes' voltage is known to about this part of itself (common practice, no source)."""

BRUSH_KEY = "motor:brush voltage"

_FLOOR = 1e-4


@dataclass(frozen=True, slots=True, eq=False)
class Errors:
    """The errors of all points, each a column: the same error is the same column.

    Attributes
    ----------
    sources : tuple of Source, length m
        One of each key.
    shares : ndarray, shape (2 n, m)
        What a standard uncertainty of each changes in every voltage, then in every current.
    """

    sources: tuple[Source, ...]
    shares: Array

    def plus(self, sources: Sequence[Source], shares: Array) -> Errors:
        """Add errors, ``shares`` of shape (2 n, number added)."""
        return Errors((*self.sources, *sources), np.hstack((self.shares, shares)))

    def of(self, sensitivities: Array) -> Array:
        """Give what each error makes of figures, shape (figures, m)."""
        made: Array = sensitivities @ self.shares
        return made


def errors_of(points: Sequence[Point]) -> Errors:
    """Gather the errors of points by their keys."""
    values = [one.volts for one in points] + [one.amps for one in points]
    first: dict[str, tuple[int, Source]] = {}
    for value in values:
        for source in value.sources:
            first.setdefault(source.key, (len(first), source))
    shares = np.zeros((len(values), len(first)))
    for row, value in enumerate(values):
        for source in value.sources:
            shares[row, first[source.key][0]] += source.contribution
    return Errors(tuple(source for _, source in first.values()), shares)


def brush_error(count: int, brush_v: float) -> tuple[Source, Array]:
    """Give the error of the brushes' voltage: as if every voltage were off by it the other way."""
    source = Source(
        "voltage over the brushes",
        BRUSH_SHARE * brush_v / math.sqrt(3.0),
        "V",
        shape=Shape.RECTANGULAR,
        key=BRUSH_KEY,
        basis=f"taken as {brush_v:g} V ± {100.0 * BRUSH_SHARE:.0f} %: common practice, no source",
    )
    column = np.zeros((2 * count, 1))
    column[:count] = -source.standard_u
    return source, column


def weights_u(values: Sequence[Budget]) -> Array:
    """Give the standard uncertainties by which points are weighted; never nothing."""
    return np.array([max(one.combined_u, _FLOOR * one.value) for one in values])


def scatter_beyond(
    residuals: Array, leftover: Array, errors: Errors, amps: Array
) -> tuple[float | None, float]:
    """Tell whether the points lie off the curve by more than their errors explain.

    Parameters
    ----------
    residuals : ndarray, shape (n,), amperes
    leftover : ndarray, shape (n, 2 n)
        What a residual changes for one unit of each voltage and current.
    errors : Errors
    amps : ndarray, shape (n,), amperes

    Returns
    -------
    chi2_per_degree : float or None
        None for three points, and where no error is stated that could show in a residual.
    beyond : float, part of the current
        Scatter of a point that its errors don't explain.

    Source
    ------
    Chi-squared with the residuals' own covariance, whose rank is the number of degrees of
    freedom: J. Neter et al. and every text on generalised least squares; what is beyond it is
    taken into the result, not ignored, as by R. T. Birge, Phys. Rev. 40 (1932), 207-227.
    """
    degrees = len(residuals) - 3
    if degrees < 1:
        return None, 0.0
    made = errors.of(leftover)
    expected = made @ made.T
    sizes, directions = np.linalg.eigh(expected)
    seen = float(np.square(residuals / amps).sum()) / degrees
    explained = float((np.diag(expected) / amps**2).sum()) / degrees
    beyond = math.sqrt(max(seen - explained, 0.0))
    used = sizes[-degrees:]
    if used[0] <= 1e-12 * float(np.square(amps).mean()):
        return None, beyond
    turned = directions[:, -degrees:].T @ residuals
    return float((turned**2 / used).sum()) / degrees, beyond


def scatter_errors(points: Sequence[Point], beyond: float) -> tuple[list[Source], Array]:
    """Give the scatter about the curve as one more error of each current, by itself."""
    count = len(points)
    sources, columns = [], np.zeros((2 * count, count))
    for number, point in enumerate(points):
        u = beyond * point.amps.value
        columns[count + number, number] = u
        sources.append(
            Source(
                "scatter about the curve",
                u,
                "A",
                degrees=float(count - 3),
                key=f"step {point.step.start_ns} curve",
                basis="residuals of the fit beyond what the points' own errors explain",
            )
        )
    return sources, columns


def lines_of(errors: Errors, made: Array, unit: str) -> tuple[Source, ...]:
    """Give one figure's errors as lines of a budget, in the figure's unit."""
    return tuple(
        replace(
            source,
            standard_u=abs(float(share)),
            unit=unit,
            sensitivity=math.copysign(1.0, share),
        )
        for source, share in zip(errors.sources, made, strict=True)
        if share
    )
