"""Uncertainty: the coverage factor, and what correlated readings are worth."""

from __future__ import annotations

import math

from meterlog.analysis.student import student_quantile

_TWO_SIGMA = math.erf(math.sqrt(2.0))

COVERAGE = 0.9545
"""The coverage probability of expanded uncertainties: about 95 %, k = 2 for many readings."""


def coverage_factor(degrees: float, probability: float = COVERAGE) -> float:
    """Give the coverage factor k for about 95 % (95.45 %).

    Parameters
    ----------
    degrees : float
        Degrees of freedom, at least 1 (less counts as 1), whole or not; may be infinite.
    probability : float
        That the true value is within ± k standard uncertainties.

    Source
    ------
    JCGM 100:2008, G.3.2 and table G.2: Student's t, here for the degrees as they are (G.4.1 allows
    to interpolate as well as to cut them to whole ones). For infinitely many, 2 exactly at 95.45 %,
    as the guide has it.
    """
    if probability == COVERAGE:
        probability = _TWO_SIGMA
    return student_quantile((1.0 + probability) / 2.0, max(degrees, 1.0))


def effective_count(n: int, lag1: float | None) -> float:
    """Give how many independent readings n correlated ones are worth.

    Parameters
    ----------
    n : int
    lag1 : float or None
        Lag-1 autocorrelation; None counts as 0. Negative correlation is not credited.

    Returns
    -------
    float
        n (1 - r) / (1 + r), at least 1.

    Source
    ------
    First-order autoregressive model: G. E. P. Box, G. M. Jenkins, G. C. Reinsel, "Time Series
    Analysis", 3rd ed., section 2.1; the need for it: JCGM 100:2008, 4.2.7. From memory.
    """
    r = min(max(lag1 or 0.0, 0.0), 0.999_999)
    return max(1.0, n * (1.0 - r) / (1.0 + r))
