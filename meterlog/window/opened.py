"""Opened: a recording read from its folder, judged with the edits on top of it, ready to show."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

from meterlog.evidence.trace_store import TraceStore
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


def opened(folder: Path, *, accept_steps: bool = False) -> Opened:
    """Read and judge a recording; takes up to seconds.

    Parameters
    ----------
    folder : Path
    accept_steps : bool
        Take speeds found in the current for commanded.

    Raises
    ------
    RecordingUnreadable, EvidenceError
        As :func:`meterlog.work.review_folder`.
    """
    from meterlog.work.edits_on_top import EditsOnTop

    tops: list[EditsOnTop] = []
    recording, review = review_folder(
        folder,
        accept_steps=accept_steps,
        # Before the edits are laid on it: what they are laid on is needed, too.
        prepare=lambda as_recorded: tops.append(EditsOnTop(as_recorded)),
    )
    about = recording.about
    traces = TraceStore(about.instruments)
    rows = {}
    for instrument in about.instruments:
        rows[instrument.key] = recording.rows(instrument.key)
        for block in recording.blocks(instrument.key):
            traces.take(block)
    shown = Shown(about, traces, review, recording.standing, accepted=accept_steps, top=tops[0])
    return Opened(shown, rows, tuple(recording.damage))
