"""Span: what the motor was doing from one instant to another."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from meterlog.model.channel import Role


class SpanKind(StrEnum):
    """What the motor is doing, and which side is to blame."""

    NO_DATA = "no-data"
    OFF = "off"
    RUNNING = "running"
    OVER = "over"
    UNDER = "under"
    LOCKED = "locked"
    DEAD = "dead"
    FEED_LOST = "feed-lost"
    GROUND_LOST = "ground-lost"
    COMMAND_LOST = "command-lost"
    NO_CURRENT = "no-current"

    @property
    def is_fault(self) -> bool:
        """True for kinds that say that something is wrong with the vehicle."""
        return self not in (SpanKind.NO_DATA, SpanKind.OFF, SpanKind.RUNNING)


@dataclass(frozen=True, slots=True)
class Span:
    """One stretch of time in one condition. Spans of a recording touch and do not overlap.

    Attributes
    ----------
    kind : SpanKind
    start_ns, end_ns : int, nanoseconds since the recording's zero
        Interpolated between readings.
    start_edge_ns, end_edge_ns : int, nanoseconds
        Each edge lies within ± this of the truth: the sampling interval at that edge.
    speed : int or None
        Commanded speed at the start; None when nobody recorded it.
    detail : str
        Why this kind, in plain words.
    settled_by : tuple of Role
        For ``no-current``: channels that, had they been there, would have told the side. For
        ``over`` on a speed below the highest: that would have told drag from a held rotor.
    """

    kind: SpanKind
    start_ns: int
    end_ns: int
    start_edge_ns: int = 0
    end_edge_ns: int = 0
    speed: int | None = None
    detail: str = ""
    settled_by: tuple[Role, ...] = ()

    @property
    def duration_ns(self) -> int:
        """Length of the span in nanoseconds."""
        return self.end_ns - self.start_ns
