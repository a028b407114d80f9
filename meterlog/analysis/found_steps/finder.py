"""StepFinder: speed changes of a recording in which nobody recorded a command."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from itertools import pairwise

from meterlog.analysis.findings import TAP_REACH_NS
from meterlog.analysis.found_steps.bins import BinTable, CurrentBins
from meterlog.analysis.found_steps.found_step import FoundStep
from meterlog.analysis.found_steps.plateaus import Plateau, joined, off, plateaus
from meterlog.analysis.found_steps.ranks import propose
from meterlog.analysis.judged import Judged
from meterlog.analysis.labels import Stretch
from meterlog.analysis.rows import Rows
from meterlog.model import Block, Event, EventKind, Limits, Span, SpanKind

_FLOWING = (SpanKind.RUNNING, SpanKind.OVER, SpanKind.UNDER)
"""A held rotor's current says nothing of the speed asked for."""
_QUIET = (SpanKind.OFF, SpanKind.NO_CURRENT)


class StepFinder:
    """Follows the current of a recording and finds the speed changes in it.

    A change is told from one plateau of the current to another (``plateaus.py``). Dead and lost
    stretches, missing data and a held rotor make none: the levels on either side are compared. A
    fan counts as switched off where its spans say so for longer than a start-up and no tap came
    near; where these channels can't tell off from a lost current, only before the first and after
    the last running, as a dropout must not be explained away.

    Memory is bounded: some 4 MB at most, whatever the length of the recording.
    """

    def __init__(self) -> None:
        self._bins = CurrentBins()

    def take(self, item: Block | Event) -> None:
        """Take the next Block or Event; all that is needed comes by rows."""

    def take_rows(self, rows: Rows, stretches: Sequence[Stretch]) -> None:
        """Take rows and the stretches that cover them, in order."""
        if stretches:
            self._bins.take(rows.part(stretches[0].start, stretches[-1].stop))

    def changes(self, judged: Judged) -> tuple[FoundStep, ...]:
        """Give the speed changes, in time order; none where the current has but one level.

        Parameters
        ----------
        judged : Judged
            Its spans, events and limits are used. Commands in it are passed over.

        Source
        ------
        Change points: see ``change_points.py``. What of them is a speed change: common practice,
        no source; each threshold says so.
        """
        found = joined(_Sequence(judged, self._bins.table()).plateaus())
        labels = propose([one.mean_a for one in found], judged.limits.open_current_a)
        steps = []
        for (before, was), (after, label) in pairwise(zip(found, labels, strict=True)):
            if was != label:
                steps.append(
                    FoundStep(
                        t_ns=after.start_ns,
                        edge_ns=after.start_edge_ns,
                        before_a=before.mean_a,
                        after_a=after.mean_a,
                        n=after.n,
                        speed_before=was,
                        speed=label,
                        seen_before_ns=before.seen_ns,
                        seen_ns=after.seen_ns,
                    )
                )
        return tuple(steps)


@dataclass(frozen=True, slots=True)
class _Gap:
    """Spans without a running level, between two stretches with one."""

    spans: tuple[Span, ...]

    @property
    def length_ns(self) -> int:
        """From the first to the last."""
        return self.spans[-1].end_ns - self.spans[0].start_ns

    def quiet(self, kinds: tuple[SpanKind, ...]) -> list[tuple[Span, ...]]:
        """Give the stretches of neighbouring spans of some kinds."""
        found: list[list[Span]] = []
        for before, span in zip((None, *self.spans), self.spans, strict=False):
            if span.kind not in kinds:
                continue
            if found and before is found[-1][-1]:
                found[-1].append(span)
            else:
                found.append([span])
        return [tuple(one) for one in found]


class _Sequence:
    """Puts the plateaus of all stretches in order, off ones included."""

    def __init__(self, judged: Judged, bins: BinTable) -> None:
        self._limits: Limits = judged.limits
        self._spans = judged.spans
        self._bins = bins
        self._taps = [e.t_ns for e in judged.events if e.kind is EventKind.TAP]
        self._start_up_ns = max(round(judged.limits.inrush_window_s * 1e9), 3 * bins.width_ns)

    def plateaus(self) -> list[Plateau]:
        """Give them in time order; neighbours may still be of one level."""
        told: list[Plateau] = []
        gap: list[Span] = []
        for spans in self._stretches():
            if spans[0].kind not in _FLOWING:
                gap += spans
                continue
            bins = self._bins.between(spans[0].start_ns, spans[-1].end_ns)
            found = plateaus(bins, self._start_up_ns)
            if not found:
                gap += spans
                continue
            self._append(told, _Gap(tuple(gap)) if gap else None, found, spans[0])
            told += found[1:]
            gap = []
        if gap and told:
            self._end(told, _Gap(tuple(gap)))
        return told

    def _stretches(self) -> list[tuple[Span, ...]]:
        """Give the spans in groups, flowing ones together."""
        groups: list[list[Span]] = []
        for span in self._spans:
            flows = span.kind in _FLOWING
            if groups and flows and groups[-1][0].kind in _FLOWING:
                groups[-1].append(span)
            else:
                groups.append([span])
        return [tuple(group) for group in groups]

    def _append(
        self, told: list[Plateau], gap: _Gap | None, found: list[Plateau], span: Span
    ) -> None:
        """Append the first plateau of a stretch, and what was off before it."""
        first = replace(found[0], start_ns=span.start_ns, start_edge_ns=span.start_edge_ns)
        if gap is None:
            told.append(first)
        elif not told:
            self._begin(told, gap, first)
        else:
            self._go_on(told, gap, first)

    def _begin(self, told: list[Plateau], gap: _Gap, first: Plateau) -> None:
        """Append the first level, from when it was asked for, and off before that.

        A motor that is dead after it was off was asked to run when its voltage came.
        """
        quiet = gap.quiet(_QUIET)
        began = [span for span in gap.spans if span.kind is not SpanKind.NO_DATA]
        if not quiet or quiet[0][0] is not began[0] or self._tapped(quiet[0]):
            told.append(first)
            return
        told.append(_off(quiet[0]))
        last = quiet[0][-1]
        if last is not gap.spans[-1]:
            first = replace(first, start_ns=last.end_ns, start_edge_ns=last.end_edge_ns)
        told.append(first)

    def _go_on(self, told: list[Plateau], gap: _Gap, first: Plateau) -> None:
        slower = first.first.amps < told[-1].last.amps
        coasts = slower and gap.length_ns <= round(self._limits.coast_s * 1e9)
        lasting = [
            one
            for one in gap.quiet((SpanKind.OFF,))
            if one[-1].end_ns - one[0].start_ns >= self._start_up_ns and not self._tapped(one)
        ]
        if lasting and not coasts:
            told += [*(_off(one) for one in lasting[:1]), first]
        elif coasts:
            # A turning motor draws nothing until it has slowed to the lower speed.
            start = gap.spans[0]
            told.append(replace(first, start_ns=start.start_ns, start_edge_ns=start.start_edge_ns))
        else:
            told.append(replace(first, start_edge_ns=first.start_edge_ns + gap.length_ns))

    def _end(self, told: list[Plateau], gap: _Gap) -> None:
        quiet = gap.quiet(_QUIET)
        ended = [span for span in gap.spans if span.kind is not SpanKind.NO_DATA]
        if quiet and quiet[-1][-1] is ended[-1]:
            told.append(_off(quiet[-1]))

    def _tapped(self, quiet: tuple[Span, ...]) -> bool:
        """Tell whether what ended a stretch without current was a tap rather than a command."""
        start_ns, end_ns = quiet[0].start_ns, quiet[-1].end_ns
        latest = end_ns + quiet[-1].end_edge_ns
        near = (t for t in self._taps if start_ns <= t <= latest)
        return any(end_ns - t <= TAP_REACH_NS for t in near)


def _off(quiet: tuple[Span, ...]) -> Plateau:
    first, last = quiet[0], quiet[-1]
    return off(first.start_ns, first.start_edge_ns, last.end_ns, last.end_edge_ns)
