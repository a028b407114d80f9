"""Digits: one reading so large that it can be read from across the workshop."""

from __future__ import annotations

import math
import time

from PySide6.QtCore import QPointF, QRectF, QSizeF, Qt
from PySide6.QtGui import QColor, QFont, QFontMetricsF, QPainter, QPaintEvent
from PySide6.QtWidgets import QSizePolicy, QWidget

from meterlog.evidence.palette import DAY, Palette
from meterlog.evidence.span_ribbon import paint_swatch
from meterlog.model import SpanKind
from meterlog.window.numbers import decimal_sign, in_numbers
from meterlog.window.words import say

NOTHING = "—"
HOLD_S = 0.32
"""Digits that change two to four times a second can be read; from memory, no source. A little below
the window's own glance, so that each glance may change them."""
_LEAP = 0.1
"""Part of itself, or of one volt or ampere, by which a reading leaps: a dropout, a step."""


def _leaps(before: float, now: float) -> bool:
    if not (math.isfinite(before) and math.isfinite(now)):
        return math.isfinite(before) or math.isfinite(now)
    return abs(now - before) > _LEAP * max(abs(before), abs(now), 1.0)


def reading_text(value: float) -> str:
    """Write a reading with the decimals that fit four digits; a dash where there is none."""
    if not math.isfinite(value):
        return NOTHING
    places = 2 if abs(value) < 99.995 else 1
    text = f"{value:.{places}f}"
    return in_numbers(text.removeprefix("-") if float(text) == 0.0 else text)


class Digits(QWidget):
    """A label, a number and its unit. The number is as high as the widget allows.

    Parameters
    ----------
    label : str
    unit : str
    """

    def __init__(self, label: str, unit: str) -> None:
        super().__init__()
        self.label = label
        self.unit = unit
        self.text = NOTHING
        self._value, self._changed_s = math.nan, float("-inf")
        self.note = ""
        self.colour = DAY.ink
        self._palette = DAY
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)
        self.setAccessibleName(say("{label} in {unit}", label=label, unit=unit))

    def set_palette(self, palette: Palette, colour: str) -> None:
        """Take other colours; ``colour`` is the number's own."""
        self._palette, self.colour = palette, colour
        self.update()

    def show_reading(self, label: str, value: float, note: str = "") -> None:
        """Show a value, and in small words what is to be known about it.

        A number that flickers can't be read: one that moves a little is shown a few times a second
        at most, one that leaps at once. Whoever calls must call again after :data:`HOLD_S`.
        """
        text = reading_text(value)
        if (label, text, note) == (self.label, self.text, self.note):
            return
        now_s = time.monotonic()
        same = (label, note) == (self.label, self.note)
        if same and not _leaps(self._value, value) and now_s - self._changed_s < HOLD_S:
            return
        self._value, self._changed_s = value, now_s
        self.label, self.text, self.note = label, text, note
        self.setAccessibleName(f"{label}: {text} {self.unit} {note}".strip())
        self.update()

    def digit_height(self) -> float:
        """Give how high the digits themselves are now, in pixels."""
        return QFontMetricsF(_font(self.font(), float(self.digit_pixels()))).capHeight()

    def room_for(self, digit_height: float) -> QSizeF:
        """Give the size that the widget needs for digits of a height, both in pixels."""
        line = QFontMetricsF(self.font()).height()
        probe = QFontMetricsF(_font(self.font(), 100.0))
        pixels = digit_height / probe.capHeight() * 100.0 + 1.0
        wide = (probe.horizontalAdvance("88.88") + 4.0) * pixels / 100.0
        return QSizeF(wide + line * 0.6 + 1.0, pixels * _tall() + line * 1.6 + 1.0)

    def digit_pixels(self) -> int:
        """Give the height of the number's font: all there is, unless the number grew too wide."""
        line = QFontMetricsF(self.font()).height()
        high = max(self.height() - line * 1.6, 8.0) / _tall()
        probe = _font(self.font(), 100.0)
        wide = QFontMetricsF(probe).horizontalAdvance("88.88") + 4.0
        if len(self.text) > 5:
            wide = QFontMetricsF(probe).horizontalAdvance(self.text) + 4.0
        room = self.width() - line * 0.6
        return max(int(min(high, room / wide * 100.0)), 8)

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint label, number and unit."""
        del event
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        rect = QRectF(self.rect()).adjusted(0.5, 0.5, -0.5, -0.5)
        painter.setPen(QColor(self._palette.edge))
        painter.setBrush(QColor(self._palette.panel))
        painter.drawRoundedRect(rect, 3.0, 3.0)
        small = QFontMetricsF(self.font())
        pad = small.height() * 0.4
        painter.setPen(QColor(self._palette.faint))
        words = f"{self.label}   {self.note}" if self.note else self.label
        room = rect.width() - 2.0 * pad
        painter.drawText(
            QPointF(pad, small.ascent() + 2.0),
            small.elidedText(words, Qt.TextElideMode.ElideRight, room),
        )
        big = _font(self.font(), float(self.digit_pixels()))
        if self.text == NOTHING:
            # A thick bar would look as if something were under way.
            big = _font(self.font(), self.digit_pixels() * 0.4, bold=False)
        metrics = QFontMetricsF(big)
        below = max(metrics.tightBoundingRect(decimal_sign()).bottom(), 0.0)
        baseline = rect.bottom() - max(
            (rect.height() - small.height() * 1.3 - metrics.capHeight()) / 2.0, 4.0 + below
        )
        unit = _font(self.font(), small.height() * 1.25)
        unit_wide = QFontMetricsF(unit).horizontalAdvance(self.unit)
        painter.setFont(unit)
        painter.setPen(QColor(self._palette.ink))
        painter.drawText(
            QPointF(rect.right() - pad - unit_wide, QFontMetricsF(unit).ascent() + 1.0), self.unit
        )
        painter.setFont(big)
        painter.setPen(QColor(self.colour))
        at = rect.right() - pad - metrics.horizontalAdvance(self.text)
        painter.drawText(QPointF(at, baseline), self.text)
        painter.end()


def _tall() -> float:
    """Give the height that a number needs, in heights of its font; a comma hangs below the line."""
    return 0.82 if decimal_sign() == "." else 0.95


def _font(like: QFont, pixels: float, *, bold: bool = True) -> QFont:
    font = QFont(like)
    font.setPixelSize(max(int(pixels), 1))
    font.setBold(bold)
    return font


class StatePanel(QWidget):
    """What the motor is doing now: hatch, word, speed step and for how long."""

    def __init__(self) -> None:
        super().__init__()
        self.kind: SpanKind | None = None
        self.words = ""
        self._palette = DAY
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)
        self.setAccessibleName(say("state of the motor: not known"))

    def set_palette(self, palette: Palette) -> None:
        """Take other colours."""
        self._palette = palette
        self.update()

    def show_state(self, kind: SpanKind | None, words: str) -> None:
        """Show a span kind, or that nothing is known, and a line of words under it."""
        if (kind, words) == (self.kind, self.words):
            return
        self.kind, self.words = kind, words
        word = self._palette.spans[kind].word if kind else say("not known")
        self.setAccessibleName(say("state of the motor: {word}, {words}", word=word, words=words))
        self.update()

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint the patch and the words."""
        del event
        painter = QPainter(self)
        rect = QRectF(self.rect()).adjusted(0.5, 0.5, -0.5, -0.5)
        painter.fillRect(rect, QColor(self._palette.panel))
        painter.setPen(QColor(self._palette.edge))
        painter.drawRoundedRect(rect, 3.0, 3.0)
        small = QFontMetricsF(self.font())
        pad = small.height() * 0.4
        if self.kind is not None:
            edge = QRectF(rect.left(), rect.top(), pad * 3.0, rect.height())
            paint_swatch(painter, edge, self._palette.spans[self.kind])
        left = rect.left() + pad * 4.0
        room = QRectF(left, rect.top(), rect.right() - left - pad, rect.height())
        word = self._palette.spans[self.kind].word.upper() if self.kind else NOTHING
        font = _fitting(self.font(), word, room)
        painter.setFont(font)
        painter.setPen(QColor(self._palette.ink))
        upper = QRectF(room.left(), room.top(), room.width(), room.height() - small.height() * 1.3)
        painter.drawText(upper, Qt.AlignmentFlag.AlignVCenter | Qt.AlignmentFlag.AlignLeft, word)
        painter.setFont(self.font())
        painter.setPen(QColor(self._palette.faint))
        lower = QRectF(room.left(), upper.bottom(), room.width(), small.height() * 1.2)
        words = small.elidedText(self.words, Qt.TextElideMode.ElideRight, room.width())
        painter.drawText(lower, Qt.AlignmentFlag.AlignVCenter, words)
        painter.end()


def _fitting(like: QFont, word: str, room: QRectF) -> QFont:
    probe = _font(like, 100.0)
    wide = QFontMetricsF(probe).horizontalAdvance(word) + 1.0
    return _font(like, min(room.height() * 0.55, room.width() / wide * 100.0))
