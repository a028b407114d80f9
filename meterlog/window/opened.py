"""Opened: a recording read from its folder, judged with the edits on top of it, ready to show."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

from meterlog.window.long_recording import at_first_sight, traces_of
from meterlog.window.shown import Shown
from meterlog.work import review_folder

if TYPE_CHECKING:
    from meterlog.work.edits_on_top import EditsOnTop


@dataclass(frozen=True, slots=True)
class Opened:
    """What was read.

    Attributes
    ----------
    shown : Shown
    rows : mapping of str to int
        How many readings each instrument gave.
    damage : tuple of str
    """

    shown: Shown
    rows: Mapping[str, int]
    damage: tuple[str, ...]


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
    RecordingUnreadable, EvidenceError
        As :func:`meterlog.work.review_folder`.
    """
    from meterlog.work.edits_on_top import EditsOnTop

    if first is not None:
        shown = at_first_sight(folder, tell)
        if shown is not None:
            first(shown)
    tops: list[EditsOnTop] = []
    recording, review = review_folder(
        folder,
        progress=tell,
        accept_steps=accept_steps,
        # Before the edits are laid on it: what they are laid on is needed, too.
        prepare=lambda as_recorded: tops.append(EditsOnTop(as_recorded)),
    )
    about = recording.about
    traces = traces_of(recording, tell)
    rows = {one.key: recording.rows(one.key) for one in about.instruments}
    shown = Shown(about, traces, review, recording.standing, accepted=accept_steps, top=tops[0])
    return Opened(shown, rows, tuple(recording.damage))
