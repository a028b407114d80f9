"""Element currents: what flows through the elements that are no plain resistors, and its slopes.

Transistor: Shichman and Hodges, IEEE J. Solid-State Circuits 3 (1968) 285. Motor: V = I R + E,
I = I0 + c E² (air moved by a fan). Chopper: averaged over a period (Middlebrook and Cuk, PESC
1976). Regulator and control head are behavioural.

Two of them turn from shut to open within a few hundredths of a volt, which makes Newton's method
swing. So each has an inner value, and a law may be held to the tangent at another inner value than
that of the voltages: the limiting of Nagel, SPICE2, ERL-M520, Berkeley 1975, 4.1.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass

import numpy as np

from meterlog.circuit.figures import Floats
from meterlog.model.circuit import ElementKind

_STEEPEST = 60.0
_FIRST_DUTY = 0.01
_SATURATED = 6.0
_LONGEST_LOGIT = 2.0


@dataclass(frozen=True, slots=True)
class Stamp:
    """A current from one terminal of an element to another.

    Attributes
    ----------
    leaves, enters : int
        Terminals: the current leaves the circuit's node at the first and comes out at the second.
    amps : float64[n], amperes
    slopes : tuple of float64[n], amperes per volt
        Of the current with the voltage of each terminal.
    """

    leaves: int
    enters: int
    amps: Floats
    slopes: tuple[Floats, ...]


Figures = Mapping[str, Floats]
"""Of one element, float64[n] each."""
Volts = Sequence[Floats]
"""Of its terminals, float64[n] each."""


@dataclass(frozen=True, slots=True)
class Law:
    """How the current of one kind of element follows from its voltages.

    Attributes
    ----------
    currents : callable
        (figures, volts, held) to a list of Stamp; held is None, or the inner value at whose tangent
        the law is taken.
    inner : callable or None
        (figures, volts) to the inner value, float64[n]; None where there is none.
    limit : callable or None
        (inner value of the turn before, of this turn) to the one to be held to.
    """

    currents: Callable[[Figures, Volts, Floats | None], list[Stamp]]
    inner: Callable[[Figures, Volts], Floats] | None = None
    limit: Callable[[Floats, Floats], Floats] | None = None


def motor(figures: Figures, volts: Volts, _held: Floats | None = None) -> list[Stamp]:
    """Give the current of a fan's motor: V = I R + E, I = I0 + c E²; below I0 R it stands.

    Solved for E: R c E² + E + I0 R - V = 0. A seized one has an I0 that it never reaches.
    """
    ohm, idle, fan = figures["ohm"], figures["no_load_a"], figures["fan_a_per_v2"]
    across = volts[0] - volts[1]
    size, sign = np.abs(across), np.sign(across)
    over = np.maximum(size - idle * ohm, 0.0)
    root = np.sqrt(1.0 + 4.0 * fan * ohm * over)
    emf = 2.0 * over / (1.0 + root)
    turns = over > 0.0
    # (size - emf) / ohm, without the difference of two that may be nearly equal.
    amps = np.where(turns, idle + fan * emf**2, size / ohm)
    by = np.where(turns, (1.0 - 1.0 / root) / ohm, 1.0 / ohm)
    return [Stamp(0, 1, sign * amps, (by, -by))]


def transistor(figures: Figures, volts: Volts, _held: Floats | None = None) -> list[Stamp]:
    """Give the current of a field-effect transistor, drain to source.

    Level 1, no channel length modulation; drain and source change places below 0 V.
    """
    gain, threshold = figures["gain_a_per_v2"], figures["threshold_v"]
    drain, source, gate = volts
    forward = drain >= source
    across = np.abs(drain - source)
    over = np.maximum(gate - np.minimum(drain, source) - threshold, 0.0)
    linear = across < over
    amps = gain * np.where(linear, over * across - across**2 / 2.0, over**2 / 2.0)
    by_across = gain * np.where(linear, over - across, 0.0)
    by_over = gain * np.where(linear, across, over)
    sign = np.where(forward, 1.0, -1.0)
    # across = |d - s|, over = g - min(d, s) - threshold
    by_drain = np.where(forward, by_across, by_across + by_over)
    by_source = np.where(forward, -by_across - by_over, -by_across)
    return [Stamp(0, 1, sign * amps, (by_drain, by_source, sign * by_over))]


def regulator_lack(figures: Figures, volts: Volts) -> Floats:
    """Give what the output lacks of what the command asks for, times ``loop_gain``."""
    _, out, ground, command = volts
    wanted = figures["volts_per_volt"] * (command - ground)
    return figures["loop_gain"] * (wanted - (out - ground))


def regulator(figures: Figures, volts: Volts, held: Floats | None = None) -> list[Stamp]:
    """Give the current of a high-side linear stage.

    A pass element of ``ohm`` that is opened as far as the output lacks what the command asks for
    (``volts_per_volt`` times the command): in proportion to the lack, all open at a lack of
    1 / ``loop_gain`` volts, shut without any. A servo of limited gain, behavioural.
    """
    supply, out = volts[:2]
    part, by_part = _tangent(_clipped, regulator_lack(figures, volts), held)
    across = supply - out
    siemens = 1.0 / figures["ohm"]
    steep = siemens * across * by_part * figures["loop_gain"]
    slopes = (
        siemens * part,
        -siemens * part - steep,
        steep * (1.0 - figures["volts_per_volt"]),
        steep * figures["volts_per_volt"],
    )
    return [Stamp(0, 1, siemens * across * part, slopes)]


def _limited_lack(old: Floats, new: Floats) -> Floats:
    """Come to a halt in the band where the pass element is partly open."""
    crosses = ((old >= 1.0) & (new < 1.0)) | ((old <= 0.0) & (new > 0.0))
    return np.where(crosses, 0.5, new)


def chopper(figures: Figures, volts: Volts, _held: Floats | None = None) -> list[Stamp]:
    """Give the mean currents of a pulse-width stage.

    Duty D by the command, output D times the supply less ``ohm`` times the current, supply current
    D times that of the output. The motor's current flows on through the ground side while the
    switch is off. D rises from 0 at ``start_v`` to 1 at ``full_v``; over its first hundredth the
    stage goes from cut off to conducting.
    """
    supply, out, ground, command = volts
    span = figures["full_v"] - figures["start_v"]
    at = (command - ground - figures["start_v"]) / span
    duty = np.clip(at, 0.0, 1.0)
    by_command = np.where((at > 0.0) & (at < 1.0), 1.0 / span, 0.0)
    siemens = np.minimum(duty / _FIRST_DUTY, 1.0) / figures["ohm"]
    lack = duty * (supply - ground) - (out - ground)
    amps = siemens * lack
    by_duty = siemens * (supply - ground)
    by_duty += np.where(duty < _FIRST_DUTY, lack / (_FIRST_DUTY * figures["ohm"]), 0.0)
    steep = by_command * by_duty
    by = (siemens * duty, -siemens, siemens * (1.0 - duty) - steep, steep)
    turn: tuple[Floats | float, ...] = (0.0, 0.0, -by_command * amps, by_command * amps)
    from_supply = tuple(duty * each + more for each, more in zip(by, turn, strict=True))
    from_ground = tuple((1.0 - duty) * each - more for each, more in zip(by, turn, strict=True))
    return [
        Stamp(0, 1, duty * amps, from_supply),
        Stamp(2, 1, (1.0 - duty) * amps, from_ground),
    ]


def head_excess(figures: Figures, volts: Volts) -> Floats:
    """Give by how much what the head senses is above what it asks for, in units of its logistic."""
    if len(volts) < 3:
        return np.zeros_like(volts[0])
    steep = 4.0 * figures["loop_gain"] / (figures["most_v"] - figures["least_v"])
    excess = steep * (volts[2] - volts[1] - figures["drive_v"])
    return np.where(figures["closed_loop"] > 0.5, excess, 0.0)


def head(figures: Figures, volts: Volts, held: Floats | None = None) -> list[Stamp]:
    """Give the current of the control head's output, a voltage behind ``ohm``.

    Open loop: ``drive_v`` against its ground. With a sense terminal: between ``least_v`` and
    ``most_v``, the higher the more the sensed voltage is above ``drive_v`` (a low-side stage pulls
    the motor's return down), by a logistic of slope ``loop_gain`` in the middle: behavioural.
    """
    out, ground = volts[0], volts[1]
    siemens = 1.0 / figures["ohm"]
    if len(volts) < 3:
        amps = siemens * (out - ground - figures["drive_v"])
        return [Stamp(0, 1, amps, (siemens, -siemens))]
    closed_loop = figures["closed_loop"] > 0.5
    span = figures["most_v"] - figures["least_v"]
    part, by_part = _tangent(_logistic, head_excess(figures, volts), held)
    wanted = np.where(closed_loop, figures["least_v"] + span * part, figures["drive_v"])
    by_sense = np.where(closed_loop, 4.0 * figures["loop_gain"] * by_part, 0.0)
    amps = siemens * (out - ground - wanted)
    return [Stamp(0, 1, amps, (siemens, siemens * (by_sense - 1.0), -siemens * by_sense))]


def _limited_excess(old: Floats, new: Floats) -> Floats:
    """Go through the middle of a logistic in short steps, where it is flat at once."""
    least = np.where(old <= -_SATURATED, new, np.minimum(old, _SATURATED) - _LONGEST_LOGIT)
    most = np.where(old >= _SATURATED, new, np.maximum(old, -_SATURATED) + _LONGEST_LOGIT)
    return np.where(new < old, np.maximum(new, least), np.minimum(new, most))


LAWS: Mapping[ElementKind, Law] = {
    ElementKind.MOTOR: Law(motor),
    ElementKind.TRANSISTOR: Law(transistor),
    ElementKind.REGULATOR: Law(regulator, regulator_lack, _limited_lack),
    ElementKind.CHOPPER: Law(chopper),
    ElementKind.HEAD: Law(head, head_excess, _limited_excess),
}
"""The kinds that are no plain resistors."""

_Curve = Callable[[Floats], tuple[Floats, Floats]]


def _tangent(curve: _Curve, at: Floats, held: Floats | None) -> tuple[Floats, Floats]:
    """Give a curve's value and slope, or those of its tangent at ``held``."""
    if held is None:
        return curve(at)
    value, slope = curve(held)
    return value + slope * (at - held), slope


def _clipped(x: Floats) -> tuple[Floats, Floats]:
    """Give x, at least 0 and at most 1, and its slope."""
    return np.clip(x, 0.0, 1.0), np.where((x > 0.0) & (x < 1.0), 1.0, 0.0)


def _logistic(x: Floats) -> tuple[Floats, Floats]:
    """Give 1 / (1 + exp(-x)) and its slope."""
    part = 1.0 / (1.0 + np.exp(-np.clip(x, -_STEEPEST, _STEEPEST)))
    return part, part * (1.0 - part)
