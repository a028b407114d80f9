"""Combining: from the lines of a budget to one expanded uncertainty."""

from __future__ import annotations

import math
from collections import defaultdict
from collections.abc import Sequence
from dataclasses import replace

from meterlog.analysis.uncertainty import coverage_factor
from meterlog.model import Budget, Source


def budget(
    name: str, value: float, unit: str, sources: Sequence[Source], lacking: str = ""
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

    Returns
    -------
    Budget

    Source
    ------
    Combination with correlation +1 or -1: JCGM 100:2008, 5.2.2. Effective degrees of freedom:
    Welch-Satterthwaite, G.4.1. Coverage factor for 95.45 %: table G.2.
    """
    sums: dict[str, float] = defaultdict(float)
    shares: list[tuple[float, float]] = []
    degrees: dict[str, float] = {}
    for source in sources:
        if source.key:
            sums[source.key] += source.contribution
            degrees[source.key] = source.degrees
        else:
            shares.append((source.contribution, source.degrees))
    shares += [(total, degrees[key]) for key, total in sums.items()]
    combined = math.sqrt(sum(share * share for share, _ in shares))
    loose = sum(share**4 / max(nu, 1.0) for share, nu in shares if math.isfinite(nu))
    effective = combined**4 / loose if loose > 0.0 else math.inf
    k = coverage_factor(effective)
    return Budget(
        name, value, unit, tuple(sources), combined, effective, k, k * combined, lacking=lacking
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

    Source
    ------
    Law of propagation: JCGM 100:2008, 5.1.2 and 5.2.2.
    """
    sources = [
        replace(source, sensitivity=source.sensitivity * sensitivity)
        for part, sensitivity in parts
        for source in part.sources
    ]
    lacking = "; ".join(dict.fromkeys(part.lacking for part, _ in parts if part.lacking))
    return budget(name, value, unit, (*sources, *extra), lacking)
