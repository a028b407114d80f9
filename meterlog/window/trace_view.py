"""TraceView: voltage and current against one time axis, live. The only module with pyqtgraph."""

from __future__ import annotations

import numpy as np
import pyqtgraph as pg
from PySide6.QtCore import QPointF, Qt, Signal
from PySide6.QtGui import QColor, QFont, QFontMetricsF, QPen
from PySide6.QtWidgets import QHBoxLayout, QLabel, QSizePolicy, QVBoxLayout, QWidget

from meterlog.evidence.motor_voltage import across_motor
from meterlog.evidence.palette import DAY, Palette
from meterlog.evidence.span_ribbon import TimeScale
from meterlog.evidence.speed_bands import SpeedBand, speed_bands
from meterlog.evidence.ticks import ceiling, nice_step, tick_text, ticks_at, time_step, time_text
from meterlog.evidence.trace_store import TraceLine
from meterlog.model import EventKind, Quantity, Role
from meterlog.window.shown import Shown


class _Plot:
    """One of the two plots with its items."""

    def __init__(self, item: pg.PlotItem, quantity: Quantity) -> None:
        self.item = item
        self.quantity = quantity
        self.curves: list[tuple[TraceLine, pg.PlotCurveItem | pg.ScatterPlotItem]] = []
        self.grid = pg.PlotCurveItem(connect="pairs")
        self.bands = pg.BarGraphItem(x0=[], x1=[], y0=[], y1=[])
        self.edges = pg.PlotCurveItem(connect="pairs")
        self.area = pg.PlotCurveItem(connect="pairs")
        self.steps = pg.PlotCurveItem(connect="pairs")
        self.taps = pg.PlotCurveItem(connect="pairs")
        below = (self.grid, self.bands, self.area, self.edges, self.steps, self.taps)
        for order, under in enumerate(below):
            under.setZValue(-10 + order)
            item.addItem(under, ignoreBounds=True)
        item.setMenuEnabled(False)
        item.hideButtons()
        item.disableAutoRange()
        item.setMouseEnabled(x=True, y=False)
        item.setClipToView(False)
        self.range = (0.0, 0.0)
        self.ticks: object = None

    def set_lines(self, lines: tuple[TraceLine, ...]) -> None:
        for _, curve in self.curves:
            self.item.removeItem(curve)
        self.curves = []
        for line in lines:
            curve = (
                pg.ScatterPlotItem(symbol="x", size=9, pxMode=True)
                if line.typed
                else pg.PlotCurveItem(connect="finite", antialias=False)
            )
            self.item.addItem(curve, ignoreBounds=True)
            self.curves.append((line, curve))

    def set_palette(self, palette: Palette) -> None:
        def thin(colour: str, style: Qt.PenStyle = Qt.PenStyle.SolidLine) -> QPen:
            pen = QPen(QColor(colour), 1.0, style)
            pen.setCosmetic(True)
            return pen

        for line, curve in self.curves:
            curve.setPen(thin(palette.line(line.role)))
            if line.typed:
                curve.setBrush(QColor(palette.line(line.role)))
        self.grid.setPen(thin(palette.rule))
        self.bands.setOpts(brush=QColor(palette.band), pen=QPen(Qt.PenStyle.NoPen))
        self.edges.setPen(thin(palette.band_edge, Qt.PenStyle.DashLine))
        self.area.setPen(thin(palette.between))
        self.steps.setPen(thin(palette.edge))
        self.taps.setPen(thin(palette.ink, Qt.PenStyle.DashLine))
        self.item.getViewBox().setBackgroundColor(palette.panel)
        for side in ("left", "bottom"):
            axis = self.item.getAxis(side)
            axis.setPen(thin(palette.edge))
            axis.setTextPen(QColor(palette.ink))

    def draw_lines(self, start_ns: int, end_ns: int, columns: int, least: float) -> None:
        low, high = 0.0, least
        for line, curve in self.curves:
            t_ns, values = line.shown(start_ns, end_ns, columns)
            finite = np.isfinite(values)
            real = values[finite]
            if line.typed:
                curve.setData(t_ns[finite] / 1e9, real)
            else:
                curve.setData(t_ns / 1e9, values, connect="finite")
            if real.size:
                low, high = min(low, float(real.min())), max(high, float(real.max()))
        top = ceiling(high * 1.02)
        bottom = -ceiling(-low * 1.02) if low < -0.02 * top else -0.02 * top
        if (bottom, top) != self.range:
            self.range = (bottom, top)
            self.item.setYRange(bottom, top, padding=0.0)

    def draw_marks(self, shown: Shown) -> None:
        for curve, kind in ((self.steps, EventKind.SPEED), (self.taps, EventKind.TAP)):
            times = np.array([e.t_ns for e in shown.events if e.kind is kind], dtype=np.float64)
            height = np.tile([self.range[0], self.range[1]], times.shape[0])
            curve.setData(np.repeat(times / 1e9, 2), height, connect="pairs")

    def draw_bands(self, bands: tuple[SpeedBand, ...]) -> None:
        low = [0.0 if b.min_a is None else b.min_a for b in bands]
        high = [self.range[1] if b.max_a is None else b.max_a for b in bands]
        left = [b.start_ns / 1e9 for b in bands]
        right = [b.end_ns / 1e9 for b in bands]
        self.bands.setOpts(x0=left, x1=right, y0=low, y1=high)
        x: list[float] = []
        y: list[float] = []
        for band in bands:
            for limit in (band.min_a, band.max_a):
                if limit is not None:
                    x += [band.start_ns / 1e9, band.end_ns / 1e9]
                    y += [limit, limit]
        self.edges.setData(np.array(x), np.array(y), connect="pairs")

    def draw_ticks(
        self,
        times: list[tuple[float, str]],
        values: list[tuple[float, str]],
        stretch: tuple[float, float],
    ) -> None:
        ticks = (times, values, stretch)
        if ticks == self.ticks:
            return
        self.ticks = ticks
        # The axes keep and change the lists they are given, so each gets its own.
        self.item.getAxis("left").setTicks([list(values)])
        self.item.getAxis("bottom").setTicks([list(times)])
        x = [*np.repeat([t for t, _ in times], 2), *(list(stretch) * len(values))]
        y = [*(list(self.range) * len(times)), *np.repeat([v for v, _ in values], 2)]
        self.grid.setData(np.array(x), np.array(y), connect="pairs")

    def draw_area(self, start_ns: int, end_ns: int, columns: int) -> None:
        lines = [line for line, _ in self.curves]
        # Half as many again as there are pixels, so that rounding leaves no column unpainted.
        area = across_motor(lines, start_ns, end_ns, columns * 3 // 2)
        if area is None:
            self.area.setData([], [])
            return
        t_ns, high, low = area
        heights = np.stack([high, low], axis=1).ravel()
        self.area.setData(np.repeat(t_ns / 1e9, 2), heights, connect="pairs")


class TraceView(QWidget):
    """Two plots, one above the other, with linked time axes.

    ``looked`` is emitted with start and end in seconds when the user drags or turns the wheel.
    """

    looked = Signal(float, float)

    def __init__(self) -> None:
        super().__init__()
        self.setAccessibleName("voltage and current against time")
        self._palette = DAY
        self._shown: Shown | None = None
        self._marked: object = None
        self._stretch = (0, 0)
        self._surface = pg.GraphicsLayoutWidget()
        self._surface.setAntialiasing(False)
        self._surface.ci.setContentsMargins(0, 6, 16, 0)
        self._surface.ci.setSpacing(10)
        self._volts = _Plot(self._surface.addPlot(row=0, col=0), Quantity.VOLTAGE)
        self._amperes = _Plot(self._surface.addPlot(row=1, col=0), Quantity.CURRENT)
        self._amperes.item.setXLink(self._volts.item)
        for plot in self._plots:
            plot.item.getViewBox().sigRangeChangedManually.connect(self._on_look)
        self._volts.item.hideAxis("bottom")
        self.key = QLabel("")
        self.key.setTextFormat(Qt.TextFormat.RichText)
        self.key.setWordWrap(True)
        self.key.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Preferred)
        self.key.setAccessibleName("what the lines are")
        self.mark = QLabel("")
        self.mark.setProperty("rank", "mark")
        self.mark.setAccessibleName("origin of the readings")
        self.mark.hide()
        layout = QVBoxLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        top = QHBoxLayout()
        top.setContentsMargins(8, 0, 16, 0)
        top.addWidget(self.key, 1)
        top.addWidget(self.mark, 0, Qt.AlignmentFlag.AlignVCenter)
        layout.setSpacing(0)
        layout.addLayout(top)
        layout.addWidget(self._surface, 1)
        self.frames = 0

    @property
    def _plots(self) -> tuple[_Plot, _Plot]:
        return self._volts, self._amperes

    def set_palette(self, palette: Palette, pixels: int) -> None:
        """Take other colours, and text of ``pixels`` height."""
        self._palette = palette
        self._surface.setBackground(palette.ground)
        font = QFont(self.font())
        font.setPixelSize(pixels)
        width = QFontMetricsF(font).horizontalAdvance("000.0") + 4.0
        for plot, words in ((self._volts, "voltage (V)"), (self._amperes, "current (A)")):
            plot.set_palette(palette)
            left = plot.item.getAxis("left")
            left.setLabel(words, color=palette.ink, **{"font-size": f"{pixels}px"})
            left.setWidth(round(width + pixels * 1.6))
            for side in ("left", "bottom"):
                axis = plot.item.getAxis(side)
                axis.setStyle(tickFont=font, hideOverlappingLabels=False)
        self._amperes.item.getAxis("bottom").setHeight(round(pixels * 1.5))
        self._show_key()

    def show_mark(self, words: str) -> None:
        """Show a permanent mark on the trace, such as SIMULATED; empty for none."""
        self.mark.setText(words)
        self.mark.setVisible(bool(words))

    def _show_key(self) -> None:
        """Name the lines and areas, each beside a sign in its colour."""
        signs = [
            (self._palette.line(line.role), "✕" if line.typed else "━", line.label)
            for plot in self._plots
            for line, _ in plot.curves
        ]
        lines = [line for plot in self._plots for line, _ in plot.curves]
        roles = {line.role for line in lines if not line.typed}
        if {Role.MOTOR_FEED, Role.MOTOR_RETURN} <= roles:
            signs.append((self._palette.edge, "▒", "across the motor"))
        if self._shown is not None and self._shown.about.limits.speeds:
            signs.append((self._palette.band_edge, "▒", "limits"))
        self.key.setText(
            " &ensp;".join(
                f'<span style="color:{colour}">{sign}</span>&nbsp;{words.replace(" ", "&nbsp;")}'
                for colour, sign, words in signs
            )
        )

    def _on_look(self, *_: object) -> None:
        start_s, end_s = self._volts.item.getViewBox().viewRange()[0]
        self.looked.emit(float(start_s), float(end_s))

    def columns(self) -> int:
        """Give the width of a plot in device pixels."""
        wide = self._volts.item.getViewBox().width() * self.devicePixelRatioF()
        return max(int(wide), 16)

    def draw(self, shown: Shown, start_ns: int, end_ns: int) -> None:
        """Draw the stretch from ``start_ns`` to ``end_ns`` of what is shown."""
        if shown is not self._shown:
            self._shown, self._marked = shown, None
            for plot in self._plots:
                plot.set_lines(shown.traces.of(plot.quantity))
                plot.set_palette(self._palette)
            self._show_key()
        columns = self.columns()
        bands = speed_bands(shown.events, shown.about.limits, max(shown.end_ns, end_ns))
        highest = max([1.0, *(band.max_a for band in bands[-1:] if band.max_a)])
        before = self._volts.range, self._amperes.range
        self._volts.draw_lines(start_ns, end_ns, columns, shown.about.limits.nominal_v)
        self._amperes.draw_lines(start_ns, end_ns, columns, highest)
        self._volts.draw_area(start_ns, end_ns, columns)
        marked = (len(shown.events), bands, before)
        if marked != self._marked or before != (self._volts.range, self._amperes.range):
            self._marked = marked
            self._amperes.draw_bands(bands)
            for plot in self._plots:
                plot.draw_marks(shown)
        if (start_ns, end_ns) != self._stretch:
            self._stretch = (start_ns, end_ns)
            self._volts.item.setXRange(start_ns / 1e9, end_ns / 1e9, padding=0.0)
        self._draw_ticks(start_ns / 1e9, end_ns / 1e9)
        self.frames += 1

    def _draw_ticks(self, start_s: float, end_s: float) -> None:
        metrics = QFontMetricsF(self.font())
        room = self._volts.item.getViewBox().width() / (metrics.horizontalAdvance("0:00:00") * 1.8)
        step = time_step(end_s - start_s, max(int(room), 2))
        times = [(t, time_text(t, step)) for t in ticks_at(start_s, end_s, step)]
        for plot in self._plots:
            low, high = plot.range
            tall = plot.item.getViewBox().height() / (metrics.height() * 1.8)
            pace = nice_step(high - low, max(int(tall), 2))
            values = [(v, tick_text(v, pace)) for v in ticks_at(low, high, pace)]
            plot.draw_ticks(times, values, (start_s, end_s))

    def time_scale(self, beside: QWidget, start_ns: int, end_ns: int) -> TimeScale:
        """Give where instants lie across another widget of the same window."""
        box = self._volts.item.getViewBox().sceneBoundingRect()
        left = self._surface.mapFromScene(box.topLeft())
        right = self._surface.mapFromScene(box.topRight())
        place = self._surface.viewport()
        a = beside.mapFromGlobal(place.mapToGlobal(QPointF(left)))
        b = beside.mapFromGlobal(place.mapToGlobal(QPointF(right)))
        return TimeScale(start_ns, end_ns, a.x(), b.x())
