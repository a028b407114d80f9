"""FindingsView: what has been found, in plain sentences, worst news first to see."""

from __future__ import annotations

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import (
    QAbstractItemView,
    QLabel,
    QListView,
    QListWidget,
    QListWidgetItem,
    QVBoxLayout,
)
from PySide6.QtWidgets import QWidget as _Widget

from meterlog.evidence.ticks import time_text
from meterlog.model import Doubt, Finding, FindingKind, Review, Verdict

_SIGNS = {Verdict.FAIL: "✕ FAIL", Verdict.PASS: "✓ PASS", Verdict.CANT_TELL: "? CAN'T TELL"}
NONE_YET = "Nothing found yet."


def finding_words(finding: Finding) -> str:
    """Write a finding as the list shows it: verdict in words and sign, time, statement."""
    at = time_text(finding.start_ns / 1e9, 60.0)
    return f"{_SIGNS[finding.verdict]}  at {at}\n{finding.statement}"


def doubt_words(doubt: Doubt) -> str:
    """Write a doubt about a meter as the list shows it."""
    at = f"  at {time_text(doubt.start_ns / 1e9, 60.0)}" if doubt.end_ns else ""
    return f"⚠ METER{at}\n{doubt.text}"


class FindingsView(_Widget):
    """A list that follows the review. ``picked`` is emitted with the finding or doubt chosen."""

    picked = Signal(object)

    def __init__(self) -> None:
        super().__init__()
        self._findings: tuple[Finding, ...] = ()
        self._doubts: tuple[Doubt, ...] = ()
        self.title = QLabel("Findings")
        self.title.setProperty("rank", "title")
        self.list = QListWidget()
        self.list.setAccessibleName("findings")
        self.list.setWordWrap(True)
        self.list.setTextElideMode(Qt.TextElideMode.ElideNone)
        self.list.setResizeMode(QListView.ResizeMode.Adjust)
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

    def show_review(self, review: Review) -> None:
        """Show the findings of a review; the list is left alone when they are the same."""
        shortest = review.shortest_visible_dropout_s
        words = "" if shortest is None else f"Dropouts of {shortest:.3g} s or more can't be missed."
        listed = {doubt.text for doubt in review.doubts}
        rest = [note for note in review.notes if note not in listed]
        notes = "\n".join([words, *rest]).strip()
        if notes != self.unseen.text():
            self.unseen.setText(notes)
        known = (self._findings, self._doubts)
        if (review.findings, review.doubts) == known and self.list.count():
            return
        self._findings, self._doubts = review.findings, review.doubts
        bar = self.list.verticalScrollBar().value()
        self.list.clear()
        steps = [f for f in self._findings if f.kind is FindingKind.STEP_CURRENT]
        faults = [f for f in self._findings if f.kind is not FindingKind.STEP_CURRENT]
        told = [
            *((finding_words(finding), finding) for finding in faults),
            *((doubt_words(doubt), doubt) for doubt in self._doubts),
            *((finding_words(finding), finding) for finding in steps),
        ]
        for text, one in told:
            item = QListWidgetItem(text)
            item.setData(Qt.ItemDataRole.UserRole, one)
            self.list.addItem(item)
        if not told:
            self.list.addItem(QListWidgetItem(NONE_YET))
        self.list.verticalScrollBar().setValue(bar)
        failed = sum(f.verdict is Verdict.FAIL for f in self._findings)
        parts = [f"{failed} failed"] if failed else []
        if self._doubts:
            parts.append(f"{len(self._doubts)} about the meters")
        self.title.setText(f"Findings: {', '.join(parts)}" if parts else "Findings")

    def _on_pick(self, item: QListWidgetItem) -> None:
        finding = item.data(Qt.ItemDataRole.UserRole)
        if finding is not None:
            self.picked.emit(finding)
