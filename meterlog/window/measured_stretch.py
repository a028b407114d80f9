"""MeasuredStretch: two edges on the trace, and the figures between them with U."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QApplication, QHBoxLayout, QLabel, QPushButton, QWidget

from meterlog.analysis.rounding import places_for, with_uncertainty
from meterlog.evidence.ticks import time_text
from meterlog.model import Role
from meterlog.window.long_work import LongWork, Progress
from meterlog.window.numbers import in_numbers, number
from meterlog.window.sentences import sentence
from meterlog.window.words import say

if TYPE_CHECKING:
    from meterlog.analysis.stretch_figures import StretchFigure

EDGE_STEPS = 50
"""A key moves an edge by this part of what is on screen."""


@dataclass(frozen=True, slots=True)
class _Asked:
    """What figures are worked out of.

    Attributes
    ----------
    folder : Path
        Of the recording.
    edges : tuple of (int, int), nanoseconds since its zero
    newest_ns : int, nanoseconds since its zero
        Of the newest reading between them.
    """

    folder: Path
    edges: tuple[int, int]
    newest_ns: int


class MeasuredStretch(QWidget):
    """The line with the figures; hidden while nothing is measured.

    ``changed`` is emitted with start and end in seconds, or None, for whoever draws the edges.
    """

    changed = Signal(object)

    def __init__(self) -> None:
        super().__init__()
        self.words = QLabel("")
        self.words.setWordWrap(True)
        self.words.setAccessibleName(say("figures of the measured stretch"))
        self.words.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
        self.copy = QPushButton(say("Copy"))
        self.copy.setAccessibleName(say("copy the figures of the measured stretch"))
        self.copy.clicked.connect(lambda: QApplication.clipboard().setText(self.words.text()))
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.addWidget(self.words, 1)
        row.addWidget(self.copy)
        self.edges: tuple[int, int] | None = None
        self._work: LongWork[tuple[StretchFigure, ...]] = LongWork("stretch")
        self._asked: _Asked | None = None
        self._of: Path | None = None
        """The recording of which the words are."""
        self.hide()

    def turn(self, start_ns: int, end_ns: int) -> None:
        """Measure the middle third of what is on screen; or measure no more."""
        if self.edges is not None:
            self.edges = None
            self._drop()
            self.hide()
            self.changed.emit(None)
            return
        third = (end_ns - start_ns) // 3
        self._set(start_ns + third, end_ns - third)

    def move_edges(self, width_ns: int, *, start: int = 0, end: int = 0) -> None:
        """Move an edge by steps of a part of ``width_ns``; nothing where nothing is measured."""
        if self.edges is None:
            return
        pace = max(width_ns // EDGE_STEPS, 1)
        first, last = self.edges
        first = min(max(first + start * pace, 0), last - 1) if start else first
        last = max(last + end * pace, first + 1) if end else last
        self._set(first, last)

    def drag(self, start_s: float, end_s: float) -> None:
        """Take edges that were dragged, in seconds."""
        start_ns, end_ns = sorted((round(start_s * 1e9), round(end_s * 1e9)))
        self.edges = start_ns, max(end_ns, start_ns + 1)

    def tick(self, folder: Path | None, newest_ns: int) -> None:
        """Ask for figures where edges or readings have changed, and show those that have come.

        Parameters
        ----------
        folder : Path or None
            Of the recording on show.
        newest_ns : int, nanoseconds since its zero
            Of the newest reading: an edge before it gets no others.
        """
        if self.edges is None or folder is None:
            self._drop()
        elif folder != self._of:
            self._drop()
            self._of = folder
        elif self._asked is not None and self._asked.edges != self.edges:
            self._work.cancel()
        self._fetch()
        if self.edges is None or folder is None:
            return
        wanted = _Asked(folder, self.edges, min(newest_ns, self.edges[1]))
        if wanted != self._asked and self._work.begin(
            lambda tell: _figures(folder, *wanted.edges, tell)
        ):
            self._asked = wanted

    def _fetch(self) -> None:
        """Show what has come, with the edges that it was asked of; of what was dropped nothing."""
        outcome, asked = self._work.fetch(), self._asked
        if outcome is None or asked is None:
            return
        made, trouble = outcome
        if made is None and not trouble:
            self._asked = None  # it was stopped, and may be wanted again
        else:
            self.words.setText(trouble if made is None else stretch_words(*asked.edges, made))

    def _drop(self) -> None:
        """Let go of the figures that are on show, and of those that are being worked out."""
        self._work.cancel()
        self._asked = self._of = None
        self.words.setText("")

    def close_work(self) -> None:
        """Stop what is being worked out."""
        self._work.cancel()

    def _set(self, start_ns: int, end_ns: int) -> None:
        self.edges = start_ns, end_ns
        self.show()
        self.changed.emit((start_ns / 1e9, end_ns / 1e9))


def _figures(folder: Path, start_ns: int, end_ns: int, tell: Progress) -> tuple[StretchFigure, ...]:
    from meterlog.work.stretch import stretch_figures

    return stretch_figures(folder, start_ns, end_ns, tell)


def stretch_words(start_ns: int, end_ns: int, figures: Sequence[StretchFigure]) -> str:
    """Write the figures of a stretch: a line with its times, then one a channel."""
    wide_s = (end_ns - start_ns) / 1e9
    ends = say(" to ").join(
        in_numbers(time_text(at / 1e9, wide_s / 100)) for at in (start_ns, end_ns)
    )
    return "\n".join([f"{ends} ({number(wide_s, '.4g')} s)", *map(_channel_words, figures)])


def _placed(value: float | None, places: int) -> str:
    # No negative zero; empty for nothing.
    return "" if value is None else number(round(value, places) + 0.0, f".{places}f")


def _channel_words(one: StretchFigure) -> str:
    name = one.source if one.role is Role.OTHER else say(one.role.value.replace("-", " "))
    if one.mean is None:
        return (
            say("{name}: no reading ({left_out} without a value)", name=name, left_out=one.left_out)
            if one.left_out
            else (say("{name}: no reading", name=name))
        )
    u = one.mean.expanded if one.mean.sources else None
    parts = [
        say(
            "mean {mean}",
            mean=in_numbers(with_uncertainty(one.mean.value, u, one.unit)),
        )
    ]
    # More places than U has would look like knowledge; where U is not known there are three.
    places = places_for(u or 0.0)
    low, high, median = (_placed(value, places) for value in (one.low, one.high, one.median))
    if low and high:
        parts.append(say("{low} to {high}", low=low, high=high))
    if median:
        parts.append(say("median {median}", median=median))
    if one.sd is not None:
        parts.append(say("standard deviation {sd}", sd=number(one.sd, ".2g")))
    parts.append(say("{n} readings", n=one.n))
    if one.left_out:
        parts.append(say("{left_out} without a value", left_out=one.left_out))
    lacking = (
        say("; U without: {lacking}", lacking=sentence(one.mean.lacking))
        if one.mean.lacking
        else ""
    )
    return f"{name}: {', '.join(parts)}{lacking}"
