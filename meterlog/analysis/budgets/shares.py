"""Shares: the lines of a budget brought to what is independent of each other, and their shape."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from meterlog.model import Shape, Source

DOMINATES = 0.3
"""What is left besides a dominant source, as a part of it (EA-4/02 M:2022, S9.14 and S10.13)."""


@dataclass(frozen=True, slots=True)
class Share:
    """One independent part of a combined uncertainty.

    Attributes
    ----------
    size : float, in the unit of the value
        Lines of one key added with their signs; its sign is that of their sum.
    degrees : float
    shape : Shape
    together : str
        Shares of one set of readings have their degrees of freedom in common; empty: by itself.
    whole : str
        Shares of one whole are parts of one rectangle; empty: by itself.
    """

    size: float
    degrees: float
    shape: Shape
    together: str = ""
    whole: str = ""


@dataclass(frozen=True, slots=True)
class Spread:
    """How the values that a quantity may have are spread about the estimate.

    Attributes
    ----------
    halves : tuple of float, in the unit of the value
        Half-widths of the one or two rectangles that dominate, the wider first; empty for none.
    rest : float, in the unit of the value
        Standard uncertainty of all else.
    """

    halves: tuple[float, ...] = ()
    rest: float = 0.0

    @property
    def edge(self) -> float:
        """The edge parameter of the trapezoid that two rectangles make, 0 to 1."""
        wide, narrow = self.halves
        return (wide - narrow) / (wide + narrow)


def shares_of(sources: Sequence[Source]) -> list[Share]:
    """Give the independent parts of a budget.

    Lines of one key are one and the same error: their contributions are added with their signs.
    Where their degrees of freedom differ the fewest count; where their shapes do, it is normal.
    What follows ``#`` in a key tells apart the independent parts found from one set of readings.

    Source
    ------
    Correlation +1 or -1: JCGM 100:2008, 5.2.2, note 1.
    """
    found: list[Share] = []
    keyed: dict[str, int] = {}
    for source in sources:
        place = keyed.get(source.key) if source.key else None
        if place is None:
            if source.key:
                keyed[source.key] = len(found)
            together = source.key.partition("#")[0] if "#" in source.key else ""
            found.append(
                Share(source.contribution, source.degrees, source.shape, together, source.whole)
            )
            continue
        known = found[place]
        found[place] = Share(
            known.size + source.contribution,
            min(known.degrees, source.degrees),
            known.shape if known.shape is source.shape else Shape.NORMAL,
            known.together,
            known.whole if known.whole == source.whole else "",
        )
    return found


def _joined(shares: Sequence[Share]) -> list[Share]:
    """Put the parts of one rectangle together again."""
    alone = [share for share in shares if not share.whole]
    wholes: dict[str, list[Share]] = {}
    for share in shares:
        if share.whole:
            wholes.setdefault(share.whole, []).append(share)
    return alone + [
        Share(combined_u(parts), min(part.degrees for part in parts), parts[0].shape)
        for parts in wholes.values()
    ]


def combined_u(shares: Sequence[Share]) -> float:
    """Give the root of the sum of squares (JCGM 100:2008, 5.1.2)."""
    return math.hypot(*(share.size for share in shares))


def effective_degrees(shares: Sequence[Share]) -> float:
    """Give the effective degrees of freedom; infinite where no share has few.

    The formula needs independent variances. Lines of one key are one variance already. Parts that
    come from one set of n simultaneous readings are not independent of each other: a function of
    such means alone has the n - 1 degrees of the set, whatever it is, so they enter as one.

    Source
    ------
    Welch-Satterthwaite: JCGM 100:2008, G.4.1. Sets of simultaneous readings: R. Willink, "A
    generalization of the Welch-Satterthwaite formula for use with correlated uncertainty
    components", Metrologia 44 (2007), 340-349.
    """
    scale = combined_u(shares)
    if scale <= 0.0:
        return math.inf
    sets: dict[str, float] = {}
    degrees: dict[str, float] = {}
    for number, share in enumerate(shares):
        name = share.together or f"#{number}"
        sets[name] = sets.get(name, 0.0) + (share.size / scale) ** 2
        degrees[name] = min(degrees.get(name, math.inf), share.degrees)
    total = sum(sets.values())
    # Parts of the whole, so that no fourth power of a tiny number is lost.
    few = sum((square / total) ** 2 / max(degrees[name], 1.0) for name, square in sets.items())
    return 1.0 / few if few > 0.0 else math.inf


def spread_of(shares: Sequence[Share]) -> Spread:
    """Tell whether one or two rectangles dominate.

    Source
    ------
    EA-4/02 M:2022, supplement 2, S9.14 (one) and S10.13 (two): all else together is less than 0.3
    of them.
    """
    total = combined_u(shares)
    by_size = sorted(_joined(shares), key=lambda share: -abs(share.size))
    for count in (1, 2):
        first = by_size[:count]
        whole = len(first) == count and all(one.shape is Shape.RECTANGULAR for one in first)
        size = combined_u(first)
        if not whole or size <= 0.0:
            return Spread((), total)
        rest = combined_u(by_size[count:])
        if rest < DOMINATES * size:
            return Spread(tuple(math.sqrt(3.0) * abs(one.size) for one in first), rest)
    return Spread((), total)


def in_parts(shares: Sequence[Share]) -> bool:
    """Tell whether the largest rectangle is made of several lines of a budget."""
    largest = max(_joined(shares), key=lambda share: abs(share.size))
    return not any(share.size == largest.size for share in shares)
