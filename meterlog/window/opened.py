"""Opened: a recording read from its folder, judged with the edits on top of it, ready to show."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

from meterlog.window.judged_apart import judged_apart
from meterlog.window.long_recording import at_first_sight, is_very_long, long_traces, traces_of
from meterlog.window.shown import Shown
from meterlog.work import review_folder
from meterlog.work.reading_count import ReadingCount
from meterlog.work.wholeness import not_ended, one_part

if TYPE_CHECKING:
    from meterlog.work.edits_on_top import EditsOnTop


@dataclass(frozen=True, slots=True)
class Opened:
    """What was read.

    Attributes
    ----------
    shown : Shown
    readings : mapping of str to int
        How many each instrument gave, without rows that only say that nothing came.
    damage : tuple of str
        What can't be read, and that it has not ended.
    part : str
        That it is the last part of a recording whose disk failed; empty if it is whole.
    """

    shown: Shown
    readings: Mapping[str, int]
    damage: tuple[str, ...]
    part: str


def opened(
    folder: Path,
    *,
    accept_steps: bool = False,
    first: Callable[[Shown], None] | None = None,
    tell: Callable[[float], None] = lambda _: None,
) -> Opened:
    """Read and judge a recording; takes up to seconds, of a very long one minutes.

    Parameters
    ----------
    folder : Path
    accept_steps : bool
        Take speeds found in the current for commanded.
    first : callable or None
        Called with a long recording as soon as it can be drawn, before it is judged.
    tell : callable
        Called with the part done, 0 to 1; what it raises ends the work.

    Raises
    ------
    MeterlogError
        As :func:`meterlog.work.review_folder`.
    """
    from meterlog.work.edits_on_top import EditsOnTop

    if first is not None:
        shown = at_first_sight(folder, tell)
        if shown is not None:
            first(shown)
            if is_very_long(folder, shown.about):
                return _judged_apart(folder, shown, tell, accept_steps=accept_steps)
    tops: list[EditsOnTop] = []
    recording, review = review_folder(
        folder,
        progress=tell,
        accept_steps=accept_steps,
        # Before the edits are laid on it: what they are laid on is needed, too.
        prepare=lambda as_recorded: tops.append(EditsOnTop(as_recorded)),
        count=(count := ReadingCount()),
    )
    about = recording.about
    traces = traces_of(recording, tell)
    shown = Shown(about, traces, review, recording.standing, accepted=accept_steps, top=tops[0])
    return _told(shown, count.of(about.instruments), recording.damage, folder)


def _judged_apart(
    folder: Path, shown: Shown, tell: Callable[[float], None], *, accept_steps: bool
) -> Opened:
    """Have a recording that is on show judged in a process of its own."""
    made = judged_apart(folder, tell, accept_steps=accept_steps)
    traces = shown.traces
    left_out = {one.pyramid.head.source: one.pyramid.head.left_out for one in traces.kept}
    if traces.trouble or any(made.damaged[key] != count for key, count in left_out.items()):
        traces = long_traces(folder, made.about, tell, made.damaged)
    judged = Shown(
        made.about, traces, made.review, made.events, accepted=accept_steps, top=made.top
    )
    return _told(judged, made.readings, made.damage, folder)


def _told(shown: Shown, readings: Mapping[str, int], damage: Sequence[str], folder: Path) -> Opened:
    """Put what it lacks beside it, and a mark on it that stays as long as it is on show."""
    end, part = not_ended(folder), one_part(folder)
    lacks = (*damage, end) if end else tuple(damage)
    shown.whole = not (lacks or part)
    return Opened(shown, readings, lacks, part)
