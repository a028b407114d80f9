"""Sentences of the engine, finished and in English, said in the window's language.

What the engine finds goes into signed evidence as it is worded there. The window does not ask it
for other words: it knows the templates of its sentences (collected from its source by
``tests/languages``), recognises by which one a sentence was made, and says the same with the same
values. A sentence that no template makes, or that has no translation yet, stays as it is.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from functools import lru_cache

from PySide6.QtCore import QCoreApplication

from meterlog.window.numbers import in_numbers
from meterlog.window.words import CONTEXT

ENGINE = "engine"
"""The context of the engine's sentences in the files of languages."""
_HOLE = re.compile(r"\{(\d+)\}")
_NEXT = re.compile(r"(?<=[.!?])[ ]+(?=[A-Z“\"(])")
_ENDS = re.compile(r"[.!?] [A-Z{]")
"""A template of more than one sentence."""
_UNITS = "V|A|W|s|ms|min|h|Hz|kHz|mV|mA|mOhm|Ohm|Ω|mΩ|%|°C|K|rpm|A²s|kB|MB|GB|x|×"
_FIGURES = re.compile(rf"[<>≥≤~±+\-−–… ,;/()0-9.:]*(?:\s?(?:{_UNITS})[±+\-−–… ,;/()0-9.:]*)*")
_WORDS = re.compile(r"\b[A-Za-z]{2,}\b")
_SMALL = frozenset(
    ("from", "to", "the", "of", "is", "was", "at", "and", "no", "not", "in", "with", "by", "for")
)
"""No name of a thing is made of these."""
_JOINING = (",", ";", ":")
_STATED = "condition"
"""What is meant by the words of a condition, such as *open*."""
_NAME_OF_ROLE = re.compile(r"[a-z]+-[a-z]+")
"""Such as ``motor-current``, as files and commands write it."""
_FILE = re.compile(r"\S+|/[^:]+|[A-Za-z]:[\\/][^:]+")
"""One word, or the path of a file: a name."""
_DIGIT = re.compile(r"[0-9]")
_DEEPEST = 40
"""A sentence in a sentence in a sentence; deeper ones are no sentences."""


class _Templates:
    """The templates that have a translation, the most telling first."""

    known: tuple[tuple[str, str, re.Pattern[str]], ...] = ()


def know_templates(templates: Sequence[str]) -> None:
    """Take the templates that the loaded language has words for; none: sentences stay English."""
    told = sorted(templates, key=lambda one: -len(_HOLE.sub("", one)))
    _Templates.known = tuple((one, _longest(one), _pattern(one)) for one in told)
    sentence.cache_clear()


@lru_cache(maxsize=4096)
def sentence(text: str, depth: int = 0) -> str:
    """Say what the engine said in the language of the window.

    Parameters
    ----------
    text : str
        A word, a sentence or several, in lines or behind each other.
    depth : int
        How deep in another sentence it stands.
    """
    if not text or not _Templates.known:
        return text
    if _FIGURES.fullmatch(text):
        return in_numbers(text) if _DIGIT.search(text) else text
    if depth > _DEEPEST:
        return text
    plain = text.strip()
    if plain != text:
        said = sentence(plain, depth)
        # Where a language joins with a comma what English joins with a blank.
        return said if said[:1] in _JOINING else text.replace(plain, said, 1)
    if "\n" in text:
        return "\n".join(sentence(line, depth) for line in text.split("\n"))
    said = _word(text) or _filled(text, depth, weak=False)
    if not said and text.endswith(".") and not _NEXT.search(text):
        whole = sentence(text[:-1], depth + 1)
        said = "" if whole == text[:-1] else f"{whole}."
    if not said:
        parts = _in_parts(text, depth)
        said = parts if parts != text else _filled(text, depth, weak=True)
    return said or text


def _word(text: str) -> str:
    """Give what is translated as it stands; empty for nothing."""
    forms = dict.fromkeys(
        (text, f" {text}", f"{text} ", text[:1].upper() + text[1:], text[:1].lower() + text[1:])
    )
    for context, meaning in ((ENGINE, ""), (CONTEXT, ""), (CONTEXT, _STATED)):
        for form in forms:
            said = QCoreApplication.translate(context, form, meaning)
            if said != form:
                return said.strip()
    inner = text[1:-1]
    if text == f"'{inner}'" and "'" not in inner:
        meant = QCoreApplication.translate(CONTEXT, inner, _STATED)
        return f"'{meant if meant != inner else sentence(inner)}'"
    if _NAME_OF_ROLE.fullmatch(text):
        return _word(text.replace("-", " "))
    return ""


def _filled(text: str, depth: int, *, weak: bool, several: bool = False) -> str:
    """Give the sentence made by the template that made this one; empty where none did."""
    for template, longest, pattern in _Templates.known:
        if longest not in text or weak is not _is_weak(template):
            continue
        if several and not _ENDS.search(template):
            continue
        match = pattern.fullmatch(text)
        if match is not None:
            values = [sentence(value, depth + 1) for value in match.groups()]
            if any(map(_is_english, match.groups(), values)):
                continue
            return _fill(QCoreApplication.translate(ENGINE, template).strip(), tuple(values))
    return ""


@lru_cache(maxsize=4096)
def _is_weak(template: str) -> bool:
    """Tell whether a template has so few words of its own that much else reads like it."""
    return template.startswith("{") and sum(map(str.isalpha, _HOLE.sub("", template))) < 14


def _is_english(before: str, after: str) -> bool:
    """Tell whether words stayed English: better a whole sentence in English than half of one."""
    words = [] if _FILE.fullmatch(before) else _WORDS.findall(after)
    return before == after and (len(words) > 2 or not _SMALL.isdisjoint(words))


def _fill(template: str, values: tuple[str, ...]) -> str:
    return _HOLE.sub(lambda hole: values[int(hole[1])], template)


def _in_parts(text: str, depth: int) -> str:
    """Say sentence by sentence; what stands before a colon is a name, where the rest is known."""
    parts = _NEXT.split(text)
    if len(parts) > 1:
        return _several(parts, depth)
    for mark in ("; ", ": ", " (", ", "):
        lead, found, rest = text.partition(mark)
        if not found or not lead:
            continue
        first = sentence(lead, depth + 1)
        if _is_english(lead, first):
            continue
        # A clause may be worded with its mark.
        clause = f"{mark.strip()}{rest}" if mark == " (" else f"{mark.strip()} {rest}"
        said = _word(clause) or _filled(clause, depth + 1, weak=False)
        if said:
            return f"{first}{' ' if mark == ' (' else ''}{said}"
        said = sentence(rest, depth + 1)
        if (first, said) != (lead, rest) and not _is_english(rest, said):
            return f"{first}{mark}{said}"
    return text


def _several(parts: list[str], depth: int) -> str:
    """Say sentences behind each other; a template may make more than one of them."""
    said: list[str] = []
    at = 0
    while at < len(parts):
        for end in range(len(parts), at + 1, -1):
            whole = _filled(" ".join(parts[at:end]), depth + 1, weak=False, several=True)
            if whole:
                said.append(whole)
                at = end
                break
        else:
            said.append(sentence(parts[at], depth + 1))
            at += 1
    return " ".join(said)


def _longest(template: str) -> str:
    pieces = _HOLE.split(template.strip())[::2]
    return max((piece[1:] for piece in pieces), key=len)


def _pattern(template: str) -> re.Pattern[str]:
    pieces = _HOLE.split(template.strip())
    told = [re.escape(one) if at % 2 == 0 else "(.*?)" for at, one in enumerate(pieces)]
    for at in range(1, len(told) - 2, 2):
        if pieces[at + 1] == " ":
            # Two values with a blank between them are sentences, or a number and its unit.
            told[at] = r"(.*?[.!?]|[-+0-9.,]+)"
    first = pieces[0][:1]
    if first.isalpha():
        # Behind a colon a sentence begins small.
        told[0] = f"[{first.upper()}{first.lower()}]{re.escape(pieces[0][1:])}"
    return re.compile("".join(told), re.DOTALL)
