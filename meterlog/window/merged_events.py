"""MergedEvents: the events on show, with those that have come since."""

from __future__ import annotations

from collections.abc import Sequence

from meterlog.model import Event, standing


def merged_events(old: tuple[Event, ...], new: Sequence[Event]) -> tuple[Event, ...]:
    """Add the events that are not there yet, in time order; what was withdrawn goes."""
    known = set(old)
    fresh = [event for event in new if event not in known]
    if not fresh:
        return old
    return standing(sorted([*old, *fresh], key=lambda event: event.t_ns))
