"""CircuitJson: a check of a circuit and what follows from it, ready for JSON."""

from __future__ import annotations

import math
from typing import Any

from meterlog.circuit.cautions import confirming_cautions
from meterlog.evidence.circuit_basis_text import unmeasured_points
from meterlog.model import (
    Circuit,
    CircuitCheck,
    CircuitReading,
    CircuitVerdict,
    DoubtedReading,
    Expectation,
    ProposedTest,
    SectionDrop,
    Suspect,
)
from meterlog.model.circuit_entries import state_fields
from meterlog.model.circuit_words import unit_of


def circuit_to_dict(
    circuit: Circuit, check: CircuitCheck, verdict: CircuitVerdict
) -> dict[str, Any]:
    """Give a check as one JSON object.

    Parameters
    ----------
    circuit : Circuit
    check : CircuitCheck
    verdict : CircuitVerdict
        Of this check.

    Returns
    -------
    dict
        Keys as DEVELOPERS.md lists them; units stand in the names or in ``unit``; no number is NaN
        or infinite.
    """
    return {
        "circuit": circuit.name,
        "title": circuit.title,
        "settled": verdict.settled,
        "settled_words": verdict.settled_words,
        "bits_left": _number(verdict.bits_left),
        "suspects": [_suspect(one) for one in verdict.suspects],
        "next_test": None if verdict.next_test is None else _test(verdict.next_test),
        "doubted": [_doubted(one) for one in verdict.doubted],
        "drops": [_drop(one) for one in verdict.drops],
        "readings": [_reading(circuit, one) for one in check.readings],
        "signs": [
            {
                "id": one.id,
                "state": state_fields(one.state),
                "sign": one.sign.value,
                "value": one.value,
                "t_utc": one.t_utc,
            }
            for one in check.signs
        ],
        "expectations": [_expectation(circuit, one) for one in verdict.expectations],
        "no_reach": sorted(check.no_reach),
        "opened": sorted(check.opened),
        "not_measured": unmeasured_points(circuit, check),
        "cautions": list(confirming_cautions(circuit, verdict)),
        "basis": circuit.basis,
        "notes": list(verdict.notes),
    }


def _number(value: float | None) -> float | None:
    return None if value is None or not math.isfinite(value) else float(value)


def _suspect(one: Suspect) -> dict[str, Any]:
    return {
        "unit": one.unit,
        "label": one.label,
        "probability": _number(one.probability),
        "probability_without_best": _number(one.without_best),
        "faults": [
            {
                "words": fault.words,
                "element": fault.element,
                "mode": fault.mode,
                "probability": _number(fault.probability),
                "comes_and_goes": fault.comes_and_goes,
                "severity": _number(fault.severity),
                "severity_low": _number(fault.severity_low),
                "severity_high": _number(fault.severity_high),
                "severity_unit": fault.severity_unit,
            }
            for fault in one.faults
        ],
    }


def _test(test: ProposedTest) -> dict[str, Any]:
    return {
        "point": test.point,
        "sign": None if test.sign is None else test.sign.value,
        "state": state_fields(test.state),
        "repeat_of": test.repeat_of,
        "words": test.words,
        "meaning": test.meaning,
        "bits": _number(test.bits),
        "minutes": _number(test.minutes),
        "healthy_low": _number(test.healthy_low),
        "healthy_high": _number(test.healthy_high),
        "cautions": list(test.cautions),
        "outcomes": [
            {
                "low": _number(one.low),
                "high": _number(one.high),
                "value": one.value,
                "probability": _number(one.probability),
                "units": [
                    {"unit": unit, "probability": _number(chance)} for unit, chance in one.units
                ],
                "words": one.words,
            }
            for one in test.outcomes
        ],
    }


def _doubted(one: DoubtedReading) -> dict[str, Any]:
    return {
        "id": one.id,
        "point": one.point,
        "probability": _number(one.probability),
        "expected_low": _number(one.expected_low),
        "expected_high": _number(one.expected_high),
        "words": one.words,
    }


def _drop(one: SectionDrop) -> dict[str, Any]:
    return {
        "section": one.section,
        "label": one.label,
        "side": one.side,
        "state": state_fields(one.state),
        "drop_v": _number(one.drop_v),
        "expanded_v": _number(one.expanded_v),
        "limit_v": _number(one.limit_v),
        "verdict": one.verdict.value,
        "probability": _number(one.probability),
        "current_a": _number(one.current_a),
        "readings": list(one.readings),
        "words": one.words,
    }


def _reading(circuit: Circuit, one: CircuitReading) -> dict[str, Any]:
    return {
        "id": one.id,
        "state": state_fields(one.state),
        "point": one.point,
        "value": _number(one.value),
        "unit": unit_of(circuit, one.point),
        "standard_u": _number(one.standard_u),
        "meter_ohm": _number(one.meter_ohm),
        "complaint": one.complaint,
        "source": one.source,
        "basis": one.basis,
        "t_utc": one.t_utc,
    }


def _expectation(circuit: Circuit, one: Expectation) -> dict[str, Any]:
    return {
        "point": one.point,
        "unit": unit_of(circuit, one.point),
        "state": state_fields(one.state),
        "healthy_low": _number(one.healthy_low),
        "healthy_high": _number(one.healthy_high),
        "found": _number(one.found),
        "found_expanded": _number(one.found_u),
        "fits": one.fits,
    }
