"""LiveTail: the newest readings for whoever looks. It drops rows when nobody does."""

from __future__ import annotations

import threading
from collections import deque
from collections.abc import Callable

from meterlog.acquire import NO_HURRY_NS, Item
from meterlog.model import Block, Event

_EVENTS = 200


class LiveTail:
    """A sink that keeps the newest Blocks until somebody drains them.

    Parameters
    ----------
    max_rows : int, rows of all instruments together
        When more are waiting the oldest Blocks are dropped and counted. The newest Block is always
        kept.

    Attributes
    ----------
    on_news : callable or None
        Called in the thread that brings a Block, once there is something to drain.
    dropped_rows : int
    """

    def __init__(self, max_rows: int = 200_000) -> None:
        self.on_news: Callable[[], None] | None = None
        self._max_rows = max_rows
        self._blocks: deque[Block] = deque()
        self._events: deque[Event] = deque(maxlen=_EVENTS)
        self._rows = 0
        self._lock = threading.Lock()
        self.dropped_rows = 0

    def take(self, item: Item) -> None:
        """Keep a Block or an Event; raw bytes are nothing to look at."""
        if isinstance(item, Event):
            self._events.append(item)
        if not isinstance(item, Block):
            return
        with self._lock:
            self._blocks.append(item)
            self._rows += len(item)
            while self._rows > self._max_rows and len(self._blocks) > 1:
                oldest = self._blocks.popleft()
                self._rows -= len(oldest)
                self.dropped_rows += len(oldest)
        told = self.on_news
        if told is not None:
            told()

    def tick(self, now_ns: int) -> None:
        """Nothing to do: whoever looks comes by on a timer of its own."""

    def rest_ns(self, now_ns: int) -> int:  # noqa: ARG002 - a sink's own form
        """Need no ticks."""
        return NO_HURRY_NS

    @property
    def waiting(self) -> bool:
        """Tell whether there is anything to drain."""
        return bool(self._blocks)

    def drain(self) -> list[Block]:
        """Give all Blocks since the last call, in the order in which they came."""
        with self._lock:
            blocks = list(self._blocks)
            self._blocks.clear()
            self._rows = 0
        return blocks

    @property
    def events(self) -> tuple[Event, ...]:
        """The newest events, at most 200, oldest first."""
        return tuple(self._events)
