"""Chance: how often taps at random times would do as well."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from meterlog.analysis.taps.gone_stretches import LATE_NS, GoneStretch

DRAWS = 9999
MOST_EXACT = 200_000
"""Up to so many arrangements all of them are tried."""
_MOST_PLACES = 20_000
_FINEST_NS = 1_000_000
_SEED = 20_210_613
"""Any number: fixed, so that one recording always gives one answer."""

Times = NDArray[np.int64]
Scores = NDArray[np.int64]


@dataclass(frozen=True, slots=True)
class Returns:
    """When the current came back, and the time in which it was gone.

    Attributes
    ----------
    ends_ns, edges_ns : ndarray, int64, shape (k,), nanoseconds
        Ends of the stretches after which it flowed, in order, and how well each is known.
    open_ns : ndarray, int64, shape (m, 2), nanoseconds
        From when to when a tap counts as made while it was gone: a late hand allowed for.
    reach_ns : int, nanoseconds
    """

    ends_ns: Times
    edges_ns: Times
    open_ns: Times
    reach_ns: int

    def scores(self, taps_ns: Times) -> Scores:
        """Give for each tap how far the current's return lies away, nanoseconds.

        No nearer than the return is known, so that nothing is gained by what was not seen; the
        reach where it did not return within it.
        """
        none = np.full(taps_ns.shape, self.reach_ns, np.int64)
        if not len(self.ends_ns):
            return none
        after = self.ends_ns.searchsorted(taps_ns, side="left")
        best = none
        for index, longest in ((after, self.reach_ns), (after - 1, LATE_NS)):
            there = (index >= 0) & (index < len(self.ends_ns))
            safe = np.clip(index, 0, len(self.ends_ns) - 1)
            away = np.abs(self.ends_ns[safe] - taps_ns)
            seen = np.maximum(away, self.edges_ns[safe])
            best = np.where(there & (away <= longest), np.minimum(best, seen), best)
        return best


def returns_of(stretches: Sequence[GoneStretch], reach_ns: int) -> Returns:
    """Give the returns of the stretches that may be the motor's own."""
    own = [one for one in stretches if one.of_motor]
    back = [one for one in own if one.returned]
    places = []
    for one in own:
        start = one.start_ns + (LATE_NS if one.from_running else 0)
        end = one.end_ns + (LATE_NS if one.returned else 0)
        if end > start:
            places.append((start, end))
    return Returns(
        np.array([one.end_ns for one in back], np.int64),
        np.array([one.edge_ns for one in back], np.int64),
        np.array(places, np.int64).reshape(-1, 2),
        reach_ns,
    )


def _places(returns: Returns) -> Times:
    """Give evenly spaced instants of the time in which the current was gone."""
    lengths = returns.open_ns[:, 1] - returns.open_ns[:, 0]
    total = int(lengths.sum())
    finest = max(_FINEST_NS, int(returns.edges_ns.min()) if len(returns.edges_ns) else 0)
    count = int(np.clip(total // finest, 1, _MOST_PLACES))
    inside = ((np.arange(count) + 0.5) * (total / count)).astype(np.int64)
    behind = np.concatenate(([0], np.cumsum(lengths)))
    which = behind.searchsorted(inside, side="right") - 1
    placed: Times = returns.open_ns[which, 0] + inside - behind[which]
    return placed


def chance_of(attempts_ns: Sequence[Sequence[int]], returns: Returns) -> tuple[float | None, int]:
    """Give the probability that taps at random times are followed by returns as well as these.

    Parameters
    ----------
    attempts_ns : sequence of sequences of int, nanoseconds
        The attempts made while the current was gone, each with the times of its taps.
    returns : Returns

    Returns
    -------
    tuple of float or None and int
        The probability, and how many arrangements it rests on; (None, 0) without an attempt.

    Source
    ------
    A permutation (randomisation) test: P. Good, "Permutation Tests", 2nd ed., 2000, chapters 1
    and 2. Of the arrangements, all are tried where they are few, else :data:`DRAWS` drawn at
    random, and p = (b + 1) / (m + 1) with b of m as good or better: J. Besag, P. Clifford,
    "Sequential Monte Carlo p-values", Biometrika 78 (1991) 301-304, section 1 (from memory);
    B. Phipson, G. K. Smyth, Stat. Appl. Genet. Mol. Biol. 9 (2010), article 39.

    What is held fixed, and why. The number of attempts, the grouping of their taps, and all
    stretches without current. A technician taps when the fan stands, so the times are placed
    evenly over the time in which the current was gone, not over the whole recording: dropouts
    that end by themselves after a second are followed by a return whenever they are tapped, and
    then the probability is near 1. The statistic is the sum, over the attempts, of the time
    between tap and return, the reach where there was none: few answers and slow ones both count
    against. Three things make the figure too large rather than too small: a return is taken to
    be no nearer than it is known, several attempts may be placed on one return, and a mark just
    after a return counts in every arrangement as it does in the recording.
    """
    if not attempts_ns or not len(returns.open_ns):
        return None, 0
    places = _places(returns)
    tables = []
    seen = 0
    for taps in attempts_ns:
        offsets = np.array(taps, np.int64)
        seen += int(returns.scores(offsets).min())
        placed = places[:, None] + (offsets - offsets[0])[None, :]
        tables.append(returns.scores(placed).min(axis=1))
    exact = float(len(places)) ** len(tables) <= MOST_EXACT
    sums = _all(tables) if exact else _drawn(tables)
    as_good = int((sums <= seen).sum())
    return (as_good + 1) / (len(sums) + 1), len(sums)


def _all(tables: Sequence[Scores]) -> Scores:
    sums = tables[0]
    for table in tables[1:]:
        sums = (sums[:, None] + table[None, :]).ravel()
    return sums


def _drawn(tables: Sequence[Scores]) -> Scores:
    dice = np.random.default_rng(_SEED)
    sums = np.zeros(DRAWS, np.int64)
    for table in tables:
        sums += table[dice.integers(0, len(table), DRAWS)]
    return sums
