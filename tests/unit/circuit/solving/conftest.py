"""Circuits of a few elements, made in one line each."""

from pathlib import Path

import pytest

from meterlog.circuit.figures import healthy_figures, set_state
from meterlog.circuit.network import Network
from meterlog.model.circuit import Circuit, Element, ElementKind, Node
from meterlog.model.circuit_check import CircuitState
from meterlog.profile import load_circuit, shipped_folder

WORDS = {"relay", "plug", "speeds", "closed_keys", "closed_speeds"}


def _element(name, kind, *nodes, **figures):
    words = {key: figures.pop(key) for key in WORDS & set(figures)}
    return Element(name, ElementKind(kind), nodes, "unit", figures, **words)


def _circuit(*elements, speeds=(0, 1, 2)):
    """Nodes in the order in which elements name them, after ``minus``, the reference."""
    names = ["minus", *dict.fromkeys(n for e in elements for n in e.nodes if n != "minus")]
    nodes = tuple(Node(name, name, (float(at), 0.0)) for at, name in enumerate(names))
    return Circuit("made", "Made", 12.0, speeds, nodes, elements, (), (), (), ())


def _volts(circuit, jumpers=frozenset(), loads=None, **state):
    """Of each node, by name; the circuit is in order."""
    network = Network(circuit)
    figures = set_state(
        circuit, network.index, healthy_figures(circuit, network.index), CircuitState(**state)
    )
    solved = network.solve(figures, jumpers, loads)
    assert solved.settled.all()
    return dict(zip(network.node_column, solved.volts[0], strict=True))


@pytest.fixture(scope="package")
def element():
    """(name, kind, *nodes, **figures) to an Element."""
    return _element


@pytest.fixture(scope="package")
def battery():
    """Of 12 V and no resistance to speak of, from ``plus`` to ``minus``."""
    return _element("battery", "battery", "plus", "minus", emf_v=12.0, charging_v=14.0, ohm=1e-6)


@pytest.fixture(scope="package")
def circuit_of():
    """(*elements) to a Circuit."""
    return _circuit


@pytest.fixture(scope="package")
def volts_of():
    """(circuit, jumpers, loads, **state) to volts by node."""
    return _volts


@pytest.fixture(scope="package")
def shipped():
    """Network of a shipped circuit, by name; made once."""
    made = {}

    def give(name):
        if name not in made:
            made[name] = Network(load_circuit(str(shipped_folder() / "circuits" / f"{name}.toml")))
        return made[name]

    return give


@pytest.fixture(scope="package")
def shipped_names():
    return sorted(Path(path).stem for path in (shipped_folder() / "circuits").glob("*.toml"))
