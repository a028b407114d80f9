"""Drops: what each section of the circuit loses under load, beside its limit.

Source: Kirchhoff's voltage law (OpenStax, University Physics 2, 10.3); the uncertainty of a
difference whose parts have an error in common: JCGM 100:2008, 5.2.2. That drops are judged on high,
and the limits of the shipped profiles: common practice, no source.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from meterlog.analysis.budgets import budget, combine, conformity
from meterlog.analysis.rounding import with_uncertainty
from meterlog.circuit.figures import Floats, healthy_figures, set_state
from meterlog.circuit.network import Network
from meterlog.circuit.states import is_asked
from meterlog.model import (
    Budget,
    Circuit,
    CircuitCheck,
    CircuitReading,
    CircuitState,
    ElementKind,
    Limits,
    PointKind,
    Section,
    SectionDrop,
    Sign,
    Source,
    Verdict,
)

_WHOLE = 0.5
"""From this part of the nominal voltage on a section is called open."""
LOADED_A = 1.0
"""From this current on a section counts as loaded. From memory: a fan on low draws more."""


def section_drops(
    circuit: Circuit, check: CircuitCheck, limits: Limits | None = None
) -> tuple[SectionDrop, ...]:
    """Judge the voltage drop of every section that was measured, in every state.

    Parameters
    ----------
    circuit : Circuit
    check : CircuitCheck
    limits : Limits or None
        For the decision rule; None: that of ``Limits()``.

    Returns
    -------
    tuple of SectionDrop
        In the profile's order of sections, then of states as they were met. A drop that was read
        straight across goes before a difference of two readings. A drop within its limit on less
        than the highest speed proves nothing, and neither does one without load: can't tell. Where
        the section is open by intention (fan off, a plug off, a fuse out, the contact of another
        speed) the limit does not apply, whatever was read: can't tell.
    """
    judge = _Judge(circuit, check, limits or Limits())
    states = tuple(dict.fromkeys(reading.state for reading in check.readings))
    made = (judge.drop(section, state) for section in circuit.sections for state in states)
    return tuple(drop for drop in made if drop is not None)


@dataclass(frozen=True, slots=True)
class _Measured:
    budget: Budget
    readings: tuple[int, ...]


class _Judge:
    def __init__(self, circuit: Circuit, check: CircuitCheck, limits: Limits) -> None:
        self._circuit, self._check, self._limits = circuit, check, limits
        self._highest = max(circuit.speeds)
        self._clamped = {
            point.name: circuit.element(point.element).kind
            for point in circuit.points
            if point.kind is PointKind.CURRENT
        }
        self._network: Network | None = None
        self._in_order: dict[CircuitState, Floats] = {}

    def drop(self, section: Section, state: CircuitState) -> SectionDrop | None:
        """Give the drop of one section in one state; None where it was not measured."""
        newest = {one.point: one for one in self._check.readings if one.state == state}
        measured = self._straight(section, newest) or self._difference(section, newest)
        if measured is None:
            return None
        value = measured.budget
        judged = conformity(value, None, section.limit_v, self._limits)
        current_a = self._current(newest)
        verdict, why = judged.verdict, self._disturbed(state)
        if why:
            verdict = Verdict.CANT_TELL
        elif verdict is Verdict.PASS:
            why = self._unloaded(state, current_a)
            verdict = Verdict.CANT_TELL if why else verdict
        elif self._open_in_order(section, state):
            verdict, why = Verdict.CANT_TELL, "in this state a circuit in order gives more as well"
        return SectionDrop(
            section=section.name,
            label=section.label,
            side=section.side,
            state=state,
            drop_v=value.value,
            expanded_v=value.expanded,
            limit_v=section.limit_v,
            verdict=verdict,
            probability=judged.probability,
            current_a=current_a,
            readings=measured.readings,
            words=_words(section, value, verdict, current_a, why or self._how(value, verdict)),
        )

    def _straight(self, section: Section, newest: dict[str, CircuitReading]) -> _Measured | None:
        """Find a reading straight across the section, in either direction."""
        for point in self._circuit.points:
            reading = newest.get(point.name)
            if point.kind is not PointKind.DROP or reading is None:
                continue
            if set(point.nodes) == set(section.nodes):
                sign = 1.0 if point.nodes == section.nodes else -1.0
                across = sign * reading.value
                made = combine(section.label, across, "V", [(_budget(reading), sign)])
                return _Measured(made, (reading.id,))
        return None

    def _difference(self, section: Section, newest: dict[str, CircuitReading]) -> _Measured | None:
        ends = [self._at(node, newest) for node in section.nodes]
        first, second = ends
        reference = self._circuit.nodes[0].name
        if first is None and section.nodes[0] != reference:
            return None
        if second is None and section.nodes[1] != reference:
            return None
        parts = [
            (reading, sign)
            for reading, sign in zip(ends, (1.0, -1.0), strict=True)
            if reading is not None
        ]
        if not parts:
            return None
        value = math.fsum(sign * reading.value for reading, sign in parts)
        made = combine(
            section.label, value, "V", [(_budget(reading), sign) for reading, sign in parts]
        )
        return _Measured(made, tuple(reading.id for reading, _ in parts))

    def _at(self, node: str, newest: dict[str, CircuitReading]) -> CircuitReading | None:
        for point in self._circuit.points:
            if point.kind is PointKind.VOLTAGE and point.nodes == (node,) and point.name in newest:
                return newest[point.name]
        return None

    def _current(self, newest: dict[str, CircuitReading]) -> float | None:
        """Give the motor's current in this state, where it was clamped."""
        for name, kind in self._clamped.items():
            if kind is ElementKind.MOTOR and name in newest:
                return newest[name].value
        return None

    def _disturbed(self, state: CircuitState) -> str:
        """Say why no limit applies in this state; empty where one does."""
        if not is_asked(self._circuit, state):
            return "nothing is asked of the fan"
        if state.unplugged:
            return "a plug is off"
        if state.pulled:
            return "a fuse is out"
        return "a jumper is in" if state.jumpers else ""

    def _open_in_order(self, section: Section, state: CircuitState) -> bool:
        """Tell whether a circuit in order has more than the limit here, as across open contacts."""
        if state not in self._in_order:
            network = self._network = self._network or Network(self._circuit)
            whole = healthy_figures(self._circuit, network.index)
            self._in_order[state] = network.solve(
                set_state(self._circuit, network.index, whole, state)
            ).volts[0]
        volts = self._in_order[state]
        names = [node.name for node in self._circuit.nodes]
        first, second = (float(volts[names.index(node)]) for node in section.nodes)
        return first - second > section.limit_v

    def _how(self, drop: Budget, verdict: Verdict) -> str:
        """Say that next to the whole voltage is lost: that is no resistance too many."""
        whole = verdict is Verdict.FAIL and drop.value > _WHOLE * self._circuit.nominal_v
        return "open, or not switched on" if whole else ""

    def _unloaded(self, state: CircuitState, current_a: float | None) -> str:
        """Say why a small drop would prove nothing here; empty where it does."""
        if current_a is not None and abs(current_a) < LOADED_A:
            return "hardly any current flows"
        if current_a is None and self._stands(state):
            return "the fan stands"
        if current_a is None and not self._runs(state):
            return "nobody said that the fan runs, and its current was not read"
        if state.speed < self._highest:
            return f"a drop is judged at speed {self._highest}, where the current is highest"
        return ""

    def _fan(self, state: CircuitState) -> Iterable[str]:
        return (
            sign.value
            for sign in self._check.signs
            if sign.sign is Sign.FAN and sign.state == state
        )

    def _stands(self, state: CircuitState) -> bool:
        return "dead" in self._fan(state)

    def _runs(self, state: CircuitState) -> bool:
        return any(value != "dead" for value in self._fan(state))


def _budget(reading: CircuitReading) -> Budget:
    """Give a reading's uncertainty as lines: its source's own gain, and the rest."""
    own = math.sqrt(max(reading.standard_u**2 - reading.shared_u**2, 0.0))
    name = f"{reading.point}, {reading.source}"
    lines = [Source(f"{name}: meter", own, "V", basis=reading.basis)]
    if reading.shared_u > 0.0:
        key = f"{reading.source}:gain"
        lines.append(Source(f"{name}: gain", reading.shared_u, "V", key=key, basis=reading.basis))
    return budget(reading.point, reading.value, "V", lines)


def _words(
    section: Section, drop: Budget, verdict: Verdict, current_a: float | None, why: str
) -> str:
    load = "" if current_a is None else f" at {current_a:.1f} A"
    value = with_uncertainty(drop.value, drop.expanded, "V")
    head = f"{section.label}: {value}{load}, limit {section.limit_v:g} V: {verdict.value}"
    if not why:
        return f"{head}."
    return f"{head}, as {why}." if verdict is Verdict.CANT_TELL else f"{head}, {why}."


def worst(drops: Sequence[SectionDrop]) -> tuple[SectionDrop, ...]:
    """Give those that fail, by how far they are beyond their limit, the worst first."""
    failed = [drop for drop in drops if drop.verdict is Verdict.FAIL]
    return tuple(sorted(failed, key=lambda drop: drop.limit_v - drop.drop_v))
