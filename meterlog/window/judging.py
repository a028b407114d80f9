"""Judging: how far a recording has been read and judged in a thread, and its end before time."""

from __future__ import annotations

import threading

from meterlog.window.long_work import Cancelled


class JudgingStopped(Cancelled):
    """Judging was asked to stop."""


class Judging:
    """Told by the thread, looked at by the window.

    Attributes
    ----------
    part : float
        The part done, 0 to 1.
    """

    def __init__(self) -> None:
        self.part = 0.0
        self._stopping = threading.Event()

    @property
    def stopping(self) -> bool:
        """True once it was asked to stop."""
        return self._stopping.is_set()

    def stop(self) -> None:
        """Ask it to stop."""
        self._stopping.set()

    def tell(self, part: float) -> None:
        """Take the part done.

        Raises
        ------
        JudgingStopped
            If it was asked to stop.
        """
        self.part = part
        if self._stopping.is_set():
            raise JudgingStopped
