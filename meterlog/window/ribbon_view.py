"""RibbonView: events and the span ribbon under the trace, on the same time axis."""

from __future__ import annotations

from PySide6.QtCore import QEvent, QRectF, Signal
from PySide6.QtGui import (
    QColor,
    QFontMetricsF,
    QHelpEvent,
    QMouseEvent,
    QPainter,
    QPaintEvent,
    QResizeEvent,
)
from PySide6.QtWidgets import QSizePolicy, QToolTip, QWidget

from meterlog.evidence.event_lane import TAP_HEIGHT, event_words, paint_events
from meterlog.evidence.palette import DAY, Palette
from meterlog.evidence.span_ribbon import TimeScale, paint_ribbon
from meterlog.model import Event, Span
from meterlog.window.edits.pending_edit import mark_words
from meterlog.window.sentences import sentence
from meterlog.window.words import say

_NEAR = 6.0
"""Pixels from a mark within which the pointer is at it."""


class RibbonView(QWidget):
    """A strip: events above, spans in the middle, names of short spans below.

    ``picked`` is emitted with the span that was clicked, ``resized`` when it has another size: then
    it needs another scale.
    """

    picked = Signal(object)
    resized = Signal()

    def __init__(self) -> None:
        super().__init__()
        self._palette = DAY
        self._scale = TimeScale(0, 1, 0.0, 1.0)
        self._spans: tuple[Span, ...] = ()
        self._events: tuple[Event, ...] = ()
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self.setAccessibleName(say("what the motor was doing, over time"))

    def set_palette(self, palette: Palette, pixels: int) -> None:
        """Take other colours, and the height that text of ``pixels`` needs."""
        self._palette = palette
        self.setFixedHeight(round(pixels * 4.4 + TAP_HEIGHT))
        self.update()

    def show_stretch(
        self, scale: TimeScale, spans: tuple[Span, ...], events: tuple[Event, ...]
    ) -> None:
        """Show these spans and events on this time scale; nothing is painted for no change."""
        if (scale, spans, events) == (self._scale, self._spans, self._events):
            return
        self._scale, self._spans, self._events = scale, spans, events
        self.update()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Tell it."""
        super().resizeEvent(event)
        self.resized.emit()

    @property
    def spans(self) -> tuple[Span, ...]:
        """The spans shown."""
        return self._spans

    def span_at(self, x: float) -> Span | None:
        """Give the span under an x of this widget."""
        t_ns = self._scale.t_ns(x)
        return next((s for s in self._spans if s.start_ns <= t_ns < s.end_ns), None)

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Tell which span was clicked."""
        span = self.span_at(event.position().x())
        if span is not None:
            self.picked.emit(span)

    def words_at(self, x: float) -> str:
        """Say which marks stand at an x of this widget, and what the motor did there.

        Words beside marks are left out where there is no room for them; here they are whole.
        """
        marks = [
            mark_words(event)
            for event in self._events
            if event_words(event)[0] and abs(self._scale.x(event.t_ns) - x) <= _NEAR
        ]
        span = self.span_at(x)
        return "\n".join(
            (*marks, *(() if span is None else (self._palette.spans[span.kind].word,)))
        )

    def event(self, event: QEvent) -> bool:
        """Say what is under the pointer."""
        if event.type() == QEvent.Type.ToolTip and isinstance(event, QHelpEvent):
            QToolTip.showText(event.globalPos(), self.words_at(event.pos().x()), self)
            return True
        return super().event(event)

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint the three lanes."""
        del event
        painter = QPainter(self)
        painter.fillRect(self.rect(), QColor(self._palette.ground))
        line = QFontMetricsF(self.font()).height()
        left, wide = self._scale.left, self._scale.right - self._scale.left
        lane = QRectF(left, 0.0, wide, line + TAP_HEIGHT)
        paint_events(painter, lane, self._scale, self._events, self._palette, sentence)
        strip = QRectF(left, lane.bottom() + 2.0, wide, self.height() - lane.bottom() - 3.0)
        paint_ribbon(painter, strip, self._scale, self._spans, self._palette)
        painter.end()
