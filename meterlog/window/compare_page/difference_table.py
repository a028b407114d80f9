"""DifferenceTable: what each speed drew before and after, how far apart, and what came of it."""

from __future__ import annotations

from PySide6.QtCore import QSignalBlocker, Qt, Signal
from PySide6.QtWidgets import QHeaderView, QLabel, QTableWidget, QTableWidgetItem, QVBoxLayout
from PySide6.QtWidgets import QWidget as _Widget

from meterlog.evidence.comparison_text import baseline_cells, step_cells
from meterlog.evidence.palette import DAY, Palette
from meterlog.model import Comparison, StepDifference
from meterlog.window.compare_page.told_first import result_words
from meterlog.window.numbers import in_numbers
from meterlog.window.sentences import sentence
from meterlog.window.words import later, say

_PAIR = (
    later("speed"), later("at V"), later("old A"), later("new A"), later("new − old A"),
    later("result"),
)  # fmt: skip
_GOOD = (
    later("speed"), later("at V"), later("good A"), later("within A"), later("new A"),
    later("result"),
)  # fmt: skip
_SHORT = {
    "✕": later("✕ fail"), "✓": later("✓ pass"), "≠": later("≠ differ"), "=": later("= none"),
    "?": later("? can't tell"),
}  # fmt: skip


class DifferenceTable(_Widget):
    """A table. ``chosen`` is emitted with the speed of the row gone to by hand."""

    chosen = Signal(int)

    def __init__(self) -> None:
        super().__init__()
        self._speeds: tuple[int, ...] = ()
        self._words: tuple[str, ...] = ()
        self._pixels = 12
        self.table = QTableWidget(0, len(_PAIR))
        self.table.setAccessibleName(say("difference at each speed"))
        self.table.setTabKeyNavigation(False)
        self.table.verticalHeader().hide()
        self.table.setEditTriggers(QTableWidget.EditTrigger.NoEditTriggers)
        self.table.setSelectionBehavior(QTableWidget.SelectionBehavior.SelectRows)
        self.table.setSelectionMode(QTableWidget.SelectionMode.SingleSelection)
        self.table.setShowGrid(False)
        self.table.setWordWrap(False)
        self.table.setHorizontalScrollMode(QTableWidget.ScrollMode.ScrollPerPixel)
        self.table.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.table.currentCellChanged.connect(self._on_row)
        head = self.table.horizontalHeader()
        head.setSectionResizeMode(QHeaderView.ResizeMode.ResizeToContents)
        head.setStretchLastSection(True)
        head.setHighlightSections(False)
        head.setDefaultAlignment(Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter)
        self.said = QLabel("")
        self.said.setWordWrap(True)
        self.said.setAccessibleName(say("what was found at the chosen speed"))
        layout = QVBoxLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.setSpacing(3)
        layout.addWidget(self.table)
        layout.addWidget(self.said)
        self.set_palette(DAY, 12)

    def set_palette(self, palette: Palette, pixels: int) -> None:
        """Take other colours, and rows for text of ``pixels`` height."""
        del palette
        self._pixels = pixels
        self.table.verticalHeader().setDefaultSectionSize(round(pixels * 1.9))
        self.table.horizontalHeader().setFixedHeight(round(pixels * 1.9))
        # Figures of two columns must not read as one.
        pad = round(pixels * 0.4)
        self.table.setStyleSheet(
            f"QTableWidget::item, QHeaderView::section {{ padding: 0 {pad}px; }}"
        )
        self._fit()

    def show_comparison(self, comparison: Comparison | None) -> None:
        """Show its speeds; None or a refused one: nothing."""
        steps = () if comparison is None else comparison.steps
        baseline = any(step.count for step in steps)
        heads = tuple(map(say, _GOOD if baseline else _PAIR))
        self._speeds = tuple(step.speed for step in steps)
        self._words = tuple(sentence(step.words) for step in steps)
        quiet = QSignalBlocker(self.table)
        self.table.setHorizontalHeaderLabels(list(heads))
        left = Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter
        last_head = QTableWidgetItem(heads[-1])
        last_head.setTextAlignment(left)
        self.table.setHorizontalHeaderItem(len(heads) - 1, last_head)
        self.table.setRowCount(len(steps))
        for row, step in enumerate(steps):
            for column, words in enumerate(_cells(comparison, step, baseline=baseline)):
                item = QTableWidgetItem(words)
                last = column == len(heads) - 1
                side = Qt.AlignmentFlag.AlignLeft if last else Qt.AlignmentFlag.AlignRight
                item.setTextAlignment(side | Qt.AlignmentFlag.AlignVCenter)
                if last and comparison is not None:
                    item.setToolTip(result_words(comparison, step))
                self.table.setItem(row, column, item)
        self.table.setCurrentCell(-1, -1)
        quiet.unblock()
        self.setVisible(bool(steps))
        self._fit()
        self._say(-1)

    def choose(self, speed: int | None) -> None:
        """Mark the row of a speed, and say its sentence; None: of none."""
        row = self._speeds.index(speed) if speed in self._speeds else -1
        with QSignalBlocker(self.table):
            self.table.setCurrentCell(row, 0 if row >= 0 else -1)
        self._say(row)

    @property
    def speeds(self) -> tuple[int, ...]:
        """The speeds shown, in order."""
        return self._speeds

    @property
    def chosen_speed(self) -> int | None:
        """The speed whose row is gone to; None for none."""
        row = self.table.currentRow()
        return self._speeds[row] if 0 <= row < len(self._speeds) else None

    def _fit(self) -> None:
        """Take just the height that the rows need, up to seven of them."""
        rows = min(max(len(self._speeds), 1), 7)
        around = 2 * (round(self._pixels * 0.2) + 3)
        self.table.setFixedHeight((rows + 1) * round(self._pixels * 1.9) + around)

    def _say(self, row: int) -> None:
        self.said.setText(self._words[row] if 0 <= row < len(self._words) else "")
        self.said.setVisible(bool(self.said.text()))

    def _on_row(self, row: int, *_: int) -> None:
        if 0 <= row < len(self._speeds):
            self._say(row)
            self.chosen.emit(self._speeds[row])


def _cells(
    comparison: Comparison | None, step: StepDifference, *, baseline: bool
) -> tuple[str, ...]:
    cells = baseline_cells(step) if baseline else step_cells(step)
    words = "" if comparison is None else result_words(comparison, step)
    return (*map(in_numbers, cells[:5]), say(_SHORT.get(words[:1], "")))
