"""Moved: connectors which, moved by hand, made the current go."""

from __future__ import annotations

from collections.abc import Sequence

from meterlog.analysis.taps.gone_stretches import LATE_NS, gone_stretches
from meterlog.analysis.timeline import SpeedTimeline
from meterlog.model import LEADS, Event, EventKind, Span

MOVING_NS = 1_000_000_000
"""Moving takes this long, and what it does it does meanwhile (common practice, no source)."""


def what_was_moved(event: Event) -> str:
    """Give what a ``wiggle`` event says was moved; the leads where it says nothing."""
    return event.value.strip().lower() or LEADS


def moves_that_stopped(events: Sequence[Event], spans: Sequence[Span]) -> list[Event]:
    """Give the marks of something else than the leads, upon which a running motor stopped.

    Parameters
    ----------
    events : sequence of Event
        All of a recording.
    spans : sequence of Span
        In time order, touching.
    """
    timeline = SpeedTimeline()
    for event in events:
        timeline.add(event)
    began = [one.start_ns for one in gone_stretches(spans, timeline) if one.from_running]
    return [
        event
        for event in events
        if event.kind is EventKind.WIGGLE
        and what_was_moved(event) != LEADS
        and any(event.t_ns - LATE_NS < t_ns <= event.t_ns + MOVING_NS for t_ns in began)
    ]
