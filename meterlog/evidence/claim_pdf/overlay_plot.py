"""OverlayPlot: the currents of both motors on one axis, from the command on."""

from __future__ import annotations

import math
from collections.abc import Sequence

from PySide6.QtCore import QLineF, QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QFontMetricsF, QPainter, QPen, QPolygonF

from meterlog.evidence.claim_pdf.bar_walk import walked
from meterlog.evidence.claim_pdf.page_look import PAPER, Look
from meterlog.evidence.span_ribbon import TimeScale
from meterlog.evidence.ticks import ceiling
from meterlog.evidence.trace_plot import ValueScale, paint_axes, paint_frame, time_ticks
from meterlog.model import Overlay, Role

_OLD = PAPER.line(Role.MOTOR_CURRENT)
_NEW = PAPER.line(Role.MOTOR_FEED)
_FONT = Look(9)


PANELS = 3
"""Speeds side by side: more could not be read on paper."""


def paint_overlay(painter: QPainter, rect: QRectF, overlays: Sequence[Overlay]) -> None:
    """Paint both currents, the old one unbroken and thin, the new one broken: told without colour.

    Parameters
    ----------
    painter : QPainter
    rect : QRectF
    overlays : sequence of Overlay
        1 to :data:`PANELS` of them, side by side, each from its own command on, by one scale of
        current: runs whose speeds were commanded at other times lie over each other no other way.
    """
    painter.setFont(_FONT.font())
    metrics = QFontMetricsF(painter.font(), painter.device())
    line = metrics.height()
    finite = [v for one in overlays for v in (*one.old_a, *one.new_a) if math.isfinite(v)]
    top = ceiling(max([1.0, *finite]) * 1.02)
    pens = (
        (QPen(QColor(_OLD), 1.0), "old"),
        (QPen(QColor(_NEW), 1.2, Qt.PenStyle.DashLine), "new, broken line"),
    )
    wide = rect.width() / max(len(overlays), 1)
    for number, overlay in enumerate(overlays):
        left = rect.left() + number * wide
        plot = QRectF(left + 5.0 * line, rect.top() + 2.8 * line,
                      wide - 5.4 * line, rect.height() - 5.8 * line)  # fmt: skip
        painter.setPen(QColor(PAPER.ink))
        if overlay.speed is not None:
            painter.drawText(
                QPointF(plot.left(), plot.top() - 0.4 * line), f"speed {overlay.speed}"
            )
        _paint_one(painter, overlay, ValueScale(plot, -0.02 * top, top), [pen for pen, _ in pens])
    x = rect.left() + 5.0 * line
    for pen, words in pens:
        y = rect.top() + 0.6 * line
        painter.setPen(pen)
        painter.drawLine(QLineF(x, y, x + 26.0, y))
        painter.setPen(QColor(PAPER.ink))
        painter.drawText(QPointF(x + 31.0, y + 0.5 * metrics.capHeight()), words)
        x += 31.0 + metrics.horizontalAdvance(words) + 20.0


def _paint_one(
    painter: QPainter, overlay: Overlay, values: ValueScale, pens: Sequence[QPen]
) -> None:
    metrics, plot = QFontMetricsF(painter.font(), painter.device()), values.rect
    end_ns = round(max(overlay.t_s[-1], 1e-3) * 1e9)
    scale = TimeScale(0, end_ns, plot.left(), plot.right())
    paint_axes(painter, scale, values, "current (A)", PAPER)
    painter.save()
    painter.setClipRect(plot)
    both = ((overlay.old_a, overlay.old_falls), (overlay.new_a, overlay.new_falls))
    for pen, (amps, falls) in zip(pens, both, strict=True):
        painter.setPen(pen)
        for run in walked(overlay.t_s, amps, falls):
            points = [QPointF(scale.x(t_s * 1e9), values.y(value)) for t_s, value in run]
            painter.drawPolyline(QPolygonF(points))
    painter.restore()
    paint_frame(painter, plot, PAPER)
    _times(painter, scale, plot.bottom(), metrics)


def _times(painter: QPainter, scale: TimeScale, top: float, metrics: QFontMetricsF) -> None:
    for t_s in time_ticks(scale, metrics)[0]:
        x = scale.x(t_s * 1e9)
        painter.setPen(QPen(QColor(PAPER.edge), 1.0))
        painter.drawLine(QLineF(x, top, x, top + 4.0))
        words = f"{t_s:g}"
        painter.setPen(QColor(PAPER.ink))
        at = QPointF(x - metrics.horizontalAdvance(words) / 2.0, top + 5.0 + metrics.ascent())
        painter.drawText(at, words)
    words = "s from the command on"
    middle = (scale.left + scale.right - metrics.horizontalAdvance(words)) / 2.0
    painter.drawText(QPointF(middle, top + 6.0 + metrics.height() + metrics.ascent()), words)
