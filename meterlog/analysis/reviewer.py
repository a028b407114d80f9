"""Reviewer: everything that is made of a recording, live and afterwards by the same code."""

from __future__ import annotations

from collections.abc import Sequence

from meterlog.analysis.detector import SpanDetector
from meterlog.analysis.findings import FindingMaker
from meterlog.analysis.pieces import Piece
from meterlog.analysis.sides import would_settle
from meterlog.analysis.steps import StepCollector
from meterlog.analysis.timeline import SpeedTimeline
from meterlog.analysis.visibility import catch_chances, shortest_visible_s
from meterlog.model import (
    Block,
    CatchChance,
    Channel,
    Event,
    EventKind,
    Finding,
    FindingKind,
    Instrument,
    Limits,
    Review,
    Role,
    Span,
    SpanKind,
    Step,
)

_DETAILS = {
    SpanKind.NO_DATA: "silence, overload or a lost instrument",
    SpanKind.OFF: "not asked to run",
    SpanKind.RUNNING: "current within limits",
    SpanKind.OVER: "current above the limit of this speed",
    SpanKind.UNDER: "current below the limit of this speed",
    SpanKind.LOCKED: "current of a held rotor",
    SpanKind.DEAD: "full voltage across the motor, next to no current",
    SpanKind.FEED_LOST: "feed gone; a decaying voltage is the coasting motor's own",
    SpanKind.GROUND_LOST: "feed held, return risen towards it",
    SpanKind.NO_CURRENT: "these channels can't say which side",
}


def _channel(instruments: Sequence[Instrument], role: Role) -> Channel | None:
    for instrument in instruments:
        index = instrument.column(role)
        if index is not None:
            return instrument.channels[index]
    return None


def _detail(piece: Piece, kind: SpanKind) -> str:
    if piece.speed is None and kind in (SpanKind.OFF, SpanKind.DEAD):
        return f"{_DETAILS[kind]}; no command recorded"
    if kind is SpanKind.RUNNING and piece.speed == 0:
        return "current flows although off is commanded"
    return _DETAILS[kind]


def _span(piece: Piece) -> Span:
    kind = SpanKind.NO_CURRENT if piece.kind is None else piece.kind
    return Span(
        kind=kind,
        start_ns=piece.start_ns,
        end_ns=piece.end_ns,
        start_edge_ns=piece.start_edge_ns,
        end_edge_ns=piece.end_edge_ns,
        speed=piece.speed,
        detail=_detail(piece, kind),
        settled_by=piece.settled_by,
    )


class Reviewer:
    """Judges the readings of one recording.

    Parameters
    ----------
    instruments : sequence of Instrument
        With roles assigned.
    limits : Limits
    """

    def __init__(self, instruments: Sequence[Instrument], limits: Limits) -> None:
        self._limits = limits
        self._current = _channel(instruments, Role.MOTOR_CURRENT)
        self._feed_there = _channel(instruments, Role.MOTOR_FEED) is not None
        self._return_there = _channel(instruments, Role.MOTOR_RETURN) is not None
        accuracy = self._current.accuracy if self._current else None
        timeline = SpeedTimeline()
        self._steps = StepCollector(timeline, accuracy)
        self._detector = SpanDetector(instruments, limits, timeline, self._steps.take)
        self._maker = FindingMaker(limits, accuracy)
        self._taps_ns: list[int] = []

    def feed(self, item: Block | Event) -> None:
        """Take the next Block or Event; see :meth:`SpanDetector.feed` for their order."""
        if isinstance(item, Event) and item.kind is EventKind.TAP:
            self._taps_ns.append(item.t_ns)
        self._detector.feed(item)

    def live(self) -> Review:
        """Give the review as if the recording ended with the last reading judged so far."""
        return self._review(self._detector.provisional())

    def finish(self) -> Review:
        """Judge what still waits and give the final review."""
        self._detector.finish()
        return self._review(self._detector.pieces())

    def _review(self, pieces: Sequence[Piece]) -> Review:
        steps = self._steps.steps()
        taps = sorted(self._taps_ns)
        stated = [self._maker.of_piece(piece, taps) for piece in pieces]
        faults = [finding for finding in stated if finding is not None]
        verdicts = [self._maker.of_step(step, faults) for step in steps]
        findings = (*faults, *(verdict for verdict in verdicts if verdict is not None))
        shortest: float | None = None
        chances: tuple[CatchChance, ...] = ()
        if self._current is not None:
            shortest = shortest_visible_s(self._current, self._limits.min_dwell_s)
            chances = catch_chances(self._current, self._limits.min_dwell_s)
        return Review(
            spans=tuple(_span(piece) for piece in pieces),
            steps=steps,
            findings=findings,
            shortest_visible_dropout_s=shortest,
            catch_chances=chances,
            notes=tuple(self._notes(steps, findings)),
        )

    def _notes(self, steps: Sequence[Step], findings: Sequence[Finding]) -> list[str]:
        notes = []
        speed_known = any(step.speed is not None for step in steps)
        missing = would_settle(feed=self._feed_there, back=self._return_there, speed=speed_known)
        if self._current is None:
            notes.append("No motor-current channel: nothing can be said about the motor.")
        elif self._current.accuracy is None:
            notes.append(
                "The accuracy of the current channel is not stated: uncertainties hold the"
                " scatter of the readings alone."
            )
        if missing:
            named = ", ".join(role.value for role in missing)
            notes.append(f"Not recorded: {named}. Some causes can't be told apart without.")
        if any(step.steady_mean_a is not None and step.steady_mean_a < 0 for step in steps):
            notes.append("The motor current reads negative: the clamp is on the wrong way round.")
        if any(finding.kind is FindingKind.NO_DATA for finding in findings):
            notes.append("There are stretches without data: what happened then is not known.")
        return notes
