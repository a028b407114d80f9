"""LongRecording: the pyramids of a recording too long to be read before it is shown."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import TYPE_CHECKING

from meterlog.evidence.trace_store import TraceStore
from meterlog.model import Review
from meterlog.window.shown import Shown
from meterlog.window.words import later, say

if TYPE_CHECKING:
    from meterlog.model import About, Instrument
    from meterlog.recording import Pyramid, Recording

Tell = Callable[[float], None]
LONG_ROWS = 4_000_000
"""Fewer of one meter are read and judged in about a second, and drawn faster from memory."""
_NOT_YET = later("Not judged: what stands here is the trace alone. Nothing is said of it yet.")


def long_meters(folder: Path, about: About) -> tuple[Instrument, ...]:
    """Give the instruments whose readings are so many that they are drawn from a pyramid."""
    from meterlog.recording import has_many_rows

    return tuple(one for one in about.instruments if has_many_rows(folder, one, LONG_ROWS))


def pyramids(folder: Path, about: About, tell: Tell) -> dict[str, Pyramid]:
    """Open the pyramids of all long instruments; make those that can't be used.

    Parameters
    ----------
    folder : Path
    about : About
    tell : callable
        Called with the part done, 0 to 1, while one is made.

    Raises
    ------
    RecordingUnreadable
        If the readings can't be read.
    """
    from meterlog.recording import PyramidUnusable, kept_pyramid, make_pyramid

    found = {}
    for one in long_meters(folder, about):
        try:
            found[one.key] = kept_pyramid(folder, about, one)
        except (PyramidUnusable, OSError):
            made = make_pyramid(folder, about, one, tell)
            if made is not None:
                found[one.key] = made
    return found


def at_first_sight(folder: Path, tell: Tell) -> Shown | None:
    """Give a long recording to be drawn before it is judged; None where none of it is long.

    Parameters
    ----------
    folder : Path
    tell : callable
        See :func:`pyramids`.

    Raises
    ------
    RecordingUnreadable
        If there is no recording or its readings can't be read.
    """
    from meterlog.recording import Recording

    recording = Recording.without_readings(folder)
    about = recording.about
    found = pyramids(folder, about, tell)
    if not found:
        return None
    traces = TraceStore(about.instruments, pyramids=found)
    if len(found) < len(about.instruments):
        recording = Recording.open(folder)
        _take_short(recording, traces, found)
    review = Review(notes=(say(_NOT_YET),))
    return Shown(about, traces, review, events=recording.standing, judging=True)


def traces_of(recording: Recording, tell: Tell) -> TraceStore:
    """Give the traces of a recording that has been read throughout.

    Damage that was found since a pyramid was made has it made anew, without what is damaged.
    """
    about, folder = recording.about, recording.folder
    found = pyramids(folder, about, tell)
    for one in about.instruments:
        held = found.get(one.key)
        if held is not None and held.head.left_out != len(recording.damage_of(one.key)):
            from meterlog.recording import make_pyramid

            del found[one.key]
            made = make_pyramid(folder, about, one, tell)
            if made is not None:
                found[one.key] = made
    traces = TraceStore(about.instruments, pyramids=found)
    _take_short(recording, traces, found)
    return traces


def _take_short(recording: Recording, traces: TraceStore, found: dict[str, Pyramid]) -> None:
    for instrument in recording.about.instruments:
        if instrument.key not in found:
            for block in recording.blocks(instrument.key):
                traces.take(block)


def mend_traces(shown: Shown, folder: Path) -> tuple[str, bool]:
    """Say why lines can't be drawn any more, if so, and whether opening the recording again helps.

    What was kept to draw them quickly is taken away where it does not fit the readings; opening
    the recording makes it anew.
    """
    if not shown.traces.trouble:
        return "", False
    from meterlog.recording import drop_pyramid

    again = False
    for meter in shown.traces.kept:
        if meter.is_unusable:
            drop_pyramid(folder, shown.about, meter.pyramid.head.source)
            again = True
    if again:
        return say(
            "What was kept to draw this recording quickly does not fit its readings. It is made"
            " anew from them."
        ), True
    why = shown.traces.trouble
    for meter in shown.traces.kept:
        meter.trouble = ""  # tried again when it is drawn next
    return say(
        "The recording can't be read any more: {why} Check that its disk is there.", why=why
    ), False
