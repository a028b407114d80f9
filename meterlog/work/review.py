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
from meterlog.model import Block, Event, Limits, Review
from meterlog.recording import Recording


def review_folder(
    folder: Path,
    limits: Limits | None = None,
    progress: Callable[[float], None] | None = None,
    *,
    accept_steps: bool = False,
) -> tuple[Recording, Review]:
    """Judge a recording.

    Parameters
    ----------
    folder : Path
        Sealed or not; a damaged tail is left out and named in ``Recording.damage``.
    limits : Limits or None
        None: those in force when the recording was made.
    progress : callable or None
        Called with the part done, 0 to 1. All is read a second time where no command was
        recorded and speed changes are found.
    accept_steps : bool
        Take found speed changes as commands; otherwise they only bound the steps.

    Returns
    -------
    tuple of Recording and Review

    Raises
    ------
    RecordingUnreadable
        If there is no recording or it is damaged beyond use.
    """
    recording = Recording.open(folder)
    in_force = limits or recording.about.limits
    first = _judged(recording, in_force, progress)
    review = first.finish()
    if not first.found:
        return recording, review
    if not accept_steps:
        return recording, _judged(recording, in_force, progress, found=first.found).finish()
    by = accepted_limits(first.found, in_force)
    events = accepted_events(first.found)
    accepted = _judged(recording, by, progress, events=events).finish()
    note = accepted_note(first.found, in_force)
    return recording, replace(accepted, notes=(note, *accepted.notes))


def _judged(
    recording: Recording,
    limits: Limits,
    progress: Callable[[float], None] | None,
    *,
    found: Sequence[FoundStep] = (),
    events: Sequence[Event] = (),
) -> Reviewer:
    """Feed a reviewer with everything, events that nobody recorded first."""
    about = recording.about
    conditions = about.job.measured_under
    reviewer = Reviewer(about.instruments, limits, about.started_utc, conditions, found)
    end_ns = max(recording.end_ns, 1)
    for event in events:
        reviewer.feed(event)
    for item in recording.items():
        reviewer.feed(item)
        if progress is not None and isinstance(item, Block) and len(item):
            progress(min(int(item.t_ns[-1]) / end_ns, 1.0))
    return reviewer
