"""PyramidForm: how the records of an envelope pyramid lie on the disk, each with its own check.

Over the readings lie cells of 64 rows (level 0), over those cells of 8 cells each (level 1), and
so on. One record holds 8 cells that lie side by side, which together are one cell of the level
above; so what is below cell k of a level is record k of the level beneath it.
"""

from __future__ import annotations

import functools
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from meterlog.recording.own_secret import own_secret

FIRST_CELL = 64
"""Rows of a cell of level 0."""
FACTOR = 8
"""Cells of a record."""
GROUP = FIRST_CELL * FACTOR
"""Rows of a record of level 0."""
TABLE = 255
"""Stands for a level in the checks of the table of batches."""

Words = NDArray[np.uint64]
_MASK = (1 << 64) - 1
_MOST_WORDS = 4096
_HALF = np.uint64(32)


def _scattered(seed: int, count: int) -> Words:
    """Give fixed odd numbers without pattern (SplitMix64)."""
    numbers, state = [], seed
    for _ in range(count):
        state = (state + 0x9E3779B97F4A7C15) & _MASK
        word = state
        word = ((word ^ (word >> 30)) * 0xBF58476D1CE4E5B9) & _MASK
        word = ((word ^ (word >> 27)) * 0x94D049BB133111EB) & _MASK
        numbers.append((word ^ (word >> 31)) | 1)
    return np.array(numbers, np.uint64)


@functools.cache
def _keys() -> tuple[Words, Words, Words]:
    """Give what words, their upper halves and places are multiplied by; this user's own."""
    secret = own_secret()
    seeds = [int.from_bytes(secret[at : at + 8], "little") for at in (0, 8, 16)]
    return (
        _scattered(seeds[0], _MOST_WORDS),
        _scattered(seeds[1], _MOST_WORDS),
        _scattered(seeds[2], 2),
    )


def key_sums(width: int) -> tuple[Words, Words]:
    """Give what each of ``width`` words, and its upper half, is multiplied by in a check."""
    keys, high_keys, _ = _keys()
    return keys[:width], high_keys[:width]


def word_sums(words: Words) -> Words:
    """Give a check of each row of words.

    Parameters
    ----------
    words : ndarray, uint64, shape (n, m)
        m at most 4,096.

    Returns
    -------
    ndarray, uint64, shape (n,)
        Sums, modulo 2^64, of each word times an odd number of its own, and of its upper half times
        another: any one flipped bit changes it, anything else but once in some 2^32.

    Source
    ------
    Multilinear hashing: Lemire and Kaser, "Strongly universal string hashing is fast", 2014. It
    runs over arrays several times faster than a CRC. The numbers are this user's own.
    """
    keys, high_keys = key_sums(words.shape[1])
    sums: Words = np.einsum("ij,j->i", words, keys)
    sums += np.einsum("ij,j->i", words >> _HALF, high_keys)
    return sums


@dataclass(frozen=True, slots=True)
class Form:
    """The records of one level.

    Attributes
    ----------
    level : int
    channels : int
    salt : int
        Differs between recordings and instruments, so that no record of another one passes.
    """

    level: int
    channels: int
    salt: int

    @property
    def words(self) -> int:
        """Words of 8 bytes of a record.

        8 first times; for each channel 8 least and 8 greatest values; on level 0 the checks of
        the 8 cells' times, then those of each channel's values; the record's check.
        """
        if self.level == TABLE:
            return 7
        checks = FACTOR * (1 + self.channels) if self.level == 0 else 0
        return FACTOR * (1 + 2 * self.channels) + checks + 1

    @property
    def size(self) -> int:
        """Bytes of a record."""
        return 8 * self.words

    def _checks(self, records: Words, numbers: NDArray[np.int64]) -> Words:
        _, _, place_keys = _keys()
        places: Words = numbers.astype(np.uint64) * place_keys[0]
        places += np.uint64((self.level * int(place_keys[1]) + self.salt) & _MASK)
        places ^= places >> _HALF
        places += word_sums(records[:, :-1])
        return places

    def close(self, records: Words, first: int) -> None:
        """Write the checks of records, shape (n, words), of which the first has this number."""
        numbers = np.arange(first, first + len(records))
        records[:, -1] = self._checks(records, numbers)

    def sound(self, records: Words, numbers: NDArray[np.int64]) -> bool:
        """Tell whether all of these records match their checks and their places."""
        return bool((self._checks(records, numbers) == records[:, -1]).all())

    def first_ns(self, records: Words) -> NDArray[np.int64]:
        """Give the times of the cells' first rows, shape (n, 8)."""
        return records[:, :FACTOR].view(np.int64)

    def extremes(self, records: Words) -> tuple[NDArray[np.float64], NDArray[np.float64]]:
        """Give least and greatest of each cell, shape (n, channels, 8) each."""
        both = records[:, FACTOR : FACTOR * (1 + 2 * self.channels)].view(np.float64)
        shaped = both.reshape(len(records), self.channels, 2, FACTOR)
        return shaped[:, :, 0], shaped[:, :, 1]

    def raw_checks(self, records: Words) -> Words:
        """Give the checks of the cells' rows, shape (n, 1 + channels, 8); of level 0 only."""
        start = FACTOR * (1 + 2 * self.channels)
        return records[:, start:-1].reshape(len(records), 1 + self.channels, FACTOR)
