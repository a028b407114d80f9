"""Fan: the turning of a permanent-magnet motor with an air load, in closed form.

J dw/dt = K i - friction - air w^2, with i = (volts - K w) / ohms while it is driven. With constant
volts and ohms that is a Riccati equation, and without current a simpler one; both have solutions in
closed form, so that the speed at any instant is exact and costs no small steps.

Source: the motor equations of any textbook on direct-current machines; typical constants from the
memory of the trade. Solution checked against numerical integration by the test of this benchmark.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np


@dataclass(frozen=True)
class Fan:
    """Constants of one motor with its wheel, SI units.

    ``emf`` V s/rad; ``armature`` ohm; ``brush`` V over both brushes; ``friction`` N m;
    ``air`` N m s^2/rad^2; ``inertia`` kg m^2; ``henry`` H.
    """

    emf: float
    armature: float
    brush: float
    friction: float
    air: float
    inertia: float
    henry: float

    def driven(self, w0: float, volts: float, ohms: float, t: np.ndarray) -> np.ndarray:
        """Give the speed, rad/s, ``t`` seconds after it was ``w0``; volts exclude the brushes."""
        a = self.air / self.inertia
        b = self.emf**2 / (ohms * self.inertia)
        c = (self.emf * volts / ohms - self.friction) / self.inertia
        if c <= 0.0:
            return self.coasting(w0, t)
        root = math.sqrt(b * b + 4.0 * a * c)
        high, low = (-b + root) / (2.0 * a), (-b - root) / (2.0 * a)
        q = (w0 - high) / (w0 - low) * np.exp(-root * t)
        return (high - low * q) / (1.0 - q)

    def coasting(self, w0: float, t: np.ndarray) -> np.ndarray:
        """Give the speed, rad/s, ``t`` seconds after the current went at speed ``w0``."""
        scale, rate = self._coast()
        angle = np.maximum(math.atan(w0 / scale) - rate * t, 0.0)
        return scale * np.tan(angle)

    def coast_s(self, w0: float, w1: float) -> float:
        """Give how long it coasts from ``w0`` down to ``w1``."""
        scale, rate = self._coast()
        return (math.atan(w0 / scale) - math.atan(max(w1, 0.0) / scale)) / rate

    def _coast(self) -> tuple[float, float]:
        return (
            math.sqrt(self.friction / self.air),
            math.sqrt(self.friction * self.air) / self.inertia,
        )


def draw_fan(rng: np.random.Generator) -> Fan:
    """Draw a motor: small to large, with the wheel that loads it as such motors are loaded."""
    size = rng.uniform(0.6, 1.5)
    emf = 0.026 * rng.uniform(0.85, 1.15)
    armature = 0.16 / size * rng.uniform(0.85, 1.2)
    brush = rng.uniform(0.8, 1.5)
    friction = 0.03 * size * rng.uniform(0.5, 1.5)
    # Loaded so that it draws its rated current at 13 V.
    rated = 15.0 * size * rng.uniform(0.9, 1.1)
    speed = (13.0 - brush - rated * armature) / emf
    air = (emf * rated - friction) / speed**2
    return Fan(
        emf=emf,
        armature=armature,
        brush=brush,
        friction=friction,
        air=air,
        inertia=8e-4 * size * rng.uniform(0.7, 1.3),
        henry=rng.uniform(0.5, 1.5) * 1e-3 * armature,
    )
