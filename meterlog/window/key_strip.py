"""KeyStrip: the keys that act now, always on screen."""

from __future__ import annotations

import html
from typing import TYPE_CHECKING

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QLabel

from meterlog.window.named_keys import OR, pressed_by
from meterlog.window.words import say

if TYPE_CHECKING:
    from meterlog.evidence.palette import Palette


_DIGITS = "0 – 9"
_EACH_DIGIT = "0 1 2 3 4 5 6 7 8 9"
"""How they stand where each can be clicked."""


class KeyStrip(QLabel):
    """One or two lines that name every key that acts on the page on show, and what it does.

    A click on a key is a press of it: ``pressed`` is emitted with the key. So all that keys do can
    be done with a mouse or a finger, too. Keys held together are one number with their modifiers.
    """

    pressed = Signal(int)

    def __init__(self) -> None:
        super().__init__()
        self.setWordWrap(True)
        self.setTextFormat(Qt.TextFormat.RichText)
        self.setAlignment(Qt.AlignmentFlag.AlignCenter)
        self.setContentsMargins(8, 0, 8, 0)
        self._palette: Palette | None = None
        self._shown: tuple[tuple[str, str], ...] = ()
        self.setTextInteractionFlags(Qt.TextInteractionFlag.LinksAccessibleByMouse)
        self.linkActivated.connect(lambda told: self.pressed.emit(int(told)))

    def show_keys(self, shown: tuple[tuple[str, str], ...]) -> None:
        """Name keys, each with what it does."""
        if shown == self._shown:
            return
        self._shown = shown
        self.setAccessibleName(
            say("keys: {names}", names=", ".join((f"{keys}: {words}" for keys, words in shown)))
        )
        self._write()

    def set_palette(self, palette: Palette) -> None:
        """Take other colours."""
        self._palette = palette
        self._write()

    def _write(self) -> None:
        palette = self._palette
        if palette is None:
            return
        style = f"background-color:{palette.accent};color:{palette.on_accent}"

        def press(word: str, shown: str, of: str) -> str:
            key = None if word == OR else pressed_by(word)
            plain = html.escape(shown).replace(" ", "&nbsp;")
            if key is None:
                return plain
            look = f"color:{of};text-decoration:none"
            return f'<a href="{key}" style="{look}">{plain}</a>'

        def chip(keys: str, words: str) -> str:
            each = keys.replace(_DIGITS, _EACH_DIGIT).split(" ")
            parts = "&nbsp;".join(press(word, say(word), palette.on_accent) for word in each)
            does = press(each[0], words, palette.ink)
            return f'<span style="{style}">&nbsp;{parts}&nbsp;</span>&nbsp;{does}'

        self.setText(" &ensp;".join(chip(*one) for one in self._shown))
