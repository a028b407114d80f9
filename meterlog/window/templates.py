"""Templates of the engine's sentences: which of them could have made a sentence, and from what.

A template has values in it, ``{0}``, ``{1}``. One that made a sentence has all its words in it, so
that one word of each, the rarest, tells at once which few are worth a look.
"""

from __future__ import annotations

import re
from collections import Counter, defaultdict
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass

_HOLE = re.compile(r"\{(\d+)\}")
_WORD = re.compile(r"[A-Za-z]{2,}")
_BESIDE = " ,;:("
"""Between two values without a word between them the second begins with one of these."""
_MOST_CUTS = 400
"""Ways to cut a sentence by one template; more than a sentence of the engine has."""


@dataclass(frozen=True, slots=True)
class Template:
    """One template.

    Attributes
    ----------
    source : str
        In English, as the engine has it.
    pieces : tuple of str
        What stands before, between and behind the values, without blanks at both ends.
    numbers : tuple of int
        The values' numbers in the order in which they stand.
    """

    source: str
    pieces: tuple[str, ...]
    numbers: tuple[int, ...]

    @property
    def letters(self) -> int:
        """Count what stands in it besides values."""
        return sum(map(len, self.pieces))

    def cuts(self, text: str, good: Callable[[str], bool]) -> Iterator[tuple[str, ...]]:
        """Give the values that would make this text, in each way that there is.

        Parameters
        ----------
        text : str
        good : callable
            Tells whether a piece may be a value at all: others are not looked at any further.
        """
        if not self.pieces[0] and self.pieces[1][:1] == " " != text[:1]:
            # The first value may be empty; then the blank behind it is gone as well.
            yield from self._cuts(f" {text}", good)
        yield from self._cuts(text, good)

    def _cuts(self, text: str, good: Callable[[str], bool]) -> Iterator[tuple[str, ...]]:
        first, last = self.pieces[0], self.pieces[-1]
        begins = text.startswith(first) or (
            # Behind a colon a sentence begins small.
            first[:1].isalpha()
            and text[:1].lower() == first[:1].lower()
            and text[1:].startswith(first[1:])
        )
        if not begins or not text.endswith(last) or len(text) < len(first) + len(last):
            return
        inner = text[len(first) : len(text) - len(last)]
        for number, cut in enumerate(_cut(inner, self.pieces[1:-1], good)):
            if number >= _MOST_CUTS:
                return
            yield cut


def _cut(text: str, marks: Sequence[str], good: Callable[[str], bool]) -> Iterator[tuple[str, ...]]:
    """Cut a text at the marks, in their order: the shortest first value first."""
    if not marks:
        if good(text):
            yield (text,)
        return
    mark, rest = marks[0], marks[1:]
    for at in _places(text, mark):
        behind = text[at + len(mark) :]
        if all(one in behind for one in rest) and good(text[:at]):
            for values in _cut(behind, rest, good):
                yield (text[:at], *values)


def _places(text: str, mark: str) -> Iterator[int]:
    if not mark:
        yield from (
            at for at in range(len(text) + 1) if at in (0, len(text)) or text[at] in _BESIDE
        )
        return
    at = text.find(mark)
    while at >= 0:
        yield at
        at = text.find(mark, at + 1)


class TemplateIndex:
    """All templates, found by a word of theirs.

    Parameters
    ----------
    sources : sequence of str
    """

    def __init__(self, sources: Sequence[str] = ()) -> None:
        made = sorted(map(_template, sources), key=lambda one: -one.letters)
        words = [_whole_words(one) for one in made]
        often = Counter(word for found in words for word in found)
        self._all = made
        self._by_word: dict[str, list[int]] = defaultdict(list)
        self._always: list[int] = []
        for number, found in enumerate(words):
            if found:
                self._by_word[min(found, key=lambda word: (often[word], word))].append(number)
            else:
                self._always.append(number)

    def __bool__(self) -> bool:
        """Tell whether there are any."""
        return bool(self._all)

    def worth(self, text: str) -> list[Template]:
        """Give those that may have made a text, the most telling first."""
        found = set(self._always)
        for word in set(_WORD.findall(text.lower())):
            found.update(self._by_word.get(word, ()))
        begun = text[:1].lower()
        return [
            one
            for one in map(self._all.__getitem__, sorted(found))
            # Most are ruled out by their ends, long before anything is cut.
            if text.endswith(one.pieces[-1]) and one.pieces[0][:1].lower() in ("", begun)
        ]


def _template(source: str) -> Template:
    cut = _HOLE.split(source.strip())
    return Template(source, tuple(cut[::2]), tuple(map(int, cut[1::2])))


def _whole_words(one: Template) -> set[str]:
    """Give the words of a template that no value can be grown together with."""
    found: set[str] = set()
    last = len(one.pieces) - 1
    for number, piece in enumerate(one.pieces):
        for word in _WORD.finditer(piece):
            free_before = number == 0 or word.start() > 0
            free_behind = number == last or word.end() < len(piece)
            if free_before and free_behind:
                found.add(word[0].lower())
    return found
