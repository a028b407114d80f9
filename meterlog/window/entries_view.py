"""EntriesView: what was entered in a circuit check, the newest first."""

from __future__ import annotations

from datetime import datetime

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QListWidget, QListWidgetItem

from meterlog.evidence.circuit_marks import PointMark, marks_of, point_letters
from meterlog.model import Circuit, CircuitCheck, CircuitReading, CircuitSign, CircuitVerdict
from meterlog.model.circuit_words import label_of, state_words
from meterlog.window.numbers import in_numbers
from meterlog.window.sentences import sentence
from meterlog.window.whole_lines import WholeLines
from meterlog.window.words import say

_POINT = Qt.ItemDataRole.UserRole


class EntriesView(QListWidget):
    """Two lines an entry. ``picked`` is emitted with the test point of a reading."""

    picked = Signal(str)

    def __init__(self) -> None:
        super().__init__()
        self.setAccessibleName(say("entries of the check, newest first"))
        self.setWordWrap(True)
        self.setItemDelegate(WholeLines(self))
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self._shown: tuple[str, ...] = ()
        self.itemClicked.connect(self._on_item)
        self.itemActivated.connect(self._on_item)

    def show_check(
        self, circuit: Circuit, check: CircuitCheck, verdict: CircuitVerdict | None
    ) -> None:
        """Show all entries of a check."""
        entered: list[CircuitReading | CircuitSign] = [*check.readings, *check.signs]
        entries = sorted(entered, key=lambda one: one.id, reverse=True)
        letters = point_letters(circuit)
        lines: list[tuple[str, str]] = []
        for entry in entries:
            head = f"{entry.id}  {_clock(entry.t_utc)}"
            said = state_words(circuit, entry.state)
            if isinstance(entry, CircuitReading):
                mark = _mark(circuit, check, verdict, entry)
                beside = (
                    say(
                        " (should be {expected_words})",
                        expected_words=in_numbers(mark.expected_words),
                    )
                    if mark.expected_words
                    else ""
                )
                name = (
                    f"{letters.get(entry.point, '?')}  {sentence(label_of(circuit, entry.point))}"
                )
                words = f"{head}  {name}\n{in_numbers(mark.found_words)}{beside} · {sentence(said)}"
                lines.append((words, entry.point))
            else:
                sign = f"{say(entry.sign.value)}: {say(entry.value, 'sign')}"
                words = f"{head}  {sign} · {sentence(said)}"
                lines.append((words, ""))
        shown = tuple(words for words, _ in lines)
        if shown == self._shown:
            return
        self._shown = shown
        self.clear()
        for words, point in lines:
            item = QListWidgetItem(words)
            item.setData(_POINT, point)
            self.addItem(item)

    def _on_item(self, item: QListWidgetItem) -> None:
        point = str(item.data(_POINT) or "")
        if point:
            self.picked.emit(point)


def _mark(
    circuit: Circuit, check: CircuitCheck, verdict: CircuitVerdict | None, entry: CircuitReading
) -> PointMark:
    alone = CircuitCheck(check.circuit, readings=(entry,))
    return marks_of(circuit, alone, verdict, entry.state).points[entry.point]


def _clock(t_utc: str) -> str:
    try:
        return f"{datetime.fromisoformat(t_utc).astimezone():%H:%M:%S}"
    except ValueError:
        return ""
