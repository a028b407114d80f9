"""Circuit profiles: TOML text to :class:`~meterlog.model.circuit.Circuit`."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

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
    Section,
    Unit,
)
from meterlog.model.element_kinds import KINDS
from meterlog.model.errors import ProfileError
from meterlog.profile.circuit_contradictions import circuit_contradictions
from meterlog.profile.folders import shipped_folder
from meterlog.profile.schema import faults
from meterlog.profile.toml_values import toml_values

SCHEMA = "circuit.schema.json"
_OWN_KEYS = ("nodes", "elements", "units", "points")
"""Lists that circuit profiles have and no other."""


def circuit_profile(name: str, text: str, subject: str) -> Circuit:
    """Make a Circuit of TOML text.

    Parameters
    ----------
    name : str
        The profile's name.
    text : str
    subject : str
        The file, for messages.

    Returns
    -------
    Circuit

    Raises
    ------
    ProfileError
        If it is no TOML, does not fit the schema or contradicts itself; the first thing that is
        wrong, with file, line, key and what was expected.
    """
    wrong = circuit_faults(text, subject)
    if wrong:
        raise wrong[0]
    return _circuit(name, toml_values(text), text)


def circuit_faults(text: str, subject: str) -> list[ProfileError]:
    """Give everything that is wrong with a circuit profile's text; empty when nothing is.

    Parameters
    ----------
    text : str
    subject : str
        The file, for messages.
    """
    try:
        top = toml_values(text)
    except ValueError as error:
        # More than tomllib.TOMLDecodeError: numbers too long and tables too deep for Python.
        what = f"is not valid TOML: {error}."
        return [ProfileError(what, subject=subject, remedy="Correct that line.")]
    wrong = faults(top, shipped_folder() / SCHEMA, text, subject)
    return wrong or circuit_contradictions(_circuit("", top, text), top, subject)


def is_circuit(text: str) -> bool:
    """Tell whether a profile's text is meant for a circuit, by the lists that only those have."""
    try:
        top = toml_values(text)
    except ValueError:
        return False
    return any(key in top for key in _OWN_KEYS)


def _circuit(name: str, top: Mapping[str, Any], text: str) -> Circuit:
    return Circuit(
        name=name,
        title=top["title"],
        nominal_v=float(top["nominal_v"]),
        speeds=tuple(int(speed) for speed in top["speeds"]),
        nodes=tuple(_node(table) for table in top["nodes"]),
        elements=tuple(_element(table) for table in top["elements"]),
        units=tuple(
            Unit(one["name"], one["label"], one["confirm"], one.get("repair", ""))
            for one in top["units"]
        ),
        places=tuple(
            Place(one["name"], one["label"], float(one["minutes"]), tuple(one.get("cautions", ())))
            for one in top["places"]
        ),
        points=tuple(_point(table) for table in top["points"]),
        sections=tuple(_section(table) for table in top.get("sections", ())),
        pairs=tuple(_pair(table) for table in top.get("pairs", ())),
        no_fault_odds=float(top.get("no_fault_odds", 0.5)),
        basis=top["basis"],
        text=text,
    )


def _node(table: Mapping[str, Any]) -> Node:
    column, row = table["at"]
    return Node(table["name"], table["label"], (float(column), float(row)))


def _element(table: Mapping[str, Any]) -> Element:
    kind = ElementKind(table["kind"])
    known = {*KINDS[kind].figures, *KINDS[kind].usual}
    return Element(
        name=table["name"],
        kind=kind,
        nodes=tuple(table["nodes"]),
        unit=table["unit"],
        figures={key: float(value) for key, value in table.items() if key in known},
        tolerance={key: float(value) for key, value in table.get("tolerance", {}).items()},
        closed_keys=tuple(table.get("closed_keys", ())),
        closed_speeds=tuple(int(speed) for speed in table.get("closed_speeds", ())),
        relay=table.get("relay", ""),
        plug=table.get("plug", ""),
        speeds={int(key): float(value) for key, value in table.get("speeds", {}).items()},
        faults=tuple(_fault(fault) for fault in table.get("faults", ())),
        label=table["label"],
        basis=table.get("basis", ""),
    )


def _fault(table: Mapping[str, Any]) -> ElementFault:
    numbers: dict[str, Any] = {
        key: float(value) for key, value in table.items() if key not in {"mode", "basis", "why"}
    }
    return ElementFault(
        mode=FaultMode(table["mode"]),
        basis=table["basis"],
        why=table.get("why", ""),
        **numbers,
    )


def _point(table: Mapping[str, Any]) -> ProbePoint:
    return ProbePoint(
        name=table["name"],
        kind=PointKind(table["kind"]),
        nodes=tuple(table.get("nodes", ())),
        element=table.get("element", ""),
        label=table["label"],
        place=table["place"],
        reach=table["reach"],
        minutes=float(table["minutes"]),
        cautions=tuple(table.get("cautions", ())),
    )


def _section(table: Mapping[str, Any]) -> Section:
    start, end = table["nodes"]
    return Section(
        name=table["name"],
        label=table["label"],
        nodes=(start, end),
        side=table["side"],
        limit_v=float(table["limit_v"]),
        basis=table["basis"],
    )


def _pair(table: Mapping[str, Any]) -> FaultPair:
    (cause, cause_mode), (effect, effect_mode) = table["faults"]
    return FaultPair(
        faults=((cause, FaultMode(cause_mode)), (effect, FaultMode(effect_mode))),
        odds=float(table["odds"]),
        basis=table["basis"],
        words=table.get("words", ""),
    )
