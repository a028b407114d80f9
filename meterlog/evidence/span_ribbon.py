"""Span ribbon: what the motor was doing, as a strip under the trace. Colour, hatch and words."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QBrush, QColor, QFontMetricsF, QPainter, QPen, QPolygonF

from meterlog.evidence.palette import Hatch, Palette, SpanStyle
from meterlog.model import Span, SpanKind

_BRUSHES = {
    Hatch.RISING: Qt.BrushStyle.BDiagPattern,
    Hatch.FALLING: Qt.BrushStyle.FDiagPattern,
    Hatch.LEVEL: Qt.BrushStyle.HorPattern,
    Hatch.UPRIGHT: Qt.BrushStyle.VerPattern,
    Hatch.SQUARES: Qt.BrushStyle.CrossPattern,
    Hatch.LATTICE: Qt.BrushStyle.DiagCrossPattern,
    Hatch.DOTS: Qt.BrushStyle.Dense6Pattern,
    Hatch.GRAINS: Qt.BrushStyle.Dense4Pattern,
}


@dataclass(frozen=True, slots=True)
class TimeScale:
    """Where an instant lies across a picture: ``start_ns`` at ``left``, ``end_ns`` at ``right``."""

    start_ns: int
    end_ns: int
    left: float
    right: float

    def x(self, t_ns: float) -> float:
        """Give the x of an instant, in the picture's units; may lie outside the picture."""
        share = (t_ns - self.start_ns) / max(self.end_ns - self.start_ns, 1)
        return self.left + share * (self.right - self.left)

    def t_ns(self, x: float) -> int:
        """Give the instant at ``x``."""
        share = (x - self.left) / max(self.right - self.left, 1.0)
        return self.start_ns + round(share * (self.end_ns - self.start_ns))


def paint_swatch(painter: QPainter, rect: QRectF, style: SpanStyle) -> None:
    """Paint a patch of a span kind's colour and hatch, with its edge."""
    painter.fillRect(rect, QColor(style.fill))
    pattern = _BRUSHES.get(style.hatch)
    if pattern is not None:
        painter.fillRect(rect, QBrush(QColor(style.line), pattern))
    if style.hatch is Hatch.SOLID:
        lower = QRectF(rect.left(), rect.bottom() - 3.0, rect.width(), 3.0)
        painter.fillRect(lower, QColor(style.line))
    painter.setPen(QPen(QColor(style.line), 1.0))
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.drawRect(rect)


def paint_ribbon(
    painter: QPainter, rect: QRectF, scale: TimeScale, spans: Sequence[Span], palette: Palette
) -> None:
    """Paint the ribbon and, in the lower half of ``rect``, the names of spans too short for one.

    Parameters
    ----------
    painter : QPainter
        With the font for the words set.
    rect : QRectF
        Ribbon above, lane for names below, each half as high.
    scale : TimeScale
    spans : sequence of Span
        In time order.
    palette : Palette
    """
    painter.save()
    painter.setClipRect(rect)
    metrics = QFontMetricsF(painter.font(), painter.device())
    strip = QRectF(rect.left(), rect.top(), rect.width(), rect.height() / 2.0)
    outside: list[tuple[float, float, Span]] = []
    for span in _visible(spans, scale):
        left = max(scale.x(span.start_ns), scale.left)
        right = min(scale.x(span.end_ns), scale.right)
        patch = QRectF(left, strip.top(), max(right - left, 2.0), strip.height())
        style = palette.spans[span.kind]
        paint_swatch(painter, patch, style)
        words = palette.spans[span.kind].word
        if metrics.horizontalAdvance(words) + 10.0 <= patch.width():
            _plate(painter, patch, words, palette, style)
        elif span.kind.is_fault or span.kind is SpanKind.NO_DATA:
            outside.append((left, right, span))
    lane = QRectF(rect.left(), strip.bottom(), rect.width(), rect.height() / 2.0)
    _names_below(painter, lane, outside, palette)
    painter.restore()


def _visible(spans: Sequence[Span], scale: TimeScale) -> list[Span]:
    return [s for s in spans if s.end_ns > scale.start_ns and s.start_ns < scale.end_ns]


def _plate(
    painter: QPainter, patch: QRectF, words: str, palette: Palette, style: SpanStyle
) -> None:
    metrics = QFontMetricsF(painter.font(), painter.device())
    width = metrics.horizontalAdvance(words) + 8.0
    height = min(metrics.height(), patch.height() - 4.0)
    plate = QRectF(0.0, 0.0, width, height)
    plate.moveCenter(patch.center())
    if style.hatch not in {Hatch.NONE, Hatch.SOLID}:
        painter.fillRect(plate, QColor(palette.panel))
    painter.setPen(QColor(palette.ink))
    painter.drawText(plate, Qt.AlignmentFlag.AlignCenter, words)


def _names_below(
    painter: QPainter,
    lane: QRectF,
    outside: Sequence[tuple[float, float, Span]],
    palette: Palette,
) -> None:
    """Write names under short spans where there is room; a tick marks each in any case."""
    metrics = QFontMetricsF(painter.font(), painter.device())
    free_from = lane.left()
    waiting = 0
    for left, right, span in outside:
        middle = (left + right) / 2.0
        _pointer(painter, middle, lane.top(), QColor(palette.spans[span.kind].line))
        words = palette.spans[span.kind].word
        wide = metrics.horizontalAdvance(words)
        at = min(max(middle - wide / 2.0, lane.left()), lane.right() - wide)
        if at < free_from:
            waiting += 1
            continue
        painter.setPen(QColor(palette.ink))
        baseline = lane.top() + 5.0 + metrics.ascent()
        painter.drawText(QPointF(at, baseline), words)
        free_from = at + wide + 6.0
    if waiting and free_from + metrics.horizontalAdvance(f"+{waiting}") < lane.right():
        painter.setPen(QColor(palette.faint))
        painter.drawText(QPointF(free_from, lane.top() + 5.0 + metrics.ascent()), f"+{waiting}")


def _pointer(painter: QPainter, x: float, top: float, colour: QColor) -> None:
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(colour)
    tip = [QPointF(x, top), QPointF(x - 4.0, top + 5.0), QPointF(x + 4.0, top + 5.0)]
    painter.drawPolygon(QPolygonF(tip))
