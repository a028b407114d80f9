"""TraceLine: one channel's readings worth drawing, in bounded memory.

It keeps no evidence. The newest readings are kept as they are; older ones, once there are very
many, as the smallest and largest of every few, so that no peak is lost from the picture.
"""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from meterlog.evidence.pixel_columns import Drawn, Points, drawn_columns, points_of, thin
from meterlog.model import Channel, Role

TAIL = 65_536
CAP = 262_144
SILENT_INTERVALS = 3.5


class TraceLine:
    """One channel's readings.

    Parameters
    ----------
    label : str
        For the picture's key.
    channel : Channel
    tail, cap : int
        Readings kept as they are, and points kept of what is older; ``tail`` a multiple of 8.
    typed : bool
        Typed by hand: each reading stands for itself, nothing is known in between.

    Attributes
    ----------
    silent_ns : int, nanoseconds
        More than this between two readings is a silence, in which the line is broken.
    """

    def __init__(
        self,
        label: str,
        channel: Channel,
        tail: int = TAIL,
        cap: int = CAP,
        *,
        typed: bool = False,
    ) -> None:
        self.label = label
        self.channel = channel
        self.typed = typed
        self.count = 0
        self.last_ns = -1
        self.last = float("nan")
        self.last_flags = 0
        self.low = float("inf")
        self.high = float("-inf")
        self._cap = cap
        self._group = 1
        self._tail_t = np.empty(tail, np.int64)
        self._tail_v = np.empty(tail)
        self._in_tail = 0
        self._old_t = np.empty(0, np.int64)
        self._old_v = np.empty(0)
        self.silent_ns = round(SILENT_INTERVALS * channel.interval_s * 1e9)

    @property
    def role(self) -> Role:
        """The part the channel plays."""
        return self.channel.role

    def append(self, t_ns: NDArray[np.int64], values: NDArray[np.float64]) -> None:
        """Take readings, shape (n,) each; a silence longer than three intervals becomes a gap."""
        if not t_ns.shape[0]:
            return
        t_ns, values = self._with_gaps(t_ns, values)
        self.count += t_ns.shape[0]
        self.last_ns = int(t_ns[-1])
        self.last = float(values[-1])
        real = values[~np.isnan(values)]
        if real.size:
            self.low = min(self.low, float(real.min()))
            self.high = max(self.high, float(real.max()))
        done = 0
        while done < t_ns.shape[0]:
            part = min(t_ns.shape[0] - done, self._tail_t.shape[0] - self._in_tail)
            into = slice(self._in_tail, self._in_tail + part)
            self._tail_t[into] = t_ns[done : done + part]
            self._tail_v[into] = values[done : done + part]
            self._in_tail += part
            done += part
            if self._in_tail == self._tail_t.shape[0]:
                self._settle()

    def _with_gaps(self, t_ns: NDArray[np.int64], values: NDArray[np.float64]) -> Points:
        return with_gaps(t_ns, values, self.silent_ns, self.last_ns if self.count else None)

    def _settle(self) -> None:
        """Move the older half of the tail among the old points, thinned as they are."""
        half = self._tail_t.shape[0] // 2
        t_ns, values = self._tail_t[:half].copy(), self._tail_v[:half].copy()
        if self._group > 1:
            t_ns, values = thin(t_ns, values, min(self._group, half))
        self._tail_t[:half] = self._tail_t[half:]
        self._tail_v[:half] = self._tail_v[half:]
        self._in_tail = half
        self._old_t = np.concatenate([self._old_t, t_ns])
        self._old_v = np.concatenate([self._old_v, values])
        if self._old_t.shape[0] > self._cap:
            whole = self._old_t.shape[0] // 8 * 8
            rest_t, rest_v = self._old_t[whole:], self._old_v[whole:]
            self._old_t, self._old_v = thin(self._old_t[:whole], self._old_v[:whole], 8)
            self._old_t = np.concatenate([self._old_t, rest_t])
            self._old_v = np.concatenate([self._old_v, rest_v])
            self._group = 8 if self._group == 1 else self._group * 4

    def shown(self, start_ns: int, end_ns: int, columns: int) -> Points:
        """Give the points that show ``start_ns`` to ``end_ns`` on ``columns`` pixels."""
        return points_of(self.drawn(start_ns, end_ns, columns))

    def drawn(self, start_ns: int, end_ns: int, columns: int) -> Drawn:
        """Give the same as columns of pixels where there are many readings."""
        tail_t = self._tail_t[: self._in_tail]
        tail_v = self._tail_v[: self._in_tail]
        if not self._old_t.shape[0] or (tail_t.shape[0] and tail_t[0] <= start_ns):
            return drawn_columns(tail_t, tail_v, start_ns, end_ns, columns)
        first = max(int(np.searchsorted(self._old_t, start_ns)) - 1, 0)
        t_ns = np.concatenate([self._old_t[first:], tail_t])
        values = np.concatenate([self._old_v[first:], tail_v])
        return drawn_columns(t_ns, values, start_ns, end_ns, columns)


def with_gaps(
    t_ns: NDArray[np.int64],
    values: NDArray[np.float64],
    silent_ns: int,
    before_ns: int | None = None,
) -> Points:
    """Put a NaN before each reading that comes after a silence.

    Parameters
    ----------
    t_ns, values : ndarrays, shape (n,)
    silent_ns : int, nanoseconds
        More than this between two readings is a silence; 0 or less: nothing is.
    before_ns : int or None
        Time of the reading before the first.
    """
    if silent_ns <= 0 or not t_ns.shape[0]:
        return t_ns, values
    before = int(t_ns[0]) if before_ns is None else before_ns
    silent = np.flatnonzero(np.diff(t_ns, prepend=before) > silent_ns)
    if not silent.size:
        return t_ns, values
    return np.insert(t_ns, silent, t_ns[silent] - 1), np.insert(values, silent, np.nan)
