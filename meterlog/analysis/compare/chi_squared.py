"""Chi-squared: its distribution and quantile, as far as a tolerance interval needs them."""

from __future__ import annotations

import math

_ROUNDS = 10_000
_CLOSE = 1e-15
_TINY = 1e-300


def chi_squared_below(value: float, degrees: float) -> float:
    """Give the probability that chi-squared lies at or below ``value``.

    Source
    ------
    Regularised incomplete gamma function P(degrees/2, value/2): series and continued fraction,
    NIST Digital Library of Mathematical Functions, 8.11.4 and 8.9.2.
    """
    a, x = degrees / 2.0, value / 2.0
    if x <= 0.0:
        return 0.0
    front = math.exp(a * math.log(x) - x - math.lgamma(a))
    if x < a + 1.0:
        term = total = 1.0 / a
        for step in range(1, _ROUNDS):
            term *= x / (a + step)
            total += term
            if term < _CLOSE * total:
                break
        return min(front * total, 1.0)
    return max(1.0 - front * _gamma_fraction(a, x), 0.0)


def _gamma_fraction(a: float, x: float) -> float:
    """Give Gamma(a, x) / (x^a e^-x), x at least a + 1, by Lentz's method."""
    b = x + 1.0 - a
    c, d = 1.0 / _TINY, 1.0 / b
    fraction = d
    for step in range(1, _ROUNDS):
        numerator = -step * (step - a)
        b += 2.0
        d = 1.0 / (numerator * d + b or _TINY)
        c = b + numerator / c or _TINY
        fraction *= d * c
        if abs(d * c - 1.0) < _CLOSE:
            break
    return fraction


def chi_squared_quantile(probability: float, degrees: float) -> float:
    """Give the value below which chi-squared lies with ``probability`` (0 to 1, both excluded)."""
    low, high = 0.0, max(degrees, 1.0)
    while chi_squared_below(high, degrees) < probability:
        low, high = high, 2.0 * high
    for _ in range(200):
        middle = 0.5 * (low + high)
        if chi_squared_below(middle, degrees) < probability:
            low = middle
        else:
            high = middle
        if high - low <= 1e-14 * high:
            break
    return 0.5 * (low + high)
