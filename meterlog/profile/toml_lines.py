"""Where each key stands in a TOML text: ``tomllib`` does not say."""

from __future__ import annotations

import re
import tomllib
from bisect import bisect_right
from functools import lru_cache

Place = tuple[str | int, ...]
"""Names of tables and keys, and places in lists, from the top."""

# No possessive groups: Python 3.11 before 3.11.5 gives back nothing for (?:a|b)*+.
_STRING = re.compile(
    r'"""(?:[^"\\]|\\.|"{1,2}(?!"))*"{3,5}'
    r"|'''(?:[^']|'{1,2}(?!'))*'{3,5}"
    r'|"(?:[^"\\\n]|\\.)*"'
    r"|'[^'\n]*+'",
    re.DOTALL,
)
_BARE_KEY = re.compile(r"[A-Za-z0-9_-]+")
# A date and a time of day may stand a blank apart.
_BARE_VALUE = re.compile(r"\d{4}-\d\d-\d\d \d\d:[^\s,\]}#]+|[^\s,\]}#]+")
_BLANKS = re.compile(r"[ \t]*")
_GAP = re.compile(r"(?:[ \t\r\n]|#[^\n]*+)*")


def line_of(text: str, place: Place) -> int | None:
    """Give the line of a key or of an item of a list, counted from 1.

    Parameters
    ----------
    text : str
        Valid TOML (1.0.0), not nested deeper than a few dozen levels.
    place : Place

    Returns
    -------
    int or None
        Of the nearest table around it when the key is missing; None when there is none either.
    """
    lines = _lines(text)
    for depth in range(len(place), 0, -1):
        line = lines.get(place[:depth])
        if line is not None:
            return line
    return None


@lru_cache(maxsize=2)
def _lines(text: str) -> dict[Place, int]:
    """Scan a text once, however many faults it has."""
    return _Scan(text).lines


class _Scan:
    """Goes once over valid TOML and notes the first line of every place."""

    def __init__(self, text: str) -> None:
        self.lines: dict[Place, int] = {}
        self._text = text
        self._at = 0
        self._ends = [match.start() for match in re.finditer("\n", text)]
        self._last: dict[Place, int] = {}
        self._table: Place = ()
        while self._go_on(_GAP):
            if self._next("["):
                self._head()
            else:
                self._pair(self._table)

    def _go_on(self, skipped: re.Pattern[str]) -> bool:
        """Pass over ``skipped``; tell whether anything is left."""
        self._pass(skipped)
        return self._at < len(self._text)

    def _pass(self, wanted: re.Pattern[str]) -> str:
        match = wanted.match(self._text, self._at)
        if match is None:  # no TOML: end here
            self._at = len(self._text)
            return ""
        self._at = match.end()
        return match.group()

    def _next(self, sign: str) -> bool:
        """Pass over ``sign`` if it comes next; tell whether it did."""
        found = self._text.startswith(sign, self._at)
        self._at += len(sign) if found else 0
        return found

    def _note(self, place: Place, start: int) -> None:
        self.lines.setdefault(place, bisect_right(self._ends, start - 1) + 1)

    def _head(self) -> None:
        start = self._at
        many = self._next("[")
        names = self._names()
        place: Place = ()
        for depth, name in enumerate(names, 1):
            place = (*place, name)
            if many and depth == len(names):
                self._last[place] = self._last.get(place, -1) + 1
            self._note(place, start)
            # A name of an array of tables means the last of them so far.
            if place in self._last:
                place = (*place, self._last[place])
        self._note(place, start)
        self._table = place
        while self._next("]"):
            pass

    def _names(self) -> Place:
        names: list[str] = []
        while self._go_on(_BLANKS):
            if self._text[self._at] in "\"'":
                names.append(str(tomllib.loads(f"k = {self._pass(_STRING)}")["k"]))
            else:
                names.append(self._pass(_BARE_KEY))
            self._pass(_BLANKS)
            if not self._next("."):
                break
        return tuple(names)

    def _pair(self, table: Place) -> None:
        start = self._at
        names = self._names()
        for depth in range(1, len(names) + 1):
            self._note((*table, *names[:depth]), start)
        self._next("=")
        self._value((*table, *names))

    def _value(self, place: Place) -> None:
        self._pass(_BLANKS)
        if self._next("["):
            self._items(place)
        elif self._next("{"):
            self._inline(place)
        elif self._text[self._at : self._at + 1] in {'"', "'"}:
            self._pass(_STRING)
        else:
            self._pass(_BARE_VALUE)

    def _items(self, place: Place) -> None:
        index = 0
        while self._go_on(_GAP) and not self._next("]"):
            self._note((*place, index), self._at)
            self._value((*place, index))
            self._pass(_GAP)
            self._next(",")
            index += 1

    def _inline(self, place: Place) -> None:
        while self._go_on(_GAP) and not self._next("}"):
            self._pair(place)
            self._pass(_GAP)
            self._next(",")
