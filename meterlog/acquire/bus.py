"""Bus: carries all that is measured and marked to the sinks, in one order, losing nothing."""

from __future__ import annotations

import queue
import threading
from collections.abc import Callable, Sequence
from typing import Protocol

from meterlog.acquire.clock import Clock
from meterlog.model import Block, Event, RawBytes

Item = Block | Event | RawBytes

NO_HURRY_NS = 250_000_000
"""Sinks are told the time at least this often, if they wait for nothing."""
_LEAST_NS = 5_000_000
"""Between two ticks: a sink that is never content must not keep the processor busy."""
_LOADED_NS = 20_000_000
"""While items wait sinks are asked this often, and not after each."""


class Sink(Protocol):
    """Takes what the bus carries."""

    def take(self, item: Item) -> None:
        """Take one item. Called on the bus thread, in order."""
        ...

    def tick(self, now_ns: int) -> None:
        """Note the time, nanoseconds since the recording's zero."""
        ...

    def rest_ns(self, now_ns: int) -> int:
        """Tell for how long it needs no tick if nothing comes, nanoseconds; asked before each wait.

        So that an idle window's bus does not wake fifty times a second for nothing.
        """
        ...


class Bus:
    """One queue and one thread from the readers to the sinks.

    Parameters
    ----------
    sinks : sequence of Sink
        Called in this order for each item: the recorder first.
    clock : Clock
    """

    def __init__(self, sinks: Sequence[Sink], clock: Clock) -> None:
        self._sinks = tuple(sinks)
        self._clock = clock
        # None ends the thread. Unbounded: a reader must never wait for a disk or a screen.
        self._queue: queue.SimpleQueue[Item | None] = queue.SimpleQueue()
        self._faults: dict[str, None] = {}
        self._thread: threading.Thread | None = None
        self._ticked_ns = self._asked_ns = 0

    @property
    def faults(self) -> tuple[str, ...]:
        """What sinks raised, each different message once; the other sinks went on."""
        return tuple(self._faults)

    @property
    def waiting(self) -> int:
        """How many items have not been taken yet."""
        return self._queue.qsize()

    def put(self, item: Item) -> None:
        """Give an item from any thread. Never waits, never drops."""
        self._queue.put(item)

    def start(self) -> None:
        """Start the thread. What was put before is taken first."""
        if self._thread is None:
            self._thread = threading.Thread(target=self._run, name="bus")
            self._thread.start()

    def stop(self) -> None:
        """Let the sinks take all that waits, tick them a last time, and end the thread.

        Stop the readers first: what is put after this is not taken.
        """
        if self._thread is not None:
            self._queue.put(None)
            self._thread.join()
            self._thread = None

    def _run(self) -> None:
        while True:
            rest_ns = self._until_tick_ns()
            try:
                item = self._queue.get(timeout=rest_ns / 1e9)
            except queue.Empty:
                continue
            if item is None:
                self._tick()
                return
            self._take(item)

    def _until_tick_ns(self) -> int:
        """Tick if it is due, and tell for how long none will be; above 0."""
        now_ns = self._clock.now_ns()
        if now_ns - self._asked_ns < _LOADED_NS and not self._queue.empty():
            return _LEAST_NS
        self._asked_ns = now_ns
        rest_ns = self._rest_ns(now_ns)
        if rest_ns > 0:
            return rest_ns
        self._tick()
        return max(self._rest_ns(self._clock.now_ns()), _LEAST_NS)

    def _take(self, item: Item) -> None:
        self._each(lambda sink: sink.take(item))

    def _tick(self) -> None:
        now_ns = self._ticked_ns = self._clock.now_ns()
        self._each(lambda sink: sink.tick(now_ns))

    def _rest_ns(self, now_ns: int) -> int:
        """Tell when the next tick is due, nanoseconds from now; 0 or less: at once."""
        rests = [self._ticked_ns + NO_HURRY_NS - now_ns]
        self._each(lambda sink: rests.append(sink.rest_ns(now_ns)))
        return min(rests)

    def _each(self, call: Callable[[Sink], None]) -> None:
        for sink in self._sinks:
            try:
                call(sink)
            # One sink that fails, for whatever reason, must not keep the others from theirs: a
            # broken picture may not cost the recording, nor a full disk the picture.
            except Exception as error:  # noqa: BLE001
                said = str(error) or "no reason given"
                self._faults[f"{type(sink).__name__}: {type(error).__name__}: {said}"] = None
