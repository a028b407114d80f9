"""Point readings: what a meter shows at every test point of solved circuits, and its slopes.

At the solution all elements are replaced by their tangents. The meter is then one conductance more
between two nodes, by the formula of Sherman and Morrison (Ann. Math. Stat. 21 (1950) 124):
V / (1 + R / R_meter), R being what the meter sees. The slopes with all figures come from one
inverse a circuit (adjoint network: Director and Rohrer, IEEE Trans. Circuit Theory 16 (1969) 318).
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from meterlog.circuit.element_currents import Stamp
from meterlog.circuit.figures import JUMPER_OHM, Floats
from meterlog.circuit.network import LEAK_S, Jumpers, Network, Solved
from meterlog.model.circuit import ElementKind, PointKind, ProbePoint

_IDLE_A = 1e-3
"""A transistor that carries less does so for leakage and the meter alone."""
_STAGES = (ElementKind.TRANSISTOR, ElementKind.REGULATOR)
_STEP = 1e-6
"""By which part of itself a figure is moved to see what a law makes of it."""


@dataclass(frozen=True, slots=True)
class Flow:
    """A current from node to node.

    Attributes
    ----------
    leaves, enters : int
        Columns of the nodes.
    amps : float64[n]
        The current, or its slope with one figure.
    """

    leaves: int
    enters: int
    amps: Floats


class PointReadings:
    """Solved circuits seen from their test points.

    Parameters
    ----------
    network : Network
    figures : float64[n, figures]
    solved : Solved
        Of these figures, without a meter.
    jumpers : frozenset of (str, str)
        As they were when it was solved.
    points : sequence of ProbePoint
    """

    def __init__(
        self,
        network: Network,
        figures: Floats,
        solved: Solved,
        jumpers: Jumpers,
        points: Sequence[ProbePoint],
    ) -> None:
        self._network = network
        self._jumpers = jumpers
        self._figures = figures
        self._volts = solved.volts
        self._siemens = network.siemens(figures, solved.closed)
        self._points = tuple(points)
        self._owner = {at: key for key, at in network.index.columns.items()}
        self._pairs = {
            (element.name, figure): at for at, (element, figure) in enumerate(network.pairs)
        }
        self._bent = {element.name: at for at, element in enumerate(network.bent_elements)}
        self._stamps = [self._law(at, figures) for at in range(len(network.bent))]
        self._weights = self._point_weights()
        # How each reading moves with a current into each node.
        self._by_amps = self._weights @ _inverse(self._matrix())

    def left_by(self, meter_ohm: float) -> Floats:
        """Tell which part of each voltage a meter's own load leaves.

        Parameters
        ----------
        meter_ohm : float, ohms
            Infinite: it loads nothing. Currents are taken with a clamp, which loads nothing.

        Returns
        -------
        float64[n, points]
            1 where it changes nothing, towards 0 where it sees far more than its own resistance.
        """
        return self._left(self._by_amps, self._weights, meter_ohm)

    def _left(self, by_amps: Floats, weights: Floats, meter_ohm: float) -> Floats:
        sees = (by_amps * weights).sum(axis=2)
        sees[:, [point.kind is PointKind.CURRENT for point in self._points]] = 0.0
        left: Floats = 1.0 / (1.0 + np.maximum(sees, 0.0) / meter_ohm)
        return left

    def left_without_idle(self, meter_ohm: float) -> Floats:
        """Tell the same as :meth:`left_by` with transistors that carry next to nothing taken out.

        One that holds up a point by microamperes alone is switched on or off by the meter's own
        load, and by leakage that nobody knows: its tangent says nothing.
        """
        matrix, idle = self._matrix(), np.zeros(len(self._volts), dtype=np.bool_)
        turned = np.ascontiguousarray(np.moveaxis(matrix, 0, -1))
        for at, element in enumerate(self._network.bent_elements):
            if element.kind not in _STAGES:
                continue
            nodes = self._network.bent[at].nodes
            for stamp in self._stamps[at]:
                little = np.abs(stamp.amps) < _IDLE_A
                idle |= little & (np.max(np.abs(stamp.slopes), axis=0) > 1.0 / meter_ohm)
                ends_of = nodes[stamp.leaves], nodes[stamp.enters]
                _add(turned, ends_of, nodes, [-(little * slope) for slope in stamp.slopes])
        left = self.left_by(meter_ohm)
        rows = np.flatnonzero(idle)
        if len(rows):
            weights = self._weights[rows]
            without = np.ascontiguousarray(np.moveaxis(turned[:, :, rows], -1, 0))
            left[rows] = self._left(weights @ _inverse(without), weights, meter_ohm)
        return left

    def shown(self) -> Floats:
        """Give what stands at each point without a meter, float64[n, points], volts or amperes."""
        shown: Floats = (self._weights * self._volts[:, None, :]).sum(axis=2)
        for at, point in enumerate(self._points):
            if point.kind is PointKind.CURRENT:
                shown[:, at] = self._through(point.element)
        return shown

    def by_figure(self, column: int) -> Floats:
        """Give how each reading without a meter moves with one figure.

        Parameters
        ----------
        column : int
            Of the figure in the flat array.

        Returns
        -------
        float64[n, points], volts or amperes per unit of the figure
        """
        name, figure = self._owner[column]
        first = self._network.columns(self._network.circuit.element(name).nodes)[0]
        by = np.zeros(self._by_amps.shape[:2])
        for flow in self._moved_flows(name, figure, column):
            apart = self._by_amps[:, :, flow.leaves] - self._by_amps[:, :, flow.enters]
            by -= apart * flow.amps[:, None]
            if flow.leaves == first:
                for at, point in enumerate(self._points):
                    if point.kind is PointKind.CURRENT and point.element == name:
                        by[:, at] += flow.amps
        return by

    def _matrix(self) -> Floats:
        """Give the slopes of the currents that leave all nodes, float64[n, nodes, nodes]."""
        nodes = self._volts.shape[1]
        matrix = np.zeros((nodes, nodes, len(self._volts)))
        for node in range(nodes):
            matrix[node, node] = LEAK_S
        ends = [
            *self._network.ends,
            *(self._network.columns(pair) for pair in sorted(self._jumpers)),
        ]
        jumper = np.full(len(self._volts), 1.0 / JUMPER_OHM)
        for (first, second), siemens in zip(
            ends, [*self._siemens, *[jumper] * len(self._jumpers)], strict=True
        ):
            _add(matrix, (first, second), (first, second), (siemens, -siemens))
        for bent, stamps in zip(self._network.bent, self._stamps, strict=True):
            for stamp in stamps:
                ends_of = bent.nodes[stamp.leaves], bent.nodes[stamp.enters]
                _add(matrix, ends_of, bent.nodes, stamp.slopes)
        return np.ascontiguousarray(np.moveaxis(matrix, -1, 0))

    def _point_weights(self) -> Floats:
        """Give how each reading moves with the voltage of each node, float64[n, points, nodes]."""
        weights = np.zeros((len(self._volts), len(self._points), self._volts.shape[1]))
        for at, point in enumerate(self._points):
            if point.kind is PointKind.CURRENT:
                for nodes, slopes in self._slopes_through(point.element):
                    for node, slope in zip(nodes, slopes, strict=True):
                        weights[:, at, node] += slope
                continue
            columns = self._network.columns(point.nodes)
            weights[:, at, columns[0]] += 1.0
            if len(columns) > 1:
                weights[:, at, columns[1]] -= 1.0
        return weights

    def _slopes_through(self, name: str) -> list[tuple[tuple[int, ...], tuple[Floats, ...]]]:
        """Give the parts of the current into an element's first terminal: nodes and slopes."""
        parts: list[tuple[tuple[int, ...], tuple[Floats, ...]]] = []
        for (owner, _), at in self._pairs.items():
            if owner == name:
                parts.append((self._network.ends[at], (self._siemens[at], -self._siemens[at])))
        if name in self._bent:
            at = self._bent[name]
            nodes = self._network.bent[at].nodes
            parts += [(nodes, stamp.slopes) for stamp in self._stamps[at] if stamp.leaves == 0]
        return parts

    def _through(self, name: str) -> Floats:
        """Give the current into an element's first terminal, float64[n], amperes."""
        amps = np.zeros(len(self._volts))
        for (owner, figure), at in self._pairs.items():
            if owner == name:
                amps += self._siemens[at] * self._across(owner, figure)
        if name in self._bent:
            for stamp in self._stamps[self._bent[name]]:
                if stamp.leaves == 0:
                    amps += stamp.amps
        return amps

    def _across(self, name: str, figure: str) -> Floats:
        """Give the voltage that drives the current through a pair's conductance."""
        first, second = self._network.ends[self._pairs[name, figure]]
        across = self._volts[:, first] - self._volts[:, second]
        if (name, "emf_v") in self._network.index.columns:
            across = across - self._figures[:, self._network.index[name, "emf_v"]]
        return across

    def _moved_flows(self, name: str, figure: str, column: int) -> list[Flow]:
        """Give the slopes of an element's currents with one of its figures, voltages held."""
        if figure == "emf_v":
            at = self._pairs[name, "ohm"]
            return [self._flow(at, -self._siemens[at])]
        if (name, figure) in self._pairs:
            at = self._pairs[name, figure]
            amps = -(self._siemens[at] ** 2) * self._across(name, figure)
            return [self._flow(at, amps)]
        if name not in self._bent:
            return []
        at = self._bent[name]
        nodes = self._network.bent[at].nodes
        step = _STEP * np.maximum(np.abs(self._figures[:, column]), 1e-3)
        moved = []
        for sign in (1.0, -1.0):
            figures = self._figures.copy()
            figures[:, column] += sign * step
            moved.append(self._law(at, figures))
        return [
            Flow(nodes[up.leaves], nodes[up.enters], (up.amps - down.amps) / (2.0 * step))
            for up, down in zip(*moved, strict=True)
        ]

    def _flow(self, pair: int, amps: Floats) -> Flow:
        first, second = self._network.ends[pair]
        return Flow(first, second, amps)

    def _law(self, at: int, figures: Floats) -> list[Stamp]:
        bent = self._network.bent[at]
        own = {name: figures[:, column] for name, column in bent.columns.items()}
        return bent.law.currents(own, [self._volts[:, node] for node in bent.nodes], None)


def _inverse(matrix: Floats) -> Floats:
    """Invert without the reference node, the first, for which zeros are left."""
    inverse = np.zeros_like(matrix)
    inverse[:, 1:, 1:] = np.linalg.inv(matrix[:, 1:, 1:])
    return inverse


def _add(
    matrix: Floats, ends: tuple[int, int], nodes: Sequence[int], slopes: Sequence[Floats]
) -> None:
    for node, slope in zip(nodes, slopes, strict=True):
        matrix[ends[0], node] += slope
        matrix[ends[1], node] -= slope
