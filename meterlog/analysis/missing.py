"""MissingJudge: a stretch without current - which side it is, once all of it is seen.

Row by row the voltages have named a side; here the whole stretch corrects them. Innocent reasons
are taken out: the command itself (a relay takes its time, a thumb is late on the key) and a step
down, after which the turning motor draws nothing until it has slowed.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from meterlog.analysis.coasting_down import CoastingDown, innocent
from meterlog.analysis.late_current import without_late_current
from meterlog.analysis.pieces import Figures, Piece
from meterlog.analysis.settle import joined, settle
from meterlog.analysis.timeline import SpeedTimeline
from meterlog.model import Limits, Role, SpanKind

LATE_LAGS = 2
"""Up to so many times ``command_lag_s`` a hand may be late. Our own, as in ``flowing.py``."""


class MissingJudge:
    """Settles the pieces of a stretch in which no current flows.

    Parameters
    ----------
    limits : Limits
    timeline : SpeedTimeline
    apart_ns : int or None, nanoseconds
        Current and voltages come from different meters, whose readings may be so much later one
        than the other; None where one meter reads both.

    Attributes
    ----------
    forgiven : int
        Losses that were taken for the command.
    late : int
        Starts at which the current came later than the voltage.
    late_ns : int, nanoseconds
        By how much at the most.
    """

    def __init__(
        self, limits: Limits, timeline: SpeedTimeline, apart_ns: int | None = None
    ) -> None:
        self._limits = limits
        self._coasting = CoastingDown(limits, timeline)
        self._apart_ns = apart_ns
        self._dwell_ns = round(limits.min_dwell_s * 1e9)
        self._lag_ns = round(limits.command_lag_s * 1e9)
        self._coast_ns = round(limits.coast_s * 1e9)
        self.forgiven = 0
        self.late = self.late_ns = 0

    def judge(
        self,
        pieces: Sequence[Piece],
        before: Piece | None,
        after: Piece | None,
        flowed_ns: int | None,
    ) -> list[Piece]:
        """Give the settled pieces.

        Parameters
        ----------
        pieces : sequence of Piece
            Touching, all without current.
        before : Piece or None
            The last one with current; None where it is not known.
        after : Piece or None
            What follows, with current; None at the end of what is known.
        flowed_ns : int or None, nanoseconds
            So long before them, while nothing was read, current flowed: 0 for right before. None
            where it did not, or too long ago.
        """
        proven = pieces if self._apart_ns is None else _before_return(pieces, self._apart_ns)
        known = _from_command(_determined(proven), self._dwell_ns)
        settled = self._started(self._commanded(settle(known, self._dwell_ns), after))
        if flowed_ns is None:
            return settled
        lost = self._generating(settled)
        if after is None or not self._coasting.explains(lost, before, after, flowed_ns):
            return lost
        return [replace(lost[0].until(lost[-1]), kind=SpanKind.RUNNING, figures=Figures())]

    def _started(self, pieces: list[Piece]) -> list[Piece]:
        result = without_late_current(pieces, self._limits)
        if len(result) < len(pieces):
            self.late += 1
            self.late_ns = max(self.late_ns, pieces[-1].length_ns)
        return result

    def _commanded(self, pieces: list[Piece], after: Piece | None) -> list[Piece]:
        """Losses right beside an off command, and no longer than its lag, are the command.

        Up to twice as long they may be: then no side is blamed, and the lateness is told.
        """
        result = list(pieces)
        for first, last in self._innocent_runs(pieces):
            beside = (*pieces[max(first - 1, 0) : first], *pieces[last : last + 1])
            if not any(other.kind is SpanKind.OFF for other in beside):
                continue
            late_ns = pieces[last - 1].end_ns - pieces[first].start_ns
            kind, lateness = SpanKind.OFF, 0
            if late_ns < self._lag_ns:
                self.forgiven += 1
            elif pieces[first].kind is SpanKind.DEAD and self._stood(pieces, first):
                continue
            elif late_ns < LATE_LAGS * self._lag_ns and _whole(pieces, first, last, after):
                kind, lateness = SpanKind.NO_CURRENT, late_ns
            else:
                continue
            for index in range(first, last):
                figures = Figures() if kind is SpanKind.OFF else pieces[index].figures
                result[index] = replace(pieces[index], kind=kind, figures=figures, late_ns=lateness)
        return joined(result)

    def _innocent_runs(self, pieces: Sequence[Piece]) -> Iterator[tuple[int, int]]:
        """Give (first, last + 1) of the losses in a row that a command or coasting may explain."""
        first = 0
        for index, piece in enumerate(pieces):
            if not (innocent(piece, self._limits) or self._stood(pieces, index)):
                if index > first:
                    yield first, index
                first = index + 1
        if len(pieces) > first:
            yield first, len(pieces)

    def _stood(self, pieces: Sequence[Piece], index: int) -> bool:
        """Tell whether what looks dead after an on command looked so before it, nobody asking.

        A voltage that stood across the motor all along does not show when the command came through.
        """
        off = pieces[index - 1] if index else None
        if pieces[index].kind is not SpanKind.DEAD or off is None or off.last_v is None:
            return False
        return off.kind is SpanKind.OFF and off.last_v >= self._limits.supply_present_v

    def _generating(self, pieces: list[Piece]) -> list[Piece]:
        """Take the voltage of a motor that still turned for what it is, once it has decayed.

        A first moment that looks dead and turns into a lost feed or ground was that all along.
        """
        if len(pieces) < 2 or pieces[-1].kind is SpanKind.OFF:
            return pieces
        first, then = pieces[0], pieces[1]
        lost = then.kind in (SpanKind.FEED_LOST, SpanKind.GROUND_LOST)
        if first.kind is SpanKind.DEAD and lost and first.length_ns <= self._coast_ns:
            return [then.since(first), *pieces[2:]]
        return pieces


def _whole(pieces: Sequence[Piece], first: int, last: int, after: Piece | None) -> bool:
    """Tell whether losses beside off last from current to off, or from off to current."""
    if last < len(pieces):
        return first == 0
    return first > 0 and after is not None


def _before_return(pieces: Sequence[Piece], apart_ns: int) -> list[Piece]:
    """Take no side by voltages that may have been read after the current came back.

    It came back somewhere between its last reading without and its first with, or may have where
    it was not read any more; what another meter's voltages did in that time is a running motor's,
    a drop of the feed at its start-up above all.
    """
    if all(piece.kind is None for piece in pieces):
        return list(pieces)
    until_ns = max(piece.read_ns for piece in pieces) - apart_ns
    result = [
        piece if piece.start_ns < until_ns or piece.kind is SpanKind.OFF else _no_side(piece)
        for piece in pieces
    ]
    if any(piece.kind is not None for piece in result):
        return result
    # The voltages are there, but none is sure to have been read while the current was gone.
    return [replace(piece, kind=SpanKind.NO_CURRENT) for piece in result]


def _no_side(piece: Piece) -> Piece:
    figures = replace(piece.figures, volts_n=0, mean_v=0.0)
    return replace(piece, kind=None, figures=figures, settled_by=())


def _from_command(pieces: list[Piece], dwell_ns: int) -> list[Piece]:
    """Let what follows a command begin at the command.

    The controller takes a moment to answer; a short stretch between off and the first lasting
    label belongs to that label, not to off.
    """
    result: list[Piece] = []
    for piece in pieces:
        last = result[-1] if result else None
        if (
            last is not None
            and len(result) > 1
            and result[-2].kind is SpanKind.OFF
            and piece.kind is not SpanKind.OFF
            and last.kind is not piece.kind
            and last.length_ns < dwell_ns
        ):
            result[-1] = piece.since(last)
        else:
            result.append(piece)
    return result


def _determined(pieces: Sequence[Piece]) -> list[Piece]:
    """Give stretches without a voltage reading to the side that the next reading showed."""
    result: list[Piece] = []
    waiting: Piece | None = None
    for piece in pieces:
        if piece.kind is None:
            waiting = piece if waiting is None else waiting.joined(piece)
        elif waiting is None:
            result.append(piece)
        elif piece.kind is SpanKind.OFF and waiting.speed is not None:
            # Nothing was read before the fan was switched off: that alone can't be blamed.
            result += [_unread(waiting), piece]
            waiting = None
        else:
            result.append(
                replace(piece.since(waiting), figures=waiting.figures.beside(piece.figures))
            )
            waiting = None
    if waiting is not None:
        # Where nobody recorded the speed, off goes on until something else was read.
        if result and (result[-1].kind is not SpanKind.OFF or waiting.speed is None):
            result[-1] = result[-1].joined(waiting)
        else:
            result.append(_unread(waiting))
    return joined(result)


def _unread(piece: Piece) -> Piece:
    return replace(piece, kind=SpanKind.NO_CURRENT, settled_by=(Role.MOTOR_FEED, Role.MOTOR_RETURN))
