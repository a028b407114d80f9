"""GrowingArray: numbers that are appended to and looked at as one array."""

from __future__ import annotations

from typing import Generic, TypeVar

import numpy as np
from numpy.typing import NDArray

Number = TypeVar("Number", np.int64, np.float64)


class GrowingArray(Generic[Number]):
    """An array that doubles its room when full.

    Parameters
    ----------
    dtype : numpy type
    """

    def __init__(self, dtype: type[Number]) -> None:
        self._room: NDArray[Number] = np.empty(1024, dtype)
        self._count = 0

    def __len__(self) -> int:
        """Count the numbers."""
        return self._count

    def append(self, values: NDArray[Number]) -> None:
        """Add ``values``, shape (n,), at the end."""
        end = self._count + len(values)
        if end > len(self._room):
            room = np.empty(max(end, 2 * len(self._room)), self._room.dtype)
            room[: self._count] = self._room[: self._count]
            self._room = room
        self._room[self._count : end] = values
        self._count = end

    def view(self) -> NDArray[Number]:
        """Give all numbers, shape (n,), without a copy; valid until the next append."""
        return self._room[: self._count]
