"""CircuitKeys: what each key does on the Circuit page, as data."""

from __future__ import annotations

from collections.abc import Collection
from dataclasses import dataclass
from enum import StrEnum

from PySide6.QtCore import Qt
from PySide6.QtGui import QKeyEvent

from meterlog.model.circuit_check import SIGN_VALUES, Sign
from meterlog.window.keys import DIGITS, Action
from meterlog.window.named_keys import keys_left
from meterlog.window.words import say

_Key = Qt.Key


class CircuitAction(StrEnum):
    """What the technician wants of a circuit check."""

    TAKE = "take"
    TYPE = "type"
    POINT_BACK = "point back"
    POINT_ON = "point on"
    PROPOSED = "proposed point"
    AS_PROPOSED = "state as proposed"
    KEY = "key"
    PLUG = "plug"
    FUSE = "fuse"
    JUMPER = "jumper"
    COMPLAINT = "complaint"
    NO_REACH = "can't reach"
    UNDO = "undo"
    REDO = "redo"
    SIGN = "sign"
    CIRCUIT = "circuit"
    PROBE = "probe"
    READ_ON = "read on"
    READ_BACK = "read back"


@dataclass(frozen=True, slots=True)
class CircuitBinding:
    """Keys of one action on the Circuit page; attributes as of a :class:`~keys.Binding`."""

    action: CircuitAction | Action
    keys: tuple[Qt.Key, ...]
    shown: str
    words: str


SIGN_KEYS = (
    _Key.Key_F1,
    _Key.Key_F2,
    _Key.Key_F3,
    _Key.Key_F4,
    _Key.Key_F5,
    _Key.Key_F6,
    _Key.Key_F7,
    _Key.Key_F8,
    _Key.Key_F9,
    _Key.Key_F10,
)
SIGNS: tuple[tuple[Sign, str], ...] = tuple(
    (sign, value) for sign in Sign for value in SIGN_VALUES[sign]
)
"""In the order of their keys: F1 to F10."""

CIRCUIT_BINDINGS = (
    CircuitBinding(CircuitAction.CIRCUIT, (_Key.Key_C,), "C", "circuit"),
    CircuitBinding(
        CircuitAction.TAKE, (_Key.Key_Space, _Key.Key_Plus), "Space / +", "take the reading"
    ),
    CircuitBinding(CircuitAction.TYPE, (_Key.Key_Equal, _Key.Key_R), "= / R", "type it"),
    CircuitBinding(CircuitAction.PROBE, (_Key.Key_V,), "V", "probe"),
    CircuitBinding(CircuitAction.POINT_BACK, (_Key.Key_Left, _Key.Key_Up), "← →", "test point"),
    CircuitBinding(CircuitAction.POINT_ON, (_Key.Key_Right, _Key.Key_Down), "", ""),
    CircuitBinding(
        CircuitAction.PROPOSED, (_Key.Key_Period, _Key.Key_Comma, _Key.Key_I), ". / I", "go to next"
    ),
    CircuitBinding(CircuitAction.AS_PROPOSED, (_Key.Key_B,), "B", "set as proposed"),
    CircuitBinding(CircuitAction.READ_ON, (_Key.Key_PageDown,), "PgDn", "read on"),
    CircuitBinding(CircuitAction.READ_BACK, (_Key.Key_PageUp,), "", ""),
    CircuitBinding(Action.SPEED, DIGITS, "0 – 9", "speed"),
    CircuitBinding(CircuitAction.KEY, (_Key.Key_K,), "K", "key"),
    CircuitBinding(CircuitAction.PLUG, (_Key.Key_P,), "P", "plug off"),
    CircuitBinding(CircuitAction.FUSE, (_Key.Key_L,), "L", "fuse out"),
    CircuitBinding(CircuitAction.JUMPER, (_Key.Key_J,), "J", "jumper from, to"),
    CircuitBinding(CircuitAction.SIGN, SIGN_KEYS, "F1 to F10", "signs"),
    CircuitBinding(CircuitAction.COMPLAINT, (_Key.Key_H,), "H", "complaint now?"),
    CircuitBinding(CircuitAction.NO_REACH, (_Key.Key_X,), "X", "can't reach"),
    CircuitBinding(CircuitAction.UNDO, (_Key.Key_Backspace, _Key.Key_U), "⌫ / U", "undo"),
    CircuitBinding(CircuitAction.REDO, (_Key.Key_Y,), "Y", "redo"),
    CircuitBinding(Action.TAP, (_Key.Key_T,), "T", "tap"),
    CircuitBinding(Action.WIGGLE, (_Key.Key_W,), "W", "leads moved"),
    CircuitBinding(Action.ZERO, (_Key.Key_Z,), "Z", "zero the clamp"),
    CircuitBinding(Action.NOTE, (_Key.Key_Minus, _Key.Key_N), "− / N", "note"),
    CircuitBinding(
        Action.START_STOP, (_Key.Key_Enter, _Key.Key_Return, _Key.Key_S), "Enter / S", "start, stop"
    ),
    CircuitBinding(Action.GUIDE, (_Key.Key_Slash, _Key.Key_G), "", ""),
    CircuitBinding(Action.OPEN, (_Key.Key_O,), "", ""),
    CircuitBinding(Action.METERS, (_Key.Key_M,), "M", "meters"),
    CircuitBinding(Action.CIRCUIT, (_Key.Key_E,), "E", "trace"),
    CircuitBinding(Action.SOUND, (), "Ctrl+M", "sound"),
    CircuitBinding(Action.WHOLE_SCREEN, (_Key.Key_F11,), "", ""),
    CircuitBinding(Action.KEYS, (_Key.Key_F12,), "", ""),
    CircuitBinding(
        Action.LOOKS, (_Key.Key_Asterisk, _Key.Key_D), "* / D F11 F12", "day, full, keys"
    ),
)

_BY_KEY = {key: binding.action for binding in CIRCUIT_BINDINGS for key in binding.keys}
_WITH_CTRL = {_Key.Key_Z: CircuitAction.UNDO, _Key.Key_Y: CircuitAction.REDO}


def shown_keys(
    acting: Collection[Action], taken: Collection[Qt.Key] = ()
) -> tuple[tuple[str, str], ...]:
    """Give the keys of the page and what they do; of the window's own actions those that act.

    Parameters
    ----------
    acting : collection of Action
    taken : collection of Qt.Key
        Keys that do something else now.
    """
    named = (
        (keys_left(one.shown, taken), say(one.words))
        for one in CIRCUIT_BINDINGS
        if one.shown and (isinstance(one.action, CircuitAction) or one.action in acting)
    )
    return tuple(one for one in named if one[0])


def circuit_action_of(event: QKeyEvent) -> tuple[CircuitAction | Action, int] | None:
    """Give the action of a key press on the Circuit page; None when the key has none.

    Returns
    -------
    tuple of (CircuitAction or Action, int) or None
        With the speed of a digit, or the place of a sign in :data:`SIGNS`.
    """
    held = event.modifiers() & ~Qt.KeyboardModifier.KeypadModifier
    key = Qt.Key(event.key())
    ctrl = Qt.KeyboardModifier.ControlModifier
    if held == ctrl | Qt.KeyboardModifier.ShiftModifier and key is _Key.Key_Z:
        return CircuitAction.REDO, 0
    if held == ctrl:
        return (_WITH_CTRL[key], 0) if key in _WITH_CTRL else None
    if held & ~Qt.KeyboardModifier.ShiftModifier:
        return None
    action = _BY_KEY.get(key)
    if action is None:
        return None
    step = SIGN_KEYS.index(key) if key in SIGN_KEYS else 0
    return action, DIGITS.index(key) if key in DIGITS else step
