"""What a good circuit profile says: its units with their odds, and its test points."""

from __future__ import annotations

from pathlib import Path

from meterlog.commands.terminal import table
from meterlog.model import Circuit


def circuit_summary(file: Path, circuit: Circuit) -> str:
    """Give what a circuit profile says, for a person to compare with the vehicle's manual."""
    shares = unit_shares(circuit)
    units = [(f"{100 * shares[unit.name]:.1f} %", unit.label) for unit in circuit.units]
    places = {place.name: place for place in circuit.places}
    points = [
        (
            point.name,
            point.label,
            places[point.place].label,
            f"{places[point.place].minutes:g} + {point.minutes:g}",
        )
        for point in circuit.points
    ]
    speeds = ", ".join(str(speed) for speed in circuit.speeds)
    nothing = 100 * shares[""]
    parts = (
        f"{file}: no fault.",
        f"  {circuit.title}",
        f"  nominal {circuit.nominal_v:g} V, speeds {speeds}; {len(circuit.elements)} elements "
        f"between {len(circuit.nodes)} nodes, {len(circuit.sections)} sections with a limit",
        _indented(table(("odds", "unit"), [*units, (f"{nothing:.1f} %", "nothing electrical")])),
        _indented(table(("test point", "what it is", "where", "minutes"), points)),
    )
    return "\n".join(parts)


def _indented(text: str) -> str:
    return "\n".join(f"    {line}" for line in text.splitlines())


def unit_shares(circuit: Circuit) -> dict[str, float]:
    """Give the share of each unit before anything was measured; '' is nothing electrical.

    A pair of faults counts for both of its units, so the shares may add up to more than 1.
    """
    unit_of = {element.name: element.unit for element in circuit.elements}
    odds = {unit.name: 0.0 for unit in circuit.units}
    total = circuit.no_fault_odds
    for element in circuit.elements:
        for fault in element.faults:
            odds[element.unit] += fault.odds
            total += fault.odds
    for pair in circuit.pairs:
        total += pair.odds
        for unit in {unit_of[name] for name, _ in pair.faults}:
            odds[unit] += pair.odds
    return {name: one / total for name, one in odds.items()} | {"": circuit.no_fault_odds / total}


def circuit_json(circuit: Circuit) -> dict[str, object]:
    """Give the same as a JSON object."""
    shares = unit_shares(circuit)
    return {
        "title": circuit.title,
        "nominal_v": circuit.nominal_v,
        "speeds": list(circuit.speeds),
        "nodes": [node.name for node in circuit.nodes],
        "elements": [
            {"name": one.name, "kind": one.kind.value, "unit": one.unit} for one in circuit.elements
        ],
        "units": [
            {"name": unit.name, "label": unit.label, "odds": shares[unit.name]}
            for unit in circuit.units
        ],
        "no_fault_odds": shares[""],
        "points": [
            {"name": one.name, "kind": one.kind.value, "label": one.label, "place": one.place}
            for one in circuit.points
        ],
        "plugs": list(circuit.plugs),
        "fuses": list(circuit.fuses),
        "basis": circuit.basis,
    }
