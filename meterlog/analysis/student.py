"""Student: distribution function and quantile of Student's t, for any degrees of freedom."""

from __future__ import annotations

import math
from functools import lru_cache
from statistics import NormalDist

NORMAL = NormalDist()
_EXACTLY_NORMAL = 1e15
_MANY = 2000.0
"""From so many degrees of freedom on, Fisher's expansion is exact to 1e-12."""


def student_cdf(t: float, degrees: float) -> float:
    """Give the probability that Student's t with ``degrees`` degrees of freedom is at most ``t``.

    Parameters
    ----------
    t : float
    degrees : float
        Above 0, whole or not; infinite for the normal distribution.

    Source
    ------
    By the incomplete beta function: NIST Digital Library of Mathematical Functions, 8.17, its
    continued fraction 8.17.22. Beyond 2000 degrees: R. A. Fisher, "Expansion of Student's integral
    in powers of n^-1", Metron 5 (1925), three terms (from memory).
    """
    if t == 0.0 or math.isinf(t):
        return 0.5 if t == 0.0 else float(t > 0.0)
    if degrees >= _MANY:
        return _near_normal(t, degrees)
    a, square = degrees / 2.0, t * t
    x, rest = degrees / (degrees + square), square / (degrees + square)
    log_front = _log_gamma_step(a) - 0.5 * math.log(math.pi) - a * math.log1p(square / degrees)
    front = math.exp(log_front + 0.5 * math.log(rest)) if rest > 0.0 else 0.0
    if x < (a + 1.0) / (a + 2.5):
        tail = front * _fraction(a, 0.5, x) / a
    else:
        tail = 1.0 - 2.0 * front * _fraction(0.5, a, rest)
    return 1.0 - tail / 2.0 if t > 0.0 else tail / 2.0


@lru_cache(maxsize=64)
def student_quantile(probability: float, degrees: float) -> float:
    """Give the t that is not exceeded with ``probability``.

    Parameters
    ----------
    probability : float
        Between 0 and 1, both excluded.
    degrees : float
        Above 0; may be infinite.

    Raises
    ------
    ValueError
        If the probability is not between 0 and 1.

    Source
    ------
    Inverse of :func:`student_cdf` by Newton's method, halving where that leaves the interval.
    """
    if probability < 0.5:
        return -student_quantile(1.0 - probability, degrees)
    if not probability < 1.0:
        raise ValueError(f"a probability of {probability} has no quantile")
    low, high = 0.0, math.inf
    t = _first_guess(probability, degrees)
    for _ in range(200):
        off = student_cdf(t, degrees) - probability
        low, high = (t, high) if off < 0.0 else (low, t)
        density = math.exp(_log_density(t, degrees))
        newton = t - off / density if density > 0.0 else high
        following = newton if low < newton < high else (low + min(high, 3.0 * t + 1.0)) / 2.0
        if abs(following - t) <= 1e-12 * max(t, 1e-3):
            return following
        t = following
    return t


def _first_guess(probability: float, degrees: float) -> float:
    """Start near: Abramowitz and Stegun, "Handbook of Mathematical Functions", 26.7.5."""
    x, nu = NORMAL.inv_cdf(probability), max(degrees, 1.0)
    third = (5.0 * x**5 + 16.0 * x**3 + 3.0 * x) / 96.0
    return max(x + (x**3 + x) / 4.0 / nu + third / nu**2, 1e-3)


def _log_density(t: float, degrees: float) -> float:
    if degrees > _EXACTLY_NORMAL:
        return -0.5 * (t * t + math.log(2.0 * math.pi))
    shape = _log_gamma_step(degrees / 2.0) - 0.5 * math.log(math.pi * degrees)
    return shape - (degrees + 1.0) / 2.0 * math.log1p(t * t / degrees)


def _log_gamma_step(a: float) -> float:
    """Give log gamma(a + 1/2) - log gamma(a), without loss for large ``a``."""
    if a < 50.0:
        return math.lgamma(a + 0.5) - math.lgamma(a)
    b = 1.0 / a
    return 0.5 * math.log(a) - b / 8.0 + b**3 / 192.0 - b**5 / 640.0


def _fraction(a: float, b: float, x: float) -> float:
    """Give the continued fraction of the incomplete beta function (Lentz's evaluation)."""
    tiny = 1e-300
    c, d = 1.0, 1.0 - (a + b) * x / (a + 1.0)
    d = 1.0 / (d if abs(d) > tiny else tiny)
    value = d
    for m in range(1, 1000):
        for term in (
            m * (b - m) * x / ((a + 2 * m - 1) * (a + 2 * m)),
            -(a + m) * (a + b + m) * x / ((a + 2 * m) * (a + 2 * m + 1)),
        ):
            d = 1.0 + term * d
            c = 1.0 + term / c
            d = 1.0 / (d if abs(d) > tiny else tiny)
            c = c if abs(c) > tiny else tiny
            value *= d * c
        if abs(d * c - 1.0) < 1e-15:
            break
    return value


def _near_normal(t: float, degrees: float) -> float:
    s = t * t
    terms = (
        t * (s + 1.0) / 4.0,
        t * (3.0 * s**3 - 7.0 * s**2 - 5.0 * s - 3.0) / 96.0,
        t * (s**5 - 11.0 * s**4 + 14.0 * s**3 + 6.0 * s**2 - 3.0 * s - 15.0) / 384.0,
    )
    off = sum(term / degrees ** (k + 1) for k, term in enumerate(terms)) if s < 1500.0 else 0.0
    return min(max(NORMAL.cdf(t) - NORMAL.pdf(t) * off, 0.0), 1.0)
