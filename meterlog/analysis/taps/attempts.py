"""Attempts: what the current did upon each tap."""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Sequence
from dataclasses import dataclass, field, replace

import numpy as np

from meterlog.analysis.levels import BIN_NS, Levels
from meterlog.analysis.pieces import FLOWING_KINDS
from meterlog.analysis.taps.gone_stretches import GONE, LATE_NS, GoneStretch, span_at
from meterlog.analysis.timeline import SpeedTimeline
from meterlog.model import Span, Tap

REACH_NS = 2_000_000_000
"""The current must be back within this time of the tap (a proposal of the trade, from memory)."""
GROUP_NS = 1_000_000_000
"""Light taps come three to five at a time; within a second they are one attempt (common
practice, no source)."""
WENT_NS = 500_000_000
"""What a tap shakes loose goes with it, not a second later; the hand may be early on the key."""
_SETTLED_NS = 500_000_000


@dataclass(slots=True)
class Attempt:
    """Taps within a second of each other, and what they met.

    Attributes
    ----------
    taps : list of Tap
    gone : GoneStretch or None
        The current was gone when the first of them was made (or had just come back, the hand
        being late); None where it flowed, or was not asked for.
    """

    taps: list[Tap] = field(default_factory=list)
    gone: GoneStretch | None = None

    @property
    def tried(self) -> bool:
        """It was made while the current was gone for what may be the motor's own fault."""
        return self.gone is not None and self.gone.of_motor

    @property
    def answered(self) -> bool:
        """The current came back upon one of its taps."""
        return any(tap.answered for tap in self.taps)

    @property
    def answer(self) -> Tap | None:
        """The tap upon which it came back."""
        return next((tap for tap in self.taps if tap.answered), None)

    @property
    def times_ns(self) -> list[int]:
        """The times of its taps."""
        return [tap.t_ns for tap in self.taps]


def groups(taps_ns: Sequence[int]) -> list[list[int]]:
    """Put taps that lie within :data:`GROUP_NS` of their first together."""
    grouped: list[list[int]] = []
    for t_ns in sorted(taps_ns):
        if grouped and t_ns - grouped[-1][0] <= GROUP_NS:
            grouped[-1].append(t_ns)
        else:
            grouped.append([t_ns])
    return grouped


class TapReader:
    """Reads off what happened at each tap.

    Parameters
    ----------
    spans : sequence of Span
    stretches : sequence of GoneStretch
    timeline : SpeedTimeline
    levels : Levels
    """

    def __init__(
        self,
        spans: Sequence[Span],
        stretches: Sequence[GoneStretch],
        timeline: SpeedTimeline,
        levels: Levels,
    ) -> None:
        self._spans = spans
        self._stretches = stretches
        self._timeline = timeline
        self._levels = levels
        self._starts = [one.start_ns for one in stretches]
        self._answers: dict[int, int] = {}
        """By the end of a stretch without current: when the tap was made that ended it."""
        self._told: set[int] = set()

    def attempts(self, taps_ns: Sequence[int]) -> list[Attempt]:
        """Give the attempts, in time order."""
        self._answers, self._told = self._nearest(taps_ns), set()
        found = []
        for number, times in enumerate(groups(taps_ns), 1):
            attempt = Attempt()
            for t_ns in times:
                gone = self._gone_at(t_ns)
                if gone is not None and (attempt.gone is None or not attempt.tried):
                    attempt.gone = gone
                attempt.taps.append(replace(self._tap(t_ns, gone), attempt=number))
            found.append(attempt)
        return found

    def _nearest(self, taps_ns: Sequence[int]) -> dict[int, int]:
        """Give, for each return of the current within reach of taps, the tap it came upon.

        The last one before it, as what did nothing a second before did nothing now. Where that is
        longer ago than light taps lie apart, and one was marked right behind the return, the hand
        was late with that.
        """
        met: dict[int, list[int]] = {}
        for t_ns in sorted(taps_ns):
            one = self._met(t_ns)
            if one is not None and one.returned and one.end_ns - t_ns <= REACH_NS:
                met.setdefault(one.end_ns, []).append(t_ns)
        answers = {}
        for end_ns, times in met.items():
            edge_ns = self._stretches[bisect_right(self._starts, times[0]) - 1].edge_ns
            before = [t_ns for t_ns in times if t_ns <= end_ns + edge_ns]
            late = [t_ns for t_ns in times if t_ns > end_ns + edge_ns]
            recent = before and end_ns - before[-1] <= GROUP_NS
            answers[end_ns] = late[0] if late and not recent else before[-1]
        return answers

    def _met(self, t_ns: int) -> GoneStretch | None:
        """Give the stretch without current in which a tap was made, or just before its mark."""
        index = bisect_right(self._starts, t_ns) - 1
        return (
            self._stretches[index] if index >= 0 and self._stretches[index].met_by(t_ns) else None
        )

    def _gone_at(self, t_ns: int) -> GoneStretch | None:
        """Give the stretch that a tap met; None where an earlier one had brought it to its end."""
        one = self._met(t_ns)
        if one is None:
            return None
        over = self._answers.get(one.end_ns, t_ns) < t_ns and t_ns > one.end_ns + one.edge_ns
        return None if over else one

    def _tap(self, t_ns: int, gone: GoneStretch | None) -> Tap:
        back_ns = None
        if gone is not None and self._answers.get(gone.end_ns) == t_ns:
            back_ns = None if gone.end_ns in self._told else gone.end_ns
        went = None if gone is not None else self._went(t_ns)
        answered = back_ns is not None and gone is not None and gone.of_motor
        if back_ns is not None:
            self._told.add(back_ns)
        edge_ns = 0 if gone is None else gone.edge_ns
        before_ns = min(t_ns, gone.end_ns) if gone is not None else t_ns
        if went is not None:
            before_ns = min(t_ns, went.start_ns)
        acted_ns = t_ns if back_ns is None else back_ns
        return Tap(
            t_ns=t_ns,
            speed=self._timeline.at(t_ns),
            before_a=self._mean(before_ns - REACH_NS, before_ns, last=True),
            after_a=self._mean(acted_ns, acted_ns + REACH_NS, last=False),
            before=self._kind(before_ns, before=True),
            after=self._kind(max(t_ns, acted_ns) + REACH_NS // 2, before=False)
            if went is None
            else went.kind.value,
            returned_s=None if back_ns is None else max(back_ns - t_ns, 0) / 1e9,
            returned_edge_s=None if back_ns is None else max(edge_ns, t_ns - back_ns) / 1e9,
            answered=answered,
            stopped=went is not None,
            late=(back_ns is not None and back_ns + edge_ns < t_ns)
            or (went is not None and went.start_ns < t_ns),
        )

    def _went(self, t_ns: int) -> GoneStretch | None:
        """Give the stretch without current that began upon a tap; None where none did."""
        first = bisect_right(self._starts, t_ns - LATE_NS)
        last = bisect_right(self._starts, t_ns + WENT_NS)
        near = self._stretches[first:last]
        return next((one for one in near if one.from_running), None)

    def _kind(self, t_ns: int, *, before: bool) -> str:
        span = span_at(self._spans, t_ns - 1 if before else t_ns)
        if span is None and self._spans:
            span = self._spans[0] if before else self._spans[-1]
        return "" if span is None else span.kind.value

    def _mean(self, start_ns: int, end_ns: int, *, last: bool) -> float | None:
        """Give the mean current between two times, as far as the state and the speed stay.

        Parameters
        ----------
        last : bool
            What stood at the end counts, else what stood at the beginning; then, of what flows
            on, only what follows the start-up where there is enough of it.
        """
        at_ns = end_ns - 1 if last else start_ns + 1
        span = span_at(self._spans, at_ns)
        if span is None:
            return None
        flowing = span.kind in FLOWING_KINDS
        first, final = self._same_state(span, flowing=flowing)
        start_ns, end_ns = max(start_ns, first), min(end_ns, final)
        changes = self._timeline.between(start_ns, end_ns)
        if changes and last:
            start_ns = max(start_ns, changes[-1].t_ns)
        elif changes:
            end_ns = changes[0].t_ns
        if flowing and not last and end_ns - start_ns > 2 * _SETTLED_NS:
            start_ns += _SETTLED_NS
        part = self._levels.within(start_ns, end_ns)
        seen = part.amps[np.isfinite(part.amps)]
        return float(seen.mean()) if len(seen) else None

    def _same_state(self, span: Span, *, flowing: bool) -> tuple[int, int]:
        """Give how far the current flows, or does not, before and after a span."""
        alike = FLOWING_KINDS if flowing else GONE
        if span.kind not in alike:
            return span.start_ns, span.end_ns
        first = last = bisect_right(self._spans, span.start_ns, key=lambda one: one.start_ns) - 1
        while first > 0 and self._spans[first - 1].kind in alike:
            first -= 1
        while last + 1 < len(self._spans) and self._spans[last + 1].kind in alike:
            last += 1
        return self._spans[first].start_ns, self._spans[last].end_ns


def back_at(levels: Levels, from_ns: int, until_ns: int, least_a: float) -> int | None:
    """Give when the current had reached a level, in nanoseconds; None where it did not.

    The end of the first tenth of a second, or of the first reading, whose mean is that high.
    """
    part = levels.within(from_ns - from_ns % BIN_NS, until_ns)
    with np.errstate(invalid="ignore"):
        high = np.flatnonzero(np.abs(part.amps) >= least_a)
    return None if not len(high) else int(part.t_ns[high[0]]) + BIN_NS
