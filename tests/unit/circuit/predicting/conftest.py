"""A small circuit that has one of most things: relay, plug, motor, open-loop head and stage."""

from dataclasses import replace

import pytest

from meterlog.circuit.predictions import Predictions
from meterlog.model.circuit import (
    Circuit,
    Element,
    ElementFault,
    ElementKind,
    FaultMode,
    FaultPair,
    Node,
    Place,
    PointKind,
    ProbePoint,
    Unit,
)

MEMORY = "from memory"


def _fault(mode, odds=1.0, least=None, most=None, **more):
    return ElementFault(FaultMode(mode), odds, MEMORY, least, most, **more)


OHMIC = (_fault("open"), _fault("resistive", 2.0, 0.05, 50.0))


def _element(name, kind, nodes, unit, faults=(), tolerance=0.5, **figures):
    extra = {
        key: figures.pop(key)
        for key in ("relay", "plug", "speeds", "closed_keys")
        if key in figures
    }
    off = dict.fromkeys((f for f in figures if f not in {"pull_in_v", "rating_a"}), tolerance)
    if kind == "head":
        off["drive_v"] = tolerance
    return Element(name, ElementKind(kind), nodes, unit, figures, off, faults=faults, **extra)


def _elements():
    motor_faults = (
        _fault("open", 6.0, comes_and_goes=0.7, answers_tap=0.8),
        _fault("resistive", 2.0, 0.1, 50.0, comes_and_goes=0.4),
        _fault("seized", stiff=0.95),
        _fault("dragging", 2.0, 2.5, 12.0, stiff=0.7),
    )
    return (
        _element(
            "battery",
            "battery",
            ("plus", "minus"),
            "battery",
            (_fault("flat", 1.0, 7.0, 11.8), _fault("resistive", 1.0, 0.05, 5.0)),
            0.03,
            emf_v=12.6,
            charging_v=14.1,
            ohm=0.02,
        ),
        _element(
            "fuse",
            "fuse",
            ("plus", "fed"),
            "fuse",
            (_fault("open", 5.0),),
            ohm=0.005,
            rating_a=25.0,
        ),
        _element(
            "contact",
            "contact",
            ("fed", "feed"),
            "relay",
            (*OHMIC, _fault("shorted", 0.5)),
            ohm=0.01,
            pull_in_v=7.0,
            relay="fan-relay",
        ),
        _element(
            "feed-pin", "connection", ("feed", "motor-plus"), "plug", OHMIC, ohm=0.01, plug="motor"
        ),
        _element(
            "motor",
            "motor",
            ("motor-plus", "return"),
            "motor",
            motor_faults,
            0.15,
            ohm=0.22,
            no_load_a=1.0,
            fan_a_per_v2=0.16,
        ),
        _element(
            "stage",
            "transistor",
            ("return", "source", "gate"),
            "controller",
            (_fault("open", 3.0), _fault("shorted", 2.0)),
            0.1,
            gain_a_per_v2=15.0,
            threshold_v=2.0,
        ),
        _element("leak", "resistor", ("gate", "source"), "controller", ohm=47e3),
        _element("joint", "ground", ("source", "minus"), "ground", OHMIC, ohm=0.01),
        _element(
            "key",
            "switch",
            ("plus", "ignition"),
            "key",
            (_fault("open"),),
            ohm=0.05,
            closed_keys=("on", "engine"),
        ),
        _element(
            "coil",
            "coil",
            ("ignition", "minus"),
            "relay",
            (_fault("open"),),
            0.1,
            ohm=85.0,
            relay="fan-relay",
        ),
        _element(
            "head",
            "head",
            ("gate", "minus"),
            "head",
            (_fault("no-drive"), _fault("stuck-drive", 0.5, 0.5, 10.0)),
            0.02,
            ohm=1000.0,
            speeds={1: 2.75, 2: 10.0},
        ),
    )


def _circuit():
    elements = _elements()
    nodes = ["minus", *dict.fromkeys(n for e in elements for n in e.nodes if n != "minus")]
    voltages = [
        ProbePoint(n, PointKind.VOLTAGE, (n,), "", n, "engine-bay", "Probe it.", 1.0)
        for n in nodes[1:]
    ]
    others = [
        ProbePoint(
            "across",
            PointKind.DROP,
            ("motor-plus", "return"),
            "",
            "motor",
            "engine-bay",
            "Across.",
            1.0,
        ),
        ProbePoint("amps", PointKind.CURRENT, (), "motor", "current", "engine-bay", "Clamp.", 1.0),
        ProbePoint(
            "battery-amps", PointKind.CURRENT, (), "battery", "current", "engine-bay", "Clamp.", 1.0
        ),
    ]
    seized = (("motor", FaultMode.SEIZED), ("fuse", FaultMode.OPEN))
    dragging = (("motor", FaultMode.DRAGGING), ("feed-pin", FaultMode.RESISTIVE))
    return Circuit(
        name="small",
        title="Small",
        nominal_v=12.0,
        speeds=(0, 1, 2),
        nodes=tuple(Node(n, n, (float(at), 0.0)) for at, n in enumerate(nodes)),
        elements=elements,
        units=tuple(Unit(u, u, "Look.") for u in dict.fromkeys(e.unit for e in elements)),
        places=(Place("engine-bay", "engine bay", 2.0),),
        points=(*voltages, *others),
        sections=(),
        pairs=(FaultPair(seized, 1.0, MEMORY), FaultPair(dragging, 1.0, MEMORY, "a hot plug")),
        no_fault_odds=0.5,
    )


@pytest.fixture(scope="package")
def small():
    return _circuit()


@pytest.fixture(scope="package")
def predictions(small):
    return Predictions(small)


@pytest.fixture(scope="package")
def row_of(predictions):
    """Which row tells of a single fault, and of the severity nearest to one."""
    cells = predictions.cells

    def find(element, mode, severity=None):
        wanted = ((element, FaultMode(mode)),)
        own = [
            c
            for c in range(len(cells.row))
            if cells.hypotheses[cells.hypothesis[c]].faults == wanted
        ]
        if severity is not None:
            own.sort(key=lambda c: abs(cells.severity[c, 0] / severity - 1.0))
        return cells.row[own[0]]

    return find


@pytest.fixture(scope="package")
def with_figures():
    """A circuit whose healthy figures are off by standard deviations, one for each nuisance."""

    def make(circuit, nuisances, off):
        moved = {
            (n.element, n.figure): n.relative_u * z for n, z in zip(nuisances, off, strict=True)
        }
        elements = []
        for element in circuit.elements:
            figures = {
                k: v * (1.0 + moved.get((element.name, k), 0.0)) for k, v in element.figures.items()
            }
            drive = 1.0 + moved.get((element.name, "drive_v"), 0.0)
            speeds = {speed: volts * drive for speed, volts in element.speeds.items()}
            elements.append(replace(element, figures=figures, speeds=speeds))
        return replace(circuit, elements=tuple(elements))

    return make
