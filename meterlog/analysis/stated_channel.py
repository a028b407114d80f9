"""StatedChannel: what is known of how well one channel was read, and when.

The accuracy statement is that of the range the meter was on; what was subtracted as zero has an
uncertainty of its own, by its scatter and by how far the clamp wandered until the next zero. The
meter's statement and its sensor's are told apart again here: they are two devices.
"""

from __future__ import annotations

import math
import re
from collections.abc import Sequence
from dataclasses import dataclass, replace
from itertools import pairwise
from typing import TypeVar

from meterlog.model import (
    Accuracy,
    Event,
    EventKind,
    Instrument,
    Quantity,
    Range,
    Sensor,
    SensorKind,
    Zero,
)
from meterlog.model.zero_text import parse_zero

_Known = TypeVar("_Known", Range, Zero)

_BEFORE = -(2**62)
_RANGE = re.compile(r"range ([0-9.]+(?:e[-+]?[0-9]+)?) ", re.ASCII)
_BEHIND = (SensorKind.CLAMP, SensorKind.SHUNT)
_ADDED = "added, as a linear sum"
"""So ends what the basis of a channel's accuracy says of its sensor's, which is in it."""


@dataclass(frozen=True, slots=True)
class Stated:
    """What is known of the mean of some readings besides their scatter.

    Attributes
    ----------
    meter : Accuracy or None
        The meter's alone, in the unit of the channel; None when nobody has stated it.
    range_top : float or None, unit of the channel
        Of the range it is for; None where the meter has none.
    zero_u : float, unit of the channel
        Standard uncertainty of the mean that was subtracted as zero.
    zero_degrees : float
        Its degrees of freedom.
    zero_offset : float, unit of the channel
        What was subtracted.
    drift : float, unit of the channel
        So far the zero taken next lies away: the half-width of what it may have been meanwhile.
    """

    meter: Accuracy | None
    range_top: float | None = None
    zero_u: float = 0.0
    zero_degrees: float = math.inf
    zero_offset: float = 0.0
    drift: float = 0.0


class StatedChannel:
    """Follows the ranges and zeros of one channel.

    Parameters
    ----------
    instrument : Instrument
    column : int
        Of the channel in the instrument's blocks.

    Attributes
    ----------
    instrument : Instrument
    channel : Channel
    key : str
        Of the instrument.
    column : int
    version : int
        Grows with everything learnt: what was made of it before is out of date.
    """

    def __init__(self, instrument: Instrument, column: int) -> None:
        self.instrument, self.column = instrument, column
        self.channel = instrument.channels[column]
        self.key = instrument.key
        self.version = 0
        self._ranges: list[tuple[int, Range]] = []
        self._zeros = [(_BEFORE, self.channel.zero or Zero(self.channel.offset))]

    @property
    def own_unsaid(self) -> bool:
        """True where a clamp or shunt is in between whose own accuracy nobody has stated."""
        sensor = self.channel.sensor
        return sensor.kind in _BEHIND and sensor.own_percent is None

    @property
    def zero_unsaid(self) -> bool:
        """True where a clamp is read whose zero nobody has taken, so far."""
        sensor = self.channel.sensor
        clamp = sensor.kind is SensorKind.CLAMP or sensor.turns > 1
        return clamp and not self.zero_taken

    @property
    def zero_taken(self) -> bool:
        """True once a zero was taken or stated, by whatever the current is read."""
        first = self._zeros[0][1]
        return len(self._zeros) > 1 or bool(first.count) or first.offset != 0.0

    @property
    def sensor_unsaid(self) -> tuple[str, str]:
        """Whose (such as ``the clamp's``) and what nobody has stated; nothing for nothing."""
        kind = self.channel.sensor.kind
        named = f"the {kind.value}'s" if kind in _BEHIND else "the clamp's"
        return named, " and ".join(["own error"] * self.own_unsaid + ["zero"] * self.zero_unsaid)

    @property
    def meter_unsaid(self) -> bool:
        """True where nobody has stated how good the meter itself is."""
        return self.channel.accuracy is None and not self.channel.ranges

    @property
    def lacking(self) -> str:
        """What the uncertainty does not hold though meter or sensor has it; empty for nothing."""
        named, missing = self.sensor_unsaid
        if self.meter_unsaid and missing:
            return f" (the meter's accuracy and {named} {missing} not in)"
        if self.meter_unsaid:
            return " (the meter's accuracy not in)"
        return f" ({named} {missing} not in)" if missing else ""

    def take(self, event: Event) -> None:
        """Take the next event."""
        if event.source != self.key:
            return
        if event.kind is EventKind.ZERO:
            parsed = parse_zero(event.value)
            if parsed is not None and parsed[0] == self.channel.name:
                self._zeros.append((event.t_ns, parsed[1]))
                self.version += 1
        elif event.kind is EventKind.RANGE:
            found = self._range_said(event.value)
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
        zeros = _during(self._zeros, start_ns, end_ns)
        shown = max((value + zero.offset for _, zero in zeros), key=abs)
        said: list[tuple[Accuracy, float | None]] = [
            (one.accuracy, one.top) for _, one in _during(self._ranges, start_ns, end_ns)
        ]
        if not said or self._ranges[0][0] > start_ns:
            said += self._chosen(shown)
        worst, top = max(said, key=lambda one: one[0].half_width(value), default=(None, None))
        _, zero = max(zeros, key=lambda one: _zero_u(one[1]))
        return Stated(
            meter=None if worst is None else without_own(worst, self.channel.sensor),
            range_top=top,
            zero_u=_zero_u(zero),
            zero_degrees=zero.count - 1.0 if _zero_u(zero) else math.inf,
            zero_offset=zero.offset,
            drift=self._drift(start_ns, end_ns),
        )

    @property
    def meter_reads(self) -> Quantity:
        """What the meter itself reads: a voltage behind a clamp, shunt or divider."""
        direct = self.channel.sensor.kind is SensorKind.DIRECT
        return self.channel.quantity if direct else Quantity.VOLTAGE

    def _chosen(self, shown: float) -> list[tuple[Accuracy, float | None]]:
        """Give the statement of the range a meter chooses that chooses its range itself."""
        for one in self.channel.ranges:
            if abs(shown) <= one.top:
                return [(one.accuracy, one.top)]
        widest = self.channel.ranges[-1].top if self.channel.ranges else None
        return [] if self.channel.accuracy is None else [(self.channel.accuracy, widest)]

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

    def _range_said(self, text: str) -> Range | None:
        match = _RANGE.match(text)
        if match is None:
            return None
        # The meter says what it shows; the channel's ranges are those behind its sensor.
        top = float(match[1]) * abs(self.channel.sensor.factor)
        near = (one for one in self.channel.ranges if math.isclose(one.top, top, rel_tol=1e-4))
        return next(near, None)


def without_own(accuracy: Accuracy, sensor: Sensor) -> Accuracy:
    """Give the meter's own part of a channel's accuracy: the sensor's was added to it.

    Its basis then doesn't say any more that the sensor's is in it.
    """
    if sensor.own_percent is None:
        return accuracy
    said = [words for words in accuracy.basis.split("; ") if not words.endswith(_ADDED)]
    percent = accuracy.percent_of_reading - sensor.own_percent
    floor = accuracy.floor - (sensor.own_floor or 0.0)
    # Rounded, so that 2.5 % less 2 % does not leave a trace of binary fractions.
    return replace(
        accuracy,
        percent_of_reading=max(round(percent, 12), 0.0),
        floor=max(round(floor, 12), 0.0),
        basis="; ".join(said),
    )


def _zero_u(zero: Zero) -> float:
    return zero.scatter / math.sqrt(zero.count) if zero.count > 1 else 0.0


def _during(
    known: Sequence[tuple[int, _Known]], start_ns: int, end_ns: int
) -> list[tuple[int, _Known]]:
    """Give what was in force at the start, and what came before the end."""
    first = max(sum(at_ns <= start_ns for at_ns, _ in known) - 1, 0)
    return [one for one in known[first:] if one[0] <= max(start_ns, end_ns - 1)]
