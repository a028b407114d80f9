"""Picks: which recordings can be set side by side, and which are. No widgets."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from pathlib import Path
from typing import TYPE_CHECKING

from meterlog.model.errors import UsageError
from meterlog.profile.full_path import full_path
from meterlog.window.numbers import typed_number
from meterlog.window.words import say, say_many
from meterlog.work.job_folder import JobWork, Kept, Side

if TYPE_CHECKING:
    from meterlog.work.compare import CompareRequest

_MOST_AT_ONCE = 50


@dataclass(frozen=True, slots=True)
class Offer:
    """A recording that can be chosen.

    Attributes
    ----------
    folder : Path
    words : str
        Which part it belongs to, and its name.
    """

    folder: Path
    words: str


@dataclass(frozen=True, slots=True)
class Picks:
    """What was chosen.

    Attributes
    ----------
    before, after : Path or None
    good : tuple of Path
        Motors known to be good.
    against_good : bool
        They stand for the side before.
    by_current : bool
        Speeds are paired by order of current.
    most_percent : float or None
        The largest difference allowed; None: it is told whether they differ.
    """

    before: Path | None = None
    after: Path | None = None
    good: tuple[Path, ...] = ()
    against_good: bool = False
    by_current: bool = False
    most_percent: float | None = None

    def swapped(self) -> Picks:
        """Give the same with the sides exchanged."""
        return replace(self, before=self.after, after=self.before)

    def lacking(self) -> str:
        """Say what must be chosen before anything can be compared; empty where nothing is."""
        if self.against_good and not self.good:
            return say("Choose the good ones: take each in from the list Before, or from a folder.")
        if not self.against_good and self.before is None:
            return say(
                "Choose the recording before. Record the old part on the Trace page with the old"
                " part fitted (Job page), or choose the folder of a recording."
            )
        if self.after is None:
            return say(
                "Choose the recording after. Record the new part on the Trace page with the new"
                " part fitted (Job page), or choose the folder of a recording."
            )
        if self.after in (self.good if self.against_good else (self.before,)):
            return say("Before and after are one recording: choose two different ones.")
        return ""

    def request(self) -> CompareRequest | None:
        """Give what is to be compared; None while something is lacking."""
        # Not needed to open a window.
        from meterlog.work.compare import CompareRequest

        if self.lacking() or self.after is None:
            return None
        old = self.good if self.against_good else (self.before,)
        return CompareRequest(
            old=tuple(one for one in old if one is not None),
            new=self.after,
            baseline=self.against_good,
            by_current=self.by_current,
            max_difference_percent=None if self.against_good else self.most_percent,
        )


def offers(work: JobWork, others: Sequence[Path], first: Side) -> tuple[Offer, ...]:
    """Give what can be chosen: the job's runs with one part, newest first, the others, the rest.

    Parameters
    ----------
    work : JobWork
    others : sequence of Path
        Folders that are not the job's.
    first : Side
    """
    runs = [one for one in reversed(work.recordings) if not one.circuit]
    runs.sort(key=lambda one: one.side is not first)
    own = {one.folder for one in runs}
    mine = [Offer(one.folder, _offered(one)) for one in runs]
    return (
        *mine,
        *(Offer(one, say("other: {one_}", one_=one.name)) for one in others if one not in own),
    )


def _offered(one: Kept) -> str:
    words = f"{say(one.side.value)}: {one.folder.name}"
    if one.speeds is None:
        return words
    return f"{words} · {say_many(one.speeds, '{n} speed', '{n} speeds', n=one.speeds)}"


def recordings_at(folder: Path) -> tuple[Path, ...]:
    """Give the recording that a folder is, or those that lie in it, oldest name first.

    Returns
    -------
    tuple of Path
        Empty where there is none, or it can't be read.
    """
    from meterlog.recording import layout

    try:
        if layout.has_held_recording(folder):
            return (full_path(folder),)
        inside = sorted(one for one in folder.iterdir() if layout.holds_recording(one))
    except OSError:
        return ()
    return tuple(full_path(one) for one in inside[:_MOST_AT_ONCE])


def edit_stamps(picks: Picks) -> tuple[int, ...]:
    """Tell when the edits on top of the chosen recordings were last changed; 0 where none are.

    Returns
    -------
    tuple of int, nanoseconds
        In the order of the recordings.
    """
    from meterlog.work.amendments import amendments_path

    old = picks.good if picks.against_good else (picks.before,)
    stamps = []
    for folder in (*old, picks.after):
        try:
            stamps.append(0 if folder is None else amendments_path(folder).stat().st_mtime_ns)
        except OSError:
            stamps.append(0)
    return tuple(stamps)


def percent_of(text: str) -> float | None:
    """Read a percentage, with a comma or a point; None where it is no number above 0."""
    try:
        value = typed_number(text.strip().removesuffix("%"))
    except UsageError:
        return None
    return value if 0.0 < value < 1000.0 else None
