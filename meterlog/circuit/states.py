"""States: what a technician would set the circuit to, and what that is called."""

from __future__ import annotations

from meterlog.model import Circuit, CircuitState, ElementKind


def plain_states(circuit: Circuit) -> tuple[CircuitState, ...]:
    """Give the states that need no plug touched: key on, each of off, lowest and highest; key off.

    The speeds between come after them (:func:`between_states`).
    """
    speeds = sorted({min(circuit.speeds), _lowest(circuit), max(circuit.speeds)}, reverse=True)
    return (*(CircuitState("on", speed) for speed in speeds), CircuitState("off", 0))


def between_states(circuit: Circuit) -> tuple[CircuitState, ...]:
    """Give the states of the speeds between lowest and highest, key on."""
    ends = {state.speed for state in plain_states(circuit)}
    return tuple(CircuitState("on", one) for one in sorted(circuit.speeds) if one not in ends)


def seen_states(circuit: Circuit) -> tuple[CircuitState, ...]:
    """Give the states in which one only looks, listens or feels: each speed, and key off."""
    speeds = sorted(circuit.speeds, reverse=True)
    return (*(CircuitState("on", speed) for speed in speeds), CircuitState("off", 0))


def disturbed_states(circuit: Circuit) -> tuple[CircuitState, ...]:
    """Give the states in which one plug is off or one fuse is out, key on, on the highest speed.

    They come after the plain ones have been used up: a plug that was moved may have taken the
    fault away with it, before anything was written down (common practice, no source).
    """
    highest = max(circuit.speeds)
    plugs = (CircuitState("on", highest, unplugged=frozenset({one})) for one in circuit.plugs)
    fuses = (CircuitState("on", highest, pulled=frozenset({one})) for one in circuit.fuses)
    return (*plugs, *fuses)


def _lowest(circuit: Circuit) -> int:
    return min((speed for speed in circuit.speeds if speed > 0), default=0)


def is_plain(state: CircuitState) -> bool:
    """Tell whether nothing is unplugged, pulled or bridged."""
    return not (state.unplugged or state.pulled or state.jumpers)


def is_asked(circuit: Circuit, state: CircuitState) -> bool:
    """Tell whether the fan is asked to run."""
    return state.key != "off" and state.speed > 0 and state.speed in circuit.speeds


def place_of(circuit: Circuit, nodes: frozenset[str]) -> str:
    """Give the place at which most test points touch these nodes; empty if none does."""
    counts: dict[str, int] = {}
    for point in circuit.points:
        touched = frozenset(point.nodes)
        if point.element:
            touched = frozenset(circuit.element(point.element).nodes)
        if touched & nodes:
            counts[point.place] = counts.get(point.place, 0) + len(touched & nodes)
    return max(counts, key=lambda name: counts[name]) if counts else ""


def plug_place(circuit: Circuit, plug: str) -> str:
    """Give the place where a plug is taken off; empty if no test point is there."""
    nodes = frozenset(n for e in circuit.elements if e.plug == plug for n in e.nodes)
    return place_of(circuit, nodes)


def fuse_place(circuit: Circuit, fuse: str) -> str:
    """Give the place where a fuse is pulled; empty if no test point is there."""
    return place_of(circuit, frozenset(circuit.element(fuse).nodes))


def motor_place(circuit: Circuit) -> str:
    """Give the place where a hand gets at the motor and its wheel; empty if there is none."""
    motors = [e for e in circuit.elements if e.kind is ElementKind.MOTOR]
    clamped = [p.place for p in circuit.points if p.element in {m.name for m in motors}]
    if clamped:
        return clamped[0]
    return place_of(circuit, frozenset(n for motor in motors for n in motor.nodes))
