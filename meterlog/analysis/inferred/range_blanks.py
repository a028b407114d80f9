"""RangeBlanks: zeros that a meter shows while it changes its range are no dropouts."""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np

from meterlog.analysis.inferred.withdrawn import Withdrawn, in_order, withdraw
from meterlog.analysis.judged import Judged
from meterlog.analysis.range_crossings import BLANKING_NS
from meterlog.model import (
    Block,
    Channel,
    Event,
    Finding,
    FindingKind,
    Instrument,
    Role,
    Span,
    SpanKind,
    Verdict,
)

MOST_KEPT = 10_000
_OTHER_LEVEL = 0.2
"""Where the ranges are not stated, a current that has changed by less needs no other range."""
_GONE = (SpanKind.DEAD, SpanKind.FEED_LOST, SpanKind.GROUND_LOST, SpanKind.NO_CURRENT)


@dataclass(frozen=True, slots=True)
class Zeros:
    """Readings of exactly 0 in a row.

    Attributes
    ----------
    start_ns, end_ns : int
        The first and the last of them.
    before_a, after_a : float, amperes
        The readings beside.
    """

    start_ns: int
    end_ns: int
    before_a: float
    after_a: float


class RangeBlanks:
    """Follows the readings of the current for short runs of exact zeros.

    Parameters
    ----------
    instruments : sequence of Instrument
    """

    def __init__(self, instruments: Sequence[Instrument]) -> None:
        self._key, self._column = "", 0
        self._channel: Channel | None = None
        for instrument in instruments:
            column = instrument.column(Role.MOTOR_CURRENT)
            if column is not None:
                self._key, self._column = instrument.key, column
                self._channel = instrument.channels[column]
                break
        self._runs: list[Zeros] = []
        self._last_a: float | None = None
        self._open: tuple[int, int, float] | None = None

    def take(self, item: Block | Event) -> None:
        """Take the next Block or Event."""
        if isinstance(item, Event) or item.source != self._key or self._channel is None:
            return
        amps = item.values[:, self._column]
        known = np.flatnonzero(np.isfinite(amps))
        if not len(known):
            return
        zero = np.abs(amps[known] + self._channel.offset) < 1e-9
        if not zero.any() and self._open is None:
            self._last_a = float(amps[known[-1]])
            return
        edges = np.flatnonzero(np.diff(zero)) + 1
        for first, stop in zip([0, *edges.tolist()], [*edges.tolist(), len(known)], strict=True):
            t_ns = int(item.t_ns[known[first]]), int(item.t_ns[known[stop - 1]])
            if zero[first]:
                self._zeros(*t_ns)
            else:
                self._value(float(amps[known[first]]), float(amps[known[stop - 1]]))

    def _zeros(self, first_ns: int, last_ns: int) -> None:
        if self._open is not None:
            self._open = (self._open[0], last_ns, self._open[2])
        elif self._last_a is not None:
            self._open = (first_ns, last_ns, self._last_a)

    def _value(self, first_a: float, last_a: float) -> None:
        if self._open is not None:
            start_ns, end_ns, before_a = self._open
            if end_ns - start_ns <= BLANKING_NS and len(self._runs) < MOST_KEPT:
                self._runs.append(Zeros(start_ns, end_ns, before_a, first_a))
            self._open = None
        self._last_a = last_a

    def take_rows(self, rows: object, stretches: object) -> None:
        """Take rows; nothing is needed of them."""

    def blanks(self, judged: Judged) -> list[Zeros]:
        """Give the zeros beside a change of range that the current's level asked for.

        A dropout takes a meter that chooses its range itself down and up again: where the level
        is the same after as before, there was nothing to change the range for but the dropout.
        """
        said = sorted(
            event.t_ns
            for event in judged.events
            if event.changes_range and event.source == self._key
        )
        room_ns = self._room_ns()
        return [
            run
            for run in self._runs
            if self._other_range(run) and _said(said, run.start_ns - room_ns, run.end_ns + room_ns)
        ]

    def _room_ns(self) -> int:
        return 0 if self._channel is None else round(1.5e9 * self._channel.interval_s)

    def _other_range(self, run: Zeros) -> bool:
        before, after = abs(run.before_a), abs(run.after_a)
        ranges = () if self._channel is None else self._channel.ranges
        if len(ranges) > 1:
            tops = np.array([one.top for one in ranges])
            first, then = np.searchsorted(tops, (before, after), side="left").tolist()
            return bool(first != then)
        return abs(after - before) > _OTHER_LEVEL * max(before, after)

    def withdrawn(
        self, spans: Sequence[Span], findings: Sequence[Finding], judged: Judged
    ) -> Withdrawn:
        """Give spans and findings with such zeros as missing data, not as dropouts.

        Parameters
        ----------
        spans, findings : sequences
            As in ``judged``, or what is left of them.
        judged : Judged
            For its events.
        """
        blanks, room_ns = self.blanks(judged), 2 * self._room_ns()
        starts = [run.start_ns for run in blanks]
        told: list[Finding] = []

        def replaced(span: Span) -> Span:
            index = bisect_left(starts, span.start_ns - room_ns)
            if span.kind not in _GONE or index == len(blanks):
                return span
            run = blanks[index]
            if run.start_ns > span.end_ns or span.end_ns > run.end_ns + room_ns:
                return span
            told.append(_finding(span, self._key))
            detail = f"{self._key}: it changed its measuring range and showed 0 meanwhile"
            return replace(span, kind=SpanKind.NO_DATA, detail=detail, settled_by=())

        left = withdraw(spans, findings, replaced)
        if not told:
            return left
        return Withdrawn(left.spans, in_order(left.findings, told), left.count)


def _said(times: Sequence[int], start_ns: int, end_ns: int) -> bool:
    index = bisect_left(times, start_ns)
    return index < len(times) and times[index] <= end_ns


def _finding(span: Span, key: str) -> Finding:
    at = "" if span.speed is None else f" at speed {span.speed}"
    return Finding(
        kind=FindingKind.NO_DATA,
        verdict=Verdict.CANT_TELL,
        start_ns=span.start_ns,
        end_ns=span.end_ns,
        edge_ns=max(span.start_edge_ns, span.end_edge_ns),
        value=None,
        unit="",
        expanded_uncertainty=None,
        limit=None,
        speed=span.speed,
        statement=(
            f"No reading of the current{at} from {span.start_ns / 1e9:.3f} s to"
            f" {span.end_ns / 1e9:.3f} s: {key} showed 0 while it changed its measuring range;"
            f" what the motor did meanwhile is not known. Lock the range and measure again."
        ),
    )
