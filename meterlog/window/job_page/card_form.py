"""CardForm: all fields of the card, group by group, in as many columns as there is room for."""

from __future__ import annotations

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QFrame, QGridLayout, QLabel, QScrollArea, QVBoxLayout, QWidget

from meterlog.model.job_card import JobCard, value_of
from meterlog.window.job_page.card_groups import (
    GROUPS,
    HINTS,
    LONG,
    CardGroup,
    doubts_by_field,
    field_label,
    field_words,
)
from meterlog.window.job_page.entry_box import EntryBox
from meterlog.window.one_line import OneLine
from meterlog.window.sentences import sentence
from meterlog.window.words import say

_COLUMN = 19
"""Width that a field needs at least, in heights of text."""
_MOST = 4
_MOST_LINES = {"vin": 2}
"""Lines that what is told of a field takes, where it is more than one."""


class _Room(QWidget):
    """Stands under a row of fields; its lines are kept free, so that a doubt moves no field."""

    def __init__(self) -> None:
        super().__init__()
        self.setProperty("rank", "room")
        self.lines = 1
        self._column = QVBoxLayout(self)
        self._column.setContentsMargins(0, 0, 0, 0)
        self._column.setSpacing(1)

    def take(self, doubt: QLabel, lines: int) -> None:
        """Take what is told of one field, which may need so many lines."""
        self._column.addWidget(doubt)
        self.lines = max(self.lines, lines)


class CardForm(QScrollArea):
    """``entered`` is emitted with the key of a field and its text."""

    entered = Signal(str, str)

    def __init__(self) -> None:
        super().__init__()
        self.boxes: dict[str, EntryBox] = {}
        self._grids: list[tuple[CardGroup, QGridLayout]] = []
        self._under: list[_Room] = []
        self._columns = 0
        self._pixels = 12
        self._inside = QWidget()
        self._line = OneLine("caution", self._inside)
        self._column = QVBoxLayout(self._inside)
        self._column.setContentsMargins(0, 0, 4, 0)
        self._column.setSpacing(5)
        for group in GROUPS:
            self._column.addWidget(self._panel(group))
        self._column.addStretch(1)
        self.setWidget(self._inside)
        self.setWidgetResizable(True)
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self._lay(2)

    def _panel(self, group: CardGroup) -> QFrame:
        panel = QFrame()
        panel.setProperty("rank", "panel")
        title = QLabel(say(group.title))
        title.setProperty("rank", "title")
        for key in group.keys:
            box = EntryBox(
                say(field_label(group, key)),
                field_words(key),
                say(HINTS.get(key, "")),
                long=key in LONG,
            )
            box.entered.connect(lambda text, key=key: self.entered.emit(key, text))
            self.boxes[key] = box
        grid = QGridLayout()
        grid.setHorizontalSpacing(8)
        grid.setVerticalSpacing(3)
        self._grids.append((group, grid))
        column = QVBoxLayout(panel)
        column.setContentsMargins(7, 4, 7, 6)
        column.setSpacing(2)
        column.addWidget(title)
        column.addLayout(grid)
        return panel

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Take as many columns as fit."""
        super().resizeEvent(event)
        room = self.viewport().width() // (_COLUMN * self._pixels)
        self._lay(max(1, min(room, _MOST)))

    def _lay(self, columns: int) -> None:
        if columns == self._columns:
            return
        self._columns = columns
        before, self._under = self._under, []
        for group, grid in self._grids:
            row, column = -2, columns
            for key in group.keys:
                box, wide = self.boxes[key], columns if key in LONG else 1
                if column + wide > columns:
                    row, column = row + 2, 0
                    self._under.append(_Room())
                    grid.addWidget(self._under[-1], row + 1, 0, 1, columns)
                grid.addWidget(box, row, column, 1, wide, Qt.AlignmentFlag.AlignTop)
                self._under[-1].take(box.doubt, _MOST_LINES.get(key, 1))
                column += wide
            for number in range(_MOST):
                grid.setColumnStretch(number, 1 if number < columns else 0)
        self._keep_room()
        for old in before:  # empty now: its doubts stand elsewhere
            old.deleteLater()

    def _keep_room(self) -> None:
        """Keep the lines under each row free: padding is there once however many they are."""
        more = self._line.fontMetrics().lineSpacing()
        for under in self._under:
            under.setMinimumHeight(self._line.pixels + (under.lines - 1) * more)

    def set_text_height(self, pixels: int) -> None:
        """Take text of another height."""
        self._pixels = pixels
        self._keep_room()
        for box in self.boxes.values():
            box.set_line_height(pixels)
        room = self.viewport().width() // (_COLUMN * pixels)
        self._lay(max(1, min(room, _MOST)))

    def show_card(self, card: JobCard, *, other: bool = False) -> None:
        """Show what a card says, and beside its fields what looks wrong.

        Parameters
        ----------
        card : JobCard
        other : bool
            It is another job's card: what was being typed does not belong to it.
        """
        doubts = doubts_by_field(card)
        for key, box in self.boxes.items():
            show = box.take_over if other else box.show_kept
            show(value_of(card, key))
            box.tell("\n".join(map(sentence, doubts.get(key, ()))))

    def refuse(self, key: str, words: str) -> None:
        """Say beside a field why its text could not be kept."""
        self.boxes[key].tell(words, "alert")

    def go_to(self, key: str) -> None:
        """Put the cursor into a field, and the field into sight."""
        box = self.boxes[key]
        box.edit.setFocus(Qt.FocusReason.TabFocusReason)
        self.ensureWidgetVisible(box, 0, 20)

    def commit(self) -> None:
        """Keep what is being typed."""
        for box in self.boxes.values():
            box.commit()

    @property
    def waiting(self) -> tuple[str, ...]:
        """Keys of the fields that hold something that is not kept."""
        return tuple(key for key, box in self.boxes.items() if box.waiting)

    def in_order(self) -> tuple[QWidget, ...]:
        """Give what Tab goes through, in the order in which it is read."""
        return tuple(box.edit for box in self.boxes.values())
