"""SpeedTimeline: which fan speed was commanded when."""

from __future__ import annotations

from bisect import bisect_left, bisect_right
from dataclasses import dataclass

from meterlog.model import Event, EventKind


@dataclass(frozen=True, slots=True, order=True)
class SpeedChange:
    """From ``t_ns`` on, ``speed`` was commanded."""

    t_ns: int
    speed: int


class SpeedTimeline:
    """The commanded speeds of a recording, in time order. A repeated speed is no change."""

    def __init__(self) -> None:
        self.changes: list[SpeedChange] = []

    def add(self, event: Event) -> None:
        """Take an event; those that are no speed are passed over."""
        if event.kind is EventKind.SPEED:
            change = SpeedChange(event.t_ns, event.speed)
            place = bisect_left(self.changes, event.t_ns, key=lambda one: one.t_ns)
            if place < len(self.changes) and self.changes[place].t_ns == event.t_ns:
                self.changes[place] = change  # two at the same instant: the later one given counts
            else:
                self.changes.insert(place, change)

    def at(self, t_ns: int) -> int | None:
        """Give the speed commanded at ``t_ns``; None before the first command."""
        index = bisect_right(self.changes, t_ns, key=lambda change: change.t_ns)
        return self.changes[index - 1].speed if index else None

    def asked_at(self, t_ns: int) -> int | None:
        """Give when the speed commanded at ``t_ns`` was first commanded; None before any."""
        index = bisect_right(self.changes, t_ns, key=lambda change: change.t_ns) - 1
        while index > 0 and self.changes[index - 1].speed == self.changes[index].speed:
            index -= 1
        return self.changes[index].t_ns if index >= 0 else None

    def between(self, after_ns: int, until_ns: int) -> list[SpeedChange]:
        """Give the true changes in ``after_ns`` < t <= ``until_ns``."""
        first = bisect_right(self.changes, after_ns, key=lambda change: change.t_ns)
        last = bisect_right(self.changes, until_ns, key=lambda change: change.t_ns)
        speed = self.changes[first - 1].speed if first else None
        true = []
        for change in self.changes[first:last]:
            if change.speed != speed:
                true.append(change)
            speed = change.speed
        return true

    def step_down_near(self, t_ns: int, slack_ns: int) -> bool:
        """Tell whether a lower speed, but not off, was commanded within ``slack_ns`` of t."""
        for change in self.between(t_ns - slack_ns - 1, t_ns + slack_ns):
            before = self.at(change.t_ns - 1)
            if before is not None and 0 < change.speed < before:
                return True
        return False
