"""Port Newton: the voltages at the nodes where something is not linear, for many circuits at once.

Newton-Raphson on the sum of the currents at each node, the inner values of steep elements limited
from turn to turn (:mod:`~meterlog.circuit.element_currents`). Rows that find no end so are let run
as a circuit with a capacitor at every node does, in steps of time that grow as it comes to rest
(pseudo-transient continuation: Kelley and Keyes, SIAM J. Numer. Anal. 35 (1998) 508), and those
left are led by smaller loop gains and by smaller sources (Nagel, SPICE2, ERL-M520, Berkeley 1975).
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np
import numpy.typing as npt

from meterlog.circuit.element_currents import Law
from meterlog.circuit.elimination import Edge
from meterlog.circuit.figures import Floats

_TURNS = 60
_CLOSE_V = 1e-9
_CLOSE_INNER = 1e-7
_LONGEST_STEP_V = 4.0
_RUN_TURNS = 600
_RUN_STEP_V = 0.3
_FIRST_HELD_S = 10.0
_AT_REST_V = 1e-6
_KNOWN_V = 1e-4
_SOURCES = (0.02, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9)
_STAGES = (
    [(gain, 1.0) for gain in (0.02, 0.1, 0.4, 1.0)],
    [(1.0, source) for source in _SOURCES] + [(1.0, 1.0)],
    [(0.02, source) for source in _SOURCES]
    + [(gain, 1.0) for gain in (0.02, 0.04, 0.07, 0.1, 0.2, 0.4, 0.7, 1.0)],
)
"""Loop gain and sources, each as a part of what they are."""

Held = list[Floats | None]


@dataclass(frozen=True, slots=True)
class Bent:
    """One element that is not linear.

    Attributes
    ----------
    law : Law
    columns : mapping of str to int
        Where its figures stand in the flat array.
    nodes : tuple of int
        One a terminal.
    """

    law: Law
    columns: dict[str, int]
    nodes: tuple[int, ...]

    def figures(self, table: Floats) -> dict[str, Floats]:
        """Give its own figures, float64[n] each, out of float64[n, figures]."""
        return {name: table[:, column] for name, column in self.columns.items()}


@dataclass(frozen=True, slots=True)
class PortNetwork:
    """The reduced linear part of many circuits, with what is not linear.

    Attributes
    ----------
    ports : tuple of int
        The nodes kept.
    edges : tuple of Edge
        Nodes, not places in ``ports``.
    between : float64[edges, n], siemens
    leak : float64[ports, n], siemens
    driven : float64[ports, n], amperes
    bent : tuple of Bent
    figures : float64[n, figures]
    gains : tuple of int
        Columns of the figures that are loop gains.
    """

    ports: tuple[int, ...]
    edges: tuple[Edge, ...]
    between: Floats
    leak: Floats
    driven: Floats
    bent: tuple[Bent, ...]
    figures: Floats
    gains: tuple[int, ...]

    def part(self, rows: npt.NDArray[np.intp]) -> PortNetwork:
        """Give the rows alone."""
        return replace(
            self,
            between=self.between[:, rows],
            leak=self.leak[:, rows],
            driven=self.driven[:, rows],
            figures=self.figures[rows],
        )

    def scaled(self, gain: float, source: float) -> PortNetwork:
        """Give it with all loop gains and all batteries multiplied."""
        figures = self.figures.copy()
        figures[:, list(self.gains)] *= gain
        return replace(self, driven=self.driven * source, figures=figures)

    def _places(self) -> dict[int, int]:
        return {node: at for at, node in enumerate(self.ports)}

    def inner(self, volts: Floats) -> Held:
        """Give the inner value of each of ``bent``, float64[n]; None where it has none."""
        place, zero = self._places(), np.zeros(volts.shape[1])
        values: Held = []
        for element in self.bent:
            if element.law.inner is None:
                values.append(None)
            else:
                across = [volts[place[n]] if n in place else zero for n in element.nodes]
                values.append(element.law.inner(element.figures(self.figures), across))
        return values

    def out(self, volts: Floats, held: Sequence[Floats | None]) -> tuple[Floats, Floats]:
        """Give the current that leaves each port, and its slopes with the voltages of all.

        Parameters
        ----------
        volts : float64[ports, n]
        held : sequence of (float64[n] or None)
            Inner values at whose tangents the laws are taken.

        Returns
        -------
        float64[ports, n], float64[n, ports, ports]
        """
        place, zero = self._places(), np.zeros(volts.shape[1])
        amps = self.leak * volts - self.driven
        size = len(self.ports)
        slope = np.zeros((size, size, volts.shape[1]))
        for at in range(size):
            slope[at, at] = self.leak[at]
        for (first, second), siemens in zip(self.edges, self.between, strict=True):
            a, b = place[first], place[second]
            flows = siemens * (volts[a] - volts[b])
            amps[a] += flows
            amps[b] -= flows
            slope[a, a] += siemens
            slope[b, b] += siemens
            slope[a, b] -= siemens
            slope[b, a] -= siemens
        for element, inner in zip(self.bent, held, strict=True):
            across = [volts[place[n]] if n in place else zero for n in element.nodes]
            for stamp in element.law.currents(element.figures(self.figures), across, inner):
                for terminal, sign in ((stamp.leaves, 1.0), (stamp.enters, -1.0)):
                    port = place.get(element.nodes[terminal])
                    if port is None:
                        continue
                    amps[port] += sign * stamp.amps
                    for node, by in zip(element.nodes, stamp.slopes, strict=True):
                        if node in place:
                            slope[port, place[node]] += sign * by
        return amps, np.ascontiguousarray(np.moveaxis(slope, -1, 0))


def port_volts(network: PortNetwork, start: Floats) -> tuple[Floats, npt.NDArray[np.bool_]]:
    """Find the voltages at which the currents at every port sum up to nothing.

    Parameters
    ----------
    network : PortNetwork
    start : float64[ports, n]

    Returns
    -------
    float64[ports, n], bool[n]
        The second is False for rows that found no end.
    """
    volts, settled = _newton(network, start)
    rows = np.flatnonzero(~settled)
    if len(rows):
        volts[:, rows], settled[rows] = _run_down(network.part(rows), start[:, rows])
    for stages in _STAGES:
        rows = np.flatnonzero(~settled)
        if not len(rows):
            break
        part, found = network.part(rows), start[:, rows]
        ok = settled[rows]
        for gain, source in stages:
            found, ok = _newton(part.scaled(gain, source), found)
        volts[:, rows], settled[rows] = found, ok
    return volts, settled


def _newton(network: PortNetwork, start: Floats) -> tuple[Floats, npt.NDArray[np.bool_]]:
    volts, at = start.copy(), start.copy()
    settled = np.zeros(volts.shape[1], dtype=np.bool_)
    rows = np.arange(volts.shape[1])
    held: Held = [None if each is None else np.zeros(len(rows)) for each in network.inner(at)]
    for _ in range(_TURNS):
        off = _limit(network, at, held)
        amps, slope = network.out(at, held)
        step = -np.linalg.solve(slope, amps.T[:, :, None])[:, :, 0].T
        size = np.abs(step).max(axis=0)
        at = at + step * np.minimum(1.0, _LONGEST_STEP_V / np.maximum(size, _CLOSE_V))
        done = (size < _CLOSE_V) & (off < _CLOSE_INNER)
        if done.any():
            volts[:, rows[done]] = at[:, done]
            settled[rows[done]] = True
            go = np.flatnonzero(~done)
            rows, network, at = rows[go], network.part(go), at[:, go]
            held = [None if each is None else each[go] for each in held]
            if not len(rows):
                break
    volts[:, rows] = at
    return volts, settled


def _run_down(network: PortNetwork, start: Floats) -> tuple[Floats, npt.NDArray[np.bool_]]:
    """Follow the circuit in time, by implicit steps, until nothing moves any more.

    ``held_s`` is the capacitor over the step of time, in siemens. A row is at rest where even
    Newton's whole step would not move it; where nodes hang on insulation alone that is known to
    0.1 mV only, by rounding.
    """
    volts = start.copy()
    held_s = np.full(volts.shape[1], _FIRST_HELD_S)
    unit = np.eye(len(volts))
    left = np.full(volts.shape[1], np.inf)
    amps, slope = network.out(volts, network.inner(volts))
    for _ in range(_RUN_TURNS):
        step = -np.linalg.solve(slope + held_s[:, None, None] * unit, amps.T[:, :, None])[:, :, 0].T
        size = np.abs(step).max(axis=0)
        taken = size < _RUN_STEP_V
        volts = np.where(taken, volts + step, volts)
        amps, slope = network.out(volts, network.inner(volts))
        left = np.abs(np.linalg.solve(slope, amps.T[:, :, None])[:, :, 0]).max(axis=1)
        if (left < _AT_REST_V).all():
            break
        longer = np.where(size < _RUN_STEP_V / 3.0, 0.4, 1.0)
        held_s = np.clip(held_s * np.where(taken, longer, 4.0), 1e-13, 1e6)
    return volts, left < _KNOWN_V


def _limit(network: PortNetwork, volts: Floats, held: Held) -> Floats:
    """Move the inner values on as far as they may go, in place; give how far they are off."""
    off = np.zeros(volts.shape[1])
    for place, new in enumerate(network.inner(volts)):
        old, limit = held[place], network.bent[place].law.limit
        if new is not None and old is not None and limit is not None:
            limited = limit(old, new)
            off = np.maximum(off, np.abs(limited - new))
            held[place] = limited
    return off
