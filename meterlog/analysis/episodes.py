"""EpisodeBuilder: Pieces to Spans. A condition must last before it is believed.

Current flowing and current gone are told apart first; each such episode must last ``min_dwell_s``
or it is part of what was before. Only then are the finer labels within an episode settled, by
``flowing.py`` and ``missing.py``.
"""

from __future__ import annotations

import copy
import itertools
from collections.abc import Sequence
from dataclasses import replace

from meterlog.analysis.coasting_down import CoastingDown
from meterlog.analysis.flowing import FlowingJudge
from meterlog.analysis.late_hand import LateHand
from meterlog.analysis.late_off import LateOff
from meterlog.analysis.missing import MissingJudge
from meterlog.analysis.pieces import Figures, Group, Piece
from meterlog.analysis.timeline import SpeedTimeline
from meterlog.model import Limits, SpanKind

_PULSED = "pulsed"


class EpisodeBuilder:
    """Collects Pieces into Spans' worth of Pieces.

    Parameters
    ----------
    limits : Limits
    timeline : SpeedTimeline
    silence_ns : int, nanoseconds
        Missing readings that last no longer are bridged where both sides agree.
    apart_ns : int or None, nanoseconds
        See :class:`MissingJudge`.

    Attributes
    ----------
    brief : int
        Dropouts of the current, asked for, that were shorter than the dwell.
    brief_ns : int, nanoseconds
        Their length, added up.
    """

    def __init__(
        self,
        limits: Limits,
        timeline: SpeedTimeline,
        silence_ns: int = 0,
        apart_ns: int | None = None,
    ) -> None:
        self._dwell_ns = round(limits.min_dwell_s * 1e9)
        self._pulsed = limits.controller.kind == _PULSED
        self._coast_ns = round(limits.coast_s * 1e9)
        self._silence_ns = silence_ns
        self._flowing = FlowingJudge(limits, timeline)
        self._missing = MissingJudge(limits, timeline, apart_ns)
        self._coasting = CoastingDown(limits, timeline)
        self._late_off = LateOff(limits, timeline)
        self._late_hand = LateHand(limits, timeline)
        self._forgiven = 0
        self._group: Group | None = None
        self._flowed_before = False
        self._paused_ns = 0
        self._episode: list[Piece] = []
        self._candidate: list[Piece] = []
        self._weight_ns = 0
        self._bridge: Piece | None = None
        self._finished: list[Piece] = []
        self.brief = 0
        self.brief_ns = 0

    def copy(self) -> EpisodeBuilder:
        """Give a copy that can be finished without disturbing this one; without what is done."""
        other = copy.copy(self)
        other.detach()
        return other

    def detach(self) -> None:
        """Share nothing that changes with the builder that this one was copied from."""
        self._missing = copy.copy(self._missing)
        self._episode = list(self._episode)
        self._candidate = list(self._candidate)
        self._finished = self._finished[-1:]

    @property
    def finished(self) -> list[Piece]:
        """Pieces that are settled; the last one may still grow."""
        return self._finished

    @property
    def forgiven(self) -> int:
        """Losses that were taken for an off or on command."""
        return self._missing.forgiven + self._forgiven

    @property
    def late(self) -> tuple[int, int]:
        """At how many starts the current came later than the voltage, and by how many ns."""
        return self._missing.late, self._missing.late_ns

    def excuse(self, until_ns: int | None) -> None:
        """Take back what a command explains that was known, or off, only after a while.

        Parameters
        ----------
        until_ns : int or None, nanoseconds
            Up to here all commands are known; None: all are.
        """
        self._coasting.excuse(self._finished, until_ns)
        self._forgiven += self._late_off.excuse(self._finished, until_ns)
        self._late_hand.excuse(self._finished, until_ns)

    def add(self, piece: Piece) -> None:
        """Take the next piece; it touches the one before."""
        if piece.group is Group.UNKNOWN:
            self._add_unknown(piece)
            return
        if self._bridge is not None:
            self._cross(self._bridge, piece)
        if self._group is None:
            self._group, self._episode = piece.group, [piece]
        elif piece.group is self._group and not self._candidate:
            self._episode.append(piece)
        else:
            self._weigh(piece)

    def _weigh(self, piece: Piece) -> None:
        """Let time that says the one and time that says the other stand against each other.

        A motor with a dead bar that is read fast has no current for a moment in every turn: it
        neither stands nor must it run without a notch to be believed to run.
        """
        self._candidate.append(piece)
        self._add_weight(piece)
        if self._weight_ns >= self._dwell_ns:
            self._change_over()
        elif self._weight_ns <= 0 and piece.group is self._group:
            self._absorb()

    def _add_weight(self, piece: Piece) -> None:
        """Count a piece for the candidate or against it.

        Where a controller is said to pulse, the pauses between pulses take most of the time on low
        speeds, and a current that is found in between all along has not gone: only what is gone
        for the dwell without a break counts against current that flows, and none of less.
        """
        other = piece.group is not self._group
        if not self._pulsed:
            self._weight_ns += piece.length_ns * (1 if other else -1)
        elif other:
            self._weight_ns += piece.length_ns
        elif self._group is Group.FLOWING or self._gone_ns() >= self._dwell_ns:
            self._weight_ns = 0

    def _gone_ns(self) -> int:
        """Give how long the newest pieces of the candidate have been without current."""
        gone = itertools.takewhile(lambda one: one.group is Group.GONE, reversed(self._candidate))
        return sum(one.length_ns for one in gone)

    def _add_unknown(self, piece: Piece) -> None:
        brief = piece.length_ns <= self._silence_ns and self._bridge is None
        if brief and self._group is not None:
            self._bridge = piece
            return
        flowed = self._group is Group.FLOWING
        self._end_episode(piece)
        self._finish([piece])
        # A motor that turned before a short pause in the readings may still turn after it.
        self._flowed_before = flowed and piece.length_ns <= self._coast_ns
        self._paused_ns = piece.length_ns

    def _cross(self, bridge: Piece, piece: Piece) -> None:
        """Join over a reading or two that are missing, if both sides say the same."""
        self._bridge = None
        near = self._candidate or self._episode
        if near[-1].group is piece.group:
            near[-1] = near[-1].until(bridge)
            if self._candidate:
                sign = -1 if piece.group is self._group else 1
                self._weight_ns += sign * bridge.length_ns
        else:
            flowed = near[-1].group is Group.FLOWING
            self._end_episode(bridge)
            self._finish([bridge])
            self._flowed_before, self._paused_ns = flowed, bridge.length_ns

    def finish(self) -> None:
        """End what is open."""
        self._end_episode()

    def _absorb(self) -> None:
        """Let a candidate that did not last be part of the episode after all."""
        if self._candidate:
            self._episode = self._folded(self._episode, self._candidate)
        self._candidate, self._weight_ns = [], 0

    def _folded(self, pieces: Sequence[Piece], more: Sequence[Piece]) -> list[Piece]:
        """Give pieces of one group with ``more``, of which the other group's are passed over."""
        result, group = list(pieces), pieces[0].group
        for same, run in itertools.groupby(more, lambda piece: piece.group is group):
            if same:
                result.extend(run)
                continue
            brief = list(run)
            first, last = brief[0], brief[-1]
            asked = any(piece.kind is not SpanKind.OFF for piece in brief)
            if first.group is Group.GONE and asked and last.end_ns > first.start_ns:
                self.brief += 1
                self.brief_ns += last.end_ns - first.start_ns
            result[-1] = _over_brief(result[-1], first).until(last)
        return result

    def _change_over(self) -> None:
        """Believe the candidate: the episode before it is over."""
        coming = self._folded(self._candidate[:1], self._candidate[1:])
        length = self._episode[-1].end_ns - self._episode[0].start_ns
        if length < self._dwell_ns and self._is_first():
            coming = [coming[0].since(self._episode[0]), *coming[1:]]
        else:
            self._finish(self._judge(coming[0]))
            self._flowed_before, self._paused_ns = self._group is Group.FLOWING, 0
        self._episode, self._candidate, self._weight_ns = coming, [], 0
        self._group = coming[0].group

    def _is_first(self) -> bool:
        return not self._finished or self._finished[-1].kind is SpanKind.NO_DATA

    def _end_episode(self, unread: Piece | None = None) -> None:
        """End the episode because nothing is known of what follows: ``unread``, or the end."""
        bridge, self._bridge = self._bridge, None
        self._absorb()
        if self._episode:
            self._finish(self._judge(None, unread or bridge))
        if bridge is not None:
            self._finish([bridge])
        self._episode, self._group, self._flowed_before = [], None, False

    def _finish(self, pieces: Sequence[Piece]) -> None:
        for piece in pieces:
            if self._finished and self._finished[-1].alike(piece):
                self._finished[-1] = self._finished[-1].joined(piece)
            else:
                self._finished.append(piece)

    def _judge(self, after: Piece | None, unread: Piece | None = None) -> list[Piece]:
        if self._group is Group.FLOWING:
            blind_ns = None if unread is None else unread.end_ns
            return self._flowing.judge(self._episode, blind_ns)
        flowed_ns = self._paused_ns if self._flowed_before else None
        before = next((p for p in self._finished[:-3:-1] if p.group is Group.FLOWING), None)
        return self._missing.judge(self._episode, before, after, flowed_ns)


def _over_brief(before: Piece, gone: Piece) -> Piece:
    """Give what stands before a brief dropout: a reading half-way down to it is no condition."""
    if gone.group is Group.GONE and before.kind is SpanKind.UNDER and before.is_ramp:
        return replace(before, kind=SpanKind.RUNNING, figures=Figures())
    return before
