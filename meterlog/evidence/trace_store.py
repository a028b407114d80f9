"""TraceStore: the readings worth drawing, in bounded memory, live or from a recording.

It keeps no evidence. The newest readings are kept as they are; older ones, once there are very
many, as the smallest and largest of every few, so that no peak is lost from the picture.
"""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray

from meterlog.evidence.pixel_columns import Points, pixel_columns, thin
from meterlog.model import Block, Channel, Instrument, Quantity, Role

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
        self._silent_ns = round(SILENT_INTERVALS * channel.interval_s * 1e9)

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
        before = self.last_ns if self.count else int(t_ns[0])
        silent = np.flatnonzero(np.diff(t_ns, prepend=before) > self._silent_ns)
        if not silent.size or self._silent_ns <= 0:
            return t_ns, values
        return np.insert(t_ns, silent, t_ns[silent] - 1), np.insert(values, silent, np.nan)

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
        tail_t = self._tail_t[: self._in_tail]
        tail_v = self._tail_v[: self._in_tail]
        if not self._old_t.shape[0] or (tail_t.shape[0] and tail_t[0] <= start_ns):
            return pixel_columns(tail_t, tail_v, start_ns, end_ns, columns)
        first = max(int(np.searchsorted(self._old_t, start_ns)) - 1, 0)
        t_ns = np.concatenate([self._old_t[first:], tail_t])
        values = np.concatenate([self._old_v[first:], tail_v])
        return pixel_columns(t_ns, values, start_ns, end_ns, columns)


class TraceStore:
    """All lines of one recording.

    Parameters
    ----------
    instruments : sequence of Instrument
        Channels with a role are drawn; where no channel has one, all are.
    tail, cap : int
        See :class:`TraceLine`.
    """

    def __init__(self, instruments: Sequence[Instrument], tail: int = TAIL, cap: int = CAP) -> None:
        any_role = any(c.role is not Role.OTHER for i in instruments for c in i.channels)
        self.end_ns = 0
        self.lines: list[TraceLine] = []
        self._columns: dict[str, list[tuple[int, TraceLine]]] = {}
        for instrument in instruments:
            columns = self._columns.setdefault(instrument.key, [])
            for index, channel in enumerate(instrument.channels):
                if channel.role is Role.OTHER and any_role:
                    continue
                label = _label(channel) + (", typed by hand" if instrument.typed else "")
                line = TraceLine(label, channel, tail, cap, typed=instrument.typed)
                columns.append((index, line))
                self.lines.append(line)

    def take(self, block: Block) -> None:
        """Take a Block of one of the instruments; others are passed over."""
        for index, line in self._columns.get(block.source, ()):
            line.append(block.t_ns, block.values[:, index])
            if len(block):
                line.last_flags = int(block.flags[-1, index])
        if len(block) and block.source in self._columns:
            self.end_ns = max(self.end_ns, int(block.t_ns[-1]))

    def line(self, role: Role) -> TraceLine | None:
        """Give the first line that plays ``role``, or None."""
        return next((line for line in self.lines if line.role is role), None)

    def of(self, quantity: Quantity) -> tuple[TraceLine, ...]:
        """Give the lines of one quantity, in the order of the meters."""
        return tuple(line for line in self.lines if line.channel.quantity is quantity)


def _label(channel: Channel) -> str:
    if channel.role is Role.OTHER:
        return channel.name
    return channel.role.value.replace("-", " ")
