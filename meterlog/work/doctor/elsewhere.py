"""Elsewhere: whether a recording could go on in another place if its own disk failed."""

from __future__ import annotations

import os
from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

from meterlog.recording.spill_places import PLACE, is_own, spill_places
from meterlog.work.doctor.disks import writable
from meterlog.work.doctor.look import Line, State, shown_place

_ABOUT = "elsewhere"
_NAME = f"Name another folder in the variable {PLACE}."


def look_at_elsewhere() -> Iterator[Line]:
    """Look at each place that would be tried, in that order.

    One that takes nothing is to be looked at; it is bad where none of them takes anything.
    """
    lines = [_place(place) for place in spill_places()]
    kept = any(one.state is State.OK for one in lines)
    for one in lines:
        softer = kept and one.state is State.BAD
        yield replace(one, state=State.LOOK) if softer else one


def _place(place: Path) -> Line:
    named = f"{PLACE}, " if str(place) == os.environ.get(PLACE) else ""
    if place.is_dir() and not is_own(place):
        words = f"{named}{shown_place(place)} is a link, or another user's: nothing goes on there"
        return Line(_ABOUT, State.BAD, words, _NAME)
    (line,) = writable(_ABOUT, place, _NAME)
    # What was named by mistake, such as a device, is not to be moved away.
    do = _NAME if named and line.do else line.do
    return replace(line, words=f"{named}{line.words}", do=do)
