"""Keys of the condition block: the numeric pad's arrows set all of it."""

from __future__ import annotations

from enum import StrEnum

from PySide6.QtCore import Qt
from PySide6.QtGui import QKeyEvent

from meterlog.window.words import later

_Key = Qt.Key


class ConditionAction(StrEnum):
    """What the technician wants of a line."""

    LINE_BACK = "the line before"
    LINE_ON = "the next line"
    CHOICE_BACK = "the choice before"
    CHOICE_ON = "the next choice"
    CLEAR = "nobody said"


SHOWN = later("↑ ↓ line · ← → choice · digits: number · Enter: it holds, next line · Del: not said")
"""The keys in words, where the block has the focus."""

_IN_CHOICES = {
    _Key.Key_Up: ConditionAction.LINE_BACK,
    _Key.Key_Down: ConditionAction.LINE_ON,
    _Key.Key_Enter: ConditionAction.LINE_ON,
    _Key.Key_Return: ConditionAction.LINE_ON,
    _Key.Key_Left: ConditionAction.CHOICE_BACK,
    _Key.Key_Right: ConditionAction.CHOICE_ON,
    _Key.Key_Delete: ConditionAction.CLEAR,
    _Key.Key_Backspace: ConditionAction.CLEAR,
}
_IN_NUMBERS = {
    _Key.Key_Up: ConditionAction.LINE_BACK,
    _Key.Key_Down: ConditionAction.LINE_ON,
}
"""Left, right and Del move about and delete in what is typed."""


def condition_action_of(event: QKeyEvent, *, number: bool) -> ConditionAction | None:
    """Give what a key press asks for in a line; None where it is the line's own affair."""
    held = event.modifiers() & ~Qt.KeyboardModifier.KeypadModifier
    if held != Qt.KeyboardModifier.NoModifier:
        return None
    return (_IN_NUMBERS if number else _IN_CHOICES).get(Qt.Key(event.key()))
