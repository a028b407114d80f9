"""Every text that the window shows goes through ``say``: it can be translated, and is."""

import ast
import re
from pathlib import Path

import pytest

WINDOW = Path(__file__).parents[2] / "meterlog" / "window"
SETTERS = {
    "setText", "setPlaceholderText", "setAccessibleName", "setAccessibleDescription", "setToolTip",
    "setWindowTitle", "setTitle", "setStatusTip", "setWhatsThis", "setPrefix", "setEditText",
    "addItem", "addItems", "insertItem", "addRow", "setHorizontalHeaderLabels", "showText",
    "drawText", "setLabelText", "setNameFilters",
    "QLabel", "QPushButton", "QCheckBox", "QRadioButton", "QGroupBox", "QListWidgetItem",
    "QTableWidgetItem", "QFileDialog", "PageKey", "UsageError", "MeterlogError", "DiskFailed",
    "show_part", "Digits", "show_state", "show_words", "show_lacking",
}  # fmt: skip
"""Of Qt and of the window's own: what they are given is read by a person."""
NOT_WORDS = {
    "meterlog": "the program's name",
    "A4": "a size of paper",
}
BEFORE_ANY_LANGUAGE = {"language.py"}
"""Says on the command line why a language can't be loaded."""
_WORD = re.compile(r"[A-Za-z]{2,}")
_MARKUP = re.compile(r"<[^>]*>|&[a-z]+;")
_KEYS = re.compile(r"(F\d+|Enter|Space|Home|End|PgUp|PgDn|Ins|Del|Esc| |/)+")
"""Names of keys: each is said by itself where it is shown."""


def bare_texts(tree):
    """Give (line, text) of each literal with words that reaches a setter as it stands."""
    for call in ast.walk(tree):
        if not isinstance(call, ast.Call):
            continue
        name = call.func.attr if isinstance(call.func, ast.Attribute) else ""
        name = call.func.id if isinstance(call.func, ast.Name) else name
        if name not in SETTERS:
            continue
        for given in (*call.args, *(word.value for word in call.keywords)):
            for line, text in _literals(given):
                plain = _MARKUP.sub("", text)
                if _WORD.search(plain) and text not in NOT_WORDS and not _KEYS.fullmatch(text):
                    yield line, text


def _literals(node):
    """Give the literals of an expression that are shown: not those inside a call, nor of a test."""
    if isinstance(node, ast.Constant) and isinstance(node.value, str):
        yield node.lineno, node.value
    elif isinstance(node, ast.JoinedStr):
        for part in node.values:
            if isinstance(part, ast.Constant):
                yield node.lineno, str(part.value)
            elif isinstance(part, ast.FormattedValue):
                yield from _literals(part.value)
    elif isinstance(node, ast.IfExp):
        yield from _literals(node.body)
        yield from _literals(node.orelse)
    elif isinstance(node, ast.BoolOp):
        for part in node.values:
            yield from _literals(part)
    elif isinstance(node, ast.BinOp):
        yield from _literals(node.left)
        yield from _literals(node.right)
    elif isinstance(node, (ast.Tuple, ast.List)):
        for part in node.elts:
            yield from _literals(part)


@pytest.mark.parametrize("source", [
    'label.setText("Add a meter")',
    'QLabel("Add a meter" if more else "")',
    'label.setText(f"{many} meters")',
    'box.addItem(name or "none chosen", name)',
    'UsageError("is no file.", subject=str(file))',
])  # fmt: skip
def test_a_bare_text_is_seen(source):
    assert list(bare_texts(ast.parse(source)))


@pytest.mark.parametrize("source", [
    'label.setText(say("Add a meter"))',
    'label.setText(f"{value} V")',
    'label.setText("" if on else "▸")',
    'widget.setProperty("rank", "title")',
    'PageKey((Key.Key_F3,), "F3 F4", say("step"), go)',
])  # fmt: skip
def test_what_is_said_or_has_no_words_is_none(source):
    assert not list(bare_texts(ast.parse(source)))


def test_no_text_of_the_window_is_bare():
    found = [
        f"{file.relative_to(WINDOW)}:{line}: {text!r}"
        for file in sorted(WINDOW.rglob("*.py"))
        if file.name not in BEFORE_ANY_LANGUAGE
        for line, text in bare_texts(ast.parse(file.read_text("utf-8")))
    ]
    assert found == []
