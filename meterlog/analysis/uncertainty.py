"""Uncertainty of a mean reading: the meter's accuracy statement and the scatter together."""

from __future__ import annotations

import math
from dataclasses import dataclass
from itertools import pairwise

from meterlog.model import Accuracy, Verdict

# t for 95.45 %: JCGM 100:2008, table G.2, last columns (as EA-4/02 M:2022, table E.1).
_STUDENT = (
    (1.0, 13.97), (2.0, 4.53), (3.0, 3.31), (4.0, 2.87), (5.0, 2.65), (6.0, 2.52), (7.0, 2.43),
    (8.0, 2.37), (10.0, 2.28), (20.0, 2.13), (50.0, 2.05), (math.inf, 2.00),
)  # fmt: skip


def coverage_factor(degrees: float) -> float:
    """Give the coverage factor k for about 95 % (95.45 %).

    Parameters
    ----------
    degrees : float
        Degrees of freedom, at least 1 (less counts as 1); may be infinite.

    Source
    ------
    JCGM 100:2008, table G.2; between its rows linear in 1 / degrees.
    """
    inverse = 1.0 / max(degrees, 1.0)
    for (above, k_above), (below, k_below) in pairwise(_STUDENT):
        if inverse >= 1.0 / below:
            part = (1.0 / above - inverse) / (1.0 / above - 1.0 / below)
            return k_above + part * (k_below - k_above)
    return _STUDENT[-1][1]


@dataclass(frozen=True, slots=True)
class Stated:
    """What the uncertainty of a mean is made of besides the scatter of its readings.

    Attributes
    ----------
    accuracy : Accuracy or None
        None when nobody has stated it.
    zero_u : float, unit of the channel
        Standard uncertainty of the mean that was subtracted as zero.
    zero_degrees : float
        Its degrees of freedom.
    drift : float, unit of the channel
        So far the zero taken next lies away: the half-width of what it may have been meanwhile.
    """

    accuracy: Accuracy | None
    zero_u: float = 0.0
    zero_degrees: float = math.inf
    drift: float = 0.0


@dataclass(frozen=True, slots=True)
class Uncertainty:
    """Expanded uncertainty, in the unit of the value, and the coverage factor it was made with."""

    expanded: float
    coverage: float


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


def uncertainty_of_mean(
    value: float, n: int, sd: float | None, lag1: float | None, stated: Stated
) -> Uncertainty | None:
    """Give the expanded uncertainty (about 95 %) of the mean of n readings.

    Parameters
    ----------
    value : float, unit of the channel
        The mean.
    n : int
    sd : float or None, unit of the channel
        Experimental standard deviation of the readings; None for a single one.
    lag1 : float or None
        Lag-1 autocorrelation.
    stated : Stated
        Without an accuracy the result holds the scatters alone.

    Returns
    -------
    Uncertainty or None
        None when neither scatter nor accuracy is known.

    Source
    ------
    Type A, of the readings and of those that made the zero: JCGM 100:2008, 4.2.3. Type B,
    accuracy and drift of the zero: rectangular, half-width / sqrt(3), 4.3.7, taken as exactly
    known. Combination: 5.1.2; effective degrees of freedom (Welch-Satterthwaite): G.4.1.
    """
    if sd is None and stated.accuracy is None:
        return None
    count = effective_count(n, lag1)
    scatter = 0.0 if sd is None else sd / math.sqrt(count)
    half = 0.0 if stated.accuracy is None else stated.accuracy.half_width(value)
    combined = math.hypot(
        scatter, stated.zero_u, half / math.sqrt(3.0), stated.drift / math.sqrt(3.0)
    )
    shares = (
        scatter**4 / max(count - 1.0, 1.0),
        stated.zero_u**4 / max(stated.zero_degrees, 1.0),
    )
    k = coverage_factor(combined**4 / sum(shares) if sum(shares) > 0.0 else math.inf)
    return Uncertainty(k * combined, k)


def within(
    value: float, expanded_uncertainty: float | None, low: float | None, high: float | None
) -> tuple[Verdict, float | None]:
    """Compare a value with limits.

    Parameters
    ----------
    value, low, high : float
        In one unit; None leaves that side open.
    expanded_uncertainty : float or None
        None counts as 0.

    Returns
    -------
    tuple of Verdict and float or None
        ``fail`` only when the whole interval value ± U is outside, ``pass`` only when it is
        inside, else ``can't tell``; and the limit that decided (the nearer one).

    Source
    ------
    Decision with guard bands on both sides, w = U: JCGM 106:2012, 8.3.2 and 8.3.3.
    """
    u = expanded_uncertainty or 0.0
    distances = [(abs(value - limit), limit) for limit in (low, high) if limit is not None]
    nearest = min(distances)[1] if distances else None
    if (high is not None and value - u > high) or (low is not None and value + u < low):
        return Verdict.FAIL, high if high is not None and value - u > high else low
    if (high is None or value + u <= high) and (low is None or value - u >= low):
        return Verdict.PASS, nearest
    return Verdict.CANT_TELL, nearest
