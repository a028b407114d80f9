"""CircuitSymbols: the elements of a circuit drawn between two points.

Symbols after IEC 60617 (from memory: fuse 07-21-01, resistor 04-01-01, coil of a relay 07-15-01,
make contact 07-02-01, motor 06-04-01, battery 06-15-01, frame 02-15-04, plug and socket 03-03-05,
field-effect transistor 05-05-13), in lines of our own.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from math import atan2, degrees, hypot
from types import MappingProxyType

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QFont, QPainter, QPen

from meterlog.model import ElementKind

_Draw = Callable[[QPainter, float, bool], None]
"""Draws around the origin along the x axis, in units of half a symbol's length; True: cut."""


def paint_symbol(  # where, what and how
    painter: QPainter,
    kind: ElementKind,
    first: QPointF,
    second: QPointF,
    size: float,
    *,
    at: QPointF | None = None,
    cut: bool = False,
) -> None:
    """Paint an element with its leads, by the painter's pen.

    Parameters
    ----------
    painter : QPainter
    kind : ElementKind
    first, second : QPointF
        Ends of the straight stretch it lies on.
    size : float
        Length of the symbol along the line, in pixels.
    at : QPointF or None
        Middle of the symbol on that stretch; None: in its middle.
    cut : bool
        It is open by the state: a switch, a plug that is off, a fuse that is out.
    """
    along = second - first
    length = (along.x() ** 2 + along.y() ** 2) ** 0.5
    if length <= 0.0:
        return
    half = min(size, length) / 2.0
    draw = _SYMBOLS.get(kind, _wire)
    painter.save()
    middle = (first + second) / 2.0 if at is None else at
    before, after = _distance(middle - first), _distance(second - middle)
    painter.translate(middle)
    painter.rotate(_degrees(along))
    reach = half if kind in _SYMBOLS else 0.0
    painter.drawLine(QPointF(-before, 0.0), QPointF(-reach, 0.0))
    painter.drawLine(QPointF(reach, 0.0), QPointF(after, 0.0))
    draw(painter, half, cut)
    painter.restore()


def _distance(along: QPointF) -> float:
    return hypot(along.x(), along.y())


def _degrees(along: QPointF) -> float:
    return degrees(atan2(along.y(), along.x()))


def _ground_fill(painter: QPainter) -> None:
    painter.setBrush(painter.background())


def _wire(painter: QPainter, half: float, cut: bool) -> None:  # noqa: FBT001
    del half
    if cut:
        _cross(painter, 4.0)


def _cross(painter: QPainter, reach: float) -> None:
    painter.drawLine(QPointF(-reach, -reach), QPointF(reach, reach))
    painter.drawLine(QPointF(-reach, reach), QPointF(reach, -reach))


def _box(painter: QPainter, half: float, high: float) -> QRectF:
    box = QRectF(-half, -high * half, 2.0 * half, 2.0 * high * half)
    _ground_fill(painter)
    painter.drawRect(box)
    return box


def _resistor(painter: QPainter, half: float, cut: bool) -> None:  # noqa: FBT001
    _box(painter, half, 0.38)
    if cut:
        _cross(painter, 0.38 * half)


def _fuse(painter: QPainter, half: float, cut: bool) -> None:  # noqa: FBT001
    _box(painter, half, 0.38)
    if cut:
        _cross(painter, 0.38 * half)
    else:
        painter.drawLine(QPointF(-half, 0.0), QPointF(half, 0.0))


def _coil(painter: QPainter, half: float, cut: bool) -> None:  # noqa: FBT001
    # The winding of a relay: a rectangle that lies across its leads.
    box = QRectF(-0.5 * half, -half, half, 2.0 * half)
    painter.drawLine(QPointF(-half, 0.0), QPointF(-0.5 * half, 0.0))
    painter.drawLine(QPointF(0.5 * half, 0.0), QPointF(half, 0.0))
    _ground_fill(painter)
    painter.drawRect(box)
    if cut:
        _cross(painter, 0.5 * half)


def _contact(painter: QPainter, half: float, cut: bool) -> None:  # noqa: FBT001
    if cut:
        painter.drawLine(QPointF(-half, 0.0), QPointF(0.75 * half, -0.8 * half))
    else:
        painter.drawLine(QPointF(-half, 0.0), QPointF(half, 0.0))
        painter.drawLine(QPointF(-half, 0.0), QPointF(half, -0.12 * half))


def _switch(painter: QPainter, half: float, cut: bool) -> None:  # noqa: FBT001
    _contact(painter, half, cut)
    # What tells it from a relay's contact: it is worked by hand.
    top = -0.7 * half if cut else -0.55 * half
    painter.drawLine(QPointF(0.0, -0.1 * half if not cut else -0.45 * half), QPointF(0.0, top))
    painter.drawLine(QPointF(-0.3 * half, top), QPointF(0.3 * half, top))


def _motor(painter: QPainter, half: float, cut: bool) -> None:  # noqa: FBT001
    _ground_fill(painter)
    painter.drawEllipse(QPointF(0.0, 0.0), half, half)
    painter.save()
    painter.rotate(-_turn(painter))
    font = painter.font()
    font.setPixelSize(max(8, round(1.1 * half)))
    painter.setFont(font)
    box = QRectF(-half, -half, 2.0 * half, 2.0 * half)
    painter.drawText(box, Qt.AlignmentFlag.AlignCenter, "M")
    painter.restore()
    if cut:
        _cross(painter, half)


def _turn(painter: QPainter) -> float:
    transform = painter.worldTransform()
    return degrees(atan2(transform.m12(), transform.m11()))


def _battery(painter: QPainter, half: float, cut: bool) -> None:  # noqa: FBT001
    del cut
    for at, high in ((-0.3, 0.9), (0.0, 0.45), (0.3, 0.9), (0.6, 0.45)):
        painter.drawLine(QPointF(at * half, -high * half), QPointF(at * half, high * half))
    painter.drawLine(QPointF(-half, 0.0), QPointF(-0.3 * half, 0.0))
    painter.drawLine(QPointF(0.6 * half, 0.0), QPointF(half, 0.0))


def _connection(painter: QPainter, half: float, cut: bool) -> None:  # noqa: FBT001
    # A pin in its socket; apart when the plug is off.
    gap = 0.45 * half if cut else 0.0
    painter.drawLine(QPointF(-half, 0.0), QPointF(-0.2 * half - gap, 0.0))
    arc = QRectF(-0.55 * half - gap, -0.55 * half, 1.1 * half, 1.1 * half)
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.drawArc(arc, -75 * 16, 150 * 16)
    pen = QPen(painter.pen())
    pen.setWidthF(2.2 * pen.widthF())
    painter.save()
    painter.setPen(pen)
    painter.drawLine(QPointF(-0.1 * half + gap, 0.0), QPointF(0.5 * half + gap, 0.0))
    painter.restore()
    painter.drawLine(QPointF(0.5 * half + gap, 0.0), QPointF(half, 0.0))


def _ground(painter: QPainter, half: float, cut: bool) -> None:  # noqa: FBT001
    # A bolted joint on the way to the battery negative post.
    painter.drawLine(QPointF(-half, 0.0), QPointF(half, 0.0))
    painter.drawLine(QPointF(0.0, -0.55 * half), QPointF(0.0, 0.55 * half))
    for at in (-0.5, 0.0, 0.5):
        end = QPointF(0.35 * half, (at + 0.3) * half)
        painter.drawLine(QPointF(0.0, at * half), end)
    if cut:
        _cross(painter, 0.5 * half)


_SYMBOLS: Mapping[ElementKind, _Draw] = MappingProxyType(
    {
        ElementKind.BATTERY: _battery,
        ElementKind.FUSE: _fuse,
        ElementKind.RESISTOR: _resistor,
        ElementKind.COIL: _coil,
        ElementKind.CONTACT: _contact,
        ElementKind.SWITCH: _switch,
        ElementKind.MOTOR: _motor,
        ElementKind.CONNECTION: _connection,
        ElementKind.GROUND: _ground,
    }
)


def paint_transistor(
    painter: QPainter, drain: QPointF, source: QPointF, gate: QPointF, size: float
) -> None:
    """Paint a field-effect transistor (enhancement, n-channel) on the line from drain to source.

    Parameters
    ----------
    painter : QPainter
    drain, source, gate : QPointF
        Where its three leads end.
    size : float
        Length of the symbol along the line, in pixels.
    """
    along = source - drain
    length = max((along.x() ** 2 + along.y() ** 2) ** 0.5, 1e-9)
    half = min(size, length) / 2.0
    middle = (drain + source) / 2.0
    side = 1.0 if _beside(along, gate - middle) > 0.0 else -1.0
    painter.save()
    painter.translate(middle)
    painter.rotate(_degrees(along))
    far = side * 0.8 * half
    for at in (-0.6, 0.0, 0.6):
        painter.drawLine(QPointF((at - 0.22) * half, far / 2), QPointF((at + 0.22) * half, far / 2))
    for at, end in ((-0.6, -length / 2.0), (0.6, length / 2.0)):
        painter.drawLine(QPointF(at * half, far / 2), QPointF(at * half, 0.0))
        painter.drawLine(QPointF(at * half, 0.0), QPointF(end, 0.0))
    painter.drawLine(QPointF(-0.6 * half, far * 0.75), QPointF(0.6 * half, far * 0.75))
    painter.restore()
    across = QPointF(-along.y(), along.x()) / length * (0.6 * half * side)
    painter.drawLine(middle + across, gate)


def _beside(along: QPointF, point: QPointF) -> float:
    """Tell on which side of a direction a point lies: above 0 to the right of it on the screen."""
    return along.x() * point.y() - along.y() * point.x()


def paint_block(painter: QPainter, box: QRectF, words: str, margin: float) -> None:
    """Paint a module whose inside is not drawn: a box with words, ``margin`` from its left."""
    _ground_fill(painter)
    painter.drawRect(box)
    flags = Qt.AlignmentFlag.AlignCenter | Qt.TextFlag.TextWordWrap
    inner = box.adjusted(margin, 1.0, -2.0, -1.0)
    font = painter.font()
    widest = max(map(painter.fontMetrics().horizontalAdvance, words.split()), default=0)
    if widest > inner.width() > 0.0:
        # A word is not broken; other languages have longer ones.
        narrow = QFont(font)
        narrow.setPixelSize(max(int(painter.fontInfo().pixelSize() * inner.width() / widest), 6))
        painter.setFont(narrow)
    painter.drawText(inner, flags, words)
    painter.setFont(font)
