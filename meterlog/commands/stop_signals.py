"""StopSignals: Ctrl-C and a request to end become a wish to stop, not an exception."""

from __future__ import annotations

import queue
import signal
from collections.abc import Callable, Iterator
from contextlib import contextmanager, suppress
from types import FrameType, TracebackType
from typing import Self


class StopSignals:
    """While entered, the first SIGINT or SIGTERM only sets :attr:`wanted`.

    Whoever records looks at it, ends the recording and seals it; a second signal does not get in
    the way of that. While ports are being opened there is nothing to seal, and a meter that does
    not answer may take its time: within :meth:`at_once` a signal interrupts.
    """

    def __init__(self) -> None:
        self._at_once = False
        self._wanted = False
        # An Event would lock up: a signal may come while this thread holds the Event's own lock,
        # in waiting or in handling the signal before. A SimpleQueue may be put to at any instant.
        self._woken: queue.SimpleQueue[None] = queue.SimpleQueue()
        self._before: dict[signal.Signals, signal._HANDLER] = {}

    @property
    def wanted(self) -> bool:
        """True once somebody wants to stop."""
        return self._wanted

    def wait(self, seconds: float) -> bool:
        """Wait that long, or until somebody wants to stop; tell whether somebody does."""
        if not self._wanted:
            with suppress(queue.Empty):
                self._woken.get(timeout=seconds)
        return self._wanted

    def _handle(self, number: int, frame: FrameType | None) -> None:
        del number, frame
        self._wanted = True
        self._woken.put(None)
        if self._at_once:
            self._at_once = False
            raise KeyboardInterrupt

    @contextmanager
    def at_once(self) -> Iterator[None]:
        """Let the first signal within raise KeyboardInterrupt."""
        self._at_once = True
        try:
            yield
        finally:
            self._at_once = False

    def __enter__(self) -> Self:
        """Take over the signals."""
        wanted = [signal.SIGINT, signal.SIGTERM]
        if hasattr(signal, "SIGHUP"):
            wanted.append(signal.SIGHUP)  # the terminal was closed: the recording must survive
        for one in wanted:
            self._before[one] = signal.signal(one, self._handle)
        return self

    def __exit__(
        self,
        kind: type[BaseException] | None,
        error: BaseException | None,
        trace: TracebackType | None,
    ) -> None:
        """Give the signals back."""
        for one, handler in self._before.items():
            signal.signal(one, handler)


@contextmanager
def stoppable(progress: Callable[[float], None]) -> Iterator[Callable[[float], None]]:
    """Give what shows progress and, once a signal asks for it, ends the work at its next step.

    An interrupt that comes anywhere, amid a library's drawing say, may be lost in it or come out as
    a fault of the library; and a request to end would leave behind what is half made.

    Parameters
    ----------
    progress : callable
        Called with the part done.

    Yields
    ------
    callable
        To be called in its place; raises KeyboardInterrupt.
    """
    with StopSignals() as stop:

        def tell(part: float) -> None:
            if stop.wanted:
                raise KeyboardInterrupt
            progress(part)

        yield tell
