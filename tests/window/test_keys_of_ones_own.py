"""Keys of one's own: bound by pressing them, kept, and never in the way of what must work."""

import json

import pytest
from PySide6.QtCore import QEvent, Qt
from PySide6.QtGui import QKeyEvent

from meterlog.model.errors import DiskFailed, UsageError
from meterlog.window.circuit_keys import CircuitAction
from meterlog.window.key_map import KeyMap, key_name, key_named
from meterlog.window.keys import Action
from meterlog.window.pages import Page

_Key = Qt.Key


def pressed(key, held=Qt.KeyboardModifier.NoModifier):
    return QKeyEvent(QEvent.Type.KeyPress, key, held)


def test_a_bound_key_is_known_the_next_time_and_means_one_thing_a_place(tmp_path):
    keys = KeyMap(tmp_path)
    assert keys.bind(_Key.Key_F13, Action.TAP) is None
    assert keys.bind(_Key.Key_F13, CircuitAction.TAKE) is None
    again = KeyMap(tmp_path)
    assert again.wanted(pressed(_Key.Key_F13), circuit=False) is Action.TAP
    assert again.wanted(pressed(_Key.Key_F13), circuit=True) is CircuitAction.TAKE
    assert again.keys(Action.TAP) == ("F13",)
    assert again.bind(_Key.Key_F13, Action.NOTE) is Action.TAP
    again.free(CircuitAction.TAKE)
    # Elsewhere's meaning holds on the Circuit page where it has no other.
    assert again.wanted(pressed(_Key.Key_F13), circuit=True) is Action.NOTE


def test_keys_held_with_others_are_no_keys_of_ones_own(tmp_path):
    keys = KeyMap(tmp_path)
    keys.bind(_Key.Key_B, Action.TAP)
    assert (
        keys.wanted(pressed(_Key.Key_B, Qt.KeyboardModifier.ControlModifier), circuit=False) is None
    )
    assert keys.wanted(pressed(_Key.Key_B, Qt.KeyboardModifier.KeypadModifier), circuit=False)


@pytest.mark.parametrize("key", [_Key.Key_Escape, _Key.Key_Tab, _Key.Key_Shift, _Key.Key_unknown])
def test_keys_that_must_go_on_working_are_refused(tmp_path, key):
    with pytest.raises(UsageError, match="can't be bound"):
        KeyMap(tmp_path).bind(key, Action.TAP)


@pytest.mark.parametrize("action", [Action.SPEED, CircuitAction.SIGN])
def test_actions_whose_keys_say_which_one_are_refused_with_what_to_do(tmp_path, action):
    with pytest.raises(UsageError, match="next speed"):
        KeyMap(tmp_path).bind(_Key.Key_F13, action)


@pytest.mark.parametrize(
    "content",
    ["", "{", "[]", '{"elsewhere": {"F13": "no such"}, "circuit": {}}',
     '{"elsewhere": {"Nix": "tap"}, "circuit": {}}',
     '{"elsewhere": {"Ctrl+A": "tap"}, "circuit": {}}',
     '{"elsewhere": {"Esc": "tap"}, "circuit": {}}', '{"elsewhere": []}'],
)  # fmt: skip
def test_a_file_that_is_none_is_told_and_the_usual_keys_hold(tmp_path, content):
    (tmp_path / "keys.json").write_text(content)
    keys = KeyMap(tmp_path)
    assert "keys.json" in keys.trouble
    assert keys.wanted(pressed(_Key.Key_F13), circuit=False) is None
    keys.bind(_Key.Key_F13, Action.TAP)
    assert KeyMap(tmp_path).trouble == ""


def test_where_nothing_can_be_kept_nothing_changes(tmp_path):
    (tmp_path / "settings").write_text("a file in the way")
    keys = KeyMap(tmp_path / "settings")
    with pytest.raises(DiskFailed):
        keys.bind(_Key.Key_F13, Action.TAP)
    assert keys.keys(Action.TAP) == ()


def test_every_usual_key_has_a_name_that_leads_back_to_it():
    from meterlog.window.circuit_keys import CIRCUIT_BINDINGS
    from meterlog.window.keys import BINDINGS

    for binding in (*BINDINGS, *CIRCUIT_BINDINGS):
        for key in binding.keys:
            assert key_named(key_name(key)) == key


def choose(page, action):
    row = next(row for row, one in enumerate(page._rows) if one[0] is action)
    page.table.selectRow(row)


def test_a_pedal_is_bound_in_the_window_by_pressing_it_and_marks_a_tap(
    window, show, qtbot, tmp_path
):
    show(window)
    desk = window.desk
    qtbot.keyClick(window.pages.currentWidget(), _Key.Key_F12)
    assert desk.page is Page.KEYS
    page = desk.parts[Page.KEYS].widget
    choose(page, Action.SOUND)
    qtbot.keyClick(page, _Key.Key_Insert)
    qtbot.keyClick(page, _Key.Key_F13)
    assert page.said.text() == "F13 now does: sound."
    window.show_page(Page.RUN)
    done = []
    desk.sound.turn = lambda: done.append("sound")
    qtbot.keyClick(window.pages.currentWidget(), _Key.Key_F13)
    assert done == ["sound"]
    assert ("F13", "sound") in desk.keys.shown(Page.RUN, guided=False)
    kept = json.loads((tmp_path / "settings" / "meterlog" / "keys.json").read_text())
    assert kept["elsewhere"] == {"F13": "sound"}


def test_esc_binds_nothing_and_a_key_in_use_is_told(window, qtbot):
    window.show_page(Page.KEYS)
    page = window.desk.parts[Page.KEYS].widget
    choose(page, Action.NOTE)
    page.bind.click()
    qtbot.keyClick(page, _Key.Key_Escape)
    assert page.said.text() == "Nothing was bound."
    page.bind.click()
    qtbot.keyClick(page, _Key.Key_T)
    assert page.said.text() == "T now does: note. There it goes before: tap."
    page.loosen.click()
    assert window.desk.keys.own.keys(Action.NOTE) == ()


@pytest.mark.parametrize(("key", "speed"), [(_Key.Key_Home, "2"), (_Key.Key_End, "0")])
def test_one_key_goes_to_the_next_speed_and_one_back(window, show, qtbot, key, speed):
    show(window, live=True)
    marks = []
    window.desk.session.mark = lambda kind, value="", at_ns=None: marks.append((kind.value, value))
    qtbot.keyClick(window.pages.currentWidget(), key)
    assert marks == [("speed", speed)]
