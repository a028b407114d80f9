"""LateHand: a current off its limits that only came just before a new speed is that speed's.

A thumb is late on the key, or the meter's reading averages over the change. Beyond one lag the
current must have been what the new speed draws, and the lateness is kept to be told. Before it may
lie the peak of the new speed's start. What a motor does that gathers speed or slows down is over
before a late mark, and missing readings may hide the rest until it: that is asked again once all
marks are known.

Source: V = I R + Ke w (textbook, permanent-magnet motor): until its speed is that of the new
voltage, a motor draws more than it will at a higher speed, and less than it will at a lower one.
"""

from __future__ import annotations

from bisect import bisect_right
from dataclasses import replace

from meterlog.analysis.changing_speed import ChangingSpeed
from meterlog.analysis.excess import highest_a
from meterlog.analysis.held_rotor import FELL, FEW, falls
from meterlog.analysis.pieces import EXCESS, Figures, Group, Piece
from meterlog.analysis.settle import rejoin
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
        self._motor = ChangingSpeed(limits)
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
                    _make_running(result, first, index, change, late_ns)
                    break
        return result

    def excuse(self, pieces: list[Piece], until_ns: int | None) -> None:
        """Make running, in place, of what a command explains that was marked only after it.

        Parameters
        ----------
        pieces : list of Piece
            Settled, touching. The last one may still grow.
        until_ns : int or None, nanoseconds
            Up to here all commands are known; None: all are.
        """
        speed: int | None = None
        for change in self._timeline.changes:
            if until_ns is not None and change.t_ns > until_ns:
                break
            if change.speed != speed:
                self._excuse_before(pieces, change)
            speed = change.speed

    def _excuse_before(self, pieces: list[Piece], change: SpeedChange) -> None:
        """Excuse what began less than one lag before a command and ended before it."""
        last = bisect_right(pieces, change.t_ns, key=lambda piece: piece.end_ns) - 1
        while last >= 0 and pieces[last].end_ns > change.t_ns - self._lag_ns:
            if pieces[last].kind in _OFF_LIMITS:
                for first in (_begins(pieces, last), last):
                    if self._explained(pieces, first, last, change):
                        _make_running(pieces, first, last, change, 0)
                        rejoin(pieces, first - 1, last + 2)
                        last = first
                        break
            last -= 1

    def _explained(self, pieces: list[Piece], first: int, last: int, change: SpeedChange) -> bool:
        if change.t_ns - pieces[first].start_ns >= self._lag_ns:
            return False
        if pieces[first].after_quiet and not self._surely_later(pieces, first, change):
            return False
        run = pieces[first : last + 1]
        following = pieces[last + 1] if last + 1 < len(pieces) else None
        if all(self._motor.slows(one, change.speed) for one in run):
            return True
        if following is None or following.group is Group.GONE:
            return False
        fell = _fell_after(pieces, last)
        if all(self._motor.gathers(one, change.speed, fell=fell) for one in run):
            return True
        return self._lasts(pieces, last, change) and self._motor.draws(pieces[last], change.speed)

    def _lasts(self, pieces: list[Piece], last: int, change: SpeedChange) -> bool:
        """Tell whether missing readings alone hide that a current went on up to a command."""
        if pieces[last + 1].group is not Group.UNKNOWN or last + 2 >= len(pieces):
            return False
        again = pieces[last + 2]
        if again.group is not Group.FLOWING:
            return False
        return change.t_ns - again.start_ns < self._dwell_ns or again.hand_ns == change.t_ns

    def _change_at_end(self, piece: Piece, blind_ns: int | None) -> SpeedChange | None:
        if piece.kind not in _OFF_LIMITS:
            return None
        until_ns = max(piece.end_ns + piece.end_edge_ns, blind_ns or 0)
        # What came after the command and did not last is part of the piece.
        back_ns = max(piece.end_edge_ns, self._dwell_ns)
        changes = self._timeline.between(piece.end_ns - back_ns - 1, until_ns)
        return changes[-1] if changes else None

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
        if ends.kind is SpanKind.LOCKED and not (falls(ends) or _fell_after(pieces, last)):
            return None
        if begun.after_quiet and not self._came_later(pieces, first, change):
            return None
        late_ns = max(ends.end_ns, change.t_ns) - begun.start_ns
        if late_ns < max(self._lag_ns, 2 * _edge_ns(begun), 2 * _edge_ns(ends)):
            return 0
        # A slow meter knows both ends no better than its readings are apart.
        sure_ns = late_ns - begun.start_edge_ns - ends.end_edge_ns
        if sure_ns < LATE_LAGS * self._lag_ns and self._motor.draws(ends, change.speed):
            return late_ns
        return 0 if sure_ns < self._lag_ns and ends.figures.n < FEW else None

    def _came_later(self, pieces: list[Piece], first: int, change: SpeedChange) -> bool:
        """Tell whether a piece that was off its limits when judging began was not so all along.

        After a dropout judging waits as well, and the hand on the knob does not.
        """
        if self._surely_later(pieces, first, change):
            return True
        begun, before = pieces[first], pieces[first - 1] if first else None
        if begun.kind is SpanKind.UNDER or begun.restarted_ns < 0:
            return False
        if before is None or not before.figures.n:
            return False
        if change.t_ns - _flows_since(pieces, first) < LATE_LAGS * self._lag_ns:
            return False  # the peak of the restart may be all that was seen
        if self._timeline.between(before.start_ns, begun.start_ns):
            return False
        # A rotor that is held, or drags, draws the most at the beginning.
        half_way = (highest_a(self._limits, begun.speed) + abs(begun.figures.mean_a)) / 2.0
        return abs(before.figures.mean_a) < half_way

    def _surely_later(self, pieces: list[Piece], first: int, change: SpeedChange) -> bool:
        """Tell the same by what was read while judging waited, and by the next speed alone."""
        begun = pieces[first]
        if begun.kind is SpanKind.UNDER:
            # Whether it was so before judging began nobody knows: what the next speed draws is it.
            slows = begun.length_ns < self._lag_ns and self._motor.slows(begun, change.speed)
            known = slows or self._motor.draws(begun, change.speed)
            return begun.restarted_ns >= 0 and known
        # It was within its limits, and then a hand was on the knob.
        if change.t_ns - begun.within_ns < self._lag_ns:
            return True
        since_ns = max(begun.within_ns, _flows_since(pieces, first))
        if change.t_ns - since_ns >= LATE_LAGS * self._lag_ns:
            return False
        return self._motor.draws(begun, change.speed)


def _make_running(
    pieces: list[Piece], first: int, last: int, change: SpeedChange, late_ns: int
) -> None:
    for index in range(first, last + 1):
        pieces[index] = replace(
            pieces[index],
            kind=SpanKind.RUNNING,
            figures=Figures(),
            late_ns=late_ns,
            hand_ns=change.t_ns,
        )


def _edge_ns(piece: Piece) -> int:
    return max(piece.start_edge_ns, piece.end_edge_ns)


def _begins(pieces: list[Piece], index: int) -> int:
    """Give the first of the pieces beside each other that all are off the limits."""
    first = index
    while first > 0 and pieces[first - 1].kind in _OFF_LIMITS:
        first -= 1
    return first


def _fell_after(pieces: list[Piece], index: int) -> bool:
    """Tell of a single reading, which shows no fall itself, whether what followed it was lower."""
    figures = pieces[index].figures
    if figures.n != 1 or index + 1 == len(pieces):
        return False
    following = pieces[index + 1]
    flows = following.group is Group.FLOWING and following.figures.n > 0
    return flows and abs(following.figures.first_a or 0.0) < FELL * abs(figures.mean_a)


def _flows_since(pieces: list[Piece], index: int) -> int:
    """Give since when current has been seen to flow, nanoseconds."""
    while index > 0 and pieces[index - 1].group is Group.FLOWING:
        index -= 1
    return pieces[index].start_ns
