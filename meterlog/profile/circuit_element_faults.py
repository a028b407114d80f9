"""What can be wrong with the elements of a circuit profile, each against its kind and the rest."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from typing import Any

from meterlog.model.circuit import Circuit, Element, ElementFault, ElementKind, FaultMode
from meterlog.model.element_kinds import KINDS, KindFacts
from meterlog.profile.circuit_names import Fault, known_or
from meterlog.profile.toml_lines import Place

_GRADED = {
    FaultMode.RESISTIVE: "ohms too many",
    FaultMode.DRAGGING: "times the current without load",
    FaultMode.FLAT: "volts at rest",
    FaultMode.STUCK_DRIVE: "volts asked for",
}
"""Modes with a severity, and what that is."""
_RELAY = {ElementKind.COIL, ElementKind.CONTACT}
_OF_SOME = {
    "closed_keys": {ElementKind.SWITCH},
    "closed_speeds": {ElementKind.SWITCH},
    "relay": _RELAY,
    "speeds": {ElementKind.HEAD},
}
"""Keys that only some kinds read."""


def element_faults(circuit: Circuit, tables: Sequence[Mapping[str, Any]]) -> Iterator[Fault]:
    """Find what is wrong with the elements.

    Parameters
    ----------
    circuit : Circuit
    tables : sequence of mapping
        Their TOML, in the same order.
    """
    nodes = [node.name for node in circuit.nodes]
    units = [unit.name for unit in circuit.units]
    figures = {key for facts in KINDS.values() for key in (*facts.figures, *facts.usual)}
    for index, (element, table) in enumerate(zip(circuit.elements, tables, strict=True)):
        place: Place = ("elements", index)
        facts = KINDS[element.kind]
        yield from _terminals(place, element, facts, nodes)
        if element.unit not in units:
            yield (*place, "unit"), *known_or(element.unit, "unit", units)
        yield from _figures(place, element, facts, figures & set(table))
        yield from _keys(place, element, circuit.speeds)
        yield from _modes(place, element, facts)
    yield from _relays(circuit)


def _terminals(
    place: Place, element: Element, facts: KindFacts, nodes: Sequence[str]
) -> Iterator[Fault]:
    most = len(facts.terminals)
    if not most - facts.optional <= len(element.nodes) <= most:
        words = ", ".join(facts.terminals)
        if facts.optional:
            words += f" (the last {facts.optional} may be left out)"
        what = f"are {len(element.nodes)}, but a {element.kind.value} has {words}"
        yield (*place, "nodes"), what, "Name one node for each, in this order."
    for at, node in enumerate(element.nodes):
        if node not in nodes:
            yield (*place, "nodes", at), *known_or(node, "node", nodes)
    if element.nodes[0] == element.nodes[1]:
        what = f"join {element.nodes[0]!r} to itself"
        yield (*place, "nodes"), what, "Expected two different nodes."


def _figures(place: Place, element: Element, facts: KindFacts, given: set[str]) -> Iterator[Fault]:
    kind, known = element.kind.value, (*facts.figures, *facts.usual)
    for key in facts.figures:
        if key not in element.figures:
            what = f"is missing: every {kind} needs {', '.join(facts.figures)}"
            yield (*place, key), what, "State it with its tolerance."
    for key in sorted(given - set(known)):
        what = f"is no figure of a {kind}"
        yield (*place, key), what, f"Its figures: {', '.join(known)}."
    own = {*known, *(("drive_v",) if element.kind is ElementKind.HEAD else ())}
    for key in element.tolerance:
        if key not in own:
            what = f"is of no figure of a {kind}"
            yield (*place, "tolerance", key), what, f"Its figures: {', '.join(sorted(own))}."
    yield from _odd_figures(place, element)


def _odd_figures(place: Place, element: Element) -> Iterator[Fault]:
    figures = {**KINDS[element.kind].usual, **element.figures}
    if element.kind is ElementKind.CHOPPER and figures.get("start_v") == figures.get("full_v"):
        yield (*place, "full_v"), "equals start_v", "They must differ."
    if element.kind is ElementKind.HEAD and figures["least_v"] >= figures["most_v"]:
        what = f"is {figures['least_v']:g}, not below most_v {figures['most_v']:g}"
        yield (*place, "least_v"), what, "Correct one of them."
    if element.kind is ElementKind.BATTERY and figures.get("charging_v", 99) < figures.get(
        "emf_v", 0
    ):
        yield (*place, "charging_v"), "is below emf_v", "A charging battery has more volts."


def _keys(place: Place, element: Element, speeds: Sequence[int]) -> Iterator[Fault]:
    kind = element.kind.value
    for key, kinds in _OF_SOME.items():
        if getattr(element, key) and element.kind not in kinds:
            wanted = " or ".join(sorted(one.value for one in kinds))
            remedy = f"It belongs to a {wanted}: leave it out."
            yield (*place, key), f"is not used by a {kind}", remedy
    if element.plug and "ohm" not in KINDS[element.kind].figures:
        what = f"is on a {kind}, which no plug can open"
        yield (*place, "plug"), what, "Put it on the connections at its terminals."
    for speed in (*element.closed_speeds, *element.speeds):
        if speed not in speeds:
            key = "speeds" if element.speeds else "closed_speeds"
            known = ", ".join(str(one) for one in speeds)
            what = f"names speed {speed}, which can't be chosen"
            yield (*place, key), what, f"The speeds are {known}."
    if element.kind is ElementKind.HEAD:
        for speed in speeds:
            if speed and speed not in element.speeds:
                yield (*place, "speeds"), f"says nothing of speed {speed}", "Give its volts."


def _modes(place: Place, element: Element, facts: KindFacts) -> Iterator[Fault]:
    modes = [fault.mode for fault in element.faults]
    for index, fault in enumerate(element.faults):
        at: Place = (*place, "faults", index)
        if fault.mode not in facts.modes:
            what = f"is {fault.mode.value!r}, but a {element.kind.value} does not fail so"
            yield (*at, "mode"), what, f"Its ways: {', '.join(facts.modes)}."
            continue
        if fault.mode in modes[:index]:
            yield (*at, "mode"), f"repeats {fault.mode.value!r}", "Put the two together."
        yield from _severity(at, element, fault)


def _severity(at: Place, element: Element, fault: ElementFault) -> Iterator[Fault]:
    mode = fault.mode.value
    if fault.mode not in _GRADED:
        for key in ("least", "most"):
            if getattr(fault, key) is not None:
                yield (*at, key), f"is of no use to {mode!r}", "That mode has no severity."
        return
    for key in ("least", "most"):
        if getattr(fault, key) is None:
            what = f"is missing: {mode!r} needs both bounds"
            yield (*at, key), what, f"State {_GRADED[fault.mode]}."
    if fault.least is None or fault.most is None:
        return
    if fault.least >= fault.most:
        what = f"is {fault.least:g}, not below most {fault.most:g}"
        yield (*at, "least"), what, "Correct one of them."
    if fault.mode is FaultMode.DRAGGING and fault.least <= 1.0:
        yield (*at, "least"), f"is {fault.least:g}", "Expected above 1: a motor in order has 1."
    if fault.mode is FaultMode.FLAT and fault.most >= element.figures.get("emf_v", fault.most + 1):
        yield (*at, "most"), f"is {fault.most:g}, not below emf_v", "A flat battery has less."


def _relays(circuit: Circuit) -> Iterator[Fault]:
    for index, element in enumerate(circuit.elements):
        if element.kind not in _RELAY:
            continue
        place: Place = ("elements", index, "relay")
        if not element.relay:
            what = f"is missing: {element.name!r} is a {element.kind.value}"
            yield place, what, "Give the coil and its contact the same word."
            continue
        same = [one for one in circuit.elements if one.relay == element.relay]
        coils = [one.name for one in same if one.kind is ElementKind.COIL]
        if element.kind is ElementKind.CONTACT and not coils:
            what = f"is {element.relay!r}, of which there is no coil"
            yield place, what, "Add the coil that closes this contact."
        if element.kind is ElementKind.COIL:
            if len(coils) > 1 and element.name != coils[0]:
                what = f"is {element.relay!r}, which has the coil {coils[0]!r} already"
                yield place, what, "A relay has one coil."
            if all(one.kind is not ElementKind.CONTACT for one in same):
                what = f"is {element.relay!r}, of which there is no contact"
                yield place, what, "Add the contact that this coil closes."
