"""Notes: what a reading can't tell because of how it was taken."""

from __future__ import annotations

from meterlog.circuit.posterior import Posterior
from meterlog.circuit.predictions import FLOATS
from meterlog.circuit.states import is_asked
from meterlog.model import Circuit, CircuitCheck, CircuitReading, PointKind
from meterlog.model.circuit_check import CircuitState, Sign

_LIKELY = 0.3
_IN_ORDER = 0
"""Row of the predictions in which nothing is wrong."""
_STANDS = "dead"
_NOTHING_V = 0.2
_DROPS_V = 1.0
"""A drop above this shows an open or a bad connection whatever flows. From memory."""


def notes_of(circuit: Circuit, check: CircuitCheck, posterior: Posterior) -> tuple[str, ...]:
    """Give the notes on a check, in the order of the readings' ids; common practice, no source."""
    readings = sorted(check.readings, key=lambda one: one.id)
    ghosts = [one.id for one in readings if _may_be_ghost(circuit, one, posterior)]
    off = [one.id for one in readings if one.state.unplugged]
    standing = _standing(check)
    idle = [
        one.id
        for one in readings
        if abs(one.value) < _DROPS_V
        and (not is_asked(circuit, one.state) or one.state in standing)
        and _is_connection(circuit, one.point)
        and abs(_in_order(one, posterior)) < _DROPS_V
    ]
    found = []
    if ghosts:
        found.append(
            f"{_named(ghosts)} may be a ghost voltage: the point probably floats, and a 10 MΩ "
            "meter still shows volts there. Put a test lamp across while measuring (never on the "
            "pins of a module): a ghost falls to nothing."
        )
    if off:
        found.append(
            f"{_named(off)}: with a plug off nothing flows, so a good voltage there tells nothing "
            "about resistance. Measure plugged in, with the fan on high."
        )
    if idle:
        found.append(
            f"{_named(idle)}: a voltage drop tells about a connection only while current flows; "
            "the fan was not running."
        )
    stands, runs = _unasked(circuit, check)
    if stands:
        found.append(
            f"{_named(stands)}: nothing asked the fan to run then, so that it stood says nothing."
            " Look again with the key on and the fan on high."
        )
    if runs:
        found.append(
            f"{_named(runs)}: nothing asked the fan to run then, and it did: look again whether key"
            " and speed were as noted; what runs it all the same gets its current elsewhere."
        )
    return tuple(found)


def _unasked(circuit: Circuit, check: CircuitCheck) -> tuple[list[int], list[int]]:
    """Give the signs of a fan that stood, and that ran, while nothing asked it to run."""
    signs = [
        one
        for one in sorted(check.signs, key=lambda one: one.id)
        if one.sign is Sign.FAN and not is_asked(circuit, one.state)
    ]
    return (
        [one.id for one in signs if one.value == _STANDS],
        [one.id for one in signs if one.value != _STANDS],
    )


def _is_connection(circuit: Circuit, point: str) -> bool:
    """Tell whether a point goes straight across a section whose drop has a limit."""
    where = circuit.point(point)
    ends = [set(section.nodes) for section in circuit.sections]
    return where.kind is PointKind.DROP and set(where.nodes) in ends


def _in_order(one: CircuitReading, posterior: Posterior) -> float:
    """Give what a circuit in order shows there.

    Where that is the whole voltage, as across a contact at rest, little volts tell a good deal.
    """
    source = posterior.weighed.source
    predicted = source.at(one.state, one.meter_ohm)
    return float(predicted.mean[_IN_ORDER, source.points.index(one.point)])


def _may_be_ghost(circuit: Circuit, one: CircuitReading, posterior: Posterior) -> bool:
    if circuit.point(one.point).kind is not PointKind.VOLTAGE or abs(one.value) < _NOTHING_V:
        return False
    source = posterior.weighed.source
    left = source.at(one.state, one.meter_ohm).left
    if not left.size:
        return False
    column = source.points.index(one.point)
    floats = left[source.cells.row, column] < FLOATS
    return float(posterior.weights @ floats) > _LIKELY


def _standing(check: CircuitCheck) -> frozenset[CircuitState]:
    """Give the states in which the fan was seen to stand."""
    return frozenset(
        one.state for one in check.signs if one.sign is Sign.FAN and one.value == "dead"
    )


def _named(ids: list[int]) -> str:
    listed = ", ".join(str(one) for one in ids)
    return f"Reading {listed}" if len(ids) == 1 else f"Readings {listed}"
