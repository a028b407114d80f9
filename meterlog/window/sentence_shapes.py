"""SentenceShapes: sentences that differ in their figures alone are read once.

While a run is recorded, the same sentences come again and again with other figures. To find by
which templates one was made takes up to a tenth of a second; to put other figures in its
translation takes next to nothing.
"""

from __future__ import annotations

import re
from typing import NamedTuple

from meterlog.window.numbers import in_numbers

NUMBER = re.compile(r"[0-9](?:[0-9.,]*[0-9])?")
_WHOLE, _BROKEN = "\x00", "\x01"
_MOST = 4096


class _Shape(NamedTuple):
    """What stands between the figures of a translation, and which figure stands where."""

    pieces: tuple[str, ...]
    order: tuple[int, ...]


class SentenceShapes:
    """Translations without their figures."""

    def __init__(self) -> None:
        self._known: dict[str, _Shape] = {}

    def forget(self) -> None:
        """Forget all, as where another language is spoken."""
        self._known.clear()

    def say(self, text: str) -> str | None:
        """Say a text whose words have been said with other figures; None where they have not."""
        shape = self._known.get(_words_of(text))
        if shape is None:
            return None
        figures = _figures(text)
        said = [shape.pieces[0]]
        for number, piece in zip(shape.order, shape.pieces[1:], strict=True):
            said += (figures[number], piece)
        return "".join(said)

    def learn(self, text: str, said: str) -> None:
        """Keep how a text was said, where it is plain which of its figures went where."""
        figures, put = _figures(text), NUMBER.findall(said)
        if not figures or sorted(figures) != sorted(put):
            return
        if figures == put:
            order = tuple(range(len(figures)))
        elif len(set(figures)) == len(figures):
            order = tuple(map(figures.index, put))
        else:
            return
        if len(self._known) >= _MOST:
            self._known.clear()
        self._known[_words_of(text)] = _Shape(tuple(NUMBER.split(said)), order)


def _words_of(text: str) -> str:
    """Give a text without its figures; whole numbers and others are told apart.

    A name may hold whole numbers, which stand in any language as they are.
    """
    return NUMBER.sub(lambda found: _BROKEN if "." in found[0] else _WHOLE, text)


def _figures(text: str) -> list[str]:
    return list(map(figure, NUMBER.findall(text)))


def figure(number: str) -> str:
    """Write a number with the window's decimal sign; what has two points is a version."""
    return number if number.count(".") > 1 else in_numbers(number)
