"""Circuit: battery, wires, speed controller and ground around the motor, in five forms.

For each commanded speed it says along which line the motor's current falls with its own voltage
(``Line``), and what the two motor terminals then are. Plain resistive arithmetic (Kirchhoff).
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

import numpy as np
from fan import Fan

DIODE_V = 0.7


class Form(StrEnum):
    """Where and what the controller is."""

    LOW_LINEAR = "linear, ground side"
    LOW_RESISTORS = "resistors, ground side"
    LOW_PULSED = "pulsed, ground side"
    HIGH_RESISTORS = "resistors, feed side"
    HIGH_LINEAR = "linear, feed side"


class State(StrEnum):
    """What the circuit does."""

    DRIVEN = "driven"
    FREE = "not driven"
    MOTOR_OPEN = "motor open"
    FEED_OPEN = "feed open"
    GROUND_OPEN = "ground open"


@dataclass(frozen=True)
class Line:
    """i = (volts - motor's own voltage) / ohms; ``duty`` of a pulsed feed, 1 for a steady one."""

    volts: float
    ohms: float
    duty: float = 1.0


@dataclass(frozen=True)
class Circuit:
    """One circuit.

    ``settings``: of each speed from 1 on, the motor voltage (linear), the series ohms (resistors)
    or the duty (pulsed); the last is full. ``hertz``: of the pulses.
    """

    form: Form
    fan: Fan
    source_ohm: float
    feed_ohm: float
    ground_ohm: float
    settings: tuple[float, ...]
    hertz: float = 0.0

    @property
    def pulsed(self) -> bool:
        """Tell whether the feed is chopped."""
        return self.form is Form.LOW_PULSED

    @property
    def low_side(self) -> bool:
        """Tell whether the controller is between motor and ground."""
        return self.form in (Form.LOW_LINEAR, Form.LOW_RESISTORS, Form.LOW_PULSED)

    @property
    def wires(self) -> float:
        """All resistance outside motor and controller, ohms."""
        return self.source_ohm + self.feed_ohm + self.ground_ohm

    def line(self, speed: int, battery: float, warmth: float) -> Line:
        """Give the line of ``speed``; ``warmth`` multiplies the armature's resistance."""
        armature = self.fan.armature * warmth
        setting = self.settings[speed - 1]
        full = speed == len(self.settings)
        if self.form in (Form.LOW_RESISTORS, Form.HIGH_RESISTORS):
            return Line(battery - self.fan.brush, armature + self.wires + setting)
        if self.pulsed:
            duty = 1.0 if full else setting
            return Line(battery - self.fan.brush, armature + self.wires, duty)
        if full or setting > battery - 1.5:
            return Line(battery - self.fan.brush, armature + self.wires + 0.02)
        return Line(setting - self.fan.brush, armature)

    def terminals(
        self,
        state: State,
        speed: int,
        battery: float,
        amps: np.ndarray,
        motor: np.ndarray,
        own: np.ndarray,
    ) -> tuple[np.ndarray, np.ndarray]:
        """Give feed and return against ground, volts.

        ``amps`` through the motor, ``motor`` volts across it when driven, ``own`` its own voltage.
        """
        nothing = np.zeros_like(own)
        if state is State.DRIVEN:
            if self.low_side:
                feed = battery - amps * (self.source_ohm + self.feed_ohm)
                return feed, np.maximum(feed - motor, amps * self.ground_ohm)
            back = amps * self.ground_ohm
            return back + motor, back
        if state is State.FEED_OPEN:
            return own, nothing + 0.005
        supply = nothing + battery
        if self.form is Form.HIGH_LINEAR and 0 < speed < len(self.settings):
            supply = np.minimum(supply, nothing + self.settings[speed - 1])
        if state is State.MOTOR_OPEN:
            return supply, nothing + 0.02
        if state is State.GROUND_OPEN or self.low_side:
            return supply, supply - own
        return own, nothing


def draw_circuit(rng: np.random.Generator, fan: Fan) -> Circuit:
    """Draw a circuit with four speeds."""
    form = rng.choice(list(Form), p=(0.35, 0.2, 0.2, 0.15, 0.1))
    wires = {
        "source_ohm": rng.uniform(0.008, 0.03),
        "feed_ohm": rng.uniform(0.015, 0.04),
        "ground_ohm": rng.uniform(0.005, 0.02),
    }
    if form in (Form.LOW_RESISTORS, Form.HIGH_RESISTORS):
        scale = rng.uniform(0.85, 1.2) * fan.armature / 0.16
        settings = (*(scale * ohm for ohm in (1.4, 0.75, 0.3)), 0.0)
    elif form is Form.LOW_PULSED:
        settings = (*np.sort(rng.uniform((0.42, 0.58, 0.75), (0.5, 0.68, 0.88))).tolist(), 1.0)
    else:
        settings = (*(np.array((4.6, 6.8, 9.2)) + rng.uniform(-0.5, 0.5, 3)).tolist(), 12.0)
    slow = rng.random() < 0.4
    hertz = rng.uniform(150.0, 400.0) if slow else rng.uniform(8e3, 22e3)
    return Circuit(Form(form), fan, **wires, settings=settings, hertz=float(hertz))
