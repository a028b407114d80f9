"""Reviewer: everything that is made of a recording, live and afterwards by the same code."""

from __future__ import annotations

import itertools
import operator
from bisect import bisect_left, bisect_right
from collections.abc import Sequence
from dataclasses import dataclass, replace
from datetime import datetime

from meterlog.analysis.budgets import BudgetMaker, rule_words
from meterlog.analysis.detector import SpanDetector
from meterlog.analysis.findings import Around, FindingMaker
from meterlog.analysis.found_steps import FoundCuts, FoundStep, StepFinder
from meterlog.analysis.impossible import Impossible
from meterlog.analysis.judged import Judged
from meterlog.analysis.labels import Stretch
from meterlog.analysis.long_table import Attic
from meterlog.analysis.meter_traps import MeterTraps
from meterlog.analysis.motor import motor_fit
from meterlog.analysis.notes import Passed, events_off, notes
from meterlog.analysis.pieces import Group, Piece
from meterlog.analysis.rows import Rows
from meterlog.analysis.sides import would_settle
from meterlog.analysis.step_findings import StepFindingMaker
from meterlog.analysis.steps import StepCollector
from meterlog.analysis.taken_back import TakenBack
from meterlog.analysis.time_notes import TimeNotes
from meterlog.analysis.timeline import SpeedTimeline
from meterlog.analysis.told_steps import ToldSteps
from meterlog.analysis.typed_roles import TypedRoles
from meterlog.analysis.visibility import (
    PaceSeen,
    catch_chances,
    read_beside,
    running_levels,
    shortest_visible_s,
)
from meterlog.analysis.whole import Whole
from meterlog.model import (
    Block,
    CatchChance,
    Conditions,
    Doubt,
    Event,
    EventKind,
    Finding,
    Instrument,
    Limits,
    MotorFit,
    Review,
    Role,
    Span,
    SpanKind,
    Step,
    channel_of,
    withdrawn_words,
)

_DETAILS = {
    SpanKind.NO_DATA: "silence, overload or a lost instrument",
    SpanKind.OFF: "not asked to run",
    SpanKind.RUNNING: "current within limits, or starting up",
    SpanKind.OVER: "current above the limit of this speed",
    SpanKind.UNDER: "current below the limit of this speed",
    SpanKind.LOCKED: "current of a held rotor",
    SpanKind.DEAD: "full voltage across the motor, next to no current",
    SpanKind.FEED_LOST: "feed gone; a decaying voltage is the coasting motor's own",
    SpanKind.GROUND_LOST: "feed held, return risen towards it",
    SpanKind.COMMAND_LOST: "the command went first, or at the same instant",
    SpanKind.NO_CURRENT: "these channels can't say which side",
}


_Why = tuple[str, str, str, int, tuple[int, ...], tuple[int, ...]]
"""Denied, cause, taken back, version of the budgets, taps, further speeds."""


@dataclass(frozen=True, slots=True)
class _Told:
    """What was made of a piece, with what it was made from."""

    piece: Piece
    after: Piece | None
    why: _Why
    span: Span
    finding: Finding | None


def _detail(piece: Piece, kind: SpanKind) -> str:
    if piece.speed is None and kind in (SpanKind.OFF, SpanKind.DEAD):
        return f"{_DETAILS[kind]}; no command recorded"
    if kind is SpanKind.OVER and piece.speed == 0:
        return "current flows although off is commanded"
    if piece.held_ohm is not None:
        return f"{_DETAILS[kind]} at {piece.figures.mean_v:.1f} V across the motor"
    if piece.late_ns:
        return f"{_DETAILS[kind]}; a command seems {piece.late_ns / 1e9:.2f} s late"
    return _DETAILS[kind]


def _span(piece: Piece, around: Around) -> Span:
    kind = SpanKind.NO_CURRENT if piece.kind is None else piece.kind
    detail = around.cause
    if around.denied:
        detail = f"the current channel is to be doubted: {around.denied}"
    elif around.doubted:
        detail = f"{_detail(piece, kind)}; but {around.doubted}"
    return Span(
        kind=kind,
        start_ns=piece.start_ns,
        end_ns=piece.end_ns,
        start_edge_ns=piece.start_edge_ns,
        end_edge_ns=piece.end_edge_ns,
        speed=piece.speed,
        detail=detail or _detail(piece, kind),
        settled_by=piece.settled_by,
    )


class Reviewer:
    """Judges the readings of one recording.

    Parameters
    ----------
    instruments : sequence of Instrument
        With roles assigned.
    limits : Limits
    started_utc : datetime or None
        Wall time of the recording's zero; None when not known, and then the age of zeros is not.
    conditions : Conditions or None
        Under which it was made: the ambient temperature counts in the uncertainties.
    found : sequence of FoundStep
        Bounds of the steps, where no command was recorded: those of a first review.
    attic : Attic or None
        Where is laid aside what is too much for memory; None: all of it stays there.

    Attributes
    ----------
    found : tuple of FoundStep
        After :meth:`finish`: speed changes found in the current where no command was recorded.
    """

    def __init__(
        self,
        instruments: Sequence[Instrument],
        limits: Limits,
        started_utc: datetime | None = None,
        conditions: Conditions | None = None,
        found: Sequence[FoundStep] = (),
        attic: Attic | None = None,
    ) -> None:
        self._limits = limits
        self._current = channel_of(instruments, Role.MOTOR_CURRENT)
        self._feed_there = channel_of(instruments, Role.MOTOR_FEED) is not None
        self._return_there = channel_of(instruments, Role.MOTOR_RETURN) is not None
        self._budgets = BudgetMaker(instruments, conditions)
        self._instruments = tuple(instruments)
        home = self._budgets.current
        self._pace = None
        if home is not None:
            beside = read_beside(instruments, home.key)
            self._pace = PaceSeen(home.key, home.column, home.channel, beside=beside)
        self._timeline = SpeedTimeline()
        lag_ns = round(limits.command_lag_s * 1e9)
        self.found: tuple[FoundStep, ...] = ()
        self._finder = StepFinder()
        self._cuts = FoundCuts(found, limits) if found else None
        by = self._timeline if self._cuts is None else self._cuts.timeline
        self._steps = StepCollector(by, lag_ns)
        self._detector = SpanDetector(instruments, limits, self._timeline, self._take_rows)
        self._traps = MeterTraps(instruments, limits, self._timeline, started_utc, attic)
        self._maker = FindingMaker(limits, self._budgets)
        self._told_steps = ToldSteps(StepFindingMaker(limits, self._budgets), self._budgets)
        self._typed = TypedRoles(instruments)
        self._impossible = Impossible(instruments)
        self._whole = Whole(instruments, limits, conditions, self._traps.levels, attic)
        self._times = TimeNotes(instruments)
        self._taps_ns: list[int] = []
        self._withdrawn: list[str] = []
        self._told: list[_Told] = []
        self._pieces: Sequence[tuple[Piece, str]] = ()
        """What it was told of, and where in it there is no data."""
        self._blanks: list[int] = []
        self._grounds: tuple[TakenBack, int, int] | None = None

    def feed(self, item: Block | Event) -> None:
        """Take the next Block or Event; see :meth:`SpanDetector.feed` for their order."""
        if isinstance(item, Event) and item.kind is EventKind.TAP:
            self._taps_ns.append(item.t_ns)
        if isinstance(item, Event) and item.kind is EventKind.WITHDRAWN:
            self._withdrawn.append(withdrawn_words(item))
        if isinstance(item, Event):
            self._times.take(item)
            self._budgets.take(item)
        else:
            item = self._impossible.without(item)
            if self._pace is not None:
                self._pace.take(item)
        self._traps.take(item)
        self._whole.take(item)
        self._detector.feed(item)

    def _take_rows(self, rows: Rows, stretches: Sequence[Stretch]) -> None:
        cut = stretches if self._cuts is None else self._cuts.recut(rows, stretches)
        self._steps.take(rows, cut)
        if self._cuts is None and not self._timeline.changes:
            self._finder.take_rows(rows, stretches)
        if stretches:
            self._traps.take_rows(rows.part(stretches[0].start, stretches[-1].stop))
        self._whole.take_rows(rows, stretches)

    @property
    def state(self) -> tuple[int, SpanKind | None]:
        """Tell spans settled and the kind of the open one: a change means that there is news."""
        return self._detector.state

    def live(self) -> Review:
        """Give the review as if the recording ended with the last reading judged so far."""
        return self._review(self._detector.provisional(), ended=False)

    def finish(self, part: str = "") -> Review:
        """Judge what still waits and give the final review; ``part`` is the review's."""
        self._detector.finish()
        self._steps.finish()
        review = self._review(self._detector.pieces(), ended=True)
        if not self._timeline.changes and self._cuts is None:
            taps = tuple(Event(t_ns, EventKind.TAP) for t_ns in sorted(self._taps_ns))
            judged = Judged(self._instruments, self._limits, spans=review.spans, events=taps)
            self.found = self._finder.changes(judged)
        return self._whole.completed(replace(review, part=part))

    def _review(self, pieces: Sequence[Piece], *, ended: bool) -> Review:
        gathered = self._steps.steps()
        if self._cuts is not None:
            gathered = self._cuts.told(gathered)
        steps = self._budgets.with_budgets(self._whole.with_side_volts(gathered))
        believed = self._traps.believed(pieces)
        doubts = self._traps.doubts(steps, believed, ended=ended)
        taken_back = TakenBack(self._instruments, doubts, self._limits)
        told = self._tell(believed, taken_back)
        faults = [one.finding for one in told if one.finding is not None]
        spans = tuple(map(operator.attrgetter("span"), told))
        fit = self._fit(spans, steps, doubts)
        verdicts = self._told_steps.of_steps(steps, faults, taken_back, fit)
        told_verdicts = (self._typed.marked(one) for one in verdicts if one is not None)
        findings = (*faults, *told_verdicts)
        shortest: float | None = None
        chances: tuple[CatchChance, ...] = ()
        read = any(span.kind is not SpanKind.NO_DATA for span in spans)
        if read and self._current is not None and Role.MOTOR_CURRENT not in self._typed:
            widest = self._current if self._pace is None else self._pace.channel
            shortest = shortest_visible_s(widest, self._limits.min_dwell_s)
            chances = catch_chances(
                widest,
                self._limits.min_dwell_s,
                running_levels(self._limits, steps),
                None if self._pace is None else self._pace.pace,
            )
        return Review(
            spans=spans,
            steps=steps,
            findings=findings,
            shortest_visible_dropout_s=shortest,
            catch_chances=chances,
            notes=(
                *(doubt.text for doubt in doubts),
                *self._traps.notes(),
                *self._notes(steps, findings),
            ),
            doubts=doubts,
            decision_rule=rule_words(self._limits),
            brief=self._detector.builder.brief,
            brief_s=self._detector.builder.brief_ns / 1e9,
        )

    def _fit(
        self, spans: tuple[Span, ...], steps: tuple[Step, ...], doubts: tuple[Doubt, ...]
    ) -> MotorFit | None:
        """Give the motor's figures, where the limits hold at a voltage that they bring it to."""
        if not self._limits.at_reference:
            return None
        judged = Judged(self._instruments, self._limits, spans=spans, steps=steps, doubts=doubts)
        return motor_fit(judged)

    def _tell(self, pieces: Sequence[tuple[Piece, str]], taken_back: TakenBack) -> list[_Told]:
        """Make span and finding of each piece; what was told before and still holds is kept."""
        taps = sorted(self._taps_ns)
        version = self._budgets.version
        grounds = taken_back, len(taps), version
        same_grounds = grounds == self._grounds
        self._grounds = grounds
        # An hour has thousands of pieces: only those after the last that stands can change, and
        # why there is no data, as a meter may tell of it late.
        stands = max(_first_new(self._pieces, pieces) - 1, 0) if same_grounds else 0
        self._pieces = pieces
        told = self._told[:stands]
        again = self._blanks[: bisect_left(self._blanks, stands)]
        blanks = (at for at in range(stands, len(pieces)) if pieces[at][0].kind is SpanKind.NO_DATA)
        self._blanks = [*again, *blanks]
        for index in (*again, *range(stands, len(pieces))):
            piece, why = pieces[index]
            after = pieces[index + 1][0] if index + 1 < len(pieces) else None
            known = self._told[index] if index < len(self._told) else None
            cause = ""
            if piece.kind is SpanKind.NO_DATA:
                cause = self._traps.cause(piece) or self._typed.cause()
            same = known is not None and _same(known.piece, piece) and _same(known.after, after)
            last_ns = piece.end_ns + piece.end_edge_ns
            near = tuple(taps[bisect_left(taps, piece.start_ns) : bisect_right(taps, last_ns)])
            back = taken_back.of_piece(piece, self._maker.most_a(piece)) or self._brief(piece)
            further = self._further_speeds(piece)
            why_told = (why, cause, back, version, near, further)
            if known is None or not same or known.why != why_told:
                around = Around(
                    taps_ns=near,
                    returned=after is not None and after.group is Group.FLOWING,
                    from_start=index == 0,
                    to_end=after is None,
                    denied=why,
                    cause=cause,
                    doubted=why_told[2],
                    further_speeds=further,
                )
                known = self._tell_one(piece, after, around, why_told)
            told[index : index + 1] = [known]
        self._told = told
        return told

    def _further_speeds(self, piece: Piece) -> tuple[int, ...]:
        """Give the speeds other than a stretch's own that were commanded within it, in order.

        What was commanded for less than lasts as a condition, or than its edge is known to, may
        have been commanded for what comes before or after. Of a stretch without data the ends are
        those of the readings, which say nothing of the commands within.
        """
        changes = self._timeline.between(piece.start_ns, piece.end_ns)
        if piece.speed is None or not changes:
            return ()
        edge_ns = 0 if piece.kind is SpanKind.NO_DATA else piece.end_edge_ns
        least_ns = max(round(self._limits.min_dwell_s * 1e9), edge_ns)
        ends = [*(one.t_ns for one in changes[1:]), piece.end_ns]
        return tuple(
            one.speed
            for one, end_ns in zip(changes, ends, strict=True)
            if one.speed not in {0, piece.speed} and end_ns - one.t_ns > least_ns
        )

    def _brief(self, piece: Piece) -> str:
        """Give why a stretch is too short to be believed: only gaps on both sides leave such."""
        dwell_s = self._limits.min_dwell_s
        if piece.kind is SpanKind.NO_DATA or piece.length_ns >= round(dwell_s * 1e9):
            return ""
        return (
            f"readings are missing before and after, and what lasts less than {dwell_s:g} s is no"
            f" condition of its own"
        )

    def _tell_one(self, piece: Piece, after: Piece | None, around: Around, why: _Why) -> _Told:
        finding = self._maker.of_piece(piece, around)
        marked = None if finding is None else self._typed.marked(finding)
        return _Told(piece, after, why, _span(piece, around), marked)

    def _notes(self, steps: Sequence[Step], findings: Sequence[Finding]) -> list[str]:
        builder = self._detector.builder
        missing = would_settle(
            feed=self._feed_there,
            back=self._return_there,
            speed=any(step.speed is not None for step in steps),
        )
        passed = Passed(
            brief=builder.brief,
            brief_s=builder.brief_ns / 1e9,
            forgiven=builder.forgiven,
            late=builder.late[0],
            late_s=builder.late[1] / 1e9,
            events_off=events_off(self._timeline, self._detector.first_ns, self._detector.last_ns),
        )
        told = notes(self._limits, self._current, missing, steps, findings, passed)
        traced = self._impossible.notes() + self._typed.notes() + self._times.notes()
        return told + self._withdrawn + traced


def _same(one: Piece | None, other: Piece | None) -> bool:
    """Tell whether two pieces are the same; nearly always they are one and the same object."""
    return one is other or one == other


def _first_new(before: Sequence[tuple[Piece, str]], now: Sequence[tuple[Piece, str]]) -> int:
    """Give how many pieces from the first on are as they were."""
    differ = map(operator.ne, before, now)
    return next(itertools.compress(itertools.count(), differ), min(len(before), len(now)))
