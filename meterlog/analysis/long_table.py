"""LongTable: columns of numbers that grow for days, of which only the newest lie in memory.

Older rows are given to an :class:`Attic` in blocks and read back by range. Where it takes none (its
disk is full), or there is none, they stay in memory and nothing is lost. Blocks are read, never
mapped: mapped pages would count as memory, and a disk pulled out from under them ends the program.
"""

from __future__ import annotations

from array import array
from bisect import bisect_right
from collections.abc import Iterable, Iterator
from typing import Literal, Protocol

import numpy as np
from numpy.typing import NDArray

BLOCK = 1_024
"""Rows that are laid aside and read back together."""
MOST_HELD = 16_384
"""So many rows are in memory before any is laid aside: half an hour of tenths of a second. Half of
them stay: what a judgement looks at most is what came last."""

_FIRST_ROOM = 256
_WIDTH = 8
_MOST_READ = 2
"""Blocks kept as they were read: who asks of one stretch asks several times."""
_AT_ONCE = 2_048
"""Numbers added up by numpy itself; more than it adds up without splitting (128)."""

Wholes = NDArray[np.int64]
Reals = NDArray[np.float64]


class Attic(Protocol):
    """Where bytes are laid aside that are too many for memory."""

    def put(self, data: bytes) -> int | None:
        """Keep bytes; give the place where they lie, None where they can't be kept."""

    def get(self, place: int, size: int) -> bytes:
        """Give the bytes that lie at a place."""


class _NoAttic:
    """Takes nothing."""

    def put(self, data: bytes) -> int | None:  # noqa: ARG002 - the attic's own form
        return None

    def get(self, place: int, size: int) -> bytes:
        raise LookupError(f"{size} bytes at {place} were never laid aside")


class LongTable:
    """Rows of whole numbers and reals, sorted by their first whole number, their key.

    Parameters
    ----------
    wholes, reals : int
        How many columns of each; ``wholes`` is 1 or more.
    attic : Attic or None
        None: all rows stay in memory.

    Attributes
    ----------
    wholes : ndarray, int64, shape (wholes, room)
    reals : ndarray, float64, shape (reals, room)
        The rows in memory; ``held`` of them count. Only the last row may still be changed.
    held : int
    """

    def __init__(self, wholes: int, reals: int, attic: Attic | None = None) -> None:
        self.wholes: Wholes = np.empty((wholes, _FIRST_ROOM), np.int64)
        self.reals: Reals = np.empty((reals, _FIRST_ROOM))
        self.held = 0
        self._attic: Attic = _NoAttic() if attic is None else attic
        self._places = array("q")
        self._firsts = array("q")
        self._read: dict[int, tuple[Wholes, Reals]] = {}

    def __len__(self) -> int:
        """Count the rows."""
        return self._aside + self.held

    @property
    def _aside(self) -> int:
        return len(self._places) * BLOCK

    def append(self, wholes: Wholes, reals: Reals) -> None:
        """Add rows, with keys above all before.

        Parameters
        ----------
        wholes : ndarray, int64, shape (wholes, n)
        reals : ndarray, float64, shape (reals, n)
        """
        for start in range(0, wholes.shape[1], BLOCK):
            part = slice(start, start + BLOCK)
            self._append_some(wholes[:, part], reals[:, part])

    def _append_some(self, wholes: Wholes, reals: Reals) -> None:
        count = wholes.shape[1]
        self.make_room(count)
        place = slice(self.held, self.held + count)
        self.wholes[:, place], self.reals[:, place] = wholes, reals
        self.held += count

    def make_room(self, count: int) -> None:
        """Have memory for so many rows more (at most ``BLOCK``); ``held`` may become less."""
        room = self.wholes.shape[1]
        if self.held + count <= room:
            return
        if self.held + count > MOST_HELD:
            self._lay_aside()
        if self.held + count > room:
            # Doubling stops at MOST_HELD: past it rows would stay that could be laid aside.
            doubled = 2 * room if room >= MOST_HELD else min(2 * room, MOST_HELD)
            self._widen(max(doubled, self.held + count))

    def _widen(self, room: int) -> None:
        wholes = np.empty((len(self.wholes), room), np.int64)
        reals = np.empty((len(self.reals), room))
        wholes[:, : self.held] = self.wholes[:, : self.held]
        reals[:, : self.held] = self.reals[:, : self.held]
        self.wholes, self.reals = wholes, reals

    def _lay_aside(self) -> None:
        """Give the oldest blocks away, as far as they are taken."""
        done = 0
        while self.held - done >= MOST_HELD // 2 + BLOCK:
            wholes = self.wholes[:, done : done + BLOCK]
            place = self._attic.put(wholes.tobytes() + self.reals[:, done : done + BLOCK].tobytes())
            if place is None:
                break
            self._places.append(place)
            self._firsts.append(int(wholes[0, 0]))
            done += BLOCK
        if done:
            rest = self.held - done
            self.wholes[:, :rest] = self.wholes[:, done : self.held]
            self.reals[:, :rest] = self.reals[:, done : self.held]
            self.held = rest

    def _block(self, number: int) -> tuple[Wholes, Reals]:
        known = self._read.get(number)
        if known is not None:
            return known
        wholes, reals = len(self.wholes), len(self.reals)
        data = self._attic.get(self._places[number], (wholes + reals) * BLOCK * _WIDTH)
        known = (
            np.frombuffer(data, np.int64, wholes * BLOCK).reshape(wholes, BLOCK),
            np.frombuffer(data, np.float64, offset=wholes * BLOCK * _WIDTH).reshape(reals, BLOCK),
        )
        if len(self._read) >= _MOST_READ:
            del self._read[next(iter(self._read))]
        self._read[number] = known
        return known

    def find(self, key: int, side: Literal["left", "right"]) -> int:
        """Give how many rows have a key below ``key`` (left), or below or equal to it (right)."""
        number, known = len(self._firsts), self.wholes[0, : self.held]
        if number and key < known[0]:
            number = bisect_right(self._firsts, key) - 1
            if number < 0:
                return 0
            known = self._block(number)[0][0]
        return number * BLOCK + int(known.searchsorted(key, side=side))

    def lots(self, first: int, last: int) -> Iterator[tuple[Wholes, Reals]]:
        """Give the rows from ``first`` to before ``last`` lot by lot, to be looked at only."""
        while first < min(last, self._aside):
            number, start = divmod(first, BLOCK)
            stop = min(BLOCK, last - number * BLOCK)
            wholes, reals = self._block(number)
            yield wholes[:, start:stop], reals[:, start:stop]
            first += stop - start
        aside = self._aside
        for start in range(first - aside, last - aside, MOST_HELD):
            stop = min(start + MOST_HELD, last - aside)
            yield self.wholes[:, start:stop], self.reals[:, start:stop]

    def rows(self, first: int, last: int) -> tuple[Wholes, Reals]:
        """Give the rows from ``first`` to before ``last`` side by side, to be looked at only."""
        aside = self._aside
        if first >= aside:
            part = slice(first - aside, max(first, last) - aside)
            return self.wholes[:, part], self.reals[:, part]
        count = max(last - first, 0)
        wholes = np.empty((len(self.wholes), count), np.int64)
        reals = np.empty((len(self.reals), count))
        done = 0
        for some_wholes, some_reals in self.lots(first, last):
            part = slice(done, done + some_wholes.shape[1])
            wholes[:, part], reals[:, part] = some_wholes, some_reals
            done = part.stop
        return wholes, reals


def sums_of(lots: Iterable[Reals], count: int) -> Reals:
    """Add up rows that come in lots, to the last bit as if they lay side by side.

    Parameters
    ----------
    lots : iterable of ndarray, float64, shape (rows, n)
    count : int
        How many columns all lots have together; 1 or more.

    Returns
    -------
    ndarray, float64, shape (rows,)
        The same as ``numpy.concatenate(lots, axis=1).sum(axis=1)``.

    Source
    ------
    Pairwise summation as numpy does it: above 128 numbers the sum of both halves, the first a
    multiple of eight. So it may as well be split by whoever asks.
    """
    return _sum(_Stream(lots), count)


class _Stream:
    """Gives so many columns at a time of lots of any size."""

    def __init__(self, lots: Iterable[Reals]) -> None:
        self._lots = iter(lots)
        self._rest: Reals = np.empty((0, 0))

    def next(self, count: int) -> Reals:
        """Give the next ``count`` columns, each row of them lying side by side."""
        parts: list[Reals] = []
        while count:
            if not self._rest.shape[1]:
                self._rest = next(self._lots)
            part, self._rest = self._rest[:, :count], self._rest[:, count:]
            count -= part.shape[1]
            parts.append(part)
        joined = parts[0] if len(parts) == 1 else np.concatenate(parts, axis=1)
        return np.ascontiguousarray(joined)


def _sum(stream: _Stream, count: int) -> Reals:
    if count <= _AT_ONCE:
        total: Reals = stream.next(count).sum(axis=1)
        return total
    half = count // 2
    half -= half % 8
    first = _sum(stream, half)
    return first + _sum(stream, count - half)
