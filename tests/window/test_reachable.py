"""Every page for those who can't see it or have no mouse: names, Tab, sizes and scales."""

import os
import subprocess
import sys
from pathlib import Path

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import (
    QAbstractButton,
    QAbstractItemView,
    QAbstractScrollArea,
    QAbstractSpinBox,
    QComboBox,
    QHeaderView,
    QLineEdit,
    QPlainTextEdit,
    QWidget,
)

from meterlog.window.pages import Page

CONTROLS = (
    QAbstractButton,
    QComboBox,
    QLineEdit,
    QPlainTextEdit,
    QAbstractSpinBox,
    QAbstractItemView,
)
LEAST_TARGET = 24
"""Height and width of what is clicked, WCAG 2.2, 2.5.8 (from memory), in unscaled pixels."""


def controls(window):
    """Give the controls on show that a person works with; not the insides of others."""
    for widget in window.findChildren(QWidget):
        if isinstance(widget, QHeaderView):
            continue
        if not isinstance(widget, CONTROLS) or not widget.isVisibleTo(window):
            continue
        parent = widget.parent()
        inside = isinstance(parent, QComboBox | QAbstractSpinBox) or (
            isinstance(parent, QAbstractScrollArea | QWidget)
            and type(parent).__name__ == "QComboBoxPrivateContainer"
        )
        if not inside and widget.objectName() != "qt_spinbox_lineedit":
            yield widget


def spoken(widget):
    """Give what a screen reader says."""
    text = widget.text() if isinstance(widget, QAbstractButton) else ""
    return widget.accessibleName() or text


@pytest.fixture
def turned(window, qtbot):
    """Turn to a page and wait until it stands."""

    def turn(page):
        window.show_page(page)
        qtbot.waitUntil(lambda: window.pages.currentIndex() == page)
        if page in window.desk.parts:
            qtbot.waitUntil(window.desk.parts[page].widget.isVisible)
        return window

    return turn


@pytest.mark.parametrize("page", list(Page), ids=lambda page: page.name)
def test_every_control_has_a_name(turned, page):
    nameless = [
        f"{type(one).__name__} in {type(one.parent()).__name__}"
        for one in controls(turned(page))
        if not spoken(one).strip(" …")
    ]
    assert nameless == []


@pytest.mark.parametrize("page", list(Page), ids=lambda page: page.name)
def test_tab_reaches_every_control_that_can_be_used(turned, qtbot, page):
    window = turned(page)
    window.activateWindow()
    reached, start = set(), None
    widget = window
    for _ in range(20_000):
        widget = widget.nextInFocusChain()
        if widget is start:
            break
        start = start or widget
        reached.add(widget)
    usable = [
        one for one in controls(window) if one.isEnabled() and not window.header.isAncestorOf(one)
    ]
    missed = [
        spoken(one)
        for one in usable
        if one not in reached or not one.focusPolicy() & Qt.FocusPolicy.TabFocus
    ]
    assert missed == []


@pytest.mark.parametrize("page", list(Page), ids=lambda page: page.name)
def test_what_is_clicked_is_large_enough(turned, page):
    window = turned(page)
    window.grab()
    small = [
        (spoken(one), one.width(), one.height())
        for one in controls(window)
        if isinstance(one, QAbstractButton)
        and one.isCheckable() is False
        and min(one.width(), one.height()) < LEAST_TARGET
    ]
    assert small == []


SCALED = """
import os, sys, time
from pathlib import Path
from PySide6.QtWidgets import QApplication, QPushButton
application = QApplication([])
application.setStyle("Fusion")
from meterlog.window.main_window import MainWindow
from meterlog.window.pages import Page
window = MainWindow()
window.resize(int(sys.argv[1]), int(sys.argv[2]))
window.show()
window.fill()
for page in Page:
    window.show_page(page)
    end = time.monotonic() + 0.15
    while time.monotonic() < end:
        application.processEvents()
    picture = window.grab()
    assert picture.devicePixelRatio() == float(os.environ["QT_SCALE_FACTOR"])
    for button in window.header.findChildren(QPushButton):
        assert button.width() >= button.minimumSizeHint().width(), (page, button.text())
        right = button.mapTo(window, button.rect().bottomRight()).x()
        assert right <= window.width(), (page, button.text())
    assert window.width() == int(sys.argv[1]), (page, window.width())
    assert window.height() == int(sys.argv[2]), (page, window.height())
os._exit(0)
"""


@pytest.mark.parametrize(
    ("scale", "width", "height"),
    [("1", 1024, 600), ("1.5", 1024, 600), ("2", 1280, 800), ("3", 1024, 600)],
)
def test_every_page_fits_at_every_scale(tmp_path, scale, width, height):
    """Sizes are unscaled: 1024 x 600 at 300 % is a screen of 3072 x 1800."""
    settings = {name: str(tmp_path) for name in ("HOME", "XDG_CONFIG_HOME", "XDG_CACHE_HOME")}
    surroundings = {**os.environ, **settings, "QT_SCALE_FACTOR": scale}
    root = Path(__file__).parents[2]
    done = subprocess.run(
        [sys.executable, "-c", SCALED, str(width), str(height)],
        env={**surroundings, "PYTHONPATH": str(root), "QT_QPA_PLATFORM": "offscreen"},
        cwd=tmp_path,
        capture_output=True,
        text=True,
        timeout=240,
        check=False,
    )
    assert done.returncode == 0, done.stderr[-2000:]
