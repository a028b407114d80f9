"""PendingEdit: an edit that is being made and is not written yet."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import TYPE_CHECKING

from meterlog.model import Event, EventKind
from meterlog.model.amendment import Amendment
from meterlog.window.edits.limit_words import limit_name, limit_value
from meterlog.window.mark_value import value_words
from meterlog.window.numbers import number
from meterlog.window.words import say

if TYPE_CHECKING:
    from meterlog.work.edits_on_top import EditsOnTop


@dataclass(frozen=True, slots=True)
class PendingEdit:
    """What would be written.

    Attributes
    ----------
    words : str
        What it does, in words.
    make : callable
        Gives the edit from the edits on top, who and why.
    t_ns : int or None, nanoseconds
        Where the mark would stand; None for a limit.
    """

    words: str
    make: Callable[[EditsOnTop, str, str], Amendment]
    t_ns: int | None = None


def mark_words(mark: Event) -> str:
    """Give the short words of a mark: ``12.300 s  speed 3``."""
    value = f" {value_words(mark)[:40]}" if mark.value else ""
    if mark.kind is EventKind.SPEED and mark.value == "0":
        value = say(" 0 (off)")
    return f"{number(mark.t_ns / 1e9, '.3f')} s  {say(mark.kind.value)}{value}"


def relabelling(mark: Event, speed: str) -> PendingEdit:
    """Give the edit that a step is at another speed."""
    return PendingEdit(
        say("{mark_words} becomes speed {speed}", mark_words=mark_words(mark), speed=speed),
        lambda top, who, why: top.amended.marks.relabelled(mark.t_ns, speed, who, why),
        mark.t_ns,
    )


def moving(mark: Event, t_ns: int) -> PendingEdit:
    """Give the edit that a mark stands elsewhere."""
    by_s = (t_ns - mark.t_ns) / 1e9
    return PendingEdit(
        say(
            "{mark_words} moves to {t_ns} s ({by_s} s)",
            mark_words=mark_words(mark),
            t_ns=number(t_ns / 1e9, ".3f"),
            by_s=number(by_s, "+.3f"),
        ),
        lambda top, who, why: top.amended.marks.moved(mark.kind, mark.t_ns, t_ns, who, why),
        t_ns,
    )


def withdrawing(mark: Event) -> PendingEdit:
    """Give the edit that a mark counts for nothing."""
    return PendingEdit(
        say("{mark_words} is withdrawn and counts for nothing", mark_words=mark_words(mark)),
        lambda top, who, why: top.amended.marks.taken_back(mark.kind, mark.t_ns, who, why),
        mark.t_ns,
    )


def putting_back(mark: Event) -> PendingEdit:
    """Give the edit that a withdrawn mark counts again."""
    return PendingEdit(
        say("{mark_words} is put back and counts again", mark_words=mark_words(mark)),
        lambda top, who, why: top.amended.marks.put_back(mark.kind, mark.t_ns, who, why),
        mark.t_ns,
    )


def limiting(key: str, old: str, new: str) -> PendingEdit:
    """Give the edit that a limit is another one; empty: none."""
    return PendingEdit(
        say(
            "{limit}: {old} becomes {new}",
            limit=limit_name(key),
            old=limit_value(key, old),
            new=limit_value(key, new),
        ),
        lambda top, who, why: top.amended.limited(key, new, who, why),
    )
