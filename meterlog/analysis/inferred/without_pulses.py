"""WithoutPulses: pulses of a pulsed feed are no dropouts."""

from __future__ import annotations

from bisect import bisect_left, bisect_right
from collections.abc import Sequence
from dataclasses import replace

from meterlog.analysis.inferred.withdrawn import Withdrawn, withdraw
from meterlog.model import Finding, FindingKind, PulsedFeed, Span, SpanKind, Verdict

_EXCESS = (FindingKind.OVER, FindingKind.UNDER, FindingKind.LOCKED)


def without_pulses(
    spans: Sequence[Span], findings: Sequence[Finding], pulsed: Sequence[PulsedFeed]
) -> Withdrawn:
    """Give spans and findings without those that are single pulses.

    A loss, an excess or an off within a pulsed stretch that lasts no longer than a few periods
    becomes running. Longer ones stay: a dropout is one also where the feed is pulsed; but not one
    in which the current was found in between all along, as it is where the clamp sits in the wire
    that is chopped: that is all pulses, whichever of the two took most of the time. A step that
    held such pulses was judged by what they left of its readings, which is no average of anything:
    its verdict becomes can't tell, unless an excess that stays fails it.

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
    chopped = _chopped(seen)

    gone: list[Span] = []

    def replaced(span: Span) -> Span:
        if not (span.kind.is_fault or span.kind is SpanKind.OFF):
            return span
        index = bisect_right(starts, span.start_ns) - 1
        one = seen[index] if index >= 0 else None
        is_one = (
            one is not None and span.end_ns <= one.end_ns and span.duration_ns <= one.within_s * 1e9
        )
        if not is_one and not any(a <= span.start_ns and span.end_ns <= b for a, b in chopped):
            return span
        gone.append(span)
        return replace(
            span,
            kind=SpanKind.RUNNING,
            detail="the feed is pulsed: single pulses are no dropouts",
            settled_by=(),
        )

    left = withdraw(spans, findings, replaced)
    if not gone:
        return left
    return replace(left, findings=_steps_untold(left.findings, gone))


def _chopped(seen: Sequence[PulsedFeed]) -> list[tuple[int, int]]:
    """Give start and end of the stretches in which the current came and went all along.

    Those of two speeds that follow each other are one; what is within reach of a pulse is inside.
    """
    joined: list[tuple[int, int]] = []
    for one in seen:
        if not one.chopped:
            continue
        reach_ns = round(one.within_s * 1e9)
        start_ns, end_ns = one.start_ns - reach_ns, one.end_ns + reach_ns
        if joined and start_ns <= joined[-1][1]:
            joined[-1] = joined[-1][0], max(end_ns, joined[-1][1])
        else:
            joined.append((start_ns, end_ns))
    return joined


def _steps_untold(findings: Sequence[Finding], gone: Sequence[Span]) -> tuple[Finding, ...]:
    """Give the findings with the verdicts of steps that held pulses taken back."""
    starts = [span.start_ns for span in gone]
    fails = [one for one in findings if one.kind in _EXCESS and one.verdict is Verdict.FAIL]

    def told(one: Finding) -> Finding:
        if one.kind is not FindingKind.STEP_CURRENT or one.verdict is Verdict.CANT_TELL:
            return one
        index = bisect_left(starts, one.start_ns)
        if index == len(starts) or starts[index] >= one.end_ns:
            return one
        if any(one.start_ns <= fail.start_ns < one.end_ns for fail in fails):
            return one
        return replace(
            one,
            verdict=Verdict.CANT_TELL,
            value=None,
            expanded_uncertainty=None,
            limit=None,
            coverage_factor=None,
            probability=None,
            statement=(
                f"Speed {one.speed}: can't tell, as the feed is pulsed and what was taken for its"
                f" steady current are the pulses without the pauses. Measure it with a meter that"
                f" averages over many pulses."
            ),
        )

    return tuple(told(one) for one in findings)
