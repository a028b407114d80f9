"""KeyStrip: the keys that act now, always on screen."""

from __future__ import annotations

import html
from typing import TYPE_CHECKING

from PySide6.QtCore import QEvent, Qt, Signal
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QLabel

from meterlog.window.named_keys import OR, pressed_by
from meterlog.window.words import say

if TYPE_CHECKING:
    from meterlog.evidence.palette import Palette


_DIGITS = "0 – 9"
_EACH_DIGIT = "0 1 2 3 4 5 6 7 8 9"
"""How they stand where each can be clicked."""
_MOST_LINES = 2
_FRAME_KEYS = 2
"""How many of the last groups are the frame's own: looks and help, then the pages."""


class KeyStrip(QLabel):
    """One or two lines that name the keys that act on the page on show, and what they do.

    Where there is no room for all, the page's last ones are left out; the tip names them all. The
    keys of the frame stay: nobody is held on a page for want of a key that leads away from it.

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
        self._fitted: object = None
        self.setTextInteractionFlags(Qt.TextInteractionFlag.LinksAccessibleByMouse)
        self.linkActivated.connect(lambda told: self.pressed.emit(int(told)))

    def show_keys(self, shown: tuple[tuple[str, str], ...]) -> None:
        """Name keys, each with what it does; the last two are those of the frame."""
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

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Show as many keys as there is room for."""
        super().resizeEvent(event)
        if event.size().width() != event.oldSize().width():
            self._write()

    def changeEvent(self, event: QEvent) -> None:
        """Do the same where the letters change."""
        super().changeEvent(event)
        if event.type() in {QEvent.Type.FontChange, QEvent.Type.StyleChange}:
            self._write()

    def _write(self) -> None:
        if self._palette is None or not self._shown:
            return
        fitted = self._shown, self._palette, self.width(), self.fontMetrics().height()
        if fitted == self._fitted:
            return
        self._fitted = fitted
        most = (_MOST_LINES + 0.5) * self.fontMetrics().lineSpacing() * 1.1
        for left_out in range(max(len(self._shown) - _FRAME_KEYS, 1)):
            self.setText(" &ensp;".join(self._chip(*one) for one in self._without(left_out)))
            if self.heightForWidth(self.width()) <= most:
                break
        self.setToolTip(
            "\n".join(f"{keys}: {words}" for keys, words in self._shown) if left_out else ""
        )

    def _without(self, count: int) -> tuple[tuple[str, str], ...]:
        """Leave out so many, from the end of the page's own."""
        own, frame = self._shown[:-_FRAME_KEYS], self._shown[-_FRAME_KEYS:]
        return own[: len(own) - count] + frame

    def _chip(self, keys: str, words: str) -> str:
        palette = self._palette
        if palette is None:
            return ""
        style = f"background-color:{palette.accent};color:{palette.on_accent}"
        each = keys.replace(_DIGITS, _EACH_DIGIT).split(" ")
        parts = "&nbsp;".join(_press(word, say(word), palette.on_accent) for word in each)
        does = _press(each[0], words, palette.ink)
        return f'<span style="{style}">&nbsp;{parts}&nbsp;</span>&nbsp;{does}'


def _press(word: str, shown: str, of: str) -> str:
    """Write a word that is pressed by a click, in its colour."""
    key = None if word == OR else pressed_by(word)
    plain = html.escape(shown).replace(" ", "&nbsp;")
    if key is None:
        return plain
    return f'<a href="{key}" style="color:{of};text-decoration:none">{plain}</a>'
