"""Event lane: what the technician did, as marks and words above the ribbon."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QFontMetricsF, QPainter, QPolygonF

from meterlog.evidence.palette import Palette
from meterlog.evidence.span_ribbon import TimeScale
from meterlog.model import Event, EventKind

TAP_HEIGHT = 9.0
_PLAIN = {
    EventKind.TAP: ("tap", ""),
    EventKind.WIGGLE: ("moved", "m"),
    EventKind.NOTE: ("note", "n"),
    EventKind.LINK: ("link", "!"),
    EventKind.FAULT: ("fault", "!"),
}


def event_words(event: Event) -> tuple[str, str]:
    """Give the words at an event's mark, in full and for little room; empty: it has no mark."""
    if event.kind is EventKind.SPEED:
        return ("off" if event.value == "0" else f"speed {event.value}"), event.value
    return _PLAIN.get(event.kind, ("", ""))


def paint_events(  # where, what and how
    painter: QPainter,
    rect: QRectF,
    scale: TimeScale,
    events: Sequence[Event],
    palette: Palette,
    tell: Callable[[str], str] = str,
) -> None:
    """Paint a triangle at the foot of the lane for every tap, a bar for all other events.

    Parameters
    ----------
    painter : QPainter
        With the font for the words set.
    rect : QRectF
        One line of text and :data:`TAP_HEIGHT` high.
    scale : TimeScale
    events : sequence of Event
        In time order. Words are left out where there is no room for them, marks never are.
    palette : Palette
    tell : callable
        Gives words in the language of whoever looks.
    """
    painter.save()
    painter.setClipRect(rect.adjusted(-6.0, 0.0, 6.0, 0.0))
    ink = QColor(palette.ink)
    shown = [
        event
        for event in events
        if event_words(event)[0] and scale.start_ns <= event.t_ns <= scale.end_ns
    ]
    bars = [scale.x(event.t_ns) for event in shown if event.kind is not EventKind.TAP]
    free_from = rect.left()
    for event in shown:
        x = scale.x(event.t_ns)
        _mark(painter, rect, x, ink, tap=event.kind is EventKind.TAP)
        free_to = min([rect.right(), *(bar - 3.0 for bar in bars if bar > x)])
        words = tuple(tell(words) for words in event_words(event))
        free_from = _words(painter, rect, words, (max(free_from, x + 6.0), free_to), ink)
    painter.restore()


def _mark(painter: QPainter, rect: QRectF, x: float, ink: QColor, *, tap: bool) -> None:
    if not tap:
        painter.fillRect(QRectF(x - 1.0, rect.top() + 2.0, 2.0, rect.height() - 2.0), ink)
        return
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(ink)
    foot, top = rect.bottom(), rect.bottom() - TAP_HEIGHT
    tip = [QPointF(x, foot), QPointF(x - 5.0, top), QPointF(x + 5.0, top)]
    painter.drawPolygon(QPolygonF(tip))


def _words(
    painter: QPainter, rect: QRectF, told: Sequence[str], free: tuple[float, float], ink: QColor
) -> float:
    """Write the longest words that fit; give where the next ones may begin."""
    metrics = QFontMetricsF(painter.font(), painter.device())
    for words in told:
        wide = metrics.horizontalAdvance(words)
        if words and free[0] + wide <= free[1]:
            painter.setPen(ink)
            painter.drawText(QPointF(free[0], rect.top() + metrics.ascent()), words)
            return free[0] + wide + 5.0
    return free[0]
