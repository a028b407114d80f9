"""TraceView: voltage and current against one time axis, live."""

from __future__ import annotations

import html

import pyqtgraph as pg
from PySide6.QtCore import QPointF, QSignalBlocker, Qt, Signal
from PySide6.QtGui import QFont, QFontMetricsF
from PySide6.QtWidgets import QHBoxLayout, QLabel, QSizePolicy, QVBoxLayout, QWidget

from meterlog.evidence.palette import DAY, Palette
from meterlog.evidence.pixel_columns import whole_columns
from meterlog.evidence.span_ribbon import TimeScale
from meterlog.evidence.speed_bands import speed_bands
from meterlog.evidence.ticks import nice_step, tick_text, ticks_at, time_step, time_text
from meterlog.model import Quantity, Role
from meterlog.window.numbers import in_numbers
from meterlog.window.second_run import SecondRun
from meterlog.window.shown import Shown
from meterlog.window.trace_plot import TracePlot
from meterlog.window.words import say


class TraceView(QWidget):
    """Two plots, one above the other, with linked time axes.

    ``looked`` is emitted with start and end in seconds when the user drags or turns the wheel,
    ``measured`` with those of the stretch when one of its edges was dragged, ``clicked`` with the
    instant that was clicked at.
    """

    looked = Signal(float, float)
    measured = Signal(float, float)
    clicked = Signal(float)

    def __init__(self) -> None:
        super().__init__()
        self.setAccessibleName(say("voltage and current against time"))
        self._palette = DAY
        self._shown: Shown | None = None
        self._second: SecondRun | None = None
        self._marked: object = None
        self._stretch = self._asked = (0, 0)
        self._surface = pg.GraphicsLayoutWidget()
        self._surface.setAntialiasing(False)
        self._surface.ci.setContentsMargins(0, 6, 16, 0)
        self._surface.ci.setSpacing(10)
        self._volts = TracePlot(self._surface, 0, Quantity.VOLTAGE)
        self._amperes = TracePlot(self._surface, 1, Quantity.CURRENT)
        self._amperes.item.setXLink(self._volts.item)
        for plot in self._plots:
            plot.item.getViewBox().sigRangeChangedManually.connect(self._on_look)
            plot.measured.sigRegionChanged.connect(self._on_measured)
        self._surface.scene().sigMouseClicked.connect(self._on_click)
        self._volts.item.hideAxis("bottom")
        self.key = QLabel("")
        self.key.setTextFormat(Qt.TextFormat.RichText)
        self.key.setWordWrap(True)
        self.key.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Preferred)
        self.key.setAccessibleName(say("what the lines are"))
        self.back = _mark(say("which stretch is on screen"))
        self.mark = _mark(say("origin of the readings"))
        layout = QVBoxLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        top = QHBoxLayout()
        top.setContentsMargins(8, 0, 16, 0)
        top.addWidget(self.key, 1)
        top.addWidget(self.back, 0, Qt.AlignmentFlag.AlignVCenter)
        top.addWidget(self.mark, 0, Qt.AlignmentFlag.AlignVCenter)
        layout.setSpacing(0)
        layout.addLayout(top)
        layout.addWidget(self._surface, 1)
        self.frames = 0

    @property
    def _plots(self) -> tuple[TracePlot, TracePlot]:
        return self._volts, self._amperes

    def set_palette(self, palette: Palette, pixels: int) -> None:
        """Take other colours, and text of ``pixels`` height."""
        self._palette = palette
        self._surface.setBackground(palette.ground)
        font = QFont(self.font())
        font.setPixelSize(pixels)
        width = QFontMetricsF(font).horizontalAdvance("000.0") + 4.0
        for plot, words in ((self._volts, say("voltage (V)")), (self._amperes, say("current (A)"))):
            plot.set_palette(palette)
            plot.left.setLabel(words, color=palette.ink, **{"font-size": f"{pixels}px"})
            plot.left.setWidth(round(width + pixels * 1.6))
            for axis in (plot.left, plot.bottom):
                axis.set_look(palette.edge, palette.ink, font)
        self._amperes.bottom.setHeight(round(pixels * 1.5))
        self._show_key()

    def show_back(self, *, back: bool) -> None:
        """Say that what is on screen is not the newest, while readings come in."""
        if back is self.back.isHidden():
            self.back.setText(say("looking back: F follows"))
            self.back.setVisible(back)

    def show_mark(self, words: str) -> None:
        """Show a permanent mark on the trace, such as SIMULATED; empty for none."""
        self.mark.setText(words)
        self.mark.setVisible(bool(words))

    def _show_key(self) -> None:
        """Name the lines and areas, each beside a sign in its colour."""
        signs = [
            (self._palette.line(line.role), "✕" if line.typed else "━", say(line.label))
            for plot in self._plots
            for line, _ in plot.curves
        ]
        lines = [line for plot in self._plots for line, _ in plot.curves]
        roles = {line.role for line in lines if not line.typed}
        if {Role.MOTOR_FEED, Role.MOTOR_RETURN} <= roles:
            signs.append((self._palette.edge, "▒", say("across the motor")))
        if self._shown is not None and self._shown.about.limits.speeds:
            signs.append((self._palette.band_edge, "▒", say("limits")))
        if self._second is not None:
            name = html.escape(
                say(
                    "behind: {folder} {mark}",
                    folder=self._second.folder.name,
                    mark=self._second.mark,
                ).strip()
            )
            signs.append((self._palette.faint, "─", name))
        self.key.setText(
            " &ensp;".join(
                f'<span style="color:{colour}">{sign}</span>&nbsp;{words.replace(" ", "&nbsp;")}'
                for colour, sign, words in signs
            )
        )

    def _on_look(self, *_: object) -> None:
        start_s, end_s = self._volts.item.getViewBox().viewRange()[0]
        self.looked.emit(float(start_s), float(end_s))

    def _on_click(self, event: pg.GraphicsScene.mouseEvents.MouseClickEvent) -> None:
        place = self._volts.item.getViewBox().mapSceneToView(event.scenePos())
        self.clicked.emit(float(place.x()))

    def show_pending(self, at_s: float | None) -> None:
        """Show where a mark stands that is looked at or being moved, in seconds; None for none."""
        for plot in self._plots:
            plot.pending.setVisible(at_s is not None)
            if at_s is not None:
                plot.pending.setValue(at_s)

    def show_measured(self, stretch: tuple[float, float] | None) -> None:
        """Show the stretch that is measured, in seconds; None for none."""
        for plot in self._plots:
            with QSignalBlocker(plot.measured):
                if stretch is not None:
                    plot.measured.setRegion(stretch)
            plot.measured.setVisible(stretch is not None)

    def _on_measured(self, region: pg.LinearRegionItem) -> None:
        start_s, end_s = region.getRegion()
        self.show_measured((start_s, end_s))
        self.measured.emit(float(start_s), float(end_s))

    def _wide(self) -> float:
        """Give the width of a plot in device pixels."""
        wide = self._volts.item.getViewBox().width() * self.devicePixelRatioF()
        return max(float(wide), 16.0)

    def draw(
        self,
        shown: Shown,
        start_ns: int,
        end_ns: int,
        second: SecondRun | None = None,
        *,
        back: bool = False,
    ) -> None:
        """Draw the stretch from ``start_ns`` to ``end_ns`` of a recording.

        Parameters
        ----------
        shown : Shown
        start_ns, end_ns : int, nanoseconds since its zero
        second : SecondRun or None
            Drawn behind.
        back : bool
            It is not the newest stretch on purpose.
        """
        self.show_back(back=back and shown.live)
        if second is not self._second:
            self._second = second
            self._show_key()
        if shown is not self._shown:
            self._shown, self._marked = shown, None
            for plot in self._plots:
                plot.set_lines(shown.traces.of(plot.quantity))
                plot.set_palette(self._palette)
            self._show_key()
        self._asked = (start_ns, end_ns)
        kept = bool(shown.traces.kept)
        stretch = whole_columns(start_ns, end_ns, self._wide(), on_grid=kept)
        start_ns, end_ns = stretch.start_ns, stretch.end_ns
        bands = speed_bands(shown.events, shown.about.limits, max(shown.end_ns, end_ns))
        highest = max([1.0, *(band.max_a for band in bands[-1:] if band.max_a)])
        before = self._volts.range, self._amperes.range
        least = shown.about.limits.nominal_v, highest
        for plot, low in zip(self._plots, least, strict=True):
            behind = plot.draw_second(second, stretch)
            plot.draw_lines(stretch, max(low, behind))
        self._volts.draw_area(stretch)
        marked = (shown.events, bands, before)
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
        times = [(t, in_numbers(time_text(t, step))) for t in ticks_at(start_s, end_s, step)]
        for plot in self._plots:
            low, high = plot.range
            tall = plot.item.getViewBox().height() / (metrics.height() * 1.8)
            pace = nice_step(high - low, max(int(tall), 2))
            values = [(v, in_numbers(tick_text(v, pace))) for v in ticks_at(low, high, pace)]
            plot.draw_ticks(times, values, (start_s, end_s))

    def time_scale(self, beside: QWidget, start_ns: int, end_ns: int) -> TimeScale:
        """Give where instants lie across another widget of the same window."""
        box = self._volts.item.getViewBox().sceneBoundingRect()
        left = self._surface.mapFromScene(box.topLeft())
        right = self._surface.mapFromScene(box.topRight())
        place = self._surface.viewport()
        if (start_ns, end_ns) == self._asked:
            start_ns, end_ns = self._stretch
        a = beside.mapFromGlobal(place.mapToGlobal(QPointF(left)))
        b = beside.mapFromGlobal(place.mapToGlobal(QPointF(right)))
        return TimeScale(start_ns, end_ns, a.x(), b.x())


def _mark(name: str) -> QLabel:
    """Give a hidden label that stands out."""
    label = QLabel("")
    label.setProperty("rank", "mark")
    label.setAccessibleName(name)
    label.hide()
    return label
