"""Posterior: how probable it is that the true value lies below a limit."""

from __future__ import annotations

import math

from meterlog.analysis.budgets.shares import Spread, shares_of, spread_of
from meterlog.analysis.student import NORMAL, student_cdf
from meterlog.model import Budget


def probability_below(value: Budget, limit: float) -> float:
    """Give the probability that the true value is at most ``limit``.

    Parameters
    ----------
    value : Budget
        The true value is taken to be spread about it as its coverage factor has it: by Student's
        t scaled with the combined uncertainty, or by the one or two rectangles that dominate, each
        blurred by a normal distribution for the rest.
    limit : float, in the value's unit

    Source
    ------
    JCGM 106:2012, 7 (the distribution assigned to the measurand); scaled and shifted t: JCGM
    101:2008, 6.4.9. Rectangles blurred: integrals of the normal distribution function.
    """
    off = limit - value.value
    if value.combined_u <= 0.0:
        return float(off >= 0.0)
    spread = spread_of(shares_of(value.sources))
    if not spread.halves:
        return student_cdf(off / value.combined_u, value.degrees)
    return min(max(_blurred(off, spread), 0.0), 1.0)


def _blurred(off: float, spread: Spread) -> float:
    wide, narrow = spread.halves[0], spread.halves[1] if len(spread.halves) == 2 else 0.0
    rest = max(spread.rest, 1e-6 * wide)
    if not narrow:
        above, below = _once((off + wide) / rest), _once((off - wide) / rest)
        return rest * (above - below) / (2.0 * wide)
    corners = (
        _twice((off + wide + narrow) / rest)
        - _twice((off + wide - narrow) / rest)
        - _twice((off - wide + narrow) / rest)
        + _twice((off - wide - narrow) / rest)
    )
    return rest * rest * corners / (4.0 * wide * narrow)


def _once(z: float) -> float:
    """Integrate the normal distribution function up to z."""
    return z * NORMAL.cdf(z) + math.exp(-0.5 * z * z) / math.sqrt(2.0 * math.pi)


def _twice(z: float) -> float:
    """Integrate it twice."""
    return 0.5 * (z * _once(z) + NORMAL.cdf(z))
