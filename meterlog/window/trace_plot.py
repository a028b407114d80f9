"""TracePlot: one of the two plots of the trace, with its items."""

from __future__ import annotations

import numpy as np
import pyqtgraph as pg
from PySide6.QtCore import Qt
from PySide6.QtGui import QColor, QPen

from meterlog.evidence.motor_voltage import between_feed_and_return
from meterlog.evidence.palette import Palette
from meterlog.evidence.pixel_columns import Drawn, Stretch, extremes_of, points_of
from meterlog.evidence.speed_bands import SpeedBand
from meterlog.evidence.ticks import ceiling
from meterlog.evidence.trace_store import TraceLine
from meterlog.model import EventKind, Quantity
from meterlog.window.second_run import SecondRun
from meterlog.window.shown import Shown
from meterlog.window.tick_axis import Tick, TickAxis
from meterlog.window.trace_curve import PlotRoom, RoomCurve, TraceArea, TraceCurve


class TracePlot:
    """One plot: grid, limits, curves, marks and the stretch that is measured.

    Parameters
    ----------
    surface : pyqtgraph.GraphicsLayoutWidget
    row : int
        Where it goes.
    quantity : Quantity
    """

    def __init__(self, surface: pg.GraphicsLayoutWidget, row: int, quantity: Quantity) -> None:
        self.left, self.bottom = TickAxis("left"), TickAxis("bottom")
        axes = {"left": self.left, "bottom": self.bottom}
        self.item = item = surface.addPlot(row=row, col=0, axisItems=axes)
        self.quantity = quantity
        self.curves: list[tuple[TraceLine, TraceCurve | pg.ScatterPlotItem]] = []
        self._drawn: list[Drawn] = []
        self._room = room = PlotRoom()
        self.grid = RoomCurve(room)
        self.bands = pg.BarGraphItem(x0=[], x1=[], y0=[], y1=[])
        self.edges = RoomCurve(room)
        self.area = TraceArea(room)
        self.second = RoomCurve(room, "finite")
        self.steps = RoomCurve(room)
        self.taps = RoomCurve(room)
        below = (
            *(self.grid, self.bands, self.area, self.edges),
            *(self.steps, self.taps, self.second),
        )
        for order, under in enumerate(below):
            under.setZValue(-10 + order)
            item.addItem(under, ignoreBounds=True)
        self._under = [one for one in below if isinstance(one, RoomCurve)]
        self.pending = pg.InfiniteLine(angle=90)
        self.pending.hide()
        item.addItem(self.pending, ignoreBounds=True)
        self.measured = pg.LinearRegionItem(movable=True, swapMode="sort")
        self.measured.setZValue(5)
        self.measured.hide()
        item.addItem(self.measured, ignoreBounds=True)
        item.setMenuEnabled(False)
        item.hideButtons()
        item.disableAutoRange()
        item.setMouseEnabled(x=True, y=False)
        item.setClipToView(False)
        self.range = (0.0, 0.0)
        self.ticks: object = None

    def set_lines(self, lines: tuple[TraceLine, ...]) -> None:
        """Draw these lines from now on."""
        for _, curve in self.curves:
            self.item.removeItem(curve)
        self.curves = []
        for line in lines:
            curve = (
                pg.ScatterPlotItem(symbol="x", size=9, pxMode=True)
                if line.typed
                else TraceCurve(self._room)
            )
            self.item.addItem(curve, ignoreBounds=True)
            self.curves.append((line, curve))

    def set_palette(self, palette: Palette) -> None:
        """Take other colours."""

        def thin(
            colour: str, style: Qt.PenStyle = Qt.PenStyle.SolidLine, width: float = 1.0
        ) -> QPen:
            pen = QPen(QColor(colour), width, style)
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
        self.second.setPen(thin(palette.faint))
        self.steps.setPen(thin(palette.edge))
        self.taps.setPen(thin(palette.ink, Qt.PenStyle.DashLine))
        self.pending.setPen(thin(palette.accent, width=3.0))
        veil = QColor(palette.accent)
        veil.setAlpha(40)
        self.measured.setBrush(veil)
        self.measured.setHoverBrush(veil)
        for edge in self.measured.lines:
            edge.setPen(thin(palette.accent, width=3.0))
            edge.setHoverPen(thin(palette.ink, width=5.0))
        self.item.getViewBox().setBackgroundColor(palette.panel)
        for axis in (self.left, self.bottom):
            axis.set_look(palette.edge, palette.ink)

    def draw_lines(self, stretch: Stretch, least: float) -> None:
        """Draw the lines of a stretch; the axis goes at least up to ``least``."""
        low, high = 0.0, least
        asked = stretch.start_ns, stretch.reach_ns, stretch.columns
        self._drawn = [line.drawn(*asked) for line, _ in self.curves]
        for (_, curve), drawn in zip(self.curves, self._drawn, strict=True):
            if isinstance(curve, TraceCurve):
                curve.show_drawn(drawn)
            else:
                t_ns, values = points_of(drawn)
                finite = np.isfinite(values)
                curve.setData(t_ns[finite] / 1e9, values[finite])
            least_of, most_of = extremes_of(drawn)
            if least_of <= most_of:
                low, high = min(low, least_of), max(high, most_of)
        top = ceiling(high * 1.02)
        bottom = -ceiling(-low * 1.02) if low < -0.02 * top else -0.02 * top
        if (bottom, top) != self.range:
            self.range = (bottom, top)
            self.item.setYRange(bottom, top, padding=0.0)
        self._take_room(stretch)

    def _take_room(self, stretch: Stretch) -> None:
        start_s, end_s = stretch.start_ns / 1e9, stretch.reach_ns / 1e9
        self._room.column_s = (end_s - start_s) / stretch.columns
        rect = self._room.of(start_s, end_s, *self.range)
        if rect != self._room.rect:
            curves = [curve for _, curve in self.curves if isinstance(curve, TraceCurve)]
            for one in (*self._under, *curves):
                one.prepareGeometryChange()
            self._room.rect = rect

    def draw_second(self, run: SecondRun | None, stretch: Stretch) -> float:
        """Draw another run behind, None for none; give its highest value there."""
        asked = stretch.start_ns, stretch.reach_ns, stretch.columns
        points = None if run is None else run.curve(self.quantity, *asked)
        if points is None:
            if self.second.xData is not None and len(self.second.xData):
                self.second.setData([], [])  # anew each time, all of the plot would be painted
            return 0.0
        self.second.setData(points[0] / 1e9, points[1], connect="finite")
        real = points[1][np.isfinite(points[1])]
        return float(real.max()) if real.size else 0.0

    def draw_marks(self, shown: Shown) -> None:
        """Draw speeds and taps."""
        for curve, kind in ((self.steps, EventKind.SPEED), (self.taps, EventKind.TAP)):
            times = np.array([e.t_ns for e in shown.events if e.kind is kind], dtype=np.float64)
            height = np.tile([self.range[0], self.range[1]], times.shape[0])
            curve.setData(np.repeat(times / 1e9, 2), height, connect="pairs")

    def draw_bands(self, bands: tuple[SpeedBand, ...]) -> None:
        """Draw the limits of each commanded speed behind the curves."""
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
        times: list[Tick],
        values: list[Tick],
        stretch: tuple[float, float],
    ) -> None:
        """Draw ticks and grid; (place, words) each."""
        ticks = (times, values, stretch)
        if ticks == self.ticks:
            return
        self.ticks = ticks
        self.left.show_ticks(values)
        self.bottom.show_ticks(times)
        x = [*np.repeat([t for t, _ in times], 2), *(list(stretch) * len(values))]
        y = [*(list(self.range) * len(times)), *np.repeat([v for v, _ in values], 2)]
        self.grid.setData(np.array(x), np.array(y), connect="pairs")

    def draw_area(self, stretch: Stretch) -> None:
        """Fill between feed and return: what is across the motor; of the stretch drawn last."""
        lines = [(line, drawn) for (line, _), drawn in zip(self.curves, self._drawn, strict=True)]
        asked = stretch.start_ns, stretch.reach_ns, stretch.columns
        self.area.show_area(between_feed_and_return(lines, *asked))
