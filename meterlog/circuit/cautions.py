"""Cautions: what can hurt the technician, the meter or the vehicle at a test point, in words.

Common practice of the trade, no source, in words of our own. They stand beside the vehicle's
service manual, local codes and licensed practice, which come before them.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from types import MappingProxyType

from meterlog.circuit.states import fuse_place, place_of, plug_place
from meterlog.model.circuit import Circuit, ElementKind
from meterlog.model.circuit_check import CircuitState, CircuitVerdict

DEFER = (
    "The vehicle's service manual, local codes and licensed practice come before anything shown "
    "here."
)
"""Goes with every proposal."""

CAUTIONS: Mapping[str, str] = MappingProxyType(
    {
        "high-voltage": (
            "Hybrid or electric: stay off orange cables and anything above 60 V DC; only the 12 V "
            "or 24 V fan circuit, and only if you are trained for the vehicle."
        ),
        "airbag": (
            "Airbag wiring behind the dash: make the system safe as the manual says and wait as "
            "long as it says; never probe or ohm it; its connectors are often yellow."
        ),
        "moving-fan": (
            "Moving fan: keep fingers, hair, sleeves and leads out of the wheel; it may start by "
            "itself when a fault comes and goes."
        ),
        "engine": (
            "Engine running: park brake on, out of gear, exhaust led away, hair, sleeves and leads "
            "clear of belts and fans."
        ),
        "hot": (
            "Hot parts: controllers and resistor packs burn skin long after running; let them cool."
        ),
        "unplugging": (
            "Fan off and key off before unplugging or plugging in: the plug arcs under load, and "
            "the spike kills controllers."
        ),
        "jumper": (
            "Fused jumper only, with a fuse no larger than the circuit's own; never across a fuse "
            "that has blown, never across the motor or another load; the fan may start at once."
        ),
        "fuse": (
            "Fuses: same rating and type only; find out why one opened before a new one goes in."
        ),
        "meter": (
            "Meter: leads in the V jack, never left in the current jack, where they are a short; "
            "meter and leads of CAT III 600 V or better; a clamp for the motor's current, as a "
            "starting fan opens the meter's fuse."
        ),
        "back-probe": (
            "Back-probe: go in from the back of the connector; don't pierce insulation, don't "
            "spread terminals, keep two bare pins from touching."
        ),
        "module": (
            "Module pins: 10 MΩ meter only; no test lamp, no ohmmeter while there is power."
        ),
    }
)
"""Words by key: the keys of profiles, and ``unplugging``, which follows from a state. In the order
in which they are shown: what hurts people first."""


def caution_words(keys: Iterable[str]) -> tuple[str, ...]:
    """Give cautions in words, each once, what hurts people first.

    Parameters
    ----------
    keys : iterable of str
        Of :data:`CAUTIONS`.

    Raises
    ------
    KeyError
        If there is no such caution.
    """
    wanted = set(keys)
    unknown = wanted - set(CAUTIONS)
    if unknown:
        raise KeyError(min(unknown))
    return tuple(words for key, words in CAUTIONS.items() if key in wanted)


def caution_keys(
    circuit: Circuit, point: str = "", state: CircuitState | None = None
) -> tuple[str, ...]:
    """Give the keys of all cautions for measuring at a point in a state.

    Parameters
    ----------
    circuit : Circuit
    point : str
        Name of a test point; empty: none, as for what is seen or heard.
    state : CircuitState or None
        What the circuit is set to for it.

    Returns
    -------
    tuple of str
        In the order of :data:`CAUTIONS`.

    Raises
    ------
    KeyError
        If the circuit has no such point.
    """
    keys: set[str] = set()
    if point:
        where = circuit.point(point)
        # Whatever is measured: leads in the wrong jack are a short wherever they touch.
        keys |= {"meter", *where.cautions, *circuit.place(where.place).cautions}
    if state is not None:
        keys |= _of_state(circuit, state)
    return tuple(key for key in CAUTIONS if key in keys)


def confirming_cautions(circuit: Circuit, verdict: CircuitVerdict) -> tuple[str, ...]:
    """Give the cautions for what confirms a verdict, once no further test is proposed.

    Where a test is proposed it has its own. Else the words of the verdict send the technician to a
    unit, to measure there once more, to run the motor by itself or to take a fuse out.

    Parameters
    ----------
    circuit : Circuit
    verdict : CircuitVerdict

    Returns
    -------
    tuple of str
        In words, what hurts people first; empty where a test is proposed.
    """
    if verdict.next_test is not None:
        return ()
    named = [one.unit for one in verdict.suspects[:_CONFIRMED]]
    # Whatever else is done, the fan runs, or is waited for to run.
    keys = {"moving-fan"}
    for unit in [verdict.settled] if verdict.settled else named:
        keys |= _of_unit(circuit, unit)
    return (*caution_words(keys), DEFER)


_CONFIRMED = 2
"""Of how many units the words tell what confirms them while it stays open."""


def _of_unit(circuit: Circuit, unit: str) -> set[str]:
    """Give the keys for work at a unit: of the places where it is met, and of its kind."""
    mine = [one for one in circuit.elements if one.unit == unit]
    if not mine:  # nothing electrical
        return set()
    nodes = {node for one in mine for node in one.nodes}
    places = {
        point.place
        for point in circuit.points
        if nodes & set(point.nodes) or point.element in {one.name for one in mine}
    }
    keys = {"meter", *(key for place in places for key in circuit.place(place).cautions)}
    if any(one.plug for one in mine):
        keys.add("unplugging")
    if any(one.kind is ElementKind.FUSE for one in mine):
        keys.add("fuse")
    if any(one.kind is ElementKind.MOTOR for one in mine):
        # A motor is confirmed by running it on a fused feed of its own.
        keys |= {"unplugging", "jumper"}
    return keys


def _of_state(circuit: Circuit, state: CircuitState) -> set[str]:
    """Give the keys for setting a state: those of the places where it is set, too."""
    places = {
        *(plug_place(circuit, one) for one in state.unplugged),
        *(fuse_place(circuit, one) for one in state.pulled),
        *(place_of(circuit, frozenset({node})) for ends in state.jumpers for node in ends),
    }
    keys = {key for place in places if place for key in circuit.place(place).cautions}
    if state.key == "engine":
        keys.add("engine")
    if state.unplugged or state.pulled:
        keys.add("unplugging")
    if state.pulled:
        keys.add("fuse")
    if state.jumpers:
        keys |= {"jumper", "moving-fan"}
    return keys
