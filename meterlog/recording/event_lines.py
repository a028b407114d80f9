"""EventLines: events as JSON lines, each with a checksum of its own."""

from __future__ import annotations

import json

from meterlog.model import Event, EventKind
from meterlog.model.speed_step import FASTEST_STEP
from meterlog.recording.checked_text import crc_holds

LATEST_NS = 1 << 62
"""A hundred and forty years; the sum of two of them still is a time."""


def event_text(event: Event) -> str:
    """Give one event as the JSON object that a line of ``events.jsonl`` begins with.

    Parameters
    ----------
    event : Event

    Returns
    -------
    str
        ``t_ns``, ``elapsed_s``, ``kind``, ``value``, ``source``. ``elapsed_s`` is for people;
        ``t_ns`` is what is read back. In the file ``chain``
        (:mod:`~meterlog.recording.event_chain`) and ``crc32`` follow.
    """
    return json.dumps(
        {
            "t_ns": int(event.t_ns),
            "elapsed_s": int(event.t_ns) / 1e9,
            "kind": event.kind.value,
            "value": event.value,
            "source": event.source,
        },
        ensure_ascii=False,
    )


def parse_event_lines(content: bytes, name: str) -> tuple[tuple[Event, ...], tuple[str, ...]]:
    """Read the whole of an ``events.jsonl``.

    Parameters
    ----------
    content : bytes
        May be cut anywhere.
    name : str
        The file, for messages.

    Returns
    -------
    events : tuple of Event
        In time order. A line that does not match its checksum, or the torn last one, is never
        among them.
    damage : tuple of str
        One text for each such line.
    """
    *lines, rest = content.split(b"\n")
    events: list[Event] = []
    damage: list[str] = []
    for number, line in enumerate(lines, 1):
        event = _event(line)
        if event is None:
            damage.append(f"{name}: line {number} is damaged and left out.")
        else:
            events.append(event)
    if rest:
        damage.append(f"{name}: line {len(lines) + 1} is torn off and left out.")
    events.sort(key=lambda event: event.t_ns)
    return tuple(events), tuple(damage)


def _event(line: bytes) -> Event | None:
    if not crc_holds(line):
        return None
    try:
        found = json.loads(line)
        t_ns = found["t_ns"]
        if type(t_ns) is not int or abs(t_ns) > LATEST_NS:
            return None
        kind = EventKind(found["kind"])
        event = Event(t_ns, kind, str(found["value"]), str(found["source"]))
        # A checksum is no proof that the program wrote it: what can't be judged is damage, too.
        wrong = kind is EventKind.SPEED and event.speed > FASTEST_STEP
    except (ValueError, KeyError, TypeError, RecursionError):
        return None
    return None if wrong else event
