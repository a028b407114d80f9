"""Outbox: what is to go out to a reader that may not be reading."""

from __future__ import annotations

from collections.abc import Callable


class Outbox:
    """Sends whole messages or drops whole messages, and never waits.

    Parameters
    ----------
    send : callable
        Takes bytes and gives how many went; raises BlockingIOError when none can.
    end : callable or None
        Gives the file descriptor that becomes writable when more can go.

    Attributes
    ----------
    dropped : int
        Messages that found the line full, as with a real free-running logger.
    """

    def __init__(self, send: Callable[[bytes], int], end: Callable[[], int] | None = None) -> None:
        self._send = send
        self._end = end
        self._rest = b""
        self.dropped = 0

    @property
    def stuck(self) -> bool:
        """Whether a message has gone in part only."""
        return bool(self._rest)

    @property
    def waits(self) -> bool:
        """Whether a message is stuck half-way and its end can be watched for room."""
        return self.stuck and self._end is not None

    @property
    def end(self) -> int:
        """The file descriptor to watch for room.

        Raises
        ------
        ValueError
            If there is none.
        """
        if self._end is None:
            raise ValueError("this outbox has no end to watch")
        return self._end()

    def put(self, message: bytes) -> None:
        """Send ``message``, or drop it while an earlier one is stuck half-way."""
        if not self.offer(message):
            self.dropped += 1

    def offer(self, message: bytes) -> bool:
        """Send ``message`` at least in part; False when nothing of it could go."""
        self.flush()
        if self._rest:
            return False
        self._rest = message
        self.flush()
        if self._rest == message:
            self._rest = b""
            return not message
        return True

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
