"""Outbox: what is to go out to a reader that may not be reading."""

from __future__ import annotations

from collections.abc import Callable


class Outbox:
    """Sends whole messages or drops whole messages, and never waits.

    Parameters
    ----------
    send : callable
        Takes bytes and gives how many went; raises BlockingIOError when none can.

    Attributes
    ----------
    dropped : int
        Messages that found the line full, as with a real free-running logger.
    """

    def __init__(self, send: Callable[[bytes], int]) -> None:
        self._send = send
        self._rest = b""
        self.dropped = 0

    def put(self, message: bytes) -> None:
        """Send ``message``, or drop it while an earlier one is stuck half-way."""
        self.flush()
        if self._rest:
            self.dropped += 1
            return
        self._rest = message
        self.flush()
        if self._rest == message:
            self._rest = b""
            self.dropped += 1

    def flush(self) -> None:
        """Send what is left of a message that went in part."""
        while self._rest:
            try:
                sent = self._send(self._rest)
            except BlockingIOError:
                return
            if sent <= 0:
                return
            self._rest = self._rest[sent:]

    def clear(self) -> None:
        """Forget the rest: the reader has gone."""
        self._rest = b""
