"""Fitting: the motor's resistance, no-load current and fan load out of the steps, or a refusal."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import replace

import numpy as np

from meterlog.analysis.budgets import budget
from meterlog.analysis.judged import Judged
from meterlog.analysis.motor.curve import Curve
from meterlog.analysis.motor.points import Point, finite, points, speed_of, voltage_unknown
from meterlog.analysis.motor.reference import at_voltage, stalled
from meterlog.analysis.motor.solving import Solved, solve
from meterlog.analysis.motor.spread import (
    Array,
    Errors,
    brush_error,
    errors_of,
    lines_of,
    scatter_beyond,
    scatter_errors,
    weights_u,
)
from meterlog.model import Budget, MotorFit, MotorPoint

LEAST_POINTS = 3
LEAST_SPAN = 1.5
"""The highest motor voltage over the lowest, at least: between them the curve must bend."""

APART = 0.03
"""Voltages nearer than this part of each other count as one."""

LARGEST_U = 0.75
"""A figure whose expanded uncertainty is a larger part of itself is no figure."""

WORST_SCATTER = 0.05
"""Points that lie further off, as a part of their currents, are not of one curve."""

_FIGURES = (("winding resistance", "ohm"), ("no-load current", "A"), ("fan constant", "A/V²"))


def motor_fit(judged: Judged) -> MotorFit:
    """Fit V = I R + Vb + E, I = I0 + c E^2 to the steps of a recording.

    Parameters
    ----------
    judged : Judged
        Steps with faults or doubts in them are left out, and told in ``left_out``.

    Returns
    -------
    MotorFit
        With a refusal, and no figures, where the points can't determine them: fewer than three
        distinct voltages, voltages too near each other, the motor voltage not known, a pulsed
        controller, a figure that is not above zero or whose expanded uncertainty exceeds three
        quarters of it, or points that lie off any such curve.

    Source
    ------
    The fit: :func:`meterlog.analysis.motor.solving.solve`. Its uncertainty: the law of
    propagation through the fit's own sensitivities (JCGM 100:2008, 5.1.2 and 5.2.2), so that a
    gain error which all points share is not averaged away. The bounds: common practice, no source.
    """
    used, left = points(judged)
    used = tuple(one for one in used if finite(one.volts) and finite(one.amps))
    reference_v = judged.limits.compared_at_v
    brush_v = judged.limits.brush_v
    why = _unfit(judged, used)
    if why:
        return _refused(why, used, left, reference_v, brush_v)
    u_volts, u_amps = weights_u([p.volts for p in used]), weights_u([p.amps for p in used])
    volts, amps = _columns(used)
    solved = solve(volts, amps, u_volts, u_amps, brush_v)
    if solved is None:
        why = "the points leave the motor's figures open: any of many curves would go through them"
        return _refused(why, used, left, reference_v, brush_v)
    chi2, beyond = scatter_beyond(solved.residuals_a, solved.leftover, errors_of(used), amps)
    errors = _errors(used, brush_v, beyond)
    figures = _figures(solved, errors, used)
    why = _unbelievable(figures, beyond)
    if why:
        return _refused(why, used, left, reference_v, brush_v)
    return _told(solved, figures, errors, used, left, (chi2, reference_v))


def _columns(used: Sequence[Point]) -> tuple[Array, Array]:
    return np.array([p.volts.value for p in used]), np.array([p.amps.value for p in used])


def _unfit(judged: Judged, used: Sequence[Point]) -> str:
    """Give why there is no use in fitting; empty where there is."""
    if judged.limits.controller.kind == "pulsed":
        return (
            "the controller is pulsed: means of a switched voltage and current do not lie on a"
            " motor's curve"
        )
    unknown = voltage_unknown(judged, used)
    if unknown:
        return unknown
    count = _distinct([one.volts.value for one in used])
    if count < LEAST_POINTS:
        return (
            f"{count} of at least {LEAST_POINTS} different motor voltages with steady, sound"
            f" running; run it at more speeds"
        )
    low, high = min(p.volts.value for p in used), max(p.volts.value for p in used)
    if high < LEAST_SPAN * low:
        return (
            f"the motor voltages lie too near each other ({low:.3g} V to {high:.3g} V; the highest"
            f" must be {LEAST_SPAN:g} times the lowest); run it at its lowest and highest speed"
        )
    return ""


def _distinct(volts: Sequence[float]) -> int:
    """Count voltages that differ."""
    count, last = 0, 0.0
    for one in sorted(volts):
        if one > last * (1.0 + APART):
            count, last = count + 1, one
    return count


def _errors(used: Sequence[Point], brush_v: float, beyond: float) -> Errors:
    errors = errors_of(used)
    if brush_v > 0.0:
        source, column = brush_error(len(used), brush_v)
        errors = errors.plus([source], column)
    if beyond > 0.0:
        errors = errors.plus(*scatter_errors(used, beyond))
    return errors


def _figures(solved: Solved, errors: Errors, used: Sequence[Point]) -> tuple[Budget, ...]:
    curve = solved.curve
    values = (curve.resistance_ohm, curve.no_load_a, curve.fan_constant_a_v2)
    lacking = "; ".join(
        dict.fromkeys(b.lacking for p in used for b in (p.volts, p.amps) if b.lacking)
    )
    made = errors.of(solved.influence)
    return tuple(
        budget(name, value, unit, lines_of(errors, row, unit), lacking)
        for (name, unit), value, row in zip(_FIGURES, values, made, strict=True)
    )


def _unbelievable(figures: Sequence[Budget], beyond: float) -> str:
    if beyond > WORST_SCATTER:
        return (
            f"the points lie {100.0 * beyond:.0f} % off any curve of one motor with a fan:"
            f" something else changed between the speeds (air, contact, drag)"
        )
    resistance, no_load, constant = figures
    for figure in (resistance, constant):
        if figure.value <= 0.0:
            return f"the points would need a {figure.name} below zero"
        if figure.expanded > LARGEST_U * figure.value:
            return (
                f"the {figure.name} would be {figure.value:.2g} ± {figure.expanded:.2g}"
                f" {figure.unit}: not determined; more speeds or better meters would settle it"
            )
    if no_load.value + no_load.expanded < 0.0:
        return "the points would need a no-load current below zero beyond its uncertainty"
    return ""


def _refused(
    why: str, used: Sequence[Point], left: tuple[str, ...], reference_v: float, brush_v: float
) -> MotorFit:
    return MotorFit(
        refusal=f"No motor figures: {why}.",
        points=_seen(used, None),
        brush_v=brush_v,
        reference_v=reference_v,
        left_out=left,
    )


def _seen(used: Sequence[Point], curve: Curve | None) -> tuple[MotorPoint, ...]:
    return tuple(
        MotorPoint(
            speed_of(one.step),
            one.volts.value,
            one.amps.value,
            None if curve is None else one.amps.value - curve.amps_at(one.volts.value),
        )
        for one in used
    )


def _told(
    solved: Solved,
    figures: tuple[Budget, ...],
    errors: Errors,
    used: Sequence[Point],
    left: tuple[str, ...],
    rest: tuple[float | None, float],
) -> MotorFit:
    chi2, reference_v = rest
    curve = solved.curve
    made = errors.of(solved.influence)
    covariance = made @ made.T
    fit = MotorFit(
        refusal="",
        points=_seen(used, curve),
        resistance_ohm=curve.resistance_ohm,
        no_load_a=curve.no_load_a,
        fan_constant_a_v2=curve.fan_constant_a_v2,
        covariance=tuple(tuple(float(one) for one in row) for row in covariance),
        brush_v=curve.brush_v,
        chi2_per_degree=None if chi2 is None or not math.isfinite(chi2) else chi2,
        reference_v=reference_v,
        exponent=curve.exponent(reference_v),
        left_out=left,
        figures=figures,
    )
    return _with_references(fit)


def _with_references(fit: MotorFit) -> MotorFit:
    name = f"motor current at {fit.reference_v:g} V"
    return replace(fit, at_reference=at_voltage(fit, fit.reference_v, name), stall_a=stalled(fit))
