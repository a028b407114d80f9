"""Fan signs: how probably each thing seen, heard or felt is reported, row by row.

The fan's speed goes with the motor's back-EMF, E = V - I R. Where a person calls a fan slow, or a
relay's click is missed, are soft borders; all of them are from memory.
"""

from __future__ import annotations

from collections.abc import Mapping

import numpy as np

from meterlog.circuit.element_currents import motor
from meterlog.circuit.figures import Floats
from meterlog.circuit.network import Network, Solved
from meterlog.model.circuit import ElementKind
from meterlog.model.circuit_check import SIGN_VALUES, CircuitState, Sign

SLIP = 0.02
"""Least probability of any value: people mishear and mistype. From memory."""
_DEAD = 0.02
"""Back-EMF at which a fan may as well stand as turn, as a part of that at the highest speed."""
_SLOW = 0.75
"""Back-EMF at which a fan is called slow by half of all people, as a part of what it should be."""
_FULL, _FULL_WIDTH = 0.85, 0.03
"""From which part of the highest speed's back-EMF on it is called full, and how softly."""
_CALLED_FULL = 0.15
"""How often ``full`` is said of a fan for which the highest speed is chosen."""
_CLICK_WIDTH = 0.05
"""By which part of it a relay's pull-in current varies."""
_HEARD = 0.92
"""How often the click of a relay that pulls in is heard."""


def back_emf(network: Network, figures: Floats, volts: Floats) -> Floats:
    """Give the motor's back-EMF.

    Parameters
    ----------
    network : Network
    figures : float64[n, figures]
    volts : float64[n, nodes]

    Returns
    -------
    float64[n], volts
        Zero while it stands; of the first motor; zeros if the circuit has none.
    """
    for element in network.circuit.elements:
        if element.kind is ElementKind.MOTOR:
            own = {name: figures[:, at] for name, at in network.index.of(element.name).items()}
            at = [volts[:, column] for column in network.columns(element.nodes)]
            amps = np.abs(motor(own, at)[0].amps)
            return np.maximum(np.abs(at[0] - at[1]) - amps * own["ohm"], 0.0)
    return np.zeros(len(figures))


def pulled_in(network: Network, figures: Floats, solved: Solved) -> Floats:
    """Give how probably each relay's armature is pulled by its coil.

    Returns
    -------
    float64[n, contacts]
        Zero for a contact that is welded, whose armature does not move.
    """
    circuit = network.circuit
    coils = {e.relay: e for e in circuit.elements if e.kind is ElementKind.COIL}
    pulled = np.zeros((len(figures), len(network.contacts)))
    for at, contact in enumerate(network.contacts):
        coil = coils.get(contact.relay)
        if coil is None:
            continue
        first, second = network.columns(coil.nodes)
        across = np.abs(solved.volts[:, first] - solved.volts[:, second])
        amps = across / figures[:, network.index[coil.name, "ohm"]]
        needed = figures[:, network.index[contact.name, "pull_in_v"]] / coil.figures["ohm"]
        welded = np.abs(figures[:, network.index[contact.name, "held"]]) > 0.5
        pulled[:, at] = np.where(welded, 0.0, _soft((amps / needed - 1.0) / _CLICK_WIDTH))
    return pulled


def fan_values(emf: Floats, top_v: float, state: CircuitState, top_speed: int) -> Floats:
    """Give how probably the fan is called each of the values of ``Sign.FAN``.

    Parameters
    ----------
    emf : float64[rows], volts
        In this state; row 0 is the circuit in order, which tells what is asked for.
    top_v : float, volts
        Of the circuit in order at the highest speed.
    state : CircuitState
    top_speed : int

    Returns
    -------
    float64[rows, 4]
        Without the human slip.
    """
    part = emf / max(top_v, 1e-9)
    should = float(part[0])
    dead = 1.0 / (1.0 + (part / _DEAD) ** 3)
    border = max(_FULL, (1.0 + should) / 2.0)
    full = _soft((part - border) / _FULL_WIDTH)
    if state.speed == top_speed:
        full = _CALLED_FULL * _soft((part - _FULL) / _FULL_WIDTH)
    slow = 1.0 / (1.0 + (part / max(_SLOW * should, 1e-9)) ** 16)
    # A fan that runs unasked has nothing to be slow against but itself on high.
    unasked = _soft((part - _FULL) / _FULL_WIDTH), 0.5 * _soft((0.5 - part) / 0.1)
    is_asked = asked_for(emf, top_v)
    full = is_asked * full + (1.0 - is_asked) * unasked[0]
    slow = is_asked * slow + (1.0 - is_asked) * unasked[1]
    turns = 1.0 - dead
    by_value = {
        "dead": dead,
        "full": turns * full,
        "slow": turns * (1.0 - full) * slow,
        "runs": turns * (1.0 - full) * (1.0 - slow),
    }
    return np.stack([by_value[value] for value in SIGN_VALUES[Sign.FAN]], axis=1)


def asked_for(emf: Floats, top_v: float) -> float:
    """Tell whether the circuit in order (row 0) turns the fan in this state, 0 to 1."""
    return float(1.0 - 1.0 / (1.0 + (emf[0] / max(top_v, 1e-9) / _DEAD) ** 3))


def sign_table(
    fan: Floats, asked: float, click: Floats, answers_tap: Floats, stiff: Floats
) -> Mapping[Sign, Floats]:
    """Put the probabilities of all signs together, with the human slip.

    Parameters
    ----------
    fan : float64[rows, 4]
        As :func:`fan_values` gives them.
    asked : float
        Whether the fan should turn, 0 to 1: a tap is tried only on one that should.
    click : float64[rows]
        Probability that a relay pulls in as this state is switched on.
    answers_tap, stiff : float64[rows]

    Returns
    -------
    mapping of Sign to float64[rows, values]
        Each row of each sums up to 1.
    """
    dead = fan[:, SIGN_VALUES[Sign.FAN].index("dead")]
    return {
        Sign.FAN: _slipped(fan),
        Sign.TAP: _two(Sign.TAP, "starts", answers_tap * dead * asked),
        Sign.WHEEL: _two(Sign.WHEEL, "stiff", stiff),
        Sign.CLICK: _two(Sign.CLICK, "heard", _HEARD * click),
    }


def _two(sign: Sign, value: str, probability: Floats) -> Floats:
    table = np.stack([1.0 - probability, 1.0 - probability], axis=1)
    table[:, SIGN_VALUES[sign].index(value)] = probability
    return _slipped(table)


def _slipped(table: Floats) -> Floats:
    slipped: Floats = SLIP + (1.0 - SLIP * table.shape[1]) * table
    return slipped


def _soft(x: Floats) -> Floats:
    part: Floats = 1.0 / (1.0 + np.exp(-np.clip(x, -60.0, 60.0)))
    return part
