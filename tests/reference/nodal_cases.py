"""Which circuits the solver is compared on, and how: every fault, every state, jumpers, a meter."""

from dataclasses import dataclass

import numpy as np
from ngspice_netlist import Case, Netlist

from meterlog.circuit.figures import healthy_figures, set_fault, set_state
from meterlog.circuit.network import Network
from meterlog.model import CircuitState, ElementKind

METER_OHM = 10e6
WITHIN_V = 1e-3


def faults_of(circuit, severities=3):
    """Give none, and every fault with severities from its least to its most in equal ratios."""
    found = [None]
    for element in circuit.elements:
        for fault in element.faults:
            steps = [None]
            if fault.least is not None:
                steps = [float(each) for each in np.geomspace(fault.least, fault.most, severities)]
            found += [(element.name, fault.mode, each) for each in steps]
    return found


def jumpers_of(circuit):
    """Give the jumpers that a workshop fits: past the relay, to the motor from both sides."""
    motor = next(e for e in circuit.elements if e.kind is ElementKind.MOTOR)
    contact = next(e for e in circuit.elements if e.kind is ElementKind.CONTACT)
    battery = next(e for e in circuit.elements if e.kind is ElementKind.BATTERY)
    pairs = [contact.nodes, (battery.nodes[0], motor.nodes[0]), (motor.nodes[1], battery.nodes[1])]
    return [tuple(sorted(pair)) for pair in pairs]


def states_of(circuit):
    """Give every state: keys, speeds, each plug off, each fuse out, each jumper."""
    found = [
        CircuitState(key, speed) for key in ("off", "on", "engine") for speed in circuit.speeds
    ]
    for speed in circuit.speeds:
        found += [CircuitState("on", speed, unplugged=frozenset([p])) for p in circuit.plugs]
        found += [CircuitState("on", speed, pulled=frozenset([f])) for f in circuit.fuses]
        found += [CircuitState("on", speed, jumpers=frozenset([j])) for j in jumpers_of(circuit)]
    return found


def metered(circuit, fault, state):
    """Give a case a node, a meter at that node."""
    return [Case(fault, state, (node.name, METER_OHM)) for node in circuit.nodes[1:]]


def all_cases(circuit):
    """Give every fault in every state, and with a meter at every node on high."""
    found = []
    high = CircuitState("on", circuit.speeds[-1])
    for fault in faults_of(circuit):
        found += [Case(fault, state) for state in states_of(circuit)]
        found += metered(circuit, fault, high)
    return found


def drawn_cases(circuit, count, seed):
    """Give every fault once at least, in states drawn by chance, some with a meter."""
    rng = np.random.default_rng(seed)
    faults, states = faults_of(circuit), states_of(circuit)
    order = [*range(len(faults)), *rng.integers(0, len(faults), max(count - len(faults), 0))]
    found = []
    for at in order:
        meter = None
        if rng.random() < 0.25:
            meter = (circuit.nodes[1 + int(rng.integers(len(circuit.nodes) - 1))].name, METER_OHM)
        found.append(Case(faults[at], states[int(rng.integers(len(states)))], meter))
    return found


def solved(circuit, cases):
    """Solve cases by the program's own solver: node voltages and which of them settled."""
    network = Network(circuit)
    healthy = healthy_figures(circuit, network.index)
    volts = np.zeros((len(cases), len(circuit.nodes)))
    settled = np.zeros(len(cases), dtype=bool)
    groups = {}
    for at, case in enumerate(cases):
        groups.setdefault(case.state.jumpers, []).append(at)
    for jumpers, rows in groups.items():
        figures = np.repeat(healthy[None], len(rows), axis=0)
        loads = [np.zeros(len(rows), np.intp), np.zeros(len(rows), np.intp), np.ones(len(rows))]
        for row, at in enumerate(rows):
            case = cases[at]
            if case.fault:
                name, mode, severity = case.fault
                element = circuit.element(name)
                set_fault(network.index, figures, element, mode, severity, np.array([row]))
            if case.meter:
                loads[0][row] = network.node_column[case.meter[0]]
                loads[2][row] = case.meter[1]
            figures[row] = set_state(circuit, network.index, figures[row], case.state)
        found = network.solve(figures, jumpers, tuple(loads))
        volts[rows], settled[rows] = found.volts, found.settled
    return volts, settled


@dataclass(frozen=True)
class Compared:
    """Cases solved by both."""

    cases: list
    settled: np.ndarray
    """By the program's own solver, bool[cases]."""
    guessed: np.ndarray
    """ngspice found its point only from the solver's own as initial guess, bool[cases]."""
    own: np.ndarray
    theirs: np.ndarray
    """Node voltages, float64[cases, nodes]; NaN where ngspice found none."""

    @property
    def apart(self):
        """Largest difference of a node, float64[cases], volts."""
        return np.abs(self.own - self.theirs).max(axis=1)

    def told(self, circuit, rows):
        """Say what differs in some cases."""
        lines = []
        for at in rows:
            node = int(np.nanargmax(np.abs(self.own[at] - self.theirs[at])))
            case = self.cases[at]
            lines.append(
                f"{circuit.name} {case.fault} {case.state} meter {case.meter}: "
                f"{circuit.nodes[node].name} {self.own[at, node]:.6f} V, "
                f"ngspice {self.theirs[at, node]:.6f} V"
            )
        return "\n".join(lines)


def compared(circuit, cases, folder):
    """Solve cases by both."""
    own, settled = solved(circuit, cases)
    netlist = Netlist(circuit, jumpers_of(circuit))
    theirs, guessed = netlist.solve(cases, folder, own)
    # An end that ngspice told and that carries no current through a transistor that is driven is
    # none: whether it holds the solver's own for one settles it.
    apart = np.flatnonzero(np.abs(own - theirs).max(axis=1) > WITHIN_V)
    for at in apart:
        again, _ = netlist.solve([cases[at]], folder, own[at : at + 1], first=True)
        if not np.isnan(again[0]).any():
            theirs[at], guessed[at] = again[0], True
    return Compared(cases, settled, guessed, own, theirs)
