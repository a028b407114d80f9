"""Sensor and Zero: what stands between the circuit and the meter, and what it shows of nothing."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime
from enum import StrEnum


class SensorKind(StrEnum):
    """What the meter's input is connected to."""

    DIRECT = "direct"
    """The quantity itself; also a clamp meter that shows amperes."""
    CLAMP = "clamp"
    """A current clamp that gives a voltage."""
    SHUNT = "shunt"
    DIVIDER = "divider"


@dataclass(frozen=True, slots=True)
class Sensor:
    """How a quantity becomes what the meter reads.

    Attributes
    ----------
    kind : SensorKind
    ratio : float, unit of the channel per unit the meter reads
        100 A/V for a clamp of 10 mV/A; 1666.7 A/V for a shunt of 100 A at 60 mV; 10 for a divider
        of ten to one; 1 for none. Always above 0.
    turns : int
        How often the wire goes through the clamp: it reads so many times the current.
    inverted : bool
        The leads or the clamp's arrow are the other way round.
    words : str
        As the user said it, such as ``10 mV/A``; empty when nothing was said.
    own_percent : float or None, percent of the reading
    own_floor : float or None, unit of the channel
        The sensor's own accuracy, +-(percent + floor), which is added to the meter's; None where
        nobody has stated it.
    own_top : float or None, unit of the channel
        Up to which that is stated, as on the data sheet: for what goes through a clamp, which is
        several times the current where the wire goes through it several times.
    """

    kind: SensorKind = SensorKind.DIRECT
    ratio: float = 1.0
    turns: int = 1
    inverted: bool = False
    words: str = ""
    own_percent: float | None = None
    own_floor: float | None = None
    own_top: float | None = None

    @property
    def factor(self) -> float:
        """What the meter's reading is multiplied by; negative when inverted."""
        return (-1.0 if self.inverted else 1.0) * self.ratio / self.turns

    @property
    def top(self) -> float | None:
        """Up to what size of the quantity the sensor is stated; None where nobody has said it."""
        return None if self.own_top is None else self.own_top / self.turns

    def __str__(self) -> str:
        """Say it on one line, such as ``clamp 10 mV/A, 3 turns, inverted``; empty for nothing."""
        parts = []
        if self.kind is not SensorKind.DIRECT:
            parts.append(f"{self.kind.value} {self.words}".strip())
        elif self.ratio != 1.0:
            parts.append(f"times {self.ratio:g}")
        if self.turns != 1:
            parts.append(f"{self.turns} turns")
        if self.inverted:
            parts.append("inverted")
        return ", ".join(parts)


@dataclass(frozen=True, slots=True)
class Zero:
    """What a channel read when there was nothing to read.

    Attributes
    ----------
    offset : float, unit of the channel
        Mean of the readings; subtracted from every later one.
    scatter : float, unit of the channel
        Standard deviation of one reading; 0 when there was only one.
    count : int
        Readings it was made of; 0 when the offset was typed.
    taken_utc : datetime or None
        When, with UTC offset; None when nobody knows.
    range_top : float or None, unit of the channel
        Top of the range the meter was on; None when it does not say.
    """

    offset: float
    scatter: float = 0.0
    count: int = 0
    taken_utc: datetime | None = None
    range_top: float | None = None
