"""SampleMemory: the rows that an instrument has sampled and nobody has fetched yet."""

from __future__ import annotations

import numpy as np

from meterlog.instruments.virtual.meter import Shown


class SampleMemory:
    """Keeps rows in order; when it is full, those that come are lost and counted.

    Parameters
    ----------
    capacity : int, rows

    Attributes
    ----------
    lost : int
        Rows lost since the last :meth:`take`.
    """

    def __init__(self, capacity: int) -> None:
        self.capacity = capacity
        self.lost = 0
        self._parts: list[Shown] = []
        self._count = 0

    def __len__(self) -> int:
        """Count the rows."""
        return self._count

    def add(self, rows: Shown) -> int | None:
        """Keep rows; give which of these is the first of all that are lost, None for none."""
        room = max(0, self.capacity - self._count)
        came = len(rows.raw)
        if came > room:
            rows = _cut(rows, 0, room)
        if len(rows.raw):
            self._parts.append(rows)
            self._count += len(rows.raw)
        first = room if came > room and self.lost == 0 else None
        self.lost += max(0, came - room)
        return first

    def take(self, count: int) -> Shown:
        """Give the oldest ``count`` rows and forget them."""
        whole = Shown(
            np.concatenate([part.raw for part in self._parts]),
            np.concatenate([part.overload for part in self._parts]),
            np.concatenate([part.negative for part in self._parts]),
        )
        self._parts = [_cut(whole, count, None)]
        self._count = len(self._parts[0].raw)
        self.lost = 0
        return _cut(whole, 0, count)

    def clear(self) -> None:
        """Forget everything."""
        self._parts = []
        self._count = 0
        self.lost = 0


def _cut(rows: Shown, start: int, stop: int | None) -> Shown:
    return Shown(rows.raw[start:stop], rows.overload[start:stop], rows.negative[start:stop])
