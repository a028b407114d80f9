"""JudgedApart: a very long recording judged in a process of its own, and what comes back of it.

Beside a thread that judges for half a minute, the window's thread has its turn late with each
painting. What it needs of a judgement is small: the readings themselves stay in the process.
"""

from __future__ import annotations

import copyreg
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from functools import partial
from pathlib import Path
from types import MappingProxyType
from typing import TYPE_CHECKING, Any

from meterlog.window.long_process import apart

if TYPE_CHECKING:
    from meterlog.model import About, Event, Review
    from meterlog.work.edits_on_top import EditsOnTop

Tell = Callable[[float], None]

_PATIENCE_S = 0.2
"""Nothing is half made by judging, and whoever opens another recording waits for its end."""


@dataclass(frozen=True, slots=True)
class JudgedApart:
    """What is known of a recording that was judged elsewhere.

    Attributes
    ----------
    about : About
        As amended.
    events : tuple of Event
        As amended, without the marks that were withdrawn.
    review : Review
    top : EditsOnTop
    readings : mapping of str to int
        How many each instrument gave, without rows that only say that nothing came.
    damage : tuple of str
    damaged : mapping of str to int
        How many batches of each instrument are damaged.
    """

    about: About
    events: tuple[Event, ...]
    review: Review
    top: EditsOnTop
    readings: Mapping[str, int]
    damage: tuple[str, ...]
    damaged: Mapping[str, int]


def judged_apart(folder: Path, tell: Tell, *, accept_steps: bool) -> JudgedApart:
    """Judge a recording in a process of its own, and wait for it; for a thread.

    Parameters
    ----------
    folder : Path
    tell : callable
        Called many times a second with the part done, 0 to 1; what it raises ends the work.
    accept_steps : bool
        Take speeds found in the current for commanded.

    Raises
    ------
    MeterlogError
        With the words of what went wrong there.
    """
    return apart(partial(judge, folder, accept_steps), tell, "meterlog-judge", _PATIENCE_S)


def judge(folder: Path, accept_steps: bool, tell: Tell) -> JudgedApart:  # noqa: FBT001 - partial
    """Judge a recording; in the process of its own."""
    from meterlog.work import review_folder
    from meterlog.work.edits_on_top import EditsOnTop
    from meterlog.work.reading_count import ReadingCount

    tops: list[EditsOnTop] = []
    recording, review = review_folder(
        folder,
        progress=tell,
        accept_steps=accept_steps,
        prepare=lambda as_recorded: tops.append(EditsOnTop(as_recorded)),
        count=(count := ReadingCount()),
    )
    keys = [one.key for one in recording.about.instruments]
    return JudgedApart(
        recording.about,
        recording.standing,
        review,
        tops[0],
        count.of(recording.about.instruments),
        tuple(recording.damage),
        {key: len(recording.damage_of(key)) for key in keys},
    )


def made_apart(folder: Path, key: str, tell: Tell) -> bool:
    """Make the pyramid of one instrument in a process of its own; False where none is kept."""
    return apart(partial(make, folder, key), tell, "meterlog-pyramid")


def make(folder: Path, key: str, tell: Tell) -> bool:
    """Make the pyramid of one instrument; in the process of its own."""
    from meterlog.recording import Recording, make_pyramid

    about = Recording.without_readings(folder).about
    instrument = next(one for one in about.instruments if one.key == key)
    return make_pyramid(folder, about, instrument, tell) is not None


def _proxy(values: dict[Any, Any]) -> MappingProxyType[Any, Any]:
    return MappingProxyType(values)


def _as_dict(proxy: MappingProxyType[Any, Any]) -> tuple[Any, ...]:
    return _proxy, (dict(proxy),)


# Limits keep their speeds in one, and go from one process to the other.
copyreg.pickle(MappingProxyType, _as_dict)
