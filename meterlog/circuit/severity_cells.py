"""Severity cells: a severity cut into steps within which every reading is close to a line.

The edges of a fault's cells are found on an even grid of the logarithm of its severity: each cell
is as long as the readings between its edges stay within a tolerance of the chord through them
(greedy; for one variable that gives the fewest pieces: Imai and Iri, Computer Vision, Graphics, and
Image Processing 36 (1986) 31). Where even one step of the grid bends too much, as where a relay
drops out, it is halved.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from itertools import pairwise

import numpy as np

from meterlog.circuit.figures import Floats, healthy_figures, set_fault, set_state
from meterlog.circuit.hypotheses import Cells, Hypothesis, hypotheses_of, severity_bounds
from meterlog.circuit.network import Network
from meterlog.model.circuit import FaultMode, PointKind
from meterlog.model.circuit_check import CircuitState

Fault = tuple[str, FaultMode]
Edges = Mapping[Fault, Floats]
Reader = Callable[[Sequence[tuple[Fault, float]]], Floats]

METER_U = (0.02, 0.005)
"""Standard uncertainty of a usual hand meter at a 12 V circuit: so many volts, and such a part of
the reading; no reading may bend further than that away from the line within a cell. From memory."""
PAIR_BEND = 5.0
"""How many times that in pairs, which are rare and have two severities."""
_STEP = 0.25
_SHORTEST = 0.13
"""Cells shorter than this, in the logarithm, are not halved: severities within 7 % are the same."""


def cells_of(network: Network) -> Cells:
    """Cut all that may be wrong with a circuit into cells.

    Parameters
    ----------
    network : Network

    Returns
    -------
    Cells
        In the order of :func:`~meterlog.circuit.hypotheses.hypotheses_of`, within a fault by rising
        severity (of pairs: the second fault's runs faster). Neighbouring cells share an edge.

    Raises
    ------
    ValueError
        As :func:`~meterlog.circuit.hypotheses.hypotheses_of` and
        :func:`~meterlog.circuit.hypotheses.severity_bounds`.
    """
    hypotheses = hypotheses_of(network.circuit)
    single, paired = _edges(network, hypotheses)
    first_row: dict[tuple[Fault, ...], int] = {}
    hypothesis: list[int] = []
    parts: list[_Part] = []
    row: list[int] = []
    rows = 0
    for number, item in enumerate(hypotheses):
        cut = _product([(paired if len(item.faults) > 1 else single).get(f) for f in item.faults])
        if item.faults not in first_row:
            first_row[item.faults] = rows
            rows += len(cut)
        hypothesis += [number] * len(cut)
        parts += cut
        row += range(first_row[item.faults], first_row[item.faults] + len(cut))
    share = np.array([part.share for part in parts])
    prior = np.array([item.prior for item in hypotheses])
    with np.errstate(divide="ignore"):
        log_prior = np.log(prior[hypothesis] * share)
    return Cells(
        hypotheses=hypotheses,
        hypothesis=np.array(hypothesis, dtype=np.intp),
        log_prior=log_prior,
        severity=np.array([part.severity for part in parts]),
        half_width=np.array([part.half_width[0] for part in parts]),
        row=np.array(row, dtype=np.intp),
        rows=rows,
        second_half_width=np.array([part.half_width[1] for part in parts]),
    )


class _Part:
    """One cell of one hypothesis: its share of the severities, their middle and half widths."""

    def __init__(self, sides: Sequence[tuple[float, float, float] | None]) -> None:
        padded = [*sides, None, None][:2]
        known = [side for side in padded if side is not None]
        self.share = float(np.prod([(high - low) / whole for low, high, whole in known]))
        self.severity = [np.nan if s is None else float(np.exp((s[0] + s[1]) / 2)) for s in padded]
        self.half_width = [0.0 if s is None else (s[1] - s[0]) / 2 for s in padded]


def _product(axes: Sequence[Floats | None]) -> list[_Part]:
    """Give the cells of a hypothesis whose faults have these edges (None: no severity)."""
    sides: list[list[tuple[float, float, float] | None]] = [[]]
    for edges in axes:
        choices: list[tuple[float, float, float] | None] = [None]
        if edges is not None:
            whole = float(edges[-1] - edges[0])
            choices = [(float(low), float(high), whole) for low, high in pairwise(edges)]
        sides = [[*before, choice] for before in sides for choice in choices]
    return [_Part(side) for side in sides]


def _edges(network: Network, hypotheses: Sequence[Hypothesis]) -> tuple[Edges, Edges]:
    """Give the edges of each fault's cells, in the logarithm of its severity.

    Returns
    -------
    mapping, mapping
        For single faults, and for those in pairs.
    """
    grids: dict[Fault, Floats] = {}
    for fault in dict.fromkeys(fault for item in hypotheses for fault in item.faults):
        bounds = severity_bounds(network.circuit, *fault)
        if bounds is not None:
            low, high = np.log(bounds)
            grids[fault] = np.linspace(low, high, max(2, int(np.ceil((high - low) / _STEP)) + 1))
    read = _reader(network)
    values = _read_grids(read, grids)
    paired = {f: grid[_longest(grid, values[f], PAIR_BEND)] for f, grid in grids.items()}
    chosen = {f: _longest(grid, values[f]) for f, grid in grids.items()}
    single = {f: grid[chosen[f]] for f, grid in grids.items()}
    ends = {f: values[f][chosen[f]] for f in grids}
    return _halved(read, single, ends), paired


def _reader(network: Network) -> Reader:
    """Give a function that tells what faults of given severity, in its logarithm, make of readings.

    What it gives has the shape (faults, speeds x points): all voltage points without a meter, the
    key on, at every speed, scaled down to a circuit of 12 V.
    """
    circuit = network.circuit
    healthy = healthy_figures(circuit, network.index)
    scale = 12.0 / circuit.nominal_v
    points = [p.nodes for p in circuit.points if p.kind is not PointKind.CURRENT]
    first = [network.node_column[nodes[0]] for nodes in points]
    second = [network.node_column[nodes[1]] if len(nodes) > 1 else 0 for nodes in points]

    def read(wanted: Sequence[tuple[Fault, float]]) -> Floats:
        figures = np.tile(healthy, (len(wanted), 1))
        for row, ((element, mode), severity) in enumerate(wanted):
            set_fault(
                network.index,
                figures,
                circuit.element(element),
                mode,
                float(np.exp(severity)),
                slice(row, row + 1),
            )
        shown = []
        for speed in circuit.speeds:
            solved = network.solve(
                set_state(circuit, network.index, figures, CircuitState("on", speed))
            )
            volts = np.where(solved.settled[:, None], solved.volts, 0.0)
            shown.append((volts[:, first] - volts[:, second]) * scale)
        return np.concatenate(shown, axis=1)

    return read


def _read_grids(read: Reader, grids: Edges) -> dict[Fault, Floats]:
    if not grids:
        return {}
    together = read([(fault, float(at)) for fault, grid in grids.items() for at in grid])
    ends = np.cumsum([len(grid) for grid in grids.values()])[:-1]
    return dict(zip(grids, np.split(together, ends), strict=True))


def _longest(grid: Floats, values: Floats, times: float = 1.0) -> list[int]:
    """Choose edges among an even grid's points, each cell as long as it stays straight."""
    chosen = [0]
    last = len(grid) - 1
    while chosen[-1] < last:
        start = chosen[-1]
        end = start + 1
        while end < last and _bends(grid, values, start, end + 1) <= times:
            end += 1
        chosen.append(end)
    return chosen


def _bends(grid: Floats, values: Floats, start: int, end: int) -> float:
    """Give how far readings between two points of the grid are off their chord, of what is let."""
    part = ((grid[start + 1 : end] - grid[start]) / (grid[end] - grid[start]))[:, None]
    chord = values[start] + part * (values[end] - values[start])
    return _off(values[start + 1 : end], chord)


def _off(values: Floats, line: Floats) -> float:
    return float((np.abs(values - line) / (METER_U[0] + METER_U[1] * np.abs(values))).max())


def _halved(
    read: Reader, edges: Mapping[Fault, Floats], ends: Mapping[Fault, Floats]
) -> dict[Fault, Floats]:
    """Halve cells of one step that bend too much between the points of the grid."""
    done = {fault: list(at) for fault, at in edges.items()}
    waiting = [
        (fault, float(at[k]), float(at[k + 1]), ends[fault][k], ends[fault][k + 1])
        for fault, at in edges.items()
        for k in range(len(at) - 1)
        if at[k + 1] - at[k] <= 1.01 * _STEP
    ]
    while waiting:
        middles = [(low + high) / 2 for _, low, high, _, _ in waiting]
        shown = read([(item[0], at) for item, at in zip(waiting, middles, strict=True)])
        halves = []
        for (fault, low, high, first, last), at, seen in zip(waiting, middles, shown, strict=True):
            if _off(seen, (first + last) / 2) > 1.0:
                done[fault].append(at)
                if at - low > _SHORTEST:
                    halves += [(fault, low, at, first, seen), (fault, at, high, seen, last)]
        waiting = halves
    return {fault: np.sort(np.array(at)) for fault, at in done.items()}
