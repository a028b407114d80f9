"""Inbox: what a link's own reading thread has fetched, until somebody asks for it."""

from __future__ import annotations

import threading
from collections import deque

from meterlog.model.errors import LinkLost

MOST_BYTES = 16 * 1024 * 1024
"""So much is kept if nobody fetches it; what comes then is counted as lost."""


class Inbox:
    """A queue of pieces of bytes, with an end that is told only after all of them.

    Parameters
    ----------
    apart : bool
        Give one piece at a time; else all that waits as one.
    most : int, bytes

    Attributes
    ----------
    lost : int
        Bytes that found no room.
    """

    def __init__(self, *, apart: bool, most: int = MOST_BYTES) -> None:
        self.lost = 0
        self._apart = apart
        self._most = most
        self._pieces: deque[bytes] = deque()
        self._size = 0
        self._end: LinkLost | None = None
        self._news = threading.Condition()

    def put(self, data: bytes) -> None:
        """Add a piece, from the reading thread."""
        with self._news:
            if self._size + len(data) > self._most:
                self.lost += len(data)
                return
            self._pieces.append(data)
            self._size += len(data)
            self._news.notify_all()

    def end(self, error: LinkLost) -> None:
        """Say that nothing more comes; the first reason given counts."""
        with self._news:
            self._end = self._end or error
            self._news.notify_all()

    def take(self, wait_s: float) -> bytes:
        """Give what waits, or what comes first within ``wait_s``; empty when nothing came.

        Raises
        ------
        LinkLost
            When all has been given and nothing more comes.
        """
        with self._news:
            self._news.wait_for(lambda: self._pieces or self._end, max(wait_s, 0.0))
            if not self._pieces:
                self.refuse_ended()
                return b""
            count = 1 if self._apart else len(self._pieces)
            data = b"".join(self._pieces.popleft() for _ in range(count))
            self._size -= len(data)
            return data

    def drop(self) -> None:
        """Forget what waits."""
        with self._news:
            self._pieces.clear()
            self._size = 0

    def refuse_ended(self) -> None:
        """Raise the reason if nothing more comes.

        Raises
        ------
        LinkLost
            A fresh one each time, so that its trace does not grow.
        """
        if self._end is not None:
            end = self._end
            raise LinkLost(end.message, subject=end.subject, remedy=end.remedy) from end.__cause__
