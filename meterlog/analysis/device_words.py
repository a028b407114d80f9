"""DeviceWords: what the meters themselves let be known, and what it means for the trace."""

from __future__ import annotations

from collections.abc import Sequence

from meterlog.model import Doubt, DoubtKind, Event, EventKind

_KINDS = (EventKind.UNIT, EventKind.RANGE, EventKind.DEVICE)


class DeviceWords:
    """Collects what instruments said."""

    def __init__(self) -> None:
        self._said: list[Event] = []

    def take(self, event: Event) -> None:
        """Take the next event."""
        if event.kind in _KINDS and event.source:
            self._said.append(event)

    def doubts(self) -> list[Doubt]:
        """Give one doubt a meter for its battery, its unit and its ranges."""
        told = []
        for source in dict.fromkeys(event.source for event in self._said):
            own = [event for event in self._said if event.source == source]
            low = [e for e in own if e.kind is EventKind.DEVICE and _is_low(e.value)]
            units = [e for e in own if e.kind is EventKind.UNIT and not _is_back(e.value)]
            ranges = [e for e in own if e.changes_range]
            if low:
                told.append(_doubt(DoubtKind.BATTERY, source, low, _BATTERY))
            if units:
                told.append(_doubt(DoubtKind.UNIT, source, units, _UNIT, quote=True))
            if ranges:
                told.append(_doubt(DoubtKind.RANGE, source, ranges, _RANGE))
        return told


_BATTERY = (
    "reports that its battery is low: a low battery bends readings long before the meter goes out."
    " Put in a new one and measure again."
)
_UNIT = (
    "showed another unit for a while; there it gave no data. Leave its dial alone while recording."
)
_RANGE = (
    "changed its measuring range by itself: it is blind for a moment each time. Fix the range on"
    " the meter."
)


def _is_low(words: str) -> bool:
    """Tell a low battery from one that is good again."""
    return "battery" in words.lower() and "good" not in words.lower()


def _is_back(words: str) -> bool:
    """Tell a meter that shows its own unit again."""
    return words.endswith("again")


def _doubt(
    kind: DoubtKind, source: str, events: Sequence[Event], words: str, *, quote: bool = False
) -> Doubt:
    first, last = events[0], events[-1]
    at = f"at {first.t_ns / 1e9:.1f} s"
    if len(events) > 1:
        at = f"{len(events)} times, first {at}"
    said = f' ("{first.value}")' if quote else ""
    return Doubt(kind, f"{source} ({at}) {words}{said}", first.t_ns, last.t_ns, source)
