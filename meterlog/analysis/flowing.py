"""FlowingJudge: a stretch with current - what of its excess is to be believed.

A current above or below its limit is told only when it lasts, when its mean is beyond the limit
by more than its own scatter, and when neither a late hand nor an averaging meter explains it.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import replace

from meterlog.analysis.excess import highest_a
from meterlog.analysis.pieces import Figures, Piece
from meterlog.analysis.settle import joined, settle
from meterlog.analysis.timeline import SpeedTimeline
from meterlog.analysis.uncertainty import coverage_factor
from meterlog.model import Limits, SpanKind

MANY_LOOKS = 2.0
"""A long recording gives chance many looks: four standard deviations instead of two."""

_EXCESS = (SpanKind.OVER, SpanKind.UNDER)


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
        settled = _unramped(settle(pieces, self._dwell_ns))
        if after is not None and settled[-1].kind is SpanKind.UNDER and _is_ramp(settled[-1]):
            settled[-1] = _running(settled[-1])  # partly the dropout itself
        noise_a = _noise_a(pieces)
        believed = [p if self._believed(p, noise_a) else _running(p) for p in settled]
        return joined([_running(p) if self._hurried(p) else p for p in joined(believed)])

    def _believed(self, piece: Piece, noise_a: float | None) -> bool:
        """Tell whether the mean is beyond the limit by more than chance explains.

        A run of readings above a limit was chosen for being above it; its own scatter is too
        small a measure of chance, so the noise of all that surrounds it counts.
        """
        figures = piece.figures
        if piece.kind not in _EXCESS or not figures.n:
            return True
        slack = 0.0
        if noise_a is not None:
            slack = MANY_LOOKS * coverage_factor(figures.n) * noise_a / math.sqrt(figures.n)
        mean = abs(figures.mean_a)
        if piece.kind is SpanKind.OVER:
            return mean - slack > highest_a(self._limits, piece.speed)
        lowest = self._limits.at(piece.speed).min_a
        return lowest is not None and mean + slack < lowest

    def _hurried(self, piece: Piece) -> bool:
        """Tell whether an excess only came just before a new speed: it is then that speed's.

        A thumb is late on the key, or the meter's reading averages over the change.
        """
        if piece.kind not in _EXCESS or piece.after_quiet:
            return False
        if piece.length_ns >= max(self._lag_ns, 2 * _edge_ns(piece)):
            return False
        edge_ns = piece.end_edge_ns
        return bool(self._timeline.between(piece.end_ns - edge_ns - 1, piece.end_ns + edge_ns))


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
