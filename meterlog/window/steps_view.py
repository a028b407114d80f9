"""StepsView: the figures of each stretch at one commanded speed."""

from __future__ import annotations

from PySide6.QtCore import QEvent, Qt
from PySide6.QtWidgets import (
    QHeaderView,
    QLabel,
    QSizePolicy,
    QTableWidget,
    QTableWidgetItem,
    QVBoxLayout,
)
from PySide6.QtWidgets import QWidget as _Widget

from meterlog.evidence.ticks import time_text
from meterlog.model import Step
from meterlog.window.numbers import in_numbers
from meterlog.window.sentences import sentence
from meterlog.window.words import later, say

HEADS = (later("step"), later("from"), "V", "A", "±A", later("max A"))
_TITLE = later("Speed steps, steady part")
_FOUND = later("Steps found in the current; 2?: speed 2 proposed")
_TAKEN = later("Steps found in the current, taken as commanded")


def _number(value: float | None, places: int = 2) -> str:
    if value is None:
        return "—"
    text = f"{value:.{places}f}"
    return in_numbers(text.removeprefix("-") if float(text) == 0.0 else text)


def _speed(step: Step) -> str:
    """Write the commanded speed; of a found one the proposal, with a question mark."""
    if step.speed is not None:
        return str(step.speed)
    return "—" if step.proposed_speed is None else f"{step.proposed_speed}?"


def step_cells(step: Step) -> tuple[str, ...]:
    """Write a step as the table shows it: steady voltage, current, its uncertainty and maximum."""
    return (
        _speed(step),
        in_numbers(time_text(step.start_ns / 1e9, 60.0)),
        _number(step.steady_mean_v),
        _number(step.steady_mean_a),
        _number(step.steady_expanded_a),
        _number(step.steady_max_a, 1),
    )


def _title(steps: tuple[Step, ...]) -> str:
    if not any(step.found for step in steps):
        return say(_TITLE)
    return say(_FOUND) if any(step.speed is None for step in steps) else say(_TAKEN)


def _lacking(steps: tuple[Step, ...]) -> str:
    """Say what the uncertainties shown do not hold; empty for nothing."""
    told = [step.current.lacking for step in steps if step.current and step.current.sources]
    each = dict.fromkeys(words for one in told for words in one.split("; ") if words)
    return say("±A is a lower bound: {lacking}", lacking=sentence("; ".join(each))) if each else ""


class _StepsTable(QTableWidget):
    """A table whose rows are as high as their text, also once the text has grown."""

    def changeEvent(self, event: QEvent) -> None:
        """Fit the rows to another height of the text: the steps themselves stay as they are."""
        super().changeEvent(event)
        if event.type() in {QEvent.Type.FontChange, QEvent.Type.StyleChange}:
            self.resizeRowsToContents()


class StepsView(_Widget):
    """A table that follows the review."""

    def __init__(self) -> None:
        super().__init__()
        self._steps: tuple[Step, ...] | None = None
        self._cells: tuple[tuple[str, ...], ...] = ()
        self.title = QLabel(say(_TITLE))
        self.title.setProperty("rank", "second")
        self.title.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Preferred)
        self.table = _StepsTable(0, len(HEADS))
        self.table.setAccessibleName(say("figures of each speed step"))
        self.table.setTabKeyNavigation(False)
        self.table.setHorizontalHeaderLabels(list(map(say, HEADS)))
        self.table.verticalHeader().hide()
        self.table.setEditTriggers(QTableWidget.EditTrigger.NoEditTriggers)
        self.table.setShowGrid(False)
        self.table.setFocusPolicy(Qt.FocusPolicy.TabFocus)
        self.table.horizontalHeader().setSectionResizeMode(QHeaderView.ResizeMode.Stretch)
        self.lacking = QLabel("")
        self.lacking.setWordWrap(True)
        self.lacking.hide()
        layout = QVBoxLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.setSpacing(3)
        layout.addWidget(self.title)
        layout.addWidget(self.table, 1)
        layout.addWidget(self.lacking)

    def show_steps(self, steps: tuple[Step, ...]) -> None:
        """Show these steps, the newest in sight."""
        if steps == self._steps:
            return
        self._steps = steps
        self.title.setText(_title(steps))
        lacking = _lacking(steps)
        self.lacking.setText(lacking)
        self.lacking.setVisible(bool(lacking))
        cells, before = tuple(map(step_cells, steps)), self._cells
        self._cells = cells
        self.table.setRowCount(len(cells))
        # While it records only the last one changes: hundreds would take too long each time.
        for row, words in enumerate(cells):
            if row >= len(before) or words != before[row]:
                self._fill_row(row, words)
                self.table.resizeRowToContents(row)
        self.table.scrollToBottom()

    def _fill_row(self, row: int, words: tuple[str, ...]) -> None:
        for column, text in enumerate(words):
            item = QTableWidgetItem(text)
            item.setTextAlignment(Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter)
            self.table.setItem(row, column, item)
