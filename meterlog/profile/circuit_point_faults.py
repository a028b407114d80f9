"""What can be wrong with places, test points and sections of a circuit profile."""

from __future__ import annotations

from collections.abc import Iterator

from meterlog.model.circuit import Circuit, PointKind, ProbePoint, Section
from meterlog.model.element_kinds import KINDS
from meterlog.profile.circuit_names import Fault, known_or
from meterlog.profile.toml_lines import Place

_NODES = {PointKind.VOLTAGE: 1, PointKind.DROP: 2, PointKind.CURRENT: 0}


def point_faults(circuit: Circuit) -> Iterator[Fault]:
    """Find what is wrong with places, points and sections."""
    yield from _places(circuit)
    for index, point in enumerate(circuit.points):
        yield from _point(("points", index), circuit, point)
    for index, section in enumerate(circuit.sections):
        yield from _section(("sections", index), circuit, section)


def _places(circuit: Circuit) -> Iterator[Fault]:
    used = {point.place for point in circuit.points}
    for index, place in enumerate(circuit.places):
        if place.name not in used:
            what = f"names {place.name!r}, where no test point is"
            yield ("places", index, "name"), what, "Leave it out, or put a test point there."


def _point(at: Place, circuit: Circuit, point: ProbePoint) -> Iterator[Fault]:
    places = [place.name for place in circuit.places]
    if point.place not in places:
        what, remedy = known_or(point.place, "place", places)
        yield (*at, "place"), f"{what}: no one can reach the point", remedy
    if point.name in places and point.name != point.place:
        what = f"is {point.name!r}, the name of a place in which the point is not"
        yield (*at, "name"), what, "Name one of the two otherwise."
    nodes = [node.name for node in circuit.nodes]
    for index, node in enumerate(point.nodes):
        if node not in nodes:
            yield (*at, "nodes", index), *known_or(node, "node", nodes)
    wanted = _NODES[point.kind]
    if len(point.nodes) != wanted:
        what = f"are {len(point.nodes)}, but a {point.kind.value} has {wanted}"
        remedy = "Name the element that the clamp is round." if not wanted else "Correct them."
        yield (*at, "nodes"), what, remedy
    if point.kind is PointKind.VOLTAGE and point.nodes[:1] == (nodes[0],):
        what = f"are {nodes[0]!r} alone, where every voltage is 0"
        yield (*at, "nodes"), what, "All voltages are against this node: choose another."
    if len(point.nodes) == 2 and point.nodes[0] == point.nodes[1]:
        yield (*at, "nodes"), "are one and the same", "Expected two different nodes."
    yield from _clamped(at, circuit, point)


def _clamped(at: Place, circuit: Circuit, point: ProbePoint) -> Iterator[Fault]:
    if point.kind is not PointKind.CURRENT:
        if point.element:
            what = f"is not used by a {point.kind.value}"
            yield (*at, "element"), what, "Leave it out, or make the point a current."
        return
    kinds = {element.name: element.kind for element in circuit.elements}
    if not point.element:
        yield (*at, "element"), "is missing", "Name the element that the clamp is round."
    elif point.element not in kinds:
        yield (*at, "element"), *known_or(point.element, "element", kinds)
    elif len(KINDS[kinds[point.element]].terminals) != 2:
        what = f"names {point.element!r}, which has more than two terminals"
        yield (*at, "element"), what, "Name a wire, a connection or the motor."


def _section(at: Place, circuit: Circuit, section: Section) -> Iterator[Fault]:
    nodes = [node.name for node in circuit.nodes]
    unknown = [index for index, node in enumerate(section.nodes) if node not in nodes]
    for index in unknown:
        yield (*at, "nodes", index), *known_or(section.nodes[index], "node", nodes)
    if unknown:
        return
    if section.nodes[0] == section.nodes[1]:
        yield (*at, "nodes"), "are one and the same", "Expected the two ends of a stretch."
    volts = [point for point in circuit.points if point.kind is PointKind.VOLTAGE]
    ends = {node for point in volts for node in point.nodes[:1]}
    ends.add(nodes[0])
    straight = {frozenset(p.nodes) for p in circuit.points if p.kind is PointKind.DROP}
    missing = [node for node in section.nodes if node not in ends]
    if missing and frozenset(section.nodes) not in straight:
        what = f"can't be measured: there is no test point at {' and '.join(missing)}"
        yield (*at, "nodes"), what, "Add test points at its ends, or one straight across."
