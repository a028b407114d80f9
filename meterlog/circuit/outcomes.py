"""Outcomes: the ranges in which a test's result tells different units apart.

The bins of a result are put together to as few ranges as keep most of what it tells: the best such
partition is found exactly by dynamic programming over neighbouring bins (Bellman; the way of
Jackson and others 2005, An algorithm for optimal partitioning of data on an interval, from
memory). Each bound is then moved to where the least is expected, and rounded there.
"""

from __future__ import annotations

import itertools
import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from meterlog.circuit.figures import Floats
from meterlog.circuit.information import bin_edges, binned
from meterlog.circuit.scoring import Mixture

MOST_RANGES = 5
LEAST_SHARE = 0.02
"""A range less probable than this is none of its own."""
_WORTH_BITS = 0.03
_WORTH_PART = 0.04
"""What one range more must add: bits, or a part of all that the test tells."""
_EDGES = 64
_TIGHT = 0.12
"""Tenth to ninetieth part of a range that is called "about": within this part of its middle."""
_TIGHT_LEAST = 0.5
_NOTHING = 0.2
_NARROW = ("near ", "about ")
"""How a range is called that is told by its middle."""
_LOOK = 61
_OFFSETS = np.array([-1.5, -0.75, 0.0, 0.75, 1.5])
_OFFSET_SHARES = np.exp(-0.5 * _OFFSETS**2)


@dataclass(frozen=True, slots=True)
class Range:
    """One range of a reading.

    Attributes
    ----------
    low, high : float or None
        None: no bound on that side.
    shares : float64[parts]
        Joint probability of each part and this range.
    tenth, middle, ninetieth : float
        Of what is expected in the range.
    """

    low: float | None
    high: float | None
    shares: Floats
    tenth: float
    middle: float
    ninetieth: float

    @property
    def probability(self) -> float:
        """Of the range."""
        return float(self.shares.sum())


def ranges_of(mixture: Mixture, slips: tuple[float, float]) -> tuple[Range, ...]:
    """Cut what a reading may show into one to five ranges, lowest first.

    Parameters
    ----------
    mixture : Mixture
    slips : (float, float)
        As for :func:`~meterlog.circuit.information.reading_bits`.
    """
    mean, sd = mixture.mean[None], mixture.sd[None]
    edges = bin_edges(mean, sd, mixture.weights, _EDGES)
    joint = binned(edges, mean, sd, mixture.weights, mixture.parts, slips)[0]
    cuts = _best_cuts(joint)
    bounds = [_moved(mixture, edges[0], cut) for cut in cuts]
    bounds = sorted(set(bounds))
    if not bounds:
        whole = np.bincount(mixture.parts, mixture.weights).astype(np.float64)
        return (Range(None, None, whole, *_spread(mixture, -math.inf, math.inf)),)
    shares = binned(np.array(bounds)[None], mean, sd, mixture.weights, mixture.parts, slips)[0]
    ends = [-math.inf, *bounds, math.inf]
    return tuple(
        Range(
            low if math.isfinite(low) else None,
            high if math.isfinite(high) else None,
            shares[:, at],
            *_spread(mixture, low, high),
        )
        for at, (low, high) in enumerate(itertools.pairwise(ends))
    )


def joined(mixture: Mixture, ranges: Sequence[Range]) -> Range:
    """Put neighbouring ranges together to one."""
    if len(ranges) == 1:
        return ranges[0]
    low, high = ranges[0].low, ranges[-1].high
    spread = _spread(mixture, -math.inf if low is None else low, math.inf if high is None else high)
    shares = np.sum([one.shares for one in ranges], axis=0)
    return Range(low, high, shares, *spread)


def _best_cuts(joint: Floats) -> list[int]:
    """Give the edges at which to cut, by their number; each range has its least probability."""
    count = joint.shape[1]
    running = np.concatenate([np.zeros((len(joint), 1)), np.cumsum(joint, axis=1)], axis=1)
    share = running[:, None, :] - running[:, :, None]  # from bin i up to, not with, bin j
    whole = share.sum(axis=0)
    prior = joint.sum(axis=1)[:, None, None]
    ratio = np.divide(share, prior * whole, out=np.ones_like(share), where=share > 1e-12)
    gain = (share * np.log2(ratio)).sum(axis=0)
    gain[whole < LEAST_SHARE] = -np.inf
    best, via = gain[0].copy(), []
    totals = [float(best[count])]
    for _ in range(MOST_RANGES - 1):
        options = best[:, None] + gain
        options[np.tril_indices(count + 1)] = -np.inf
        via.append(options.argmax(axis=0))
        best = options.max(axis=0)
        totals.append(float(best[count]))
    worth = max(_WORTH_BITS, _WORTH_PART * max(totals))
    ranges = 0
    while ranges + 1 < len(totals) and totals[ranges + 1] - totals[ranges] > worth:
        ranges += 1
    cuts: list[int] = []
    at = count
    for step in reversed(via[:ranges]):
        at = int(step[at])
        cuts.append(at - 1)  # bin ``at`` begins at edge ``at - 1``
    return cuts[::-1]


def _moved(mixture: Mixture, edges: Floats, cut: int) -> float:
    """Move a bound to the middle of where the least is expected beside it, rounded."""
    low, high = edges[max(cut - 1, 0)], edges[min(cut + 1, len(edges) - 1)]
    look = np.linspace(low, high, _LOOK)
    z = (look[:, None] - mixture.mean) / mixture.sd
    density = (np.exp(-0.5 * z**2) / mixture.sd) @ mixture.weights
    least = int(density.argmin())
    limit = 1.5 * density[least] + 1e-6 * density.max()
    first = last = least
    while first > 0 and density[first - 1] <= limit:
        first -= 1
    while last < _LOOK - 1 and density[last + 1] <= limit:
        last += 1
    return roundest(float(look[first]), float(look[last]))


def roundest(low: float, high: float) -> float:
    """Give the number with the fewest digits between two, nearest to their middle."""
    middle = (low + high) / 2.0
    for places in range(-1, 4):
        for step in (10.0, 5.0, 2.0, 1.0):
            unit = step * 10.0 ** (-places - 1)
            found = round(middle / unit) * unit
            if low <= found <= high:
                return round(found, 6) + 0.0
    return round(middle, 4) + 0.0


def _spread(mixture: Mixture, low: float, high: float) -> tuple[float, float, float]:
    """Give the tenth, the middle and the ninetieth part of what is expected in a range."""
    places = (mixture.mean[:, None] + mixture.sd[:, None] * _OFFSETS).ravel()
    shares = (mixture.weights[:, None] * _OFFSET_SHARES).ravel()
    inside = (places >= low) & (places < high)
    if not inside.any():
        middle = min(max((low + high) / 2.0, -1e3), 1e3) if math.isfinite(low + high) else 0.0
        return middle, middle, middle
    places, shares = places[inside], shares[inside]
    order = np.argsort(places, kind="stable")
    part = np.cumsum(shares[order])
    at = np.searchsorted(part, part[-1] * np.array([0.1, 0.5, 0.9]))
    tenth, middle, ninetieth = places[order][np.minimum(at, len(order) - 1)]
    return float(tenth), float(middle), float(ninetieth)


def ranges_words(ranges: Sequence[Range], unit: str) -> tuple[str, ...]:
    """Say ranges, such as ``about 12.3 V``, ``near 0 V``, ``0.5 to 11 V``, ``above 3 V``.

    Those that would be called the same are told by their bounds.
    """
    called = [_about(one, unit) for one in ranges]
    return tuple(
        words if words and called.count(words) == 1 else _between(one, unit)
        for one, words in zip(ranges, called, strict=True)
    )


def in_order_words(called: str, band: tuple[float, float], unit: str) -> str:
    """Say that a range holds what a circuit in order shows; where it is wide, what that is."""
    if called.startswith(_NARROW):
        return ", as in a circuit in order,"
    return f" ({figure(band[0])} to {figure(band[1])} {unit} in a circuit in order)"


def _about(one: Range, unit: str) -> str:
    """Call a narrow range by its middle; empty for a wide one."""
    wide = one.ninetieth - one.tenth
    if wide > max(_TIGHT_LEAST, _TIGHT * abs(one.middle)):
        return ""
    if abs(one.middle) < _NOTHING and wide <= 2.0 * _NOTHING:
        return f"near 0 {unit}"
    return f"about {figure(one.middle)} {unit}"


def _between(one: Range, unit: str) -> str:
    if one.low is None and one.high is None:
        return f"{figure(one.tenth)} to {figure(one.ninetieth)} {unit}"
    if one.low is None:
        return f"below {figure(one.high or 0.0)} {unit}"
    if one.high is None:
        return f"above {figure(one.low)} {unit}"
    return f"{figure(one.low)} to {figure(one.high)} {unit}"


def figure(value: float) -> str:
    """Write a voltage or current with the digits that a hand meter makes sense of."""
    places = 1 if abs(value) >= 1.0 else 2 if abs(value) >= 0.1 else 3
    text = f"{round(value, places) + 0.0:.{places}f}"
    return text.rstrip("0").rstrip(".")
