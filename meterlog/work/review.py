"""The review of a recorded folder, by the same reviewer as live."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import replace
from pathlib import Path

from meterlog.analysis import Reviewer
from meterlog.analysis.found_steps import (
    FoundStep,
    accepted_events,
    accepted_limits,
    accepted_note,
)
from meterlog.model import Block, Event, Limits, Review, Step
from meterlog.recording import Recording
from meterlog.work.amended import Amending, amend, edits_before_import, with_edits_told
from meterlog.work.attic_file import AtticFile
from meterlog.work.other_limits import other_limits
from meterlog.work.reading_count import ReadingCount
from meterlog.work.wholeness import one_part

AMENDED = Amending()
"""The edits apply, and all is said of them."""


def review_folder(
    folder: Path,
    limits: Limits | None = None,
    progress: Callable[[float], None] | None = None,
    *,
    accept_steps: bool = False,
    amending: Amending = AMENDED,
    prepare: Callable[[Recording], None] | None = None,
    count: ReadingCount | None = None,
) -> tuple[Recording, Review]:
    """Judge a recording.

    Parameters
    ----------
    folder : Path
        Sealed or not; a damaged tail is left out and named in ``Recording.damage``.
    limits : Limits or None
        None: those in force when the recording was made, as amended since.
    progress : callable or None
        Called with the part done, 0 to 1. All is read a second time where no command was
        recorded and speed changes are found.
    accept_steps : bool
        Take found speed changes as commands; otherwise they only bound the steps. The steps say
        that they were found either way.
    amending : Amending
        What becomes of edits on top of the recording.
    prepare : callable or None
        Called with what was read of the recording before it is judged, such as to take names out.
    count : ReadingCount or None
        Is fed with all readings, once.

    Returns
    -------
    recording : Recording
        With its events and limits as amended.
    review : Review
        Its notes say every edit, and which limits are not the recording's own; its ``part`` that
        the recording is one part of a whole.

    Raises
    ------
    RecordingUnreadable
        If there is no recording or it is damaged beyond use.
    EvidenceError
        If the file of its edits can't be read.
    """
    recording = Recording.open(folder)
    if prepare is not None:
        prepare(recording)
    earlier = edits_before_import(recording, named=amending.named)
    edits, damage = amend(recording, amending, own_limits=limits is None)
    by = limits or recording.about.limits
    review = _review(recording, by, progress, count, accept_steps=accept_steps)
    others = "" if limits is None else other_limits(recording.about.limits, limits)
    if others:
        review = replace(review, notes=(others, *review.notes))
    return recording, with_edits_told(review, (*earlier, *edits), damage)


def _review(
    recording: Recording,
    in_force: Limits,
    progress: Callable[[float], None] | None,
    count: ReadingCount | None,
    *,
    accept_steps: bool,
) -> Review:
    part = one_part(recording.folder)
    first = _judged(recording, in_force, progress, count=count)
    review = first.finish(part)
    if not first.found:
        return _nothing_accepted(review) if accept_steps else review
    if not accept_steps:
        return _judged(recording, in_force, progress, found=first.found).finish(part)
    by = accepted_limits(first.found, in_force)
    events = accepted_events(first.found)
    accepted = _judged(recording, by, progress, events=events).finish(part)
    note = accepted_note(first.found, in_force)
    steps = tuple(_marked(step, first.found) for step in accepted.steps)
    return replace(accepted, steps=steps, notes=(note, *accepted.notes))


def _marked(step: Step, found: Sequence[FoundStep]) -> Step:
    """Mark a step that an accepted change began: whoever reads its figures alone must see it."""
    edges = {one.t_ns: one.edge_ns for one in found}
    edge_ns = edges.get(step.start_ns, step.edge_ns)
    return replace(step, found=True, proposed_speed=step.speed, edge_ns=edge_ns)


def _nothing_accepted(review: Review) -> Review:
    """Say that there were no found steps to take for commands."""
    if any(step.speed is not None for step in review.steps):
        why = "speeds were recorded, and those count"
    else:
        why = "no speed change was found in the current"
    note = f"No found steps were accepted as commands: {why}."
    return replace(review, notes=(note, *review.notes))


def _judged(
    recording: Recording,
    limits: Limits,
    progress: Callable[[float], None] | None,
    *,
    found: Sequence[FoundStep] = (),
    events: Sequence[Event] = (),
    count: ReadingCount | None = None,
) -> Reviewer:
    """Feed a reviewer with everything, events that nobody recorded first."""
    about = recording.about
    conditions = about.job.measured_under
    attic = AtticFile()
    reviewer = Reviewer(
        about.instruments, limits, about.started_utc, conditions, found, attic=attic
    )
    end_ns = max(recording.end_ns, 1)
    for event in events:
        reviewer.feed(event)
    for item in recording.items():
        reviewer.feed(item)
        if not isinstance(item, Block) or not len(item):
            continue
        if count is not None:
            count.take(item)
        if progress is not None:
            progress(min(int(item.t_ns[-1]) / end_ns, 1.0))
    return reviewer
