"""Scenario: a fan circuit, its fault, and what is done to it."""

from __future__ import annotations

import dataclasses
from dataclasses import dataclass

import numpy as np
from numpy.random import Generator

from meterlog.instruments.virtual.fan_circuit import CircuitFigures
from meterlog.instruments.virtual.script import Happening

INVENTED = "Simulated. Vehicle, part and all figures are invented."
"""Stands with every scenario."""


@dataclass(frozen=True, slots=True)
class Scenario:
    """One case of the virtual bench.

    Attributes
    ----------
    name : str
    title : str
        In a few words.
    description : str
        What is wrong and what shall be seen.
    vehicle, part : str
        Invented.
    circuit : CircuitFigures
    script : tuple of Happening
        In time order; begins with speed 0 at 0 s.
    seconds : float, seconds
        How long it takes.
    """

    name: str
    title: str
    description: str
    vehicle: str
    part: str
    circuit: CircuitFigures
    script: tuple[Happening, ...]
    seconds: float


def dice(name: str, seed: int, use: int) -> Generator:
    """Give the random numbers of one use within one run; same arguments, same numbers."""
    return np.random.default_rng([seed, use, *name.encode()])


def specimen(scenario: Scenario, seed: int) -> CircuitFigures:
    """Give the circuit of one specimen: no two motors of a type are quite alike.

    Resistance, friction and air load vary by ±2 %, the motor constant by ±1 %.
    """
    rng = dice(scenario.name, seed, 1)
    motor = scenario.circuit.motor
    varied = dataclasses.replace(
        motor,
        resistance_ohm=motor.resistance_ohm * rng.uniform(0.98, 1.02),
        constant=motor.constant * rng.uniform(0.99, 1.01),
        friction_n_m=motor.friction_n_m * rng.uniform(0.98, 1.02),
        air_n_m_s2=motor.air_n_m_s2 * rng.uniform(0.98, 1.02),
    )
    return dataclasses.replace(scenario.circuit, motor=varied)
