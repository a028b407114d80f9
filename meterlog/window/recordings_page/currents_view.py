"""CurrentsView: the motor current of the chosen recordings at one speed, over their dates."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date

from PySide6.QtCore import QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QColor, QFontMetricsF, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QSizePolicy, QWidget

from meterlog.evidence.palette import DAY, Palette
from meterlog.evidence.ticks import nice_step, tick_text, ticks_at
from meterlog.model import Role
from meterlog.window.numbers import in_numbers, number
from meterlog.window.words import later, say
from meterlog.work.library import SpeedSeries

_NOTHING = later(
    "No current is known of what is chosen: it is not judged yet, or no speed was commanded."
)
_MOST_BARS = 400
"""Above so many points their uncertainties would only make one dark area."""


def series_words(series: SpeedSeries) -> str:
    """Say a series in words: mean, spread, how many."""
    many = len(series.points)
    told = say(
        "Speed {speed}: mean {mean_a} A of {many}",
        speed=series.speed,
        mean_a=number(series.mean_a, ".2f"),
        many=many,
    )
    if series.spread_a is None:
        return told
    return say(
        "{told}, spread {spread_a} A (standard deviation)",
        told=told,
        spread_a=number(series.spread_a, ".2f"),
    )


def mark_words(series: SpeedSeries) -> str:
    """Say how many of the points no meter sent from a vehicle; empty for none."""
    marks = [point.hit.mark for point in series.points if point.hit.mark]
    if not marks:
        return ""
    kinds = ", ".join(dict.fromkeys(marks))
    all_of_them = len(marks) == len(series.points)
    return (
        kinds
        if all_of_them
        else say(
            "{kinds}: {marks} of {points}", kinds=kinds, marks=len(marks), points=len(series.points)
        )
    )


def mixed_words(series: SpeedSeries) -> str:
    """Warn of several vehicles in one picture; empty for one."""
    vehicles = {point.hit.vehicle for point in series.points}
    return say("{vehicles} vehicles", vehicles=len(vehicles)) if len(vehicles) > 1 else ""


class CurrentsView(QWidget):
    """A small picture; H shows the next speed."""

    def __init__(self) -> None:
        super().__init__()
        self.series: tuple[SpeedSeries, ...] = ()
        self._at = 0
        self._palette = DAY
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)
        self.show_series(())

    @property
    def shown(self) -> SpeedSeries | None:
        """The series on show."""
        return self.series[self._at] if self.series else None

    def sizeHint(self) -> QSize:
        """Give room enough to read it."""
        return QSize(360, 150)

    def set_palette(self, palette: Palette) -> None:
        """Take other colours."""
        self._palette = palette
        self.update()

    def show_series(self, series: Sequence[SpeedSeries]) -> None:
        """Show these; the speed stays where there is one of it."""
        speed = self.shown.speed if self.shown else None
        self.series = tuple(series)
        speeds = [one.speed for one in self.series]
        self._at = speeds.index(speed) if speed in speeds else 0
        self._tell()

    def next_speed(self) -> None:
        """Show the next speed, after the last one the first."""
        self._at = (self._at + 1) % max(len(self.series), 1)
        self._tell()

    def _tell(self) -> None:
        shown = self.shown
        words = say("none known") if shown is None else series_words(shown)
        marks = "" if shown is None else mark_words(shown)
        self.setAccessibleName(
            say("motor current over dates: {words} {marks}", words=words, marks=marks).strip()
        )
        self.update()

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint heading, mark and plot."""
        del event
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        area = QRectF(self.rect()).adjusted(0.5, 0.5, -0.5, -0.5)
        painter.fillRect(area, QColor(self._palette.panel))
        painter.setPen(QColor(self._palette.edge))
        painter.drawRect(area)
        line = QFontMetricsF(self.font()).height()
        inside = area.adjusted(line * 0.5, line * 0.3, -line * 0.5, -line * 0.3)
        painter.setPen(QColor(self._palette.ink))
        if self.shown is None:
            flags = Qt.AlignmentFlag.AlignCenter | Qt.TextFlag.TextWordWrap
            painter.drawText(inside, flags, say(_NOTHING))
        else:
            self._paint_head(painter, inside, self.shown, line)
            below = inside.adjusted(line * 3.2, line * 2.9, -line * 0.5, -line * 1.3)
            if below.height() > line * 2:
                _Plot(painter, below, self.shown, self._palette, line).paint()
        painter.end()

    def _paint_head(
        self, painter: QPainter, inside: QRectF, shown: SpeedSeries, line: float
    ) -> None:
        metrics = QFontMetricsF(self.font())
        first = QRectF(inside.left(), inside.top(), inside.width(), line)
        elide = Qt.TextElideMode.ElideRight
        painter.drawText(first, 0, metrics.elidedText(series_words(shown), elide, first.width()))
        second = first.translated(0.0, line * 1.15)
        mark = mark_words(shown)
        if mark:
            stamp = QRectF(second)
            stamp.setWidth(min(metrics.horizontalAdvance(mark) + line, second.width()))
            painter.fillRect(stamp, QColor(self._palette.caution))
            painter.setPen(QPen(QColor(self._palette.on_caution), 1.5))
            painter.drawRect(stamp)
            painter.drawText(stamp, Qt.AlignmentFlag.AlignCenter, mark)
            second.setLeft(stamp.right() + line * 0.5)
        more = [mixed_words(shown)]
        if len(self.series) > 1:
            more.append(say("H: next speed"))
        few = len(shown.points) <= _MOST_BARS
        if few and any(point.hit.side == "new" for point in shown.points):
            more.append(say("□ new part"))
        painter.setPen(QColor(self._palette.faint))
        words = " · ".join(one for one in more if one)
        painter.drawText(second, 0, metrics.elidedText(words, elide, max(second.width(), 0.0)))


class _Plot:
    """One painting of one series."""

    def __init__(
        self,
        painter: QPainter,
        area: QRectF,
        series: SpeedSeries,
        palette: Palette,
        line: float,
    ) -> None:
        self._painter, self._area, self._series = painter, area, series
        self._palette, self._line = palette, line
        points = series.points
        # Without dates, or all at one instant, they stand one beside the other.
        days = [one.day for one in points if one.day is not None]
        self._dated = len(days) == len(points) and days[0] < days[-1]
        self._xs = days if self._dated else [float(at) for at in range(len(points))]
        room = max((series.high_a - series.low_a) * 0.08, abs(series.mean_a) * 0.02, 0.01)
        self._low, self._high = series.low_a - room, series.high_a + room

    def _x(self, value: float) -> float:
        first, last = self._xs[0], self._xs[-1]
        share = 0.5 if last <= first else 0.03 + 0.94 * (value - first) / (last - first)
        return self._area.left() + share * self._area.width()

    def _y(self, amperes: float) -> float:
        share = (amperes - self._low) / (self._high - self._low)
        return self._area.bottom() - share * self._area.height()

    def paint(self) -> None:
        """Paint axis, mean and spread, points with their uncertainty, first and last date."""
        painter, palette, area = self._painter, self._palette, self._area
        step = nice_step(self._high - self._low, max(int(area.height() / (self._line * 1.3)), 3))
        for tick in ticks_at(self._low, self._high, step):
            y = self._y(tick)
            painter.setPen(QColor(palette.rule))
            painter.drawLine(QPointF(area.left(), y), QPointF(area.right(), y))
            painter.setPen(QColor(palette.faint))
            left = QRectF(area.left() - self._line * 3.4, y - self._line, self._line * 3.1, 0.0)
            left.setHeight(self._line * 2)
            flags = Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter
            painter.drawText(left, flags, f"{in_numbers(tick_text(tick, step))} A")
        self._paint_mean()
        self._paint_points()
        self._paint_dates()

    def _paint_mean(self) -> None:
        area, mean, spread = self._area, self._series.mean_a, self._series.spread_a
        if spread is not None:
            top = self._y(mean + spread)
            band = QRectF(area.left(), top, area.width(), self._y(mean - spread) - top)
            self._painter.fillRect(band, QColor(self._palette.band))
        pen = QPen(QColor(self._palette.band_edge), 1.5, Qt.PenStyle.DashLine)
        self._painter.setPen(pen)
        y = self._y(mean)
        self._painter.drawLine(QPointF(area.left(), y), QPointF(area.right(), y))

    def _paint_points(self) -> None:
        painter, points = self._painter, self._series.points
        colour = QColor(self._palette.line(Role.MOTOR_CURRENT))
        painter.setPen(QPen(colour, 1.5))
        size = max(self._line * 0.22, 2.5)
        if len(points) > _MOST_BARS:
            self._paint_many(colour, 2.0 * size)
            return
        for x_value, point in zip(self._xs, points, strict=True):
            x, y = self._x(x_value), self._y(point.mean_a)
            if point.expanded_a is not None:
                top, end = (self._y(point.mean_a + side * point.expanded_a) for side in (1, -1))
                painter.drawLine(QPointF(x, top), QPointF(x, end))
            box = QRectF(x - size, y - size, 2 * size, 2 * size)
            if point.hit.side == "new":
                painter.setBrush(QColor(self._palette.panel))
                painter.drawRect(box)
            else:
                painter.setBrush(colour)
                painter.drawEllipse(box)
        painter.setBrush(Qt.BrushStyle.NoBrush)

    def _paint_many(self, colour: QColor, size: float) -> None:
        """Paint so many points that they can't be told apart: each place once, old as new."""
        places = {
            (round(self._x(x)), round(self._y(point.mean_a)))
            for x, point in zip(self._xs, self._series.points, strict=True)
        }
        pen = QPen(colour, size, Qt.PenStyle.SolidLine, Qt.PenCapStyle.RoundCap)
        self._painter.setPen(pen)
        self._painter.drawPoints([QPointF(x, y) for x, y in places])

    def _paint_dates(self) -> None:
        area, points = self._area, self._series.points
        self._painter.setPen(QColor(self._palette.faint))
        below = QRectF(area.left(), area.bottom() + self._line * 0.15, area.width(), self._line)
        ends = [one.day for one in (points[0], points[-1]) if one.day is not None]
        named = [date.fromordinal(int(day)).isoformat() for day in ends]
        if not self._dated and len(points) > 1:
            words = say("one beside the other: not all have a date of their own")
            self._painter.drawText(below, Qt.AlignmentFlag.AlignHCenter, words)
        elif len(set(named)) > 1:
            self._painter.drawText(below, Qt.AlignmentFlag.AlignLeft, named[0])
            self._painter.drawText(below, Qt.AlignmentFlag.AlignRight, named[-1])
        elif named:
            self._painter.drawText(below, Qt.AlignmentFlag.AlignHCenter, named[0])
