"""Uncertainty of a mean reading: the meter's accuracy statement and the scatter together."""

from __future__ import annotations

import math

from meterlog.model import Accuracy, Verdict

COVERAGE = 2.0
"""Coverage factor k for about 95 %."""


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


def expanded(
    value: float, n: int, sd: float | None, lag1: float | None, accuracy: Accuracy | None
) -> float | None:
    """Give the expanded uncertainty (k = 2) of the mean of n readings.

    Parameters
    ----------
    value : float, unit of the channel
        The mean.
    n : int
    sd : float or None, unit of the channel
        Experimental standard deviation of the readings.
    lag1 : float or None
    accuracy : Accuracy or None
        None when nobody has stated it; the result then holds the scatter alone.

    Returns
    -------
    float or None, unit of the channel
        None when neither scatter nor accuracy is known.

    Source
    ------
    Type A: JCGM 100:2008, 4.2.3. Type B: rectangular, half-width / sqrt(3), 4.3.7.
    Combination: 5.1.2; k = 2: 6.3.3.
    """
    if sd is None and accuracy is None:
        return None
    scatter = 0.0 if sd is None else sd / math.sqrt(effective_count(n, lag1))
    stated = 0.0 if accuracy is None else accuracy.half_width(value) / math.sqrt(3.0)
    return COVERAGE * math.hypot(scatter, stated)


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
