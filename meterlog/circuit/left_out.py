"""Left out: what would be believed without one of the readings or signs."""

from __future__ import annotations

import math

import numpy as np

from meterlog.circuit.figures import Floats
from meterlog.circuit.slipped import SLIP, log_total_over_slips
from meterlog.circuit.weighed import Weighed

_LESS = 12.0
"""Cases whose logarithm is by so much less than that of the best one need no better sums."""
_PAIRS = 0.1
"""Cases in which two slips are less probable than this need none either: what a third beside two
would add is then told well enough by what a second one beside none does."""
_MUCH = 5.0
_SETS = 2e8
"""So many sets of slipped readings are summed over at most, the likeliest cases first. Of a shipped
circuit that takes in all cases up to some fifty readings."""


def weights_left_out(weighed: Weighed) -> dict[int, Floats]:
    """Give the probability of each case with each entry left out.

    If a reading slipped, its value tells nothing of the others: the density of all with that one
    slipped is that of the others times what a slip costs. So the sums that were made have what is
    wanted, with one slip fewer. Two slips among the others are put to none and one of them as they
    are while that reading held; where they are probable the sums are made anew.

    Parameters
    ----------
    weighed : Weighed

    Returns
    -------
    dict of int to float64[cases]
        By the id of the entry; each sums up to 1.
    """
    log_rest = weighed.cases.log_prior + weighed.log_signs.sum(axis=1)
    without: dict[int, Floats] = {}
    with np.errstate(divide="ignore"):
        rough = weighed.sums.log_total[:, None] + np.log(weighed.sums.slipped)
    rough += log_rest[:, None] - math.log(SLIP) - weighed.taken.log_slip
    both = weighed.sums.both.sum(axis=2)
    pairs = np.maximum(0.5 * both.sum(axis=1)[:, None] - both, 0.0)
    rough += np.log1p(pairs / np.maximum(1.0 - weighed.sums.slipped - pairs, _PAIRS))
    near = (rough > rough.max(axis=0, initial=-np.inf) - _LESS).any(axis=1)
    near = np.flatnonzero(near & (both.sum(axis=1) > 2.0 * _PAIRS))
    best = rough.max(axis=1, initial=-np.inf)
    near = near[np.argsort(-best[near], kind="stable")][: _most(len(weighed.taken))]
    for at, number in enumerate(weighed.taken.ids):
        log = rough[:, at].copy()
        log[near] = log_rest[near] + _log_without(weighed, near, at)
        if log.max() > rough[:, at].max() + _MUCH:
            # Two other slips explain more than one: that may hold of any case.
            every = np.argsort(-best, kind="stable")[: _most(len(weighed.taken))]
            log[every] = log_rest[every] + _log_without(weighed, every, at)
        without[number] = _shares(log)
    for at, number in enumerate(weighed.seen.ids):
        without[number] = _shares(weighed.sums.log_total + log_rest - weighed.log_signs[:, at])
    return without


def _most(readings: int) -> int:
    """Give of how many cases the sums are made anew for each reading."""
    return max(int(2.0 * _SETS / max(readings, 1) ** 3), 1)


def _log_without(weighed: Weighed, cases: np.ndarray, at: int) -> Floats:
    left = weighed.joint.of(cases).without(at)
    return log_total_over_slips(left, np.delete(weighed.taken.log_slip, at))


def _shares(log: Floats) -> Floats:
    shares: Floats = np.exp(log - np.logaddexp.reduce(log))
    return shares
