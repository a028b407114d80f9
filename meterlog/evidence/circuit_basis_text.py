"""CircuitBasisText: what the verdict on a check rests on: meters, what was not measured, odds."""

from __future__ import annotations

import math
from collections.abc import Sequence

from meterlog.model import Circuit, CircuitCheck, CircuitReading, CircuitVerdict, Suspect
from meterlog.model.circuit_words import label_of

_READ_THEM = (
    "Two faults at once count for both of their units: odds may add up to more than 100 %. A "
    "reading may be that of a slipped probe: beside the odds of a likely unit stands what is left "
    "of them without the entry that speaks most for it."
)


def meter_lines(check: CircuitCheck) -> list[str]:
    """Say by what the readings were taken, with what U, and when; empty without readings."""
    groups: dict[tuple[str, str, float], list[int]] = {}
    for one in check.readings:
        groups.setdefault((one.source, one.basis, one.meter_ohm), []).append(one.id)
    lines = [
        f"{_entries(ids)}: {source or 'not said by what'}; U by {basis or 'nothing stated'}; "
        f"{_load(ohm)}"
        for (source, basis, ohm), ids in groups.items()
    ]
    if lines:
        lines.append("± is for about 95 %: twice the standard uncertainty.")
    there = _complaint(check.readings) if check.readings else []
    entered = [one.t_utc for one in check.readings] + [one.t_utc for one in check.signs]
    times = sorted(one for one in entered if one)
    if times:
        there.append(f"Entered from {times[0]} to {times[-1]} (UTC).")
    return [*lines, *there]


def _entries(ids: Sequence[int]) -> str:
    listed = ", ".join(str(one) for one in sorted(ids))
    return f"Entry {listed}" if len(ids) == 1 else f"Entries {listed}"


def _load(ohm: float) -> str:
    if not math.isfinite(ohm):
        return "clamp"
    return f"{ohm / 1e6:g} MΩ" if ohm >= 1e6 else f"{ohm / 1e3:g} kΩ"


def _complaint(readings: Sequence[CircuitReading]) -> list[str]:
    """Say at which readings the complaint was there."""
    words = {True: "The complaint was there", False: "The complaint was not there"}
    lines = []
    for value, said in words.items():
        ids = [one.id for one in readings if one.complaint is value]
        if ids:
            lines.append(f"{_entries(ids)}: {said[0].lower()}{said[1:]}.")
    unsaid = [one.id for one in readings if one.complaint is None]
    if unsaid:
        lines.append(f"{_entries(unsaid)}: not said whether the complaint was there.")
    return lines


def unmeasured_points(circuit: Circuit, check: CircuitCheck) -> list[str]:
    """Name the test points at which nothing was read, in the order of the profile."""
    read = {one.point for one in check.readings}
    return [point.name for point in circuit.points if point.name not in read]


def unmeasured_lines(circuit: Circuit, check: CircuitCheck) -> list[str]:
    """Say where nothing was read, apart from that what could not be reached."""
    left = unmeasured_points(circuit, check)
    shut = [name for name in left if {name, circuit.point(name).place} & check.no_reach]
    lines = []
    free = [label_of(circuit, name) for name in left if name not in shut]
    if free:
        lines.append(f"{'; '.join(free)}.")
    if shut:
        labels = "; ".join(label_of(circuit, name) for name in shut)
        lines.append(f"Could not be reached: {labels}.")
    return lines


def odds_lines(circuit: Circuit, verdict: CircuitVerdict, shown: Sequence[Suspect]) -> list[str]:
    """Say where the odds come from: of the profile, and of the likeliest fault of each suspect."""
    lines = ["By Bayes' rule from the odds that the circuit profile gives before any reading."]
    if circuit.basis:
        lines.append(f"Profile: {circuit.basis}")
    for one in shown:
        basis = _fault_basis(circuit, one)
        if basis:
            lines.append(f"{one.faults[0].words}: {basis}")
    return [*lines, _READ_THEM] if verdict.suspects else lines


def _fault_basis(circuit: Circuit, suspect: Suspect) -> str:
    """Give where the odds of a suspect's likeliest fault come from; empty where nobody says."""
    if not suspect.faults:
        return ""
    first = suspect.faults[0]
    pairs = {" + ".join(name for name, _ in pair.faults): pair.basis for pair in circuit.pairs}
    if first.element in pairs:
        return pairs[first.element]
    bases = (
        fault.basis
        for element in circuit.elements
        if element.name == first.element
        for fault in element.faults
        if fault.mode == first.mode
    )
    return next(bases, "")
