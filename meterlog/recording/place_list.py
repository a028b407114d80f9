"""PlaceList: where the batches of a readings file lie, packed, as a long file has very many."""

from __future__ import annotations

from array import array
from collections.abc import Iterator

from meterlog.recording.stream_index import BatchPlace


class PlaceList:
    """A list of :class:`BatchPlace` that takes some 100 bytes each instead of 2,000.

    Parameters
    ----------
    width : int
        Channels of the instrument.

    Attributes
    ----------
    rows : int
        Of all batches.
    """

    def __init__(self, width: int) -> None:
        self.rows = 0
        self._width = width
        self._each = 6 + 2 * width
        self._numbers = array("q")

    def __len__(self) -> int:
        """Count the batches."""
        return len(self._numbers) // self._each

    def __getitem__(self, number: int) -> BatchPlace:
        """Give one of the batches, counted from 0, or from the end with a negative number."""
        count = len(self)
        if not -count <= number < count:
            raise IndexError(number)
        start = (number % count) * self._each
        numbers = self._numbers[start : start + self._each]
        offset, size, body, first_row, rows, crc = numbers[:6]
        buffers = self._buffers(rows, numbers[6:])
        return BatchPlace(offset, size, body, first_row, rows, crc, buffers)

    def __iter__(self) -> Iterator[BatchPlace]:
        """Give all batches in order."""
        return (self[number] for number in range(len(self)))

    def append(self, place: BatchPlace) -> None:
        """Add a batch whose buffers lie one behind the other, as ``place_at`` checks."""
        self._numbers.extend(
            (place.offset, place.size, place.body, place.first_row, place.rows, place.crc)
        )
        self._numbers.extend(size for _, size in place.buffers[1 + self._width :])
        self.rows += place.rows

    def pop(self) -> BatchPlace:
        """Take off the last batch and give it."""
        last = self[-1]
        del self._numbers[-self._each :]
        self.rows -= last.rows
        return last

    def _buffers(self, rows: int, sizes: array[int]) -> tuple[tuple[int, int], ...]:
        """Lay the buffers one behind the other again, each on a multiple of 8 bytes."""
        at, buffers = 0, []
        for size in (*(8 * rows for _ in range(1 + self._width)), *sizes):
            buffers.append((at, size))
            at += -(-size // 8) * 8
        return tuple(buffers)
