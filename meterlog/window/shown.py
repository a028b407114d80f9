"""Shown: one recording as the window shows it, still growing or opened from disk."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import TYPE_CHECKING

from meterlog.evidence.trace_store import TraceLine, TraceStore
from meterlog.model import About, Event, Review, Role, Span
from meterlog.window.origin_words import origin_words
from meterlog.window.words import say

if TYPE_CHECKING:
    from meterlog.work.edits_on_top import EditsOnTop


@dataclass(slots=True)
class Shown:
    """What the run page draws.

    Attributes
    ----------
    about : About
    traces : TraceStore
    review : Review
    events : tuple of Event
        In time order.
    live : bool
        True while readings come in.
    accepted : bool
        Judged by speeds found in the current, taken as commanded.
    judging : bool
        True while it is being judged, and once that was stopped: nothing is known of it yet.
    top : EditsOnTop or None
        The edits on top of it, laid on in :attr:`events` and :attr:`about`; None while live.
    whole : bool
        False where something of it can't be read, or it is a part or has not ended.
    """

    about: About
    traces: TraceStore
    review: Review = field(default_factory=Review)
    events: tuple[Event, ...] = ()
    live: bool = False
    accepted: bool = False
    judging: bool = False
    top: EditsOnTop | None = None
    whole: bool = True

    @property
    def mark(self) -> str:
        """What stands over it as long as it is on show: where it comes from, that it lacks."""
        lacks = () if self.whole else (say("NOT WHOLE"),)
        return " · ".join((*filter(None, (origin_words(self.about),)), *lacks))

    @property
    def has_found_steps(self) -> bool:
        """Tell whether speeds were found in the current that nobody recorded."""
        return not self.live and (self.accepted or any(step.found for step in self.review.steps))

    @property
    def end_ns(self) -> int:
        """The newest instant there is something of, nanoseconds since the recording's zero."""
        return max(self.traces.end_ns, self.events[-1].t_ns if self.events else 0)

    def volts(self) -> tuple[str, float]:
        """Give what the voltage digits show: across the motor where feed and return are there.

        Returns
        -------
        label : str
        value : float, volts
            NaN where the newest reading has no value.
        """
        feed = self.traces.line(Role.MOTOR_FEED)
        back = self.traces.line(Role.MOTOR_RETURN)
        if feed is not None and back is not None:
            return say("across the motor"), feed.last - back.last
        if feed is not None:
            return say("motor feed"), feed.last
        battery = self.traces.line(Role.BATTERY)
        return (
            (say("battery"), battery.last)
            if battery is not None
            else (say("no voltage"), float("nan"))
        )

    def amperes(self) -> tuple[str, float]:
        """Give what the current digits show, in amperes; NaN where there is no value."""
        line = self.traces.line(Role.MOTOR_CURRENT)
        return (
            (say("motor current"), line.last)
            if line is not None
            else (say("no current"), float("nan"))
        )

    def typed_line(self, role: Role) -> TraceLine | None:
        """Give the oldest line typed by hand of those that the digits of ``role`` rest on."""
        rests = {
            Role.MOTOR_FEED: (Role.MOTOR_FEED, Role.MOTOR_RETURN)
            if self.traces.line(Role.MOTOR_FEED) is not None
            else (Role.BATTERY,),
        }.get(role, (role,))
        lines = (self.traces.line(one) for one in rests)
        typed = [line for line in lines if line is not None and line.typed]
        return min(typed, key=lambda line: line.last_ns, default=None)

    def meter_of(self, role: Role) -> str:
        """Give the key of the instrument that reads ``role``; empty when none does."""
        keys = (one.key for one in self.about.instruments if one.column(role) is not None)
        return next(keys, "")

    @property
    def state_words(self) -> str:
        """Say why there is no span yet."""
        return say("not judged") if self.judging else say("waiting for readings")

    def newest_span(self) -> Span | None:
        """Give the span that the newest readings belong to, or None."""
        return self.review.spans[-1] if self.review.spans else None

    def holds_since_ns(self, span: Span) -> int:
        """Give since when there has been this span at the speed commanded last."""
        commands = (event.t_ns for event in reversed(self.events) if event.kind.value == "speed")
        return max(span.start_ns, next(commands, span.start_ns))

    def speed(self) -> int | None:
        """Give the speed commanded last, or None when nobody said."""
        for event in reversed(self.events):
            if event.kind.value == "speed":
                return event.speed if event.value.isdecimal() else None
        return None
