"""Trace plot: one quantity against time, painted with axes, bands and lines."""

from __future__ import annotations

import math
from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray
from PySide6.QtCore import QLineF, QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QFontMetricsF, QPainter, QPen, QPolygonF

from meterlog.evidence.motor_voltage import across_motor
from meterlog.evidence.palette import Palette
from meterlog.evidence.span_ribbon import TimeScale
from meterlog.evidence.speed_bands import SpeedBand
from meterlog.evidence.ticks import ceiling, nice_step, tick_text, ticks_at, time_step, time_text
from meterlog.evidence.trace_store import TraceLine

CROSS = 4.0
"""Half the width of the sign of a typed reading, in the picture's units."""

_CLOCKED_S = 60.0
"""From here on times are told in minutes, too, which takes more room."""


class ValueScale:
    """Where a value lies up and down a plot: ``low`` at the bottom, ``high`` at the top."""

    def __init__(self, rect: QRectF, low: float, high: float) -> None:
        self.rect = rect
        self.low = low
        self.high = high

    def y(self, value: float) -> float:
        """Give the y of a value, in the picture's units."""
        share = (value - self.low) / (self.high - self.low)
        return self.rect.bottom() - share * self.rect.height()


def value_range(lines: Sequence[TraceLine], at_least: float) -> tuple[float, float]:
    """Give an axis range from zero, or below it, to a round top with room for every reading."""
    high = max([at_least, *(line.high for line in lines if math.isfinite(line.high))])
    low = min([0.0, *(line.low for line in lines if math.isfinite(line.low))])
    top = ceiling(high * 1.02)
    bottom = -ceiling(-low * 1.02) if low < -0.02 * top else -0.02 * top
    return bottom, top


def paint_axes(
    painter: QPainter, scale: TimeScale, values: ValueScale, title: str, palette: Palette
) -> None:
    """Paint the frame, the grid, the value ticks and the axis title left of the plot."""
    rect = values.rect
    metrics = QFontMetricsF(painter.font(), painter.device())
    painter.fillRect(rect, QColor(palette.panel))
    most = max(int(rect.height() / (metrics.height() * 1.8)), 2)
    step = nice_step(values.high - values.low, most)
    for tick in ticks_at(values.low, values.high, step):
        y = values.y(tick)
        painter.setPen(QPen(QColor(palette.rule), 1.0))
        painter.drawLine(QLineF(rect.left(), y, rect.right(), y))
        painter.setPen(QColor(palette.ink))
        words = tick_text(tick, step)
        at = QPointF(
            rect.left() - 8.0 - metrics.horizontalAdvance(words), y + metrics.capHeight() / 2.0
        )
        painter.drawText(at, words)
    painter.setPen(QPen(QColor(palette.rule), 1.0))
    for t_s in time_ticks(scale, metrics)[0]:
        x = scale.x(t_s * 1e9)
        painter.drawLine(QLineF(x, rect.top(), x, rect.bottom()))
    painter.save()
    painter.setPen(QColor(palette.ink))
    painter.translate(rect.left() - metrics.height() * 3.8, rect.center().y())
    painter.rotate(-90.0)
    box = QRectF(-rect.height() / 2.0, 0.0, rect.height(), metrics.height())
    painter.drawText(box, Qt.AlignmentFlag.AlignCenter, title)
    painter.restore()


def paint_frame(painter: QPainter, rect: QRectF, palette: Palette) -> None:
    """Paint the outline of a plot, after its lines."""
    painter.setPen(QPen(QColor(palette.edge), 1.0))
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.drawRect(rect)


def time_ticks(scale: TimeScale, metrics: QFontMetricsF) -> tuple[tuple[float, ...], float]:
    """Give the times to mark, in seconds, and their step."""
    start_s, end_s = scale.start_ns / 1e9, scale.end_ns / 1e9
    longest = "00.00" if end_s - start_s < _CLOCKED_S else "0:00:00"
    room = max((scale.right - scale.left) / (metrics.horizontalAdvance(longest) * 1.8), 2.0)
    step = time_step(end_s - start_s, int(room))
    return ticks_at(start_s, end_s, step), step


def paint_time_axis(painter: QPainter, scale: TimeScale, top: float, palette: Palette) -> None:
    """Paint ticks and times under a plot, and what they count."""
    metrics = QFontMetricsF(painter.font(), painter.device())
    times, step = time_ticks(scale, metrics)
    for t_s in times:
        x = scale.x(t_s * 1e9)
        painter.setPen(QPen(QColor(palette.edge), 1.0))
        painter.drawLine(QLineF(x, top, x, top + 5.0))
        painter.setPen(QColor(palette.ink))
        words = time_text(t_s, step)
        at = QPointF(x - metrics.horizontalAdvance(words) / 2.0, top + 7.0 + metrics.ascent())
        painter.drawText(at, words)
    unit = "min:s" if step >= 60.0 else "s"
    words = f"time since the start of the recording ({unit})"
    middle = (scale.left + scale.right) / 2.0 - metrics.horizontalAdvance(words) / 2.0
    painter.drawText(QPointF(middle, top + 8.0 + metrics.height() + metrics.ascent()), words)


def paint_bands(
    painter: QPainter,
    scale: TimeScale,
    values: ValueScale,
    bands: Sequence[SpeedBand],
    palette: Palette,
) -> None:
    """Paint the current limits of each speed step behind the current, edges as broken lines."""
    painter.save()
    painter.setClipRect(values.rect)
    edge = QPen(QColor(palette.band_edge), 1.0, Qt.PenStyle.DashLine)
    for band in bands:
        left, right = scale.x(band.start_ns), scale.x(band.end_ns)
        top = values.y(values.high if band.max_a is None else band.max_a)
        bottom = values.y(0.0 if band.min_a is None else band.min_a)
        painter.fillRect(QRectF(left, top, right - left, bottom - top), QColor(palette.band))
        painter.setPen(edge)
        for limit in (band.min_a, band.max_a):
            if limit is not None:
                y = values.y(limit)
                painter.drawLine(QLineF(left, y, right, y))
    painter.restore()


def paint_between(
    painter: QPainter, scale: TimeScale, values: ValueScale, lines: Sequence[TraceLine], colour: str
) -> None:
    """Paint the area between motor feed and motor return: the voltage across the motor."""
    # Half as many again as there are pixels, so that rounding leaves no column unpainted.
    columns = max(int((scale.right - scale.left) * 1.5), 1)
    area = across_motor(lines, scale.start_ns, scale.end_ns, columns)
    if area is None:
        return
    painter.setPen(QPen(QColor(colour), 1.0))
    strokes = [
        QLineF(scale.x(float(t)), values.y(float(high)), scale.x(float(t)), values.y(float(low)))
        for t, high, low in zip(*area, strict=True)
    ]
    painter.drawLines(strokes)


def paint_lines(
    painter: QPainter,
    scale: TimeScale,
    values: ValueScale,
    lines: Sequence[TraceLine],
    palette: Palette,
) -> None:
    """Paint traces one pixel wide; NaN breaks a line, a lone reading becomes a dot.

    Readings typed by hand become crosses, joined by nothing.
    """
    painter.save()
    painter.setClipRect(values.rect)
    columns = max(int(scale.right - scale.left), 1)
    for line in lines:
        t_ns, points = line.shown(scale.start_ns, scale.end_ns, columns)
        painter.setPen(QPen(QColor(palette.line(line.role)), 1.0))
        if line.typed:
            for t, v in zip(t_ns.tolist(), points.tolist(), strict=True):
                if math.isfinite(v):
                    paint_cross(painter, QPointF(scale.x(t), values.y(v)), CROSS)
            continue
        for run in _runs(points):
            polygon = QPolygonF(
                [
                    QPointF(scale.x(float(t)), values.y(float(v)))
                    for t, v in zip(t_ns[run], points[run], strict=True)
                ]
            )
            if polygon.size() == 1:
                painter.drawEllipse(polygon.at(0), 1.5, 1.5)
            else:
                painter.drawPolyline(polygon)
    painter.restore()


def paint_cross(painter: QPainter, at: QPointF, arm: float) -> None:
    """Paint the sign of one reading typed by hand, ``arm`` wide and high to each side."""
    pen = QPen(painter.pen())
    thick = QPen(pen)
    thick.setWidthF(2.0)
    painter.setPen(thick)
    x, y = at.x(), at.y()
    painter.drawLine(QLineF(x - arm, y - arm, x + arm, y + arm))
    painter.drawLine(QLineF(x - arm, y + arm, x + arm, y - arm))
    painter.setPen(pen)


def _runs(points: NDArray[np.float64]) -> list[slice]:
    """Give the unbroken stretches of finite values."""
    real = np.isfinite(points)
    edges = np.flatnonzero(np.diff(np.concatenate([[False], real, [False]]).astype(np.int8)))
    return [slice(int(a), int(b)) for a, b in zip(edges[0::2], edges[1::2], strict=True)]
