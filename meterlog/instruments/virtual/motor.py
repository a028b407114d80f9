"""Motor: a permanent-magnet brushed motor with a fan on its shaft, stepped through time."""

from __future__ import annotations

import math
from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class MotorFigures:
    """What a motor and its fan are made of, in SI units.

    Attributes
    ----------
    resistance_ohm, inductance_h : float
        Armature.
    constant : float, V·s/rad and N·m/A
        Voltage and torque constant, one number in SI units.
    inertia_kg_m2 : float
    brush_drop_v : float, volts
        Both brushes together, while current flows.
    friction_n_m : float
        Dry friction while turning.
    breakaway : float, ratio
        Friction at rest as a multiple of that while turning.
    viscous_n_m_s, air_n_m_s2 : float
        Load per rad/s, and per (rad/s)² as a fan has it.
    ripple : float, ratio
        Commutation ripple of the constant, half of peak to peak.
    ripples_per_turn : int
    """

    resistance_ohm: float
    inductance_h: float
    constant: float
    inertia_kg_m2: float
    brush_drop_v: float = 0.0
    friction_n_m: float = 0.0
    breakaway: float = 1.0
    viscous_n_m_s: float = 0.0
    air_n_m_s2: float = 0.0
    ripple: float = 0.0
    ripples_per_turn: int = 12


class Motor:
    """One motor in motion.

    Each step is split symmetrically: half a step of the shaft, a whole one of the armature (exact
    for a constant speed), half a step of the shaft. Friction and air load are those at the
    beginning of each half step.

    Parameters
    ----------
    figures : MotorFigures
    angle_rad : float
        Where the shaft rests at the start.

    Source
    ------
    V = I R + L dI/dt + K w and J dw/dt = K I - load: any textbook of electrical machines; checked
    by ``tests/reference/test_motor_model.py`` against published figures and another solver.
    """

    def __init__(self, figures: MotorFigures, angle_rad: float = 0.0) -> None:
        self.figures = figures
        self.current_a = 0.0
        self.speed_rad_s = 0.0
        self.angle_rad = angle_rad
        self.emf_v = 0.0

    def drive(
        self, volts: float, series_ohm: float, step_s: float, ceiling_a: float = math.inf
    ) -> None:
        """Go on by one step on a source of ``volts`` behind ``series_ohm``.

        Parameters
        ----------
        volts : float, volts
        series_ohm : float, ohms
            Everything in the loop outside the motor.
        step_s : float, seconds
        ceiling_a : float, amperes
            The most the source lets through. It never takes current back.
        """
        figures = self.figures
        constant = self._constant()
        half_s = 0.5 * step_s
        speed = self._turn(self.speed_rad_s, constant * self.current_a, half_s)
        ohm = figures.resistance_ohm + series_ohm
        settled = (volts - constant * speed - figures.brush_drop_v) / ohm
        if figures.inductance_h > 0.0:
            left = math.exp(-step_s * ohm / figures.inductance_h)
            current = settled + (self.current_a - settled) * left
        else:
            current = settled
        # Comparisons, not min and max: this runs thousands of times a second.
        if current < 0.0:
            current = 0.0
        elif current > ceiling_a:
            current = ceiling_a
        self.current_a = current
        self.angle_rad += speed * step_s
        self.speed_rad_s = speed = self._turn(speed, constant * current, half_s)
        self.emf_v = constant * speed

    def coast(self, step_s: float) -> None:
        """Go on by one step with the circuit open."""
        self.current_a = 0.0
        if self.speed_rad_s <= 0.0:
            self.emf_v = 0.0
            return
        self.angle_rad += self.speed_rad_s * step_s
        self.speed_rad_s = self._turn(self.speed_rad_s, 0.0, step_s)
        self.emf_v = self._constant() * self.speed_rad_s

    def _constant(self) -> float:
        figures = self.figures
        if figures.ripple == 0.0:
            return figures.constant
        wave = math.cos(figures.ripples_per_turn * self.angle_rad)
        return figures.constant * (1.0 + figures.ripple * wave)

    def _turn(self, speed: float, torque: float, step_s: float) -> float:
        figures = self.figures
        if speed <= 0.0 and torque <= figures.friction_n_m * figures.breakaway:
            return 0.0
        load = figures.friction_n_m + speed * (figures.viscous_n_m_s + figures.air_n_m_s2 * speed)
        speed += (torque - load) / figures.inertia_kg_m2 * step_s
        return speed if speed > 0.0 else 0.0
