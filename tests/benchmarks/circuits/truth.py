"""Truth: what stands at every node of a drawn case, solved whole each time.

Nothing here is linearised: every reading is a solution of the network with the drawn figures and
with the meter itself as a load. The motor's back-EMF is worked out here anew.
"""

from __future__ import annotations

import math
from dataclasses import dataclass, replace

import numpy as np
from drawn_case import DrawnCase

from meterlog.circuit.figures import Floats, healthy_figures, set_fault, set_state
from meterlog.circuit.network import Network
from meterlog.model import CircuitState
from meterlog.model.circuit import ElementKind, FaultMode, PointKind, ProbePoint
from meterlog.model.element_kinds import OPEN_OHM


class NoSolution(Exception):
    """The network of a drawn case has no solution that can be trusted."""


@dataclass(frozen=True)
class Stand:
    """One state solved: volts by node, contacts closed, and figures by (element, figure)."""

    volts: dict[str, float]
    closed: dict[str, bool]
    figures: dict[tuple[str, str], float]


class Truth:
    """What is so in a drawn case."""

    def __init__(self, case: DrawnCase) -> None:
        self.case = case
        self._network = network = Network(case.circuit, case.open_ohm)
        healthy = healthy_figures(case.circuit, network.index)
        for key, factor in case.factors.items():
            if key[1] != "drive_v":  # that one is set by the state
                healthy[network.index[key]] *= factor
        faulty = healthy[None].copy()
        element = case.circuit.element(case.element)
        set_fault(network.index, faulty, element, case.fault.mode, case.severity)
        self._emf: dict[tuple[CircuitState, bool], float] = {}
        self._figures = {False: healthy[None], True: faulty}

    def stand(
        self,
        state: CircuitState,
        *,
        there: bool,
        meter: tuple[str, str, float] | None = None,
    ) -> Stand:
        """Solve one state, with a meter (from node, to node, ohms) or without."""
        index = self._network.index
        figures = set_state(self.case.circuit, index, self._figures[there], state)
        for (name, figure), factor in self.case.factors.items():
            if figure == "drive_v" and figures[0, index[name, "loop_gain"]] > 0.0:
                figures[0, index[name, figure]] *= factor
        figures[figures == OPEN_OHM] = self.case.open_ohm
        solved = self._network.solve(figures, state.jumpers, self._loads(meter))
        if not solved.settled[0]:
            raise NoSolution(f"{self.case.circuit.name}, {self.case.words}, {state}")
        return Stand(
            {name: float(solved.volts[0, at]) for name, at in self._network.node_column.items()},
            {
                contact.name: bool(solved.closed[0, at])
                for at, contact in enumerate(self._network.contacts)
            },
            {key: float(figures[0, at]) for key, at in index.columns.items()},
        )

    def _loads(
        self, meter: tuple[str, str, float] | None
    ) -> tuple[np.ndarray, np.ndarray, Floats] | None:
        if meter is None:
            return None
        ends = self._network.columns(meter[:2])
        return np.array([ends[0]]), np.array([ends[1]]), np.array([meter[2]])

    def at_point(
        self, point: ProbePoint, state: CircuitState, meter_ohm: float, *, there: bool
    ) -> float:
        """Give what a meter without error shows at a test point."""
        if point.kind is PointKind.CURRENT:
            return self._through(point.element, self.stand(state, there=there))
        reference = self.case.circuit.nodes[0].name
        first, second = point.nodes if len(point.nodes) > 1 else (point.nodes[0], reference)
        volts = self.stand(state, there=there, meter=(first, second, meter_ohm)).volts
        return volts[first] - volts[second]

    def between(self, first: str, second: str, state: CircuitState, *, there: bool) -> float:
        """Give the voltage between any two nodes, no meter attached."""
        volts = self.stand(state, there=there).volts
        return volts[first] - volts[second]

    def _through(self, name: str, stand: Stand) -> float:
        element = self.case.circuit.element(name)
        across = stand.volts[element.nodes[0]] - stand.volts[element.nodes[1]]
        if element.kind is ElementKind.MOTOR:
            return math.copysign(_turning(across, stand.figures, name)[1], across)
        return across / stand.figures[name, "ohm"]

    def emf(self, state: CircuitState, *, there: bool) -> float:
        """Give the motor's back-EMF, with which its speed goes."""
        if (state, there) not in self._emf:
            motor = next(e for e in self.case.circuit.elements if e.kind is ElementKind.MOTOR)
            stand = self.stand(state, there=there)
            across = stand.volts[motor.nodes[0]] - stand.volts[motor.nodes[1]]
            self._emf[state, there] = _turning(across, stand.figures, motor.name)[0]
        return self._emf[state, there]

    def fan_called(self, state: CircuitState, dice: np.random.Generator, *, there: bool) -> str:
        """Give what a person says of the fan, mistakes aside."""
        highest = max(self.case.circuit.speeds)
        turns, should = self.emf(state, there=there), self.emf(state, there=False)
        full = self.emf(CircuitState("on", highest), there=False)
        hand = self.case.hand
        if turns < hand.dead_below * full:
            return "dead"
        asked = should >= hand.dead_below * full
        if not asked:
            return "full" if turns > 0.85 * full else "runs"
        if turns < hand.slow_below * should:
            return "slow"
        if state.speed == highest:
            return "full" if dice.random() < 0.1 else "runs"
        return "full" if turns > max(0.88 * full, (should + full) / 2.0) else "runs"

    def clicks(self, state: CircuitState, *, there: bool) -> bool:
        """Tell whether an armature moves as this state is switched on, the key off before."""
        before = self.stand(replace(state, key="off"), there=there).closed
        now = self.stand(state, there=there).closed
        welded = set()
        if there and self.case.fault.mode is FaultMode.SHORTED:
            welded = {self.case.element}
        return any(now[name] and not before[name] for name in now if name not in welded)


def _turning(
    across: float, figures: dict[tuple[str, str], float], name: str
) -> tuple[float, float]:
    """Give back-EMF and amperes of a motor: V = I R + E, I = I0 + c E²."""
    ohm, idle = figures[name, "ohm"], figures[name, "no_load_a"]
    fan = figures[name, "fan_a_per_v2"]
    size = abs(across)
    if size <= idle * ohm:
        return 0.0, size / ohm
    roots = np.roots([ohm * fan, 1.0, idle * ohm - size])
    emf = float(max(roots.real))
    return emf, (size - emf) / ohm
