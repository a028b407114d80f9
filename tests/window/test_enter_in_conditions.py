"""Enter in the condition block says that it holds and goes on; it never starts a run."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QPushButton

from meterlog.window.keys import Action
from meterlog.window.named_keys import pressed_by
from meterlog.window.pages import Page

_Key = Qt.Key


@pytest.fixture
def started(window):
    """What was asked for on the Meters page."""
    window.show_page(Page.METERS)
    asked = []
    window.desk.start_or_stop = lambda: asked.append(Action.START_STOP)
    return asked


@pytest.mark.parametrize("key", [_Key.Key_Return, _Key.Key_Enter])
def test_through_all_lines_to_the_last_one(window, qtbot, started, key):
    lines = list(window.desk.meters_page.conditions.lines.values())
    lines[0].setFocus()
    for line in lines[1:]:
        qtbot.keyClick(window.focusWidget(), key)
        assert window.focusWidget() is line.focusProxy()
    qtbot.keyClick(window.focusWidget(), key)
    assert window.focusWidget() is lines[-1].focusProxy()
    assert not started


def test_the_strip_says_so_there_and_only_there(window, qtbot, started):
    def named():
        return window.keys.accessibleName()

    assert "Enter / S: connect and record" in named()
    lines = window.desk.meters_page.conditions.lines
    for name in ("engine", "battery_v"):
        lines[name].setFocus()
        assert "Enter: it holds, next line" in named()
        assert "S: connect and record" in named()
        assert "Enter / S" not in named()
    window.pages.setFocus()
    assert "Enter / S: connect and record" in named()
    qtbot.keyClick(window.pages, _Key.Key_Return)
    assert started == [Action.START_STOP]


def test_a_click_on_enter_in_the_strip_does_what_it_says(window, started):
    lines = list(window.desk.meters_page.conditions.lines.values())
    lines[0].setFocus()
    window.keys.pressed.emit(pressed_by("Enter"))
    assert window.focusWidget() is lines[1].focusProxy()
    window.keys.pressed.emit(pressed_by("S"))
    assert started == [Action.START_STOP]


def test_as_last_time_is_confirmed_and_starts_nothing(window, qtbot, started):
    line = window.desk.meters_page.conditions.lines["battery_v"]
    line.show_text("12.4", counts=False)
    line.confirm.setFocus()
    assert isinstance(window.focusWidget(), QPushButton)
    qtbot.keyClick(window.focusWidget(), _Key.Key_Return)
    assert window.desk.meters_page.conditions.conditions.battery_v == 12.4
    assert not started
