"""LongRecording: the pyramids of a recording too long to be read before it is shown."""

from __future__ import annotations

import contextlib
from collections.abc import Callable, Mapping
from pathlib import Path
from typing import TYPE_CHECKING

from meterlog.evidence.trace_store import TraceStore
from meterlog.model import Review
from meterlog.window.judged_apart import made_apart
from meterlog.window.shown import Shown
from meterlog.window.words import later, say

if TYPE_CHECKING:
    from meterlog.model import About, Instrument
    from meterlog.recording import Pyramid, Recording

Tell = Callable[[float], None]
LONG_ROWS = 4_000_000
"""Fewer of one meter are read and judged in about a second, and drawn faster from memory."""
APART_ROWS = 20_000_000
"""More of one meter are judged in a process of their own. Such a process takes half a second to a
second to start, judging about as long for each five million rows: fewer are told sooner without."""
_NOT_YET = later("Not judged: what stands here is the trace alone. Nothing is said of it yet.")


def long_meters(folder: Path, about: About) -> tuple[Instrument, ...]:
    """Give the instruments whose readings are so many that they are drawn from a pyramid."""
    from meterlog.recording import has_many_rows

    return tuple(one for one in about.instruments if has_many_rows(folder, one, LONG_ROWS))


def is_very_long(folder: Path, about: About) -> bool:
    """Tell whether a recording is judged in a process of its own."""
    from meterlog.recording import has_many_rows

    return any(has_many_rows(folder, one, APART_ROWS) for one in about.instruments)


def pyramids(
    folder: Path, about: About, tell: Tell, damaged: Mapping[str, int] | None = None
) -> dict[str, Pyramid]:
    """Open the pyramids of all long instruments; make those that can't be used.

    Parameters
    ----------
    folder : Path
    about : About
    tell : callable
        Called with the part done, 0 to 1, while one is made.
    damaged : mapping of str to int, or None
        How many batches of each instrument are damaged, once that is known: one that was made
        before is made anew, without them.

    Raises
    ------
    RecordingUnreadable
        If the readings can't be read.
    """
    from meterlog.recording import PyramidUnusable, kept_pyramid

    found = {}
    for one in long_meters(folder, about):
        try:
            held: Pyramid | None = kept_pyramid(folder, about, one)
        except (PyramidUnusable, OSError):
            held = None
        if held is None or (damaged is not None and held.head.left_out != damaged[one.key]):
            held = _made(folder, about, one, tell)
        if held is not None:
            found[one.key] = held
    return found


def _made(folder: Path, about: About, meter: Instrument, tell: Tell) -> Pyramid | None:
    """Make a pyramid anew; of a very long recording in a process of its own."""
    from meterlog.recording import PyramidUnusable, has_many_rows, kept_pyramid, make_pyramid

    if not has_many_rows(folder, meter, APART_ROWS):
        return make_pyramid(folder, about, meter, tell)
    made = made_apart(folder, meter.key, tell)
    with contextlib.suppress(PyramidUnusable, OSError):
        return kept_pyramid(folder, about, meter) if made else None
    return None


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
    traces = long_traces(folder, about, tell)
    if not traces.kept:
        return None
    review = Review(notes=(say(_NOT_YET),))
    return Shown(about, traces, review, events=recording.standing, judging=True)


def long_traces(
    folder: Path, about: About, tell: Tell, damaged: Mapping[str, int] | None = None
) -> TraceStore:
    """Give the traces of a recording, of which only what is not long is read.

    None at all where nothing is long, unless it is known what is damaged; see :func:`pyramids`.
    """
    from meterlog.recording import Recording

    found = pyramids(folder, about, tell, damaged)
    traces = TraceStore(about.instruments, pyramids=found)
    if len(found) < len(about.instruments) and (found or damaged is not None):
        _take_short(Recording.open(folder), traces, found)
    return traces


def traces_of(recording: Recording, tell: Tell) -> TraceStore:
    """Give the traces of a recording that has been read throughout.

    Damage that was found since a pyramid was made has it made anew, without what is damaged.
    """
    about = recording.about
    damaged = {one.key: len(recording.damage_of(one.key)) for one in about.instruments}
    found = pyramids(recording.folder, about, tell, damaged)
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
