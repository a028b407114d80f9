"""Plateaus: the levels between which the current of a running fan was switched.

A change point is not yet a speed change. A start-up peak, a ramp and the tail of either have many;
drift has them where it crosses what the noise hides. A plateau is a stretch that lasts longer than
a start-up and stays level; two that differ by less than neighbouring speeds do are one.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace
from itertools import pairwise

import numpy as np
from numpy.typing import NDArray

from meterlog.analysis.found_steps.bins import BinTable
from meterlog.analysis.found_steps.change_points import change_points, noise_of
from meterlog.analysis.found_steps.ranks import SAME_LEVEL

SURE = 4.0
"""Levels differ when their means lie this many standard deviations apart: four, as a long
recording gives chance many looks."""
TILT = 0.25
"""A plateau's halves differ by no more than this part of its distance to its neighbours; of a ramp
cut in pieces they differ by half of it."""
VOLTS_MOVED = 0.02
"""When the speed changes, the motor's voltage moves by at least this part, and the same way."""
NEAR = 3.0
"""Levels are compared over this many times the time a start-up takes, next to the change."""


@dataclass(frozen=True, slots=True)
class Plateau:
    """One level of the current.

    Attributes
    ----------
    start_ns, start_edge_ns : int, nanoseconds
        When it was switched to, and ± what.
    end_ns, end_edge_ns : int, nanoseconds
        When the last of it was read, and how long before the next reading.
    first, last : Level
        Next to its beginning (start-up left out) and next to its end.
    total_a : float
        Sum of the current over its readings, amperes; with ``n`` its mean.
    n : int
        Readings; 0 for off.
    seen_ns : tuple of (int, int), nanoseconds
        From when to when it was seen, in pieces.
    """

    start_ns: int
    start_edge_ns: int
    end_ns: int
    end_edge_ns: int
    first: Level
    last: Level
    total_a: float
    n: int
    seen_ns: tuple[tuple[int, int], ...] = ()

    @property
    def mean_a(self) -> float:
        """Mean current, amperes; 0 for off."""
        return self.total_a / self.n if self.n else 0.0

    def then(self, later: Plateau) -> Plateau:
        """Join with a later one of the same level."""
        return replace(
            self,
            end_ns=later.end_ns,
            end_edge_ns=later.end_edge_ns,
            last=later.last,
            total_a=self.total_a + later.total_a,
            n=self.n + later.n,
            seen_ns=self.seen_ns + later.seen_ns,
        )


@dataclass(frozen=True, slots=True)
class Level:
    """A mean current with its standard uncertainty by scatter, and the motor's voltage there."""

    amps: float
    u_a: float
    volts: float | None

    def differs(self, other: Level) -> bool:
        """Tell whether a speed change lies between the two.

        A current that rises while the motor's voltage stays or falls is the load's doing.
        """
        least = max(SAME_LEVEL * max(self.amps, other.amps), SURE * math.hypot(self.u_a, other.u_a))
        apart = abs(other.amps - self.amps)
        return apart > 0.0 and apart >= least and self._volts_follow(other)

    def _volts_follow(self, other: Level) -> bool:
        if self.volts is None or other.volts is None:
            return True
        moved = (other.volts - self.volts) * math.copysign(1.0, other.amps - self.amps)
        return moved >= VOLTS_MOVED * max(abs(self.volts), abs(other.volts))


OFF = Level(0.0, 0.0, None)


def off(start_ns: int, start_edge_ns: int, end_ns: int, end_edge_ns: int) -> Plateau:
    """Give the plateau of a fan that is off."""
    return Plateau(start_ns, start_edge_ns, end_ns, end_edge_ns, OFF, OFF, 0.0, 0)


def plateaus(bins: BinTable, start_up_ns: int) -> list[Plateau]:
    """Give the levels of a stretch in which current flows throughout.

    Parameters
    ----------
    bins : BinTable
        Of the stretch.
    start_up_ns : int, nanoseconds
        A start-up takes no longer; what lasts less, a start-up before it counted, is no plateau.

    Returns
    -------
    list of Plateau
        In time order, neighbours different; none where the stretch is too short or never level.
    """
    if len(bins) < 2:
        return []
    sigma = noise_of(bins.amps)
    bounds = [0, *change_points(bins.amps, sigma).tolist(), len(bins)]
    pieces = list(pairwise(bounds))
    level = _level_pieces(bins, pieces, sigma, start_up_ns)
    near_ns = round(NEAR * start_up_ns)
    kept = joined([_plateau(bins, *piece, sigma, near_ns) for piece in level])
    return kept[:1] + [_switched(bins, *pair) for pair in pairwise(kept)]


def joined(found: Sequence[Plateau]) -> list[Plateau]:
    """Join neighbours that are one level.

    Only what lies next to a change is compared, so that joining two changes nothing for others.
    """
    kept: list[Plateau] = []
    for one in found:
        if kept and not kept[-1].last.differs(one.first):
            kept[-1] = kept[-1].then(one)
        else:
            kept.append(one)
    return kept


def _level_pieces(
    bins: BinTable, pieces: Sequence[tuple[int, int]], sigma: float, start_up_ns: int
) -> list[tuple[int, int]]:
    """Give the pieces that last and are level, not parts of a ramp."""
    means = [float(bins.amps[a:b].mean()) for a, b in pieces]
    level = []
    rose_ns = int(bins.t_ns[0])
    for k, (a, b) in enumerate(pieces):
        beside = [abs(means[j] - means[k]) for j in (k - 1, k + 1) if 0 <= j < len(means)]
        start_ns, end_ns = int(bins.t_ns[a]), int(bins.t_ns[b - 1]) + bins.width_ns
        if k and means[k] > means[k - 1]:
            rose_ns = start_ns
        lasts = end_ns - start_ns >= start_up_ns
        if start_ns - rose_ns <= start_up_ns:  # part of that time the start-up took
            lasts = end_ns - rose_ns >= start_up_ns and 2 * (end_ns - start_ns) >= start_up_ns
        if b - a >= 2 and lasts and (not beside or _is_flat(bins, a, b, max(beside), sigma)):
            level.append((a, b))
    return level


def _is_flat(bins: BinTable, a: int, b: int, apart_a: float, sigma: float) -> bool:
    half = (b - a) // 2
    tilt = abs(float(bins.amps[b - half : b].mean() - bins.amps[a : a + half].mean()))
    return tilt <= TILT * apart_a + SURE * sigma * math.sqrt(2.0 / half)


def _level(bins: BinTable, a: int, b: int, sigma: float) -> Level:
    volts = bins.volts[a:b]
    read = volts[np.isfinite(volts)]
    return Level(
        float(bins.amps[a:b].mean()),
        sigma / math.sqrt(b - a),
        float(read.mean()) if len(read) else None,
    )


def _plateau(bins: BinTable, a: int, b: int, sigma: float, near_ns: int) -> Plateau:
    t = bins.t_ns
    head = max(int(np.searchsorted(t, t[a] + near_ns)), a + 1)
    tail = min(int(np.searchsorted(t, t[b - 1] - near_ns, side="right")), b - 1)
    return Plateau(
        start_ns=int(t[a]),
        start_edge_ns=bins.width_ns,
        end_ns=int(t[b - 1]),
        end_edge_ns=bins.width_ns,
        first=_level(bins, a, min(head, b), sigma),
        last=_level(bins, max(tail, a), b, sigma),
        total_a=float((bins.amps[a:b] * bins.count[a:b]).sum()),
        n=int(bins.count[a:b].sum()),
        seen_ns=((int(t[a]) - bins.width_ns // 2, int(t[b - 1]) + bins.width_ns // 2),),
    )


def _switched(bins: BinTable, before: Plateau, after: Plateau) -> Plateau:
    """Give ``after`` with the instant at which it was switched to: half-way between the levels.

    Where the current crept from one level to the other, the switch may be as early as it left the
    first.
    """
    last, first = np.searchsorted(bins.t_ns, (before.end_ns, after.start_ns)).tolist()
    if first <= last:  # times that stand still or run backwards a little
        return replace(after, start_edge_ns=max(after.start_edge_ns, bins.width_ns))
    rise = after.first.amps - before.last.amps
    way = (bins.amps[last : first + 1] - before.last.amps) / rise
    t = bins.t_ns[last : first + 1]
    quarter, at, gap = _crossing(t, way, 0.25)[0], *_crossing(t, way, 0.5)
    edge = max(gap, bins.width_ns, at - before.end_ns, 2 * (at - quarter) + bins.width_ns)
    return replace(after, start_ns=at, start_edge_ns=edge)


def _crossing(t_ns: NDArray[np.int64], way: NDArray[np.float64], part: float) -> tuple[int, int]:
    """Give when ``part`` of the way was first reached, and the time between the readings there."""
    here = max(int(np.argmax(way >= part)), 1)
    left, right = int(t_ns[here - 1]), int(t_ns[here])
    # A start-up peak beyond the new level would pull the instant towards the reading before.
    low, high = float(way[here - 1]), min(float(way[here]), 1.0)
    share = min(max((part - low) / (high - low), 0.0), 1.0) if high > low else 1.0
    return left + round(share * (right - left)), right - left
