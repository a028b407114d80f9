"""Motor: its resistance, no-load current and fan load, and the heat in what drives it."""

from meterlog.analysis.motor.across import OtherVolts
from meterlog.analysis.motor.controller_heat import controller_heat
from meterlog.analysis.motor.fitting import motor_fit
from meterlog.analysis.motor.reference import (
    brought_to,
    brought_to_reference,
    judged_current,
)

__all__ = [
    "OtherVolts",
    "brought_to",
    "brought_to_reference",
    "controller_heat",
    "judged_current",
    "motor_fit",
]
