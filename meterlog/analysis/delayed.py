"""Delayed: figures of readings that are counted only when they are older than a delay.

The last moments before a new command may already be the new speed's: a hand is late.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import Generic, Protocol, Self, TypeVar

import numpy as np
from numpy.typing import NDArray


class Sums(Protocol):
    """What readings are added up in."""

    @property
    def add(self) -> Callable[..., None]:
        """Take readings side by side: one array a column, each shape (n,), all finite."""

    def copy(self) -> Self:
        """Give sums that can go on by themselves."""


_Sums = TypeVar("_Sums", bound=Sums)


class Delayed(Generic[_Sums]):
    """Holds readings back before they are added up.

    Parameters
    ----------
    delay_ns : int, nanoseconds
    sums : Sums
        Of as many columns as readings are taken with.
    """

    def __init__(self, delay_ns: int, sums: _Sums) -> None:
        self._delay_ns = delay_ns
        self._sums = sums
        self._t: NDArray[np.int64] = np.empty(0, np.int64)
        self._columns: tuple[NDArray[np.float64], ...] = ()

    def add(self, t_ns: NDArray[np.int64], now_ns: int, *columns: NDArray[np.float64]) -> None:
        """Take readings; count those that are old enough at ``now_ns``, but for the last one."""
        if self._columns:
            t_ns = np.concatenate((self._t, t_ns))
            columns = tuple(
                np.concatenate(both) for both in zip(self._columns, columns, strict=True)
            )
        count = int(np.searchsorted(t_ns, now_ns - self._delay_ns, side="left"))
        self._count(t_ns, columns, min(count, max(len(t_ns) - 1, 0)))

    def drop_last(self) -> None:
        """Leave out the last reading: the current went, and it may be half-way down already."""
        self._t = self._t[:-1]
        self._columns = tuple(column[:-1] for column in self._columns)

    def end(self, at_ns: int) -> None:
        """Leave out what is younger than the delay at ``at_ns``, when the new command came."""
        count = int(np.searchsorted(self._t, at_ns - self._delay_ns, side="left"))
        self._count(self._t, self._columns, count)
        self._t, self._columns = np.empty(0, np.int64), ()

    def counted(self) -> _Sums:
        """Give the sums as if the recording ended now."""
        if not len(self._t):
            return self._sums
        whole = self._sums.copy()
        whole.add(*self._columns)
        return whole

    def _count(
        self, t_ns: NDArray[np.int64], columns: tuple[NDArray[np.float64], ...], count: int
    ) -> None:
        if count:
            self._sums.add(*(column[:count] for column in columns))
        self._t, self._columns = t_ns[count:], tuple(column[count:] for column in columns)
