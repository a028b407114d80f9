"""Drawn case: a circuit with one fault, and who looks for it with which meter, all from a seed.

Nothing but the seed and the profile decides it. Healthy figures are spread evenly over their
tolerance, severities and how well what is open insulates evenly in their logarithm: neither is how
the program spreads them.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from enum import Enum

import numpy as np

from meterlog.model import Circuit
from meterlog.model.circuit import ElementFault

ACCURACIES = ((0.3, 0.02), (0.5, 0.02), (0.8, 0.03), (1.0, 0.05))
"""Percent of the reading and volts, as data sheets state them. From memory."""
CLAMPS = ((1.5, 0.2), (2.0, 0.3), (3.0, 0.5))
"""Percent of the reading and amperes. From memory."""

OPEN_DECADES = (7.5, 10.0)
"""Logarithm of the ohms of what is open: from damp to dry. From memory."""


class Draw(Enum):
    """How faults are drawn."""

    ODDS = "by the profile's odds"
    EVEN = "each fault as often"


@dataclass(frozen=True)
class Hand:
    """Who looks for the fault, and with what.

    ``gain_v`` and ``gain_a`` are the errors of the meter and of the clamp at 1, ``zero_v`` and
    ``zero_a`` those at 0, all the same in all of a run: the gain within the percent that is stated
    in ``accuracy`` and ``clamp``, the zero within half of the V or A stated there. The other half
    is left for what changes from one reading to the next.
    """

    accuracy: tuple[float, float]
    clamp: tuple[float, float]
    gain_v: float
    gain_a: float
    zero_v: float
    zero_a: float
    slow_below: float
    dead_below: float
    hears: float
    watches: bool


@dataclass(frozen=True)
class DrawnCase:
    """One circuit with one fault.

    ``factors`` is by what each healthy figure with a tolerance is multiplied; ``open_ohm`` what all
    has that is open; ``duty`` how often a fault that comes and goes is there; ``dice`` the seed of
    what happens by chance on the way.
    """

    seed: int
    circuit: Circuit
    element: str
    unit: str
    fault: ElementFault
    severity: float | None
    comes_and_goes: bool
    duty: float
    answers_tap: bool
    stiff: bool
    factors: dict[tuple[str, str], float]
    open_ohm: float
    hand: Hand
    dice: int

    @property
    def words(self) -> str:
        """What is wrong, for people."""
        how = "" if self.severity is None else f" {self.severity:.3g}"
        wanders = f" comes and goes ({self.duty:.0%})" if self.comes_and_goes else ""
        return f"{self.element} {self.fault.mode.value}{how}{wanders} -> {self.unit}"


def draw_case(circuits: Sequence[Circuit], seed: int, draw: Draw) -> DrawnCase:
    """Draw the case of a seed; the circuits take turns."""
    circuit = circuits[seed % len(circuits)]
    # A stream of its own for each way of drawing.
    dice = np.random.default_rng([seed, list(Draw).index(draw), 5])
    faults = [(element, fault) for element in circuit.elements for fault in element.faults]
    odds = np.array([fault.odds if draw is Draw.ODDS else 1.0 for _, fault in faults])
    element, fault = faults[int(dice.choice(len(faults), p=odds / odds.sum()))]
    severity = None
    if fault.least is not None and fault.most is not None:
        severity = math.exp(dice.uniform(math.log(fault.least), math.log(fault.most)))
    factors = {
        (one.name, figure): 1.0 + part * dice.uniform(-1.0, 1.0)
        for one in circuit.elements
        for figure, part in one.tolerance.items()
    }
    return DrawnCase(
        seed=seed,
        circuit=circuit,
        element=element.name,
        unit=element.unit,
        fault=fault,
        severity=severity,
        comes_and_goes=bool(dice.random() < fault.comes_and_goes),
        duty=dice.uniform(0.25, 0.9),
        answers_tap=bool(dice.random() < fault.answers_tap),
        stiff=bool(dice.random() < fault.stiff),
        factors=factors,
        open_ohm=10.0 ** dice.uniform(*OPEN_DECADES),
        hand=_hand(dice),
        dice=int(dice.integers(2**62)),
    )


def _hand(dice: np.random.Generator) -> Hand:
    accuracy = ACCURACIES[int(dice.integers(len(ACCURACIES)))]
    clamp = CLAMPS[int(dice.integers(len(CLAMPS)))]
    return Hand(
        accuracy=accuracy,
        clamp=clamp,
        gain_v=accuracy[0] / 100.0 * dice.uniform(-1.0, 1.0),
        gain_a=clamp[0] / 100.0 * dice.uniform(-1.0, 1.0),
        zero_v=accuracy[1] / 2.0 * dice.uniform(-1.0, 1.0),
        zero_a=clamp[1] / 2.0 * dice.uniform(-1.0, 1.0),
        slow_below=dice.uniform(0.65, 0.85),
        dead_below=dice.uniform(0.01, 0.04),
        hears=dice.uniform(0.85, 0.99),
        watches=bool(dice.random() < 0.5),
    )
