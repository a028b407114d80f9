"""Schedule: known events put into a run at their own times."""

from __future__ import annotations

from collections import deque
from collections.abc import Iterable

from meterlog.model import Event

AHEAD_NS = 20_000_000
"""Events are handed over this early, so that no row with a later stamp is ahead of them."""


class Schedule:
    """Gives events when their time has come.

    Parameters
    ----------
    events : iterable of Event
        In any order; each goes out with exactly the time it carries.
    """

    def __init__(self, events: Iterable[Event]) -> None:
        self._events = deque(sorted(events, key=lambda event: event.t_ns))

    def due(self, now_ns: int) -> tuple[Event, ...]:
        """Give the events up to ``now_ns`` plus 20 ms, in order of time, each of them once."""
        due: list[Event] = []
        while self._events and self._events[0].t_ns <= now_ns + AHEAD_NS:
            due.append(self._events.popleft())
        return tuple(due)

    def __len__(self) -> int:
        """Count the events still to come."""
        return len(self._events)
