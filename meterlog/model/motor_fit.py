"""MotorFit: the motor's figures out of the voltages and currents of the steps."""

from __future__ import annotations

from dataclasses import dataclass

from meterlog.model.budget import Budget
from meterlog.model.finding import Verdict


@dataclass(frozen=True, slots=True)
class MotorPoint:
    """One step as the fit saw it.

    Attributes
    ----------
    speed : int or None
    volts, amps : float
        Steady means, motor voltage and current.
    residual_a : float or None, amperes
        Measured less fitted; None where nothing was fitted.
    """

    speed: int | None
    volts: float
    amps: float
    residual_a: float | None


@dataclass(frozen=True, slots=True)
class MotorFit:
    """V = I R + Vb + E, I = I0 + c E^2, fitted to the steps.

    Attributes
    ----------
    refusal : str
        Why the points can't determine it, in a sentence; empty where they do. Then all figures
        are None.
    points : tuple of MotorPoint
    resistance_ohm, no_load_a, fan_constant_a_v2 : float or None
        R, I0 and c.
    covariance : tuple of tuple of float
        3 by 3, in the order R, I0, c; empty with a refusal.
    brush_v : float, volts
        Vb: voltage over the brushes, held fixed.
    chi2_per_degree : float or None
        Weighted residuals; None where there are as many points as figures.
    reference_v : float, volts
        Motor voltage to which the current is brought.
    at_reference : Budget or None
        Current at that voltage.
    stall_a : Budget or None
        Current of a held rotor at that voltage.
    exponent : float or None
        Local exponent p in I ~ V^p at the reference voltage.
    left_out : tuple of str
        Steps that could not be used, and why, a sentence each.
    figures : tuple of Budget
        R (ohm), I0 (A) and c (A/V²), each with its lines; empty with a refusal. Lines with one key
        are one error in all three.
    """

    refusal: str
    points: tuple[MotorPoint, ...]
    resistance_ohm: float | None = None
    no_load_a: float | None = None
    fan_constant_a_v2: float | None = None
    covariance: tuple[tuple[float, ...], ...] = ()
    brush_v: float = 0.0
    chi2_per_degree: float | None = None
    reference_v: float = 0.0
    at_reference: Budget | None = None
    stall_a: Budget | None = None
    exponent: float | None = None
    left_out: tuple[str, ...] = ()
    figures: tuple[Budget, ...] = ()


@dataclass(frozen=True, slots=True)
class ControllerHeat:
    """What a linear controller turns into heat at one speed.

    Attributes
    ----------
    speed : int or None
    drop_v : float, volts
        Across the controller: feed less motor voltage (return against ground).
    heat_w : Budget
    motor_w : Budget
        What goes into the motor.
    efficiency : float
        Motor's part of both.
    limit_w : float or None, watts
    verdict : Verdict or None
        None without a limit.
    probability : float or None
        That the true heat is within the limit.
    """

    speed: int | None
    drop_v: float
    heat_w: Budget
    motor_w: Budget
    efficiency: float
    limit_w: float | None
    verdict: Verdict | None
    probability: float | None
