"""Outliers: which of a few values do not belong to the others."""

from __future__ import annotations

import math

import numpy as np
from numpy.typing import NDArray

from meterlog.analysis.student import student_cdf, student_quantile


def outliers(values: NDArray[np.float64], most: int, chance: float) -> list[int]:
    """Give the places of values that are too far from the others, the farthest first.

    Parameters
    ----------
    values : ndarray, float64, shape (n,)
        At least 4; the others are taken to be scattered normally.
    most : int
        So many are looked for at most.
    chance : float
        With which any is found among values that all belong together.

    Source
    ------
    Generalized extreme Studentized deviate test: B. Rosner, Technometrics 25 (1983) 165; as in
    NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.5.17.3. It is made for several at once:
    one may hide the other from simpler tests.
    """
    left = list(range(len(values)))
    removed: list[int] = []
    found = 0
    for number in range(1, min(most, len(values) - 3) + 1):
        part = values[left]
        spread = float(part.std(ddof=1))
        if not spread > 0.0:
            break
        away = np.abs(part - part.mean())
        worst = int(np.argmax(away))
        ratio = float(away[worst]) / spread
        removed.append(left.pop(worst))
        if ratio > critical_ratio(len(values), number, chance):
            found = number
    return removed[:found]


def critical_ratio(count: int, number: int, chance: float) -> float:
    """Give the largest deviation, in standard deviations, that the ``number``-th may have."""
    rest = count - number
    t = student_quantile(1.0 - chance / (2.0 * (rest + 1)), rest - 1)
    return rest * t / math.sqrt((rest - 1 + t * t) * (rest + 1))


def chance_beside(value: float, others: NDArray[np.float64], tried: int) -> float:
    """Give the probability that one of ``tried`` further values lies as far off as ``value``.

    Source
    ------
    Prediction of one further value: Student's t with n - 1 degrees of freedom, s sqrt(1 + 1/n);
    any textbook of statistics. Times the number tried: C. E. Bonferroni's inequality.
    """
    count = len(others)
    spread = float(others.std(ddof=1)) * math.sqrt(1.0 + 1.0 / count)
    if not spread > 0.0:
        return 0.0
    t = abs(value - float(others.mean())) / spread
    return min(1.0, 2.0 * student_cdf(-t, count - 1) * tried)
