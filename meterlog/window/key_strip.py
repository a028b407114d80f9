"""KeyStrip: the key map, always on screen."""

from __future__ import annotations

import html
from typing import TYPE_CHECKING

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QLabel

from meterlog.window.keys import BINDINGS, Binding

if TYPE_CHECKING:
    from meterlog.evidence.palette import Palette


class KeyStrip(QLabel):
    """One or two lines that name every key and what it does."""

    def __init__(self) -> None:
        super().__init__()
        self.setWordWrap(True)
        self.setTextFormat(Qt.TextFormat.RichText)
        self.setAlignment(Qt.AlignmentFlag.AlignCenter)
        plain = ", ".join(f"{b.shown}: {b.words}" for b in BINDINGS if b.shown)
        self.setAccessibleName(f"keys: {plain}")

    def set_palette(self, palette: Palette) -> None:
        """Take other colours."""

        def chip(binding: Binding) -> str:
            keys = html.escape(binding.shown).replace(" ", "&nbsp;")
            words = html.escape(binding.words).replace(" ", "&nbsp;")
            style = f"background-color:{palette.accent};color:{palette.on_accent}"
            return f'<span style="{style}">&nbsp;{keys}&nbsp;</span>&nbsp;{words}'

        self.setText(" &ensp;".join(chip(binding) for binding in BINDINGS if binding.shown))
