"""GoneStretches: when the current was gone though asked for, and when it came back."""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Sequence
from dataclasses import dataclass

from meterlog.analysis.pieces import FLOWING_KINDS
from meterlog.analysis.taps.silent_between import silent_between
from meterlog.analysis.timeline import SpeedTimeline
from meterlog.model import Span, SpanKind

LATE_NS = 500_000_000
"""A hand is on the key up to half a second after the tap (common practice, no source)."""

_TWO = 2

GONE = (
    SpanKind.DEAD,
    SpanKind.NO_CURRENT,
    SpanKind.FEED_LOST,
    SpanKind.GROUND_LOST,
    SpanKind.COMMAND_LOST,
)
MOTOR_OPEN = (SpanKind.DEAD, SpanKind.NO_CURRENT)
"""Kinds in which the voltage stood across the motor, or nobody read that it did not."""


@dataclass(frozen=True, slots=True)
class GoneStretch:
    """Touching spans without current; a silence between two that is shorter than both is of it.

    Attributes
    ----------
    start_ns, end_ns : int, nanoseconds
    edge_ns : int, nanoseconds
        So well is the end known.
    kinds : tuple of SpanKind
        In order of time.
    from_running : bool
        Current flowed right before.
    asked : bool
        The fan is known to have been asked to run: by command, by the voltage across it, or
        because it ran before.
    returned : bool
        Current flowed right after, and no change of speed stands beside its return.
    """

    start_ns: int
    end_ns: int
    edge_ns: int
    kinds: tuple[SpanKind, ...]
    from_running: bool
    asked: bool
    returned: bool

    @property
    def of_motor(self) -> bool:
        """Nothing but the motor, as far as was read, kept the current from flowing."""
        return self.asked and all(kind in MOTOR_OPEN for kind in self.kinds)

    def met_by(self, t_ns: int) -> bool:
        """Tell whether a tap was made while it was gone: a hand is late, and so may its mark be.

        No less late than the end is known; not one that may itself have made the current go.
        """
        if self.from_running and t_ns < self.start_ns + LATE_NS:
            return False
        late_ns = max(LATE_NS if self.returned else 0, self.edge_ns)
        return self.start_ns <= t_ns <= self.end_ns + late_ns

    @property
    def kind(self) -> SpanKind:
        """The kind to tell: the last of them that says a side, else that it is not known."""
        sure = [kind for kind in self.kinds if kind is not SpanKind.NO_CURRENT]
        return sure[-1] if sure else SpanKind.NO_CURRENT


def gone_stretches(spans: Sequence[Span], timeline: SpeedTimeline) -> list[GoneStretch]:
    """Give the stretches without current, in time order.

    Parameters
    ----------
    spans : sequence of Span
        In time order, touching.
    timeline : SpeedTimeline
        A current that comes back between a change of speed and :data:`LATE_NS` before one is the
        command's doing.
    """
    found = []
    index = 0
    while index < len(spans):
        if spans[index].kind not in GONE:
            index += 1
            continue
        first, inner = index, []
        while index < len(spans) and spans[index].kind in GONE:
            inner.append(spans[index])
            index += 2 if _goes_on(inner, spans[index + 1 : index + 3]) else 1
        before = spans[first - 1] if first else None
        after = spans[index] if index < len(spans) else None
        found.append(_stretch(inner, before, after, timeline))
    return found


def _stretch(
    inner: Sequence[Span], before: Span | None, after: Span | None, timeline: SpeedTimeline
) -> GoneStretch:
    last = inner[-1]
    running = before is not None and before.kind in FLOWING_KINDS
    beside = timeline.between(last.end_ns - LATE_NS, last.end_ns + LATE_NS)
    return GoneStretch(
        start_ns=inner[0].start_ns,
        end_ns=last.end_ns,
        edge_ns=last.end_edge_ns,
        kinds=tuple(dict.fromkeys(span.kind for span in inner)),
        from_running=running,
        asked=running or any(_asked(span) for span in inner),
        returned=after is not None and after.kind in FLOWING_KINDS and not beside,
    )


def _goes_on(inner: Sequence[Span], following: Sequence[Span]) -> bool:
    """Tell whether nothing but a short silence lies between what is gone and the next such span."""
    if len(following) < _TWO or following[0].kind is not SpanKind.NO_DATA:
        return False
    silence, after = following
    before_ns = inner[-1].end_ns - inner[0].start_ns
    return after.kind in GONE and silent_between(before_ns, silence.duration_ns, after.duration_ns)


def _asked(span: Span) -> bool:
    return bool(span.speed) or span.kind is not SpanKind.NO_CURRENT


def span_at(spans: Sequence[Span], t_ns: int) -> Span | None:
    """Give the span that covers ``t_ns``; None outside all."""
    index = bisect_right(spans, t_ns, key=lambda span: span.start_ns) - 1
    return spans[index] if index >= 0 and t_ns <= spans[index].end_ns else None
