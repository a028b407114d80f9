"""Condition lines: one condition each, chosen from words or typed as a number."""

from __future__ import annotations

from PySide6.QtCore import QSignalBlocker, Qt, Signal
from PySide6.QtGui import QFocusEvent, QKeyEvent
from PySide6.QtWidgets import QHBoxLayout, QLabel, QLineEdit, QPushButton, QWidget

from meterlog.model import Conditions
from meterlog.model.condition_fields import ConditionField, condition_text, with_condition
from meterlog.model.errors import UsageError
from meterlog.window.conditions_keys import ConditionAction, condition_action_of
from meterlog.window.numbers import in_numbers, with_points
from meterlog.window.own_enter import keep_enter
from meterlog.window.sentences import sentence
from meterlog.window.steady_boxes import SteadyComboBox
from meterlog.window.words import later, say

NOT_SAID = later("not said")
_AS_LAST = later("as last time")


class ChoiceBox(SteadyComboBox):
    """A box whose arrow keys go on to the next choice or line. ``asked`` tells of other lines."""

    asked = Signal(object)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Go to another choice, or tell that another line is asked for."""
        action = condition_action_of(event, number=False)
        step = {ConditionAction.CHOICE_BACK: -1, ConditionAction.CHOICE_ON: 1}.get(
            action or ConditionAction.LINE_ON
        )
        if action is None:
            super().keyPressEvent(event)
        elif step is not None:
            self.setCurrentIndex((self.currentIndex() + step) % self.count())
        elif action is ConditionAction.CLEAR:
            self.setCurrentIndex(0)
        else:
            self.asked.emit(action)


class ChoiceLine(QWidget):
    """A condition in words. ``changed`` is emitted with its text, empty for not said."""

    changed = Signal(str)
    asked = Signal(object)

    def __init__(self, field: ConditionField) -> None:
        super().__init__()
        self.field = field
        self.box = ChoiceBox()
        self.box.setAccessibleName(say(field.label))
        self.box.addItem(say(NOT_SAID), "")
        for words in field.choices:
            self.box.addItem(say(words, "condition"), words)
        self.box.asked.connect(self.asked)
        keep_enter(self.box)
        self.box.currentIndexChanged.connect(lambda at: self.changed.emit(self._text(at)))
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.addWidget(self.box, 1)
        self.setFocusProxy(self.box)

    def _text(self, at: int) -> str:
        return str(self.box.itemData(at) or "")

    def show_text(self, text: str) -> None:
        """Show a choice; one that is not of the list is added to it."""
        with QSignalBlocker(self.box):
            if self.box.findData(text) < 0:
                self.box.addItem(say(text, "condition"), text)
            self.box.setCurrentIndex(self.box.findData(text))

    def in_order(self) -> list[QWidget]:
        """Give the controls as the eye goes."""
        return [self.box]


class NumberField(QLineEdit):
    """A number whose up and down keys go to other lines; Esc gives back what stood there."""

    asked = Signal(object)
    dropped = Signal()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Leave the line with an arrow, the field with Esc."""
        action = condition_action_of(event, number=True)
        if action is not None:
            self.asked.emit(action)
        elif event.key() == Qt.Key.Key_Escape:
            self.dropped.emit()
        else:
            super().keyPressEvent(event)
            # A line edit passes Enter on to what it stands in, where it would start a recording.
            event.accept()

    def focusInEvent(self, event: QFocusEvent) -> None:
        """Mark what stands there, so that typing takes its place."""
        super().focusInEvent(event)
        self.selectAll()


class NumberLine(QWidget):
    """A condition that is measured.

    What is kept from the last time is shown and does not count until it is confirmed: with Enter,
    with its button, or by another number. ``changed`` is emitted with the text that counts,
    ``told`` when something is wrong with what was typed, or no more.
    """

    changed = Signal(str)
    asked = Signal(object)
    told = Signal()

    def __init__(self, field: ConditionField) -> None:
        super().__init__()
        self.field = field
        self.edit = NumberField()
        self.edit.setAccessibleName(
            say("{label}, in {unit}", label=say(field.label), unit=say(field.unit))
        )
        self.edit.setMaxLength(9)
        self.edit.setPlaceholderText(say(NOT_SAID))
        self.confirm = QPushButton("")
        self.confirm.setAccessibleName(say("{label} is still as last time", label=say(field.label)))
        # Hidden it keeps its place, so that a click where it was hits nothing else.
        policy = self.confirm.sizePolicy()
        policy.setRetainSizeWhenHidden(True)
        self.confirm.setSizePolicy(policy)
        keep_enter(self.edit, self.confirm)
        self.trouble = QLabel("")
        self.trouble.setProperty("rank", "caution")
        self.trouble.setWordWrap(True)
        self.trouble.hide()
        self._good = ""
        self._counts = True
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(4)
        row.addWidget(self.edit, 1)
        row.addWidget(QLabel(say(field.unit)))
        row.addWidget(self.confirm)
        self.setFocusProxy(self.edit)
        self.edit.asked.connect(self._leave)
        self.edit.dropped.connect(self._drop)
        self.edit.returnPressed.connect(self._on_enter)
        self.edit.editingFinished.connect(self._on_finished)
        self.confirm.clicked.connect(self._take)
        self._show_state()

    def show_text(self, text: str, *, counts: bool) -> None:
        """Show a number; it counts only where it is of now."""
        self._good, self._counts = text, counts or not text
        self.edit.setText(in_numbers(text))
        self._show_state()

    @property
    def text(self) -> str:
        """What counts; empty where nobody said, or only the last time."""
        return self._good if self._counts else ""

    @property
    def kept_text(self) -> str:
        """What is shown, whether it counts or not."""
        return self._good

    def settle(self) -> str:
        """Take what is still being typed; give what is wrong with it, empty where nothing is."""
        self._on_finished()
        return self.trouble.text()

    def let_age(self) -> None:
        """Take what stands there for one of the last time."""
        if self._good:
            self._counts = False
            self._show_state()

    def _on_enter(self) -> None:
        if self._take():
            self.asked.emit(ConditionAction.LINE_ON)

    def _on_finished(self) -> None:
        if with_points(self.edit.text().strip()) != self._good:
            self._take()
        else:
            self._say("")  # what could not be is gone again

    def _leave(self, action: ConditionAction) -> None:
        self._on_finished()
        self.asked.emit(action)

    def _drop(self) -> None:
        self.edit.setText(in_numbers(self._good))
        self._say("")
        self.edit.clearFocus()

    def _take(self) -> bool:
        """Take what stands there as of now; False, with the reason, where it can't be."""
        text = self.edit.text().strip()
        try:
            stated = with_condition(Conditions(), self.field, text)
        except UsageError as error:
            self._say(sentence(str(error)))
            return False
        self._say("")
        self._good, self._counts = condition_text(stated, self.field), True
        self.edit.setText(in_numbers(self._good))
        self._show_state()
        self.changed.emit(self._good)
        return True

    def _say(self, words: str) -> None:
        self.trouble.setText(words)
        self.trouble.setVisible(bool(words))
        self.told.emit()

    def _show_state(self) -> None:
        self.confirm.setText(f"? {say(_AS_LAST)}")
        self.confirm.setVisible(not self._counts)
        # Struck through as well as named: what does not count must not look as if it did.
        font = self.edit.font()
        font.setItalic(not self._counts)
        self.edit.setFont(font)

    def in_order(self) -> list[QWidget]:
        """Give the controls as the eye goes."""
        return [self.edit, self.confirm]
