"""CircuitPicture: a circuit drawn from its profile, with what was expected, found and suspected."""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterable
from dataclasses import dataclass
from itertools import pairwise

from PySide6.QtCore import QPointF, QRectF, QSizeF, Qt
from PySide6.QtGui import (
    QColor,
    QFont,
    QFontMetricsF,
    QPainter,
    QPainterPath,
    QPen,
)

from meterlog.circuit.wording import percent
from meterlog.evidence.circuit_marks import CircuitMarks, PointMark
from meterlog.evidence.circuit_plan import CircuitPlan, Placed
from meterlog.evidence.circuit_symbols import paint_block, paint_symbol, paint_transistor
from meterlog.evidence.circuit_tags import CircuitTags
from meterlog.evidence.palette import DAY, Palette
from meterlog.model import (
    Circuit,
    CircuitState,
    Element,
    ElementKind,
    PointKind,
)

_NAMED = {
    ElementKind.BATTERY,
    ElementKind.FUSE,
    ElementKind.SWITCH,
    ElementKind.COIL,
    ElementKind.MOTOR,
    ElementKind.TRANSISTOR,
    ElementKind.RESISTOR,
}
"""Elements whose names stand in the drawing where there is room; those of wires would fill it."""
_STRONG = 0.2
"""Above it a suspected element's outline is unbroken."""


@dataclass(frozen=True, slots=True)
class _Sheet:
    """What all parts of one painting share."""

    painter: QPainter
    plan: CircuitPlan
    marks: CircuitMarks
    palette: Palette
    pixels: int
    tell: Callable[[str], str] = str

    def pen(self, colour: str, width: float = 1.0, *, broken: bool = False) -> None:
        """Take a pen."""
        style = Qt.PenStyle.DashLine if broken else Qt.PenStyle.SolidLine
        pen = QPen(QColor(colour), width * max(self.plan.size / 22.0, 1.0), style)
        pen.setJoinStyle(Qt.PenJoinStyle.MiterJoin)
        self.painter.setPen(pen)

    def font(self, share: float = 1.0, *, bold: bool = False) -> QFont:
        """Give a font of a share of the text's height."""
        font = QFont(self.painter.font())
        font.setPixelSize(max(round(share * self.pixels), 6))
        font.setBold(bold)
        return font

    def size_of(self, words: str, font: QFont) -> QSizeF:
        """Give the room that words need."""
        metrics = QFontMetricsF(font, self.painter.device())
        return QSizeF(metrics.horizontalAdvance(words) + 4.0, metrics.height())


def plan_of(circuit: Circuit, rect: QRectF, pixels: int) -> CircuitPlan:
    """Lay a circuit out as :func:`paint_circuit` does, such as for the mouse."""
    return CircuitPlan(circuit, rect, dot=max(0.62 * pixels, 6.5))


def paint_circuit(  # where, what and how
    painter: QPainter,
    rect: QRectF,
    circuit: Circuit,
    marks: CircuitMarks,
    palette: Palette = DAY,
    pixels: int = 12,
    tell: Callable[[str], str] = str,
) -> CircuitPlan:
    """Paint a circuit, scaled to a rectangle.

    Parameters
    ----------
    painter : QPainter
    rect : QRectF
        At least about 560 by 300 units for text that fits.
    circuit : Circuit
    marks : CircuitMarks
    palette : Palette
    pixels : int
        Height of the text.
    tell : callable
        Gives words in the language of whoever looks.

    Returns
    -------
    CircuitPlan
        Where everything lies.
    """
    plan = plan_of(circuit, rect, pixels)
    sheet = _Sheet(painter, plan, marks, palette, pixels, tell)
    painter.save()
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    painter.fillRect(rect, QColor(palette.panel))
    painter.setBackground(QColor(palette.panel))
    _relay_links(sheet)
    for placed in plan.placed:
        _element(sheet, placed)
    _jumpers(sheet)
    tags = CircuitTags(rect, _dots(plan), _boxes(plan), plan.lines())
    _outlines(sheet)
    for point in circuit.points:
        _dot(sheet, point.name)
    at_hand = [name for name in (marks.chosen, marks.next_point) if name in marks.points]
    _point_tags(sheet, tags, dict.fromkeys(at_hand))
    named = _percents(sheet, tags)
    _point_tags(sheet, tags, [name for name in marks.points if name not in at_hand])
    _names(sheet, tags, named)
    painter.restore()
    return plan


def _dots(plan: CircuitPlan) -> list[QRectF]:
    radius = plan.dot + 1.0
    return [
        QRectF(at.x() - radius, at.y() - radius, 2.0 * radius, 2.0 * radius)
        for at in plan.points.values()
    ]


def _boxes(plan: CircuitPlan) -> list[QRectF]:
    return [one.box for one in plan.placed if one.element.kind is not ElementKind.WIRE]


def is_cut(element: Element, state: CircuitState) -> bool:
    """Tell whether the state opens an element: plug off, fuse out, switch or contact open.

    A relay's contact is drawn at rest, as is usual (IEC 61082-1, from memory).
    """
    if element.plug in state.unplugged or element.name in state.pulled:
        return True
    if element.kind is ElementKind.SWITCH:
        by_key = bool(element.closed_keys) and state.key not in element.closed_keys
        return by_key or (bool(element.closed_speeds) and state.speed not in element.closed_speeds)
    return element.kind is ElementKind.CONTACT


def _element(sheet: _Sheet, placed: Placed) -> None:
    element, painter = placed.element, sheet.painter
    cut = is_cut(element, sheet.marks.state)
    sheet.pen(sheet.palette.ink, 1.3)
    if placed.is_block:
        for first, second in placed.leads:
            painter.drawLine(first, second)
        painter.setFont(sheet.font(0.92))
        paint_block(painter, placed.box, _block_words(element, sheet.tell), sheet.plan.dot)
        return
    if element.kind is ElementKind.GROUND and not element.faults:
        # Sheet metal: a broad line.
        sheet.pen(sheet.palette.edge, 3.4)
    for first, second in pairwise(placed.corners):
        if (first, second) != placed.stretch:
            painter.drawLine(first, second)
    if element.kind is ElementKind.TRANSISTOR:
        gate = sheet.plan.nodes[element.nodes[2]]
        paint_transistor(painter, *placed.stretch, gate, sheet.plan.size)
        return
    kind = element.kind
    if kind is ElementKind.GROUND and not element.faults:
        kind = ElementKind.WIRE
    pulled = element.name in sheet.marks.state.pulled
    off = bool(element.plug) and element.plug in sheet.marks.state.unplugged
    if pulled or off:
        sheet.pen(sheet.palette.alert, 1.6)
    paint_symbol(painter, kind, *placed.stretch, sheet.plan.size, at=placed.at, cut=cut)


def _block_words(element: Element, tell: Callable[[str], str]) -> str:
    words = tell(element.label or element.name.replace("-", " "))
    pulsed = element.kind is ElementKind.CHOPPER
    return f"{words}\n({tell('pulsed')})" if pulsed else words


def _relay_links(sheet: _Sheet) -> None:
    """Join each coil with its contacts by a broken line."""
    sheet.pen(sheet.palette.edge, 1.2, broken=True)
    for link in sheet.plan.links():
        for first, second in pairwise(link):
            sheet.painter.drawLine(first, second)


def _jumpers(sheet: _Sheet) -> None:
    """Draw fused jumpers as a broad curve between their nodes."""
    painter, nodes = sheet.painter, sheet.plan.nodes
    for first, second in sorted(sheet.marks.state.jumpers):
        start, end = nodes[first], nodes[second]
        along = end - start
        aside = QPointF(-along.y(), along.x()) * 0.25
        path = QPainterPath(start)
        path.quadTo((start + end) / 2.0 + aside, end)
        painter.setBrush(Qt.BrushStyle.NoBrush)
        sheet.pen(sheet.palette.alert, 3.0)
        painter.drawPath(path)
        painter.setFont(sheet.font(0.85, bold=True))
        words = sheet.tell("jumper")
        middle = (start + end) / 2.0 + aside / 2.0
        _words_on(sheet, _centred(middle, sheet.size_of(words, painter.font())), words,
                  sheet.palette.alert, sheet.palette.on_alert)  # fmt: skip


def _dot(sheet: _Sheet, name: str) -> None:
    mark = sheet.marks.points.get(name)
    if mark is None:
        return
    painter, palette, radius = sheet.painter, sheet.palette, sheet.plan.dot
    at = sheet.plan.points[name]
    fill, ink = _dot_colours(mark, palette)
    if name == sheet.marks.chosen:
        painter.setBrush(Qt.BrushStyle.NoBrush)
        sheet.pen(palette.accent, 3.0)
        painter.drawEllipse(at, radius + 4.0, radius + 4.0)
    painter.setBrush(QColor(fill))
    sheet.pen(ink if mark.found is None else fill, 1.2)
    box = QRectF(at.x() - radius, at.y() - radius, 2.0 * radius, 2.0 * radius)
    kind = sheet.plan.circuit.point(name).kind
    if kind is PointKind.VOLTAGE:
        painter.drawEllipse(box)
    elif kind is PointKind.DROP:
        painter.drawRect(box)
    else:
        painter.drawRoundedRect(box.adjusted(-2.0, 0.0, 2.0, 0.0), 4.0, 4.0)
    share = 1.0 if len(mark.letter) == 1 else 0.8
    painter.setFont(sheet.font(share, bold=True))
    painter.setPen(QColor(ink))
    painter.drawText(box.adjusted(-4.0, -2.0, 4.0, 2.0), Qt.AlignmentFlag.AlignCenter, mark.letter)


def _dot_colours(mark: PointMark, palette: Palette) -> tuple[str, str]:
    if mark.found is None:
        return palette.panel, palette.ink
    if mark.doubted or mark.fits is None:
        return palette.caution, palette.on_caution
    return (palette.accent, palette.on_accent) if mark.fits else (palette.alert, palette.on_alert)


def _outlines(sheet: _Sheet) -> None:
    """Outline the elements of suspected units."""
    painter, palette = sheet.painter, sheet.palette
    for placed in sheet.plan.placed:
        unit = placed.element.unit
        probability = sheet.marks.units.get(unit)
        if probability is None or not placed.element.faults:
            continue
        painter.setBrush(Qt.BrushStyle.NoBrush)
        strong = probability >= _STRONG
        sheet.pen(palette.alert, 3.0 if strong else 1.8, broken=not strong)
        painter.drawRoundedRect(placed.box.adjusted(-3.0, 0.0, 3.0, 0.0), 4.0, 4.0)


def _percents(sheet: _Sheet, tags: CircuitTags) -> set[str]:
    """Write each suspected unit's percent beside its likeliest element, joined to it by a line.

    With the unit's name where there is room: what stands between two symbols could be either's.
    Gives the elements whose unit is named so.
    """
    painter, palette = sheet.painter, sheet.palette
    named: set[str] = set()
    for unit, name in sheet.marks.likeliest.items():
        found = sheet.plan.of(name)
        if found is None:
            continue
        odds = sheet.tell(percent(sheet.marks.units[unit]))
        painter.setFont(sheet.font(0.95, bold=True))
        around = found.box.adjusted(-4.0, -4.0, 4.0, 4.0)
        words = f"{sheet.tell(sheet.plan.circuit.unit(unit).label)} {odds}"
        box = tags.place(around, sheet.size_of(words, painter.font()))
        if box is not None:
            named.add(name)
        else:
            words = odds
            box = tags.place(around, sheet.size_of(words, painter.font()), must=True)
        if box is None:
            continue
        sheet.pen(palette.alert, 2.0)
        painter.drawLine(*_between(found.box.adjusted(-3.0, 0.0, 3.0, 0.0), box))
        painter.setFont(sheet.font(0.95, bold=True))
        _words_on(sheet, box, words, palette.alert, palette.on_alert)
    return named


def _between(first: QRectF, second: QRectF) -> tuple[QPointF, QPointF]:
    """Give the shortest line from one rectangle to another."""
    (x1, x2), (y1, y2) = (
        _nearest((first.left(), first.right()), (second.left(), second.right())),
        _nearest((first.top(), first.bottom()), (second.top(), second.bottom())),
    )
    return QPointF(x1, y1), QPointF(x2, y2)


def _nearest(first: tuple[float, float], second: tuple[float, float]) -> tuple[float, float]:
    if first[1] < second[0]:
        return first[1], second[0]
    if second[1] < first[0]:
        return first[0], second[1]
    middle = (max(first[0], second[0]) + min(first[1], second[1])) / 2.0
    return middle, middle


def _point_tags(sheet: _Sheet, tags: CircuitTags, names: Iterable[str]) -> None:
    """Write beside dots: which is next, what was found, and what is expected; found ones first."""
    marks, palette = sheet.marks, sheet.palette
    for name in sorted(names, key=lambda one: marks.points[one].found is None):
        mark = marks.points[name]
        at, radius = sheet.plan.points[name], sheet.plan.dot + 1.0
        around = QRectF(at.x() - radius, at.y() - radius, 2.0 * radius, 2.0 * radius)
        important = name in {marks.chosen, marks.next_point} or mark.found is not None
        words = sheet.tell(mark.found_words or mark.expected_words)
        words = f"{mark.letter} {words}" if mark.found_words else words
        lead = sheet.tell("next") if name == marks.next_point else ""
        strong, plain = sheet.font(0.95, bold=True), sheet.font(0.92, bold=mark.found is not None)
        first, second = sheet.size_of(lead, strong), sheet.size_of(words, plain)
        wide = (first.width() if lead else 0.0) + (second.width() if words else 0.0)
        if not wide:
            continue
        # In one: words beside another dot would be read as that one's.
        box = tags.place(around, QSizeF(wide, max(first.height(), second.height())), must=important)
        if box is None:
            continue
        if lead:
            sheet.painter.setFont(strong)
            mark_box = QRectF(box.topLeft(), QSizeF(first.width(), box.height()))
            _words_on(sheet, mark_box, lead, palette.caution, palette.on_caution)
            box = box.adjusted(mark_box.width(), 0.0, 0.0, 0.0)
        sheet.painter.setFont(plain)
        if words and mark.found is None:
            _words_on(sheet, box, words, palette.panel, palette.faint)
        elif words:
            wrong = mark.fits is False and not mark.doubted
            ink = palette.alert if wrong else palette.ink
            _words_on(sheet, box, words, palette.panel, ink)


def _names(sheet: _Sheet, tags: CircuitTags, named: Collection[str]) -> None:
    """Write the names of the main elements where there is room."""
    sheet.painter.setFont(sheet.font(0.9))
    for placed in sheet.plan.placed:
        element = placed.element
        if placed.is_block or element.kind not in _NAMED or not element.faults:
            continue
        if element.name in named:
            continue
        words = sheet.tell(element.label)
        box = tags.place(placed.box, sheet.size_of(words, sheet.painter.font()))
        if box is not None:
            _words_on(sheet, box, words, sheet.palette.panel, sheet.palette.ink)


def _words_on(sheet: _Sheet, box: QRectF, words: str, ground: str, ink: str) -> None:
    sheet.painter.fillRect(box, QColor(ground))
    sheet.painter.setPen(QColor(ink))
    sheet.painter.drawText(box, Qt.AlignmentFlag.AlignCenter, words)


def _centred(at: QPointF, size: QSizeF) -> QRectF:
    return QRectF(at.x() - size.width() / 2.0, at.y() - size.height() / 2.0,
                  size.width(), size.height())  # fmt: skip
