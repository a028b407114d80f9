"""UsualError: what a clamp may be off by of which nobody has said it, and what that turns over.

An uncertainty that lacks the clamp's own error or its zero is a lower bound: a verdict may rest on
what is missing. Neither pass nor fail is told where a clamp of the usual kind could turn it over.
"""

from __future__ import annotations

import math
from dataclasses import replace

from meterlog.analysis.budgets.combining import budget
from meterlog.analysis.budgets.conformity import Conformity, conformity
from meterlog.analysis.stated_channel import StatedChannel
from meterlog.model import (
    Budget,
    DecisionRule,
    Limits,
    Quantity,
    SensorKind,
    Shape,
    Source,
    Verdict,
)

CLAMP_PERCENT, CLAMP_FLOOR_A = 2.0, 0.3
"""Own error of a usual clamp of 10 mV/A (common practice, no source)."""
SHUNT_PERCENT = 1.0
"""Own error of a usual shunt (common practice, no source)."""


def usual_half_width(home: StatedChannel, value: float, *, at_rest: bool) -> float:
    """Give the half-width of the usual error that a budget lacks, amperes; 0 for none.

    Parameters
    ----------
    home : StatedChannel
        Of the motor current.
    value : float, amperes
    at_rest : bool
        What is asked is whether there is any current. There a zero that was taken has measured
        just what the fixed part of the error stands for.

    Source
    ------
    Common practice, no source: 2 % + 0.3 A for a clamp, 1 % for a shunt; by turns of the wire.
    """
    sensor = home.channel.sensor
    percent = 0.0
    if home.own_unsaid:
        percent = CLAMP_PERCENT if sensor.kind is SensorKind.CLAMP else SHUNT_PERCENT
    clamp = sensor.kind is SensorKind.CLAMP or sensor.turns > 1
    open_floor = home.zero_unsaid or (home.own_unsaid and not at_rest)
    floor = CLAMP_FLOOR_A / sensor.turns if clamp and open_floor else 0.0
    return abs(value) * percent / 100.0 + floor


def usual_more(home: StatedChannel, value: float, *, at_rest: bool) -> float:
    """Give :func:`usual_half_width`, and what the meter itself may be off by if nobody has said it.

    Parameters
    ----------
    home : StatedChannel
        Of the motor current.
    value : float, amperes
    at_rest : bool
        What is asked is whether there is any current.

    Source
    ------
    Common practice, no source: a meter that reads amperes errs as a usual clamp does, by turns of
    the wire; of one that reads the volts of a clamp or shunt the digits are next to nothing.
    """
    half = usual_half_width(home, value, at_rest=at_rest)
    if not home.meter_unsaid:
        return half
    return math.hypot(
        half, abs(value) * CLAMP_PERCENT / 100.0 + _meter_floor(home, value, at_rest=at_rest)
    )


def _meter_floor(home: StatedChannel, value: float, *, at_rest: bool) -> float:
    if home.meter_reads is not Quantity.CURRENT:
        return 0.0
    floor = CLAMP_FLOOR_A / home.channel.sensor.turns
    if not at_rest:
        return floor
    # If nothing flows, what is read is the meter's zero, and shows how far it can be off. Only
    # nothing at all can't be anything else, nor can what a zero that was taken leaves.
    return 0.0 if home.zero_taken else min(abs(value), floor)


def cautious(
    value: Budget, bounds: tuple[float | None, float | None], limits: Limits, half_width: float
) -> tuple[Conformity, bool]:
    """Judge a value, but not by what an error of the usual size that it lacks could turn over.

    Parameters
    ----------
    value : Budget
    bounds : tuple of float or None
        The limits, lower and upper.
    limits : Limits
    half_width : float, in the value's unit
        Of the error that is not in; 0 for none.

    Returns
    -------
    tuple of Conformity and bool
        True where the verdict was taken back to ``can't tell``; the probability then is that with
        the usual error in.
    """
    plain = conformity(value, *bounds, limits)
    if half_width <= 0.0 or plain.verdict is Verdict.CANT_TELL:
        return plain, False
    line = Source(
        "usual error of the sensor",
        half_width / math.sqrt(3.0),
        value.unit,
        shape=Shape.RECTANGULAR,
        basis="common practice, no source",
    )
    wider = budget(value.name, value.value, value.unit, (*value.sources, line), value.lacking)
    turned = conformity(wider, *bounds, limits)
    alike = turned.verdict is plain.verdict
    if alike and not _reaches(value, bounds, half_width, plain.verdict):
        return plain, False
    return replace(turned, verdict=Verdict.CANT_TELL, limit=plain.limit), True


def _reaches(
    value: Budget, bounds: tuple[float | None, float | None], half_width: float, verdict: Verdict
) -> bool:
    """Tell whether a limit lies within the half-width of the value."""
    alone = Limits(decision=DecisionRule.SIMPLE)
    shifted = (replace(value, value=value.value + off) for off in (-half_width, half_width))
    return any(conformity(one, *bounds, alone).verdict is not verdict for one in shifted)


def usual_words(home: StatedChannel | None, half_width: float) -> str:
    """Say why a verdict was taken back, as the rest of a sentence."""
    if home is None:
        return ""
    named, missing = home.sensor_unsaid
    if home.meter_unsaid and missing:
        return (
            f"; the meter's accuracy and {named} {missing} are not known, and usual ones"
            f" ({half_width:.2g} A together) could turn the verdict over"
        )
    if home.meter_unsaid:
        return (
            f"; the meter's accuracy is not known, and a usual one ({half_width:.2g} A) could turn"
            f" the verdict over"
        )
    return (
        f"; {named} {missing} is not known, and a usual one ({half_width:.2g} A) could turn"
        f" the verdict over"
    )
