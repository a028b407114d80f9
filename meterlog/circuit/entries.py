"""Entries: whether what was entered can be of this circuit at all."""

from __future__ import annotations

import math
from dataclasses import replace

from meterlog.circuit.figures import JUMPER_OHM, healthy_figures, set_state
from meterlog.circuit.network import Network
from meterlog.model import Circuit, CircuitCheck, CircuitReading, CircuitState, PointKind
from meterlog.model.circuit_check import KEYS, SIGN_VALUES
from meterlog.model.errors import UsageError
from meterlog.model.nominal_volts import most_volts

MOST_A = 200.0
"""From memory: no fan's fuse lets more through for long enough to be read."""

MOST_READINGS = 60
"""Of one check; after some twenty, further ones tell next to nothing."""
MOST_U = 1000.0
"""Volts or amperes: a reading of which less is known is none."""
MOST_JUMPER_A = 80.0
"""A starting fan draws less than this through a jumper; more is a short circuit. From memory."""


def check_entries(circuit: Circuit, check: CircuitCheck) -> None:
    """Refuse what can't be.

    Raises
    ------
    UsageError
        An unknown test point, place, key position, speed, plug, fuse, node or sign; a value that is
        no number or can't be at this circuit; an uncertainty below 0 or beyond all sense; two
        entries with one id; more readings than a check holds; a jumper that makes a short circuit.
    """
    ids = [*(one.id for one in check.readings), *(one.id for one in check.signs)]
    twice = sorted({one for one in ids if ids.count(one) > 1})
    if twice:
        raise UsageError(
            f"the number {twice[0]} stands for two entries.",
            subject=circuit.name,
            remedy="Give each reading and each sign a number of its own.",
        )
    if len(check.readings) > MOST_READINGS:
        raise UsageError(
            f"a check holds {MOST_READINGS} readings, and this has {len(check.readings)}.",
            subject=circuit.name,
            remedy="Begin a new check with the readings that count; what was kept stays.",
        )
    places = [place.name for place in circuit.places]
    points = [point.name for point in circuit.points]
    for name in sorted(check.no_reach):
        _known(name, [*places, *points], f"{circuit.name}, out of reach", "place or test point")
    for name in sorted(check.opened):
        _known(name, places, f"{circuit.name}, open", "place")
    for reading in check.readings:
        where = f"reading {reading.id}"
        _known(reading.point, points, where, "test point")
        check_state(circuit, reading.state, where)
        _check_value(circuit, reading, where)
    for sign in check.signs:
        where = f"entry {sign.id}"
        check_state(circuit, sign.state, where)
        _known(sign.value, SIGN_VALUES[sign.sign], where, f"answer to '{sign.sign.value}'")


def check_state(circuit: Circuit, state: CircuitState, where: str) -> None:
    """Refuse a state that the circuit can't have, with a UsageError that begins with ``where``."""
    _known(state.key, KEYS, where, "position of the key")
    if state.speed not in circuit.speeds:
        _known(str(state.speed), [str(one) for one in circuit.speeds], where, "speed")
    for plug in sorted(state.unplugged):
        _known(plug, circuit.plugs, where, "plug")
    for fuse in sorted(state.pulled):
        _known(fuse, circuit.fuses, where, "fuse")
    nodes = [node.name for node in circuit.nodes]
    for pair in sorted(state.jumpers):
        for node in pair:
            _known(node, nodes, where, "node")
    if state.jumpers:
        _check_jumpers(circuit, state, where)


def _check_jumpers(circuit: Circuit, state: CircuitState, where: str) -> None:
    """Refuse a jumper that shorts the battery, now or once the key is on and the fan on high."""
    network = Network(circuit)
    whole = healthy_figures(circuit, network.index)[None]
    asked = replace(state, key="on" if state.key == "off" else state.key, speed=circuit.speeds[-1])
    for one in (state, asked):
        figures = set_state(circuit, network.index, whole, one)
        volts = network.solve(figures, one.jumpers).volts[0]
        for pair in sorted(one.jumpers):
            first, second = network.columns(pair)
            amps = abs(float(volts[first] - volts[second])) / JUMPER_OHM
            if amps > MOST_JUMPER_A:
                raise UsageError(
                    f"a jumper from {pair[0]} to {pair[1]} would be a short circuit of about "
                    f"{amps:.0f} A.",
                    subject=where,
                    remedy="Take it out. A fused jumper goes round one contact or connection only.",
                )


def _check_value(circuit: Circuit, reading: CircuitReading, where: str) -> None:
    point = circuit.point(reading.point)
    subject = f"{where}, {point.label}"
    if not math.isfinite(reading.value):
        raise UsageError(
            "the value is no number.", subject=subject, remedy="Enter what the meter shows."
        )
    current = point.kind is PointKind.CURRENT
    most = MOST_A if current else most_volts(circuit.nominal_v)
    unit = "A" if current else "V"
    if abs(reading.value) > most:
        raise UsageError(
            f"{reading.value:g} {unit} can't be on a {circuit.nominal_v:g} V circuit "
            f"(at most {most:g} {unit}).",
            subject=subject,
            remedy="Check the decimal point, the meter's range and the circuit chosen.",
        )
    known = 0.0 <= reading.standard_u <= MOST_U or math.isinf(reading.standard_u)
    if not known or reading.standard_u < 0.0:
        raise UsageError(
            f"its uncertainty is below 0, above {MOST_U:g} or no number.",
            subject=subject,
            remedy="State the meter's accuracy, or leave it out.",
        )
    if math.isnan(reading.meter_ohm) or reading.meter_ohm <= 0.0:
        raise UsageError(
            "the meter's input resistance must be above 0 Ω.",
            subject=subject,
            remedy="Most hand meters have 10 MΩ.",
        )


def _known(name: str, names: list[str] | tuple[str, ...], where: str, what: str) -> None:
    if name not in names:
        listed = ", ".join(names) if names else "none"
        raise UsageError(
            f"there is no {what} '{name}'.", subject=where, remedy=f"There are: {listed}."
        )
