"""Impossible: readings that no meter can give, taken out before anything is judged by them."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

import numpy as np

from meterlog.model import Block, Flag, Instrument

LARGEST = 1e6
"""Volts or amperes. Limits reach no further, and squares and fourth powers of it stay finite."""


class Impossible:
    """Takes out readings that are infinite or beyond a million volts or amperes, and counts them.

    A decoder flags what a meter shows of an overload; this is for an imported trace, a damaged
    file and a wrong scale, so that one such reading spoils neither sums nor verdicts.

    Parameters
    ----------
    instruments : sequence of Instrument
        For their channels' names.
    """

    def __init__(self, instruments: Sequence[Instrument]) -> None:
        self._names = {one.key: [channel.name for channel in one.channels] for one in instruments}
        self._counts: dict[tuple[str, int], int] = {}

    def without(self, block: Block) -> Block:
        """Give the block with such readings as missing ones; the same block where there are none.

        Parameters
        ----------
        block : Block
            Of any instrument.
        """
        values = block.values
        # A missing reading makes both unequal to anything, and then each value is looked at.
        if not values.size or (values.max() <= LARGEST and values.min() >= -LARGEST):
            return block
        beyond = np.abs(values) > LARGEST
        if not beyond.any():
            return block
        for column in np.flatnonzero(beyond.any(axis=0)).tolist():
            place = block.source, column
            self._counts[place] = self._counts.get(place, 0) + int(beyond[:, column].sum())
        mended, flags = values.copy(order="A"), block.flags.copy(order="A")
        mended[beyond] = np.nan
        flags[beyond] |= int(Flag.NO_DATA)
        return replace(block, values=mended, flags=flags)

    def notes(self) -> list[str]:
        """Give one sentence for each channel that gave such readings."""
        return [
            f"{count} reading(s) of {key} {self._name(key, column)} lie beyond a million"
            f" volts or amperes and count as missing: is its scale right, or the file damaged?"
            for (key, column), count in sorted(self._counts.items())
        ]

    def _name(self, key: str, column: int) -> str:
        names = self._names.get(key, [])
        return names[column] if column < len(names) else f"column {column + 1}"
