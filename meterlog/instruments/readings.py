"""Readings and Decoder: what every dialect makes of the bytes of a port."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Protocol

import numpy as np
from numpy.typing import NDArray

from meterlog.model import EventKind

EXAMPLE_BYTES = 200
"""At most so many bytes of a line that was not understood are kept as an example."""


@dataclass(frozen=True, slots=True)
class Remark:
    """What an instrument lets be known beside its values, at one of its readings.

    Attributes
    ----------
    row : int
        The reading it came with; equal to the number of rows when it came after the last.
    kind : EventKind
        ``unit``, ``range`` or ``device``.
    text : str
        For a person, such as ``low battery``.
    """

    row: int
    kind: EventKind
    text: str


@dataclass(frozen=True, slots=True, eq=False)
class Readings:
    """Readings as the instrument gave them, before scaling, without times of this computer.

    Attributes
    ----------
    values : ndarray, float64, shape (n, channels), raw units, Fortran order
        NaN where a flag says there is no value.
    flags : ndarray, uint8, shape (n, channels)
        Bits of :class:`meterlog.model.Flag`.
    own_time_s : ndarray, float64, shape (n,), seconds, or None
        The instrument's own clock; None when it sends none.
    remarks : tuple of Remark
        In the order of their rows.
    """

    values: NDArray[np.float64]
    flags: NDArray[np.uint8]
    own_time_s: NDArray[np.float64] | None = None
    remarks: tuple[Remark, ...] = ()

    def __len__(self) -> int:
        """Count the rows."""
        return int(self.values.shape[0])


def no_readings(width: int, *, timed: bool = False) -> Readings:
    """Give Readings without rows.

    Parameters
    ----------
    width : int
        Number of channels.
    timed : bool
        Whether the instrument sends times of its own.
    """
    return Readings(
        np.empty((0, width), order="F"),
        np.empty((0, width), np.uint8, order="F"),
        np.empty(0) if timed else None,
    )


class Decoder(Protocol):
    """A pure byte machine: bytes in, Readings out. It may be fed in pieces of any size.

    Attributes
    ----------
    refused : int
        Lines or answers not understood so far.
    last_refused : bytes
        The last of them, at most 200 bytes.
    """

    refused: int
    last_refused: bytes

    def feed(self, data: bytes) -> Readings:
        """Give the readings that ``data`` completes. Never raises on any byte string."""
        ...
