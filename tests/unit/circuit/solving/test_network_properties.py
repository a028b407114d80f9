"""What has to hold of every circuit, whatever is broken: Kirchhoff, company, order, ohms."""

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from meterlog.circuit.figures import healthy_figures, set_fault, set_state
from meterlog.circuit.network import LEAK_S
from meterlog.model import CircuitState, ElementKind

SAME_V = 1e-5
"""Rows that have to be run down are at rest to a microvolt; a meter shows no less than 1 mV."""
UNBALANCED_A = 5e-8
"""Measured: 1.6e-8 A where 10 A flow, through a shorted stage; 5e-10 A elsewhere."""
CIRCUITS = [
    "high-side-linear-24v",
    "low-side-high-relay-12v",
    "low-side-linear-12v",
    "pulsed-module-24v",
    "resistors-feed-side-12v",
    "resistors-ground-side-24v",
]


def states(circuit):
    return [CircuitState(key, speed) for key in ("off", "on", "engine") for speed in circuit.speeds]


def every_fault(network, state):
    """Figures in a state, row 0 in order; severities at both ends and between."""
    circuit = network.circuit
    healthy = healthy_figures(circuit, network.index)
    rows = [healthy]
    for element in circuit.elements:
        for fault in element.faults:
            steps = [None] if fault.least is None else np.geomspace(fault.least, fault.most, 3)
            for severity in steps:
                row = healthy[None].copy()
                set_fault(network.index, row, element, fault.mode, severity)
                rows.append(row[0])
    return set_state(circuit, network.index, np.array(rows), state)


def unbalanced(network, figures, solved):
    """Current that every node but the reference is left with, summed up element by element."""
    volts = solved.volts
    out = LEAK_S * volts
    siemens = network.siemens(figures, solved.closed)
    for at, (element, _) in enumerate(network.pairs):
        first, second = (network.node_column[node] for node in element.nodes[:2])
        across = volts[:, first] - volts[:, second]
        if element.kind is ElementKind.BATTERY:
            across = across - figures[:, network.index[element.name, "emf_v"]]
        out[:, first] += siemens[at] * across
        out[:, second] -= siemens[at] * across
    for bent in network.bent:
        at_terminals = [volts[:, node] for node in bent.nodes]
        for stamp in bent.law.currents(bent.figures(figures), at_terminals, None):
            out[:, bent.nodes[stamp.leaves]] += stamp.amps
            out[:, bent.nodes[stamp.enters]] -= stamp.amps
    return out[:, 1:]


@pytest.mark.parametrize("name", CIRCUITS)
@pytest.mark.parametrize("speed", [0, 1, 3])
def test_the_currents_at_every_node_sum_up_to_nothing(shipped, name, speed):
    network = shipped(name)
    figures = every_fault(network, CircuitState("on", speed))
    solved = network.solve(figures)
    assert solved.settled.all()
    assert np.abs(unbalanced(network, figures, solved)).max() < UNBALANCED_A


@given(st.sampled_from(CIRCUITS), st.randoms(use_true_random=False))
@settings(max_examples=8)
def test_a_row_is_the_same_in_any_company_and_order(shipped, name, dice):
    network = shipped(name)
    figures = every_fault(network, dice.choice(states(network.circuit)))
    rows = np.array(dice.sample(range(len(figures)), 10))
    together = network.solve(figures[rows])
    turned = network.solve(figures[rows[::-1]])
    np.testing.assert_allclose(turned.volts[::-1], together.volts, atol=SAME_V)
    np.testing.assert_array_equal(turned.closed[::-1], together.closed)
    alone = [network.solve(figures[[row]]).volts[0] for row in rows[:1]]
    np.testing.assert_allclose(alone, together.volts[:1], atol=SAME_V)


@given(st.sampled_from(CIRCUITS), st.randoms(use_true_random=False))
@settings(max_examples=8)
def test_a_meter_of_infinite_ohms_changes_nothing(shipped, name, dice):
    network = shipped(name)
    figures = every_fault(network, dice.choice(states(network.circuit)))
    figures = figures[dice.sample(range(len(figures)), 8)]
    node = dice.randrange(1, len(network.circuit.nodes))
    count = len(figures)
    loads = (np.full(count, node), np.zeros(count, np.intp), np.full(count, np.inf))
    without = network.solve(figures)
    loaded = network.solve(figures, loads=loads)
    np.testing.assert_allclose(loaded.volts, without.volts, atol=SAME_V)
    assert loaded.settled.all()


def feed_of(circuit):
    """Names of the elements on the shortest way from the battery to the motor's feed side."""
    battery, motor = (
        next(e for e in circuit.elements if e.kind is kind)
        for kind in (ElementKind.BATTERY, ElementKind.MOTOR)
    )
    ways, seen = [(battery.nodes[0], ())], {battery.nodes[0], circuit.nodes[0].name}
    while ways:
        node, way = ways.pop(0)
        if node == motor.nodes[0]:
            return way
        for element in circuit.elements:
            ends = element.nodes[:2]
            if node in ends and element is not battery:
                other = ends[1 - ends.index(node)]
                if other not in seen:
                    seen.add(other)
                    ways.append((other, (*way, element.name)))
    raise AssertionError(f"{circuit.name}: no way from the battery to the motor")


@pytest.mark.parametrize("name", CIRCUITS)
@pytest.mark.parametrize("speed", [1, 4])
def test_more_ohms_in_the_feed_never_raise_the_motor_s_voltage(shipped, name, speed):
    network = shipped(name)
    circuit = network.circuit
    motor = next(e for e in circuit.elements if e.kind is ElementKind.MOTOR)
    plus, minus = network.columns(motor.nodes)
    added = np.concatenate([[0.0], np.geomspace(1e-3, 1e4, 22)])
    healthy = healthy_figures(circuit, network.index)
    way = [e for e in feed_of(circuit) if (e, "ohm") in network.index.columns]
    dead = []
    for element in way:
        figures = np.tile(healthy, (len(added), 1))
        figures[:, network.index[element, "ohm"]] += added
        state = CircuitState("on", speed)
        solved = network.solve(set_state(circuit, network.index, figures, state))
        assert solved.settled.all()
        across = solved.volts[:, plus] - solved.volts[:, minus]
        assert across[0] > 2.0, element
        assert np.diff(across).max() < 1e-6, element
        dead.append(across[-1] < 0.1)
    # All but the steps of a resistor pack, which have others beside them.
    assert sum(dead) >= 4
