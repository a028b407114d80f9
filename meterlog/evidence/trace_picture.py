"""Trace picture: voltage and current against one time axis, judged, for a warranty claim."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import Protocol

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import (
    QColor,
    QFont,
    QFontMetricsF,
    QImage,
    QPainter,
    QPen,
)

from meterlog.evidence.event_lane import TAP_HEIGHT, paint_events
from meterlog.evidence.palette import DAY, Palette
from meterlog.evidence.picture_screen import need_fonts
from meterlog.evidence.png_file import write_png
from meterlog.evidence.span_ribbon import TimeScale, paint_ribbon
from meterlog.evidence.speed_bands import speed_bands
from meterlog.evidence.trace_key import key_entries, paint_key
from meterlog.evidence.trace_plot import (
    ValueScale,
    paint_axes,
    paint_bands,
    paint_between,
    paint_frame,
    paint_lines,
    paint_time_axis,
    value_range,
)
from meterlog.evidence.trace_store import TraceStore
from meterlog.model import (
    About,
    Block,
    Event,
    EventKind,
    Instrument,
    Origin,
    Quantity,
    Review,
    SpanKind,
    standing,
)
from meterlog.model.origin_mark import origin_mark
from meterlog.recording import UNDATED


class Readable(Protocol):
    """What a picture needs of a recording."""

    @property
    def about(self) -> About: ...  # noqa: D102
    @property
    def events(self) -> tuple[Event, ...]: ...  # noqa: D102
    def blocks(self, source: str) -> Iterator[Block]: ...  # noqa: D102


@dataclass(frozen=True, slots=True)
class TraceScene:
    """All that one picture shows.

    Attributes
    ----------
    traces : TraceStore
    review : Review
    about : About
    events : tuple of Event
    start_ns, end_ns : int, nanoseconds
        The stretch shown.
    """

    traces: TraceStore
    review: Review
    about: About
    events: tuple[Event, ...]
    start_ns: int
    end_ns: int


def scene_of(recording: Readable, review: Review) -> TraceScene:
    """Give the scene of a whole recording.

    Raises
    ------
    RecordingError
        If a block can't be read.
    """
    about = recording.about
    traces = TraceStore(about.instruments)
    for instrument in about.instruments:
        for block in recording.blocks(instrument.key):
            traces.take(block)
    last = max([traces.end_ns, *(e.t_ns for e in recording.events), 1_000_000])
    return TraceScene(traces, review, about, standing(recording.events), 0, last)


def paint(painter: QPainter, rect: QRectF, scene: TraceScene, palette: Palette = DAY) -> None:
    """Paint the whole picture: heading, two plots, events, ribbon, time axis and key.

    Parameters
    ----------
    painter : QPainter
    rect : QRectF
        At least about 640 by 400 units for text that fits.
    scene : TraceScene
    palette : Palette
    """
    painter.save()
    painter.fillRect(rect, QColor(palette.ground))
    size = max(rect.height() / 58.0, 10.0)
    painter.setFont(_font(size))
    line = QFontMetricsF(painter.font(), painter.device()).height()
    left = rect.left() + size * 5.2
    right = rect.right() - size * 1.5
    top = _heading(painter, QRectF(left, rect.top() + size, right - left, 0.0), scene, palette)
    key_height = line * 3.6
    ribbon_height = line * 2.9
    lane = line + TAP_HEIGHT
    plots = rect.bottom() - top - key_height - ribbon_height - 2.0 * lane - line * 2.6
    scale = TimeScale(scene.start_ns, scene.end_ns, left, right)
    events_at = QRectF(left, top, right - left, lane)
    upper = QRectF(left, events_at.bottom() + 2.0, right - left, plots / 2.0 - size)
    lower = QRectF(left, upper.bottom() + size, right - left, plots / 2.0 - size)
    paint_events(painter, events_at, scale, scene.events, palette)
    _volts(painter, upper, scale, scene, palette)
    _amperes(painter, lower, scale, scene, palette)
    paint_time_axis(painter, scale, lower.bottom(), palette)
    ribbon = QRectF(left, lower.bottom() + line * 2.6, right - left, ribbon_height)
    paint_ribbon(painter, ribbon, scale, scene.review.spans, palette)
    key = QRectF(left, ribbon.bottom() + 4.0, right - left, key_height)
    _key(painter, key, scene, palette)
    painter.restore()


def _font(pixels: float, *, bold: bool = False) -> QFont:
    font = QFont()
    font.setPixelSize(max(round(pixels), 1))
    font.setBold(bold)
    return font


def _heading(painter: QPainter, rect: QRectF, scene: TraceScene, palette: Palette) -> float:
    """Paint title, job and origin; give the y below them."""
    plain = painter.font()
    size = plain.pixelSize()
    job, about = scene.about.job, scene.about
    title_font = _font(size * 1.55, bold=True)
    title = " · ".join(part for part in (job.work_order, job.vehicle) if part)
    metrics = QFontMetricsF(title_font, painter.device())
    mark = origin_mark(about)
    mark_width = metrics.horizontalAdvance(mark) + size * 1.6 if mark else 0.0
    painter.setFont(title_font)
    painter.setPen(QColor(palette.ink))
    room = rect.width() - mark_width - size
    words = f"Cabin fan trace{': ' if title else ''}{title}"
    painter.drawText(
        QPointF(rect.left(), rect.top() + metrics.ascent()),
        metrics.elidedText(words, Qt.TextElideMode.ElideRight, room),
    )
    if mark:
        stamp = QRectF(rect.right() - mark_width, rect.top(), mark_width, metrics.height())
        painter.fillRect(stamp, QColor(palette.caution))
        painter.setPen(QPen(QColor(palette.on_caution), 2.0))
        painter.drawRect(stamp)
        painter.drawText(stamp, Qt.AlignmentFlag.AlignCenter, mark)
    painter.setFont(plain)
    painter.setPen(QColor(palette.faint))
    small = QFontMetricsF(plain, painter.device())
    y = rect.top() + metrics.height() + small.ascent() + 2.0
    facts = small.elidedText(_facts(about), Qt.TextElideMode.ElideRight, rect.width())
    painter.drawText(QPointF(rect.left(), y), facts)
    return y + small.descent() + size * 0.5


def _facts(about: About) -> str:
    meters = ", ".join(map(_meter, about.instruments))
    origin = {
        Origin.SIMULATED: "simulated readings, no real vehicle",
        Origin.IMPORTED: "imported readings",
        Origin.TYPED: "readings typed by hand",
    }.get(about.origin, "measured readings")
    dated = about.started_utc != UNDATED
    start = f"{about.started_utc:%Y-%m-%d %H:%M:%S} UTC" if dated else "date not stated"
    facts = (about.job.part, start, meters, f"limits {about.limits.name}", origin, about.program)
    return " · ".join(fact for fact in facts if fact)


def _meter(instrument: Instrument) -> str:
    who = instrument.identity
    name = " ".join(part for part in (who.maker, who.model, who.serial) if part) or instrument.key
    return f"{name} (typed by hand)" if instrument.typed else name


def _volts(
    painter: QPainter, rect: QRectF, scale: TimeScale, scene: TraceScene, palette: Palette
) -> None:
    lines = scene.traces.of(Quantity.VOLTAGE)
    values = ValueScale(rect, *value_range(lines, scene.about.limits.nominal_v))
    paint_axes(painter, scale, values, "voltage (V)", palette)
    paint_between(painter, scale, values, lines, palette.between)
    _marks(painter, rect, scale, scene, palette)
    paint_lines(painter, scale, values, lines, palette)
    paint_frame(painter, rect, palette)


def _amperes(
    painter: QPainter, rect: QRectF, scale: TimeScale, scene: TraceScene, palette: Palette
) -> None:
    lines = scene.traces.of(Quantity.CURRENT)
    bands = speed_bands(scene.events, scene.about.limits, scene.end_ns)
    top = max([1.0, *(b.max_a for b in bands if b.max_a is not None)])
    values = ValueScale(rect, *value_range(lines, top))
    paint_axes(painter, scale, values, "current (A)", palette)
    paint_bands(painter, scale, values, bands, palette)
    _marks(painter, rect, scale, scene, palette)
    paint_lines(painter, scale, values, lines, palette)
    paint_frame(painter, rect, palette)


def _marks(
    painter: QPainter, rect: QRectF, scale: TimeScale, scene: TraceScene, palette: Palette
) -> None:
    """Paint an upright line at every speed step (unbroken) and tap (broken)."""
    for event in scene.events:
        if event.kind not in {EventKind.SPEED, EventKind.TAP}:
            continue
        x = scale.x(event.t_ns)
        if scale.left <= x <= scale.right:
            tap = event.kind is EventKind.TAP
            style = Qt.PenStyle.DashLine if tap else Qt.PenStyle.SolidLine
            painter.setPen(QPen(QColor(palette.edge), 1.0, style))
            painter.drawLine(QPointF(x, rect.top()), QPointF(x, rect.bottom()))


def _key(painter: QPainter, rect: QRectF, scene: TraceScene, palette: Palette) -> None:
    """Paint what the lines and hatches mean, and what this set-up can't have seen."""
    metrics = QFontMetricsF(painter.font(), painter.device())
    shown = {span.kind for span in scene.review.spans}
    bands = speed_bands(scene.events, scene.about.limits, scene.end_ns)
    entries = key_entries(
        scene.traces.lines,
        [kind for kind in SpanKind if kind in shown],
        palette,
        limits=bool(bands),
    )
    y = paint_key(painter, rect, entries, palette)
    painter.setPen(QColor(palette.faint))
    words = metrics.elidedText(_unseen(scene.review), Qt.TextElideMode.ElideRight, rect.width())
    painter.drawText(QPointF(rect.left(), y + metrics.ascent()), words)


def _unseen(review: Review) -> str:
    shortest = review.shortest_visible_dropout_s
    lead = "Shortest dropout this set-up could not have missed: "
    first = [f"{lead}{shortest:.3g} s."] if shortest is not None else []
    return " ".join([*first, *review.notes])


def save_png(path: Path, scene: TraceScene, width: int = 1600, height: int = 900) -> Path:
    """Save the picture as PNG; works without a screen.

    Parameters
    ----------
    path : Path
        Its folder must exist; a file there is replaced.
    scene : TraceScene
    width, height : int, pixels

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
    image = QImage(width, height, QImage.Format.Format_RGB32)
    painter = QPainter(image)
    try:
        paint(painter, QRectF(0.0, 0.0, width, height), scene)
    finally:
        painter.end()
    image.setText("Software", scene.about.program)
    image.setText("Source", f"{scene.about.origin.value} {scene.about.recording_id}")
    return write_png(image, path)
