"""UnreadSpeeds: speeds that were commanded while nothing was read, as in a gap."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from meterlog.analysis.timeline import SpeedTimeline
from meterlog.model import Event, Step


def unread_speeds(events: Iterable[Event], steps: Sequence[Step]) -> list[int]:
    """Give the speeds that were commanded and of which there is no reading, lowest first.

    Parameters
    ----------
    events : iterable of Event
        Those that are no commands are passed over.
    steps : sequence of Step
        Of the whole recording.
    """
    timeline = SpeedTimeline()
    for event in events:
        timeline.add(event)
    commanded = {change.speed for change in timeline.changes}
    commanded |= {step.speed for step in steps if step.speed is not None}
    read = {step.speed for step in steps if step.n or step.steady_n}
    return sorted(commanded - read - {0})
