"""What no schema can say of a circuit profile: names that lead nowhere, parts that do not fit."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from typing import Any

from meterlog.model.circuit import Circuit, Element, ElementKind
from meterlog.model.element_kinds import KINDS
from meterlog.model.errors import ProfileError
from meterlog.profile.circuit_element_faults import element_faults
from meterlog.profile.circuit_names import Fault, known_or, repeated
from meterlog.profile.circuit_point_faults import point_faults
from meterlog.profile.schema import fault_at
from meterlog.profile.toml_lines import line_of

NO_FAULT = "no-fault"
"""What the suspect is called that stands for nothing electrical; no unit may have this name."""
_LISTS = ("nodes", "elements", "units", "places", "points", "sections")
_NEAR_NOMINAL = 0.25
_NO_LOAD = {"gate", "command", "sense"}
"""Terminals through which no motor's current flows."""


def circuit_contradictions(
    circuit: Circuit, values: Mapping[str, Any], subject: str
) -> list[ProfileError]:
    """Find what is right by itself and wrong together.

    Parameters
    ----------
    circuit : Circuit
        As read; it fits the schema.
    values : mapping
        The TOML it was read from.
    subject : str
        The file, for messages.

    Returns
    -------
    list of ProfileError
        In the order of their lines; each names file, line, key and what to do.
    """
    found = [
        *_names(values),
        *_speeds(circuit),
        *_ends(circuit),
        *_drawing(circuit),
        *_nodes(circuit),
        *_motor_fed(circuit),
        *_fallible(circuit),
        *_units(circuit),
        *element_faults(circuit, values["elements"]),
        *point_faults(circuit),
        *_pairs(circuit),
    ]
    found.sort(key=lambda fault: line_of(circuit.text, fault[0]) or 0)
    return [fault_at(circuit.text, subject, *fault) for fault in found]


def _names(values: Mapping[str, Any]) -> Iterator[Fault]:
    for key in _LISTS:
        for index in repeated([table["name"] for table in values.get(key, ())]):
            name = values[key][index]["name"]
            yield (key, index, "name"), f"repeats the name {name!r}", f"Names of {key} must differ."


def _speeds(circuit: Circuit) -> Iterator[Fault]:
    if circuit.speeds[0] != 0 or list(circuit.speeds) != sorted(circuit.speeds):
        said = ", ".join(str(speed) for speed in circuit.speeds)
        yield ("speeds",), f"are {said}", "Expected 0 (off) first, then rising."


def _ends(circuit: Circuit) -> Iterator[Fault]:
    """Check that the battery's negative post comes first, and that there is one motor."""
    first = circuit.nodes[0].name
    batteries = [one for one in circuit.elements if one.kind is ElementKind.BATTERY]
    if not any(battery.nodes[-1] == first for battery in batteries):
        what = f"is {first!r}, at which no battery's second terminal lies"
        remedy = "The first node must be the battery negative post: every voltage is against it."
        yield ("nodes", 0, "name"), what, remedy
    motors = [i for i, one in enumerate(circuit.elements) if one.kind is ElementKind.MOTOR]
    if len(motors) != 1:
        what = "have no motor" if not motors else f"have {len(motors)} motors"
        place = ("elements", motors[1], "kind") if motors else ("elements",)
        yield place, what, "Expected exactly one element of the kind motor."
    for index, element in enumerate(circuit.elements):
        if element.kind is not ElementKind.BATTERY:
            continue
        emf = element.figures.get("emf_v", circuit.nominal_v)
        if abs(emf / circuit.nominal_v - 1.0) > _NEAR_NOMINAL:
            what = f"is {emf:g}, but nominal_v is {circuit.nominal_v:g}"
            yield ("elements", index, "emf_v"), what, "Correct one of them."


def _drawing(circuit: Circuit) -> Iterator[Fault]:
    taken: dict[tuple[float, float], str] = {}
    for index, node in enumerate(circuit.nodes):
        if node.at in taken:
            what = f"is where node {taken[node.at]!r} is drawn: {node.at[0]:g}, {node.at[1]:g}"
            yield ("nodes", index, "at"), what, "Two nodes need two places."
        taken.setdefault(node.at, node.name)


def _nodes(circuit: Circuit) -> Iterator[Fault]:
    """Every node must hang on an element, and all must hang together."""
    beside = _beside([element.nodes for element in circuit.elements])
    reached = _reached(circuit.nodes[0].name, beside)
    for index, one in enumerate(circuit.nodes):
        if one.name not in beside:
            what = f"names {one.name!r}, which hangs on nothing"
            yield ("nodes", index, "name"), what, "Let an element end there, or leave it out."
        elif one.name not in reached:
            what = f"names {one.name!r}, from which no element leads to the battery"
            yield ("nodes", index, "name"), what, "Join this part of the circuit to the rest."


def _beside(joined: Iterable[Sequence[str]]) -> dict[str, set[str]]:
    """Give the nodes to which each node is joined, of the groups that elements join."""
    beside: dict[str, set[str]] = {}
    for nodes in joined:
        for node in nodes:
            beside.setdefault(node, set()).update(nodes)
    return beside


def _reached(start: str, beside: Mapping[str, Iterable[str]], cut: str = "") -> set[str]:
    """Give all nodes to which ways lead from ``start`` that do not pass the node ``cut``."""
    reached: set[str] = set()
    waiting = [start]
    while waiting:
        node = waiting.pop()
        if node not in reached and node != cut:
            reached.add(node)
            waiting += beside.get(node, ())
    return reached


def _motor_fed(circuit: Circuit) -> Iterator[Fault]:
    """Find a motor for whose current there is no way from the battery and back.

    Without one no reading tells anything of the motor, and nobody would notice.
    """
    batteries = [one for one in circuit.elements if one.kind is ElementKind.BATTERY]
    for index, motor in enumerate(circuit.elements):
        if motor.kind is not ElementKind.MOTOR or not batteries:
            continue
        if not any(_lies_in_a_loop(circuit, motor, battery) for battery in batteries):
            what = "lie on no loop with a battery: no current could flow"
            remedy = "Join the feed to the one post, the return and the ground to the other."
            yield ("elements", index, "nodes"), what, remedy


def _lies_in_a_loop(circuit: Circuit, motor: Element, battery: Element) -> bool:
    """Tell whether ways lead from the motor to both posts that have no node in common.

    Source
    ------
    Menger's theorem: two such ways exist exactly where no one node parts the motor from the posts.
    """
    beside = _beside(
        [
            tuple(
                node
                for node, terminal in zip(one.nodes, KINDS[one.kind].terminals, strict=False)
                if terminal not in _NO_LOAD
            )
            for one in circuit.elements
            if one is not motor and one is not battery
        ]
    )
    return all(
        any(not _reached(end, beside, node.name).isdisjoint(battery.nodes) for end in motor.nodes)
        for node in circuit.nodes
    )


def _fallible(circuit: Circuit) -> Iterator[Fault]:
    """Find a circuit in which nothing can fail: it would always be told that nothing is wrong."""
    if not any(element.faults for element in circuit.elements):
        what = "have no faults, so whatever is read, nothing could be found"
        yield ("elements",), what, "Give each element that can fail its ways with their odds."


def _units(circuit: Circuit) -> Iterator[Fault]:
    used = {element.unit for element in circuit.elements}
    for index, unit in enumerate(circuit.units):
        place = ("units", index, "name")
        if unit.name == NO_FAULT:
            yield place, f"is {NO_FAULT!r}", "That stands for nothing electrical."
        if unit.name not in used:
            yield place, f"names {unit.name!r}, which has no element", "Leave it out, or use it."


def _pairs(circuit: Circuit) -> Iterator[Fault]:
    modes = {one.name: [fault.mode for fault in one.faults] for one in circuit.elements}
    seen: list[Sequence[object]] = []
    for index, pair in enumerate(circuit.pairs):
        for side, (element, mode) in enumerate(pair.faults):
            place = ("pairs", index, "faults", side)
            if element not in modes:
                yield place, *known_or(element, "element", modes)
            elif mode not in modes[element]:
                has = ", ".join(modes[element]) or "none"
                what = f"names {element} {mode.value}, which is none of that element's faults"
                yield place, what, f"Its faults: {has}. Add it there with its own odds."
        if pair.faults[0][0] == pair.faults[1][0]:
            what = f"name {pair.faults[0][0]!r} twice"
            yield ("pairs", index, "faults"), what, "Expected two elements."
        if sorted(pair.faults) in seen:
            yield ("pairs", index, "faults"), "repeat a pair", "Leave one of the two."
        seen.append(sorted(pair.faults))
