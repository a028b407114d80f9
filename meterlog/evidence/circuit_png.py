"""CircuitPng: the drawing of a circuit check as a file, with heading and legend."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from pathlib import Path

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QFont, QFontMetricsF, QImage, QPainter

from meterlog.evidence.circuit_marks import DRAWING_KEY, marks_of, point_letters
from meterlog.evidence.circuit_picture import paint_circuit
from meterlog.evidence.palette import DAY
from meterlog.evidence.picture_screen import need_fonts
from meterlog.evidence.png_file import write_png
from meterlog.model import (
    Circuit,
    CircuitCheck,
    CircuitReading,
    CircuitSign,
    CircuitState,
    CircuitVerdict,
    Expectation,
)
from meterlog.model.circuit_words import state_words


def drawn_state(check: CircuitCheck) -> CircuitState:
    """Give the state in which a check is drawn: that of its newest reading, else of a sign."""
    taken: Sequence[CircuitReading | CircuitSign] = check.readings or check.signs
    return max(taken, key=lambda one: one.id).state if taken else CircuitState()


def save_circuit_png(  # one picture with all that stands in it
    path: Path,
    circuit: Circuit,
    check: CircuitCheck,
    verdict: CircuitVerdict,
    expected: Iterable[Expectation] = (),
    mark: str = "",
    program: str = "",
) -> Path:
    """Save the drawing of a check as PNG, with heading and legend; works without a screen.

    Drawn in the state of the newest reading; the readings of other states stand in ``circuit.txt``.

    Parameters
    ----------
    path : Path
        Its folder must exist; a file there is replaced.
    circuit, check, verdict
    expected : iterable of Expectation
        What a circuit in order gives in :func:`drawn_state`.
    mark : str
        Origin of readings that were not measured; empty for measured ones.
    program : str
        Kept in the file.

    Returns
    -------
    Path
        ``path``.

    Raises
    ------
    EvidenceError
        If there are no fonts on this machine, or the file can't be written.
    """
    need_fonts(path)
    state = drawn_state(check)
    marks = marks_of(circuit, check, verdict, state, expected)
    pixels, width = 17, 1600
    rows = -(-len(circuit.points) // 3)
    line = pixels * 1.35
    head, foot = 4.6 * line, (rows + 2.5) * line
    image = QImage(width, round(head + 780 + foot), QImage.Format.Format_RGB32)
    painter = QPainter(image)
    try:
        font = QFont()
        font.setPixelSize(pixels)
        painter.setFont(font)
        painter.fillRect(image.rect(), QColor(DAY.ground))
        _heading(painter, QRectF(20, 12, width - 40, head - 16), circuit, verdict, state, mark)
        paint_circuit(painter, QRectF(20, head, width - 40, 780), circuit, marks, DAY, pixels)
        _legend(painter, QRectF(20, head + 786, width - 40, foot), circuit, line)
    finally:
        painter.end()
    image.setText("Software", program)
    return write_png(image, path)


def _heading(  # what stands above the drawing
    painter: QPainter,
    rect: QRectF,
    circuit: Circuit,
    verdict: CircuitVerdict,
    state: CircuitState,
    mark: str,
) -> None:
    plain = painter.font()
    bold = QFont(plain)
    bold.setBold(True)
    painter.setFont(bold)
    painter.setPen(QColor(DAY.ink))
    painter.drawText(rect, Qt.AlignmentFlag.AlignLeft, f"Circuit check: {circuit.title}")
    if mark:
        wide = QFontMetricsF(bold, painter.device()).horizontalAdvance(mark) + 24.0
        stamp = QRectF(rect.right() - wide, rect.top(), wide, 1.5 * bold.pixelSize())
        painter.fillRect(stamp, QColor(DAY.caution))
        painter.setPen(QColor(DAY.on_caution))
        painter.drawText(stamp, Qt.AlignmentFlag.AlignCenter, mark)
    painter.setFont(plain)
    painter.setPen(QColor(DAY.ink))
    below = rect.adjusted(0.0, 1.5 * plain.pixelSize(), 0.0, 0.0)
    words = f"Drawn in: {state_words(circuit, state)}. {verdict.settled_words}"
    flags = Qt.AlignmentFlag.AlignLeft | Qt.TextFlag.TextWordWrap
    painter.drawText(below, flags, words)


def _legend(painter: QPainter, rect: QRectF, circuit: Circuit, line: float) -> None:
    """Write what the letters and marks mean, in three columns."""
    letters = point_letters(circuit)
    painter.setPen(QColor(DAY.ink))
    third = rect.width() / 3.0
    rows = -(-len(circuit.points) // 3)
    metrics = QFontMetricsF(painter.font(), painter.device())
    for at, point in enumerate(circuit.points):
        column, row = divmod(at, rows)
        spot = QPointF(rect.left() + column * third, rect.top() + (row + 1) * line)
        words = metrics.elidedText(
            f"{letters[point.name]}  {point.label}", Qt.TextElideMode.ElideRight, third - 12.0
        )
        painter.drawText(spot, words)
    foot = QRectF(rect.left(), rect.top() + (rows + 0.5) * line, rect.width(), 2.2 * line)
    painter.setPen(QColor(DAY.faint))
    painter.drawText(foot, Qt.AlignmentFlag.AlignLeft | Qt.TextFlag.TextWordWrap, DRAWING_KEY)
