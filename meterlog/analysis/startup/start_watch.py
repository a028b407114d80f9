"""StartWatch: every start of the motor, from its readings."""

from __future__ import annotations

from bisect import bisect_left, bisect_right
from collections.abc import Sequence
from dataclasses import dataclass

from meterlog.analysis.budgets import BudgetMaker, Scatter
from meterlog.analysis.budgets.followed import maker_of
from meterlog.analysis.judged import Judged
from meterlog.analysis.labels import Stretch
from meterlog.analysis.past_range import is_past
from meterlog.analysis.pieces import FLOWING_KINDS
from meterlog.analysis.rows import Rows
from meterlog.analysis.startup.beyond_range import of_start, overloads
from meterlog.analysis.startup.capture import Capture, Captures, flowing_part
from meterlog.analysis.startup.figures import Figures, figures
from meterlog.analysis.timeline import SpeedTimeline
from meterlog.model import (
    Block,
    Event,
    Finding,
    Limits,
    Role,
    Span,
    SpanKind,
    StartUp,
    Step,
    channel_of,
)

PEAK_SEEN_S = 0.005
"""A motor's start-up current is at its highest after some five milliseconds (by the motor model of
a medium fan, common practice, no source): readings further apart, or averaged for longer, show
less than the peak."""
MOST_STARTS = 4096
"""Of so many starts figures are kept."""
MOST_ROWS_KEPT = 1_000_000
"""Of so many readings of starts the readings themselves."""
COMMAND, DROPOUT, NOT_COMMANDED = "command", "after a dropout", "not commanded"


@dataclass(frozen=True, slots=True)
class _Kept:
    """A start that has ended: its readings while there is room, else its figures."""

    onset_ns: int
    figures: Figures | None
    capture: Capture | None


@dataclass(frozen=True, slots=True)
class _Began:
    """What the spans tell of a start."""

    t_ns: int
    edge_ns: int
    before: Span
    span: Span
    flowed_before: bool


class StartWatch:
    """Follows the current and keeps what is read of each start.

    Parameters
    ----------
    limits : Limits
    """

    def __init__(self, limits: Limits) -> None:
        self._limits = limits
        self._captures = Captures(limits)
        self._timeline = SpeedTimeline()
        self._start_up_ns = round(limits.inrush_window_s * 1e9)
        self._lag_ns = round(limits.command_lag_s * 1e9)
        self._kept: list[_Kept] = []
        self._rows_kept = 0
        self._told: dict[tuple[int, int, float | None], Figures] = {}

    def take(self, item: Block | Event) -> None:
        """Take the next Block or Event; only commands matter, readings come by rows."""
        if isinstance(item, Event):
            self._timeline.add(item)

    def take_rows(self, rows: Rows, stretches: Sequence[Stretch]) -> None:
        """Take rows and the stretches that cover them, in order."""
        if stretches:
            for one in self._captures.take(rows.part(stretches[0].start, stretches[-1].stop)):
                self._keep(one)

    def _keep(self, capture: Capture) -> None:
        if len(self._kept) < MOST_STARTS:
            whole = self._whole(capture)
            self._rows_kept += len(whole.t_ns)
            if self._rows_kept <= MOST_ROWS_KEPT:
                self._kept.append(_Kept(whole.onset_ns, None, whole))
            else:
                told = figures(whole, self._start_up_ns, None)
                self._kept.append(_Kept(whole.onset_ns, told, None))

    def _whole(self, capture: Capture) -> Capture:
        """Give the part before the current went again or another speed was commanded."""
        part = flowing_part(capture, self._limits)
        since = part.onset_ns + self._lag_ns
        changes = self._timeline.between(since, int(part.t_ns[-1]))
        return part.until(changes[0].t_ns) if changes else part

    def startups(self, judged: Judged) -> tuple[StartUp, ...]:
        """Give the starts, in time order.

        Parameters
        ----------
        judged : Judged
            Its spans say what was a start: current after off, dead or lost. A step's steady
            current is what the start settled at, where the step's speed is known or was found.

        Source
        ------
        Peak, ratio and settling: definitions of ``figures.py``. Uncertainty of the peak: that of
        a single reading, JCGM 100:2008, 4.3.7.
        """
        if len(self._told) > 2 * MOST_STARTS:
            self._told.clear()
        kept = list(self._kept)
        for capture in self._captures.rest():
            whole = self._whole(capture)
            kept.append(_Kept(whole.onset_ns, None, whole))
        maker = maker_of(judged)
        starts = []
        over = overloads(judged.findings)
        for began in _began(judged.spans):
            one = self._matching(kept, began)
            if one is not None:
                starts.append(self._start_up(judged, maker, began, one, over))
        return tuple(starts)

    @staticmethod
    def _matching(kept: Sequence[_Kept], began: _Began) -> _Kept | None:
        """Give the readings that belong to a start told by the spans."""
        here = bisect_left(kept, began.t_ns, key=lambda one: one.onset_ns)
        beside = kept[max(here - 1, 0) : here + 1]
        near = min(beside, key=lambda one: abs(one.onset_ns - began.t_ns), default=None)
        if near is None or abs(near.onset_ns - began.t_ns) > 2 * began.edge_ns + 1:
            return None
        return near

    def _start_up(
        self,
        judged: Judged,
        maker: BudgetMaker,
        began: _Began,
        kept: _Kept,
        over: Sequence[Finding],
    ) -> StartUp:
        step = _step_at(judged.steps, began.t_ns + self._lag_ns)
        steady = None if step is None or step.steady_mean_a is None else abs(step.steady_mean_a)
        told = self._figures(kept, judged, steady)
        if steady is None or kept.capture is None:
            steady = told.tail_a
        peak = maker.of_current(told.peak_a, Scatter(1), (told.peak_ns, told.peak_ns))
        # Without the clamp's own error it would be far too small, with nothing beside it to say so.
        known_u = peak is not None and peak.combined_u > 0.0 and not maker.lacking
        settled = told.settling
        cause, speed = self._cause(began)
        past = is_past(channel_of(judged.instruments, Role.MOTOR_CURRENT), told.peak_a)
        hidden = any(of_start(one, began.t_ns, began.edge_ns, self._start_up_ns) for one in over)
        return StartUp(
            t_ns=began.t_ns,
            edge_ns=began.edge_ns,
            speed=speed,
            cause=cause,
            peak_a=told.peak_a,
            peak_u_a=peak.expanded if peak is not None and known_u and not past else None,
            peak_after_s=max(told.peak_ns - began.t_ns, 0) / 1e9,
            peak_floor=(
                hidden or told.blind or told.cut or past or _too_slow(judged, told.interval_ns)
            ),
            peak_cut=told.cut,
            peak_over=hidden,
            peak_past=past,
            steady_a=steady,
            ratio=told.peak_a / steady if steady else None,
            settle_s=None if settled is None else max(settled.t_ns - began.t_ns, 0) / 1e9,
            settle_edge_s=None if settled is None else (settled.edge_ns + began.edge_ns) / 1e9,
            i2t_a2s=told.i2t_a2s,
            i2t_s=max(told.i2t_end_ns - began.t_ns, 0) / 1e9,
        )

    def _figures(self, kept: _Kept, judged: Judged, steady_a: float | None) -> Figures:
        """Give the figures of a start; the same question is asked more than once."""
        if kept.capture is None:
            assert kept.figures is not None  # noqa: S101 - kept where the readings are not
            return kept.figures
        whole = kept.capture
        part = whole if steady_a is None else self._cut(whole, judged)
        asked = kept.onset_ns, len(part.t_ns), steady_a
        known = self._told.get(asked)
        if known is None:
            known = self._told[asked] = figures(part, self._start_up_ns, steady_a)
        return known

    def _cut(self, capture: Capture, judged: Judged) -> Capture:
        """Leave out what came after a change of speed that was found, not recorded."""
        since = capture.onset_ns + self._lag_ns
        later = [one.start_ns - one.edge_ns for one in judged.steps if one.found]
        return capture.until(min((t for t in later if t > since), default=2**62))

    def _cause(self, began: _Began) -> tuple[str, int | None]:
        """Tell what made the motor start, and at which speed."""
        slack_ns = self._lag_ns + began.edge_ns
        changes = self._timeline.between(began.t_ns - slack_ns - 1, began.t_ns + slack_ns)
        asked = [change for change in changes if change.speed > 0]
        if asked:
            return COMMAND, asked[-1].speed
        told = began.before.speed is not None or began.before.kind is not SpanKind.NO_CURRENT
        if began.before.kind.is_fault and told and began.flowed_before:
            return DROPOUT, began.span.speed
        if began.before.kind.is_fault and began.before.speed is not None:
            return DROPOUT, began.span.speed
        return NOT_COMMANDED, began.span.speed


def _began(spans: Sequence[Span]) -> list[_Began]:
    """Give where current came that was gone; a pause in the data may lie between."""
    found = []
    gone: Span | None = None
    flowed = False
    for span in spans:
        if span.kind in FLOWING_KINDS:
            if gone is not None:
                edge_ns = span.start_edge_ns + span.start_ns - gone.end_ns
                found.append(_Began(span.start_ns, edge_ns, gone, span, flowed))
            gone, flowed = None, True
        elif span.kind is not SpanKind.NO_DATA:
            gone = span
    return found


def _step_at(steps: Sequence[Step], t_ns: int) -> Step | None:
    """Give the step that ran at a time, where it is known to be one speed."""
    index = bisect_right(steps, t_ns, key=lambda step: step.start_ns) - 1
    if index < 0 or t_ns >= steps[index].end_ns:
        return None
    step = steps[index]
    known = step.speed is not None or step.found
    return step if known and step.steady_n >= 2 else None


def _too_slow(judged: Judged, interval_ns: int) -> bool:
    """Tell whether the readings are too far apart, or averaged for too long, to show the peak."""
    channel = channel_of(judged.instruments, Role.MOTOR_CURRENT)
    averaged_s = 0.0 if channel is None else channel.integration_s
    return max(interval_ns / 1e9, averaged_s) > PEAK_SEEN_S
