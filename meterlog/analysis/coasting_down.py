"""CoastingDown: after a step down the turning motor draws nothing until it has slowed down.

It generates more than it is given, so for a while no current flows although nothing has opened.
Whether a loss is that, its two ends, the voltages and the command tell; a command that was marked
late may be known only once the current is long back, so that a loss is asked about again at the
end.

Source: V = I R + Vb + Ke w, with a supply of less than Ke w (textbook, permanent-magnet motor
behind a path that carries current one way only).
"""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Sequence
from dataclasses import replace

from meterlog.analysis.pieces import Figures, Group, Piece
from meterlog.analysis.timeline import SpeedChange, SpeedTimeline
from meterlog.model import Limits, SpanKind

COASTED_DOWN_TO = 0.7
"""A motor that was coasting down to a lower step draws again when its own voltage has fallen to
about what that step gives it; one that had lost its feed or ground has fallen below this part."""

MORE_V = 1.1
"""A lower step gives the motor less; with less load, the battery some per cent more. Our own."""

_LOSSES = (SpanKind.FEED_LOST, SpanKind.GROUND_LOST, SpanKind.NO_CURRENT)


def innocent(piece: Piece, limits: Limits) -> bool:
    """Tell whether a loss may be a command's doing.

    A motor that turns behind a switch on the feed side generates what it was given, on low speeds
    nearly as much: it looks dead until it has slowed. The battery's own voltage it never generates.
    """
    if piece.kind is SpanKind.DEAD:
        return piece.figures.volts_n > 0 and piece.figures.mean_v < limits.supply_present_v
    return piece.kind in _LOSSES


class CoastingDown:
    """Tells which losses a step down explains.

    Parameters
    ----------
    limits : Limits
        Its ``coast_s`` is the longest that coasting lasts, ``command_lag_s`` how late a hand is.
    timeline : SpeedTimeline
    """

    def __init__(self, limits: Limits, timeline: SpeedTimeline) -> None:
        self._limits, self._timeline = limits, timeline
        self._lag_ns = round(limits.command_lag_s * 1e9)
        self._coast_ns = round(limits.coast_s * 1e9)

    def explains(
        self, gone: Sequence[Piece], before: Piece | None, after: Piece, unread_ns: int
    ) -> bool:
        """Tell whether a stretch without current is a motor that slows down to a lower speed.

        Parameters
        ----------
        gone : sequence of Piece
            Touching, without current; among them may be such as were not read.
        before : Piece or None
            The last one with current before them; None where it is not known.
        after : Piece
            The first one with current after them.
        unread_ns : int, nanoseconds
            So long before them nothing was read. When in it the current went nobody knows: they
            are as long as they are seen to be.
        """
        first, last = gone[0], gone[-1]
        if last.end_ns - first.start_ns > self._coast_ns:
            return False
        lost = [piece for piece in gone if piece.group is not Group.UNKNOWN]
        if _too_much(before, after):
            losses = all(piece.kind in (SpanKind.DEAD, *_LOSSES) for piece in lost)
        else:
            losses = all(innocent(piece, self._limits) for piece in lost)
        if not losses or self._fell_below(lost[-1], before, after):
            return False
        slack_ns = self._lag_ns + first.start_edge_ns + unread_ns
        return self._timeline.step_down_near(first.start_ns, slack_ns)

    def _fell_below(self, last: Piece, before: Piece | None, after: Piece) -> bool:
        """Tell whether the motor's own voltage fell further than coasting down explains.

        It is held against what drives the motor afterwards, less its brushes. A voltage that
        drives none, before or after, or more of it than before the step down, says that a probe is
        off, and then none of them tells anything.
        """
        least_v = self._limits.driven_v
        if last.last_v is None or after.first_v is None or after.first_v < least_v:
            return False
        if before is not None and before.last_v is not None and before.last_v < least_v:
            return False
        if _too_much(before, after):
            return False
        return last.last_v < COASTED_DOWN_TO * (after.first_v - self._limits.brush_v)

    def excuse(self, pieces: list[Piece], until_ns: int | None) -> None:
        """Make running, in place, of the losses that a step down explains.

        Parameters
        ----------
        pieces : list of Piece
            Settled, touching. The last one may still grow.
        until_ns : int or None, nanoseconds
            Up to here all commands are known; None: all are.
        """
        for change in self._timeline.changes:
            if until_ns is not None and change.t_ns > until_ns:
                break
            if change.speed:
                self._excuse_near(pieces, change)

    def _excuse_near(self, pieces: list[Piece], change: SpeedChange) -> None:
        reach_ns = self._lag_ns + self._coast_ns
        at = bisect_left(pieces, change.t_ns - reach_ns, key=lambda piece: piece.end_ns)
        while at < len(pieces) and pieces[at].start_ns <= change.t_ns + reach_ns:
            if pieces[at].group is Group.GONE:
                end = self._end_of(pieces, at)
                if self._coasts(pieces, at, end):
                    at = _made_running(pieces, at, end)
                    continue
                at = end
            else:
                at += 1

    def _end_of(self, pieces: Sequence[Piece], first: int) -> int:
        """Give the piece after the last without current, brief pauses in the readings bridged."""
        end = first + 1
        while end < len(pieces):
            if pieces[end].group is Group.GONE:
                end += 1
            elif self._brief(pieces, end) and _group(pieces, end + 1) is Group.GONE:
                end += 2
            else:
                break
        return end

    def _brief(self, pieces: Sequence[Piece], at: int) -> bool:
        """Tell whether nothing was read in a piece, and not for longer than a motor coasts."""
        unread = _group(pieces, at) is Group.UNKNOWN
        return unread and pieces[at].length_ns <= self._coast_ns

    def _coasts(self, pieces: Sequence[Piece], first: int, end: int) -> bool:
        before, after, unread_ns = first - 1, end, 0
        if self._brief(pieces, before):
            unread_ns = pieces[before].length_ns
            before -= 1
        if self._brief(pieces, after):
            after += 1
        if _group(pieces, before) is not Group.FLOWING:
            return False
        if _group(pieces, after) is not Group.FLOWING:
            return False
        return self.explains(pieces[first:end], pieces[before], pieces[after], unread_ns)


def _too_much(before: Piece | None, after: Piece) -> bool:
    """Tell whether the motor seems to be given more after a step down than before: a probe is off.

    Full battery across a motor without current proves nothing either then.
    """
    if before is None or before.last_v is None or after.first_v is None:
        return False
    return after.first_v > MORE_V * max(before.last_v, 0.0)


def _group(pieces: Sequence[Piece], at: int) -> Group | None:
    return pieces[at].group if 0 <= at < len(pieces) else None


def _made_running(pieces: list[Piece], first: int, end: int) -> int:
    """Make running of the losses from ``first`` on; give the piece after them."""
    begin, stop = max(first - 1, 0), min(end + 1, len(pieces))
    running: list[Piece] = []
    for index in range(begin, stop):
        piece = pieces[index]
        if first <= index < end and piece.group is Group.GONE:
            piece = replace(piece, kind=SpanKind.RUNNING, figures=Figures())
        if running and running[-1].alike(piece):
            running[-1] = running[-1].joined(piece)
        else:
            running.append(piece)
    pieces[begin:stop] = running
    return begin + len(running)
