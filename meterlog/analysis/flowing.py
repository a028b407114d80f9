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
from meterlog.analysis.held_rotor import held, slow_start
from meterlog.analysis.late_hand import LateHand
from meterlog.analysis.pieces import EXCESS, Figures, Piece
from meterlog.analysis.settle import joined, settle
from meterlog.analysis.timeline import SpeedTimeline
from meterlog.analysis.uncertainty import coverage_factor
from meterlog.model import Limits, SpanKind

MANY_LOOKS = 2.0
"""A long recording gives chance many looks: four standard deviations instead of two."""

CHOSEN = 1.7
"""Readings chosen for lying above their mean scatter by 0.6 of what all do (half a normal
distribution, sqrt(1 - 2 / pi))."""
OWN_PAIRS = 4


def _noise_a(pieces: Sequence[Piece]) -> float | None:
    """Give the noise of the current in a whole stretch, amperes."""
    figures = Figures()
    for piece in pieces:
        figures = figures.then(piece.figures)
    return figures.noise_a


def _running(piece: Piece) -> Piece:
    return replace(piece, kind=SpanKind.RUNNING, figures=Figures())


class FlowingJudge:
    """Settles the pieces of a stretch in which current flows.

    Parameters
    ----------
    limits : Limits
    timeline : SpeedTimeline
    """

    def __init__(self, limits: Limits, timeline: SpeedTimeline) -> None:
        self._limits = limits
        self._late = LateHand(limits, timeline)
        self._dwell_ns = round(limits.min_dwell_s * 1e9)

    def judge(self, pieces: Sequence[Piece], blind_ns: int | None) -> list[Piece]:
        """Give the settled pieces.

        Parameters
        ----------
        pieces : sequence of Piece
            Touching, all with current.
        blind_ns : int or None, nanoseconds
            What follows was not read until then; None where it was, and at the end.
        """
        settled = _unramped(slow_start(settle(pieces, self._dwell_ns), self._limits))
        # A reading on its way to nothing or back is part of a dropout, seen or not.
        settled = [_running(p) if p.kind is SpanKind.UNDER and p.is_ramp else p for p in settled]
        noise_a = _noise_a(pieces)
        believed = [p if self._believed(p, noise_a) else _running(p) for p in settled]
        innocent = joined(self._late.excused(joined(believed), blind_ns))
        return joined([held(p, self._limits) for p in innocent])

    def _believed(self, piece: Piece, noise_a: float | None) -> bool:
        """Tell whether the mean is beyond the limit by more than chance explains.

        A run of readings above a limit was chosen for being above it; its own scatter is too
        small a measure of chance, so the noise of all that surrounds it counts. Where steps of the
        level make up most of that, as with few readings, its own counts, made larger.
        """
        figures = piece.figures
        if piece.kind not in EXCESS or not figures.n:
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


def _unramped(pieces: list[Piece]) -> list[Piece]:
    """Give single readings half-way to or from a held rotor's current to that."""
    result: list[Piece] = []
    for index, piece in enumerate(pieces):
        following = pieces[index + 1] if index + 1 < len(pieces) else None
        ramp = piece.kind in EXCESS and piece.is_ramp
        if ramp and following is not None and following.kind is SpanKind.LOCKED:
            result.append(replace(piece, kind=SpanKind.LOCKED, figures=Figures()))
        elif ramp and result and result[-1].kind is SpanKind.LOCKED:
            result[-1] = result[-1].until(piece)
        else:
            result.append(piece)
    return joined(result)
