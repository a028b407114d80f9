"""Whole: what can be told of a recording only once all of it has been seen.

The order counts: each part is given what the parts before it have found.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from meterlog.analysis.drag import drag_finding
from meterlog.analysis.drops import drop_findings
from meterlog.analysis.inferred import Unseen
from meterlog.analysis.judged import Follower, Judged
from meterlog.analysis.labels import Stretch
from meterlog.analysis.levels import Levels
from meterlog.analysis.long_table import Attic
from meterlog.analysis.motor import controller_heat, motor_fit
from meterlog.analysis.ripple import RippleWatch
from meterlog.analysis.rows import Rows
from meterlog.analysis.side_volts import SideVolts
from meterlog.analysis.startup import StartWatch, TimeAbove, fuse_check
from meterlog.analysis.taps import TapWatch
from meterlog.analysis.told_sides import told_by_sides
from meterlog.analysis.verdict import run_verdict
from meterlog.model import Block, Conditions, Event, Finding, Instrument, Limits, Review, Step


class Whole:
    """Follows a recording beside the detector, and adds to its review at the end.

    Parameters
    ----------
    instruments : sequence of Instrument
    limits : Limits
    conditions : Conditions or None
    levels : Levels
        Filled by somebody else with the same rows.
    attic : Attic or None
        Where is laid aside what is too much for memory.
    """

    def __init__(
        self,
        instruments: Sequence[Instrument],
        limits: Limits,
        conditions: Conditions | None,
        levels: Levels,
        attic: Attic | None = None,
    ) -> None:
        self._instruments = tuple(instruments)
        self._limits = limits
        self._conditions = conditions or Conditions()
        self._events: list[Event] = []
        self._side_volts = SideVolts(instruments, limits, attic)
        self._starts = StartWatch(limits)
        self._above = TimeAbove(instruments, limits)
        self._ripple = RippleWatch(instruments, limits)
        self._taps = TapWatch(limits, levels)
        self._unseen = Unseen(instruments, limits)
        self._followers: tuple[Follower, ...] = (
            self._side_volts,
            self._starts,
            self._above,
            self._ripple,
            self._taps,
            self._unseen,
        )

    def take(self, item: Block | Event) -> None:
        """Take the next Block or Event, as it came."""
        if isinstance(item, Event):
            self._events.append(item)
        for follower in self._followers:
            follower.take(item)

    def take_rows(self, rows: Rows, stretches: Sequence[Stretch]) -> None:
        """Take rows side by side, each once."""
        for follower in self._followers:
            follower.take_rows(rows, stretches)

    def with_side_volts(self, steps: Sequence[Step]) -> tuple[Step, ...]:
        """Give the steps with what was read elsewhere in the circuit."""
        return self._side_volts.with_side_volts(steps)

    def completed(self, review: Review) -> Review:
        """Give the review with everything that only the whole recording tells.

        Parameters
        ----------
        review : Review
            Spans, steps with budgets, findings, doubts and notes.
        """
        events = tuple(sorted(self._events, key=lambda event: event.t_ns))
        judged = Judged(
            instruments=self._instruments,
            limits=self._limits,
            conditions=self._conditions,
            spans=review.spans,
            steps=review.steps,
            findings=review.findings,
            doubts=review.doubts,
            events=events,
        )
        judged, review = self._between_readings(judged, review)
        judged = self._by_all_channels(judged)
        judged, review = self._electrical(judged, review)
        judged, review = self._in_time(judged, review)
        review = replace(review, spans=judged.spans, findings=judged.findings)
        return replace(review, verdict=run_verdict(judged, review))

    def _between_readings(self, judged: Judged, review: Review) -> tuple[Judged, Review]:
        """Take blanks and pulses out of the spans, and add what no single reading shows."""
        unseen = self._unseen.found(judged, self._starts.startups(judged))
        judged = replace(judged, spans=unseen.spans, findings=unseen.findings)
        return judged, replace(
            review,
            inferred=unseen.inferred,
            pulsed=unseen.pulsed,
            rhythm=unseen.rhythm,
            notes=(*review.notes, *unseen.notes),
        )

    def _by_all_channels(self, judged: Judged) -> Judged:
        """Let what was read elsewhere in the circuit correct what motor voltage and current say."""
        spans, findings = told_by_sides(judged, self._side_volts)
        return replace(judged, spans=spans, findings=findings)

    def _electrical(self, judged: Judged, review: Review) -> tuple[Judged, Review]:
        """Add drops, start-ups, fuse, motor and heat."""
        judged = _with(judged, drop_findings(judged, self._side_volts))
        drag = drag_finding(judged)
        judged = judged if drag is None else _with(judged, (drag,))
        startups = self._starts.startups(judged)
        fuse, found = fuse_check(judged, startups, self._above.exceedances())
        judged = _with(judged, found)
        motor = motor_fit(judged)
        heat, found, note = controller_heat(judged, self._side_volts.mean)
        judged = _with(judged, found)
        notes = (*review.notes, note) if note else review.notes
        review = replace(review, startups=startups, fuse=fuse, motor=motor, heat=heat, notes=notes)
        return judged, review

    def _in_time(self, judged: Judged, review: Review) -> tuple[Judged, Review]:
        """Add ripple and taps."""
        ripple, found = self._ripple.views(judged)
        judged = _with(judged, found)
        taps = self._taps.evidence(judged)
        return judged, replace(review, ripple=ripple, taps=taps)


def _with(judged: Judged, findings: Sequence[Finding]) -> Judged:
    return replace(judged, findings=(*judged.findings, *findings)) if findings else judged
