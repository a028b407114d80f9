"""Posterior: how probable it is that the true value lies below a limit."""

from __future__ import annotations

import math

from meterlog.analysis.budgets.shares import Spread, shares_of, spread_of
from meterlog.analysis.student import NORMAL, student_cdf
from meterlog.model import Budget

_FAR = 10.0
"""So many half-widths away a rectangle that dominates what blurs it has ended."""


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


def part_within(reach: float, spread: Spread) -> float:
    """Give the part, 0 to 1, of one or two blurred rectangles that lies within ± ``reach``."""
    return min(max(_blurred(reach, spread) - _blurred(-reach, spread), 0.0), 1.0)


def _blurred(off: float, spread: Spread) -> float:
    # All in parts of the wider rectangle, so that no size of it runs over or under.
    wide = spread.halves[0]
    at, rest = off / wide, max(spread.rest / wide, 1e-6)
    if not abs(at) < _FAR:
        return float(at > 0.0)
    if len(spread.halves) == 1:
        return rest * (_once((at + 1.0) / rest) - _once((at - 1.0) / rest)) / 2.0
    narrow = max(spread.halves[1] / wide, 1e-6)
    corners = (
        _twice((at + 1.0 + narrow) / rest)
        - _twice((at + 1.0 - narrow) / rest)
        - _twice((at - 1.0 + narrow) / rest)
        + _twice((at - 1.0 - narrow) / rest)
    )
    return rest * rest * corners / (4.0 * narrow)


def _once(z: float) -> float:
    """Integrate the normal distribution function up to z."""
    return z * NORMAL.cdf(z) + math.exp(-0.5 * z * z) / math.sqrt(2.0 * math.pi)


def _twice(z: float) -> float:
    """Integrate it twice."""
    return 0.5 * (z * _once(z) + NORMAL.cdf(z))
