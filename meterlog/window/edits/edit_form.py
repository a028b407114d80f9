"""EditForm: the fields and buttons that an edit is made with."""

from __future__ import annotations

from PySide6.QtWidgets import (
    QGridLayout,
    QHBoxLayout,
    QLabel,
    QListWidget,
    QPushButton,
    QVBoxLayout,
    QWidget,
)

from meterlog.window.edits.marks_list import MarksList
from meterlog.window.edits.sample_field import PlainField, SampleField
from meterlog.window.edits.shared_room import SharedRoom
from meterlog.window.edits.withdraw_button import WithdrawButton
from meterlog.window.steady_boxes import SteadyComboBox
from meterlog.window.tab_order import order_tabs
from meterlog.window.whole_lines import WholeLines
from meterlog.window.words import say
from meterlog.window.wrapped_label import WrappedLabel


class EditForm(QWidget):
    """All controls, named and laid out; what they do is the panel's."""

    def __init__(self) -> None:
        super().__init__()
        self.marks = MarksList()
        self.speed = PlainField()
        self.at = SampleField()
        self.back = QPushButton("◀")
        self.on = QPushButton("▶")
        self.withdraw = WithdrawButton()
        self.limit = SteadyComboBox()
        self.value = PlainField()
        self.who = PlainField()
        self.why = PlainField()
        self.write = QPushButton(say("Write the edit"))
        self.drop = QPushButton(say("Drop it"))
        self.undo = QPushButton(say("Undo"))
        self.redo = QPushButton(say("Redo"))
        self.said = WrappedLabel()
        self.edits = QListWidget()
        self.told = SharedRoom(self.said, self.edits)
        self._name_all()
        self._lay_out()

    def _name_all(self) -> None:
        for widget, name in (
            (self.speed, say("the step is at speed")),
            (self.at, say("the mark stands at, in seconds; left and right: one sample")),
            (self.back, say("one sample earlier")),
            (self.on, say("one sample later")),
            (self.withdraw, say("withdraw the mark, or put it back")),
            (self.limit, say("limit")),
            (self.value, say("value of the limit, empty: none")),
            (self.who, say("who makes the edit")),
            (self.why, say("why")),
            (self.write, say("write the edit")),
            (self.drop, say("drop the edit that is not written")),
            (self.undo, say("undo: drop what is not written, else the newest edit by one on top")),
            (self.redo, say("redo what was undone")),
            (self.edits, say("edits on top of the recording")),
        ):
            widget.setAccessibleName(name)
        self.said.setAccessibleName(say("about the edit"))
        self.edits.setWordWrap(True)
        self.edits.setItemDelegate(WholeLines(self.edits))
        self.why.setMaxLength(400)
        self.who.setMaxLength(100)
        self.limit.setMinimumContentsLength(10)
        self.limit.setSizeAdjustPolicy(
            SteadyComboBox.SizeAdjustPolicy.AdjustToMinimumContentsLengthWithIcon
        )

    def _lay_out(self) -> None:
        page = QVBoxLayout(self)
        page.setContentsMargins(0, 0, 0, 0)
        page.setSpacing(3)
        page.addWidget(_title(say("Edits on top of the recording")))
        page.addWidget(self.marks, 3)
        grid = QGridLayout()
        grid.setHorizontalSpacing(4)
        grid.setVerticalSpacing(3)
        move = QHBoxLayout()
        move.setSpacing(3)
        for widget, share in ((self.at, 1), (self.back, 0), (self.on, 0)):
            move.addWidget(widget, share)
        step = QHBoxLayout()
        step.setSpacing(3)
        step.addWidget(self.speed, 1)
        step.addWidget(self.withdraw)
        limit = QHBoxLayout()
        limit.setSpacing(3)
        limit.addWidget(self.limit, 2)
        limit.addWidget(self.value, 1)
        for row, words in enumerate(
            (say("at, s"), say("speed"), say("limit"), say("who"), say("why"))
        ):
            grid.addWidget(QLabel(words), row, 0)
        for row, layout in enumerate((move, step, limit)):
            grid.addLayout(layout, row, 1)
        grid.addWidget(self.who, 3, 1)
        grid.addWidget(self.why, 4, 1)
        page.addLayout(grid)
        buttons = QHBoxLayout()
        buttons.setSpacing(3)
        for button in (self.write, self.drop, self.undo, self.redo):
            buttons.addWidget(button)
        page.addLayout(buttons)
        page.addWidget(self.told, 2)
        order_tabs(self.in_order())

    def in_order(self) -> tuple[QWidget, ...]:
        """Give all controls as the eye goes."""
        return (
            self.marks, self.at, self.back, self.on, self.speed, self.withdraw, self.limit,
            self.value, self.who, self.why, self.write, self.drop, self.undo, self.redo, self.edits,
        )  # fmt: skip


def _title(words: str) -> QLabel:
    title = QLabel(words)
    title.setProperty("rank", "title")
    return title
