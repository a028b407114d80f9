"""PastRangeWatch: finds the readings of more than meter and sensor are stated for."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from meterlog.analysis.past_range import ROUNDING
from meterlog.model import Block, Channel, Doubt, DoubtKind, Instrument, Role, SensorKind

_APART_NS = 100_000_000
"""Readings beyond that are no further apart are one stretch: those of a pulsed current."""
_MOST_PARTS = 4096
"""More stretches than that are told as one."""


class PastRangeWatch:
    """Follows the readings that lie beyond, however the blocks are cut.

    Parameters
    ----------
    instruments : sequence of Instrument
        Channels with a role are watched, where it is known how far they are stated.
    """

    def __init__(self, instruments: Sequence[Instrument]) -> None:
        self._watched: dict[str, list[_Beyond]] = {}
        for instrument in instruments:
            for column, channel in enumerate(instrument.channels):
                if channel.role is not Role.OTHER and channel.top is not None:
                    beyond = _Beyond(instrument.key, column, channel, channel.top)
                    self._watched.setdefault(instrument.key, []).append(beyond)

    def take(self, block: Block) -> None:
        """Take the next block of any instrument."""
        if len(block):
            for one in self._watched.get(block.source, ()):
                one.take(block)

    def doubts(self) -> list[Doubt]:
        """Give one doubt for each channel that read more than is stated."""
        return [one.doubt() for by_key in self._watched.values() for one in by_key if one.count]


class _Beyond:
    """What one channel read beyond its top."""

    def __init__(self, key: str, column: int, channel: Channel, top: float) -> None:
        self._key, self._column, self._channel, self._top = key, column, channel, top
        self.count = 0
        self._most = 0.0
        self._parts: list[tuple[int, int]] = []

    def take(self, block: Block) -> None:
        values = block.values[:, self._column]
        beyond = np.abs(values) > self._top * (1.0 + ROUNDING)
        if not beyond.any():
            return
        places = np.flatnonzero(beyond)
        self.count += len(places)
        found = values[places]
        most = float(found[np.argmax(np.abs(found))])
        if abs(most) > abs(self._most):
            self._most = most
        t_ns = block.t_ns[places]
        cuts = np.flatnonzero(np.diff(t_ns) > _APART_NS) + 1
        starts, ends = t_ns[np.r_[0, cuts]], t_ns[np.r_[cuts - 1, len(t_ns) - 1]]
        for start_ns, end_ns in zip(starts.tolist(), ends.tolist(), strict=True):
            self._add(start_ns, end_ns)

    def _add(self, start_ns: int, end_ns: int) -> None:
        last = self._parts[-1] if self._parts else None
        full = len(self._parts) == _MOST_PARTS
        if last is not None and (full or start_ns - last[1] <= _APART_NS):
            self._parts[-1] = last[0], max(end_ns, last[1])
        else:
            self._parts.append((start_ns, end_ns))

    def doubt(self) -> Doubt:
        channel = self._channel
        role, unit = channel.role.value, channel.unit
        start_ns, end_ns = self._parts[0][0], self._parts[-1][1]
        many = "one reading" if self.count == 1 else f"{self.count} readings"
        when = f"{start_ns / 1e9:.1f} s to {end_ns / 1e9:.1f} s"
        text = (
            f"{role} read up to {self._most:.4g} {unit} ({many} beyond, {when}), but"
            f" {self._ends()}. Nobody states how far off such a reading is; mostly it is too low."
            f" Measure again on a higher range; where there is none, with another meter or sensor."
        )
        parts = tuple(self._parts)
        return Doubt(
            DoubtKind.PAST_RANGE, text, start_ns, end_ns, self._key, channel.role, parts=parts
        )

    def _ends(self) -> str:
        sensor, top, unit = self._channel.sensor, f"{self._top:.4g}", self._channel.unit
        if sensor.top != self._top:
            if sensor.kind is SensorKind.DIRECT:
                return f"the meter's widest range ends at {top} {unit}"
            kind = sensor.kind.value
            return f"the meter's widest range ends at {top} {unit} behind the {kind}"
        if sensor.kind is SensorKind.DIRECT:
            return f"its accuracy is stated up to {top} {unit}"
        kind = sensor.kind.value
        if sensor.turns > 1:
            return (
                f"with {sensor.turns} turns the accuracy of the {kind} is stated up to {top} {unit}"
            )
        return f"the accuracy of the {kind} is stated up to {top} {unit}"
