"""Reference: currents brought to one motor voltage, so that they can be set side by side."""

from __future__ import annotations

import math

from meterlog.analysis.budgets import budget, combine
from meterlog.analysis.motor.curve import Curve
from meterlog.analysis.motor.points import Point, point_of
from meterlog.analysis.motor.spread import BRUSH_KEY, BRUSH_SHARE
from meterlog.model import Budget, Limits, MotorFit, Shape, Source, Step

EXPONENT = 1.7
"""A cabin fan's current goes about with this power of its voltage, near full voltage."""

EXPONENT_HALF = 0.4
"""Half-width of what that exponent may be. Calculated over motors with a winding drop of 5 to 30 %
and friction of 3 to 30 % of the full current, brushes 0.6 to 2 V: nine in ten lie within."""

_LOW = 0.7
_CENTRE_FALL, _HALF_RISE = 1.2, 2.0

KIND_KEY = "motor:exponent of the kind"
"""Two motors of a kind have this part of the exponent's error in common."""

FAR = 0.25
"""A current is brought no further than by this part of its voltage: beyond it is another speed."""


def curve_of(fit: MotorFit | None) -> Curve | None:
    """Give the curve of a fit; None of a refusal and of nothing."""
    if fit is None or fit.resistance_ohm is None:
        return None
    return Curve(
        fit.resistance_ohm, fit.no_load_a or 0.0, fit.fan_constant_a_v2 or 0.0, fit.brush_v
    )


def _brush(fit: MotorFit, sensitivity: float) -> list[Source]:
    if fit.brush_v <= 0.0:
        return []
    return [
        Source(
            "voltage over the brushes",
            BRUSH_SHARE * fit.brush_v / math.sqrt(3.0),
            "V",
            sensitivity,
            Shape.RECTANGULAR,
            key=BRUSH_KEY,
        )
    ]


def at_voltage(fit: MotorFit, volts: float, name: str) -> Budget | None:
    """Give the fitted current at a motor voltage; None of a refusal."""
    curve = curve_of(fit)
    if curve is None:
        return None
    *by_figures, by_brush = curve.by_figures(volts)
    parts = list(zip(fit.figures, by_figures, strict=True))
    whole = combine(name, curve.amps_at(volts), "A", parts, _brush(fit, by_brush))
    return gathered(whole)


def stalled(fit: MotorFit) -> Budget | None:
    """Give the current of a held rotor at the reference voltage: extrapolated, not measured."""
    if fit.resistance_ohm is None:
        return None
    amps = (fit.reference_v - fit.brush_v) / fit.resistance_ohm
    name = f"current of a held rotor at {fit.reference_v:g} V, extrapolated"
    parts = [(fit.figures[0], -amps / fit.resistance_ohm)]
    return gathered(combine(name, amps, "A", parts, _brush(fit, -1.0 / fit.resistance_ohm)))


def brought_to_reference(step: Step, fit: MotorFit | None, limits: Limits) -> Budget | None:
    """Give a step's current as it would be at the limits' reference voltage.

    Parameters
    ----------
    step : Step
        With its budgets.
    fit : MotorFit or None
        Of the same recording. A refusal or None: the usual exponent is taken.
    limits : Limits
        For ``compared_at_v``.

    Returns
    -------
    Budget or None
        None where voltage or current is missing, or the step's voltage lies more than a quarter
        away from the reference: that is another speed, and its current as measured stands.
    """
    return brought_to(step, fit, limits.compared_at_v, limits)


def judged_current(step: Step, fit: MotorFit | None, limits: Limits) -> tuple[Budget | None, str]:
    """Give the current by which a step is judged, and what was done to it, as a clause.

    Parameters
    ----------
    step : Step
    fit : MotorFit or None
    limits : Limits
        Only where ``at_reference`` is true anything is done.

    Returns
    -------
    tuple of Budget or None, and str
        The current at the reference voltage; the one measured, with a clause that says so, where
        it can't be brought there; None where the step has no budget.
    """
    if not limits.at_reference:
        return step.current, ""
    volts = limits.compared_at_v
    brought = brought_to_reference(step, fit, limits)
    if brought is None:
        return step.current, f"as measured, not at {volts:g} V: its motor voltage is not near that"
    how = "the motor's own curve" if curve_of(fit) is not None else "the usual exponent"
    return brought, f"brought to {volts:g} V by {how}"


def brought_to(step: Step, fit: MotorFit | None, volts: float, limits: Limits) -> Budget | None:
    """Give a step's current as it would be at ``volts``; see :func:`brought_to_reference`.

    Source
    ------
    By the fit: the measured current times the ratio of the fitted ones. Without: I (V/V0)^p with
    p as :func:`exponent_at` has it, rectangular. Propagation: JCGM 100:2008, 5.1.2 and 5.2.2.
    """
    point = point_of(step)
    if point is None or point.volts.value <= 0.0:
        return None
    if abs(volts - point.volts.value) > FAR * volts:
        return None
    curve = curve_of(fit)
    if curve is None or fit is None or curve.amps_at(point.volts.value) <= 0.0:
        return _by_exponent(point, volts, limits)
    return _by_curve(point, fit, curve, volts)


def exponent_at(share: float) -> tuple[float, float]:
    """Give the usual exponent p in I ~ V^p, and its half-width.

    Parameters
    ----------
    share : float
        Motor voltage as a part of the reference voltage. Low down the exponent falls, as friction
        and brushes weigh more, and is less well known.

    Source
    ------
    Fan laws with winding drop, friction and brush voltage, over the motors of
    :data:`EXPONENT_HALF`: calculated, no source; near full voltage trade practice says 1.7.
    """
    below = max(_LOW - share, 0.0)
    return EXPONENT - _CENTRE_FALL * below, EXPONENT_HALF + _HALF_RISE * below


def _by_exponent(point: Point, volts: float, limits: Limits) -> Budget:
    ratio = volts / point.volts.value
    power, half = exponent_at(math.sqrt(volts * point.volts.value) / limits.compared_at_v)
    factor = ratio**power
    amps = point.amps.value * factor
    # Half of its variance is the kind's, and shared by two motors of one kind; half the motor's.
    halves = [
        Source(
            f"exponent of current over voltage, {of}",
            half / math.sqrt(6.0),
            "",
            amps * math.log(ratio),
            Shape.RECTANGULAR,
            key=key,
            basis=f"{power:.2g} ± {half:.2g}, calculated",
        )
        for of, key in (("of the kind", KIND_KEY), ("of this motor", "exponent of this motor"))
    ]
    parts = [(point.amps, factor), (point.volts, -power * amps / point.volts.value)]
    name = f"{point.amps.name}, brought to {volts:g} V"
    return gathered(combine(name, amps, "A", parts, halves))


def _by_curve(point: Point, fit: MotorFit, curve: Curve, volts: float) -> Budget:
    here, there = curve.amps_at(point.volts.value), curve.amps_at(volts)
    amps = point.amps.value * there / here
    relative = [
        amps * (at_there / there - at_here / here)
        for at_there, at_here in zip(
            curve.by_figures(volts), curve.by_figures(point.volts.value), strict=True
        )
    ]
    parts = [
        (point.amps, there / here),
        (point.volts, -amps * curve.slope(point.volts.value) / here),
        *zip(fit.figures, relative[:3], strict=True),
    ]
    name = f"{point.amps.name}, brought to {volts:g} V"
    return gathered(combine(name, amps, "A", parts, _brush(fit, relative[3])))


def gathered(value: Budget) -> Budget:
    """Give the same budget with one line for each error, in the unit of the value."""
    totals: dict[str, float] = {}
    firsts: dict[str, Source] = {}
    loose = [one for one in value.sources if not one.key]
    for source in value.sources:
        if source.key:
            totals[source.key] = totals.get(source.key, 0.0) + source.contribution
            firsts.setdefault(source.key, source)
    lines = tuple(
        Source(
            one.name,
            abs(totals[key]),
            value.unit,
            math.copysign(1.0, totals[key]),
            one.shape,
            one.degrees,
            key,
            one.basis,
        )
        for key, one in firsts.items()
        if totals[key]
    )
    return budget(value.name, value.value, value.unit, (*lines, *loose), value.lacking)
