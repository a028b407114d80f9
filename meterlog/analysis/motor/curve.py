"""Curve: the current of a permanent-magnet motor with a fan on it, over its voltage."""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

Column = NDArray[np.float64]


@dataclass(frozen=True, slots=True)
class Curve:
    """V = I R + Vb + E with I = I0 + c E^2, E being the motor's own voltage.

    Attributes
    ----------
    resistance_ohm : float, ohms
        R: winding, brushes' ohmic part and leads up to where the voltage is read.
    no_load_a : float, amperes
        I0: what friction takes.
    fan_constant_a_v2 : float, amperes per volt squared
        c: what the air takes, which is a torque proportional to the square of the speed.
    brush_v : float, volts
        Vb, held fixed.

    Source
    ------
    Motor: A. E. Fitzgerald, C. Kingsley, S. D. Umans, "Electric Machinery", 6th ed., chapter 7
    (armature voltage, torque and current proportional); fan: torque with the square and power
    with the cube of the speed, ISO 5801 / AMCA 201 (fan laws). From memory.
    """

    resistance_ohm: float
    no_load_a: float
    fan_constant_a_v2: float
    brush_v: float = 0.0

    def amps_of(self, own_v: Column) -> Column:
        """Give the currents that belong to own voltages E, shape (n,), volts."""
        return self.no_load_a + self.fan_constant_a_v2 * own_v**2

    def volts_of(self, own_v: Column) -> Column:
        """Give the motor voltages that belong to own voltages E, shape (n,), volts."""
        return self.resistance_ohm * self.amps_of(own_v) + self.brush_v + own_v

    def own_v(self, volts: float) -> float:
        """Give E at a motor voltage; 0 where the motor would stand still.

        NaN where a resistance below zero leaves no such current.
        """
        over = volts - self.brush_v - self.resistance_ohm * self.no_load_a
        if over <= 0.0:
            return 0.0
        inside = 1.0 + 4.0 * self.resistance_ohm * self.fan_constant_a_v2 * over
        # The root of a quadratic in the form that survives a resistance of nearly nothing.
        return 2.0 * over / (1.0 + math.sqrt(inside)) if inside >= 0.0 else math.nan

    def amps_at(self, volts: float) -> float:
        """Give the current at a motor voltage, amperes."""
        return self.no_load_a + self.fan_constant_a_v2 * self.own_v(volts) ** 2

    def slope(self, volts: float) -> float:
        """Give dI/dV at a motor voltage, amperes per volt."""
        own = self.own_v(volts)
        pull = 2.0 * self.fan_constant_a_v2 * own
        return pull / (1.0 + self.resistance_ohm * pull)

    def exponent(self, volts: float) -> float:
        """Give the local exponent p in I ~ V^p."""
        return self.slope(volts) * volts / self.amps_at(volts)

    def by_figures(self, volts: float) -> tuple[float, float, float, float]:
        """Give what the current at ``volts`` changes for one unit of R, I0, c and Vb."""
        own, amps, slope = self.own_v(volts), self.amps_at(volts), self.slope(volts)
        share = 1.0 - slope * self.resistance_ohm
        return (-slope * amps, share, share * own * own, -slope)
