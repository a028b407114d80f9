"""Channel: one quantity read by one instrument, and the part it plays in the fan circuit."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum


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
class Accuracy:
    """The maker's accuracy statement: ±(percent of reading + digits x resolution + floor).

    Attributes
    ----------
    percent_of_reading : float, percent
    digits : float, counts of the last digit
    resolution : float, unit of the channel per count
    floor : float, unit of the channel
        A fixed part, such as a clamp's zero uncertainty.
    basis : str
        Where the figures come from (data sheet and page, or "typical, from memory").
    """

    percent_of_reading: float
    digits: float
    resolution: float
    floor: float = 0.0
    basis: str = ""

    def half_width(self, value: float) -> float:
        """Give the half-width of the accuracy interval at ``value``, in the channel's unit.

        Source
        ------
        The form ±(% of reading + digits) of hand-held meters; used as the half-width of a
        rectangular distribution as in JCGM 100:2008, 4.3.7.
        """
        return (
            abs(value) * self.percent_of_reading / 100.0
            + self.digits * self.resolution
            + self.floor
        )


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
        Clamp, shunt or divider; 1 when the meter already reads in V or A.
    offset : float, unit of the channel
        Zero taken with nothing connected; subtracted after scaling.
    interval_s : float, seconds
        Time from one reading to the next.
    integration_s : float, seconds
        Time over which the meter averages for one reading; 0 when unknown or instantaneous.
    accuracy : Accuracy or None
        None when nobody has stated it (an imported trace); verdicts then say so.
    """

    name: str
    quantity: Quantity
    role: Role = Role.OTHER
    scale: float = 1.0
    offset: float = 0.0
    interval_s: float = 0.1
    integration_s: float = 0.0
    accuracy: Accuracy | None = None

    @property
    def unit(self) -> str:
        """Symbol of the unit of every value in this channel."""
        return self.quantity.unit
