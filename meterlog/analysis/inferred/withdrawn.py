"""Withdrawn: spans that turned out to be something else, and their findings with them."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace

from meterlog.model import Finding, FindingKind, Span, SpanKind

_MOMENTS = {*(kind.value for kind in SpanKind), FindingKind.DIP, FindingKind.MISSED_DROPOUT}
"""Kinds of findings that tell of a moment; they come first, in time order."""


@dataclass(frozen=True, slots=True)
class Withdrawn:
    """What is left.

    Attributes
    ----------
    spans : tuple of Span
        In time order, touching; neighbours of one kind and speed are one.
    findings : tuple of Finding
    count : int
        Spans that were withdrawn.
    """

    spans: tuple[Span, ...]
    findings: tuple[Finding, ...]
    count: int


def withdraw(
    spans: Sequence[Span], findings: Sequence[Finding], replaced: Callable[[Span], Span]
) -> Withdrawn:
    """Give the spans with some replaced, and the findings without those of replaced spans.

    Parameters
    ----------
    spans : sequence of Span
    findings : sequence of Finding
    replaced : callable
        Gives the span that is to stand in a span's place; the same object for no change.
    """
    gone: set[tuple[str, int, int]] = set()
    result: list[Span] = []
    for span in spans:
        other = replaced(span)
        if other is not span:
            gone.add((span.kind.value, span.start_ns, span.end_ns))
        _put(result, other)
    if not gone:
        return Withdrawn(tuple(spans), tuple(findings), 0)
    left = [one for one in findings if (one.kind.value, one.start_ns, one.end_ns) not in gone]
    return Withdrawn(tuple(result), tuple(left), len(gone))


def _put(result: list[Span], span: Span) -> None:
    """Add a span, joined to the one before where both are running at one speed."""
    if result and span.kind is SpanKind.RUNNING and result[-1].kind is SpanKind.RUNNING:
        last = result[-1]
        if last.speed == span.speed:
            result[-1] = replace(last, end_ns=span.end_ns, end_edge_ns=span.end_edge_ns)
            return
    result.append(span)


def in_order(findings: Sequence[Finding], more: Sequence[Finding]) -> tuple[Finding, ...]:
    """Give findings with some more among them: those of moments by time, then the others."""
    both = [*findings, *more]
    moments = [one for one in both if one.kind.value in _MOMENTS]
    others = [one for one in both if one.kind.value not in _MOMENTS]
    return (*sorted(moments, key=lambda one: one.start_ns), *others)
