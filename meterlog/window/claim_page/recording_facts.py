"""RecordingFacts: what a reviewer asks of a recording first, read from its head. No widgets."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

from meterlog.model import About
from meterlog.model.errors import MeterlogError
from meterlog.window.origin_words import origin_words
from meterlog.window.remedies_here import remedy_here
from meterlog.window.words import say

if TYPE_CHECKING:
    from meterlog.recording import Recording


@dataclass(frozen=True, slots=True)
class RecordingFacts:
    """One recording.

    Attributes
    ----------
    folder : Path
    lines : tuple of str
        When it was made, of what, for how long, and whether it is sealed.
    mark : str
        That no meter sent its readings, and that it is not whole; empty for a whole one that was
        measured.
    edits : tuple of str
        On top of it, in words.
    warnings : tuple of str
        Calibration overdue or not stated, not sealed, damage, one part of a whole.
    trouble : str
        Why it can't be read; empty when it can.
    about : About or None
        Its head; None when it can't be read.
    """

    folder: Path
    lines: tuple[str, ...] = ()
    mark: str = ""
    edits: tuple[str, ...] = ()
    warnings: tuple[str, ...] = ()
    trouble: str = ""
    about: About | None = None


def read_facts(
    folders: Sequence[Path], progress: Callable[[float], None]
) -> tuple[RecordingFacts, ...]:
    """Read the heads of recordings.

    Parameters
    ----------
    folders : sequence of Path
    progress : callable
        Called with the part done; may raise.
    """
    found = []
    for number, folder in enumerate(folders, start=1):
        try:
            found.append(_facts(folder))
        except MeterlogError as error:
            found.append(RecordingFacts(folder, trouble=remedy_here(str(error))))
        progress(number / len(folders))
    return tuple(found)


_MOST_ROWS = 2_000_000
"""Judged in half a second; the verdict of more is on the Trace and Recordings pages."""


def _verdict(folder: Path, recording: Recording) -> str:
    """Say what the run comes to: of several recordings it tells which one proves anything."""
    if sum(recording.rows(one.key) for one in recording.about.instruments) > _MOST_ROWS:
        return ""
    from meterlog.window.verdict_words import outcome_words
    from meterlog.work import review_folder

    verdict = review_folder(folder)[1].verdict
    return "" if verdict is None else outcome_words(verdict)


def _facts(folder: Path) -> RecordingFacts:
    # Read in a thread: Arrow, and Qt's painter for the words of the mark.
    from meterlog.model.amendment import amendment_words
    from meterlog.model.calibration import measured_on
    from meterlog.recording import UNDATED, Recording
    from meterlog.recording.given_folder import recording_at
    from meterlog.recording.writer_lock import is_being_written
    from meterlog.work.amendments import amendments_of
    from meterlog.work.run_doubts import meter_doubts
    from meterlog.work.wholeness import part_lines

    recording = Recording.open(recording_at(folder))
    about = recording.about
    edits, damage = amendments_of(folder)
    minutes, seconds = divmod(round(recording.length_ns / 1e9), 60)
    parted = part_lines(folder)
    lacks = (say("NOT WHOLE"),) if parted or recording.damage else ()
    dated = about.started_utc != UNDATED
    day = str(measured_on(about)) if dated else say("no date")
    meters = ", ".join(one.key for one in about.instruments) or say("no meter")
    unsealed = (
        say("It is being recorded: stop the recording first.")
        if is_being_written(recording_at(folder))
        else say("It is not sealed: seal it on the Recordings page first.")
    )
    about_it = f"{day}, {minutes}:{seconds:02} min, {meters}"
    return RecordingFacts(
        folder,
        lines=tuple(one for one in (about_it, _verdict(folder, recording), about.job.part) if one),
        mark=" · ".join(filter(None, (origin_words(about), *lacks))),
        edits=tuple(amendment_words(one) for one in edits),
        warnings=(
            *((unsealed,) if recording.state == "unsealed" else ()),
            *meter_doubts(about),
            *recording.damage,
            *parted,
            *damage,
        ),
        about=about,
    )
