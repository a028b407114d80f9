"""Coverage: the factor that makes an expanded uncertainty of a standard one, and why that."""

from __future__ import annotations

import math
from collections.abc import Sequence

from meterlog.analysis.budgets.posterior import part_within
from meterlog.analysis.budgets.shares import Share, Spread, effective_degrees, in_parts, spread_of
from meterlog.analysis.uncertainty import COVERAGE, coverage_factor

_BOUNDED = 0.95
"""Where rectangles dominate, the guide states its 95 % as 95 %, not as the 95.45 % of k = 2."""
_MANY_DEGREES = 1000.0
_EXACT = 1e-4
"""So little short of the probability asked for is none."""
_HALVINGS = 24
_LEAST = 1e-150


def coverage(shares: Sequence[Share], probability: float = COVERAGE) -> tuple[float, str]:
    """Give the coverage factor for the combined standard uncertainty, and how it was found.

    Parameters
    ----------
    shares : sequence of Share
    probability : float
        About 95 % unless said otherwise.

    Returns
    -------
    tuple of float and str

    Source
    ------
    EA-4/02 M:2022, supplement 2: one dominant rectangle, S9.14; two, S10.13 and S10.14, both with
    the factor on the combined uncertainty. That leaves out that the rest blurs the edges: at the
    most rest it allows for, its 95 % hold 92.7 %. So the factor is raised to what holds the
    probability of the rectangles and a normal rest together (JCGM 101:2008, 5.2 and 7.7). All
    else: Student's t, JCGM 100:2008, G.3 and G.4.
    """
    bounded = _BOUNDED if probability == COVERAGE else probability
    spread = spread_of(shares)
    if len(spread.halves) == 1:
        together = ": the lines of one accuracy statement are one rectangle" * in_parts(shares)
        k, blurred = _blurred(bounded * math.sqrt(3.0), spread, bounded)
        return k, f"one rectangular source dominates (EA-4/02, S9){blurred}{together}"
    if len(spread.halves) == 2:
        k, blurred = _blurred(_trapezoid(spread, bounded), spread, bounded)
        return k, f"two rectangular sources dominate (EA-4/02, S10){blurred}"
    degrees = effective_degrees(shares)
    k = coverage_factor(degrees, probability)
    if degrees > _MANY_DEGREES:
        return k, f"normal distribution, {100.0 * probability:.4g} %"
    return k, f"Student's t for {degrees:.1f} effective degrees of freedom"


def _blurred(sharp: float, spread: Spread, probability: float) -> tuple[float, str]:
    """Raise the factor of sharp-edged rectangles until it holds the probability with the rest."""
    combined = math.hypot(*spread.halves, math.sqrt(3.0) * spread.rest) / math.sqrt(3.0)
    if not _LEAST < combined < 1.0 / _LEAST:
        return sharp, ""  # a broken value: there is nothing to be fine about
    if part_within(sharp * combined, spread) >= probability - _EXACT:
        return sharp, ""
    low, high = sharp * combined, sum(spread.halves) + 3.0 * spread.rest
    for _ in range(_HALVINGS):
        middle = (low + high) / 2.0
        if part_within(middle, spread) < probability:
            low = middle
        else:
            high = middle
    return high / combined, ", its edges blurred by the rest"


def _trapezoid(spread: Spread, probability: float) -> float:
    edge = spread.edge
    if probability / (2.0 - probability) < edge:
        reach = probability * (1.0 + edge) / 2.0
    else:
        reach = 1.0 - math.sqrt((1.0 - probability) * (1.0 - edge * edge))
    return reach / math.sqrt((1.0 + edge * edge) / 6.0)
