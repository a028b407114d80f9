"""CircuitPlan: where everything of a circuit's drawing lies, in pixels. No painting."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from itertools import pairwise

from PySide6.QtCore import QPointF, QRectF

from meterlog.model import Circuit, Element, ElementKind, PointKind, ProbePoint

_MODULES = {ElementKind.REGULATOR, ElementKind.CHOPPER}
_HEAD_WIDE = 1.5
"""How far the box of a control head reaches beyond its last terminal, in columns of the grid."""
_NEAR = 0.5
"""Pixels within which two lines are one."""
_FLAT = 0.6
"""Long steps of the grid grow by less than their length: the room goes where the symbols are."""


@dataclass(frozen=True, slots=True)
class Placed:
    """An element's place in the drawing.

    Attributes
    ----------
    element : Element
    corners : tuple of QPointF
        The line from its first to its second node; empty for a block.
    stretch : tuple of (QPointF, QPointF)
        The straight part that carries the symbol.
    at : QPointF
        The middle of the symbol.
    box : QRectF
        Around its symbol: for marks and for the mouse.
    leads : tuple of (QPointF, QPointF)
        Of a block: lines from its box to nodes that do not lie on it.
    """

    element: Element
    corners: tuple[QPointF, ...]
    stretch: tuple[QPointF, QPointF]
    at: QPointF
    box: QRectF
    leads: tuple[tuple[QPointF, QPointF], ...] = ()

    @property
    def is_block(self) -> bool:
        """True for a module whose inside is not drawn."""
        return not self.corners


class CircuitPlan:
    """Lays a circuit out in a rectangle by its profile's own grid.

    Parameters
    ----------
    circuit : Circuit
    area : QRectF
    dot : float, pixels
        Radius of a test point's dot.

    Attributes
    ----------
    size : float, pixels
        Length of a symbol.
    nodes : dict of str to QPointF
    placed : tuple of Placed
        In the order of the elements; without what lies inside a block.
    points : dict of str to QPointF
        Where each test point's dot lies.
    """

    def __init__(self, circuit: Circuit, area: QRectF, dot: float = 7.0) -> None:
        self.circuit = circuit
        self.area = area
        self.dot = dot
        self._degrees = Counter(node for one in circuit.elements for node in one.nodes)
        columns = _spread(node.at[0] for node in circuit.nodes)
        rows = _spread(node.at[1] for node in circuit.nodes)
        beyond = _HEAD_WIDE if self._ends_in_a_head() else 0.0
        side = 1.6 * dot
        right = 2.0 * side if beyond else 5.5 * dot
        inner = area.adjusted(2.2 * dot + side, 4.4 * dot, -right, -2.0 * dot)
        wide = (max(columns.values()) or 1.0) + beyond
        self.step_x = inner.width() / wide
        self.step_y = inner.height() / (max(rows.values()) or 1.0)
        self.nodes = {
            node.name: QPointF(
                inner.left() + columns[node.at[0]] * self.step_x,
                inner.top() + rows[node.at[1]] * self.step_y,
            )
            for node in circuit.nodes
        }
        most = max(40.0, 5.0 * dot)  # in step with the letters beside it
        self.size = max(10.0, min(most, 0.8 * self.step_x, 0.9 * self.step_y))
        inside = self._inside()
        self.placed = tuple(
            self._place(element) for element in circuit.elements if element.name not in inside
        )
        self._by_name = {one.element.name: one for one in self.placed}
        self.points: dict[str, QPointF] = {}
        for point in circuit.points:
            self.points[point.name] = self._free(self._point(point))

    def of(self, element: str) -> Placed | None:
        """Give the place of an element; None if it lies inside a block."""
        return self._by_name.get(element)

    def point_at(self, where: QPointF) -> str:
        """Give the test point whose dot is hit, within what a finger hits; empty for none."""
        reach = max(1.8 * self.dot, 14.0)
        found, least = "", reach
        for name, at in self.points.items():
            away = _distance(at, where)
            if away <= least:
                found, least = name, away
        return found

    def lines(self) -> list[QRectF]:
        """Give thin rectangles over all lines: what words should not cover."""
        parts = [part for one in self.placed for part in (*pairwise(one.corners), *one.leads)]
        parts += [part for link in self.links() for part in pairwise(link)]
        return [
            QRectF(first, second).normalized().adjusted(-1.5, -1.5, 1.5, 1.5)
            for first, second in parts
        ]

    def _ends_in_a_head(self) -> bool:
        last = max(node.at[0] for node in self.circuit.nodes)
        at = {node.name: node.at[0] for node in self.circuit.nodes}
        heads = [one for one in self.circuit.elements if one.kind is ElementKind.HEAD]
        return any(at[node] > last - 1.0 for one in heads for node in one.nodes)

    def _inside(self) -> set[str]:
        """Name what is part of a block and can't fail by itself: it is not drawn."""
        blocks = [one for one in self.circuit.elements if one.kind in {*_MODULES, ElementKind.HEAD}]
        return {
            one.name
            for one in self.circuit.elements
            for block in blocks
            if one is not block
            and not one.faults
            and one.unit == block.unit
            and set(one.nodes) <= set(block.nodes)
        }

    def _place(self, element: Element) -> Placed:
        ends = [self.nodes[node] for node in element.nodes]
        if element.kind is ElementKind.HEAD:
            return self._head(element, ends)
        if element.kind in _MODULES:
            return self._module(element, ends)
        corners = self._way(element, ends[0], ends[1])
        stretch = self._carrier(element, corners)
        middle = (stretch[0] + stretch[1]) / 2.0
        long = _length(stretch)
        if element.kind is ElementKind.GROUND and long > 2.2 * self.size:
            # A joint is drawn where it is bolted on.
            middle = stretch[1] - (stretch[1] - stretch[0]) * (0.9 * self.size / long)
        half = min(self.size, long) / 2.0
        box = QRectF(middle.x() - half, middle.y() - half, 2.0 * half, 2.0 * half)
        return Placed(element, corners, stretch, middle, box)

    def _way(self, element: Element, first: QPointF, second: QPointF) -> tuple[QPointF, ...]:
        """Give the line between two nodes, by the corner that passes fewest other nodes."""
        if abs(first.x() - second.x()) < _NEAR or abs(first.y() - second.y()) < _NEAR:
            return (first, second)
        corners = (QPointF(first.x(), second.y()), QPointF(second.x(), first.y()))
        others = [at for name, at in self.nodes.items() if name not in element.nodes]

        def passed(corner: QPointF) -> int:
            parts = ((first, corner), (corner, second))
            return sum(_lies_on(at, part) for at in others for part in parts)

        return (first, min(corners, key=passed), second)

    def _carrier(self, element: Element, corners: Sequence[QPointF]) -> tuple[QPointF, QPointF]:
        """Give the part for the symbol: of two, that at the node where fewer lines meet."""
        parts = list(pairwise(corners))
        if len(parts) == 1:
            return parts[0]
        ways = [self._degrees[node] for node in element.nodes[:2]]
        if ways[0] != ways[1]:
            return parts[0] if ways[0] < ways[1] else parts[1]
        return max(parts, key=_length)

    def _module(self, element: Element, ends: Sequence[QPointF]) -> Placed:
        supply, out = ends[0], ends[1]
        left = min(end.x() for end in ends) - 0.5 * self.step_x
        right = max(end.x() for end in ends)
        box = QRectF(QPointF(left, supply.y()), QPointF(right, out.y())).normalized()
        return Placed(element, (), (supply, out), box.center(), box, _leads(box, ends))

    def _head(self, element: Element, ends: Sequence[QPointF]) -> Placed:
        out = ends[0]
        seen = [out, *ends[2:]]
        left = min(end.x() for end in seen)
        right = max(end.x() for end in seen) + (_HEAD_WIDE - 0.2) * self.step_x
        top = min(end.y() for end in seen)
        foot = max(end.y() for end in seen) + 0.8 * self.size
        if len(seen) == 1:
            top -= 0.8 * self.size
        box = QRectF(QPointF(left, top), QPointF(min(right, self.area.right() - 2.0), foot))
        ground = ends[1]
        down = min(max(ground.x(), left + 0.4 * self.step_x), box.right() - 0.3 * self.step_x)
        foot_at, corner = QPointF(down, foot), QPointF(down, ground.y())
        leads = ((foot_at, corner), (corner, ground)) if down != ground.x() else (
            (foot_at, ground),
        )  # fmt: skip
        return Placed(element, (), (out, ground), box.center(), box, leads)

    def _point(self, point: ProbePoint) -> QPointF:
        if point.kind is PointKind.VOLTAGE:
            return self.nodes[point.nodes[0]]
        if point.kind is PointKind.DROP:
            first, second = (self.nodes[node] for node in point.nodes)
            middle = (first + second) / 2.0
            aside = 0.62 * self.size + self.dot
            level = abs(first.y() - second.y()) < abs(first.x() - second.x())
            return middle + (QPointF(0.0, aside) if level else QPointF(aside, 0.0))
        placed = self.of(point.element)
        box = placed.box if placed is not None else QRectF(self.area.center(), self.area.center())
        return QPointF(box.left() - 1.3 * self.dot, box.center().y())

    def links(self) -> list[tuple[QPointF, QPointF, QPointF]]:
        """Give the lines that join a relay's contacts with its coil: contact, corner, coil."""
        coils = {
            one.element.relay: one for one in self.placed if one.element.kind is ElementKind.COIL
        }
        found = []
        for one in self.placed:
            coil = coils.get(one.element.relay)
            if one.element.kind is ElementKind.CONTACT and coil is not None:
                found.append((one.at, QPointF(one.at.x(), coil.at.y()), coil.at))
        return found

    def _free(self, at: QPointF) -> QPointF:
        """Move a dot out of a block, and aside where another one lies already."""
        for placed in self.placed:
            if placed.is_block and placed.box.adjusted(1.0, 1.0, -1.0, -1.0).contains(at):
                at = QPointF(placed.box.left() - 1.6 * self.dot, placed.box.center().y())
        while any(_distance(at, other) < 1.6 * self.dot for other in self.points.values()):
            at = at + QPointF(2.2 * self.dot, 0.0)
        return at


def _spread(values: Iterable[float]) -> dict[float, float]:
    """Give the place of each grid line; wide steps grow by less than their length."""
    lines = sorted(set(values))
    places = {lines[0]: 0.0}
    for first, second in pairwise(lines):
        places[second] = places[first] + (second - first) ** _FLAT
    return places


def _leads(box: QRectF, ends: Sequence[QPointF]) -> tuple[tuple[QPointF, QPointF], ...]:
    """Give lines from a box to the ends that lie beyond it."""
    around = box.adjusted(-_NEAR, -_NEAR, _NEAR, _NEAR)
    leads = []
    for end in ends:
        if not around.contains(end):
            x = min(max(end.x(), box.left()), box.right())
            y = min(max(end.y(), box.top()), box.bottom())
            leads.append((QPointF(x, y), end))
    return tuple(leads)


def _lies_on(at: QPointF, part: tuple[QPointF, QPointF]) -> bool:
    around = QRectF(*part).normalized().adjusted(-_NEAR, -_NEAR, _NEAR, _NEAR)
    return around.contains(at)


def _length(part: tuple[QPointF, QPointF]) -> float:
    along = part[1] - part[0]
    return abs(along.x()) + abs(along.y())


def _distance(first: QPointF, second: QPointF) -> float:
    along = first - second
    return float((along.x() ** 2 + along.y() ** 2) ** 0.5)
