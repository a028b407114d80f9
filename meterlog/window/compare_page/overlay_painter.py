"""OverlayPainter: a plot of both sides: grid, limits, curves, what the axes count."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from PySide6.QtCore import QLineF, QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QFontMetricsF, QPainter, QPen

from meterlog.evidence.palette import Palette
from meterlog.evidence.span_ribbon import TimeScale
from meterlog.evidence.speed_bands import SpeedBand
from meterlog.evidence.ticks import nice_step, tick_text, ticks_at, time_step, time_text
from meterlog.evidence.trace_plot import ValueScale, paint_bands, paint_frame
from meterlog.window.compare_page.overlay_axis import OverlayAxis
from meterlog.window.compare_page.overlay_curves import Curve
from meterlog.window.compare_page.overlay_lines import paint_curves
from meterlog.window.numbers import in_numbers
from meterlog.window.words import say


@dataclass(frozen=True, slots=True)
class Plot:
    """One quantity as it is painted.

    Attributes
    ----------
    titles : tuple of str
        What the values are, the fullest first: the first that there is room for is written.
    curves : tuple of Curve
    bands : tuple of SpeedBand
        Limits behind the curves.
    values : ValueScale
    """

    titles: tuple[str, ...]
    curves: tuple[Curve, ...]
    bands: tuple[SpeedBand, ...]
    values: ValueScale


def paint_plot(
    painter: QPainter,
    scale: TimeScale,
    plot: Plot,
    axis: OverlayAxis,
    palette: Palette,
    chosen: int | None,
) -> None:
    """Paint one plot: grid, limits, curves, frame.

    Parameters
    ----------
    painter : QPainter
        With the font for the words set.
    scale : TimeScale
        Of the axis.
    plot : Plot
    axis : OverlayAxis
    palette : Palette
    chosen : int or None
        Speed of the chosen piece.
    """
    rect = plot.values.rect
    painter.fillRect(rect, QColor(palette.panel))
    painter.save()
    painter.setClipRect(rect)
    paint_bands(painter, scale, plot.values, plot.bands, palette)
    _grid(painter, scale, plot.values, axis, palette)
    piece = axis.piece(chosen) if chosen is not None else None
    if piece is not None and len(axis.pieces) > 1:
        painter.setPen(QPen(QColor(palette.accent), 2.0))
        left, right = scale.x(piece.start_ns) + 1.0, scale.x(piece.end_ns) - 1.0
        painter.drawRect(QRectF(left, rect.top() + 1.0, right - left, rect.height() - 2.0))
    paint_curves(painter, scale, plot.values, plot.curves, palette)
    painter.restore()
    paint_frame(painter, rect, palette)
    _heights(painter, plot, palette)


def _grid(
    painter: QPainter, scale: TimeScale, values: ValueScale, axis: OverlayAxis, palette: Palette
) -> None:
    metrics = QFontMetricsF(painter.font(), painter.device())
    rect = values.rect
    painter.setPen(QPen(QColor(palette.rule), 1.0))
    for tick in ticks_at(values.low, values.high, _pace(values, metrics)):
        y = values.y(tick)
        painter.drawLine(QLineF(rect.left(), y, rect.right(), y))
    for x, _ in time_marks(scale, axis, metrics):
        painter.drawLine(QLineF(x, rect.top(), x, rect.bottom()))
    painter.setPen(QPen(QColor(palette.edge), 1.0))
    for piece in axis.pieces[1:]:
        x = scale.x(piece.start_ns)
        painter.drawLine(QLineF(x, rect.top(), x, rect.bottom()))


def _pace(values: ValueScale, metrics: QFontMetricsF) -> float:
    most = max(int(values.rect.height() / (metrics.height() * 1.8)), 2)
    return nice_step(values.high - values.low, most)


def fitting_title(titles: Sequence[str], metrics: QFontMetricsF, width: float) -> str:
    """Give the fullest title that there is room for; the last where there is for none."""
    return next((one for one in titles if metrics.horizontalAdvance(one) <= width), titles[-1])


def _heights(painter: QPainter, plot: Plot, palette: Palette) -> None:
    """Write the values and what they are, left of the plot."""
    metrics = QFontMetricsF(painter.font(), painter.device())
    values = plot.values
    rect = values.rect
    step = _pace(values, metrics)
    painter.setPen(QColor(palette.ink))
    for tick in ticks_at(values.low, values.high, step):
        words = in_numbers(tick_text(tick, step))
        x = rect.left() - 6.0 - metrics.horizontalAdvance(words)
        painter.drawText(QPointF(x, values.y(tick) + metrics.capHeight() / 2.0), words)
    painter.save()
    painter.translate(rect.left() - metrics.height() * 3.4, rect.center().y())
    painter.rotate(-90.0)
    box = QRectF(-rect.height() / 2.0, 0.0, rect.height(), metrics.height())
    title = fitting_title(plot.titles, metrics, box.width())
    painter.drawText(box, Qt.AlignmentFlag.AlignCenter, title)
    painter.restore()


def time_marks(
    scale: TimeScale, axis: OverlayAxis, metrics: QFontMetricsF
) -> list[tuple[float, str]]:
    """Give the x of each time to mark and its words: seconds since the command of its piece."""
    step = _time_pace(scale, metrics)
    marks = []
    for piece in axis.pieces:
        start_ns, end_ns = max(piece.start_ns, scale.start_ns), min(piece.end_ns, scale.end_ns)
        if end_ns <= start_ns:
            continue
        low, high = (start_ns - piece.start_ns) / 1e9, (end_ns - piece.start_ns) / 1e9
        marks += [
            (scale.x(piece.start_ns + t_s * 1e9), in_numbers(time_text(t_s, step)))
            for t_s in ticks_at(low, high, step)
            if t_s * 1e9 < piece.end_ns - piece.start_ns or len(axis.pieces) == 1
        ]
    return marks


def _time_pace(scale: TimeScale, metrics: QFontMetricsF) -> float:
    span_s = (scale.end_ns - scale.start_ns) / 1e9
    wide = metrics.horizontalAdvance("0:00:00") * 1.6
    return time_step(span_s, max(int((scale.right - scale.left) / wide), 2))


def paint_times(
    painter: QPainter, scale: TimeScale, top: float, axis: OverlayAxis, palette: Palette
) -> None:
    """Paint the times under the plots, and what they count."""
    metrics = QFontMetricsF(painter.font(), painter.device())
    free_from = scale.left - 100.0
    for x, words in time_marks(scale, axis, metrics):
        painter.setPen(QPen(QColor(palette.edge), 1.0))
        painter.drawLine(QLineF(x, top, x, top + 4.0))
        half = metrics.horizontalAdvance(words) / 2.0
        if x - half < free_from:
            continue
        painter.setPen(QColor(palette.ink))
        # The last one ends with the plot, not beyond the picture.
        left = min(x - half, scale.right + 0.5 * metrics.height() - 2.0 * half)
        painter.drawText(QPointF(left, top + 5.0 + metrics.ascent()), words)
        free_from = left + 2.0 * half + 4.0
    what = say("the command of each speed") if axis.by_step else say("the first command")
    unit = say("min:s") if _time_pace(scale, metrics) >= 60.0 else "s"
    words = say("time since {what} ({unit}), as read", what=what, unit=unit)
    middle = (scale.left + scale.right - metrics.horizontalAdvance(words)) / 2.0
    painter.setPen(QColor(palette.faint))
    painter.drawText(QPointF(middle, top + 5.0 + metrics.height() + metrics.ascent()), words)


def paint_speeds(
    painter: QPainter, rect: QRectF, scale: TimeScale, axis: OverlayAxis, palette: Palette,
    chosen: int | None,
) -> None:  # fmt: skip
    """Write the speed of each piece above the plots, the chosen one with an arrow."""
    metrics = QFontMetricsF(painter.font(), painter.device())
    for piece in axis.pieces:
        if piece.speed is None:
            continue
        left = max(scale.x(piece.start_ns), rect.left())
        right = min(scale.x(piece.end_ns), rect.right())
        if right - left < metrics.horizontalAdvance("0"):
            continue
        sign = "▸ " if piece.speed == chosen else ""
        words = say("{sign}speed {speed}", sign=sign, speed=piece.speed)
        if metrics.horizontalAdvance(words) > right - left:
            words = f"{sign}{piece.speed}"
        painter.setPen(QColor(palette.ink))
        box = QRectF(left, rect.top(), right - left, rect.height())
        painter.drawText(box, Qt.AlignmentFlag.AlignCenter, words)
