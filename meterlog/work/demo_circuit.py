"""The demo's check of the circuit: an invented technician who follows what is proposed.

The readings are those of a circuit profile with the scenario's fault in it, solved whole, as a
usual 10 MΩ meter would show them, with seeded errors within its accuracy. Nothing is measured.
"""

from __future__ import annotations

import math
import random
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path
from types import MappingProxyType

import numpy as np

from meterlog.circuit.figures import healthy_figures, set_fault, set_state
from meterlog.circuit.network import Network
from meterlog.evidence.circuit_files import JudgedCheck
from meterlog.model import (
    Circuit,
    CircuitState,
    ElementKind,
    FaultMode,
    Job,
    Origin,
    PointKind,
    ProbePoint,
    Sign,
)
from meterlog.model.circuit_check import METER_OHM
from meterlog.model.stated_reading import usual_accuracy
from meterlog.profile import load_circuit
from meterlog.work.circuit_checks import isolation_of, judged_check
from meterlog.work.circuit_log import CircuitLog

CIRCUIT = "low-side-linear-12v"
_MOST_TESTS = 16
_SOURCE = "virtual bench (simulated)"
_STANDS_V = 0.3
"""Back-EMF below which the fan counts as standing."""


@dataclass(frozen=True, slots=True)
class DemoFault:
    """The fault of a scenario in the words of the circuit."""

    element: str
    mode: FaultMode
    severity: float | None = None


FAULTS: Mapping[str, DemoFault] = MappingProxyType(
    {
        "dead-spot": DemoFault("motor", FaultMode.OPEN),
        "tap-test": DemoFault("motor", FaultMode.OPEN),
        "seized": DemoFault("motor", FaultMode.SEIZED),
        "bad-feed-connector": DemoFault("motor-feed-pin", FaultMode.RESISTIVE, 0.15),
        "feed-lost": DemoFault("relay-to-motor", FaultMode.OPEN),
        "ground-lost": DemoFault("controller-ground-joint", FaultMode.OPEN),
    }
)
"""By scenario; the others have nothing that a circuit check could find."""


class _Bench:
    """The circuit with the fault there, seen and measured."""

    def __init__(self, circuit: Circuit, fault: DemoFault, seed: int) -> None:
        self._circuit, self._fault = circuit, fault
        self._network = Network(circuit)
        self._dice = random.Random(seed)  # noqa: S311 - a simulation, repeatable by its seed
        self._figures = healthy_figures(circuit, self._network.index)[None].copy()
        element = circuit.element(fault.element)
        set_fault(self._network.index, self._figures, element, fault.mode, fault.severity)
        self._motor = next(e for e in circuit.elements if e.kind is ElementKind.MOTOR)

    def _volts(
        self, state: CircuitState, meter: tuple[str, str] | None = None
    ) -> tuple[dict[str, float], bool]:
        index = self._network.index
        figures = set_state(self._circuit, index, self._figures, state)
        loads = None
        if meter is not None:
            first, second = (np.array([self._network.node_column[node]]) for node in meter)
            loads = (first, second, np.array([METER_OHM]))
        solved = self._network.solve(figures, state.jumpers, loads)
        columns = self._network.node_column.items()
        return {name: float(solved.volts[0, at]) for name, at in columns}, bool(
            solved.closed[0].any()
        )

    def _motor_now(self, state: CircuitState) -> tuple[float, float]:
        """Give current and back-EMF of the motor."""
        volts, _ = self._volts(state)
        first, second = (volts[node] for node in self._motor.nodes)
        plain = self._motor.figures
        if self._fault.element == self._motor.name and self._fault.mode is FaultMode.OPEN:
            return 0.0, 0.0
        across = first - second
        if self._fault.element == self._motor.name and self._fault.mode is FaultMode.SEIZED:
            return across / plain["ohm"], 0.0
        over = max(across - plain["no_load_a"] * plain["ohm"], 0.0)
        emf = (
            2.0 * over / (1.0 + math.sqrt(1.0 + 4.0 * plain["fan_a_per_v2"] * plain["ohm"] * over))
        )
        return (across - emf) / plain["ohm"], emf

    def read(self, point: ProbePoint, state: CircuitState) -> float:
        """Give what the meter shows, to its last digit."""
        if point.kind is PointKind.CURRENT:
            value, clamp = self._motor_now(state)[0], True
        else:
            reference = self._circuit.nodes[0].name
            meter = (point.nodes[0], point.nodes[1] if len(point.nodes) > 1 else reference)
            volts, _ = self._volts(state, meter)
            value, clamp = volts[meter[0]] - volts[meter[1]], False
        half = math.sqrt(3.0) * usual_accuracy(clamp=clamp).standard_u(value)[0]
        return round(value + self._dice.uniform(-0.5, 0.5) * half, 1 if clamp else 2)

    def see(self, sign: Sign, state: CircuitState) -> str:
        """Give what is seen, heard or felt."""
        stands = self._motor_now(state)[1] < _STANDS_V
        seized = self._fault.mode is FaultMode.SEIZED
        opens = self._fault.element == self._motor.name and self._fault.mode is FaultMode.OPEN
        match sign:
            case Sign.FAN:
                return "dead" if stands else "runs"
            case Sign.TAP:
                return "starts" if opens else "nothing"
            case Sign.WHEEL:
                return "stiff" if seized else "free"
            case Sign.CLICK:
                return "heard" if self._volts(state)[1] else "none"


def check_circuit(scenario: str, folder: Path, job: Job, seed: int) -> JudgedCheck | None:
    """Let the invented technician check the circuit, and keep the check as a recording.

    Parameters
    ----------
    scenario : str
        Of the virtual bench.
    folder : Path
        Absent.
    job : Job
    seed : int

    Returns
    -------
    JudgedCheck or None
        None where the scenario has no fault of the circuit.

    Raises
    ------
    DiskFailed
        If the check can't be kept.
    """
    fault = FAULTS.get(scenario)
    if fault is None:
        return None
    circuit = load_circuit(CIRCUIT)
    bench = _Bench(circuit, fault, seed)
    isolation = isolation_of(circuit)
    log = CircuitLog(lambda: folder, job, Origin.SIMULATED)
    log.choose(circuit)
    high = CircuitState("on", max(circuit.speeds))
    log.sign(Sign.FAN, bench.see(Sign.FAN, high), high)
    for _ in range(_MOST_TESTS):
        check = log.check
        following = None if check is None else isolation.verdict(check).next_test
        if following is None:
            break
        if following.sign is not None:
            log.sign(following.sign, bench.see(following.sign, following.state), following.state)
            continue
        _read(log, bench, circuit.point(following.point), following.state)
    log.close()
    return None if log.check is None else judged_check(log.check)


def _read(log: CircuitLog, bench: _Bench, point: ProbePoint, state: CircuitState) -> None:
    clamp = point.kind is PointKind.CURRENT
    value = bench.read(point, state)
    accuracy = usual_accuracy(clamp=clamp)
    standard_u, shared_u = accuracy.standard_u(value)
    log.read(
        point.name,
        value,
        state,
        standard_u,
        shared_u=shared_u,
        meter_ohm=math.inf if clamp else METER_OHM,
        complaint=True,
        source=_SOURCE,
        basis=accuracy.basis,
    )
    log.opened(point.place)
