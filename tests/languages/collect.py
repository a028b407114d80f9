"""Collects the texts of the window, and the templates of the engine's sentences, from the source.

pyside6-lupdate knows Qt's own functions only; the window says all through ``say``. So the texts are
read from the syntax tree here, and written as a file of calls that lupdate reads.
"""

from __future__ import annotations

import ast
import re
import tomllib
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

PACKAGE = Path(__file__).parents[2] / "meterlog"
WINDOW = PACKAGE / "window"
PROFILES = PACKAGE.parent / "profiles"
LAYERS = (
    "acquire", "analysis", "circuit", "evidence", "instruments", "model", "profile", "recording",
    "work",
)  # fmt: skip
"""All of the engine: what it says may come to the window, so all of it is translated..."""
NOT_SHOWN = {
    "acquire/bus.py": "told to the log alone",
    "analysis/skew.py": "how two meters' times differ: a command's",
    "evidence": "written into evidence, which is English",
    "instruments/virtual": "the virtual bench, of which only commands speak",
    "profile/contradictions.py": "of meter profiles as they are written: check-profile",
    "profile/schema.py": "of profiles as they are written: check-profile",
    "recording/arrow_header.py": "why a block is damaged: for whoever looks into the file",
    "recording/edits_file.py": "of imports, which are a command's",
    "recording/events_file.py": "of imports, which are a command's",
    "recording/exported_events.py": "of imports, which are a command's",
    "recording/exported_rows.py": "of imports, which are a command's",
    "recording/imported_folder.py": "of imports, which are a command's",
    "recording/pyramid": "a cache, of whose faults nobody is told: it is made anew",
    "recording/stream_index.py": "why a block is damaged: for whoever looks into the file",
    "recording/table_metadata.py": "of imports, which are a command's",
    "recording/tables_import.py": "of imports, which are a command's",
    "recording/trace_": "of imports, which are a command's",
    "work/comparison_files.py": "a command's",
    "work/demo": "the demo in the terminal, and what it invents",
    "work/doctor": "a command's",
    "work/lost_stretches.py": "of the command that joins parts",
    "work/screening/columns.py": "of the tables of a screening, which are in English",
    "work/screening/fetching.py": "of the command that screens",
    "work/screening/store.py": "of the command that screens",
    "work/screening/cluster.py": "of the command that screens",
    "work/screening/workers.py": "of the command that screens",
    "work/skew": "a command's",
}
"""... but for the files and folders whose names begin like this, each with the reason why nothing
of them comes to the window."""
_CUT_SHORT = ("next_tests.py",)
"""Files of whose texts the first sentence may stand alone, as in the verdict's paragraph."""
_EVIDENCE = (
    "attached_names.py", "checked.py", "comparison_text.py", "pack_check.py",
    "pack_verification.py", "pack_verify.py", "pdf_attached.py", "pdf_form.py", "pdf_pages.py",
    "row_checks.py",
    "signed_manifest.py", "signing.py", "verify.py", "zip_form.py", "zip_gaps.py", "zip_safety.py",
)  # fmt: skip
"""What the check of a pack and the comparison say in the window too."""
_PROFILE_WORDS = (
    "title", "label", "confirm", "repair", "why", "reach", "words", "power_off_cure",
)  # fmt: skip
"""Keys of shipped profiles whose text is shown."""
_SHORT = (
    "speed {0}", "at speed {0}", "pass", "fail", "tap", "taps", "simulated", "typed", "imported",
    "motor", "feed", "return", "current gone", "base line", "leads moved first", "clamp zero",
    "motor-side", "controller", "fuse", "relay", "ground", "Next: {0}", "and",
    "probability by chance {0}", "({0} more like it)", "{0} tap", "{0} taps",
    "{0} attempts", "no answer within {0} s", "repeats", "Differs", "housing", "place", "air",
    "intake", "control", "filter", "windows",
    "{0} times {1} between {2} s and {3} s, {4} s together{5}", "{0} or {1}", "or", "once",
    "{0} leaves {1}", "{0} points to {1}", "{0}, as in a circuit in order, leaves {1}",
    "{0}, as in a circuit in order, points to {1}",
    "{0} ({1} to {2} {3} in a circuit in order) leaves {4}",
    "{0} ({1} to {2} {3} in a circuit in order) points to {4}", "fell", "rose", "reading {0}",
    "Besides: {0}", "It is {0}", "It is not {0}", "less", "more", "{0} gap", "{0} gaps",
    "{0} at speeds {1}", "{0} at speed {1}", "too fast",
    "then {0}", "own error and zero", "clamp", "shunt", "the rest", "own error",
    "{0} points", " sound {0} A {1} fuse", "module", "pack", "switch", "head",
    "motor ground", "high relay",
    "lost: {0}",
    "the feed recovered by {0} V from speed {1} to {2} up to {3} s, as under a load",
)  # fmt: skip
"""Words that the sentences are filled with."""
_OF_THE_SYSTEM = (
    "No space left on device", "No such file or directory", "Permission denied",
    "Read-only file system", "Input/output error", "No such device", "Not a directory",
    "Is a directory", "File exists", "File name too long", "Device or resource busy",
    "Operation not permitted", "Connection refused", "Connection timed out",
    "Disk quota exceeded", "Too many open files", "Stale file handle",
    "Transport endpoint is not connected", "Bad file descriptor", "Directory not empty",
    "Cannot allocate memory", "File too large", "Invalid argument",
)  # fmt: skip
"""What systems say of a disk or a port that fails, which stands in the engine's errors."""
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
_HOLE = re.compile(r"\{\d+\}")
_FORMAT = re.compile(r"(?<!\{)\{(?:[a-z_]*(?::[^{}]*)?)\}(?!\})")
_NO_WORDS = re.compile(
    r"\b(SELECT|INSERT|CREATE|DELETE FROM|PRAGMA|BEGIN|FROM|WITH|JOIN|WHERE)\b|"
    r"\b(PRIMARY KEY|NOT NULL)\b|\b(instr|max)\(|scatter \{|"
    r"\(\?[P:]|\[[^\]]*\\|\| None|"  # patterns, types
    r"^meterlog [a-z ]*(\{\d\}|1)$|^(--|# )|\w:[a-z]|\}:[a-z]|"  # formats, options, keys of budgets
    r"^(file|rows|block): \{|quick_check|\"chain\"|verdicts\.|\$$|^(zlib|qpdf) "
)
"""Strings that are no words: statements of a database, patterns, forms of files, keys."""
_UNITS = frozenset(
    ("min", "ms", "mOhm", "ohm", "Ohm", "Hz", "kHz", "ppm", "kB", "KiB", "MiB", "GiB", "GB", "MB")
)
_OF_PYTHON = frozenset(
    ("ValueError", "TypeError", "RuntimeError", "KeyError", "AssertionError", "LookupError")
)


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
    yield from ("PgUp", "PgDn", "Ins", "Del", "Esc", "Enter")
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
    """Give the templates of the engine's sentences, values as ``{0}``, ``{1}``; and its words.

    Those too that the window words otherwise, because its remedies are no commands; and what is
    said in the shipped profiles.
    """
    from meterlog.window.remedies_here import remedy_here

    found = {*_SHORT, *_OF_OTHERS, *_OF_THE_SYSTEM, *profile_words()}
    for file in engine_files():
        said = set(templates_of(ast.parse(file.read_text("utf-8"))))
        found |= said
        if file.name in _CUT_SHORT:
            found |= {one.partition(". ")[0] + "." for one in said if ". " in one}
    return sorted(found | {remedy_here(one) for one in found})


def engine_files() -> Iterator[Path]:
    """Give the files of the engine whose sentences may come to the window."""
    for layer in LAYERS:
        for file in sorted((PACKAGE / layer).rglob("*.py")):
            name = file.relative_to(PACKAGE).as_posix()
            shown = name.startswith("evidence/") and name.removeprefix("evidence/") in _EVIDENCE
            if shown or not name.startswith(tuple(NOT_SHOWN)):
                yield file


def profile_words() -> set[str]:
    """Give what the shipped profiles bring along: titles, labels, what confirms and repairs."""
    found: set[str] = set()
    for file in sorted(PROFILES.rglob("*.toml")):
        found |= set(_worded(tomllib.loads(file.read_text("utf-8"))))
    return found


def _worded(thing: object, key: str = "") -> Iterator[str]:
    if isinstance(thing, dict):
        for name, inner in thing.items():
            yield from _worded(inner, name)
    elif isinstance(thing, list):
        for inner in thing:
            yield from _worded(inner, key)
    elif isinstance(thing, str) and key in _PROFILE_WORDS:
        yield thing


def templates_of(tree: ast.Module) -> Iterator[str]:
    """Give the templates of one file: texts with a blank in them that could be words."""
    inside = _not_told(tree)
    for node in ast.walk(tree):
        if id(node) in inside:
            continue
        if isinstance(node, ast.JoinedStr):
            pieces = [
                str(one.value) if isinstance(one, ast.Constant) else None for one in node.values
            ]
        elif isinstance(node, ast.Constant) and isinstance(node.value, str):
            pieces = _format_pieces(node.value)
        else:
            continue
        holes = iter(range(len(pieces)))
        whole = "".join(f"{{{next(holes)}}}" if one is None else one for one in pieces)
        yield from (line for one in whole.split("\n") if (line := _as_template(one)))


def _format_pieces(text: str) -> list[str | None]:
    """Cut a text at what ``str.format`` would fill, None standing for that."""
    pieces: list[str | None] = []
    for at, one in enumerate(_FORMAT.split(text)):
        pieces += [None, one] if at else [one]
    return [one for one in pieces if one is None or one]


def _as_template(line: str) -> str:
    """Give a line as a template; empty for what is none: names, keys, statements of a database."""
    words = _WORD.findall(_HOLE.sub("", line))
    least = 1 if _HOLE.search(line) else 2
    if len(words) < least or " " not in line.strip() or _NO_WORDS.search(line):
        return ""
    if all(word in _UNITS for word in words):
        return ""
    # What a template fills stands where its blanks are; whole words are looked up without them.
    return line if _HOLE.search(line) else line.strip()


def _not_told(tree: ast.Module) -> set[int]:
    """Give the nodes that are no texts of their own.

    Docstrings, pieces of an f-string, and what only a programmer is told.
    """
    out: set[int] = set()
    for node in ast.walk(tree):
        if isinstance(node, ast.Expr):
            out.add(id(node.value))
        elif isinstance(node, ast.JoinedStr):
            out |= {id(one) for one in node.values}
        elif isinstance(node, ast.Raise) and _of_python(node.exc):
            out |= {id(one) for one in ast.walk(node)}
    return out


def _of_python(raised: ast.expr | None) -> bool:
    """Tell an error that only a programmer sees."""
    called = raised.func if isinstance(raised, ast.Call) else None
    return isinstance(called, ast.Name) and called.id in _OF_PYTHON
