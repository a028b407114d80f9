"""Network: the node voltages of a circuit, for many sets of figures at once.

Nodal analysis; every source has a resistance, so no currents are unknown (Ho, Ruehli and Brennan,
IEEE Trans. Circuits and Systems 22 (1975) 504). What is linear is eliminated
(:mod:`~meterlog.circuit.elimination`), what is left is solved by Newton's method
(:mod:`~meterlog.circuit.port_newton`).
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
import numpy.typing as npt

from meterlog.circuit.element_currents import LAWS
from meterlog.circuit.elimination import Elimination, conductances, edge_between
from meterlog.circuit.figures import JUMPER_OHM, FigureIndex, Floats, index_of
from meterlog.circuit.port_newton import Bent, PortNetwork, port_volts
from meterlog.model.circuit import Circuit, Element, ElementKind
from meterlog.model.element_kinds import OPEN_OHM

LEAK_S = 1e-10
"""From every node to the battery negative post, in siemens: what insulation leaks; it also keeps a
node that everything has left from having no voltage at all. From memory."""
LEAST_OHM = 1e-6
"""Below this nothing conducts better."""

Bools = npt.NDArray[np.bool_]
Ints = npt.NDArray[np.intp]
Jumpers = frozenset[tuple[str, str]]
Loads = tuple[Ints, Ints, Floats]


@dataclass(frozen=True, slots=True)
class Solved:
    """Node voltages of many circuits.

    Attributes
    ----------
    volts : float64[n, nodes]
        Against the first node, whose column is 0.
    settled : bool[n]
        False where Newton's method found no end; those volts are not to be used.
    closed : bool[n, contacts]
        Which relay contacts are closed.
    """

    volts: Floats
    settled: Bools
    closed: Bools


class Network:
    """The equations of one circuit.

    Relays: a contact closes as soon as its coil carries what ``pull_in_v`` drives through a healthy
    winding, all contacts being open before. Once closed it stays closed, however far the voltage
    sinks under the load that it switches on: at which voltage a relay drops out is not modelled.

    Parameters
    ----------
    circuit : Circuit
    open_ohm : float, ohms
        Insulation of an open contact.

    Attributes
    ----------
    circuit : Circuit
    index : FigureIndex
    node_column : dict of str to int
    contacts : tuple of Element
        In the order of ``Solved.closed``.
    pairs : tuple of (Element, str)
        All that conducts in proportion, in the order of :meth:`siemens`, with the figure that
        states its ohms: also the batteries' inside and what bypasses controllers.
    ends : tuple of (int, int)
        Nodes of each of the pairs.
    bent : tuple of Bent
        All that does not, and ``bent_elements`` the elements themselves.
    """

    def __init__(self, circuit: Circuit, open_ohm: float = OPEN_OHM) -> None:
        self.circuit = circuit
        self._open_siemens = 1.0 / open_ohm
        self.index: FigureIndex = index_of(circuit)
        self.node_column = {node.name: column for column, node in enumerate(circuit.nodes)}
        self.contacts = tuple(e for e in circuit.elements if e.kind is ElementKind.CONTACT)
        self._coils = {e.relay: e for e in circuit.elements if e.kind is ElementKind.COIL}
        self.pairs = tuple(_pairs(circuit.elements))
        self.ends = tuple(self._ends(element.nodes) for element, _ in self.pairs)
        self._ohms = np.array([self.index[e.name, figure] for e, figure in self.pairs], np.intp)
        place = {element.name: at for at, (element, _) in enumerate(self.pairs)}
        self._contact_pairs = [place[contact.name] for contact in self.contacts]
        self.bent_elements = tuple(e for e in circuit.elements if e.kind in LAWS)
        self.bent = tuple(
            Bent(LAWS[e.kind], self.index.of(e.name), self.columns(e.nodes))
            for e in self.bent_elements
        )
        self._gains = tuple(
            column for (_, figure), column in self.index.columns.items() if figure == "loop_gain"
        )
        self._ports = sorted({node for bent in self.bent for node in bent.nodes} - {0})
        self._plans: dict[frozenset[tuple[int, int]], Elimination] = {}

    def columns(self, nodes: Sequence[str]) -> tuple[int, ...]:
        """Give the columns of nodes; KeyError if there is none of that name."""
        return tuple(self.node_column[node] for node in nodes)

    def _ends(self, nodes: Sequence[str]) -> tuple[int, int]:
        return self.node_column[nodes[0]], self.node_column[nodes[1]]

    def solve(
        self,
        figures: Floats,
        jumpers: Jumpers = frozenset(),
        loads: Loads | None = None,
    ) -> Solved:
        """Solve for the node voltages.

        Parameters
        ----------
        figures : float64[n, figures]
            As :func:`~meterlog.circuit.figures.set_state` gives them.
        jumpers : frozenset of (str, str)
        loads : (int[n], int[n], float64[n]) or None
            A meter in each circuit: from which node, to which, with how many ohms.

        Returns
        -------
        Solved
        """
        figures = np.atleast_2d(figures)
        if loads is None:
            return self._solve(figures, jumpers, (0, 0), None)
        from_node, to_node, ohm = loads
        count = len(figures)
        volts = np.zeros((count, len(self.circuit.nodes)))
        settled = np.zeros(count, np.bool_)
        closed = np.zeros((count, len(self.contacts)), np.bool_)
        ends = np.stack([from_node, to_node], axis=1)
        for pair in np.unique(ends, axis=0):
            rows = np.flatnonzero((ends == pair).all(axis=1))
            part = self._solve(figures[rows], jumpers, (int(pair[0]), int(pair[1])), ohm[rows])
            volts[rows], settled[rows], closed[rows] = part.volts, part.settled, part.closed
        return Solved(volts, settled, closed)

    def _solve(
        self, figures: Floats, jumpers: Jumpers, meter: tuple[int, int], meter_ohm: Floats | None
    ) -> Solved:
        """Solve with the meter, if any, at the same two nodes in all circuits."""
        count = len(figures)
        closed = np.zeros((count, len(self.contacts)), dtype=np.bool_)
        for at, contact in enumerate(self.contacts):
            closed[:, at] = figures[:, self.index[contact.name, "held"]] > 0.5
        volts = np.zeros((count, len(self.circuit.nodes)))
        settled = np.zeros(count, dtype=np.bool_)
        rows = np.arange(count)
        # Each turn closes one contact more at least, so this ends.
        while len(rows):
            ohm = None if meter_ohm is None else meter_ohm[rows]
            volts[rows], settled[rows] = self._held(
                figures[rows], closed[rows], jumpers, meter, ohm, volts[rows]
            )
            now = closed[rows] | self._pulled(figures[rows], volts[rows])
            changed = (now != closed[rows]).any(axis=1)
            closed[rows] = now
            rows = rows[changed]
        return Solved(volts, settled, closed)

    def _pulled(self, figures: Floats, volts: Floats) -> Bools:
        """Tell which contacts the current in their coil pulls in."""
        now = np.zeros((len(figures), len(self.contacts)), dtype=np.bool_)
        for at, contact in enumerate(self.contacts):
            coil = self._coils.get(contact.relay)
            if coil is None:
                continue
            first, second = self.columns(coil.nodes)
            amps = np.abs(volts[:, first] - volts[:, second])
            amps /= figures[:, self.index[coil.name, "ohm"]]
            needed = figures[:, self.index[contact.name, "pull_in_v"]] / coil.figures["ohm"]
            now[:, at] = amps >= needed
        return now

    def siemens(self, figures: Floats, closed: Bools) -> Floats:
        """Give the conductance of each of ``pairs``, float64[pairs, n]."""
        siemens = 1.0 / np.maximum(np.ascontiguousarray(figures[:, self._ohms].T), LEAST_OHM)
        for at, place in enumerate(self._contact_pairs):
            siemens[place] = np.where(closed[:, at], siemens[place], self._open_siemens)
        return siemens

    def _held(
        self,
        figures: Floats,
        closed: Bools,
        jumpers: Jumpers,
        meter: tuple[int, int],
        meter_ohm: Floats | None,
        start: Floats,
    ) -> tuple[Floats, Bools]:
        """Solve with the contacts as they are."""
        count, nodes = start.shape
        siemens = self.siemens(figures, closed)
        ends = [*self.ends, *(self._ends(pair) for pair in sorted(jumpers))]
        added = np.full((len(jumpers), count), 1.0 / JUMPER_OHM)
        if meter_ohm is not None:
            ends.append(meter)
            added = np.vstack([added, 1.0 / meter_ohm])
        between, leak = conductances(nodes, ends, np.vstack([siemens, added]), LEAK_S)
        driven = np.zeros((nodes, count))
        for at, (element, _) in enumerate(self.pairs):
            if element.kind is ElementKind.BATTERY:
                amps = figures[:, self.index[element.name, "emf_v"]] * siemens[at]
                driven[ends[at][0]] += amps
                driven[ends[at][1]] -= amps
        plan = self._plan(frozenset(ends))
        reduced = plan.reduce(between, leak, driven)
        volts = np.zeros((nodes, count))
        settled = np.ones(count, np.bool_)
        if self._ports:
            edges = tuple(reduced.between)
            ports = PortNetwork(
                plan.kept,
                edges,
                np.array([reduced.between[edge] for edge in edges]).reshape(len(edges), count),
                reduced.to_reference[self._ports],
                reduced.driven[self._ports],
                self.bent,
                figures,
                self._gains,
            )
            volts[self._ports], settled = port_volts(ports, start.T[self._ports])
        plan.fill(reduced, volts)
        volts[0] = 0.0
        return np.ascontiguousarray(volts.T), settled

    def _plan(self, ends: frozenset[tuple[int, int]]) -> Elimination:
        if ends not in self._plans:
            edges = (edge_between(*pair) for pair in ends)
            self._plans[ends] = Elimination(
                len(self.circuit.nodes), (e for e in edges if e is not None), self._ports
            )
        return self._plans[ends]


def _pairs(elements: Sequence[Element]) -> list[tuple[Element, str]]:
    pairs = []
    for element in elements:
        if element.kind not in LAWS:
            pairs.append((element, "ohm"))
        elif element.kind not in (ElementKind.MOTOR, ElementKind.HEAD):
            pairs.append((element, "bypass_ohm"))
    return pairs
