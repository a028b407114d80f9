"""RunPage: big digits, live trace, ribbon, findings and steps of the recording on show."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from PySide6.QtCore import QSize, Qt, QTimer, Signal
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QBoxLayout, QLabel, QSplitter, QVBoxLayout, QWidget

from meterlog.evidence.palette import DAY, Palette
from meterlog.evidence.ticks import time_text
from meterlog.model import Doubt, Event, Finding, Flag, Role, Span
from meterlog.window.digits import Digits, StatePanel
from meterlog.window.findings_view import FindingsView
from meterlog.window.found_line import FoundLine
from meterlog.window.judging_strip import JudgingStrip
from meterlog.window.measured_stretch import MeasuredStretch
from meterlog.window.note_line import NoteLine
from meterlog.window.outlook import Outlook
from meterlog.window.ribbon_view import RibbonView
from meterlog.window.session import Session
from meterlog.window.shown import Shown
from meterlog.window.steps_view import StepsView
from meterlog.window.typing_line import TypingLine
from meterlog.window.words import later, say
from meterlog.window.wrong_unit import wrong_unit
from meterlog.window.zero_age import zero_age

if TYPE_CHECKING:
    from meterlog.window.second_run import SecondRun
    from meterlog.window.trace_view import TraceView

_EMPTY = later(
    "Nothing to show yet.\n\nChoose the meters on the Meters page (M), then press Enter to start,"
    "\nor press O to open a recording."
)


_DIGITS_SHARE, _STATE_SHARE = 10, 8
_STATE_LINES = 4.5
"""Height of the state under the digits, in heights of plain text."""
_GAP, _MARGIN = 6, 6
_AROUND = 10.0
"""Height of header, status line and key map together, in heights of plain text."""
_ANY = 16_777_215
"""As Qt says that a widget may be as large as it likes."""


class RunPage(QWidget):
    """The page under the technician's eyes while measuring.

    ``clicked`` is emitted with the instant, in nanoseconds, at which the trace was clicked.
    """

    clicked = Signal(object)  # int: Qt's own holds but 2.1 s of nanoseconds

    def __init__(self) -> None:
        super().__init__()
        self.volts = Digits(say("across the motor"), "V")
        self.amperes = Digits(say("motor current"), "A")
        self.state = StatePanel()
        self.ribbon = RibbonView()
        self.findings = FindingsView()
        self.steps = StepsView()
        self.note = NoteLine()
        self.typing = TypingLine()
        self.found = FoundLine()
        self.judging = JudgingStrip()
        self.stretch = MeasuredStretch()
        self.empty = QLabel(say(_EMPTY))
        self.empty.setAlignment(Qt.AlignmentFlag.AlignCenter)
        self.outlook = Outlook()
        self.trace: TraceView | None = None
        self._shown: Shown | None = None
        self._second: SecondRun | None = None
        self._palette = DAY
        self._pixels = 12
        self._top = QWidget()
        self._digits = QBoxLayout(QBoxLayout.Direction.LeftToRight, self._top)
        self._body = QBoxLayout(QBoxLayout.Direction.TopToBottom)
        self._trace_place = QVBoxLayout()
        self._lines = QVBoxLayout()
        self._split = QSplitter(Qt.Orientation.Horizontal)
        self._aside = QSplitter(Qt.Orientation.Vertical)
        self._lay_out()
        self.ribbon.picked.connect(self._on_span)
        self.findings.picked.connect(self._on_finding)
        self.stretch.changed.connect(self._on_stretch)

    def _lay_out(self) -> None:
        self._digits.setContentsMargins(0, 0, 0, 0)
        self._digits.setSpacing(_GAP)
        self._digits.addWidget(self.volts, _DIGITS_SHARE)
        self._digits.addWidget(self.amperes, _DIGITS_SHARE)
        self._digits.addWidget(self.state, _STATE_SHARE)
        pictures = QVBoxLayout(left := QWidget())
        pictures.setContentsMargins(0, 0, 0, 0)
        pictures.setSpacing(2)
        self._trace_place.addWidget(self.empty, 1)
        pictures.addLayout(self._trace_place, 1)
        pictures.addWidget(self.ribbon)
        pictures.addWidget(self.stretch)
        self._aside.addWidget(self.findings)
        self._aside.addWidget(self.steps)
        self._aside.setStretchFactor(0, 5)
        self._aside.setStretchFactor(1, 3)
        self._split.addWidget(left)
        self._split.addWidget(self._aside)
        self._split.setStretchFactor(0, 7)
        self._split.setStretchFactor(1, 3)
        self._split.setSizes([700, 300])
        self._split.setChildrenCollapsible(False)
        # A hand at the splitter, or a panel that needs more room than the one before it.
        self.ribbon.resized.connect(self.redraw_soon)
        page = QVBoxLayout(self)
        page.setContentsMargins(_MARGIN, 4, _MARGIN, 2)
        page.setSpacing(4)
        self._lines.setSpacing(4)
        for line in (self.judging, self.note, self.typing, self.found):
            self._lines.addWidget(line)
        self._lines.addWidget(self._split, 1)
        self._body.setSpacing(4)
        self._body.addWidget(self._top)
        self._body.addLayout(self._lines, 1)
        page.addLayout(self._body, 1)

    def fill(self) -> None:
        """Put the trace in place; late, since its library takes a while to load."""
        if self.trace is not None:
            return
        from meterlog.window.trace_view import TraceView

        self.trace = TraceView()
        self.trace.looked.connect(self._on_look)
        self.trace.measured.connect(self.stretch.drag)
        self.trace.clicked.connect(lambda at_s: self.clicked.emit(round(at_s * 1e9)))
        self.trace.setVisible(self._shown is not None)
        self._trace_place.addWidget(self.trace, 1)
        self.trace.set_palette(self._palette, self._pixels)
        if self._shown is not None:
            self.trace.show_mark(self._shown.mark)
        self.redraw_soon()

    def set_palette(self, palette: Palette, pixels: int) -> None:
        """Take other colours, and text of ``pixels`` height."""
        self._palette, self._pixels = palette, pixels
        self.volts.set_palette(palette, palette.line(Role.MOTOR_FEED))
        self.amperes.set_palette(palette, palette.line(Role.MOTOR_CURRENT))
        self.state.set_palette(palette)
        self.ribbon.set_palette(palette, pixels)
        if self.trace is not None:
            self.trace.set_palette(palette, pixels)
        self.redraw_soon()

    def set_digit_height(self, window: QSize, least: float = 0.0) -> bool:
        """Give the digits their share of the window: at least a sixth of its height.

        Parameters
        ----------
        window : QSize
        least : float, pixels
            The digits shall be at least so high, as at full screen. Where there is no room for
            that side by side, they stand one above the other, left of the trace alone.

        Returns
        -------
        bool
            False where there is too little room for that besides the key map.
        """
        needs = self.volts.room_for(least)
        share = _DIGITS_SHARE / (2 * _DIGITS_SHARE + _STATE_SHARE)
        beside = needs.width() <= (window.width() - 2 * _MARGIN) * share - _GAP
        row, column = QBoxLayout.Direction.LeftToRight, QBoxLayout.Direction.TopToBottom
        self._digits.setDirection(row if beside else column)
        self._body.setDirection(column if beside else row)
        if beside:
            high = window.height() / 6 * 0.8 + self._pixels * 2.6
            self._top.setMinimumWidth(0)
            self._top.setMaximumWidth(_ANY)
            self._top.setFixedHeight(round(max(high, needs.height())))
            self.state.setMaximumHeight(_ANY)
        else:
            self.state.setMaximumHeight(round(self._pixels * _STATE_LINES))
            self._top.setMinimumHeight(0)
            self._top.setMaximumHeight(_ANY)
            self._top.setFixedWidth(round(needs.width()))
        # From afar nobody reads it, and the trace needs the room.
        self._aside.setVisible(beside)
        tall = 2.0 * needs.height() + self._pixels * _STATE_LINES + 2.0 * _GAP
        return beside or tall <= window.height() - self._pixels * _AROUND

    def show_session(self, session: Session) -> None:
        """Draw what is on show in a session."""
        shown = session.shown
        if shown is None:
            return
        if shown is not self._shown:
            self._take(shown)
        self._show_digits(session, shown)
        self.redraw()

    def show_judgement(self, session: Session) -> None:
        """Show what changes a few times a second: findings, steps, ribbon, age of the digits."""
        shown = session.shown
        if shown is None:
            return
        if shown is not self._shown:
            self._take(shown)
        self._show_digits(session, shown)
        self.found.show_found(shown, busy=session.busy)
        self.findings.show_review(shown.review, shown.events)
        self.steps.show_steps(shown.review.steps)
        self._show_ribbon(shown)

    def _take(self, shown: Shown) -> None:
        same = self._shown is not None and self._shown.about == shown.about
        self._shown = shown
        self.empty.hide()
        if not shown.live and not (same and not self.outlook.follows):
            self.outlook.show_all(shown.end_ns)
        elif shown.live:
            self.outlook.follows = True
            self.outlook.width_s = 30.0
        if self.trace is not None:
            self.trace.show()
            self.trace.show_mark(shown.mark)

    def _show_digits(self, session: Session, shown: Shown) -> None:
        note = "" if shown.live else say("last reading")
        now_ns = session.now_ns()
        for digits, (label, value), role in (
            (self.volts, shown.volts(), Role.MOTOR_FEED),
            (self.amperes, shown.amperes(), Role.MOTOR_CURRENT),
        ):
            line = shown.traces.line(role)
            late_ns = now_ns - line.last_ns if line is not None else 0
            silent = (
                shown.live and line is not None and late_ns > _patience_ns(line.channel.interval_s)
            )
            fact = self._missing_words(shown, role) if silent or not math.isfinite(value) else note
            if line is not None and line.last_flags & Flag.OVERLOAD:
                fact = say("OVERLOAD")
            fact = self._typed_words(shown, role, now_ns) or fact
            if shown.live and role is Role.MOTOR_CURRENT and not fact:
                fact = zero_age(shown.about, shown.events, now_ns)
            digits.show_reading(label, math.nan if silent else value, fact)
        self._show_state(shown)

    @staticmethod
    def _missing_words(shown: Shown, role: Role) -> str:
        """Say that there is no reading now, and why if the meter said so."""
        key = shown.meter_of(role)
        turned = wrong_unit(shown.events, key) if shown.live and key else ""
        return say("no data {turned}", turned=turned).strip()

    @staticmethod
    def _typed_words(shown: Shown, role: Role, now_ns: int) -> str:
        """Say that what the digits show is typed by hand, and when; empty when it is not."""
        line = shown.typed_line(role)
        if line is None:
            return ""
        if not line.count:
            return say("typed by hand: nothing yet, press =")
        if not shown.live:
            return say("last reading, typed by hand")
        age_s = max(now_ns - line.last_ns, 0) / 1e9
        return say("typed by hand {age} s ago", age=f"{age_s:.0f}")

    def _show_state(self, shown: Shown) -> None:
        span = shown.newest_span()
        if span is None:
            self.state.show_state(None, shown.state_words)
            return
        since = time_text(max(shown.end_ns - shown.holds_since_ns(span), 0) / 1e9, 60.0)
        when = say("for") if shown.live else say("at the end, for")
        self.state.show_state(span.kind, f"{_speed_words(shown, span)} · {when} {since}")

    def redraw(self) -> None:
        """Draw trace and ribbon for the stretch looked at."""
        if self._shown is None or self.trace is None:
            return
        start_ns, end_ns = self.outlook.stretch(self._shown.end_ns)
        back = not self.outlook.follows
        self.trace.draw(self._shown, start_ns, end_ns, self._second, back=back)
        self._show_ribbon(self._shown)

    def _show_ribbon(self, shown: Shown) -> None:
        if self.trace is None:
            return
        stretch = self.outlook.stretch(shown.end_ns)
        scale = self.trace.time_scale(self.ribbon, *stretch)
        self.ribbon.show_stretch(scale, shown.review.spans, shown.events)

    def redraw_soon(self) -> None:
        """Draw once the layout has settled."""
        QTimer.singleShot(0, self, self.redraw)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Draw again for the new width."""
        super().resizeEvent(event)
        self.redraw_soon()

    def follow(self) -> None:
        """Follow the newest readings, or hold still to look back."""
        self.outlook.follows = not self.outlook.follows
        if self.outlook.follows and self._shown is not None and not self._shown.live:
            self.outlook.show_all(self._shown.end_ns)
        elif self.outlook.follows and self.outlook.width_s > 120.0:
            self.outlook.width_s = 30.0
        self.redraw()

    def look(self, move: float = 0.0, zoom: int = 0) -> None:
        """Move by a share of the width, or show less or more."""
        if move:
            self.outlook.move(move)
        if zoom:
            self.outlook.zoom(zoom)
        self.redraw()

    def turn_stretch(self) -> None:
        """Measure a stretch of what is on screen, or measure no more."""
        if self._shown is not None:
            self.stretch.turn(*self.outlook.stretch(self._shown.end_ns))

    def move_edge(self, *, start: int = 0, end: int = 0) -> None:
        """Move an edge of the measured stretch, to earlier when negative."""
        self.stretch.move_edges(round(self.outlook.width_s * 1e9), start=start, end=end)

    def put_aside(self, widget: QWidget) -> None:
        """Put a panel beside findings and steps."""
        self._aside.addWidget(widget)

    def show_aside(self, only: QWidget | None) -> None:
        """Show one panel alone beside the trace; None: findings and steps."""
        for widget in (self.findings, self.steps):
            widget.setVisible(only is None)
        if only is not None:
            only.show()

    def add_line(self, line: QWidget) -> None:
        """Put a line of words above the trace."""
        self._lines.insertWidget(0, line)

    def show_pending(self, at_ns: int | None) -> None:
        """Show where a mark stands that is looked at or being moved; None for none."""
        if self.trace is not None:
            self.trace.show_pending(None if at_ns is None else at_ns / 1e9)

    def show_second(self, run: SecondRun | None) -> None:
        """Show another run behind the trace; None for none."""
        if run is not self._second:
            self._second = run
            self.redraw()

    def measure(self, session: Session) -> None:
        """Look after the figures of the measured stretch."""
        self.judging.show_session(session)
        if session.shown is not None:
            self.stretch.tick(session.folder, session.shown.end_ns)

    def _on_stretch(self, edges: tuple[float, float] | None) -> None:
        if self.trace is not None:
            self.trace.show_measured(edges)
        self.redraw_soon()

    def _on_look(self, start_s: float, end_s: float) -> None:
        self.outlook.show(round(start_s * 1e9), round(end_s * 1e9))
        self.redraw()

    def _look_at(self, start_ns: int, end_ns: int) -> None:
        around = max(end_ns - start_ns, 1_000_000_000)
        self.outlook.show(start_ns - around, end_ns + around)
        self.redraw()

    def _on_finding(self, finding: Finding | Doubt | Event) -> None:
        if isinstance(finding, Event):
            self._look_at(finding.t_ns, finding.t_ns)
            return
        self._look_at(finding.start_ns, finding.end_ns)

    def _on_span(self, span: Span) -> None:
        self._look_at(span.start_ns, span.end_ns)


def _speed_words(shown: Shown, span: Span) -> str:
    """Say which speed was commanded last, or that nobody said."""
    speed = shown.speed()
    found = speed is None and shown.accepted and span.speed is not None
    speed = span.speed if found else speed
    if speed is None:
        return say("speed not told: press 0–9") if shown.live else say("speed not recorded")
    words = say("speed {speed}", speed=speed) if speed else say("off")
    return words + (say(" (found)") if found else "")


def _patience_ns(interval_s: float) -> int:
    """Give how long the newest reading may be old before the digits say that there is none."""
    return round(max(3.5 * interval_s, 0.5) * 1e9)
