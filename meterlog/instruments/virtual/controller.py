"""Controller: the transistor on the ground side of the motor that sets the fan's speed."""

from __future__ import annotations

import math
from dataclasses import dataclass

from meterlog.instruments.virtual.motor import Motor


@dataclass(frozen=True, slots=True)
class ControllerStep:
    """One speed step.

    Attributes
    ----------
    volts : float, volts
        Across the motor; infinite where the step is "all there is".
    ceiling_a : float, amperes
        The most the transistor passes with the base current of this step.
    """

    volts: float = math.inf
    ceiling_a: float = math.inf


@dataclass(frozen=True, slots=True)
class ControllerFigures:
    """A linear speed controller.

    Attributes
    ----------
    steps : tuple of ControllerStep
        Speed 1 first; the last one is full on.
    on_ohm : float, ohms
        Of the transistor, or the relay across it, when full on.
    release_s : float, seconds
        Time constant with which its drop collapses when no current is left to hold it.
    """

    steps: tuple[ControllerStep, ...]
    on_ohm: float = 0.002
    release_s: float = 0.005


class Controller:
    """Drives the motor at the commanded speed.

    It holds the voltage across the motor as long as the supply gives it, takes no current back
    from a turning motor, and is open at speed 0.
    """

    def __init__(self, figures: ControllerFigures) -> None:
        self.figures = figures
        self.speed = 0
        self.drop_v = 0.0
        self._step = ControllerStep(0.0, 0.0)

    @property
    def speeds(self) -> int:
        """The highest speed."""
        return len(self.figures.steps)

    def command(self, speed: int) -> None:
        """Set the speed.

        Raises
        ------
        ValueError
            If there is no such speed.
        """
        if not 0 <= speed <= self.speeds:
            raise ValueError(f"no speed {speed}: there are 0 to {self.speeds}")
        self.speed = speed
        self._step = self.figures.steps[speed - 1] if speed else ControllerStep(0.0, 0.0)

    def drive(self, motor: Motor, supply_v: float, loop_ohm: float, step_s: float) -> float:
        """Go on by one step with the circuit closed.

        Parameters
        ----------
        motor : Motor
        supply_v : float, volts
        loop_ohm : float, ohms
            All resistance outside motor and controller.
        step_s : float, seconds

        Returns
        -------
        float, volts
            Voltage across the motor at the end of the step.
        """
        step = self._step
        ohm = loop_ohm + self.figures.on_ohm
        full_v = supply_v - motor.current_a * ohm
        if full_v <= step.volts:
            motor.drive(supply_v, ohm, step_s, step.ceiling_a)
        else:
            motor.drive(step.volts, 0.0, step_s, step.ceiling_a)
        current = motor.current_a
        if current <= 0.0:
            across_v = motor.emf_v
        else:
            full_v = supply_v - current * ohm
            across_v = full_v if full_v < step.volts else step.volts
            if current >= step.ceiling_a:
                figures = motor.figures
                held_v = motor.emf_v + figures.brush_drop_v + current * figures.resistance_ohm
                across_v = min(across_v, held_v)
        self.drop_v = supply_v - across_v - current * loop_ohm
        return across_v

    def release(self, step_s: float) -> float:
        """Give the drop across the controller, volts, after one more step without current."""
        self.drop_v *= math.exp(-step_s / self.figures.release_s)
        return self.drop_v
