"""Keys: what each key does, as data. A numeric pad or a foot pedal can do all that matters."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from PySide6.QtCore import Qt
from PySide6.QtGui import QKeyEvent

from meterlog.window.named_keys import pressed_by

_Key = Qt.Key


class Action(StrEnum):
    """What the technician wants."""

    START_STOP = "start or stop"
    SPEED = "speed"
    FASTER = "next speed"
    SLOWER = "speed before"
    TAP = "tap"
    WIGGLE = "wiggle"
    NOTE = "note"
    MARK = "mark"
    ZERO = "zero"
    TYPE_READING = "type a reading"
    FOLLOW = "follow"
    EARLIER = "earlier"
    LATER = "later"
    CLOSER = "closer"
    WIDER = "wider"
    ASK = "ask ports"
    OPEN = "open"
    METERS = "meters"
    CIRCUIT = "circuit"
    LOOKS = "looks"
    KEYS = "keys"
    SOUND = "sound"
    FOLLOWED = "tone follows"
    LOUDER = "louder"
    SOFTER = "softer"
    WHOLE_SCREEN = "whole screen"
    GUIDE = "guide"
    FOUND_STEPS = "found steps"
    PART = "part"
    STRETCH = "measure a stretch"
    SECOND = "second run"
    EDITS = "edits on top"
    UNDO = "undo"
    JOB = "job"
    COMPARE = "compare"
    CLAIM = "claim"
    RECORDINGS = "recordings"


@dataclass(frozen=True, slots=True)
class Binding:
    """Keys of one action, as they read on the key map.

    Attributes
    ----------
    action : Action
    keys : tuple of Qt.Key
    shown : str
        The keys in words.
    words : str
        What they do.
    before : str
        What they do on the Meters page, where it is another thing to say.
    held : str
        Another way, of keys held together: it acts on every page, also while typing.
    """

    action: Action
    keys: tuple[Qt.Key, ...]
    shown: str
    words: str
    before: str = ""
    held: str = ""


DIGITS = (
    _Key.Key_0,
    _Key.Key_1,
    _Key.Key_2,
    _Key.Key_3,
    _Key.Key_4,
    _Key.Key_5,
    _Key.Key_6,
    _Key.Key_7,
    _Key.Key_8,
    _Key.Key_9,
)

BINDINGS = (
    Binding(
        Action.START_STOP,
        (_Key.Key_Enter, _Key.Key_Return, _Key.Key_S),
        "Enter / S",
        "start; twice: stop",
        "connect and record",
    ),
    Binding(Action.SPEED, DIGITS, "0 – 9 Home End", "speed"),
    Binding(Action.FASTER, (_Key.Key_Home,), "", ""),
    Binding(Action.SLOWER, (_Key.Key_End,), "", ""),
    Binding(Action.TAP, (_Key.Key_Plus, _Key.Key_T, _Key.Key_Space), "+ / T / Space", "tap"),
    Binding(Action.WIGGLE, (_Key.Key_W,), "W", "leads moved"),
    Binding(Action.ZERO, (_Key.Key_Z,), "Z", "zero clamp"),
    Binding(Action.NOTE, (_Key.Key_Minus, _Key.Key_N), "− / N", "note"),
    Binding(Action.MARK, (_Key.Key_H,), "H", "mark"),
    Binding(Action.TYPE_READING, (_Key.Key_Equal, _Key.Key_R), "= / R", "type"),
    Binding(
        Action.FOLLOW,
        (_Key.Key_Period, _Key.Key_Comma, _Key.Key_F),
        ". / F",
        "follow",
    ),
    Binding(Action.EARLIER, (_Key.Key_Left,), "← →", "move"),
    Binding(Action.LATER, (_Key.Key_Right,), "", ""),
    Binding(Action.CLOSER, (_Key.Key_Up,), "↑ ↓", "zoom"),
    Binding(Action.WIDER, (_Key.Key_Down,), "", ""),
    Binding(Action.STRETCH, (_Key.Key_X,), "X ⇧←→↑↓", "measure"),
    Binding(Action.SECOND, (_Key.Key_I,), "I", "second run"),
    Binding(Action.EDITS, (_Key.Key_Q,), "Q", "edits"),
    Binding(Action.UNDO, (_Key.Key_Backspace, _Key.Key_U), "⌫ / U", "undo mark"),
    Binding(Action.PART, (_Key.Key_P,), "P", "old, new part"),
    Binding(Action.GUIDE, (_Key.Key_Slash, _Key.Key_G), "", ""),
    Binding(Action.FOUND_STEPS, (_Key.Key_C,), "C", "found speeds: take, undo"),
    Binding(Action.ASK, (_Key.Key_A,), "A", "ask the ticked ports"),
    Binding(Action.OPEN, (_Key.Key_O,), "", ""),
    Binding(Action.JOB, (_Key.Key_J,), "J", "job"),
    Binding(Action.METERS, (_Key.Key_M,), "M", "meters", "trace"),
    Binding(Action.CIRCUIT, (_Key.Key_E,), "E", "circuit"),
    Binding(Action.COMPARE, (_Key.Key_B,), "B", "before / after"),
    Binding(Action.CLAIM, (_Key.Key_K,), "K", "claim"),
    Binding(Action.RECORDINGS, (_Key.Key_L,), "L", "recordings"),
    Binding(Action.WHOLE_SCREEN, (_Key.Key_F11,), "", ""),
    Binding(Action.SOUND, (_Key.Key_V,), "V Y PgUp PgDn", "sound", held="Ctrl+M"),
    Binding(Action.FOLLOWED, (_Key.Key_Y,), "", ""),
    Binding(Action.LOUDER, (_Key.Key_PageUp,), "", ""),
    Binding(Action.SOFTER, (_Key.Key_PageDown,), "", ""),
    Binding(Action.KEYS, (_Key.Key_F12,), "", ""),
    Binding(Action.LOOKS, (_Key.Key_Asterisk, _Key.Key_D), "* / D F11 F12", "day, full, keys"),
)

_BY_KEY = {key: binding.action for binding in BINDINGS for key in binding.keys}
_ANYWHERE = {pressed_by(binding.held): binding.action for binding in BINDINGS if binding.held}


def action_anywhere(event: QKeyEvent) -> Action | None:
    """Give the action of keys held together that act on every page, also while typing."""
    return _ANYWHERE.get(event.keyCombination().toCombined())


def action_of(event: QKeyEvent) -> tuple[Action, int] | None:
    """Give the action of a key press and, for a speed, its step; None when the key has none.

    Keys held with Ctrl, Alt or Meta are left to the system.
    """
    held = event.modifiers() & ~(
        Qt.KeyboardModifier.KeypadModifier | Qt.KeyboardModifier.ShiftModifier
    )
    if held != Qt.KeyboardModifier.NoModifier:
        return None
    key = Qt.Key(event.key())
    action = _BY_KEY.get(key)
    if action is None:
        return None
    return action, DIGITS.index(key) if key in DIGITS else 0
