"""Suspects: the replaceable units with their odds and the faults behind them."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from meterlog.circuit.fault_words import COMES_AND_GOES, SEVERITY_UNITS
from meterlog.circuit.posterior import Posterior
from meterlog.circuit.unit_sets import NO_FAULT
from meterlog.circuit.wording import unit_label
from meterlog.model import Circuit, Suspect
from meterlog.model.circuit_check import SuspectFault

_SHOWN = 0.01
MOST_UNTOLD = 0.95
"""No unit is put above this before it is told, whatever Bayes' rule says. A probe at the wrong
point, a state that was not set or a circuit that differs from its profile is in no model; while one
entry carries a unit, or a test within reach may still speak for another, that may be so."""


def suspects_of(
    circuit: Circuit, posterior: Posterior, *, told: bool = False
) -> tuple[Suspect, ...]:
    """Give all units and ``no-fault``, likeliest first; equal ones by name.

    Until a unit is ``told``, none has more than :data:`MOST_UNTOLD`.
    """
    probabilities = posterior.unit_probabilities()
    least = posterior.least_without()
    faults = _faults(posterior)
    found = []
    for unit in likeliest(probabilities):
        most = probabilities[unit] if told else min(probabilities[unit], MOST_UNTOLD)
        part = most / probabilities[unit] if probabilities[unit] else 1.0
        own = [replace(one, probability=part * one.probability) for one in faults.get(unit, [])]
        own.sort(key=lambda one: (-one.probability, one.words))
        label = unit_label(circuit, unit)
        found.append(Suspect(unit, label, most, least[unit], tuple(own)))
    return tuple(found)


def likeliest(probabilities: Mapping[str, float]) -> list[str]:
    """Give the units, likeliest first; equal ones by name."""
    return sorted(probabilities, key=lambda unit: (-probabilities[unit], unit))


def _faults(posterior: Posterior) -> dict[str, list[SuspectFault]]:
    """Give the faults above a percent of each unit."""
    found: dict[str, list[SuspectFault]] = {}
    hypotheses = posterior.weighed.source.cells.hypotheses
    for at, one in enumerate(hypotheses):
        share = float(posterior.hypothesis_weights[at])
        if share < _SHOWN:
            continue
        severity = posterior.severity(at)
        unit = SEVERITY_UNITS.get(one.faults[0][1], "") if one.faults else ""
        words = one.words
        if severity is not None:
            told = severity_words(severity.median, severity.low, severity.high, unit)
            core = words.removesuffix(COMES_AND_GOES)
            words = f"{core}, {told}{words[len(core) :]}"
        fault = SuspectFault(
            words=words,
            element=" + ".join(element for element, _ in one.faults),
            mode=" + ".join(mode.value for _, mode in one.faults),
            probability=share,
            comes_and_goes=one.comes_and_goes,
            severity=None if severity is None else severity.median,
            severity_low=None if severity is None else severity.low,
            severity_high=None if severity is None else severity.high,
            severity_unit="" if severity is None else unit,
        )
        for name in sorted(one.units) or (NO_FAULT,):
            found.setdefault(name, []).append(fault)
    return found


def severity_words(median: float, low: float, high: float, unit: str) -> str:
    """Say a severity, such as ``about 0.15 Ω (0.12 to 0.19)``."""
    return f"about {_two_digits(median)} {unit} ({_two_digits(low)} to {_two_digits(high)})"


def _two_digits(value: float) -> str:
    text = f"{value:.2g}"
    return text if "e" not in text else f"{float(text):.0f}"
