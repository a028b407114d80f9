"""OverlayView: both runs over each other, with one time axis to zoom and to move."""

from __future__ import annotations

from PySide6.QtCore import QLineF, QPointF, QRectF, Qt, Signal
from PySide6.QtGui import (
    QColor,
    QFont,
    QFontMetricsF,
    QMouseEvent,
    QPainter,
    QPaintEvent,
    QPen,
    QResizeEvent,
    QWheelEvent,
)
from PySide6.QtWidgets import QSizePolicy, QWidget

from meterlog.evidence.across_motor import ACROSS
from meterlog.evidence.palette import DAY, Palette
from meterlog.evidence.span_ribbon import TimeScale
from meterlog.evidence.speed_bands import SpeedBand
from meterlog.evidence.trace_plot import ValueScale
from meterlog.model import Quantity
from meterlog.window.compare_page.laid_runs import LaidRuns
from meterlog.window.compare_page.overlay_axis import OverlayAxis, axis_of
from meterlog.window.compare_page.overlay_curves import bands_of, curves_of, range_of
from meterlog.window.compare_page.overlay_lines import line_pen, paint_square, unit_of
from meterlog.window.compare_page.overlay_painter import (
    Plot,
    paint_plot,
    paint_speeds,
    paint_times,
)
from meterlog.window.words import say

_LEAST_NS = 2_000_000
_CLOSER = 0.5
_CLICK = 4.0
"""A mouse moved less than this many pixels has clicked, not dragged."""


class OverlayView(QWidget):
    """A picture. ``chosen`` is emitted with the speed that was clicked."""

    chosen = Signal(int)

    def __init__(self) -> None:
        super().__init__()
        self.setAccessibleName(say("both runs over each other: voltage above, current below"))
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)
        self.setMinimumSize(240, 160)
        self._palette = DAY
        self._pixels = 12
        self._laid: LaidRuns | None = None
        self._bands: tuple[SpeedBand, ...] = ()
        self._plots: tuple[Plot, ...] | None = None
        self._held: tuple[float, tuple[int, int]] | None = None
        self.axis = OverlayAxis()
        self.stretch = (0, 1)
        self.by_step = True
        self.speed: int | None = None

    def set_palette(self, palette: Palette, pixels: int) -> None:
        """Take other colours, and text of ``pixels`` height."""
        self._palette, self._pixels = palette, pixels
        self._change()

    def show_runs(self, laid: LaidRuns | None) -> None:
        """Show runs laid over each other, all of them; None: nothing."""
        self._laid = laid
        self.speed = None
        self._lay()

    def set_by_step(self, *, by_step: bool) -> None:
        """Lay speed over speed, or the whole run from its first command on."""
        self.by_step = by_step
        self._lay()

    def _lay(self) -> None:
        self._bands = ()
        self.axis = OverlayAxis()
        if self._laid is not None:
            self.axis = axis_of(self._laid.stretches, by_step=self.by_step)
            self._bands = bands_of(self._laid.runs[-1], self.axis, len(self._laid.runs) - 1)
        self.look_at_all()

    def choose(self, speed: int | None) -> None:
        """Look at one speed; None: at all."""
        self.speed = speed
        piece = self.axis.piece(speed)
        if piece is None:
            self.look_at_all()
        else:
            self._look(piece.start_ns, piece.end_ns)

    def look_at_all(self) -> None:
        """Look at the whole axis."""
        self._look(0, self.axis.end_ns)

    def zoom(self, steps: float, at_ns: int | None = None) -> None:
        """Look closer (above 0) or wider; the instant ``at_ns`` stays where it is."""
        start, end = self.stretch
        at = (start + end) // 2 if at_ns is None else at_ns
        factor = _CLOSER**steps
        self._look(at - round((at - start) * factor), at + round((end - at) * factor))

    def look_on(self, part: float) -> None:
        """Look later by this part of what is shown, below 0 earlier."""
        start, end = self.stretch
        by = round((end - start) * part)
        self._look(start + by, end + by)

    def _look(self, start_ns: int, end_ns: int) -> None:
        """Show a stretch, kept within the axis."""
        long = min(max(end_ns - start_ns, _LEAST_NS), self.axis.end_ns)
        start = min(max(start_ns, 0), self.axis.end_ns - long)
        self.stretch = (start, start + long)
        self._change()

    def _change(self) -> None:
        self._plots = None
        self.update()

    def _font(self) -> QFont:
        font = QFont(self.font())
        font.setPixelSize(self._pixels)
        return font

    def _places(self) -> tuple[QRectF, QRectF, QRectF]:
        """Give the rows of the words above, the upper plot and the lower one."""
        line = QFontMetricsF(self._font()).height()
        left, right = 4.6 * line, self.width() - 0.6 * line
        words = QRectF(left, 1.4 * line, right - left, line if self.axis.by_step else 0.0)
        top, bottom = words.bottom() + 4.0, self.height() - 2.2 * line - 8.0
        each = (bottom - top - line) / 2.0
        upper = QRectF(left, top, right - left, each * 0.85)
        return words, upper, QRectF(left, upper.bottom() + line, right - left, each * 1.15)

    def scale(self) -> TimeScale:
        """Give where instants of the axis lie."""
        _, plot, _ = self._places()
        return TimeScale(*self.stretch, plot.left(), plot.right())

    def plots(self) -> tuple[Plot, ...]:
        """Give what is painted, prepared once for each stretch and size."""
        if self._plots is None and self._laid is not None:
            _, upper, lower = self._places()
            self._plots = (
                self._plot(Quantity.VOLTAGE, upper, ()),
                self._plot(Quantity.CURRENT, lower, self._bands),
            )
        return self._plots or ()

    def _plot(self, quantity: Quantity, rect: QRectF, bands: tuple[SpeedBand, ...]) -> Plot:
        laid = self._laid
        runs = () if laid is None else laid.runs
        columns = max(round(rect.width() * self.devicePixelRatioF()), 16)
        curves = curves_of(runs, self.axis, quantity, self.stretch, columns)
        highest = [1.0, *(band.max_a for band in bands if band.max_a is not None)]
        values = ValueScale(rect, *range_of(curves, max(highest)))
        return Plot(_titles(laid, quantity), curves, bands, values)

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint the key, both plots and the times."""
        del event
        painter = QPainter(self)
        painter.fillRect(self.rect(), QColor(self._palette.ground))
        painter.setFont(self._font())
        if self._laid is not None:
            words, _, lower = self._places()
            scale = self.scale()
            self._key(painter, self._laid)
            paint_speeds(painter, words, scale, self.axis, self._palette, self.speed)
            for plot in self.plots():
                paint_plot(painter, scale, plot, self.axis, self._palette, self.speed)
            paint_times(painter, scale, lower.bottom(), self.axis, self._palette)
        painter.end()

    def _key(self, painter: QPainter, laid: LaidRuns) -> None:
        """Say what the lines are, and mark at the right what no meter sent."""
        palette = self._palette
        metrics = QFontMetricsF(painter.font(), self)
        line = metrics.height()
        x, y, long = 4.6 * line, 0.65 * line, 1.8 * line
        for words, new in zip(key_words(laid), (False, True), strict=True):
            pen = line_pen(palette, new=new)
            pen.setWidthF(pen.widthF() * unit_of(painter))
            painter.setPen(pen)
            painter.drawLine(QLineF(x, y, x + long, y))
            if new:
                paint_square(painter, QPointF(x + long / 2.0, y), palette)
            painter.setPen(QColor(palette.ink))
            x += long + 0.4 * line
            painter.drawText(QPointF(x, y + metrics.capHeight() / 2.0), words)
            x += metrics.horizontalAdvance(words) + line
        if self._bands:
            box = QRectF(x, y - 0.35 * line, 1.4 * line, 0.7 * line)
            painter.fillRect(box, QColor(palette.band))
            painter.setPen(QPen(QColor(palette.band_edge), 1.0, Qt.PenStyle.DashLine))
            painter.drawRect(box)
            painter.setPen(QColor(palette.ink))
            x += 1.8 * line
            painter.drawText(QPointF(x, y + metrics.capHeight() / 2.0), say("limits"))
        if laid.mark:
            wide = metrics.horizontalAdvance(laid.mark) + line
            box = QRectF(self.width() - 0.6 * line - wide, 0.0, wide, 1.3 * line)
            painter.fillRect(box, QColor(palette.caution))
            painter.setPen(QColor(palette.on_caution))
            painter.drawText(box, Qt.AlignmentFlag.AlignCenter, laid.mark)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Prepare anew for the other width."""
        super().resizeEvent(event)
        self._plots = None

    def wheelEvent(self, event: QWheelEvent) -> None:
        """Zoom where the pointer is."""
        at = self.scale().t_ns(event.position().x())
        self.zoom(event.angleDelta().y() / 240.0, at)
        event.accept()

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Take hold of the picture."""
        if event.button() is Qt.MouseButton.LeftButton:
            self._held = (event.position().x(), self.stretch)

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """Move what is held."""
        if self._held is None:
            return
        x, (start, end) = self._held
        moved = event.position().x() - x
        if abs(moved) >= _CLICK or self.stretch != (start, end):
            scale = self.scale()
            by = round(moved * (end - start) / max(scale.right - scale.left, 1.0))
            self._look(start - by, end - by)

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        """Choose the speed that was clicked."""
        held, self._held = self._held, None
        if held is None or abs(event.position().x() - held[0]) >= _CLICK:
            return
        piece = self.axis.at(self.scale().t_ns(event.position().x()))
        if piece is not None and piece.speed is not None and piece.speed != self.speed:
            self.chosen.emit(piece.speed)

    def mouseDoubleClickEvent(self, event: QMouseEvent) -> None:
        """Look at all again."""
        del event
        self._held = None
        self.look_at_all()


def key_words(laid: LaidRuns) -> tuple[str, str]:
    """Name both lines; where they don't show the same voltage, each says which."""
    many = len(laid.runs) - 1
    old = say("before: old") if many == 1 else say("before: {many} good ones", many=many)
    if laid.comparison.old and many == 1 and any(step.count for step in laid.comparison.steps):
        old = say("before: 1 good one")
    labels = voltage_labels(laid)
    if len(set(labels)) == 1:
        which = "" if labels[0] == say(ACROSS) else say(" (voltage: {labels})", labels=labels[0])
        return old, say("after: new{which}", which=which)
    return f"{old} ({', '.join(dict.fromkeys(labels[:-1]))})", say(
        "after: new ({labels})", labels=labels[-1]
    )


def voltage_labels(laid: LaidRuns) -> list[str]:
    """Name the voltage that is shown of each run."""
    lines = [run.line(Quantity.VOLTAGE) for run in laid.runs]
    return [say("no voltage") if line is None else say(line.label) for line in lines]


def _titles(laid: LaidRuns | None, quantity: Quantity) -> tuple[str, ...]:
    if quantity is Quantity.CURRENT:
        return say("current (A)"), say("I (A)")
    labels = set() if laid is None else set(voltage_labels(laid))
    motor = (say("motor voltage (V)"),) if labels == {say(ACROSS)} else ()
    return *motor, say("voltage (V)"), say("U (V)")
