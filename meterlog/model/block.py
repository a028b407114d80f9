"""Block: the one currency. Readings of one instrument, with their times and flags."""

from __future__ import annotations

from dataclasses import dataclass
from enum import IntFlag

import numpy as np
from numpy.typing import NDArray


class Flag(IntFlag):
    """What is to be known about one value. ``OK`` is zero."""

    OK = 0
    OVERLOAD = 1
    """Beyond the meter's range: the value is NaN, never infinity, never a large number."""
    NO_DATA = 2
    """The instrument gave nothing (silent, gone, not-a-number): the value is NaN."""
    RANGE_CHANGED = 4
    """The meter had just changed its range."""
    ZEROED = 8
    """A zero offset has been subtracted."""
    TYPED = 16
    """Typed by hand, not read from an instrument."""


FLAG_WORDS = {
    Flag.OVERLOAD: "overload",
    Flag.NO_DATA: "no-data",
    Flag.RANGE_CHANGED: "range-changed",
    Flag.ZEROED: "zeroed",
    Flag.TYPED: "typed",
}
"""What stands for each flag in tables."""

UNUSABLE = Flag.OVERLOAD | Flag.NO_DATA
"""Values with one of these flags are NaN and enter no mean, no limit test and no plot range."""


@dataclass(frozen=True, slots=True, eq=False)
class Block:
    """Readings of one instrument.

    Attributes
    ----------
    source : str
        Key of the instrument in this recording (``Instrument.key``).
    t_ns : ndarray, int64, shape (n,), nanoseconds
        Monotonic time since the recording's zero; never decreasing.
    values : ndarray, float64, shape (n, channels), unit of each channel
        Scaled and zeroed. NaN where a flag says there is no value.
    flags : ndarray, uint8, shape (n, channels)
        :class:`Flag` bits.

    Raises
    ------
    ValueError
        If the shapes do not belong together.
    """

    source: str
    t_ns: NDArray[np.int64]
    values: NDArray[np.float64]
    flags: NDArray[np.uint8]

    def __post_init__(self) -> None:
        """Refuse shapes that do not belong together."""
        rows = self.t_ns.shape
        if len(rows) != 1 or self.values.ndim != 2 or self.values.shape[0] != rows[0]:
            raise ValueError(f"t_ns {rows} and values {self.values.shape} do not fit together")
        if self.flags.shape != self.values.shape:
            raise ValueError(f"flags {self.flags.shape} and values {self.values.shape} differ")

    def __len__(self) -> int:
        """Count the rows."""
        return int(self.t_ns.shape[0])

    def rows(self, start: int, stop: int) -> Block:
        """Give rows ``start`` to ``stop`` (exclusive) as a Block that shares the memory."""
        part = slice(start, stop)
        return Block(self.source, self.t_ns[part], self.values[part], self.flags[part])


def join(blocks: list[Block]) -> Block:
    """Join Blocks of one instrument, in the order given.

    Parameters
    ----------
    blocks : list of Block
        At least one; same ``source`` and same channel count.

    Returns
    -------
    Block
        Values column by column in memory (Fortran order), which is what detectors read fastest.

    Raises
    ------
    ValueError
        If the list is empty or mixes instruments.
    """
    if not blocks:
        raise ValueError("nothing to join")
    if len({block.source for block in blocks}) != 1:
        raise ValueError("blocks of different instruments can't be joined")
    if len(blocks) == 1:
        return blocks[0]
    width = blocks[0].values.shape[1]
    total = sum(len(block) for block in blocks)
    values = np.empty((total, width), order="F")
    flags = np.empty((total, width), np.uint8, order="F")
    np.concatenate([block.values for block in blocks], out=values)
    np.concatenate([block.flags for block in blocks], out=flags)
    return Block(blocks[0].source, np.concatenate([block.t_ns for block in blocks]), values, flags)
