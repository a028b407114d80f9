"""SpeedFigures: what one run draws at each speed, with all that brings it to another voltage."""

from __future__ import annotations

import math
from dataclasses import dataclass

from meterlog.analysis.budgets import budget, combine
from meterlog.analysis.compare.side import Side, comparable_steps
from meterlog.analysis.motor.points import current_of, doubt_words, voltage_of
from meterlog.analysis.motor.reference import FAR, curve_of, exponent_at
from meterlog.model import Budget, MotorFit, Source, Step

_NUDGE = 0.01


@dataclass(frozen=True, slots=True)
class SpeedFigures:
    """Steady current of one run at one commanded speed.

    Attributes
    ----------
    speed : int
    steady_n : int
        Readings.
    current_a, current_u_a : float, amperes
        By size, as measured; combined standard uncertainty, 0 where none is known.
    motor_v, motor_u_v : float or None, volts
        None where the motor voltage is not known or to be doubted.
    exponent, exponent_u : float or None
        p in I ~ V^p at this voltage, with its standard uncertainty.
    lacking : str
        Why it can stand in no baseline; empty where it can.
    """

    speed: int
    steady_n: int
    current_a: float
    current_u_a: float
    motor_v: float | None
    motor_u_v: float | None
    exponent: float | None
    exponent_u: float | None
    lacking: str


def speed_figures(side: Side) -> tuple[SpeedFigures, ...]:
    """Give the figures of each commanded speed above 0, lowest first.

    Of several stretches at one speed that with most steady readings stands for it; those of which
    the current is to be doubted are left out, as a comparison does.
    """
    steps = comparable_steps(side, by_current=False)
    return tuple(_figures(speed, steps[speed], side) for speed in sorted(steps))


def _figures(speed: int, step: Step, side: Side) -> SpeedFigures:
    amps = current_of(step)
    assert amps is not None  # noqa: S101 - comparable steps have a current
    volts = None if side.no_voltage else voltage_of(step)
    if volts is not None and (volts.value <= 0.0 or doubt_words(step, side.review.doubts)):
        volts = None
    power, power_u = (None, None) if volts is None else _exponent(volts.value, side)
    return SpeedFigures(
        speed,
        step.steady_n,
        amps.value,
        amps.combined_u,
        None if volts is None else volts.value,
        None if volts is None else volts.combined_u,
        power,
        power_u,
        _lacking(step, amps, volts),
    )


def _lacking(step: Step, amps: Budget, volts: Budget | None) -> str:
    if step.found:
        return "no speed was commanded"
    if not amps.sources or amps.lacking:
        return "the uncertainty of the current is not known"
    if volts is None:
        return "the motor voltage is not known"
    if not volts.sources or volts.lacking:
        return "the uncertainty of the motor voltage is not known"
    return ""


def _exponent(volts: float, side: Side) -> tuple[float, float]:
    """Give p and its standard uncertainty: the usual one, or that of the motor's own curve.

    Source
    ------
    :func:`meterlog.analysis.motor.reference.exponent_at`, rectangular. Of a curve: the slope of
    its logarithm; propagation from its figures: JCGM 100:2008, 5.1.2 and 5.2.2.
    """
    usual, half = exponent_at(volts / side.limits.compared_at_v)
    usual_u = half / math.sqrt(3.0)
    own = _own_exponent(volts, side.fit)
    return (usual, usual_u) if own is None or own[1] > usual_u else own


def _own_exponent(volts: float, fit: MotorFit) -> tuple[float, float] | None:
    curve = curve_of(None if fit.refusal else fit)
    if curve is None:
        return None
    low_v, high_v = volts * (1.0 - _NUDGE), volts * (1.0 + _NUDGE)
    low, high = curve.amps_at(low_v), curve.amps_at(high_v)
    if low <= 0.0 or high <= 0.0:
        return None
    span = math.log(high_v / low_v)
    power = math.log(high / low) / span
    slopes = [
        (up / high - down / low) / span
        for up, down in zip(curve.by_figures(high_v), curve.by_figures(low_v), strict=True)
    ][: len(fit.figures)]
    parts = list(zip(fit.figures, slopes, strict=True))
    return power, combine("exponent", power, "", parts).combined_u


def brought(figures: SpeedFigures, reference_v: float, key: str = "") -> Budget | None:
    """Give the current as it would be at another motor voltage.

    Parameters
    ----------
    figures : SpeedFigures
    reference_v : float, volts
    key : str
        Of the error of measuring; equal keys are one error in all budgets.

    Returns
    -------
    Budget or None
        None where the voltage is not known or farther away than a current can be brought.

    Source
    ------
    I (V/V0)^p; propagation: JCGM 100:2008, 5.1.2.
    """
    volts, power = figures.motor_v, figures.exponent
    if volts is None or power is None or abs(reference_v - volts) > FAR * reference_v:
        return None
    amps = figures.current_a * (reference_v / volts) ** power
    by_volts = -power * amps / volts
    by_power = amps * math.log(reference_v / volts)
    lines = [
        Source("current as read", figures.current_u_a, "A", amps / figures.current_a, key=key),
        Source("motor voltage as read", figures.motor_u_v or 0.0, "V", by_volts),
        Source("exponent of current over voltage", figures.exponent_u or 0.0, "", by_power),
    ]
    name = f"motor current at speed {figures.speed} and {reference_v:.3g} V"
    return budget(name, amps, "A", [one for one in lines if one.standard_u > 0.0])
