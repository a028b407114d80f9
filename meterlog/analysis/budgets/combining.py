"""Combining: from the lines of a budget to one expanded uncertainty."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from meterlog.analysis.budgets.coverage import coverage
from meterlog.analysis.budgets.shares import combined_u, effective_degrees, shares_of
from meterlog.analysis.uncertainty import COVERAGE
from meterlog.model import Budget, Source


def budget(
    name: str,
    value: float,
    unit: str,
    sources: Sequence[Source],
    lacking: str = "",
    probability: float = COVERAGE,
) -> Budget:
    """Give the budget of a value.

    Parameters
    ----------
    name : str
        What the value is.
    value : float, in ``unit``
    unit : str
    sources : sequence of Source
        Those with one key are one error: their contributions are added with their signs before
        they are squared. All others are independent.
    lacking : str
        What ought to be in and is not known.
    probability : float
        Coverage probability: about 95 % unless said otherwise.

    Returns
    -------
    Budget
        Without sources its uncertainty is 0, which means that nothing is known of it.

    Source
    ------
    Combination with correlation +1 or -1: JCGM 100:2008, 5.2.2. Effective degrees of freedom and
    coverage factor: see :func:`effective_degrees` and :func:`coverage`.
    """
    shares = shares_of(sources)
    combined = combined_u(shares)
    k, reason = coverage(shares, probability)
    return Budget(
        name=name,
        value=value,
        unit=unit,
        sources=tuple(sources),
        combined_u=combined,
        degrees=effective_degrees(shares),
        coverage=k,
        expanded=k * combined,
        reason=reason,
        lacking=lacking,
    )


def combine(
    name: str,
    value: float,
    unit: str,
    parts: Sequence[tuple[Budget, float]],
    extra: Sequence[Source] = (),
) -> Budget:
    """Give the budget of a value that is made of others.

    Parameters
    ----------
    name : str
    value : float, in ``unit``
    unit : str
    parts : sequence of (Budget, float)
        Each with the sensitivity of ``value`` to it, sign included: for a difference 1 and -1, for
        a product the other factor. What two parts share (one meter, one clamp) is known by the
        keys of their sources.
    extra : sequence of Source
        What comes in besides.

    Returns
    -------
    Budget
        What its parts lack, it lacks.

    Source
    ------
    Law of propagation: JCGM 100:2008, 5.1.2 and 5.2.2.
    """
    sources = [
        replace(source, sensitivity=source.sensitivity * sensitivity)
        for part, sensitivity in parts
        for source in part.sources
    ]
    lacking = "; ".join(dict.fromkeys(words for part, _ in parts for words in _told(part)))
    return budget(name, value, unit, (*sources, *extra), lacking)


def _told(part: Budget) -> list[str]:
    return [words for words in part.lacking.split("; ") if words]
