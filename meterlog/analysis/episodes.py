"""EpisodeBuilder: Pieces to Spans. A condition must last before it is believed.

Current flowing and current gone are told apart first; each such episode must last ``min_dwell_s``
or it is part of what was before. Only then are the finer labels within an episode settled, by the
same rule. Then two innocent reasons for missing current are taken out: the command itself (a
relay takes its time, a thumb is late on the key) and a step down, after which the turning motor
draws nothing until it has slowed.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from meterlog.analysis.pieces import Figures, Group, Piece
from meterlog.analysis.timeline import SpeedTimeline
from meterlog.model import Limits, Role, SpanKind

_LOSSES = (SpanKind.FEED_LOST, SpanKind.GROUND_LOST, SpanKind.NO_CURRENT)

COASTED_DOWN_TO = 0.7
"""A motor that was coasting down to a lower step draws again when its own voltage has fallen to
about what that step gives it; one that had lost its feed or ground has fallen below this part."""


@dataclass(frozen=True, slots=True)
class _Situation:
    """What an episode is judged by besides its own pieces: current before, and what follows."""

    flowed_before: bool
    after: Piece | None


def settle(pieces: Sequence[Piece], dwell_ns: int) -> list[Piece]:
    """Take out labels that do not last.

    Parameters
    ----------
    pieces : sequence of Piece
        Touching, of one episode.
    dwell_ns : int, nanoseconds

    Returns
    -------
    list of Piece
        A piece shorter than ``dwell_ns`` becomes part of the one before; a leading one of the
        one after. Equal neighbours are joined.
    """
    settled: list[Piece] = []
    for piece in pieces:
        if not settled:
            settled.append(piece)
        elif piece.kind is settled[-1].kind:
            settled[-1] = settled[-1].joined(piece)
        elif len(settled) == 1 and settled[0].length_ns < dwell_ns:
            settled[0] = piece.since(settled[0])
        elif piece.length_ns < dwell_ns:
            settled[-1] = settled[-1].until(piece)
        else:
            settled.append(piece)
    return settled


def joined(pieces: Sequence[Piece]) -> list[Piece]:
    """Join neighbours of one label."""
    return settle(pieces, 0)


class EpisodeBuilder:
    """Collects Pieces into Spans' worth of Pieces.

    Parameters
    ----------
    limits : Limits
    timeline : SpeedTimeline
    """

    def __init__(self, limits: Limits, timeline: SpeedTimeline) -> None:
        self._timeline = timeline
        self._dwell_ns = round(limits.min_dwell_s * 1e9)
        self._lag_ns = round(limits.command_lag_s * 1e9)
        self._coast_ns = round(limits.coast_s * 1e9)
        self._group: Group | None = None
        self._flowed_before = False
        self._episode: list[Piece] = []
        self._candidate: list[Piece] = []
        self._finished: list[Piece] = []

    def copy(self) -> EpisodeBuilder:
        """Give a copy that can be finished without disturbing this one; without what is done."""
        other = object.__new__(EpisodeBuilder)
        other.__dict__.update(self.__dict__)
        other._episode = list(self._episode)
        other._candidate = list(self._candidate)
        other._finished = self._finished[-1:]
        return other

    @property
    def finished(self) -> list[Piece]:
        """Pieces that are settled; the last one may still grow."""
        return self._finished

    def add(self, piece: Piece) -> None:
        """Take the next piece; it touches the one before."""
        group = piece.group
        if group is Group.UNKNOWN:
            self._end_at_unknown()
            self._finish([piece])
        elif self._group is None:
            self._group, self._episode = group, [piece]
        elif group is self._group:
            if self._candidate:  # it did not last: part of this episode after all
                self._episode[-1] = self._episode[-1].until(self._candidate[-1])
                self._candidate = []
            self._episode.append(piece)
        else:
            self._candidate.append(piece)
            if self._candidate[-1].end_ns - self._candidate[0].start_ns >= self._dwell_ns:
                self._change_over()

    def finish(self) -> None:
        """End what is open."""
        self._end_at_unknown()

    def _change_over(self) -> None:
        """Believe the candidate: the episode before it is over."""
        coming = self._candidate
        length = self._episode[-1].end_ns - self._episode[0].start_ns
        if length < self._dwell_ns and self._is_first():
            coming = [coming[0].since(self._episode[0]), *coming[1:]]
        else:
            situation = _Situation(self._flowed_before, coming[0])
            self._finish(self._judge(self._episode, situation))
            self._flowed_before = self._group is Group.FLOWING
        self._episode, self._candidate = coming, []
        self._group = coming[0].group

    def _is_first(self) -> bool:
        return not self._finished or self._finished[-1].kind is SpanKind.NO_DATA

    def _end_at_unknown(self) -> None:
        if self._candidate:
            self._episode[-1] = self._episode[-1].until(self._candidate[-1])
            self._candidate = []
        if self._episode:
            situation = _Situation(self._flowed_before, None)
            self._finish(self._judge(self._episode, situation))
        self._episode, self._group, self._flowed_before = [], None, False

    def _finish(self, pieces: Sequence[Piece]) -> None:
        for piece in pieces:
            if self._finished and self._finished[-1].kind is piece.kind:
                self._finished[-1] = self._finished[-1].joined(piece)
            else:
                self._finished.append(piece)

    def _judge(self, pieces: list[Piece], situation: _Situation) -> list[Piece]:
        if pieces[0].group is Group.FLOWING:
            steady = self._hurried(settle(pieces, self._dwell_ns))
            return joined([*steady[:-1], _averaged(steady[-1], situation.after)])
        pieces = settle(_from_command(_determined(pieces), self._dwell_ns), self._dwell_ns)
        return self._coasting(self._commanded(pieces), situation)

    def _hurried(self, pieces: list[Piece]) -> list[Piece]:
        """Give a current that left its limits only just before a new speed to that speed.

        A thumb is late on the key, or the meter's reading averages over the change.
        """
        result = list(pieces)
        for index, piece in enumerate(pieces):
            slack = max(self._lag_ns, 2 * max(piece.start_edge_ns, piece.end_edge_ns))
            near = self._timeline.between(
                piece.end_ns - piece.end_edge_ns - 1, piece.end_ns + piece.end_edge_ns
            )
            judged = piece.kind in (SpanKind.OVER, SpanKind.UNDER) and not piece.after_quiet
            if judged and near and piece.length_ns < slack:
                result[index] = replace(piece, kind=SpanKind.RUNNING, figures=Figures())
        return joined(result)

    def _commanded(self, pieces: list[Piece]) -> list[Piece]:
        """Losses right beside an off command, and no longer than its lag, are the command."""
        result = list(pieces)
        for index, piece in enumerate(pieces):
            beside = pieces[max(index - 1, 0) : index + 2]
            off = any(other.kind is SpanKind.OFF for other in beside)
            if off and piece.kind in _LOSSES and piece.length_ns < self._lag_ns:
                result[index] = replace(piece, kind=SpanKind.OFF, figures=Figures())
        return joined(result)

    def _coasting(self, pieces: list[Piece], situation: _Situation) -> list[Piece]:
        """After a step down the turning motor generates more than it is given, for a while."""
        first, last = pieces[0], pieces[-1]
        after = situation.after
        if not situation.flowed_before or after is None:
            return pieces
        if last.end_ns - first.start_ns > self._coast_ns or _fell_below(last, after):
            return pieces
        if any(piece.kind not in _LOSSES for piece in pieces):
            return pieces
        slack = self._lag_ns + first.start_edge_ns
        if not self._timeline.step_down_near(first.start_ns, slack):
            return pieces
        return [replace(first.until(last), kind=SpanKind.RUNNING, figures=Figures())]


def _averaged(piece: Piece, after: Piece | None) -> Piece:
    """Take one low reading right before a dropout for what it is: partly the dropout itself."""
    lone = piece.length_ns <= max(piece.start_edge_ns, piece.end_edge_ns)
    if after is None or piece.kind is not SpanKind.UNDER or not lone:
        return piece
    return replace(piece, kind=SpanKind.RUNNING, figures=Figures())


def _fell_below(last: Piece, after: Piece) -> bool:
    """Tell whether the motor's own voltage fell further than coasting down explains."""
    if last.last_v is None or after.first_v is None:
        return False
    return last.last_v < COASTED_DOWN_TO * after.first_v


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


def _determined(pieces: list[Piece]) -> list[Piece]:
    """Give stretches without a voltage reading to the side that the next reading showed."""
    result: list[Piece] = []
    waiting: Piece | None = None
    for piece in pieces:
        if piece.kind is None:
            waiting = piece if waiting is None else waiting.joined(piece)
        elif waiting is None:
            result.append(piece)
        elif piece.kind is SpanKind.OFF:
            # Nothing was read before the fan was switched off: that alone can't be blamed.
            result += [_unread(waiting), piece]
            waiting = None
        else:
            result.append(
                replace(piece.since(waiting), figures=waiting.figures.plus(piece.figures))
            )
            waiting = None
    if waiting is not None:
        if result and result[-1].kind is not SpanKind.OFF:
            result[-1] = result[-1].joined(waiting)
        else:
            result.append(_unread(waiting))
    return joined(result)


def _unread(piece: Piece) -> Piece:
    return replace(piece, kind=SpanKind.NO_CURRENT, settled_by=(Role.MOTOR_FEED, Role.MOTOR_RETURN))
