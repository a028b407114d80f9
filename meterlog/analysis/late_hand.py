"""LateHand: a current off its limits that only came just before a new speed is that speed's.

A thumb is late on the key, or the meter's reading averages over the change. Beyond one lag the
current must have been what the new speed draws, and the lateness is kept to be told. Before it may
lie the peak of the new speed's start.
"""

from __future__ import annotations

from dataclasses import replace

from meterlog.analysis.excess import highest_a
from meterlog.analysis.held_rotor import FEW, falls
from meterlog.analysis.pieces import EXCESS, Figures, Piece
from meterlog.analysis.timeline import SpeedChange, SpeedTimeline
from meterlog.model import Limits, SpanKind

LATE_LAGS = 2
"""Up to so many times ``command_lag_s`` a hand may be late, where the current was the next speed's
already. Our own: a cliff at one lag would make a thumb 0.03 s late a fault."""

_OFF_LIMITS = (*EXCESS, SpanKind.LOCKED)


class LateHand:
    """Finds what a late command explains.

    Parameters
    ----------
    limits : Limits
    timeline : SpeedTimeline
    """

    def __init__(self, limits: Limits, timeline: SpeedTimeline) -> None:
        self._limits, self._timeline = limits, timeline
        self._lag_ns = round(limits.command_lag_s * 1e9)
        self._dwell_ns = round(limits.min_dwell_s * 1e9)

    def excused(self, pieces: list[Piece], blind_ns: int | None) -> list[Piece]:
        """Give the pieces with those as running that a late command explains.

        Parameters
        ----------
        pieces : list of Piece
            Touching, all with current.
        blind_ns : int or None, nanoseconds
            What follows was not read until then: the command may lie there. None where it was.
        """
        result = list(pieces)
        for index in range(len(pieces)):
            until_ns = blind_ns if index + 1 == len(pieces) else None
            change = self._change_at_end(pieces[index], until_ns)
            if change is None:
                continue
            for first in (_begins(pieces, index), index):
                late_ns = self._late_ns(pieces, first, index, change)
                if late_ns is not None:
                    result[first : index + 1] = [
                        replace(one, kind=SpanKind.RUNNING, figures=Figures(), late_ns=late_ns)
                        for one in pieces[first : index + 1]
                    ]
                    break
        return result

    def _change_at_end(self, piece: Piece, blind_ns: int | None) -> SpeedChange | None:
        if piece.kind not in _OFF_LIMITS:
            return None
        until_ns = max(piece.end_ns + piece.end_edge_ns, blind_ns or 0)
        # What came after the command and did not last is part of the piece.
        back_ns = max(piece.end_edge_ns, self._dwell_ns)
        changes = self._timeline.between(piece.end_ns - back_ns - 1, until_ns)
        if changes:
            return changes[-1]
        # A turning motor draws less than its new speed asks for until it has slowed down to it.
        slows = piece.kind is SpanKind.UNDER and piece.length_ns < self._lag_ns
        later = self._timeline.between(until_ns, piece.start_ns + self._lag_ns) if slows else []
        return later[0] if later and 0 < later[0].speed < (piece.speed or 0) else None

    def _late_ns(
        self, pieces: list[Piece], first: int, last: int, change: SpeedChange
    ) -> int | None:
        """Give how late a hand was, where that explains pieces ``first`` to ``last``.

        Returns
        -------
        int or None, nanoseconds
            0 within the usual lag; None where a late hand does not explain them.
        """
        begun, ends = pieces[first], pieces[last]
        if ends.kind is SpanKind.LOCKED and not falls(ends):
            return None
        if begun.after_quiet and not self._came_later(pieces, first, change):
            return None
        late_ns = max(ends.end_ns, change.t_ns) - begun.start_ns
        if late_ns < max(self._lag_ns, 2 * _edge_ns(begun), 2 * _edge_ns(ends)):
            return 0
        # A slow meter knows both ends no better than its readings are apart.
        sure_ns = late_ns - begun.start_edge_ns - ends.end_edge_ns
        if sure_ns < LATE_LAGS * self._lag_ns and self._draws(ends, change.speed):
            return late_ns
        return 0 if sure_ns < self._lag_ns and ends.figures.n < FEW else None

    def _came_later(self, pieces: list[Piece], first: int, change: SpeedChange) -> bool:
        """Tell whether a piece that was off its limits when judging began was not so all along.

        After a dropout judging waits as well, and the hand on the knob does not.
        """
        begun = pieces[first]
        if begun.restarted_ns < 0:
            return False
        if begun.kind is SpanKind.UNDER:
            # Whether it was so before judging began nobody knows: what the next speed draws is it.
            return self._slows(begun, change) or self._draws(begun, change.speed)
        if change.t_ns - begun.restarted_ns < LATE_LAGS * self._lag_ns:
            return self._draws(begun, change.speed)
        before = pieces[first - 1] if first else None
        if before is None or not before.figures.n:
            return False
        if self._timeline.between(before.start_ns, begun.start_ns):
            return False
        # A rotor that is held, or drags, draws the most at the beginning.
        half_way = (highest_a(self._limits, begun.speed) + abs(begun.figures.mean_a)) / 2.0
        return abs(before.figures.mean_a) < half_way

    def _slows(self, piece: Piece, change: SpeedChange) -> bool:
        """Tell whether too little current may be a motor that slows down to a lower speed.

        Until it has, it draws less than that speed does when steady: what it generates is still
        that of the old one (V = I R + Ke w, textbook). Less than one lag it may be so.
        """
        allowed, known = self._limits.at(change.speed), piece.figures
        down = 0 < change.speed < (piece.speed or 0)
        if not down or allowed.max_a is None or not known.n:
            return False
        return piece.length_ns < self._lag_ns and abs(known.mean_a) <= allowed.max_a

    def _draws(self, piece: Piece, speed: int) -> bool:
        """Tell whether a piece's current is within what ``speed`` may draw."""
        allowed, mean = self._limits.at(speed), abs(piece.figures.mean_a)
        if allowed.max_a is None or not piece.figures.n:
            return False
        return (allowed.min_a or 0.0) <= mean <= allowed.max_a


def _edge_ns(piece: Piece) -> int:
    return max(piece.start_edge_ns, piece.end_edge_ns)


def _begins(pieces: list[Piece], index: int) -> int:
    """Give the first of the pieces beside each other that all are off the limits."""
    first = index
    while first > 0 and pieces[first - 1].kind in _OFF_LIMITS:
        first -= 1
    return first
