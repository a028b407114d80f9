"""Elimination: a network of conductances reduced to the few nodes where something is not linear.

Gaussian elimination node by node (the star of a node becomes the mesh of its neighbours), done with
conductances between nodes and to the reference node kept apart, so that nothing is ever subtracted:
a node that hangs on 1 GΩ beside wires of milliohms keeps all its digits. Grassmann, Taksar and
Heyman, Operations Research 33 (1985) 1107, for the same sums in Markov chains.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass

import numpy as np

from meterlog.circuit.figures import Floats

Edge = tuple[int, int]
"""Two nodes, the lower first; neither is the reference node 0."""


@dataclass(frozen=True, slots=True)
class Reduced:
    """What is left between the nodes kept.

    Attributes
    ----------
    between : mapping of Edge to float64[n], siemens
    to_reference : float64[nodes, n], siemens
    driven : float64[nodes, n], amperes
        Into each node.
    shares : tuple of float64[neighbours, n]
        One a node taken out: how its voltage follows from those of its neighbours.
    own : tuple of float64[n], volts
        One a node taken out: what the currents driven into it add.
    """

    between: Mapping[Edge, Floats]
    to_reference: Floats
    driven: Floats
    shares: tuple[Floats, ...]
    own: tuple[Floats, ...]


class Elimination:
    """In which order the linear nodes are taken out: of fewest neighbours first.

    Parameters
    ----------
    nodes : int
        How many there are; 0 is the reference node.
    edges : iterable of Edge
    kept : iterable of int
    """

    def __init__(self, nodes: int, edges: Iterable[Edge], kept: Iterable[int]) -> None:
        self.edges = tuple(sorted(set(edges)))
        self.kept = tuple(sorted(kept))
        around: dict[int, set[int]] = {node: set() for node in range(1, nodes)}
        for first, second in self.edges:
            around[first].add(second)
            around[second].add(first)
        self.steps: list[tuple[int, tuple[int, ...]]] = []
        left = set(around) - set(self.kept)
        while left:
            node = min(left, key=lambda each: (len(around[each]), each))
            left.remove(node)
            neighbours = around.pop(node)
            for each in neighbours:
                around[each] |= neighbours
                around[each] -= {each, node}
            self.steps.append((node, tuple(sorted(neighbours))))

    def reduce(
        self, between: Mapping[Edge, Floats], to_reference: Floats, driven: Floats
    ) -> Reduced:
        """Take the linear nodes out.

        Parameters
        ----------
        between : mapping of Edge to float64[n], siemens
        to_reference : float64[nodes, n], siemens
            Above 0 for every node, or a node that hangs on nothing has no voltage.
        driven : float64[nodes, n], amperes

        Returns
        -------
        Reduced
        """
        mesh = dict(between)
        leak, source = to_reference.copy(), driven.copy()
        shares, own = [], []
        for node, neighbours in self.steps:
            arms = [mesh.pop(_edge(node, each)) for each in neighbours]
            total = leak[node].copy()
            for arm in arms:
                total += arm
            parts = np.array([arm / total for arm in arms]).reshape(len(arms), len(total))
            for at, first in enumerate(neighbours):
                leak[first] += parts[at] * leak[node]
                source[first] += parts[at] * source[node]
                for after in range(at + 1, len(neighbours)):
                    edge = (first, neighbours[after])
                    added = arms[at] * parts[after]
                    mesh[edge] = mesh[edge] + added if edge in mesh else added
            shares.append(parts)
            own.append(source[node] / total)
        return Reduced(mesh, leak, source, tuple(shares), tuple(own))

    def fill(self, reduced: Reduced, volts: Floats) -> None:
        """Give the nodes that were taken out their voltages, in place.

        Parameters
        ----------
        reduced : Reduced
        volts : float64[nodes, n], volts
            Those of the nodes kept are there.
        """
        steps = zip(self.steps, reduced.shares, reduced.own, strict=True)
        for (node, neighbours), parts, own in reversed(list(steps)):
            volts[node] = own
            for each, part in zip(neighbours, parts, strict=True):
                volts[node] += part * volts[each]


def edge_between(first: int, second: int) -> Edge | None:
    """Give the edge of two nodes; None if one of them is the reference node or both are one."""
    if first == second or 0 in (first, second):
        return None
    return _edge(first, second)


def conductances(
    nodes: int, ends: Sequence[tuple[int, int]], siemens: Floats, leak: float
) -> tuple[dict[Edge, Floats], Floats]:
    """Add up two-terminal elements.

    Parameters
    ----------
    nodes : int
    ends : sequence of (int, int)
        The nodes of each element.
    siemens : float64[elements, n]
    leak : float, siemens
        From every node to the reference node.

    Returns
    -------
    dict of Edge to float64[n], float64[nodes, n]
        Between nodes and from each to the reference node, as :meth:`Elimination.reduce` takes them.
    """
    between: dict[Edge, Floats] = {}
    to_reference = np.full((nodes, siemens.shape[1]), leak)
    for (first, second), each in zip(ends, siemens, strict=True):
        if first == second:
            continue
        edge = edge_between(first, second)
        if edge is None:
            to_reference[max(first, second)] += each
        elif edge in between:
            between[edge] = between[edge] + each
        else:
            between[edge] = each
    return between, to_reference


def _edge(first: int, second: int) -> Edge:
    return (first, second) if first < second else (second, first)
