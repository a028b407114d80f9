"""VoltsBeyond: voltages that can't be on such a circuit, so that their scale or range is wrong.

A decimal point left out, a divider that was not entered or a wrong range makes 126 V of 12.6 V.
What is made of it, a drop of a hundred volts or a kilowatt of heat, is no fault of the vehicle. Nor
is what limits of 12 V make of a vehicle of 24 V, whose motors draw half as much for the same work.
"""

from __future__ import annotations

from collections.abc import Sequence

from meterlog.model import Doubt, DoubtKind, Limits, Role, Step
from meterlog.model.nominal_volts import is_of_24_v, most_volts

_THOUSAND = 1000.0
"""From here on four digits would be written as a power of ten."""


def beyond_doubts(steps: Sequence[Step], limits: Limits) -> list[Doubt]:
    """Tell which channels read more than the circuit can have.

    Parameters
    ----------
    steps : sequence of Step
        With what was read elsewhere in the circuit.
    limits : Limits
        ``nominal_v`` says what circuit it is.

    Returns
    -------
    list of Doubt
        One for each role, over the steps in which it read so much.
    """
    told = []
    truck = _is_of_24_v(steps, limits.nominal_v)
    for role in (Role.BATTERY, Role.MOTOR_FEED, Role.MOTOR_RETURN, Role.COMMAND):
        found = [
            (step, volts)
            for step in steps
            if (volts := _volts(step, role)) is not None
            and abs(volts) > most_volts(limits.nominal_v)
        ]
        if found:
            told.append(_doubt(role, found, limits.nominal_v, truck=truck))
    return told


def _is_of_24_v(steps: Sequence[Step], nominal_v: float) -> bool:
    """Tell whether all that was read of the supply is that of a 24 V vehicle."""
    supply = [
        volts
        for step in steps
        for role in (Role.BATTERY, Role.MOTOR_FEED)
        if (volts := _volts(step, role)) is not None
    ]
    return bool(supply) and all(is_of_24_v(volts, nominal_v) for volts in supply)


def _volts(step: Step, role: Role) -> float | None:
    return {
        Role.BATTERY: step.steady_battery_v,
        Role.MOTOR_FEED: step.steady_feed_v,
        Role.MOTOR_RETURN: step.steady_back_v,
        Role.COMMAND: step.steady_command_v,
    }[role]


def _doubt(
    role: Role, found: Sequence[tuple[Step, float]], nominal_v: float, *, truck: bool
) -> Doubt:
    start_ns, end_ns = found[0][0].start_ns, found[-1][0].end_ns
    most = max((volts for _, volts in found), key=abs)
    if truck and is_of_24_v(most, nominal_v):
        text = (
            f"{role.value} read {most:.4g} V ({start_ns / 1e9:.1f} s to {end_ns / 1e9:.1f} s): a"
            f" {nominal_v:g} V circuit has at most {most_volts(nominal_v):g} V. Is it a 24 V"
            f" vehicle? Then judge it by limits of its own. If not, check the decimal point, the"
            f" meter's range and the scale that was entered. Until then nothing is proven of the"
            f" vehicle."
        )
        return Doubt(DoubtKind.NOMINAL, text, start_ns, end_ns, role=role)
    size = f"{most:.4g}" if abs(most) < _THOUSAND else f"{most:.0f}"
    text = (
        f"{role.value} read {size} V ({start_ns / 1e9:.1f} s to {end_ns / 1e9:.1f} s): a"
        f" {nominal_v:g} V circuit has at most {most_volts(nominal_v):g} V. Check the decimal"
        f" point, the meter's range and the scale that was entered. Until then nothing that rests"
        f" on it says anything of the vehicle."
    )
    return Doubt(DoubtKind.BEYOND, text, start_ns, end_ns, role=role)
