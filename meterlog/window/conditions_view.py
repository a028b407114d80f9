"""ConditionsView: under what the next run is made, each condition one line set with a few keys."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import QEvent, Qt, Signal
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QGridLayout, QLabel, QVBoxLayout, QWidget

from meterlog.model import Conditions
from meterlog.model.condition_fields import CONDITION_FIELDS, condition_text, with_condition
from meterlog.window.condition_line import ChoiceLine, NumberLine
from meterlog.window.conditions_keys import SHOWN, ConditionAction
from meterlog.window.last_conditions import LastConditions
from meterlog.window.one_line import OneLine
from meterlog.window.words import say

_NARROW_EM = 44
"""Below this width, in heights of the text, the lines stand in one column."""


class ConditionsView(QWidget):
    """The condition block. ``changed`` is emitted with the Conditions that count.

    Words are remembered and count again the next time; numbers are shown as those of the last
    time and count once they are confirmed.

    Parameters
    ----------
    last : LastConditions or None
        None: those in the user's settings folder.
    """

    changed = Signal(object)

    def __init__(self, last: LastConditions | None = None) -> None:
        super().__init__()
        self._last = last or LastConditions()
        self.lines: dict[str, ChoiceLine | NumberLine] = {}
        self._labels: dict[str, QLabel] = {}
        self._kept = True
        self._columns = 0
        self._grid = QGridLayout()
        self._grid.setContentsMargins(0, 0, 0, 0)
        self._grid.setHorizontalSpacing(6)
        self._grid.setVerticalSpacing(3)
        self._hint = keys = QLabel(say(SHOWN))
        keys.setProperty("rank", "second")
        keys.setWordWrap(True)
        self._line = OneLine("caution", self)
        policy = keys.sizePolicy()
        policy.setRetainSizeWhenHidden(True)
        keys.setSizePolicy(policy)
        wrong = QVBoxLayout()
        wrong.setSpacing(3)
        page = QVBoxLayout(self)
        page.setContentsMargins(0, 0, 0, 0)
        page.setSpacing(3)
        page.addLayout(self._grid)
        for field in CONDITION_FIELDS:
            line = NumberLine(field) if field.is_number else ChoiceLine(field)
            line.changed.connect(lambda _: self._on_change())
            line.asked.connect(lambda action, line=line: self._on_asked(line, action))
            self.lines[field.name] = line
            self._labels[field.name] = QLabel(say(field.label))
            if isinstance(line, NumberLine):
                wrong.addWidget(line.trouble)
                line.told.connect(self._on_told)
        # In the same place: what is wrong takes that of the keys, and moves nothing below.
        foot = QGridLayout()
        foot.addWidget(keys, 0, 0, Qt.AlignmentFlag.AlignTop)
        foot.addLayout(wrong, 0, 0, Qt.AlignmentFlag.AlignTop)
        page.addLayout(foot)
        self._show(self._last.load(), counts=False)
        self._lay_out(1)

    @property
    def conditions(self) -> Conditions:
        """What counts now."""
        now = Conditions()
        for line in self.lines.values():
            text = line.text if isinstance(line, NumberLine) else line.box.currentData()
            now = with_condition(now, line.field, str(text or ""))
        return now

    def _shown(self) -> Conditions:
        """Give what is shown, whether it counts or not: that is kept for the next time."""
        shown = self.conditions
        for line in self.lines.values():
            if isinstance(line, NumberLine):
                shown = with_condition(shown, line.field, line.kept_text)
        return shown

    def _show(self, conditions: Conditions, *, counts: bool) -> None:
        for line in self.lines.values():
            text = condition_text(conditions, line.field)
            if isinstance(line, NumberLine):
                line.show_text(text, counts=counts)
            else:
                line.show_text(text)

    def settle(self) -> tuple[QWidget, str] | None:
        """Take what is still being typed; give the first line that can't be taken, and why."""
        numbers = [line for line in self.lines.values() if isinstance(line, NumberLine)]
        wrong = [(line, why) for line in numbers if (why := line.settle())]
        return wrong[0] if wrong else None

    def let_age(self) -> None:
        """Take the numbers for those of the last time: a run has begun, and they move on."""
        for line in self.lines.values():
            if isinstance(line, NumberLine):
                line.let_age()
        self.changed.emit(self.conditions)

    def _on_told(self) -> None:
        """Show the keys where nothing is wrong."""
        numbers = (line for line in self.lines.values() if isinstance(line, NumberLine))
        self._hint.setVisible(not any(line.trouble.text() for line in numbers))

    def _on_change(self) -> None:
        self._last.keep(self._shown())
        self.changed.emit(self.conditions)

    def _on_asked(self, line: QWidget, action: ConditionAction) -> None:
        """Go to the line above or below; beyond the ends the focus stays."""
        lines = list(self.lines.values())
        at = lines.index(line) + (1 if action is ConditionAction.LINE_ON else -1)  # type: ignore[arg-type]
        if 0 <= at < len(lines):
            lines[at].setFocus(Qt.FocusReason.TabFocusReason)

    def in_order(self) -> Sequence[QWidget]:
        """Give all controls as the eye goes."""
        return [widget for line in self.lines.values() for widget in line.in_order()]

    def changeEvent(self, event: QEvent) -> None:
        """Keep as much room for the keys as a line about what is wrong takes in their place."""
        super().changeEvent(event)
        if event.type() in {QEvent.Type.FontChange, QEvent.Type.StyleChange}:
            self._hint.setMinimumHeight(self._line.pixels)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Stand in two columns where there is room for them."""
        super().resizeEvent(event)
        self._lay_out(2 if self.width() >= _NARROW_EM * self.fontMetrics().height() / 1.3 else 1)

    def _lay_out(self, columns: int) -> None:
        if columns == self._columns:
            return
        self._columns = columns
        per_column = -(-len(self.lines) // columns)
        for at, (name, line) in enumerate(self.lines.items()):
            column, row = divmod(at, per_column)
            self._grid.addWidget(self._labels[name], row, 2 * column)
            self._grid.addWidget(line, row, 2 * column + 1)
        for column in range(2):
            self._grid.setColumnStretch(2 * column + 1, 1 if column < columns else 0)
