"""PastRange: readings of more than meter and sensor are stated for.

A clamp of 40 A shows something of 60 A, too, and mostly too little: its core is full. No data
sheet says how much. Neither a peak nor a level that lies there is known as well as its digits look.
"""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from meterlog.model import (
    Block,
    Channel,
    Doubt,
    DoubtKind,
    Flag,
    Instrument,
    Role,
    SensorKind,
)

_ROUNDING = 1e-9
"""Of the top: what scaling alone may add to a reading that is the top itself."""


def is_past(channel: Channel | None, size: float) -> bool:
    """Tell whether a size lies beyond what meter and sensor are stated for.

    Parameters
    ----------
    channel : Channel or None
    size : float, unit of the channel
    """
    top = None if channel is None else channel.top
    return top is not None and abs(size) > top * (1.0 + _ROUNDING)


class PastRange:
    """Counts the readings that lie beyond, however the blocks are cut.

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
        self._start_ns = self._end_ns = 0

    def take(self, block: Block) -> None:
        values = block.values[:, self._column]
        beyond = np.abs(values) > self._top * (1.0 + _ROUNDING)
        if not beyond.any():
            return
        # What somebody typed may be from another meter; a slip of the pen is told elsewhere.
        beyond &= (block.flags[:, self._column] & int(Flag.TYPED)) == 0
        places = np.flatnonzero(beyond)
        if not len(places):
            return
        if not self.count:
            self._start_ns = int(block.t_ns[places[0]])
        self._end_ns = int(block.t_ns[places[-1]])
        self.count += len(places)
        found = values[places]
        most = float(found[np.argmax(np.abs(found))])
        if abs(most) > abs(self._most):
            self._most = most

    def doubt(self) -> Doubt:
        channel = self._channel
        role, unit, sensor = channel.role.value, channel.unit, channel.sensor
        ends = f"the meter's widest range ends at {self._top:.4g} {unit}"
        if sensor.top == self._top:
            named = "sensor" if sensor.kind is SensorKind.DIRECT else sensor.kind.value
            turns = f" with {sensor.turns} turns through it" if sensor.turns > 1 else ""
            ends = f"the {named}'s accuracy is stated up to {self._top:.4g} {unit}{turns}"
        when = f"at {self._start_ns / 1e9:.1f} s"
        if self._end_ns > self._start_ns:
            when = f"{self._start_ns / 1e9:.1f} s to {self._end_ns / 1e9:.1f} s"
        many = "one reading" if self.count == 1 else f"{self.count} readings"
        text = (
            f"{role} read up to {self._most:.4g} {unit} ({many} beyond, {when}), but {ends}. How"
            f" far off a reading beyond it is nobody states; mostly it is too low. Measure again"
            f" with one of a higher range."
        )
        return Doubt(
            DoubtKind.PAST_RANGE, text, self._start_ns, self._end_ns, self._key, channel.role
        )
