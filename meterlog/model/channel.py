"""Channel: one quantity read by one instrument, and the part it plays in the fan circuit."""

from __future__ import annotations

from dataclasses import dataclass, field
from enum import StrEnum

from meterlog.model.accuracy import Accuracy, Range
from meterlog.model.sensor import Sensor, Zero


class Quantity(StrEnum):
    """What is measured."""

    VOLTAGE = "voltage"
    CURRENT = "current"

    @property
    def unit(self) -> str:
        """Symbol of the SI unit in which every value of this quantity is kept."""
        return "V" if self is Quantity.VOLTAGE else "A"


class Role(StrEnum):
    """Where in the circuit the channel is connected. The value is what stands in files."""

    BATTERY = "battery"
    RELAY_COIL = "relay-coil"
    RELAY_OUT = "relay-out"
    MOTOR_FEED = "motor-feed"
    MOTOR_RETURN = "motor-return"
    CONTROLLER_GROUND = "controller-ground"
    COMMAND = "command"
    MOTOR_CURRENT = "motor-current"
    DROP = "drop"
    """Measured straight across one part: subtracting two 12 V readings can't prove a 0.2 V drop."""
    OTHER = "other"

    @property
    def quantity(self) -> Quantity | None:
        """The quantity this role needs; None where any will do."""
        if self is Role.OTHER:
            return None
        return Quantity.CURRENT if self is Role.MOTOR_CURRENT else Quantity.VOLTAGE


@dataclass(frozen=True, slots=True)
class Channel:
    """One column of an instrument's readings.

    Attributes
    ----------
    name : str
        Unique within the instrument, such as ``feed``.
    quantity : Quantity
    role : Role
        ``other`` until the user assigns one.
    scale : float, channel unit per raw unit
        The profile's own scale times the sensor's factor; 1 when the meter already reads in V
        or A.
    offset : float, unit of the channel
        Subtracted after scaling; equals ``zero.offset`` where a zero has been taken.
    interval_s : float, seconds
        Time from one reading to the next.
    integration_s : float, seconds
        Time over which the meter averages for one reading; 0 when unknown or instantaneous.
    accuracy : Accuracy or None
        None when nobody has stated it (an imported trace); verdicts then say so. Where there are
        ranges, that of the widest.
    ranges : tuple of Range
        From the narrowest to the widest; empty when the profile has none.
    sensor : Sensor
        What stands between the circuit and the meter.
    zero : Zero or None
        None when none has been taken.
    """

    name: str
    quantity: Quantity
    role: Role = Role.OTHER
    scale: float = 1.0
    offset: float = 0.0
    interval_s: float = 0.1
    integration_s: float = 0.0
    accuracy: Accuracy | None = None
    ranges: tuple[Range, ...] = ()
    sensor: Sensor = field(default_factory=Sensor)
    zero: Zero | None = None

    def accuracy_at(self, value: float) -> Accuracy | None:
        """Give the accuracy statement that holds at ``value``, in the channel's unit.

        That of the narrowest range which shows it, as a meter does that chooses its range
        itself; beyond the widest, that of the widest.
        """
        for measuring_range in self.ranges:
            if abs(value) <= measuring_range.top:
                return measuring_range.accuracy
        return self.accuracy

    @property
    def top(self) -> float | None:
        """Up to what size meter and sensor are stated, in the channel's unit; None: not known."""
        tops = [one.top for one in self.ranges[-1:]]
        if self.sensor.top is not None:
            tops.append(self.sensor.top)
        return min(tops, default=None)

    @property
    def unit(self) -> str:
        """Symbol of the unit of every value in this channel."""
        return self.quantity.unit
