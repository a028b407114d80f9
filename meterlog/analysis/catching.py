"""Catching: how likely a dropout of some length, at a random instant, is told by the detector."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

_READINGS, _PHASES = 101, 8
"""Readings of the train that dropouts are tried against, and instants between two of them."""
_GOLDEN = 0.6180339887498949
"""Each gap's instants are moved by this part, so that together they fill an interval evenly."""
_MIXED = 37
"""Gaps are put in an order that goes round by so many, so that long ones lie among short ones."""
MOST = 1.0 - 1.0 / (_READINGS * _PHASES + 1)
"""So likely at most a dropout is told that every instant tried shows: nothing is known of those in
between (p of m tries that all succeed, 1 - 1 / (m + 1)), nor of what the motor draws as it starts
again."""
_LEAST_S = 1e-9


@dataclass(frozen=True, slots=True)
class Pace:
    """How far apart readings come.

    Attributes
    ----------
    gaps_s : tuple of float, seconds
        Gaps that were seen, in bins.
    shares : tuple of float
        How many of all gaps each stands for; not needed to add up to 1.
    beside : bool
        Another meter reads the voltage: then the instant at which the current comes back is told
        by the two readings on both sides of it alone; see ``current_reads.py``.
    """

    gaps_s: tuple[float, ...]
    shares: tuple[float, ...] = (1.0,)
    beside: bool = False

    def train_s(self) -> NDArray[np.float64]:
        """Give gaps in these shares, in a fixed mixed order, shape (n,), seconds."""
        weights = np.cumsum(self.shares)
        ranks = (np.arange(_READINGS) * _MIXED % _READINGS + 0.5) / _READINGS
        which = np.searchsorted(weights, ranks * weights[-1], side="left")
        gaps: NDArray[np.float64] = np.asarray(self.gaps_s)[which]
        return gaps


@dataclass(frozen=True, slots=True)
class Threshold:
    """Where the current counts as gone and as back, as parts of the running current.

    Attributes
    ----------
    gone, back : float
        0 and 0 where the running current is not known: then only a reading without any current
        counts.
    """

    gone: float = 0.0
    back: float = 0.0


def caught(
    lengths_s: Sequence[float],
    pace: Pace,
    window_s: float,
    dwell_s: float,
    threshold: Threshold,
) -> NDArray[np.float64]:
    """Give the chance, 0 to 1, that a dropout at a random instant is told, for each length.

    A reading is the mean over its averaging time, so it falls by the part of that which the
    dropout covers; what the motor draws as it starts again is left out, which makes the reading
    lower than it will be. The dropout counts when a reading is below the threshold and, between
    the instants at which the readings pass half their height, the dwell is over: the rules of
    ``schmitt.py``, ``edges.py`` and ``episodes.py``.

    Parameters
    ----------
    lengths_s : sequence of float, seconds
    pace : Pace
    window_s : float, seconds
        Averaging time; 0 for none.
    dwell_s : float, seconds
    threshold : Threshold

    Source
    ------
    Quadrature over the phase, uniform over a train of readings. Arithmetic, no outside source;
    held against the detector in ``tests/unit/analysis/test_catching.py``.
    """
    window = max(window_s, _LEAST_S)
    t, begins, weights = _train(pace, max(lengths_s, default=0.0) + window)
    # Readings whose averaging time lies inside by this much, or more, are without current.
    gone, back = window * (1.0 - threshold.gone), window * (1.0 - min(threshold.back, 1.0))
    chances = np.zeros(len(lengths_s))
    for place, length in enumerate(lengths_s):
        if length < gone:
            continue
        ends = begins + length
        first = np.searchsorted(t, begins - window / 2.0 + gone - _LEAST_S, side="left")
        after = np.searchsorted(t, ends + window / 2.0 - back, side="left")
        told = t[first] <= ends + window / 2.0 - gone + _LEAST_S
        seen = _Seen(t, begins, ends, window, pace.beside)
        long = seen.rise(np.maximum(after, first + 1)) - seen.fall(first) >= dwell_s - _LEAST_S
        chances[place] = float(weights[told & long].sum())
    return np.minimum(np.round(chances, 12), 1.0)


def _train(
    pace: Pace, room_s: float
) -> tuple[NDArray[np.float64], NDArray[np.float64], NDArray[np.float64]]:
    """Give times of readings, instants of dropouts among them, and their weights."""
    gaps = pace.train_s()
    period = float(gaps.sum())
    turns = int(np.ceil(room_s / period)) + 2
    every = np.concatenate([gaps] * (turns + 1))
    t = np.cumsum(every) - gaps[0]
    starts = t[_READINGS - 1 : 2 * _READINGS - 1]
    moved = np.arange(_READINGS) * _GOLDEN % 1.0
    parts = (np.arange(_PHASES)[None, :] + moved[:, None]) / _PHASES
    widths = np.diff(t[_READINGS - 1 : 2 * _READINGS])
    begins = starts[:, None] + parts * widths[:, None]
    weights = np.repeat(widths / (widths.sum() * _PHASES), _PHASES)
    return t, begins.ravel(), weights


@dataclass(frozen=True, slots=True, eq=False)
class _Seen:
    """What the readings of a train show of dropouts, the running current being 1."""

    t: NDArray[np.float64]
    begins: NDArray[np.float64]
    ends: NDArray[np.float64]
    window: float
    beside: bool

    def _at(self, index: NDArray[np.intp]) -> NDArray[np.float64]:
        middle, half = self.t[index], self.window / 2.0
        inside = np.minimum(middle + half, self.ends) - np.maximum(middle - half, self.begins)
        value: NDArray[np.float64] = 1.0 - np.clip(inside / self.window, 0.0, 1.0)
        return value

    def fall(self, first: NDArray[np.intp]) -> NDArray[np.float64]:
        """Give when the current is told to go, ``first`` being the first reading without."""
        near, far, here = self._at(first - 1), self._at(first - 2), self._at(first)
        half = (np.maximum(near, far) + here) / 2.0
        late = near >= half
        return self._crossing(
            half,
            (np.where(late, first - 1, first - 2), np.where(late, near, far)),
            (np.where(late, first, first - 1), np.where(late, here, near)),
        )

    def rise(self, after: NDArray[np.intp]) -> NDArray[np.float64]:
        """Give when the current is told to come, ``after`` being the first reading with it."""
        here, before = self._at(after), self._at(after - 1)
        beyond = here if self.beside else self._at(after + 1)
        half = (np.maximum(here, beyond) + before) / 2.0
        soon = here >= half
        return self._crossing(
            half,
            (np.where(soon, after - 1, after), np.where(soon, before, here)),
            (np.where(soon, after, after + 1), np.where(soon, here, beyond)),
        )

    def _crossing(
        self,
        level: NDArray[np.float64],
        one: tuple[NDArray[np.intp], NDArray[np.float64]],
        other: tuple[NDArray[np.intp], NDArray[np.float64]],
    ) -> NDArray[np.float64]:
        step = other[1] - one[1]
        part = np.clip((level - one[1]) / np.where(step == 0.0, 1.0, step), 0.0, 1.0)
        at: NDArray[np.float64] = self.t[one[0]] + part * (self.t[other[0]] - self.t[one[0]])
        return at
