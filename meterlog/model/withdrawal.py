"""Withdrawal: a mark made by a wrong key, taken back by an entry on top of it."""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence
from decimal import Decimal

from meterlog.model.event import Event, EventKind

WITHDRAWABLE = (EventKind.SPEED, EventKind.TAP, EventKind.WIGGLE, EventKind.NOTE)
"""What a technician marks by hand, and may have marked by mistake."""
_NS = 1_000_000_000
_NEAR_NS = 1_000
"""A table that was exported and read again has its times to the microsecond."""


def withdrawal(mark: Event, t_ns: int) -> Event:
    """Give the entry that takes a mark back.

    Parameters
    ----------
    mark : Event
        Of a kind in :data:`WITHDRAWABLE`.
    t_ns : int, nanoseconds since the recording's zero
        When it is taken back.

    Returns
    -------
    Event
        Its value is ``KIND@SECONDS``, without the mark's words: they stand in the mark.
    """
    seconds = f"{Decimal(mark.t_ns) / _NS:f}"
    if "." in seconds:
        seconds = seconds.rstrip("0").rstrip(".")
    return Event(t_ns, EventKind.WITHDRAWN, f"{mark.kind.value}@{seconds}")


def withdrawn_marks(events: Sequence[Event]) -> tuple[tuple[Event, Event], ...]:
    """Give what was taken back.

    Parameters
    ----------
    events : sequence of Event
        In time order.

    Returns
    -------
    tuple of (mark, entry)
        One pair for each entry whose mark is there; an entry takes back one mark.
    """
    taken: dict[int, Event] = {}
    pairs: list[tuple[Event, Event]] = []
    for entry in events:
        if entry.kind is not EventKind.WITHDRAWN:
            continue
        place = _place(events, entry, taken)
        if place is not None:
            taken[place] = entry
            pairs.append((events[place], entry))
    return tuple(pairs)


def standing(events: Iterable[Event]) -> tuple[Event, ...]:
    """Give the events without the marks that were taken back; the entries that did it stay.

    Parameters
    ----------
    events : iterable of Event
        In time order.

    Returns
    -------
    tuple of Event
    """
    every = tuple(events)
    gone: dict[int, Event] = {}
    for entry in every:
        if entry.kind is EventKind.WITHDRAWN:
            place = _place(every, entry, gone)
            if place is not None:
                gone[place] = entry
    return tuple(one for place, one in enumerate(every) if place not in gone) if gone else every


def withdrawn_words(entry: Event) -> str:
    """Say an entry that takes a mark back in one sentence."""
    kind, t_ns = _named(entry)
    what = "A mark" if t_ns is None else f"The mark {kind!r} at {t_ns / 1e9:.3f} s"
    when = f"{entry.t_ns / 1e9:.3f} s"
    return f"{what} was withdrawn by hand at {when} and counts for nothing; it is kept."


def _place(events: Sequence[Event], entry: Event, taken: dict[int, Event]) -> int | None:
    """Find the mark that an entry takes back: the last of its time that still stands."""
    kind, t_ns = _named(entry)
    if t_ns is None:
        return None
    near = [
        (abs(one.t_ns - t_ns), -place)
        for place, one in enumerate(events)
        if place not in taken and one.kind.value == kind and abs(one.t_ns - t_ns) <= _NEAR_NS
    ]
    return -min(near)[1] if near else None


def _named(entry: Event) -> tuple[str, int | None]:
    kind, _, seconds = entry.value.partition("@")
    if kind not in WITHDRAWABLE:
        return kind, None
    # Ten digits are three hundred years: nothing that a file may hold becomes a huge number here.
    if not re.fullmatch(r"[0-9]{1,10}(\.[0-9]{1,9})?", seconds):
        return kind, None
    return kind, int(Decimal(seconds) * _NS)
