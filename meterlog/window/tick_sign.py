"""TickSign: the tick of a ticked box as a picture, since a style sheet can draw none."""

from __future__ import annotations

import tempfile
from functools import cache
from pathlib import Path

from PySide6.QtCore import QPointF, QSize, Qt
from PySide6.QtGui import QColor, QImage, QPainter, QPen, QPolygonF


@cache
def _folder() -> tempfile.TemporaryDirectory[str]:
    return tempfile.TemporaryDirectory(prefix="meterlog-signs-")


@cache
def tick_file(colour: str, pixels: int) -> str:
    """Give the path of a picture of a tick, drawn once; empty where it can't be written.

    Parameters
    ----------
    colour : str
        ``#rrggbb``.
    pixels : int
        Width and height.
    """
    image = QImage(QSize(pixels, pixels), QImage.Format.Format_ARGB32_Premultiplied)
    image.fill(Qt.GlobalColor.transparent)
    painter = QPainter(image)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    pen = QPen(QColor(colour), max(pixels * 0.16, 1.5))
    pen.setCapStyle(Qt.PenCapStyle.RoundCap)
    pen.setJoinStyle(Qt.PenJoinStyle.RoundJoin)
    painter.setPen(pen)
    corners = ((0.16, 0.55), (0.40, 0.80), (0.86, 0.20))
    painter.drawPolyline(QPolygonF([QPointF(x * pixels, y * pixels) for x, y in corners]))
    painter.end()
    try:
        path = Path(_folder().name) / f"tick-{colour.lstrip('#')}-{pixels}.png"
    except OSError:
        return ""
    return path.as_posix() if image.save(str(path)) else ""
