"""Faults that no reading of a profile can tell apart."""

from dataclasses import replace
from pathlib import Path

import pytest

from meterlog.circuit.predictions import Predictions
from meterlog.circuit.twins import twins, twins_among
from meterlog.model.circuit import ElementKind
from meterlog.model.circuit_check import CircuitState
from meterlog.profile.circuit import circuit_profile

CIRCUITS = Path(__file__).resolve().parents[4] / "profiles" / "circuits"
STATES = (CircuitState("on", 0), CircuitState("on", 2), CircuitState("off", 0))


def _units_alike(circuit):
    return {frozenset((t.unit, t.behind)) for t in twins_among(Predictions(circuit), STATES)}


def _with_wire(circuit):
    """A wire of a unit of its own, before the joint, and no point between the two."""
    joint = circuit.element("joint")
    wire = replace(
        joint, name="wire", kind=ElementKind.WIRE, nodes=("source", "hidden"), unit="ground-wire"
    )
    after = replace(joint, nodes=("hidden", "minus"))
    elements = tuple(after if e is joint else e for e in circuit.elements)
    hidden = replace(circuit.nodes[1], name="hidden", label="hidden", at=(99.0, 0.0))
    unit = replace(circuit.unit("ground"), name="ground-wire")
    return replace(
        circuit,
        elements=(*elements, wire),
        nodes=(*circuit.nodes, hidden),
        units=(*circuit.units, unit),
    )


def test_two_units_with_no_point_between_them_are_twins(small):
    assert frozenset(("ground", "ground-wire")) in _units_alike(_with_wire(small))


def test_a_point_between_them_tells_them_apart(small):
    wired = _with_wire(small)
    point = replace(wired.point("source"), name="hidden", nodes=("hidden",))
    seen = replace(wired, points=(*wired.points, point))
    assert frozenset(("ground", "ground-wire")) not in _units_alike(seen)


def test_units_with_points_between_them_have_no_twins(small):
    assert _units_alike(small) == set()


@pytest.mark.parametrize("name", ["resistors-ground-side-12v", "pulsed-module-12v"])
def test_shipped_circuits_have_no_twins(name):
    text = (CIRCUITS / f"{name}.toml").read_text(encoding="utf-8")
    assert twins(circuit_profile(name, text, name)) == ()
