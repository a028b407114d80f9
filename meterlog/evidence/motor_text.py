"""MotorText: the motor's figures and the controller's heat as lines for a terminal or a file."""

from __future__ import annotations

import textwrap
from collections.abc import Sequence

from meterlog.analysis import with_uncertainty
from meterlog.model import Budget, ControllerHeat, MotorFit

_WIDTH = 100
_SMALL_CHI2 = 0.01


def motor_lines(fit: MotorFit | None, heat: Sequence[ControllerHeat] = ()) -> list[str]:
    """Give a motor fit and the heat in the controller as plain text.

    Parameters
    ----------
    fit : MotorFit or None
    heat : sequence of ControllerHeat

    Returns
    -------
    list of str
        At most 100 characters each; empty where there is nothing to say.
    """
    return [*_fit(fit), *_heat(heat)]


def _fit(fit: MotorFit | None) -> list[str]:
    if fit is None or (fit.refusal and not fit.points and not fit.left_out):
        return []
    lines = ["motor"]
    if fit.refusal:
        lines += _wrapped(fit.refusal)
    else:
        lines += _figures(fit)
    return lines + [line for words in fit.left_out for line in _wrapped(words)]


def _figures(fit: MotorFit) -> list[str]:
    lines = [f"    {one.name} {_sized(one)}" for one in fit.figures]
    lines[0] += f", brushes taken as {fit.brush_v:g} V"
    if fit.at_reference is not None:
        power = "" if fit.exponent is None else f", there going with V^{fit.exponent:.2f}"
        lines += _wrapped(
            f"{_sized(fit.at_reference)} at {fit.reference_v:g} V across the motor{power}"
        )
    if fit.stall_a is not None:
        lines += _wrapped(
            f"{_sized(fit.stall_a)} with a held rotor at {fit.reference_v:g} V (extrapolated,"
            f" not measured)"
        )
    worst = max(
        (abs(one.residual_a or 0.0) / one.amps for one in fit.points if one.amps), default=0.0
    )
    chi2 = fit.chi2_per_degree
    told = "" if chi2 is None else f", chi-squared per degree of freedom {_chi2_words(chi2)}"
    off = f"the farthest {100.0 * worst:.1f} % off the curve{told}"
    lines += _wrapped(f"{len(fit.points)} points, {off}")
    lacking = fit.figures[0].lacking
    return lines + (_wrapped(f"not in the uncertainties: {lacking}") if lacking else [])


def _chi2_words(chi2: float) -> str:
    """Write it; far below 1 says that most of the uncertainty is one error in all points."""
    if chi2 >= _SMALL_CHI2:
        return f"{chi2:.2g}"
    return (
        f"below {_SMALL_CHI2:g}: the points scatter far less than their uncertainty, most of which"
        f" is an error that all of them have in common"
    )


def _heat(heat: Sequence[ControllerHeat]) -> list[str]:
    if not heat:
        return []
    lines = ["heat in the controller"]
    for one in heat:
        at = "" if one.speed is None else f"speed {one.speed}: "
        judged = ""
        if one.limit_w is not None and one.verdict is not None:
            judged = f", allowed {one.limit_w:g} W: {one.verdict.value}"
        lines += _wrapped(
            f"{at}{_sized(one.heat_w)} ({one.drop_v:.2f} V over it), motor"
            f" {_sized(one.motor_w)}, {100.0 * one.efficiency:.0f} % to the motor{judged}"
        )
    return lines


def _sized(value: Budget) -> str:
    return with_uncertainty(value.value, value.expanded if value.sources else None, value.unit)


def _wrapped(text: str) -> list[str]:
    return textwrap.wrap(text, _WIDTH, initial_indent="    ", subsequent_indent="        ")
