"""FindingsView: what has been found, in plain sentences, worst news first to see."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import (
    QAbstractItemView,
    QLabel,
    QListWidget,
    QListWidgetItem,
    QSizePolicy,
    QVBoxLayout,
)
from PySide6.QtWidgets import QWidget as _Widget

from meterlog.evidence.ticks import time_text
from meterlog.model import (
    Doubt,
    Event,
    EventKind,
    Finding,
    FindingKind,
    Review,
    RunVerdict,
    Verdict,
)
from meterlog.model.link_text import BACK, LOST, SILENT
from meterlog.window.kind_words import KIND_WORDS
from meterlog.window.numbers import in_numbers, number
from meterlog.window.remedies_here import remedy_here
from meterlog.window.sentences import sentence
from meterlog.window.verdict_words import outcome_words, unseen_words, verdict_words
from meterlog.window.whole_lines import WholeLines
from meterlog.window.words import later, say

_SIGNS = {
    Verdict.FAIL: later("✕ FAIL"), Verdict.PASS: later("✓ PASS"),
    Verdict.CANT_TELL: later("? CAN'T TELL"),
}  # fmt: skip
NONE_YET = later("Nothing found yet.")
_NOTE = later("Note: ")


def finding_words(finding: Finding) -> str:
    """Write a finding as the list shows it: verdict in words and sign, kind, time, statement."""
    at = time_text(finding.start_ns / 1e9, 60.0)
    return say(
        "{verdict}  {kind}  at {at}\n{statement}",
        verdict=say(_SIGNS[finding.verdict]),
        kind=say(KIND_WORDS[finding.kind]),
        at=at,
        statement=sentence(finding.statement),
    )


def doubt_words(doubt: Doubt) -> str:
    """Write a doubt about a meter as the list shows it."""
    at = (
        say("  at {at}", at=in_numbers(time_text(doubt.start_ns / 1e9, 60.0)))
        if doubt.end_ns
        else ""
    )
    return say("⚠ METER{at}\n{doubt}", at=at, doubt=remedy_here(doubt.text))


def event_words(event: Event) -> str:
    """Write what was noted, or how a meter's readings stopped and came back; empty for others."""
    at = time_text(event.t_ns / 1e9, 60.0)
    if event.kind is EventKind.NOTE and event.value:
        return say("✎ NOTE  at {at}\n{event}", at=at, event=event.value)
    if event.kind is EventKind.LINK and event.value.startswith((LOST, SILENT, BACK)):
        return say(
            "⚠ METER  at {at}\n{source}: {event}",
            at=at,
            source=event.source,
            event=sentence(event.value),
        )
    return ""


class FindingsView(_Widget):
    """A list that follows the review.

    ``picked`` is emitted with the finding, doubt or event chosen.
    """

    picked = Signal(object)

    def __init__(self) -> None:
        super().__init__()
        self._findings: tuple[Finding, ...] = ()
        self._doubts: tuple[Doubt, ...] = ()
        self._notes: tuple[str, ...] = ()
        self._events: tuple[Event, ...] = ()
        self._verdict: RunVerdict | None = None
        self.title = QLabel(say("Findings"))
        self.title.setProperty("rank", "title")
        self.title.setWordWrap(True)
        # However much it counts, the trace beside it keeps its width.
        self.title.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Preferred)
        self.list = QListWidget()
        self.list.setAccessibleName(say("findings"))
        self.list.setWordWrap(True)
        self.list.setItemDelegate(WholeLines(self.list))
        self.list.setTextElideMode(Qt.TextElideMode.ElideNone)
        self.list.setVerticalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOn)
        self.list.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.list.setVerticalScrollMode(QAbstractItemView.ScrollMode.ScrollPerPixel)
        self.list.itemActivated.connect(self._on_pick)
        self.list.itemClicked.connect(self._on_pick)
        self.list.setFocusPolicy(Qt.FocusPolicy.TabFocus)
        self.unseen = QLabel("")
        self.unseen.setWordWrap(True)
        self.unseen.setProperty("rank", "second")
        layout = QVBoxLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.setSpacing(3)
        layout.addWidget(self.title)
        layout.addWidget(self.list, 1)
        layout.addWidget(self.unseen)

    def show_review(self, review: Review, events: Sequence[Event] = ()) -> None:
        """Show the findings of a review; the list is left alone when they are the same.

        The verdict of a run that has ended stands first, then what to measure next.

        Parameters
        ----------
        review : Review
        events : sequence of Event
            In time order; what was noted, and what became of the meters, is listed as well.
        """
        shortest = review.shortest_visible_dropout_s
        words = (
            ""
            if shortest is None
            else say(
                "Dropouts of {shortest} s or more can't be missed.",
                shortest=number(shortest, ".3g"),
            )
        )
        if words != self.unseen.text():
            self.unseen.setText(words)
        listed = {doubt.text for doubt in review.doubts}
        notes = tuple(note for note in review.notes if note not in listed)
        said = tuple(event for event in events if event_words(event))
        known = (self._findings, self._doubts, self._notes, self._events)
        same = (review.findings, review.doubts, notes, said) == known
        if same and review.verdict == self._verdict and self.list.count():
            return
        another = review.verdict != self._verdict
        self._findings, self._doubts, self._verdict = review.findings, review.doubts, review.verdict
        self._notes, self._events = notes, said
        self._list_all()
        if another:
            self.list.setCurrentRow(-1)
            self.list.scrollToTop()
        failed = sum(f.verdict is Verdict.FAIL for f in self._findings)
        parts = [say("{failed} failed", failed=failed)] if failed else []
        if self._doubts:
            parts.append(say("{doubts} ⚠ meter", doubts=len(self._doubts)))
        what = say("Findings") if self._verdict is None else outcome_words(self._verdict)
        self.title.setText(": ".join([what, ", ".join(parts)] if parts else [what]))

    def _list_all(self) -> None:
        """List all anew; where one looks, and what is chosen, stays."""
        bar, row = self.list.verticalScrollBar().value(), self.list.currentRow()
        self.list.clear()
        for text, one in self._told():
            item = QListWidgetItem(text)
            item.setData(Qt.ItemDataRole.UserRole, one)
            self.list.addItem(item)
        if 0 <= row < self.list.count():
            self.list.setCurrentRow(row)
        self.list.verticalScrollBar().setValue(bar)

    def _told(self) -> list[tuple[str, Finding | Doubt | Event | None]]:
        """Give all that is listed, in its order, each with what a click on it leads to."""
        verdict = self._verdict
        ranked = sorted(self._findings, key=_place)
        told: list[tuple[str, Finding | Doubt | Event | None]] = [
            *((finding_words(finding), finding) for finding in ranked if _place(finding) < 2),
            *((doubt_words(doubt), doubt) for doubt in self._doubts),
            *((finding_words(finding), finding) for finding in ranked if _place(finding) >= 2),
        ]
        if verdict is not None:
            told = [*((words, None) for words in verdict_words(verdict)), *told]
        if not told:
            told.append((say(NONE_YET), None))
        told += [(event_words(event), event) for event in self._events]
        # Behind the findings: however many notes there are, they push none out of sight.
        if verdict is not None:
            told += [(words, None) for words in unseen_words(verdict)]
        return [*told, *((f"{say(_NOTE)}{sentence(note)}", None) for note in self._notes)]

    def _on_pick(self, item: QListWidgetItem) -> None:
        finding = item.data(Qt.ItemDataRole.UserRole)
        if finding is not None:
            self.picked.emit(finding)


def _place(finding: Finding) -> int:
    """Tell where a finding is listed; those of one place stay in time order.

    0: failed; 1: in doubt; 2, behind the meters' doubts: currents of the steps; 3: all others.
    """
    if finding.verdict is Verdict.FAIL:
        return 0
    if finding.kind is FindingKind.STEP_CURRENT:
        return 2
    return 1 if finding.verdict is Verdict.CANT_TELL else 3
