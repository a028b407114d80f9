"""Trace key: what the lines, areas and hatches of a trace picture mean."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass

from PySide6.QtCore import QLineF, QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QFontMetricsF, QPainter, QPen

from meterlog.evidence.palette import Palette
from meterlog.evidence.span_ribbon import paint_swatch
from meterlog.evidence.trace_plot import CROSS, paint_cross
from meterlog.evidence.trace_store import TraceLine
from meterlog.model import Role, SpanKind


@dataclass(frozen=True, slots=True)
class KeyEntry:
    """One sign and its words; ``draw`` paints the sign into the box it is given."""

    words: str
    draw: Callable[[QPainter, QRectF], None]


def key_entries(
    lines: Sequence[TraceLine], kinds: Sequence[SpanKind], palette: Palette, *, limits: bool
) -> list[KeyEntry]:
    """Give the entries for the lines, areas and span kinds that a picture shows."""
    entries = [KeyEntry(line.label, _sign(line, palette)) for line in lines]
    joined = {line.role for line in lines if not line.typed}
    if {Role.MOTOR_FEED, Role.MOTOR_RETURN} <= joined:
        entries.append(
            KeyEntry(
                "across the motor: feed above, return below", _area(palette.between, palette.edge)
            )
        )
    if limits:
        entries.append(KeyEntry("limits of the step", _area(palette.band, palette.band_edge)))
    entries.extend(KeyEntry(palette.spans[kind].word, _hatch(kind, palette)) for kind in kinds)
    return entries


def paint_key(
    painter: QPainter, rect: QRectF, entries: Sequence[KeyEntry], palette: Palette
) -> float:
    """Paint entries from left to right, on as many lines as they need.

    Returns
    -------
    float
        The y below the last line.
    """
    metrics = QFontMetricsF(painter.font(), painter.device())
    high = metrics.capHeight()
    x, top = rect.left(), rect.top()
    for entry in entries:
        wide = high * 2.5 + metrics.horizontalAdvance(entry.words)
        if x > rect.left() and x + wide > rect.right():
            x, top = rect.left(), top + metrics.height() * 1.1
        baseline = top + metrics.ascent()
        entry.draw(painter, QRectF(x, baseline - high, high * 2.0, high))
        painter.setPen(QColor(palette.ink))
        painter.drawText(QPointF(x + high * 2.5, baseline), entry.words)
        x += wide + high * 1.5
    return top + metrics.height() * 1.1


def _sign(line: TraceLine, palette: Palette) -> Callable[[QPainter, QRectF], None]:
    colour = palette.line(line.role)
    return _cross(colour) if line.typed else _stroke(colour)


def _cross(colour: str) -> Callable[[QPainter, QRectF], None]:
    def draw(painter: QPainter, box: QRectF) -> None:
        painter.setPen(QColor(colour))
        paint_cross(painter, box.center(), min(CROSS, box.height() / 2.0))

    return draw


def _stroke(colour: str) -> Callable[[QPainter, QRectF], None]:
    def draw(painter: QPainter, box: QRectF) -> None:
        painter.setPen(QPen(QColor(colour), 3.0))
        painter.drawLine(QLineF(box.left(), box.center().y(), box.right(), box.center().y()))

    return draw


def _area(fill: str, edge: str) -> Callable[[QPainter, QRectF], None]:
    def draw(painter: QPainter, box: QRectF) -> None:
        painter.fillRect(box, QColor(fill))
        painter.setPen(QPen(QColor(edge), 1.0, Qt.PenStyle.DashLine))
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.drawRect(box)

    return draw


def _hatch(kind: SpanKind, palette: Palette) -> Callable[[QPainter, QRectF], None]:
    def draw(painter: QPainter, box: QRectF) -> None:
        paint_swatch(painter, box, palette.spans[kind])

    return draw
