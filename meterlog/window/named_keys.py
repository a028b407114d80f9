"""Named keys: which keys the words of the key map name, and what of them is left."""

from __future__ import annotations

from collections.abc import Collection
from functools import lru_cache

from PySide6.QtCore import QKeyCombination, Qt
from PySide6.QtGui import QKeySequence

_NAMED = {
    "Enter": Qt.Key.Key_Enter, "Space": Qt.Key.Key_Space, "−": Qt.Key.Key_Minus,
    "←": Qt.Key.Key_Left, "→": Qt.Key.Key_Right, "↑": Qt.Key.Key_Up, "↓": Qt.Key.Key_Down,
    "⌫": Qt.Key.Key_Backspace, "PgUp": Qt.Key.Key_PageUp, "PgDn": Qt.Key.Key_PageDown,
}  # fmt: skip
"""Keys that the map calls otherwise than Qt does."""
_CTRL = Qt.KeyboardModifier.ControlModifier
OR = "/"
"""Stands between keys that do the same."""
_RANGES = {"0 – 9": tuple("0123456789"), "F1 to F10": tuple(f"F{at}" for at in range(1, 11))}
"""From one key to another, as it is written, and each of them."""


@lru_cache(maxsize=1_024)
def key_shown(word: str) -> Qt.Key | None:
    """Give the key that a word of the key map names; None where it names none.

    Remembered: all keys that there are have to be gone through, and the map is often shown anew.
    """
    if word in _NAMED:
        return _NAMED[word]
    sequence = QKeySequence(word)
    if sequence.count() != 1 or "+" in word[:-1]:
        return None
    found = next((one for one in Qt.Key if QKeySequence(one) == sequence), None)
    return None if found is Qt.Key.Key_unknown else found


def pressed_by(word: str) -> int | None:
    """Give what a word of the key map is pressed by, with what is held; None where by nothing."""
    held, plus, last = word.partition("+")
    key = key_shown(last if held == "Ctrl" and plus else word)
    if key is None:
        return None
    return QKeyCombination(_CTRL, key).toCombined() if plus and last else key.value


def each_key(shown: str) -> list[str]:
    """Give the words of keys as the map shows them, with every key of a range."""
    for written, keys in _RANGES.items():
        shown = shown.replace(written, " ".join(keys))
    return shown.split(" ") if shown else []


def keys_left(shown: str, taken: Collection[Qt.Key]) -> str:
    """Give keys as the map shows them, without those that do something else.

    Parameters
    ----------
    shown : str
        Such as ``+ / T / Space``.
    taken : collection of Qt.Key
    """
    words = each_key(shown)
    if not any(key_shown(word) in taken for word in words):
        return shown
    left: list[str] = []
    for word in words:
        if word == OR:
            if left and left[-1] != OR:
                left.append(OR)
        elif key_shown(word) not in taken:
            left.append(word)
    return " ".join(left).removesuffix(f" {OR}")
