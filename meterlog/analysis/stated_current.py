"""StatedCurrent: what is known of how well the motor current was read, and when.

The accuracy statement is that of the range the meter was on; what was subtracted as zero has an
uncertainty of its own, by its scatter and by how far the clamp wandered until the next zero.
"""

from __future__ import annotations

import math
import re
from collections.abc import Sequence
from itertools import pairwise
from typing import TypeVar

from meterlog.analysis.uncertainty import Stated
from meterlog.model import (
    Channel,
    Event,
    EventKind,
    Instrument,
    Range,
    Role,
    Sensor,
    SensorKind,
    Zero,
)
from meterlog.model.zero_text import parse_zero

_Known = TypeVar("_Known", Range, Zero)

_BEFORE = -(2**62)
_RANGE = re.compile(r"range ([0-9.]+(?:e[-+]?[0-9]+)?) ", re.ASCII)


class StatedCurrent:
    """Follows the ranges and zeros of the motor current.

    Parameters
    ----------
    instruments : sequence of Instrument

    Attributes
    ----------
    channel : Channel or None
        The motor current's; None without one.
    key : str
        Of its instrument; empty without one.
    column : int
        Of the channel in its instrument's blocks.
    version : int
        Grows with everything learnt: what was made of it before is out of date.
    """

    def __init__(self, instruments: Sequence[Instrument]) -> None:
        self.channel: Channel | None = None
        self.version = 0
        self.key, self.column = "", 0
        self._ranges: list[tuple[int, Range]] = []
        self._zeros: list[tuple[int, Zero]] = []
        for instrument in instruments:
            column = instrument.column(Role.MOTOR_CURRENT)
            if column is not None:
                self.key, self.column = instrument.key, column
                self.channel = instrument.channels[column]
                break
        if self.channel is not None:
            zero = self.channel.zero or Zero(self.channel.offset)
            self._zeros = [(_BEFORE, zero)]

    @property
    def lacking(self) -> str:
        """What the uncertainty does not hold though the sensor has it; empty for nothing."""
        sensor = Sensor() if self.channel is None else self.channel.sensor
        behind = sensor.kind in (SensorKind.CLAMP, SensorKind.SHUNT)
        unsaid = behind and sensor.own_percent is None
        return f" (the {sensor.kind.value}'s own error not in)" if unsaid else ""

    def take(self, event: Event) -> None:
        """Take the next event."""
        if self.channel is None or event.source != self.key:
            return
        if event.kind is EventKind.ZERO:
            parsed = parse_zero(event.value)
            if parsed is not None and parsed[0] == self.channel.name:
                self._zeros.append((event.t_ns, parsed[1]))
                self.version += 1
        elif event.kind is EventKind.RANGE:
            found = _range_said(event.value, self.channel)
            if found is not None:
                self._ranges.append((event.t_ns, found))
                self.version += 1

    def at(self, value: float, start_ns: int, end_ns: int) -> Stated:
        """Give what holds for a mean of readings.

        Parameters
        ----------
        value : float, unit of the channel
            The mean.
        start_ns, end_ns : int, nanoseconds since the recording's zero
            When these were read. Of several ranges and zeros the worst counts.
        """
        if self.channel is None:
            return Stated(None)
        zeros = _during(self._zeros, start_ns, end_ns)
        shown = max((value + zero.offset for _, zero in zeros), key=abs)
        said = [one.accuracy for _, one in _during(self._ranges, start_ns, end_ns)]
        if not said or self._ranges[0][0] > start_ns:
            stated = self.channel.accuracy_at(shown)
            said += [] if stated is None else [stated]
        worst = max(said, key=lambda one: one.half_width(value), default=None)
        _, zero = max(zeros, key=lambda one: _zero_u(one[1]))
        degrees = zero.count - 1.0 if _zero_u(zero) else math.inf
        return Stated(worst, _zero_u(zero), degrees, self._drift(start_ns, end_ns))

    def _drift(self, start_ns: int, end_ns: int) -> float:
        """Give the largest step from a zero in force to the next one taken.

        From a typed one, or the one before the first in the recording, there is no step: the
        first may have been kept from another day, and is corrected by the next at once.
        """
        taken = [one for one in self._zeros if one[0] != _BEFORE or one[1].count]
        steps = [
            abs(after[1].offset - before[1].offset)
            for before, after in pairwise(taken)
            if before[0] < end_ns and after[0] > start_ns
        ]
        return max(steps, default=0.0)


def _zero_u(zero: Zero) -> float:
    return zero.scatter / math.sqrt(zero.count) if zero.count > 1 else 0.0


def _during(
    known: Sequence[tuple[int, _Known]], start_ns: int, end_ns: int
) -> list[tuple[int, _Known]]:
    """Give what was in force at the start, and what came before the end."""
    first = max(sum(at_ns <= start_ns for at_ns, _ in known) - 1, 0)
    return [one for one in known[first:] if one[0] <= max(start_ns, end_ns - 1)]


def _range_said(text: str, channel: Channel) -> Range | None:
    match = _RANGE.match(text)
    if match is None:
        return None
    # The meter says what it shows; the channel's ranges are those behind its sensor.
    top = float(match[1]) * abs(channel.sensor.factor)
    return next((one for one in channel.ranges if math.isclose(one.top, top, rel_tol=1e-4)), None)
