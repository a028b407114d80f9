"""The Keys page: Esc leaves it, Tab goes through it, and no key of another page acts on it."""

import pytest
from PySide6.QtCore import Qt

from meterlog.window.keys import BINDINGS, Action
from meterlog.window.named_keys import OR, each_key, key_shown
from meterlog.window.pages import Page

_Key = Qt.Key


@pytest.mark.parametrize("page", [Page.CIRCUIT, Page.METERS, Page.RUN, Page.CLAIM])
@pytest.mark.parametrize("key", [_Key.Key_Escape, _Key.Key_F12])
def test_esc_leads_back_to_the_page_before(window, qtbot, page, key):
    window.show_page(page)
    qtbot.keyClick(window.pages, _Key.Key_F12)
    assert window.desk.page is Page.KEYS
    assert ("Esc", "back") in window.desk.keys.shown(Page.KEYS, guided=False)
    qtbot.keyClick(window.focusWidget(), key)
    assert window.desk.page is page


def test_esc_first_ends_the_waiting_for_a_key(window, qtbot):
    window.show_page(Page.CIRCUIT)
    qtbot.keyClick(window.pages, _Key.Key_F12)
    qtbot.keyClick(window.pages, _Key.Key_Insert)
    qtbot.keyClick(window.pages, _Key.Key_Escape)
    assert window.desk.page is Page.KEYS
    qtbot.keyClick(window.pages, _Key.Key_Escape)
    assert window.desk.page is Page.CIRCUIT


def test_while_recording_only_the_keys_named_at_the_bottom_act(window, show, qtbot):
    show(window, live=True)
    window.desk.session.phase = window.desk.session.phase.RECORDING
    window.show_page(Page.KEYS)
    try:
        named = {
            key_shown(word)
            for keys, _ in window.desk.keys.shown(Page.KEYS, guided=False)
            for word in each_key(keys)
            if word != OR
        }
        for one in BINDINGS:
            for key in one.keys:
                done = []
                window.desk.do = lambda wanted, step=0, done=done: done.append(wanted)
                qtbot.keyClick(window.pages, key)
                twin = {_Key.Key_Return: _Key.Key_Enter}.get(key, key)
                assert bool(done) == (twin in named), one.action
        quiet = {Action.TAP, Action.SPEED, Action.NOTE, Action.WIGGLE, Action.FOLLOW, Action.UNDO}
        for action in quiet:
            assert not window.desk.keys.acts(action, Page.KEYS)
    finally:
        window.desk.session.phase = window.desk.session.phase.SHOWING


def test_shift_and_arrows_move_no_edge_of_the_hidden_trace(window, show, qtbot):
    show(window)
    moved = []
    window.desk.run_page.move_edge = lambda **edge: moved.append(edge)
    window.show_page(Page.KEYS)
    qtbot.keyClick(window.pages, _Key.Key_Left, Qt.KeyboardModifier.ShiftModifier)
    assert not moved
    window.show_page(Page.RUN)
    qtbot.keyClick(window.pages, _Key.Key_Left, Qt.KeyboardModifier.ShiftModifier)
    assert moved == [{"start": -1}]


def test_tab_goes_through_the_table_and_the_buttons(window, qtbot):
    window.show_page(Page.KEYS)
    page = window.desk.parts[Page.KEYS].page
    seen = []
    for _ in range(3):
        qtbot.keyClick(window.focusWidget(), _Key.Key_Tab)
        seen.append(window.focusWidget())
    assert seen == [page.table, page.bind, page.loosen]
