"""MarkValue: what a key put into a mark in the window's language, what was typed as it was."""

from __future__ import annotations

from meterlog.model import LEADS, Event, EventKind
from meterlog.window.words import say


def value_words(mark: Event) -> str:
    """Give the value of a mark, such as ``3`` of a speed or what was moved."""
    if mark.kind is EventKind.WIGGLE and mark.value == LEADS:
        return say("leads")
    return mark.value
