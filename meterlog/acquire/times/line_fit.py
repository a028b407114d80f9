"""LineFit: the straight line of least squares through points, with its uncertainty."""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

FEWEST = 2
"""Points a line needs; from one more on, its uncertainty can be told."""


@dataclass(frozen=True, slots=True)
class LineFit:
    """The line y = intercept + slope x.

    Attributes
    ----------
    slope : float, unit of y per unit of x
    intercept : float, unit of y
    slope_u, intercept_u : float or None
        Standard uncertainties from the scatter about the line; None with two points.
    scatter : float or None, unit of y
        Residual standard deviation, n - 2 degrees of freedom; None with two points.
    points : int
    """

    slope: float
    intercept: float
    slope_u: float | None
    intercept_u: float | None
    scatter: float | None
    points: int


def fit_line(x: NDArray[np.float64], y: NDArray[np.float64]) -> LineFit | None:
    """Give the line of least squares.

    Parameters
    ----------
    x, y : ndarray, float64, shape (n,)
        All errors are taken to be in y, alike and independent.

    Returns
    -------
    LineFit or None
        None when there are fewer than two different x.

    Source
    ------
    Simple linear regression about the means, as in any textbook; checked against the certified
    values of NIST StRD, data set Norris, by ``tests/reference/test_line_fit.py``.
    """
    count = len(x)
    if count < FEWEST:
        return None
    # About the means: with the raw sums a line far from the origin would lose its digits.
    mean_x, mean_y = float(x.mean()), float(y.mean())
    from_x, from_y = x - mean_x, y - mean_y
    spread = float(from_x @ from_x)
    if spread <= 0.0:
        return None
    slope = float(from_x @ from_y) / spread
    intercept = mean_y - slope * mean_x
    if count == FEWEST:
        return LineFit(slope, intercept, None, None, None, count)
    left = from_y - slope * from_x
    scatter = math.sqrt(float(left @ left) / (count - 2))
    slope_u = scatter / math.sqrt(spread)
    intercept_u = scatter * math.sqrt(1.0 / count + mean_x * mean_x / spread)
    return LineFit(slope, intercept, slope_u, intercept_u, scatter, count)
