"""In order: whether a circuit in order, as its profile states it, runs its fan at all."""

from __future__ import annotations

import numpy as np

from meterlog.circuit.fan_signs import back_emf
from meterlog.circuit.figures import healthy_figures, set_state
from meterlog.circuit.network import Network
from meterlog.model import Circuit, CircuitState
from meterlog.model.circuit import ElementKind
from meterlog.model.errors import ProfileError

LEAST_PART = 0.3
"""Of the nominal voltage the motor generates at the highest speed, or the fan crawls. From memory:
a healthy one generates seven tenths of it and more."""
MOST_A = 150.0
"""Of a battery, from memory: no fan with its control head draws nearly as much."""


def check_in_order(circuit: Circuit, subject: str) -> None:
    """Refuse a circuit whose fan would not run with nothing wrong: a figure or a node is mistyped.

    Parameters
    ----------
    circuit : Circuit
    subject : str
        What to name in the error, such as the file.

    Raises
    ------
    ProfileError
        With key on and the highest speed there is no solution, the fan stands or crawls, or a
        battery gives more than any fan draws.
    """
    state = CircuitState("on", max(circuit.speeds))
    network = Network(circuit)
    figures = set_state(
        circuit, network.index, healthy_figures(circuit, network.index)[None], state
    )
    solved = network.solve(figures)
    where = f"With nothing wrong, key on and speed {state.speed}"
    remedy = "Check the nodes and figures of the elements between battery and motor."
    if not bool(solved.settled[0]) or not np.isfinite(solved.volts).all():
        raise ProfileError(f"{where}, it has no solution.", subject=subject, remedy=remedy)
    for element in circuit.elements:
        if element.kind is not ElementKind.BATTERY:
            continue
        own = network.index.of(element.name)
        minus, plus = sorted(
            float(solved.volts[0, at]) for at in network.columns(element.nodes[:2])
        )
        amps = abs(float(figures[0, own["emf_v"]]) - (plus - minus)) / float(figures[0, own["ohm"]])
        if amps > MOST_A:
            raise ProfileError(
                f"{where}, battery '{element.name}' would give {amps:.0f} A: a short circuit.",
                subject=subject,
                remedy=remedy,
            )
    emf_v = float(back_emf(network, figures, solved.volts)[0])
    if emf_v < LEAST_PART * circuit.nominal_v:
        raise ProfileError(
            f"{where}, its fan would stand or crawl: the motor generates {emf_v:.1f} V of "
            f"{circuit.nominal_v:g} V.",
            subject=subject,
            remedy=remedy,
        )
