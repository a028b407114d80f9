"""Alarm: from how many deviations on a reading is no chance, so that false alarms stay rare."""

from __future__ import annotations

import math
from statistics import NormalDist

BUDGET = 0.2
"""False alarms in :data:`BUDGET_S` that normal noise may make. The promise is one in ten hours
over everything that looks for something; noise that is not quite normal takes the rest."""
BUDGET_S = 36_000.0
LEAST_PART = 0.03
"""A smaller departure of the base is passed over whatever the noise: air and supply do as much."""
FASTEST_S = 0.005
"""Only meters with an interval or an averaging time from this on are looked at. A faster one has a
reading inside any open that the drive would feel, and what it shows of shorter ones is the
commutator's business: a fan's bars pass every 1.4 to 5 ms."""
_SIDES = 2.0
"""Falls and rises are both looked for."""


def alarm_deviations(interval_s: float, degrees: float) -> float:
    """Give how many standard deviations a single reading must stand out.

    Parameters
    ----------
    interval_s : float, seconds
        From one reading to the next: the faster they come, the more of them stand out by chance.
    degrees : float
        Degrees of freedom with which the deviation is known; 1 or more.

    Source
    ------
    Bonferroni's inequality over all readings of :data:`BUDGET_S`. From the normal quantile to
    Student's t: D. L. Wallace, "Bounds on Normal Approximations to Student's and the Chi-square
    Distributions", Annals of Mathematical Statistics 30 (1959), the form used by M. Bailey
    (from memory); held against scipy in ``tests/reference/test_alarm_student.py``: within 5 % from
    seven degrees on, and too high rather than too low below.
    """
    chance = BUDGET * interval_s / BUDGET_S / _SIDES
    return student_from_normal(NormalDist().inv_cdf(1.0 - min(chance, 0.5)), degrees)


def student_from_normal(z: float, degrees: float) -> float:
    """Give the quantile of Student's t that has the same tail as the normal quantile ``z``.

    Parameters
    ----------
    z : float
    degrees : float
        Infinite gives ``z``.

    Source
    ------
    See :func:`alarm_deviations`.
    """
    if math.isinf(degrees):
        return z
    stretched = z * (8.0 * degrees + 3.0) / (8.0 * degrees + 1.0)
    return math.copysign(math.sqrt(degrees * math.expm1(stretched * stretched / degrees)), z)
