"""Told by sides: spans and findings once every channel has been heard, not the motor's alone.

Row by row, current, feed and return name a side. Here the command, the controller's ground, relay
and battery complete it; and a side that a probe may have made up is taken back.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from itertools import pairwise

from meterlog.analysis.coasting import decay_in
from meterlog.analysis.command_side import CommandSide, Went
from meterlog.analysis.findings import gone_words
from meterlog.analysis.judged import Judged
from meterlog.analysis.probe_side import ProbeSide
from meterlog.analysis.side_volts import SideVolts
from meterlog.analysis.wiring_words import battery_went, feed_words, ground_words
from meterlog.model import EventKind, Finding, FindingKind, Role, Span, SpanKind, Verdict

_LOSSES = (SpanKind.DEAD, SpanKind.FEED_LOST, SpanKind.GROUND_LOST, SpanKind.NO_CURRENT)
_OPEN = (SpanKind.FEED_LOST, SpanKind.GROUND_LOST, SpanKind.COMMAND_LOST, SpanKind.NO_CURRENT)


@dataclass(frozen=True, slots=True)
class _Told:
    """What a span turned out to be, why (the rest of a sentence), and what would settle it.

    Where it is not ``proven``, nothing may have been lost at all.
    """

    kind: SpanKind
    words: tuple[str, ...] = ()
    settled_by: tuple[Role, ...] | None = None
    proven: bool = True


def told_by_sides(
    judged: Judged, side_volts: SideVolts
) -> tuple[tuple[Span, ...], tuple[Finding, ...]]:
    """Give the spans and findings with what further channels say of them.

    Parameters
    ----------
    judged : Judged
        With spans, findings, steps, doubts and events.
    side_volts : SideVolts
        Of the same recording.

    Returns
    -------
    tuple of (tuple of Span, tuple of Finding)
        As many as before, with the same times. A loss of current may have become another kind of
        loss; nothing is blamed that was not.
    """
    teller = _Teller(judged, side_volts)
    spans, findings = list(judged.spans), list(judged.findings)
    places = {(f.start_ns, f.end_ns, f.kind.value): index for index, f in enumerate(findings)}
    for index, span in enumerate(judged.spans):
        if not span.kind.is_fault:
            continue
        told = teller.of(span, judged.spans[index - 1] if index else None)
        spans[index] = _span(span, told)
        place = places.get((span.start_ns, span.end_ns, span.kind.value))
        if place is not None:
            findings[place] = _finding(findings[place], span, told)
    return tuple(spans), tuple(findings)


class _Teller:
    def __init__(self, judged: Judged, side_volts: SideVolts) -> None:
        self._side = side_volts
        self._limits = judged.limits
        self._command = CommandSide(judged, side_volts)
        self._probe = ProbeSide(judged, side_volts)
        self._denied = {
            (f.start_ns, f.end_ns) for f in judged.findings if f.verdict is Verdict.CANT_TELL
        }
        self._speeds = [
            (event.t_ns, event.speed) for event in judged.events if event.kind is EventKind.SPEED
        ]

    def of(self, span: Span, before: Span | None) -> _Told:
        told = self._loss(span, before) if span.kind in _LOSSES else _Told(span.kind)
        return replace(told, words=(*told.words, *_speed_words(self._speeds, span)))

    def _loss(self, span: Span, before: Span | None) -> _Told:
        if (span.start_ns, span.end_ns) in self._denied and span.kind is SpanKind.NO_CURRENT:
            return _Told(span.kind)  # the current itself is doubted, or nobody asked for any
        slipped = self._probe.of(span, before)
        if slipped:
            coasts = self._coasting_words(span)
            why = (slipped, coasts) if coasts else (slipped,)
            return _Told(SpanKind.NO_CURRENT, why, (), proven=not coasts)
        if span.kind is SpanKind.DEAD or not span.speed:
            return _Told(span.kind)
        command = self._command.of(span, before)
        if command.went is Went.LOST and not battery_went(self._side, span):
            kind = SpanKind.COMMAND_LOST
        else:
            kind = span.kind
        words = [command.words] if command.words else []
        if kind is SpanKind.GROUND_LOST:
            stayed = command.went is Went.STAYED
            words.append(ground_words(self._side, span, self._limits, command_stayed=stayed))
        if kind is SpanKind.FEED_LOST:
            words.append(feed_words(self._side, span))
        decay = decay_in(self._side, span) if kind in _OPEN else None
        words.append("" if decay is None else str(decay))
        settled = () if kind is SpanKind.COMMAND_LOST else None
        return _Told(kind, tuple(word for word in words if word), settled)

    def _coasting_words(self, span: Span) -> str:
        """Say that a step down explains a loss as well; only a voltage could have denied that."""
        lag_ns, coast_ns = (
            round(1e9 * seconds) for seconds in (self._limits.command_lag_s, self._limits.coast_s)
        )
        if span.duration_ns > coast_ns:
            return ""
        for (_, before), (at_ns, speed) in pairwise(self._speeds):
            if 0 < speed < before and abs(at_ns - span.start_ns) <= lag_ns:
                return (
                    f"a motor that slows down to speed {speed}, marked at {at_ns / 1e9:.3f} s,"
                    f" draws nothing for a while either"
                )
        return ""


def _speed_words(speeds: Sequence[tuple[int, int]], span: Span) -> list[str]:
    """Say which speeds were commanded while it went on."""
    told, known = [], span.speed
    for at_ns, speed in speeds:
        if not span.start_ns < at_ns < span.end_ns:
            continue
        if speed != known:
            told.append(f"speed {speed} at {at_ns / 1e9:.3f} s")
        known = speed
    return [f"it went on after the command for {', then '.join(told)}"] if told else []


def _span(span: Span, told: _Told) -> Span:
    detail = span.detail if told.kind is span.kind else gone_words(told.kind, ())
    return replace(
        span,
        kind=told.kind,
        detail="; ".join((detail, *told.words)),
        settled_by=span.settled_by if told.settled_by is None else told.settled_by,
    )


def _finding(finding: Finding, span: Span, told: _Told) -> Finding:
    """Give the finding in the words of what its span turned out to be."""
    if not told.words and told.kind is span.kind:
        return finding
    statement, verdict = finding.statement, finding.verdict
    if told.kind is not span.kind:
        statement = _reworded(statement, span, told.kind)
        if told.kind is SpanKind.NO_CURRENT and span.speed is None:
            verdict = Verdict.CANT_TELL  # perhaps nobody asked it to run
    if not told.proven:
        verdict = Verdict.CANT_TELL
    body = statement.removesuffix(".")
    return replace(
        finding,
        kind=FindingKind(told.kind.value),
        verdict=verdict,
        statement=f"{'; '.join((body, *told.words))}.",
    )


def _reworded(statement: str, span: Span, kind: SpanKind) -> str:
    """Put what was said of the side in other words."""
    if span.kind is SpanKind.DEAD:
        head, _, rest = statement.partition(": ")
        value, _, cause = rest.partition(" through the motor")
        _, mark, more = cause.partition("; ")  # a doubt, or what a tap did
        head = head.replace("Dead segment", "No current", 1)
        return f"{head}: {value}; {gone_words(kind, ())}{mark}{more}"
    old, new = gone_words(span.kind, span.settled_by), gone_words(kind, ())
    return statement.replace(old, new, 1)
