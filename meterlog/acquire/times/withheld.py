"""Withheld: rows that say that nothing came, kept until it is known that nothing will."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

WAIT_NS = 1_000_000_000
"""What is later than this is no late line any more: what is on its way so long is a lost one."""


class Withheld:
    """Keeps rows without data in order while late readings may still take their place.

    Attributes
    ----------
    written_ns : int, nanoseconds since the recording's zero
        Time of the last row given.
    """

    def __init__(self) -> None:
        self._rows: list[int] = []
        self._heard_ns = 0
        self._wait = True
        self.written_ns = 0

    def __len__(self) -> int:
        """Count the rows that wait."""
        return len(self._rows)

    def heard(self, now_ns: int) -> None:
        """Note that something came."""
        self._heard_ns = now_ns
        self._wait = True

    def stop_waiting(self) -> None:
        """Keep nothing back until the next reading."""
        self._wait = False

    def add(self, now_ns: int) -> None:
        """Take a row."""
        self._rows.append(now_ns)

    def due(self, now_ns: int, *, may_wait: bool) -> NDArray[np.int64]:
        """Give all rows, shape (n,), once nothing has come for a second, or if none may wait."""
        if may_wait and self._wait and now_ns - self._heard_ns < WAIT_NS:
            return np.empty(0, np.int64)
        return self.all()

    def all(self) -> NDArray[np.int64]:
        """Give all rows."""
        return self._give(self._rows)

    def before(self, t_ns: int) -> NDArray[np.int64]:
        """Give the rows before a reading that has come; those after it are told by it."""
        return self._give([row for row in self._rows if row < t_ns])

    def _give(self, rows: list[int]) -> NDArray[np.int64]:
        self._rows = []
        if rows:
            self.written_ns = rows[-1]
        return np.array(rows, np.int64)
