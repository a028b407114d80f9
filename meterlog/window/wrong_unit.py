"""Whether a meter shows another unit than its channel's now: its dial was turned."""

from __future__ import annotations

from meterlog.model import Event, EventKind
from meterlog.model.link_text import LOST
from meterlog.window.words import later, say

WORDS = later("⚠ dial turned?")


def wrong_unit(events: tuple[Event, ...], key: str) -> str:
    """Say in two words that the meter ``key`` shows another unit now; empty when it does not.

    Parameters
    ----------
    events : tuple of Event
        In time order.
    key : str
    """
    for event in reversed(events):
        if event.source == key and event.kind is EventKind.LINK and event.value.startswith(LOST):
            return ""  # unplugged since then: the banner says what to do
        if event.kind is EventKind.UNIT and event.source == key:
            return "" if event.value.endswith(" again") else say(WORDS)
    return ""
