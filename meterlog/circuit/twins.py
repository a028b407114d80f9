"""Twins: faults of different units that no reading and no sign of a profile can tell apart."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from meterlog.circuit.hypotheses import Ints
from meterlog.circuit.network import Bools
from meterlog.circuit.predictions import Predicted, Predictions
from meterlog.circuit.severity_cells import METER_U
from meterlog.circuit.unit_sets import NO_FAULT
from meterlog.model.circuit import Circuit
from meterlog.model.circuit_check import CircuitState

_APART = 2.0
"""Readings that differ by fewer of their standard deviations are no different."""
_SIGN_APART = 0.3
_SHARE = 0.5


@dataclass(frozen=True, slots=True)
class Twins:
    """A fault that looks like one of another unit wherever one measures.

    Attributes
    ----------
    unit, words : str
        The fault that hides.
    behind, behind_words : str
        The one it hides behind; ``no-fault`` if it can't be seen at all.
    share : float
        In which part of its severities, 0.5 to 1.
    """

    unit: str
    words: str
    behind: str
    behind_words: str
    share: float


def twins(circuit: Circuit) -> tuple[Twins, ...]:
    """Find the faults of a circuit that can't be told from a fault of another unit.

    Looked at with the key on at every speed, with the key off, and with each plug off at the
    highest speed.

    Parameters
    ----------
    circuit : Circuit

    Returns
    -------
    tuple of Twins
        In the order of the faults; single faults that stay, only.
    """
    top = max(circuit.speeds)
    states = [CircuitState("on", speed) for speed in circuit.speeds]
    states.append(CircuitState("off"))
    states += [CircuitState("on", top, unplugged=frozenset({plug})) for plug in circuit.plugs]
    return twins_among(Predictions(circuit), states)


def twins_among(predictions: Predictions, states: Sequence[CircuitState]) -> tuple[Twins, ...]:
    """Find the faults that can't be told from one of another unit in any of these states.

    Two faults are apart where any one reading differs by more than two standard deviations of the
    meter and of what the healthy figures and the severities may be, or where any sign is much more
    probable under one of them.

    Parameters
    ----------
    predictions : Predictions
    states : sequence of CircuitState

    Returns
    -------
    tuple of Twins
    """
    cells = predictions.cells
    single = [
        number
        for number, item in enumerate(cells.hypotheses)
        if len(item.faults) <= 1 and not item.comes_and_goes
    ]
    own = np.flatnonzero(np.isin(cells.hypothesis, single))
    rows = cells.row[own]
    alike = np.ones((len(rows), len(rows)), dtype=np.bool_)
    for state in states:
        alike &= _alike(predictions.at(state), rows, len(predictions.nuisances))
    share = np.exp(cells.log_prior[own])
    found = []
    for hidden in single[1:]:
        mine = cells.hypothesis[own] == hidden
        for other in single:
            units = cells.hypotheses[hidden].units, cells.hypotheses[other].units
            if units[0] == units[1]:
                continue
            theirs = cells.hypothesis[own] == other
            covered = alike[np.ix_(mine, theirs)].any(axis=1)
            part = float(share[mine][covered].sum() / share[mine].sum())
            if part >= _SHARE:
                found.append(
                    Twins(
                        _name(units[0]),
                        cells.hypotheses[hidden].words,
                        _name(units[1]),
                        cells.hypotheses[other].words,
                        part,
                    )
                )
    return tuple(found)


def _name(units: frozenset[str]) -> str:
    return next(iter(units), NO_FAULT)


def _alike(predicted: Predicted, rows: Ints, nuisances: int) -> Bools:
    """Tell which rows look the same in one state, bool[rows, rows]."""
    mean, slopes = predicted.mean[rows], predicted.slopes[rows]
    alike = np.ones((len(mean), len(mean)), dtype=np.bool_)
    for point in range(mean.shape[1]):
        shared = slopes[:, point, :nuisances]
        both = shared @ shared.T
        size = np.diag(both)
        place = (slopes[:, point, nuisances:] ** 2).sum(axis=1)
        meter = (METER_U[0] + METER_U[1] * np.abs(mean[:, point])) ** 2
        ghost = predicted.ghost_sd(rows, point) ** 2
        own = size + place + meter + ghost
        variance = np.maximum(own[:, None] + own[None, :] - 2.0 * both, meter[:, None])
        apart = np.abs(mean[:, None, point] - mean[None, :, point])
        alike &= apart <= _APART * np.sqrt(variance)
    for table in predicted.signs.values():
        for value in table[rows].T:
            alike &= np.abs(value[:, None] - value[None, :]) <= _SIGN_APART
    return alike
