"""ReadingCount: how many readings there are, without rows that only say that nothing came."""

from __future__ import annotations

from collections.abc import Iterable

import numpy as np

from meterlog.model import Block, Flag, Instrument


class ReadingCount:
    """Counts by instrument what is fed to it."""

    def __init__(self) -> None:
        self._readings: dict[str, int] = {}

    def take(self, block: Block) -> None:
        """Count the rows in which any channel gave something, an overload too."""
        count = len(block)
        nothing = (block.flags & Flag.NO_DATA) != 0
        if nothing.any():
            count -= int(np.count_nonzero(nothing.all(axis=1)))
        self._readings[block.source] = self._readings.get(block.source, 0) + count

    def of(self, instruments: Iterable[Instrument]) -> dict[str, int]:
        """Give how many readings came from each, by its key."""
        return {one.key: self._readings.get(one.key, 0) for one in instruments}
