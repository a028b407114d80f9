"""A dialog locks nothing: a recording behind it is marked and stopped as ever."""

import ast
from pathlib import Path

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QFileDialog

import meterlog.window
from meterlog.model import EventKind
from meterlog.window.pages import Page
from meterlog.window.session import Phase

LOCKING = {"exec", "exec_", "open", "question", "warning", "critical", "information", "getText"}
"""Of a dialog: what would lock the window, or wait within it."""
PACKAGE = Path(meterlog.window.__file__).parent


def locking_calls(text):
    """Give the lines in which a dialog is made to lock."""
    for node in ast.walk(ast.parse(text)):
        if not isinstance(node, ast.Call) or not isinstance(node.func, ast.Attribute):
            continue
        owner = ast.unparse(node.func.value).lower()
        name = node.func.attr
        if name in LOCKING and ("dialog" in owner or "messagebox" in owner or "menu" in owner):
            yield node.lineno
        if name.startswith(("getOpen", "getSave", "getExisting", "setWindowModality")):
            yield node.lineno
        if name == "setModal" and ast.unparse(node.args[0]) != "False":
            yield node.lineno


@pytest.mark.parametrize(
    "line",
    [
        "dialog.exec()",
        "self._dialog.open()",
        "QMessageBox.question(self, 'a', 'b')",
        "QFileDialog.getOpenFileName(self)",
        "one.setModal(True)",
    ],
)
def test_what_locks_is_seen(line):
    assert list(locking_calls(line)) == [1]


def test_no_dialog_of_the_window_locks_it():
    found = {
        f"{path.relative_to(PACKAGE)}:{line}"
        for path in PACKAGE.rglob("*.py")
        for line in locking_calls(path.read_text("utf-8"))
    }
    assert not found


def test_a_tap_is_marked_behind_a_dialog(window, show, qtbot):
    window.show_page(Page.JOB)
    window.desk.parts[Page.JOB].widget.photos.add.emit()
    (dialog,) = window.findChildren(QFileDialog)
    assert dialog.isVisible()
    show(window, live=True)
    session, taken = window.desk.session, []
    session.phase = Phase.RECORDING
    session.mark = lambda kind, *_: taken.append(kind)
    window.activateWindow()
    window.setFocus()
    qtbot.keyClick(window, Qt.Key.Key_T)
    assert taken == [EventKind.TAP]
    session.phase = Phase.SHOWING
    dialog.close()
