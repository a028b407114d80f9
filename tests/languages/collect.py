"""Collects the texts of the window, and the templates of the engine's sentences, from the source.

pyside6-lupdate knows Qt's own functions only; the window says all through ``say``. So the texts are
read from the syntax tree here, and written as a file of calls that lupdate reads.
"""

from __future__ import annotations

import ast
import re
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

PACKAGE = Path(__file__).parents[2] / "meterlog"
WINDOW = PACKAGE / "window"
SENTENCES_IN = (
    "acquire/zeroing.py",
    "analysis/absence.py",
    "analysis/clamp_decade.py",
    "analysis/compare/before_second.py",
    "analysis/compare/condition_checks.py",
    "analysis/compare/pair.py",
    "analysis/compare/refusals.py",
    "analysis/compare/summary.py",
    "analysis/findings.py",
    "analysis/inferred/unseen.py",
    "analysis/motor/controller_heat.py",
    "analysis/notes.py",
    "analysis/polarity.py",
    "analysis/probe_side.py",
    "analysis/reviewer.py",
    "analysis/slipped_probe.py",
    "analysis/step_findings.py",
    "analysis/stuck.py",
    "analysis/taps/form.py",
    "analysis/taps/summary.py",
    "analysis/startup/fuse_load.py",
    "analysis/startup/fuse_opening.py",
    "analysis/time_notes.py",
    "analysis/typed_roles.py",
    "analysis/verdict/cause.py",
    "analysis/verdict/next_tests.py",
    "analysis/verdict/paragraph.py",
    "analysis/verdict/signs.py",
    "analysis/verdict/unseen.py",
    "analysis/verdict/vanishing.py",
    "analysis/zero_watch.py",
    "circuit/cautions.py",
    "circuit/contradictions.py",
    "circuit/entries.py",
    "circuit/in_order.py",
    "circuit/notes.py",
    "circuit/settling.py",
    "circuit/wording.py",
    "model/circuit_words.py",
    "model/link_text.py",
)
"""Files of the engine whose sentences the window shows most, and which are translated: what was
found, in how far, what speaks against a meter, what to measure next. Others stay English so far; to
have theirs translated, name the file here and run this again."""
_SHORT = (
    "speed {0}", "at speed {0}", "pass", "fail", "tap", "taps", "simulated", "typed", "imported",
    "motor", "feed", "return", "current gone", "base line", "leads moved first", "clamp zero",
    "motor-side", "controller", "fuse", "relay", "ground", "Next: {0}", "and",
    "probability by chance {0}", "({0} more like it)", "{0} tap", "{0} taps",
    "{0} attempts", "no answer within {0} s", "repeats", "Differs", "housing", "place", "air",
    "intake", "control", "filter", "windows",
    "{0} times {1} between {2} s and {3} s, {4} s together{5}",
)  # fmt: skip
"""Words that the sentences are filled with."""
_OF_OTHERS = (
    "sleep is blocked while recording",
    "sleep is not blocked",
    "This finds damage and edits. It can't find somebody who seals anew: write the seal on the work"
    " order when the recording is made, and compare it.",
    "{0} holds no commanded speeds, so that nothing tells which steps belong together.",
    "{0}: NOT as it was packed.",
    "{0}: NOT as sealed.",
    "{0}: intact. Every file agrees with the seal.",
    "{0}: intact. {1} files agree with the lists of the pack.",
)
"""Sentences of files of whose texts the window shows no others (sleep_block.py, checked.py,
and the refusals whose remedy is another one here)."""
ORIGIN_MARKS = (
    "SIMULATED", "IMPORTED", "TYPED BY HAND", "PARTLY TYPED BY HAND",
    "SIMULATED · PARTLY TYPED BY HAND", "IMPORTED · PARTLY TYPED BY HAND",
)  # fmt: skip
"""What :func:`meterlog.model.origin_mark.origin_mark` puts together."""
WEIGHTS = ("same", "differs", "forbids", "not stated")
SEALED = ("sealed", "not sealed", "recovered")
ACROSS_WORDS = ("across the motor",)
_SAYING = {"say": (0,), "later": (0,), "say_many": (2,)}
_WORD = re.compile(r"[A-Za-z]{2,}")


@dataclass(frozen=True, order=True)
class Text:
    """A text as it stands in the source.

    Attributes
    ----------
    words : str
    meaning : str
        What tells it apart from the same English words.
    counts : bool
        It has a form for each kind of number.
    """

    words: str
    meaning: str = ""
    counts: bool = False


def window_texts() -> list[Text]:
    """Give every text that the window itself says, sorted."""
    texts = {text for file in sorted(WINDOW.rglob("*.py")) for text in _said(file)}
    texts |= {Text(words) for words in named_words() if _WORD.search(words)}
    texts |= {Text(words, "sign") for words in _sign_values()}
    texts |= {Text(words, "condition") for words in _choices()}
    counted = {text.words for text in texts if text.counts}
    return sorted(text for text in texts if text.counts or text.words not in counted)


def _said(file: Path) -> Iterator[Text]:
    for node in ast.walk(ast.parse(file.read_text("utf-8"))):
        if not (isinstance(node, ast.Call) and isinstance(node.func, ast.Name)):
            continue
        for place in _SAYING.get(node.func.id, ()):
            word = node.args[place]
            if isinstance(word, ast.Constant) and isinstance(word.value, str):
                meaning = node.args[1] if node.func.id == "say" and len(node.args) > 1 else None
                told = str(meaning.value) if isinstance(meaning, ast.Constant) else ""
                yield Text(word.value, told, counts=node.func.id == "say_many")


def named_words() -> Iterator[str]:
    """Give the words that stand in tables: keys, pages, roles, states, fields of the card."""
    from meterlog.evidence.palette import DAY
    from meterlog.model import EventKind, Outcome, Role, Sign, Sureness
    from meterlog.model.card_fields import ASKED, FIELDS
    from meterlog.model.circuit_check import KEYS
    from meterlog.model.condition_fields import CONDITION_FIELDS
    from meterlog.window.circuit_keys import CIRCUIT_BINDINGS, CircuitAction
    from meterlog.window.job_page.card_groups import GROUPS, HINTS, field_label
    from meterlog.window.key_map import key_name
    from meterlog.window.keys import BINDINGS, Action
    from meterlog.window.kind_words import KIND_WORDS
    from meterlog.window.pages import TITLES
    from meterlog.window.session import Phase
    from meterlog.window.sound.sound_desk import Followed
    from meterlog.work.job_folder import Side
    from meterlog.work.library import Kind, Verdicts

    for table in (Action, CircuitAction, Phase, Followed, Outcome, Sureness, EventKind, Sign,
                  Side, Kind, Verdicts):  # fmt: skip
        yield from (one.value for one in table)
    yield from (role.value.replace("-", " ") for role in Role)
    yield from (style.word for style in DAY.spans.values())
    yield from KIND_WORDS.values()
    yield from KEYS
    yield from ORIGIN_MARKS
    yield from WEIGHTS
    yield from SEALED
    yield from ACROSS_WORDS
    yield from ("moved", "next", "pulsed")
    for binding in (*BINDINGS, *CIRCUIT_BINDINGS):
        yield binding.words
        yield getattr(binding, "before", "")
        yield from binding.shown.split(" ")
    yield from ("PgUp", "PgDn", "Ins", "Del", "Enter")
    yield from (key_name(key) for one in (*BINDINGS, *CIRCUIT_BINDINGS) for key in one.keys)
    for title in TITLES:
        yield from (title.words, title.name)
    for field in FIELDS:
        yield field.words
    yield from (words for _, words in ASKED)
    for group in GROUPS:
        yield group.title
        yield from (field_label(group, key) for key in group.keys)
    yield from HINTS.values()
    for condition in CONDITION_FIELDS:
        yield condition.label


def _sign_values() -> Iterator[str]:
    from meterlog.model.circuit_check import SIGN_VALUES

    yield from (value for values in SIGN_VALUES.values() for value in values)


def _choices() -> Iterator[str]:
    from meterlog.model.condition_fields import CONDITION_FIELDS

    yield from (choice for field in CONDITION_FIELDS for choice in field.choices)


def engine_templates() -> list[str]:
    """Give the templates of the engine's sentences: two words at least, values as ``{0}``, ``{1}``.

    Those too that the window words otherwise, because its remedies are no commands.
    """
    from meterlog.window.remedies_here import remedy_here

    found = {*_SHORT, *_OF_OTHERS}
    for name in SENTENCES_IN:
        found |= set(_templates(ast.parse((PACKAGE / name).read_text("utf-8"))))
    found = {one for one in found if one.strip() == one or "{" in one}
    return sorted(found | {remedy_here(one) for one in found})


def _templates(tree: ast.Module) -> Iterator[str]:
    inside = _not_told(tree)
    for node in ast.walk(tree):
        if id(node) in inside:
            continue
        if isinstance(node, ast.JoinedStr):
            pieces = [
                str(one.value) if isinstance(one, ast.Constant) else None for one in node.values
            ]
        elif isinstance(node, ast.Constant) and isinstance(node.value, str):
            pieces = [node.value]
        else:
            continue
        if len(_WORD.findall(" ".join(one for one in pieces if one))) < 2:
            continue
        holes = iter(range(len(pieces)))
        yield from "".join(f"{{{next(holes)}}}" if one is None else one for one in pieces).split(
            "\n"
        )


def _not_told(tree: ast.Module) -> set[int]:
    """Give the nodes that are no texts of their own: docstrings, and pieces of an f-string."""
    out: set[int] = set()
    for node in ast.walk(tree):
        if isinstance(node, ast.Expr):
            out.add(id(node.value))
        elif isinstance(node, ast.JoinedStr):
            out |= {id(one) for one in node.values}
    return out
