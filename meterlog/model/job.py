"""Job: whose vehicle, which part, why."""

from __future__ import annotations

from dataclasses import dataclass, field

from meterlog.model.conditions import Conditions


@dataclass(frozen=True, slots=True)
class Job:
    """What the work order says. Nothing is mandatory; empty means not stated.

    Attributes
    ----------
    work_order, vehicle, odometer, complaint, part, technician, conditions : str
        ``complaint`` in the customer's own words; ``part`` the number and serial of the motor
        measured; ``conditions`` key, engine, filter, flap and ambient in free words.
    measured_under : Conditions
        The same, in words that can be compared.
    """

    work_order: str = ""
    vehicle: str = ""
    odometer: str = ""
    complaint: str = ""
    part: str = ""
    technician: str = ""
    conditions: str = ""
    measured_under: Conditions = field(default_factory=Conditions)
