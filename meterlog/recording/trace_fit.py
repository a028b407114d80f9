"""TraceFit: tells whether the events of an imported trace lie where its readings are."""

from __future__ import annotations

from collections.abc import Iterator

from meterlog.model import Event
from meterlog.recording.events_file import MARKS
from meterlog.recording.recording import Recording

SLACK_INTERVALS = 3.0
"""Events this many intervals before the first or after the last reading still belong to it."""


def events_outside(recording: Recording) -> tuple[str, ...]:
    """Give a warning if marks lie before the first or after the last reading.

    Parameters
    ----------
    recording : Recording
        Its readings are read once.

    Returns
    -------
    tuple of str
        One text, or none: events that count from another zero than the readings put the speeds
        in the wrong places, and nothing else would show it.

    Raises
    ------
    RecordingUnreadable
        If the readings can't be read.
    """
    marks = [event for event in recording.standing if event.kind in MARKS]
    ends = [end for key in _keys(recording) for end in _ends(recording, key)]
    if not marks or not ends:
        return ()
    first, last = min(ends), max(ends)
    slack_ns = (
        SLACK_INTERVALS
        * 1e9
        * max(channel.interval_s for one in recording.about.instruments for channel in one.channels)
    )
    outside = [e for e in marks if not first - slack_ns <= e.t_ns <= last + slack_ns]
    if not outside:
        return ()
    return (
        f"{len(outside)} of {len(marks)} events lie outside the readings, which go from "
        f"{first / 1e9:.3f} s to {last / 1e9:.3f} s; the first is {_named(outside[0])}. "
        "elapsed_s of the events and the column of time must count from the same zero.",
    )


def _keys(recording: Recording) -> Iterator[str]:
    return (instrument.key for instrument in recording.about.instruments)


def _ends(recording: Recording, key: str) -> tuple[int, ...]:
    first = last = None
    for block in recording.blocks(key):
        if len(block):
            first = int(block.t_ns[0]) if first is None else first
            last = int(block.t_ns[-1])
    return () if first is None or last is None else (first, last)


def _named(event: Event) -> str:
    words = f"{event.kind.value} {event.value}".strip()[:40]
    return f"'{words}' at {event.t_ns / 1e9:.3f} s"
