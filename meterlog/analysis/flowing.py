"""FlowingJudge: a stretch with current - what of its excess is to be believed.

A current above or below its limit is told only when it lasts, when its mean is beyond the limit
by more than its own scatter, and when neither a late hand nor an averaging meter explains it.
What is believed may still be a held rotor (``held_rotor.py``).
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import replace

from meterlog.analysis.excess import highest_a
from meterlog.analysis.held_rotor import falls, held, slow_start
from meterlog.analysis.pieces import Figures, Piece
from meterlog.analysis.settle import joined, settle
from meterlog.analysis.timeline import SpeedChange, SpeedTimeline
from meterlog.analysis.uncertainty import coverage_factor
from meterlog.model import Limits, SpanKind

MANY_LOOKS = 2.0
"""A long recording gives chance many looks: four standard deviations instead of two."""

CHOSEN = 1.7
"""Readings chosen for lying above their mean scatter by 0.6 of what all do (half a normal
distribution, sqrt(1 - 2 / pi))."""
OWN_PAIRS = 4

_EXCESS = (SpanKind.OVER, SpanKind.UNDER)

LATE_LAGS = 2
"""Up to so many times ``command_lag_s`` a hand may be late, where the current was the next speed's
already. Our own: a cliff at one lag would make a thumb 0.03 s late a fault."""


def _noise_a(pieces: Sequence[Piece]) -> float | None:
    """Give the noise of the current in a whole stretch, amperes."""
    figures = Figures()
    for piece in pieces:
        figures = figures.then(piece.figures)
    return figures.noise_a


def _running(piece: Piece) -> Piece:
    return replace(piece, kind=SpanKind.RUNNING, figures=Figures())


def _edge_ns(piece: Piece) -> int:
    return max(piece.start_edge_ns, piece.end_edge_ns)


class FlowingJudge:
    """Settles the pieces of a stretch in which current flows.

    Parameters
    ----------
    limits : Limits
    timeline : SpeedTimeline
    """

    def __init__(self, limits: Limits, timeline: SpeedTimeline) -> None:
        self._limits = limits
        self._timeline = timeline
        self._dwell_ns = round(limits.min_dwell_s * 1e9)
        self._lag_ns = round(limits.command_lag_s * 1e9)

    def judge(self, pieces: Sequence[Piece], after: Piece | None) -> list[Piece]:
        """Give the settled pieces.

        Parameters
        ----------
        pieces : sequence of Piece
            Touching, all with current.
        after : Piece or None
            What follows, without current; None at the end of what is known.
        """
        settled = _unramped(slow_start(settle(pieces, self._dwell_ns), self._limits))
        if after is not None and settled[-1].kind is SpanKind.UNDER and _is_ramp(settled[-1]):
            settled[-1] = _running(settled[-1])  # partly the dropout itself
        noise_a = _noise_a(pieces)
        believed = [p if self._believed(p, noise_a) else _running(p) for p in settled]
        innocent = joined(self._unhurried(joined(believed)))
        return joined([held(p, self._limits) for p in innocent])

    def _believed(self, piece: Piece, noise_a: float | None) -> bool:
        """Tell whether the mean is beyond the limit by more than chance explains.

        A run of readings above a limit was chosen for being above it; its own scatter is too
        small a measure of chance, so the noise of all that surrounds it counts. Where steps of the
        level make up most of that, as with few readings, its own counts, made larger.
        """
        figures = piece.figures
        if piece.kind not in _EXCESS or not figures.n:
            return True
        slack = 0.0
        own_a = figures.noise_a if figures.pairs >= OWN_PAIRS else None
        if noise_a is not None:
            if own_a is not None:
                noise_a = min(noise_a, CHOSEN * own_a)
            slack = MANY_LOOKS * coverage_factor(figures.n) * noise_a / math.sqrt(figures.n)
        mean = abs(figures.mean_a)
        if piece.kind is SpanKind.OVER:
            return mean - slack > highest_a(self._limits, piece.speed)
        lowest = self._limits.at(piece.speed).min_a
        return lowest is not None and mean + slack < lowest

    def _unhurried(self, pieces: list[Piece]) -> list[Piece]:
        """Take an excess that only came just before a new speed for that speed's.

        A thumb is late on the key, or the meter's reading averages over the change. Beyond one lag
        the current must have been what the new speed draws, and the lateness is kept to be told.
        Before it may lie the peak of the new speed's start.
        """
        result = list(pieces)
        for index in range(len(pieces)):
            changes = self._changes_at_end(pieces[index])
            if not changes:
                continue
            for first in (_begins(pieces, index), index):
                late_ns = self._late_ns(pieces, first, index, changes[-1].speed)
                if late_ns is not None:
                    calm = [
                        replace(_running(p), late_ns=late_ns) for p in pieces[first : index + 1]
                    ]
                    result[first : index + 1] = calm
                    break
        return result

    def _changes_at_end(self, piece: Piece) -> list[SpeedChange]:
        edge_ns = piece.end_edge_ns
        if piece.kind not in (*_EXCESS, SpanKind.LOCKED):
            return []
        return self._timeline.between(piece.end_ns - edge_ns - 1, piece.end_ns + edge_ns)

    def _late_ns(self, pieces: list[Piece], first: int, last: int, speed: int) -> int | None:
        """Give how late a hand was, where that explains pieces ``first`` to ``last``.

        Returns
        -------
        int or None, nanoseconds
            0 within the usual lag; None where a late hand does not explain them.
        """
        begun, ends = pieces[first], pieces[last]
        if begun.after_quiet or (ends.kind is SpanKind.LOCKED and not falls(ends)):
            return None
        length_ns = ends.end_ns - begun.start_ns
        if length_ns < max(self._lag_ns, 2 * _edge_ns(begun), 2 * _edge_ns(ends)):
            return 0
        if length_ns < LATE_LAGS * self._lag_ns and self._draws(ends, speed):
            return length_ns
        return None

    def _draws(self, piece: Piece, speed: int) -> bool:
        """Tell whether a piece's current is within what ``speed`` may draw."""
        allowed, mean = self._limits.at(speed), abs(piece.figures.mean_a)
        if allowed.max_a is None or not piece.figures.n:
            return False
        return (allowed.min_a or 0.0) <= mean <= allowed.max_a


def _begins(pieces: list[Piece], index: int) -> int:
    """Give the first of the pieces beside each other that all are off the limits."""
    first = index
    while first > 0 and pieces[first - 1].kind in (*_EXCESS, SpanKind.LOCKED):
        first -= 1
    return first


def _is_ramp(piece: Piece) -> bool:
    """Tell whether a piece is no longer than an averaging meter needs from level to level."""
    return piece.length_ns <= 2 * _edge_ns(piece)


def _unramped(pieces: list[Piece]) -> list[Piece]:
    """Give single readings half-way to or from a held rotor's current to that."""
    result: list[Piece] = []
    for index, piece in enumerate(pieces):
        following = pieces[index + 1] if index + 1 < len(pieces) else None
        ramp = piece.kind in _EXCESS and _is_ramp(piece)
        if ramp and following is not None and following.kind is SpanKind.LOCKED:
            result.append(replace(piece, kind=SpanKind.LOCKED, figures=Figures()))
        elif ramp and result and result[-1].kind is SpanKind.LOCKED:
            result[-1] = result[-1].until(piece)
        else:
            result.append(piece)
    return joined(result)
