"""RangeCrossings: gaps over which the current went from one range of the meter to another."""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Sequence

import numpy as np

from meterlog.model import UNUSABLE, Block, Channel, Instrument, Role

BLANKING_NS = 1_500_000_000
"""A meter that has changed its range shows nothing for 0.3 to 1.5 s (common practice, no source);
what it said that long before a gap explains the gap."""
_GAP = 1.5
"""Readings further apart than so many intervals have a gap between them."""
MOST_KEPT = 10_000


class RangeCrossings:
    """Follows the current of a meter whose profile states several ranges. Others tell nothing.

    Parameters
    ----------
    instruments : sequence of Instrument
    """

    def __init__(self, instruments: Sequence[Instrument]) -> None:
        self._column, self._channel = _current(instruments)
        self._tops = np.empty(0)
        self._gap_ns = 0
        if self._channel is not None and len(self._channel.ranges) > 1:
            self._tops = np.array([one.top for one in self._channel.ranges])
            self._gap_ns = round(_GAP * self._channel.interval_s * 1e9)
        self._last: tuple[int, float] | None = None
        self._found: list[tuple[int, int, int, int]] = []

    def take(self, block: Block) -> None:
        """Take the next block of the instrument that reads the current."""
        if not len(self._tops) or not len(block):
            return
        values = block.values[:, self._column]
        usable = (block.flags[:, self._column] & int(UNUSABLE)) == 0
        known = np.flatnonzero(usable & np.isfinite(values))
        t_ns, amps = block.t_ns[known], np.abs(values[known])
        if not len(t_ns):
            return
        if self._last is not None:
            t_ns = np.concatenate(([self._last[0]], t_ns))
            amps = np.concatenate(([self._last[1]], amps))
        self._last = int(t_ns[-1]), float(amps[-1])
        apart = np.diff(t_ns)
        on_range = np.minimum(np.searchsorted(self._tops, amps), len(self._tops) - 1)
        gaps = (apart > self._gap_ns) & (apart <= BLANKING_NS + self._gap_ns)
        for index in np.flatnonzero(gaps & (np.diff(on_range) != 0)).tolist():
            if len(self._found) < MOST_KEPT:
                first, then = int(on_range[index]), int(on_range[index + 1])
                self._found.append((int(t_ns[index]), int(t_ns[index + 1]), first, then))

    def over(self, start_ns: int, end_ns: int) -> str:
        """Say from which range to which the level went over a gap; empty where it did not.

        Parameters
        ----------
        start_ns, end_ns : int, nanoseconds since the recording's zero
            Of the missing data.
        """
        index = bisect_right(self._found, end_ns, key=lambda one: one[0]) - 1
        if index < 0 or self._found[index][1] < start_ns or self._channel is None:
            return ""
        first, then = (self._channel.ranges[one].top for one in self._found[index][2:])
        unit = self._channel.unit
        return f"from up to {first:g} {unit} to up to {then:g} {unit}, by the readings around it"


def _current(instruments: Sequence[Instrument]) -> tuple[int, Channel | None]:
    for instrument in instruments:
        column = instrument.column(Role.MOTOR_CURRENT)
        if column is not None:
            return column, instrument.channels[column]
    return 0, None
