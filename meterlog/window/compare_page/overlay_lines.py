"""OverlayLines: the curves of both sides, told apart by width and sign, not by colour alone."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray
from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QPainter, QPen, QPolygonF

from meterlog.evidence.palette import Palette
from meterlog.evidence.span_ribbon import TimeScale
from meterlog.evidence.trace_plot import CROSS, ValueScale, paint_cross
from meterlog.model import Role
from meterlog.window.compare_page.overlay_curves import Curve

_THIN, _THICK = 1.0, 3.0
"""Of the line before, which lies upon the line after, and of that, in the picture's units."""
_SIGN_EVERY = 42.0
"""From one square on the new line to the next, in the picture's units."""
_SQUARE = 6.0
_VEIL = 110
"""How opaque a band is, of 255."""
_BAND = 6.0
"""A noisy line that is mostly higher than this many units from lowest to highest is a band."""


def line_pen(palette: Palette, *, new: bool) -> QPen:
    """Give the pen of a side: thin before, thick after."""
    role = Role.MOTOR_FEED if new else Role.MOTOR_CURRENT
    return QPen(QColor(palette.line(role)), _THICK if new else _THIN)


def paint_curves(
    painter: QPainter,
    scale: TimeScale,
    values: ValueScale,
    curves: Sequence[Curve],
    palette: Palette,
) -> None:
    """Paint all curves of a plot: the thick new one, upon it the thin old ones, then its signs.

    Parameters
    ----------
    painter : QPainter
        Clipped to the plot.
    scale : TimeScale
    values : ValueScale
    curves : sequence of Curve
        In any order.
    palette : Palette
    """
    placed = [(curve, *_placed(scale, values, curve)) for curve in curves]
    for curve, x, y in sorted(placed, key=lambda one: not one[0].new):
        (_crosses if curve.typed else _stroke)(painter, curve, x, y, palette)
    for curve, x, y in placed:
        if curve.new and not curve.typed:
            real = np.isfinite(y)
            for at_x, at_y in _signs(x[real], y[real], unit_of(painter)):
                paint_square(painter, QPointF(at_x, at_y), palette)


def _placed(
    scale: TimeScale, values: ValueScale, curve: Curve
) -> tuple[NDArray[np.floating], NDArray[np.floating]]:
    """Give where the readings of a curve lie, x and y, shape (n,) each."""
    wide = (scale.right - scale.left) / max(scale.end_ns - scale.start_ns, 1)
    tall = values.rect.height() / (values.high - values.low)
    x = scale.left + (curve.t_ns - scale.start_ns) * wide
    return x, values.rect.bottom() - (curve.values - values.low) * tall


def _crosses(
    painter: QPainter,
    curve: Curve,
    x: NDArray[np.floating],
    y: NDArray[np.floating],
    palette: Palette,
) -> None:
    """Paint readings typed by hand, those of the new one boxed; joined by nothing."""
    size = CROSS * unit_of(painter)
    real = np.isfinite(y)
    for at_x, at_y in zip(x[real].tolist(), y[real].tolist(), strict=True):
        pen = line_pen(palette, new=curve.new)
        pen.setWidthF(_THIN)
        painter.setPen(pen)
        at = QPointF(at_x, at_y)
        paint_cross(painter, at, size)
        if curve.new:
            box = QRectF(0.0, 0.0, 2.0 * size, 2.0 * size)
            box.moveCenter(at)
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.drawRect(box)


def _stroke(
    painter: QPainter,
    curve: Curve,
    x: NDArray[np.floating],
    y: NDArray[np.floating],
    palette: Palette,
) -> None:
    """Paint the line; where nothing was read there is none."""
    real = np.isfinite(y)
    pen = line_pen(palette, new=curve.new)
    wide = pen.widthF() * unit_of(painter)
    pen.setWidthF(1.0)
    pen.setCosmetic(True)
    if not curve.new and _is_band(y[real], float(np.ptp(x)) if x.size else 0.0):
        # What lies under it must show through.
        colour = pen.color()
        colour.setAlpha(_VEIL)
        pen.setColor(colour)
    painter.setPen(pen)
    for run in _runs(real):
        _line(painter, QPolygonF(list(map(QPointF, x[run].tolist(), y[run].tolist()))), wide)


def _is_band(y: NDArray[np.floating], width: float) -> bool:
    """Tell whether a line is drawn as lowest and highest of each column, and these lie apart."""
    return y.size > width and float(np.median(np.abs(np.diff(y)))) > _BAND


def _line(painter: QPainter, points: QPolygonF, wide: float) -> None:
    """Draw a line ``wide`` units wide, of several of one device pixel each.

    Qt takes a hundred times as long for one line that is wider.
    """
    if points.size() == 1:
        painter.drawEllipse(points.at(0), wide, wide)
        return
    pixel = 1.0 / painter.device().devicePixelRatioF()
    many = max(round(wide / pixel), 1)
    for place in range(many):
        off = (place - (many - 1) / 2.0) * pixel
        painter.drawPolyline(points.translated(off, off) if many > 1 else points)


def _signs(
    x: NDArray[np.floating], y: NDArray[np.floating], unit: float
) -> Sequence[tuple[float, float]]:
    """Give where squares stand: at readings, some way from each other."""
    cells = np.floor(x / (_SIGN_EVERY * unit))
    _, first = np.unique(cells, return_index=True)
    return list(zip(x[first].tolist(), y[first].tolist(), strict=True))


def unit_of(painter: QPainter) -> float:
    """Give what a pixel is on a small screen, as the text on this one is larger."""
    return max(painter.font().pixelSize() / 12.0, 1.0)


def paint_square(painter: QPainter, at: QPointF, palette: Palette) -> None:
    """Paint the sign of the new line."""
    unit = unit_of(painter)
    box = QRectF(0.0, 0.0, _SQUARE * unit, _SQUARE * unit)
    box.moveCenter(at)
    painter.fillRect(box.adjusted(-unit, -unit, unit, unit), QColor(palette.panel))
    painter.fillRect(box, line_pen(palette, new=True).color())


def _runs(real: NDArray[np.bool_]) -> list[slice]:
    """Give the unbroken stretches: where nothing was read there is no line."""
    edges = np.flatnonzero(np.diff(np.concatenate([[False], real, [False]]).astype(np.int8)))
    return [slice(int(a), int(b)) for a, b in zip(edges[0::2], edges[1::2], strict=True)]
