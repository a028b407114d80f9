"""Sittings: stretches of a check in which a fault that comes and goes is there, or is not."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
import numpy.typing as npt

from meterlog.circuit.figures import Floats
from meterlog.model.circuit_check import CircuitReading, CircuitSign, CircuitState, Sign

_KEPT = 16
"""So many patterns of up to four sittings of which nobody said anything: that is all of them."""
_KEPT_OF_MORE = 8
_LESS = 12.0
"""Patterns whose logarithm is by so much less than that of the best one don't matter."""
HERE = 0.5
"""Probability that a fault that comes and goes is there in one sitting. From memory, no source."""

Entry = CircuitReading | CircuitSign


@dataclass(frozen=True, slots=True)
class Sitting:
    """Entries that follow each other in one state, with the fault there in all or in none.

    Attributes
    ----------
    state : CircuitState
    ids : tuple of int
    complaint : bool or None
        As somebody said; None: nobody did.
    ended : bool
        By a tap that made the fan start: what follows is another sitting.
    """

    state: CircuitState
    ids: tuple[int, ...]
    complaint: bool | None
    ended: bool = False


def sittings_of(entries: Sequence[Entry]) -> tuple[Sitting, ...]:
    """Cut a check into sittings.

    A new one starts where the state changes, where somebody says otherwise about the complaint,
    and behind a tap that made the fan start.

    Parameters
    ----------
    entries : sequence of CircuitReading or CircuitSign
        In any order; that of their ids counts.

    Returns
    -------
    tuple of Sitting
        In the order of the ids.
    """
    sittings: list[Sitting] = []
    for entry in sorted(entries, key=lambda entry: entry.id):
        said = entry.complaint if isinstance(entry, CircuitReading) else None
        started = (
            isinstance(entry, CircuitSign) and entry.sign is Sign.TAP and entry.value == "starts"
        )
        last = sittings[-1] if sittings else None
        if last is not None and _goes_on(last, entry.state, complaint=said):
            told = last.complaint if said is None else said
            sittings[-1] = Sitting(entry.state, (*last.ids, entry.id), told, started)
        else:
            sittings.append(Sitting(entry.state, (entry.id,), said, started))
    return tuple(sittings)


def _goes_on(last: Sitting, state: CircuitState, *, complaint: bool | None) -> bool:
    if last.ended or last.state != state:
        return False
    return complaint is None or last.complaint is None or complaint == last.complaint


@dataclass(frozen=True, slots=True)
class Patterns:
    """Ways in which faults that come and go may have been there.

    Attributes
    ----------
    which : int[patterns]
        To which of the cells a pattern belongs.
    there : float64[patterns, sittings]
        1 there, 0 away, 1/2 where it makes no difference.
    log_share : float64[patterns]
        Logarithm of the prior probability of the pattern, given the cell.
    """

    which: npt.NDArray[np.intp]
    there: Floats
    log_share: Floats


def patterns_of(
    alone: Floats, open_: npt.NDArray[np.bool_], same: npt.NDArray[np.bool_]
) -> Patterns:
    """Give the ways in which the faults may have been there that what was found leaves likely.

    Parameters
    ----------
    alone : float64[cells, sittings, 2]
        Logarithm of the probability of what was found in each sitting by itself, with the fault
        away and with it there; minus infinity where somebody said otherwise.
    open_ : bool[sittings]
        Where nobody said whether it was there: then it was with probability :data:`HERE`.
    same : bool[cells, sittings]
        Where it makes no difference to what is expected.

    Returns
    -------
    Patterns
        Those of each cell that would be the likeliest were sittings independent, and none that is
        so much less likely than the best that it does not matter. They stand for all: what was cut
        off is taken to be as likely, against what was kept, as if sittings were independent.
    """
    cells, count, _ = alone.shape
    same &= open_
    split = open_ & ~same
    scored = alone + np.where(split, math.log(HERE), 0.0)[:, :, None]
    # Of what makes no difference one branch is enough.
    scored[:, :, 0] = np.where(same, -np.inf, scored[:, :, 0])
    most = _KEPT if 2 ** int(open_.sum()) <= _KEPT else _KEPT_OF_MORE
    score = np.zeros((cells, 1))
    there = np.zeros((cells, 1, count))
    for at in range(count):
        with_it = there.copy()
        with_it[:, :, at] = np.where(same[:, at], HERE, 1.0)[:, None]
        there = np.concatenate([there, with_it], axis=1)
        score = np.concatenate([score + scored[:, at, :1], score + scored[:, at, 1:]], axis=1)
        if score.shape[1] > most:
            best = np.argsort(-score, axis=1, kind="stable")[:, :most]
            score = np.take_along_axis(score, best, axis=1)
            there = np.take_along_axis(there, best[:, :, None], axis=1)
    kept = score > score.max(axis=1, keepdims=True, initial=-np.inf) - _LESS
    log_kept = np.logaddexp.reduce(np.where(kept, score, -np.inf), axis=1)
    log_all = np.logaddexp(scored[:, :, 0], scored[:, :, 1]).sum(axis=1)
    which, place = np.nonzero(kept)
    log_share = math.log(HERE) * split.sum(axis=1) + log_all - log_kept
    return Patterns(which, there[which, place], log_share[which])
