"""TapWatch: follows a recording, and says at its end what the taps prove."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from meterlog.analysis.judged import Judged
from meterlog.analysis.labels import Stretch
from meterlog.analysis.levels import Levels
from meterlog.analysis.rows import Rows
from meterlog.analysis.taps import form
from meterlog.analysis.taps.attempts import REACH_NS, Attempt, TapReader
from meterlog.analysis.taps.chance import chance_of, returns_of
from meterlog.analysis.taps.controls import clamp_zero, lasting_controls, leads_moved
from meterlog.analysis.taps.gone_readings import GoneFigures, GoneReadings
from meterlog.analysis.taps.gone_stretches import gone_stretches
from meterlog.analysis.taps.seen import Seen, instrument_of
from meterlog.analysis.taps.summary import summary_of
from meterlog.analysis.timeline import SpeedTimeline
from meterlog.model import Block, Event, EventKind, Limits, Role, Tap, TapEvidence


class TapWatch:
    """Follows what the taps are judged by: the levels, and the readings without current.

    Parameters
    ----------
    limits : Limits
    levels : Levels or None
        Those of the recording where somebody else fills them already; else it keeps its own.
    """

    def __init__(self, limits: Limits, levels: Levels | None = None) -> None:
        self._own_levels = levels is None
        self._levels = Levels() if levels is None else levels
        self._gone = GoneReadings(limits.open_current_a)

    def take(self, item: Block | Event) -> None:
        """Take the next Block or Event: nothing is needed of them but what ``Judged`` gives."""

    def take_rows(self, rows: Rows, stretches: Sequence[Stretch]) -> None:
        """Take rows side by side, each once."""
        if not stretches:
            return
        part = rows.part(stretches[0].start, stretches[-1].stop)
        if self._own_levels:
            self._levels.take(part)
        self._gone.take(part)

    def evidence(self, judged: Judged) -> TapEvidence | None:
        """Give what the taps show; None where nobody tapped, or no current was read.

        Parameters
        ----------
        judged : Judged
            Of the whole recording.

        Source
        ------
        The form: see :mod:`meterlog.analysis.taps.form`. The probability: see
        :func:`meterlog.analysis.taps.chance.chance_of`.
        """
        taps_ns = [event.t_ns for event in judged.events if event.kind is EventKind.TAP]
        if not taps_ns or instrument_of(judged.instruments, Role.MOTOR_CURRENT) is None:
            return None
        seen = self._seen(judged, taps_ns)
        returns = returns_of(seen.stretches, REACH_NS)
        chance, permutations = chance_of([one.times_ns for one in seen.tried], returns)
        checks = (
            form.repeats(seen),
            form.gone(seen),
            form.across(seen),
            form.back(seen),
            form.base_line(seen),
            leads_moved(seen),
            clamp_zero(seen),
            *lasting_controls(seen),
        )
        evidence = TapEvidence(
            taps=tuple(tap for attempt in seen.attempts for tap in attempt.taps),
            tried=len(seen.tried),
            answered=sum(one.answered for one in seen.tried),
            chance=chance,
            permutations=permutations,
            checks=checks,
            accepted=form.of_form(checks),
            summary="",
            attempts=len(seen.attempts),
        )
        evidence = _with_figures(evidence, seen)
        return replace(evidence, summary=summary_of(evidence, seen))

    def _seen(self, judged: Judged, taps_ns: Sequence[int]) -> Seen:
        timeline = SpeedTimeline()
        for event in judged.events:
            timeline.add(event)
        stretches = gone_stretches(judged.spans, timeline)
        reader = TapReader(judged.spans, stretches, timeline, self._levels)
        attempts = reader.attempts(taps_ns)
        both = all(
            instrument_of(judged.instruments, role) is not None
            for role in (Role.MOTOR_FEED, Role.MOTOR_RETURN)
        )
        figures = [self._figures(one, both=both) for one in attempts if one.tried]
        return Seen(
            judged, self._levels, timeline, tuple(stretches), tuple(attempts), tuple(figures)
        )

    def _figures(self, attempt: Attempt, *, both: bool) -> GoneFigures:
        gone = attempt.gone
        if gone is None:
            return GoneFigures()
        return self._gone.within(gone.start_ns, gone.end_ns, across=both)


def _mean(values: Sequence[float | None]) -> float | None:
    known = [value for value in values if value is not None]
    return sum(known) / len(known) if known else None


def _with_figures(evidence: TapEvidence, seen: Seen) -> TapEvidence:
    """Add the means over the answered attempts, and the slowest answer."""
    met = [(index, attempt.answer) for index, attempt in enumerate(seen.tried)]
    pairs = [(index, answer) for index, answer in met if answer is not None]
    if not pairs:
        return evidence
    answers: list[Tap] = [answer for _, answer in pairs]
    # A mark behind the return says 0 s, and by its edge how far behind it is.
    slowest = max(answers, key=lambda tap: (tap.returned_s or 0.0) + (tap.returned_edge_s or 0.0))
    figures = [seen.figures[index] for index, _ in pairs]
    return replace(
        evidence,
        gone_a=_mean([one.mean_a for one in figures if one.n]),
        returned_a=_mean([tap.after_a for tap in answers]),
        across_v=_mean([one.across_v for one in figures]),
        supply_v=_mean([seen.supply_v(index)[0] for index, _ in pairs]),
        slowest_s=slowest.returned_s,
        slowest_edge_s=slowest.returned_edge_s,
    )
