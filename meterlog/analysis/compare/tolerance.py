"""Tolerance: within what good motors lie, told from a few of them."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache
from statistics import NormalDist, fmean, stdev

import numpy as np

from meterlog.analysis.compare.chi_squared import chi_squared_below, chi_squared_quantile
from meterlog.analysis.student import student_quantile

COVERAGE = 0.90
"""The part of good motors that shall lie within."""

CONFIDENCE = 0.95
"""How sure it shall be that they do."""

LEAST = 3
"""Good motors below which no interval is given: of two it would be 31 deviations wide."""

_NORMAL = NormalDist()
_NODES = 96
_REACH = 9.0


def howe_factor(count: int, coverage: float, confidence: float) -> float:
    """Give the two-sided normal tolerance factor by Howe's approximation.

    Parameters
    ----------
    count : int
        At least 2.
    coverage, confidence : float, 0 to 1

    Source
    ------
    W. G. Howe, J. Am. Stat. Assoc. 64 (1969), 610-620, as in the NIST/SEMATECH e-Handbook of
    Statistical Methods, 7.2.6.3, without its correction for small samples.
    """
    z = _NORMAL.inv_cdf((1.0 + coverage) / 2.0)
    chi2 = chi_squared_quantile(1.0 - confidence, count - 1.0)
    return z * math.sqrt((1.0 + 1.0 / count) * (count - 1.0) / chi2)


@lru_cache(maxsize=64)
def tolerance_factor(count: int, coverage: float, confidence: float) -> float:
    """Give the two-sided normal tolerance factor k2, exact: mean ± k2 s.

    Parameters
    ----------
    count : int
        Values that mean and s were made of, at least 2.
    coverage, confidence : float, 0 to 1
        At least ``coverage`` of all values lie within, with ``confidence``.

    Source
    ------
    ISO 16269-6 (the factor for unknown mean and unknown standard deviation); the integral: R. E.
    Odeh, D. B. Owen, "Tables for Normal Tolerance Limits, Sampling Plans, and Screening" (1980).
    From memory; checked against both tables' values and against scipy.
    """
    points, weights = np.polynomial.legendre.leggauss(_NODES)
    places = 0.5 * _REACH * (points + 1.0)
    densities = _REACH * weights * np.array([_NORMAL.pdf(float(one)) for one in places])
    halves = [_half_width(float(one) / math.sqrt(count), coverage) for one in places]
    degrees = count - 1.0

    def sure(factor: float) -> float:
        return sum(
            float(density) * (1.0 - chi_squared_below(degrees * (half / factor) ** 2, degrees))
            for density, half in zip(densities, halves, strict=True)
        )

    guess = howe_factor(count, coverage, confidence)
    low, high = 0.5 * guess, 2.0 * guess
    for _ in range(60):
        middle = 0.5 * (low + high)
        low, high = (middle, high) if sure(middle) < confidence else (low, middle)
        if high - low <= 1e-10 * high:
            break
    return 0.5 * (low + high)


def _half_width(off: float, coverage: float) -> float:
    """Give r such that a normal value lies within ``off`` ± r with probability ``coverage``."""
    half = off + _NORMAL.inv_cdf((1.0 + coverage) / 2.0)
    for _ in range(50):
        miss = _NORMAL.cdf(off + half) - _NORMAL.cdf(off - half) - coverage
        step = miss / (_NORMAL.pdf(off + half) + _NORMAL.pdf(off - half))
        half -= step
        if abs(step) < 1e-13 * half:
            break
    return half


@dataclass(frozen=True, slots=True)
class Interval:
    """Within what good motors lie.

    Attributes
    ----------
    mean, sd : float, amperes
    factor : float or None
        None below :data:`LEAST` motors.
    low, high : float or None, amperes
        At least 90 % of good motors lie within, with 95 % confidence.
    """

    mean: float
    sd: float
    factor: float | None
    low: float | None
    high: float | None


def tolerance_interval(values: Sequence[float]) -> Interval:
    """Give mean, spread and tolerance interval of currents of good motors.

    Parameters
    ----------
    values : sequence of float, amperes
        At least 1; the spread of one is 0.
    """
    mean = fmean(values)
    sd = stdev(values) if len(values) > 1 else 0.0
    if len(values) < LEAST:
        return Interval(mean, sd, None, None, None)
    factor = tolerance_factor(len(values), COVERAGE, CONFIDENCE)
    return Interval(mean, sd, factor, mean - factor * sd, mean + factor * sd)


def grubbs_limit(count: int, risk: float = 0.05) -> float:
    """Give the largest deviation from the mean, in s, that chance allows one of ``count`` values.

    Parameters
    ----------
    count : int
        At least 3.
    risk : float
        How often a sound set may be called one with an outlier.

    Source
    ------
    Grubbs' test, two-sided: NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.5.17.1.
    """
    t = student_quantile(1.0 - risk / (2.0 * count), count - 2.0)
    return (count - 1.0) / math.sqrt(count) * math.sqrt(t * t / (count - 2.0 + t * t))


def outlier(values: Sequence[float]) -> int | None:
    """Give which value stands out from the others beyond chance; None where none does."""
    if len(values) < LEAST:
        return None
    mean, sd = fmean(values), stdev(values)
    if sd <= 0.0:
        return None
    worst = max(range(len(values)), key=lambda one: abs(values[one] - mean))
    return worst if abs(values[worst] - mean) > grubbs_limit(len(values)) * sd else None
