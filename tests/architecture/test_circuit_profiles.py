"""Every circuit that is shipped: complete, honest about where its figures are from, drawable."""

import json
from itertools import combinations

import pytest
from jsonschema import Draft202012Validator

from meterlog.circuit.cautions import CAUTIONS
from meterlog.commands.circuit_report import unit_shares
from meterlog.model import ElementKind, FaultMode
from meterlog.model.circuit_check import KEYS
from meterlog.model.element_kinds import KINDS
from meterlog.profile import circuit_faults, load_circuit, load_limits, shipped_folder

SHIPPED = tuple(sorted(path.stem for path in (shipped_folder() / "circuits").glob("*.toml")))
CIRCUITS = {
    name: load_circuit(str(shipped_folder() / "circuits" / f"{name}.toml")) for name in SHIPPED
}
ARRANGEMENTS = {name.rpartition("-")[0] for name in SHIPPED}
SCHEMA = json.loads((shipped_folder() / "circuit.schema.json").read_text(encoding="utf-8"))
WITHOUT_EFFECT = {"rating_a"}
"""Figures that no voltage depends on."""


@pytest.fixture(params=SHIPPED)
def circuit(request):
    return CIRCUITS[request.param]


def test_the_arrangements_are_those_of_the_trade_each_in_both_voltages():
    assert {
        "low-side-linear",
        "high-side-linear",
        "resistors-ground-side",
        "resistors-feed-side",
        "pulsed-module",
    } < ARRANGEMENTS
    assert sorted(SHIPPED) == sorted(f"{a}-{v}v" for a in ARRANGEMENTS for v in (12, 24))
    for name, circuit in CIRCUITS.items():
        assert name.endswith(f"-{circuit.nominal_v:g}v")


def test_the_schema_is_valid_and_speaks_of_what_the_program_knows():
    Draft202012Validator.check_schema(SCHEMA)
    element = SCHEMA["properties"]["elements"]["items"]["properties"]
    fault = element["faults"]["items"]["properties"]
    place = SCHEMA["properties"]["places"]["items"]["properties"]
    assert element["kind"]["enum"] == [kind.value for kind in ElementKind]
    assert fault["mode"]["enum"] == [mode.value for mode in FaultMode]
    assert set(element["closed_keys"]["items"]["enum"]) == set(KEYS)
    assert set(place["cautions"]["items"]["enum"]) == set(CAUTIONS) - {"unplugging"}
    figures = {key for facts in KINDS.values() for key in (*facts.figures, *facts.usual)}
    assert figures - {"held"} <= set(element)
    assert figures - {"held"} - WITHOUT_EFFECT | {"drive_v"} == set(
        element["tolerance"]["properties"]
    )


def test_it_has_no_fault_and_says_how_to_change_it(circuit):
    assert circuit_faults(circuit.text, circuit.name) == []
    comment = "".join(line for line in circuit.text.splitlines() if line.startswith("#"))
    assert "check-profile" in comment
    assert "service manual" in comment


def test_every_figure_has_a_tolerance(circuit):
    for element in circuit.elements:
        figures = set(element.figures) - WITHOUT_EFFECT
        if element.kind is ElementKind.HEAD:
            figures |= {"drive_v"}
        assert figures == set(element.tolerance), element.name
        assert all(part > 0.0 for part in element.tolerance.values())


def test_all_odds_and_limits_say_where_they_are_from(circuit):
    for basis in (
        *(fault.basis for element in circuit.elements for fault in element.faults),
        *(pair.basis for pair in circuit.pairs),
    ):
        assert basis.startswith(("common practice, no source", "from memory"))
    assert all(section.basis for section in circuit.sections)
    assert "common practice, no source" in circuit.basis
    assert "from memory" in circuit.basis


def test_every_fault_says_what_to_look_for(circuit):
    assert all(fault.why for element in circuit.elements for fault in element.faults)
    assert all(unit.confirm and unit.repair for unit in circuit.units)


def test_every_unit_can_fail_and_no_other_arrangement_of_odds_hides_one(circuit):
    shares = unit_shares(circuit)
    assert all(share > 0.002 for share in shares.values())
    assert max(shares.values()) < 0.3


def _odds(circuit, belongs):
    return sum(
        fault.odds for element in circuit.elements if belongs(element) for fault in element.faults
    )


def test_fuses_relay_motor_controller_and_wiring_come_before_the_head(circuit):
    # Common practice, no source.
    wiring = {ElementKind.WIRE, ElementKind.CONNECTION, ElementKind.GROUND}
    head = _odds(circuit, lambda e: e.unit == "head")
    groups = (
        lambda e: e.kind is ElementKind.FUSE,
        lambda e: e.unit == "relay",
        lambda e: e.unit == "motor",
        lambda e: e.unit in {"controller", "pack", "speed-switch"},
        lambda e: e.kind in wiring,
    )
    odds = [_odds(circuit, belongs) for belongs in groups]
    assert all(one > 2.0 * head for one in odds)
    assert odds[:4] == sorted(odds[:4], reverse=True)


def _beyond(circuit, start, wall):
    """Nodes that are reached from ``start`` without passing an element of ``wall``."""
    reached, waiting = set(), [start]
    while waiting:
        node = waiting.pop()
        if node in reached:
            continue
        reached.add(node)
        for element in circuit.elements:
            if node in element.nodes and not wall(element):
                waiting += element.nodes
    return reached


def test_the_coil_is_fed_by_the_ignition_and_the_contact_by_the_battery_both_fused(circuit):
    # Common practice, no source.
    plus = next(e for e in circuit.elements if e.kind is ElementKind.BATTERY).nodes[0]
    coil = next(e for e in circuit.elements if e.name == "relay-coil")
    contact = next(e for e in circuit.elements if e.name == "relay-contact")
    assert coil.relay == contact.relay
    active = {ElementKind.BATTERY, ElementKind.GROUND, ElementKind.MOTOR, ElementKind.CONTACT}

    def without(*names):
        return _beyond(circuit, plus, lambda e: e.kind in active or e.name in names)

    assert coil.nodes[0] in without()
    assert coil.nodes[0] not in without("coil-fuse")
    assert coil.nodes[0] not in without("ignition-switch")
    assert circuit.element("ignition-switch").closed_keys == ("on", "engine")
    assert contact.nodes[0] in without("ignition-switch", "coil-fuse")
    assert contact.nodes[0] not in without("main-fuse", "relay-coil", "coil-ground")


def test_the_examples_have_fuses_of_their_own(circuit):
    assert circuit.element("coil-fuse").figures["rating_a"] != 10.0
    assert circuit.element("main-fuse").figures["rating_a"] != 40.0


def _straight(circuit, element):
    places = {node.name: node.at for node in circuit.nodes}
    (ax, ay), (bx, by) = (places[node] for node in element.nodes[:2])
    return (ax, ay, bx, by) if ax == bx or ay == by else None


def test_no_node_stands_on_the_line_of_another_element(circuit):
    places = {node.name: node.at for node in circuit.nodes}
    for element in circuit.elements:
        line = _straight(circuit, element)
        if line is None:
            continue
        ax, ay, bx, by = line
        for name, (x, y) in places.items():
            inside = min(ax, bx) <= x <= max(ax, bx) and min(ay, by) <= y <= max(ay, by)
            assert not inside or name in element.nodes, (element.name, name)


def test_no_two_elements_lie_on_each_other(circuit):
    lines = [(e.name, line) for e in circuit.elements if (line := _straight(circuit, e))]
    for (first, a), (second, b) in combinations(lines, 2):
        for low, high, fixed in ((0, 2, 1), (1, 3, 0)):
            same = a[fixed] == a[fixed + 2] == b[fixed] == b[fixed + 2]
            ends = sorted((a[low], a[high])), sorted((b[low], b[high]))
            overlap = min(ends[0][1], ends[1][1]) - max(ends[0][0], ends[1][0])
            assert not same or overlap <= 0, (first, second)


def test_nearly_all_elements_are_drawn_straight_and_on_one_sheet(circuit):
    straight = sum(_straight(circuit, element) is not None for element in circuit.elements)
    assert straight >= 0.85 * len(circuit.elements)
    assert max(node.at[0] for node in circuit.nodes) <= 24
    assert max(node.at[1] for node in circuit.nodes) <= 16


def test_places_behind_the_dash_warn_of_the_airbag_and_the_fan_of_its_wheel(circuit):
    for place in circuit.places:
        if any(word in place.label for word in ("dash", "glove", "footwell")):
            assert "airbag" in place.cautions, place.name
        if "fan housing" in place.label or place.name == "motor":
            assert "moving-fan" in place.cautions, place.name
    assert "meter" in circuit.place("battery").cautions
    assert "high-voltage" in circuit.place("battery").cautions


@pytest.mark.parametrize("name", [name for name in sorted(SHIPPED) if "linear-12v" in name])
def test_limits_and_circuits_that_go_together_know_one_fuse(name):
    """One pack shows both: two ratings for one fuse would be asked about."""
    fuse = load_limits("linear-12v").fuse
    assert fuse is not None
    assert CIRCUITS[name].element("main-fuse").figures["rating_a"] == fuse.rating_a
