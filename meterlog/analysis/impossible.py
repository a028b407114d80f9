"""Impossible: readings and times that no meter can give, put right before anything is judged."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

import numpy as np

from meterlog.model import Block, Flag, Instrument

LARGEST = 1e9
"""Volts or amperes: far beyond all limits, and its squares and fourth powers stay finite."""


class Impossible:
    """Takes out readings beyond a thousand million volts or amperes, and stops time running back.

    What a meter shows of an overload is flagged by its decoder, and its times never run backwards;
    this is for an imported trace, a damaged file and a wrong scale, so that one such reading
    spoils neither sums nor verdicts. Infinity counts as beyond. All that is put right is counted
    and told.

    Parameters
    ----------
    instruments : sequence of Instrument
        For their channels' names.
    """

    def __init__(self, instruments: Sequence[Instrument]) -> None:
        self._names = {one.key: [channel.name for channel in one.channels] for one in instruments}
        self._beyond: dict[tuple[str, int], int] = {}
        self._backwards: dict[str, int] = {}
        self._last_ns: dict[str, int] = {}

    def without(self, block: Block) -> Block:
        """Give the block put right: the very same one where there is nothing to put right.

        Parameters
        ----------
        block : Block
            Of any instrument, each one's in the order in which they came. What is beyond becomes
            missing (NaN, flagged); a time before the one before it becomes that.
        """
        return self._in_order(self._within(block)) if len(block) else block

    def _within(self, block: Block) -> Block:
        values = block.values
        # A missing reading makes both unequal to anything, and then each value is looked at.
        if not values.size or (values.max() <= LARGEST and values.min() >= -LARGEST):
            return block
        beyond = np.abs(values) > LARGEST
        if not beyond.any():
            return block
        for column in np.flatnonzero(beyond.any(axis=0)).tolist():
            place = block.source, column
            self._beyond[place] = self._beyond.get(place, 0) + int(beyond[:, column].sum())
        mended, flags = values.copy(order="A"), block.flags.copy(order="A")
        mended[beyond] = np.nan
        flags[beyond] |= int(Flag.NO_DATA)
        return replace(block, values=mended, flags=flags)

    def _in_order(self, block: Block) -> Block:
        t_ns = block.t_ns
        last_ns = self._last_ns.get(block.source, int(t_ns[0]))
        if int(t_ns[0]) < last_ns or (t_ns[1:] < t_ns[:-1]).any():
            ordered = np.maximum.accumulate(np.maximum(t_ns, last_ns))
            count = int((t_ns < ordered).sum())
            self._backwards[block.source] = self._backwards.get(block.source, 0) + count
            block = replace(block, t_ns=ordered)
        self._last_ns[block.source] = int(block.t_ns[-1])
        return block

    def notes(self) -> list[str]:
        """Give one sentence for each channel and instrument that gave such."""
        beyond = [
            f"{count} reading(s) of {key} {self._name(key, column)} lie beyond a thousand million"
            f" volts or amperes and count as missing: is its scale right, or the file damaged?"
            for (key, column), count in sorted(self._beyond.items())
        ]
        backwards = [
            f"{count} reading(s) of {key} bear a time before that of a reading that came earlier;"
            f" they count as read at that one's time: is the file damaged, or were clocks set?"
            for key, count in sorted(self._backwards.items())
        ]
        return beyond + backwards

    def _name(self, key: str, column: int) -> str:
        names = self._names.get(key, [])
        return names[column] if column < len(names) else f"column {column + 1}"
