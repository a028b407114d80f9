"""Rows: voltage and current of the motor side by side, one row an instant."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TypeVar

import numpy as np
from numpy.typing import NDArray

_Item = TypeVar("_Item", bound=np.generic)


def _cut(column: NDArray[_Item] | None, cut: slice) -> NDArray[_Item] | None:
    return None if column is None else column[cut]


@dataclass(frozen=True, slots=True, eq=False)
class Rows:
    """What the detectors read.

    Attributes
    ----------
    t_ns : ndarray, int64, shape (n,), nanoseconds since the recording's zero
    amps : ndarray, float64, shape (n,), amperes
        Motor current as read, sign included.
    feed, back : ndarray or None, float64, shape (n,), volts
        Motor feed and motor return; None where no channel plays that role.
    usable : ndarray, bool, shape (n,)
        False where the current has no value. A voltage without a value is NaN: it may leave a
        side undetermined, but a current that flows is known to flow.
    gap : ndarray, bool, shape (n,)
        True where the current was silent for more than three intervals before this row.
    amps_new, volts_new : ndarray or None, bool, shape (n,)
        Rows in which that channel was really read, not held over from its last reading; None
        when that is all of them.
    volts_ns : ndarray or None, int64, shape (n,)
        When the older of the two voltages was read; None when it equals ``t_ns``.
    """

    t_ns: NDArray[np.int64]
    amps: NDArray[np.float64]
    feed: NDArray[np.float64] | None
    back: NDArray[np.float64] | None
    usable: NDArray[np.bool_]
    gap: NDArray[np.bool_]
    amps_new: NDArray[np.bool_] | None = None
    volts_new: NDArray[np.bool_] | None = None
    volts_ns: NDArray[np.int64] | None = None

    def __len__(self) -> int:
        """Count the rows."""
        return int(self.t_ns.shape[0])

    def part(self, start: int, stop: int) -> Rows:
        """Give rows ``start`` to ``stop`` (exclusive), sharing the memory."""
        cut = slice(start, stop)

        return Rows(
            self.t_ns[cut],
            self.amps[cut],
            _cut(self.feed, cut),
            _cut(self.back, cut),
            self.usable[cut],
            self.gap[cut],
            _cut(self.amps_new, cut),
            _cut(self.volts_new, cut),
            _cut(self.volts_ns, cut),
        )


def _pair(first: NDArray[_Item] | None, second: NDArray[_Item] | None) -> NDArray[_Item] | None:
    return None if first is None or second is None else np.concatenate((first, second))


def join_rows(first: Rows, second: Rows) -> Rows:
    """Join two stretches of Rows of the same channels, in the order given."""
    if not len(first):
        return second
    if not len(second):
        return first
    return Rows(
        np.concatenate((first.t_ns, second.t_ns)),
        np.concatenate((first.amps, second.amps)),
        _pair(first.feed, second.feed),
        _pair(first.back, second.back),
        np.concatenate((first.usable, second.usable)),
        np.concatenate((first.gap, second.gap)),
        _pair(first.amps_new, second.amps_new),
        _pair(first.volts_new, second.volts_new),
        _pair(first.volts_ns, second.volts_ns),
    )
