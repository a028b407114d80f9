"""From raw units to volts and amperes."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from meterlog.instruments import Readings
from meterlog.model import UNUSABLE, Block, Channel, Flag


class Scaling:
    """Applies each channel's scale and zero offset: value = raw x scale - offset.

    Used by one thread. A channel counts as zeroed as soon as it has a zero, be it 0.

    Parameters
    ----------
    source : str
        Key of the instrument.
    channels : tuple of Channel
    """

    def __init__(self, source: str, channels: tuple[Channel, ...]) -> None:
        self._source = source
        self._scale = np.array([channel.scale for channel in channels])
        self._offset = np.array([channel.offset for channel in channels])
        zeroed = [channel.offset != 0.0 or channel.zero is not None for channel in channels]
        self._zeroed = np.where(zeroed, int(Flag.ZEROED), int(Flag.OK)).astype(np.uint8)

    def offset(self, column: int) -> float:
        """Give what is subtracted in a column now, in the channel's unit."""
        return float(self._offset[column])

    def set_zero(self, column: int, offset: float) -> None:
        """Subtract ``offset``, in the channel's unit, from the next block on."""
        self._offset[column] = offset
        self._zeroed[column] = int(Flag.ZEROED)

    def block(self, readings: Readings, t_ns: NDArray[np.int64]) -> Block:
        """Give the Block of ``readings`` taken at ``t_ns``.

        Returns
        -------
        Block
            Values in V or A, NaN where unusable, Fortran order; ``ZEROED`` where an offset has
            been subtracted.
        """
        values = readings.values * self._scale - self._offset
        flags = readings.flags | self._zeroed
        unusable = (flags & int(UNUSABLE)) != 0
        if unusable.any():
            values[unusable] = np.nan
        return Block(self._source, t_ns, values, flags)

    def nothing(self, t_ns: NDArray[np.int64]) -> Block:
        """Give a Block that says that the instrument gave nothing at ``t_ns``."""
        shape = (len(t_ns), len(self._scale))
        flags = np.full(shape, int(Flag.NO_DATA), np.uint8, order="F")
        return Block(self._source, t_ns, np.full(shape, np.nan, order="F"), flags)
