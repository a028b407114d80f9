"""Sentences of the engine, finished and in English, said in the window's language.

What the engine finds goes into signed evidence as it is worded there. The window does not ask it
for other words: it knows the templates of its sentences (collected from its source by
``tests/languages``), finds by which of them a sentence was made, and says the same with the same
values. A value may be a sentence or a list of things itself. Where a sentence can be read in more
than one way, the one counts that leaves the fewest words in English. A sentence that leaves more
than names in English stays as it is.
"""

from __future__ import annotations

import re
import threading
from collections.abc import Iterable, Iterator, Sequence
from functools import lru_cache
from typing import NamedTuple

from PySide6.QtCore import QCoreApplication

from meterlog.window.sentence_shapes import NUMBER, SentenceShapes, figure
from meterlog.window.templates import Template, TemplateIndex
from meterlog.window.words import CONTEXT

ENGINE = "engine"
"""The context of the engine's sentences in the files of languages."""
_HOLE = re.compile(r"\{(\d+)\}")
_NEXT = re.compile(r"(?<=[.!?])[ ]+(?=\S)")
_UNITS = "V|A|W|s|ms|min|h|Hz|kHz|mV|mA|mOhm|Ohm|ohm|Ω|mΩ|MΩ|%|°C|K|rpm|A²s|kB|MB|GB|x|×|UTC"
_SIGNS = "[<>≥≤~±+\\-−–… ,;/()0-9.:?✓✗]*"
_FIGURES = re.compile(rf"{_SIGNS}(?:\s?(?:{_UNITS}){_SIGNS})*")
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
_NAMING = re.compile(
    r"[A-Z0-9]+|\S*\w[-_./\\@=:]+\w\S*|[A-Za-z]*[0-9]\w*|/[^:]+|[A-Za-z]:[\\/][^:]+"
)
"""A name as programs and files have them: capitals, one word with signs in it, or a path."""
_QUOTED = re.compile(r'(.+) (\("[^"]*"\))', re.DOTALL)
"""What was said, and behind it what a meter said itself."""
_LISTS = ("; ", ", ")
_MARKS = ("; ", ": ", " (", ", ", " or ", " and ", ") ")
_HOPELESS = 100
"""Words left in English, where they are no names: then better the whole of it in English."""
_FOREIGN = 20
"""Counts as much: a reason given by the system, or a name of many words before a colon."""
_REASON = re.compile(r"(is|can't|could|has|was) [^{]*: \{0\}\.?")
"""A template of an error whose value is the reason that a system or a library gave."""
_MOST_TOGETHER = 6
"""Sentences that may be one value, or made by one template."""
_MOST_STEPS = 1000
"""Pieces looked at for one sentence: the longest of the engine's needs 830, in 37 ms, once."""


class _Said(NamedTuple):
    """What was said, and how much of it is English still."""

    words: str
    left: int


class _Steps(threading.local):
    """Pieces looked at so far, of each thread that says a sentence."""

    taken = 0


class _Known:
    """What the language has words for, and what is called as it is."""

    templates = TemplateIndex()
    words: frozenset[str] = frozenset()
    names: frozenset[str] = frozenset()
    shapes = SentenceShapes()
    names_of: dict[str, frozenset[str]] = {}  # noqa: RUF012  # one for the whole window
    steps = _Steps()


def know_texts(texts: Sequence[str]) -> None:
    """Take the engine's texts that the loaded language has words for; none: they stay English.

    Parameters
    ----------
    texts : sequence of str
        Templates, which have values in them, and plain words.
    """
    _Known.templates = TemplateIndex([one for one in texts if _HOLE.search(one)])
    _Known.words = frozenset(texts)
    _forget()


def know_names(names: Iterable[str], *, of: str) -> None:
    """Take names that stand in sentences as somebody gave them, such as those of a circuit.

    Parameters
    ----------
    names : iterable of str
    of : str
        What they belong to: the names it had before are forgotten.
    """
    _Known.names_of[of] = frozenset(names)
    known = frozenset().union(*_Known.names_of.values())
    if known != _Known.names:
        _Known.names = known
        _forget()


def _forget() -> None:
    sentence.cache_clear()
    _Known.shapes.forget()
    _say.cache_clear()
    _by_template.cache_clear()


@lru_cache(maxsize=4096)
def sentence(text: str) -> str:
    """Say what the engine said in the language of the window.

    Parameters
    ----------
    text : str
        A word, a sentence or several, in lines or behind each other.
    """
    if not text or not _Known.templates:
        return text
    if "\n" in text:
        return "\n".join(map(sentence, text.split("\n")))
    known = _Known.shapes.say(text)
    if known is not None:
        return known
    _Known.steps.taken = 0
    said = _say(text)
    if said.left < _HOPELESS:
        words = _begun_like(text, said.words)
        _Known.shapes.learn(text, words)
        return words
    parts = _NEXT.split(text)
    if len(parts) > 1:
        # Each by itself: what is not known of a paragraph keeps nobody from reading the rest.
        return " ".join(one.words if one.left < _HOPELESS else raw for raw, one in _each(parts))
    return text


def english_left(text: str) -> int:
    """Give how much of a text stays in English: a few words of names, or more than 100 if words."""
    _Known.steps.taken = 0
    return sum(_say(line).left for line in text.split("\n") if line)


@lru_cache(maxsize=16384)
def _say(text: str) -> _Said:
    """Say a text or a piece of one in the way that leaves the least in English."""
    plain = text.strip()
    if plain != text:
        said = _say(plain)
        # Where a language joins with a comma what English joins with a blank.
        joins = said.words[:1] in _JOINING
        return said if joins else _Said(text.replace(plain, said.words, 1), said.left)
    if _FIGURES.fullmatch(text):
        return _Said(NUMBER.sub(lambda found: figure(found[0]), text), 0)
    word = _word(text)
    if word or text in _Known.names:
        return _Said(word or text, 0)
    _Known.steps.taken += 1
    return _as_it_is(text) if _Known.steps.taken > _MOST_STEPS else _best(text)


def _best(text: str) -> _Said:
    """Say a text in each way that there is, and take the one that leaves the least in English."""
    best = _as_it_is(text)
    for way in (_with_quote, _in_sentences, _whole, _ended, _in_list, _in_clauses):
        for said in way(text):
            if said.left < best.left:
                best = said
            if not best.left:
                return best
    return best


def _as_it_is(text: str) -> _Said:
    """Give a text untouched, with what that leaves in English."""
    words = _WORDS.findall(text)
    if not words or _NAMING.fullmatch(text):
        return _Said(text, 0)
    quote = text[0]
    if quote in "'\"" and len(text) > 1 and text.endswith(quote) and quote not in text[1:-1]:
        return _Said(text, 0)
    if len(words) == 1 and " " not in text:
        return _Said(text, 1)
    if len(words) <= 2 and _SMALL.isdisjoint(words):
        return _Said(text, 3)
    return _Said(text, _HOPELESS + len(words))


def _word(text: str) -> str:
    """Give what is translated as it stands; empty for nothing."""
    capital, small = text[:1].upper() + text[1:], text[:1].lower() + text[1:]
    forms = dict.fromkeys((text, f" {text}", f"{text} ", capital, small))
    known = [form for form in forms if form in _Known.words]
    for context, meaning in ((ENGINE, ""), (CONTEXT, ""), (CONTEXT, _STATED)) if known else ():
        for form in known:
            said = QCoreApplication.translate(context, form, meaning)
            if said != form:
                return said.strip()
    if text[-1:] not in ".?!" and " " in text:
        # A sentence in another one has lost its full stop.
        for form in (f"{text}.", f"{capital}."):
            said = QCoreApplication.translate(ENGINE, form) if form in _Known.words else form
            if said != form:
                return said.removesuffix(".")
    inner = text[1:-1]
    if text == f"'{inner}'" and inner and "'" not in inner:
        meant = QCoreApplication.translate(CONTEXT, inner, _STATED)
        return f"'{meant}'" if meant != inner else ""
    if _NAME_OF_ROLE.fullmatch(text):
        return _word(text.replace("-", " "))
    return ""


@lru_cache(maxsize=16384)
def _by_template(text: str) -> _Said | None:
    """Say a text by the template that leaves the least in English; None where none made it."""
    best: _Said | None = None
    for template in _Known.templates.worth(text):
        any_reason = _REASON.fullmatch(template.source) is not None
        for values in template.cuts(text, _any if any_reason else _may_be_said):
            said = _filled(template, values, _HOPELESS if best is None else best.left)
            best = said or best
            if best is not None and not best.left:
                return best
    return best


def _any(value: str) -> bool:
    del value
    return True


def _may_be_said(value: str) -> bool:
    return not value or _say(value).left < _HOPELESS


def _filled(template: Template, values: Sequence[str], most: int) -> _Said | None:
    """Put values into a template's translation; None where that leaves ``most`` or more."""
    put: dict[int, str] = {}
    left = 0
    words = QCoreApplication.translate(ENGINE, template.source).strip()
    for number, value in zip(template.numbers, values, strict=True):
        said = _say(value) if value else _Said("", 0)
        if said.left and _REASON.fullmatch(template.source):
            said = _Said(value, _FOREIGN)
        # What the language has no use for, such as the s of *speeds*, leaves nothing.
        left += said.left if f"{{{number}}}" in words else 0
        if left >= most:
            return None
        put[number] = said.words
    return _Said(_HOLE.sub(lambda hole: put[int(hole[1])], words).strip(), left)


def _with_quote(text: str) -> Iterator[_Said]:
    """Say what stands before what a meter said itself."""
    quoted = _QUOTED.fullmatch(text)
    if quoted:
        said = _say(quoted[1])
        yield _Said(f"{said.words} {quoted[2]}", said.left)


def _whole(text: str) -> Iterator[_Said]:
    """Say a text by a template; one that ends a sentence may have lost its full stop."""
    said = _by_template(text)
    if said is not None:
        yield said
    if text[-1] not in ".?!":
        ended = _by_template(f"{text}.")
        if ended is not None:
            yield _Said(ended.words.removesuffix("."), ended.left)


def _ended(text: str) -> Iterator[_Said]:
    """Say a sentence without its full stop."""
    if text.endswith(".") and not _NEXT.search(text):
        said = _say(text[:-1])
        yield _Said(f"{said.words}.", said.left)


def _in_sentences(text: str) -> Iterator[_Said]:
    """Say sentences behind each other."""
    parts = _NEXT.split(text)
    if len(parts) > 1:
        each = [one for _, one in _each(parts)]
        yield _Said(" ".join(one.words for one in each), sum(one.left for one in each))


def _each(parts: Sequence[str]) -> list[tuple[str, _Said]]:
    """Say sentence by sentence; a template may make more than one of them."""
    found = _one_by_one(parts, together_first=False)
    if any(said.left >= _HOPELESS for _, said in found):
        # The first of those that one template made may be known by itself, and the rest may not.
        other = _one_by_one(parts, together_first=True)
        if sum(said.left for _, said in other) < sum(said.left for _, said in found):
            return other
    return found


def _one_by_one(parts: Sequence[str], *, together_first: bool) -> list[tuple[str, _Said]]:
    found: list[tuple[str, _Said]] = []
    at = 0
    while at < len(parts):
        many, said = _next_known(parts[at : at + _MOST_TOGETHER], together_first=together_first)
        raw = " ".join(parts[at : at + many])
        found.append((raw, _Said(_begun_like(raw, said.words), said.left)))
        at += many
    return found


def _next_known(parts: Sequence[str], *, together_first: bool) -> tuple[int, _Said]:
    """Give how many sentences are known together, and what they say."""
    together = [(many, " ".join(parts[:many])) for many in range(len(parts), 1, -1)]
    for many, raw in together:
        word = _word(raw)
        if word:
            return many, _Said(word, 0)
    alone = _say(parts[0])
    if alone.left or together_first:
        for many, raw in together:
            whole = _by_template(raw) or _led(raw)
            if whole is not None and not whole.left:
                return many, whole
    return 1, alone


def _led(text: str) -> _Said | None:
    """Say sentences that are known together, with something before them."""
    for mark in (": ", ") "):
        at = text.find(mark) + len(mark) - 1
        word = _word(text[at + 1 :]) if at > 0 else ""
        if word:
            said = _say(text[:at].removesuffix(":"))
            return _Said(f"{said.words}{':' * (mark == ': ')} {word}", said.left)
    return None


def _in_list(text: str) -> Iterator[_Said]:
    """Say things one by one that stand behind each other."""
    for mark in _LISTS:
        things = text.split(mark)
        if len(things) > 2:
            each = list(map(_say, things))
            yield _Said(mark.join(one.words for one in each), sum(one.left for one in each))


def _in_clauses(text: str) -> Iterator[_Said]:
    """Say what stands on both sides of a mark by itself."""
    for mark in _MARKS:
        at = text.find(mark)
        while at > 0:
            # What is in brackets ends with them.
            lead, rest = text[: at + (mark == ") ")], text[at + len(mark) :]
            # What leaves more than names in English is of no use to what it stands in either.
            first = _say(lead)
            if first.left >= _HOPELESS and mark == ": " and not _NEXT.search(lead):
                first = _Said(lead, _FOREIGN)
            if rest and first.left < _HOPELESS:
                for behind in _behind(mark, rest):
                    yield _Said(f"{first.words}{behind.words}", first.left + behind.left)
            at = text.find(mark, at + 1)


def _behind(mark: str, rest: str) -> Iterator[_Said]:
    """Say a mark and what stands behind it; a clause may be worded with its mark."""
    clause = {" (": f"({rest}", ") ": rest}.get(mark, f"{mark.strip()} {rest}")
    word = _word(clause)
    said = _Said(word, 0) if word else _by_template(clause)
    if said is not None:
        yield _Said(said.words if said.words[:1] in _JOINING else f" {said.words}", said.left)
    if word:
        return
    if mark == ") ":
        said = _say(rest)
        yield _Said(f" {said.words}", said.left)
    elif mark != " (":
        said = _say(rest)
        between = mark if mark.strip() in _JOINING else f" {_word(mark.strip()) or mark.strip()} "
        yield _Said(f"{between}{said.words}", said.left)
    elif rest.endswith(")"):
        said = _say(rest[:-1])
        yield _Said(f" ({said.words})", said.left)


def _begun_like(text: str, said: str) -> str:
    """Begin large what began large."""
    return said[:1].upper() + said[1:] if text[:1].isupper() and said[:1].islower() else said
