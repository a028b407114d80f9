"""WithoutPulses: pulses of a pulsed feed are no dropouts."""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Sequence
from dataclasses import replace

from meterlog.analysis.inferred.withdrawn import Withdrawn, withdraw
from meterlog.model import Finding, PulsedFeed, Span, SpanKind


def without_pulses(
    spans: Sequence[Span], findings: Sequence[Finding], pulsed: Sequence[PulsedFeed]
) -> Withdrawn:
    """Give spans and findings without those that are single pulses.

    A loss, an excess or an off within a pulsed stretch that lasts no longer than a few periods
    becomes running. Longer ones stay: a dropout is one also where the feed is pulsed.

    Parameters
    ----------
    spans : sequence of Span
        In time order, touching.
    findings : sequence of Finding
    pulsed : sequence of PulsedFeed
        Those whose ``within_s`` is 0 withdraw nothing.
    """
    seen = sorted((one for one in pulsed if one.within_s > 0.0), key=lambda one: one.start_ns)
    starts = [one.start_ns for one in seen]

    def replaced(span: Span) -> Span:
        if not (span.kind.is_fault or span.kind is SpanKind.OFF):
            return span
        index = bisect_right(starts, span.start_ns) - 1
        if index < 0:
            return span
        one = seen[index]
        if span.end_ns > one.end_ns or span.duration_ns > one.within_s * 1e9:
            return span
        return replace(
            span,
            kind=SpanKind.RUNNING,
            detail="the feed is pulsed: single pulses are no dropouts",
            settled_by=(),
        )

    return withdraw(spans, findings, replaced)
