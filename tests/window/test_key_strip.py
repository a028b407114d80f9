"""The key map can be clicked: a mouse does all that keys do."""

import re

import pytest
from PySide6.QtCore import Qt

from meterlog.window.keys import BINDINGS, Action
from meterlog.window.named_keys import key_shown
from meterlog.window.pages import Page

_Key = Qt.Key


@pytest.mark.parametrize(
    ("word", "key"),
    [
        ("Enter", _Key.Key_Enter), ("S", _Key.Key_S), ("7", _Key.Key_7), ("+", _Key.Key_Plus),
        ("−", _Key.Key_Minus), ("⌫", _Key.Key_Backspace), ("PgDn", _Key.Key_PageDown),
        ("F11", _Key.Key_F11), ("Home", _Key.Key_Home), ("*", _Key.Key_Asterisk),
        ("to", None), ("arrows", None), ("⇧←→↑↓", None), ("Ctrl+C", None), ("–", None),
    ],
)  # fmt: skip
def test_each_word_of_the_map_is_the_key_it_names_or_none(word, key):
    assert key_shown(word) == key


def test_every_key_on_the_map_of_the_trace_is_one_that_acts(window, show):
    show(window)
    window.show_page(Page.RUN)
    keys = {int(told) for told in re.findall(r'href="(\d+)"', window.keys.text())}
    acting = {key.value for one in BINDINGS for key in one.keys}
    assert keys <= acting
    assert {_Key.Key_0.value, _Key.Key_9.value, _Key.Key_T.value, _Key.Key_Right.value} <= keys


def test_a_click_on_a_key_is_a_press_of_it(window, show):
    show(window, live=True)
    done = []
    window.desk.do = lambda wanted, step=0: done.append((wanted, step))
    for key in (_Key.Key_3, _Key.Key_T, _Key.Key_Left):
        window.keys.linkActivated.emit(str(key.value))
    assert done == [(Action.SPEED, 3), (Action.TAP, 0), (Action.EARLIER, 0)]
