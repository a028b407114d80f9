"""CircuitWords: states of a circuit and readings as a person says them."""

from __future__ import annotations

from meterlog.model.circuit import Circuit, PointKind
from meterlog.model.circuit_check import CircuitState

KEY_WORDS = {"off": "key off", "on": "key on", "engine": "engine running"}


def state_words(circuit: Circuit, state: CircuitState) -> str:
    """Say a state in words, such as ``key on, speed 4, plug motor off``.

    What the circuit does not have goes by its name.
    """
    elements = {one.name: one.label for one in circuit.elements if one.label}
    nodes = {one.name: one.label for one in circuit.nodes if one.label}
    words = [KEY_WORDS.get(state.key, state.key)]
    if state.key != "off":
        words.append(f"speed {state.speed}" if state.speed else "fan off")
    words += [f"plug {name} off" for name in sorted(state.unplugged)]
    words += [f"{elements.get(name, name)} out" for name in sorted(state.pulled)]
    words += [
        f"fused jumper from {nodes.get(first, first)} to {nodes.get(second, second)}"
        for first, second in sorted(state.jumpers)
    ]
    return ", ".join(words)


def unit_of(circuit: Circuit, point: str) -> str:
    """Give ``V`` or ``A``, as is read at a test point; ``V`` where there is no such point."""
    kinds = {one.name: one.kind for one in circuit.points}
    return "A" if kinds.get(point) is PointKind.CURRENT else "V"


def label_of(circuit: Circuit, point: str) -> str:
    """Give a test point in words; its name where there is no such point."""
    labels = {one.name: one.label for one in circuit.points}
    return labels.get(point, point)
