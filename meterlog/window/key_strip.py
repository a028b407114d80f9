"""KeyStrip: the keys that act now, always on screen."""

from __future__ import annotations

import html
from typing import TYPE_CHECKING

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QLabel

if TYPE_CHECKING:
    from meterlog.evidence.palette import Palette


class KeyStrip(QLabel):
    """One or two lines that name every key that acts on the page on show, and what it does."""

    def __init__(self) -> None:
        super().__init__()
        self.setWordWrap(True)
        self.setTextFormat(Qt.TextFormat.RichText)
        self.setAlignment(Qt.AlignmentFlag.AlignCenter)
        self._palette: Palette | None = None
        self._shown: tuple[tuple[str, str], ...] = ()

    def show_keys(self, shown: tuple[tuple[str, str], ...]) -> None:
        """Name keys, each with what it does."""
        if shown == self._shown:
            return
        self._shown = shown
        self.setAccessibleName(f"keys: {', '.join(f'{keys}: {words}' for keys, words in shown)}")
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

        def chip(keys: str, words: str) -> str:
            keys, words = (html.escape(one).replace(" ", "&nbsp;") for one in (keys, words))
            return f'<span style="{style}">&nbsp;{keys}&nbsp;</span>&nbsp;{words}'

        self.setText(" &ensp;".join(chip(*one) for one in self._shown))
