"""Absence: why there is no reading of the motor current for a while."""

from __future__ import annotations

from bisect import bisect_left, bisect_right, insort
from collections.abc import Sequence
from enum import IntEnum

import numpy as np

from meterlog.analysis.range_crossings import BLANKING_NS, RangeCrossings
from meterlog.model import Block, Event, EventKind, Flag, Instrument, Role, link_text

REPORT_NS = 1_000_000_000
"""A meter's own report this long before a gap may explain it (common practice, no source)."""


OVERLOAD = "overload: the current was beyond its range"


class Reason(IntEnum):
    """Why nothing came; in the order in which several are told."""

    PORT = 1
    SILENT = 2
    SPEED = 3
    UNIT = 4
    HELD = 5


_SIGNS: tuple[tuple[EventKind, str, Reason, bool], ...] = (
    (EventKind.LINK, link_text.LOST, Reason.PORT, True),
    (EventKind.LINK, link_text.NOT_OPEN, Reason.PORT, True),
    (EventKind.LINK, link_text.OPEN_AGAIN, Reason.PORT, False),
    (EventKind.LINK, link_text.SILENT, Reason.SILENT, True),
    (EventKind.LINK, link_text.WRONG_SPEED, Reason.SPEED, True),
    (EventKind.LINK, link_text.OTHER_TEXT, Reason.SPEED, True),
    (EventKind.LINK, link_text.OTHER_FRAMES, Reason.SPEED, True),
    (EventKind.UNIT, "the meter shows", Reason.UNIT, True),
    (EventKind.UNIT, "shows", Reason.UNIT, False),
    (EventKind.DEVICE, "HOLD is on", Reason.HELD, True),
    (EventKind.DEVICE, "HOLD is off", Reason.HELD, False),
)
"""How an event's words begin, what they tell, and whether that begins or ends."""

_TELLING = (EventKind.LINK, EventKind.UNIT, EventKind.DEVICE)

State = dict[Reason, str]


class Absence:
    """Collects what bears on missing readings of the one instrument that reads the current.

    Parameters
    ----------
    instruments : sequence of Instrument
    """

    def __init__(self, instruments: Sequence[Instrument]) -> None:
        self._key, self._column = _current(instruments)
        self._events: list[Event] = []
        self._states: list[State] = []
        self._overloads: list[tuple[int, int]] = []
        self._overloaded = False
        self._crossings = RangeCrossings(instruments)

    def take(self, item: Block | Event) -> None:
        """Take the next Block or Event; events may come out of their order."""
        if item.source != self._key:
            return
        if isinstance(item, Block):
            self._take_block(item)
            self._crossings.take(item)
        elif item.changes_range or item.kind in _TELLING:
            insort(self._events, item, key=lambda event: event.t_ns)
            self._states = []

    def _take_block(self, block: Block) -> None:
        over = (block.flags[:, self._column] & int(Flag.OVERLOAD)) != 0
        if not over.any():
            self._overloaded = self._overloaded and not len(over)
            return
        padded = np.concatenate(([False], over, [False]))
        starts, stops = (np.flatnonzero(padded[1:] != padded[:-1])).reshape(-1, 2).T
        for start, stop in zip(starts, stops - 1, strict=True):
            first_ns, last_ns = int(block.t_ns[start]), int(block.t_ns[stop])
            if start == 0 and self._overloaded:
                first_ns = self._overloads.pop()[0]
            self._overloads.append((first_ns, last_ns))
        self._overloaded = bool(over[-1])

    def cause(self, start_ns: int, end_ns: int) -> str:
        """Give why nothing was read in this stretch, in plain words; empty when nobody said.

        Parameters
        ----------
        start_ns, end_ns : int, nanoseconds since the recording's zero
        """
        found = self._active(start_ns, end_ns)
        words = [_words(reason, found[reason]) for reason in sorted(found)]
        blank = self._range(start_ns, end_ns)
        over = self._overload(start_ns, end_ns)
        if blank and set(found) <= {Reason.SILENT}:
            short = over and end_ns - start_ns <= BLANKING_NS
            words = [blank + (", showing overload meanwhile" if short else "")]
            over = over and not short
        if over:
            words.append(OVERLOAD)
        if not words:
            said = self._said(EventKind.DEVICE, start_ns, end_ns)
            words = [f"it reported {said!r}"] if said else []
        return f"{self._key}: {'; '.join(words)}" if words else ""

    def _active(self, start_ns: int, end_ns: int) -> State:
        """Give every reason that held at some time of the stretch, with its last words."""
        if not self._states:
            self._states = _states(self._events)
        first = bisect_right(self._events, start_ns, key=lambda event: event.t_ns)
        last = bisect_right(self._events, end_ns, key=lambda event: event.t_ns)
        found: State = {}
        for state in self._states[max(first - 1, 0) if first else 0 : last]:
            found.update(state)
        return found

    def _range(self, start_ns: int, end_ns: int) -> str:
        """Give what is known of a change of range here: said, or to be seen in the level."""
        said = self._said(EventKind.RANGE, start_ns, end_ns)
        if said:
            return f"it changed its measuring range ({said})"
        seen = self._crossings.over(start_ns, end_ns)
        return f"it seems to have changed its measuring range ({seen})" if seen else ""

    def _said(self, kind: EventKind, start_ns: int, end_ns: int) -> str:
        reach_ns = BLANKING_NS if kind is EventKind.RANGE else REPORT_NS
        first = bisect_left(self._events, start_ns - reach_ns, key=lambda event: event.t_ns)
        last = bisect_right(self._events, end_ns, key=lambda event: event.t_ns)
        near = [event.value for event in self._events[first:last] if event.kind is kind]
        return near[-1].rstrip(".") if near else ""

    def _overload(self, start_ns: int, end_ns: int) -> bool:
        index = bisect_right(self._overloads, end_ns, key=lambda run: run[0])
        return index > 0 and self._overloads[index - 1][1] >= start_ns


def _states(events: Sequence[Event]) -> list[State]:
    """Give what held after each event."""
    states = []
    now: State = {}
    for event in events:
        now = dict(now)
        if event.kind is EventKind.LINK and event.value.startswith(link_text.BACK):
            for reason in (Reason.PORT, Reason.SILENT, Reason.SPEED):
                now.pop(reason, None)
        for kind, begins, reason, on in _SIGNS:
            if event.kind is kind and event.value.startswith(begins):
                if on:
                    now[reason] = event.value
                else:
                    now.pop(reason, None)
        states.append(now)
    return states


def _words(reason: Reason, value: str) -> str:
    value = value.rstrip(".")
    if reason is Reason.PORT:
        more = value.partition(link_text.NOT_OPEN)[2]
        return "its port was gone (plug, cable or adapter)" + (f", {more}" if more else "")
    if reason is Reason.SILENT:
        _, mark, hint = value.partition(link_text.SWITCHED_OFF)
        return "it sent nothing" + (f" {mark}{hint}" if mark else "")
    if reason is Reason.SPEED:
        return f"what it sent was not understood ({value.partition(';')[0]})"
    return value


def _current(instruments: Sequence[Instrument]) -> tuple[str | None, int]:
    for instrument in instruments:
        column = instrument.column(Role.MOTOR_CURRENT)
        if column is not None:
            return instrument.key, column
    return None, 0
