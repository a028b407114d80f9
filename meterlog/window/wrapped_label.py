"""WrappedLabel: words over as many lines as they need; one that is too long for a line is broken.

Qt breaks lines between words alone, and asks for the width of the longest one: a word of 200
letters, such as somebody types who rests a hand on the keys, would push all else out of sight.
"""

from __future__ import annotations

import re

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QLabel

_BREAK = "\N{ZERO WIDTH SPACE}"
_LONG = re.compile(r"\S{21,}")
_EACH = 10


class WrappedLabel(QLabel):
    """Plain words that never ask for more width than a usual word has.

    Parameters
    ----------
    words : str
    """

    def __init__(self, words: str = "") -> None:
        super().__init__()
        self._words = ""
        self.setWordWrap(True)
        self.setTextFormat(Qt.TextFormat.PlainText)
        self.setText(words)

    def setText(self, words: str) -> None:
        """Show words; long ones may be broken."""
        if words != self._words:
            self._words = words
            super().setText(_LONG.sub(_broken, words))

    def text(self) -> str:
        """Give the words as they were given."""
        return self._words


def _broken(long: re.Match[str]) -> str:
    word = long[0]
    return _BREAK.join(word[at : at + _EACH] for at in range(0, len(word), _EACH))
