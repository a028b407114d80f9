"""The frame of the window at the sizes it is used at, also after it was larger."""

import pytest
from PySide6.QtWidgets import QGridLayout, QLayout

from meterlog.window.pages import Page
from meterlog.window.theme import space_out

SMALL, LARGE = (1024, 600), (3840, 2160)


def rows_of(header):
    return {header.mapFromGlobal(one.mapToGlobal(one.rect().center())).y() // 30 for one in
            (*header.pages.values(), header.start, header.open, header.looks)}  # fmt: skip


def lines_of(strip):
    return strip.heightForWidth(strip.width()) / strip.fontMetrics().lineSpacing()


def test_the_header_stands_in_one_row_also_after_the_window_was_larger(window, qtbot):
    window.resize(*SMALL)
    qtbot.wait(50)
    start = window.header.start.width()
    assert len(rows_of(window.header)) == 1
    window.resize(*LARGE)
    qtbot.wait(50)
    assert window.header.start.width() > start
    window.resize(*SMALL)
    qtbot.waitUntil(lambda: len(rows_of(window.header)) == 1, timeout=2000)
    qtbot.waitUntil(lambda: window.header.start.width() == start, timeout=2000)


@pytest.mark.parametrize("page", list(Page))
def test_the_keys_of_a_page_take_two_lines_and_the_tip_names_what_is_left_out(window, qtbot, page):
    window.resize(*SMALL)
    window.show_page(page)
    qtbot.wait(30)
    keys = window.keys
    assert lines_of(keys) < 2.8
    shown = window.desk.keys.shown(page, guided=False)
    left_out = [words for _, words in shown if words.replace(" ", "&nbsp;") not in keys.text()]
    for words in left_out:
        assert words in keys.toolTip()
    assert "F12" in keys.text()
    assert all(f"{named}: {words}" in keys.accessibleName() for named, words in shown)


def gaps_of(window):
    return [
        (one.horizontalSpacing(), one.verticalSpacing(), one.contentsMargins())
        if isinstance(one, QGridLayout)
        else (one.spacing(), one.contentsMargins())
        for one in window.findChildren(QLayout)
    ]


def test_gaps_grow_with_the_letters_and_are_as_before_afterwards(window):
    space_out(window, 12)
    before = gaps_of(window)
    space_out(window, 40)
    grown = gaps_of(window)
    space_out(window, 12)
    assert gaps_of(window) == before
    larger = sum(new[0] > old[0] for new, old in zip(grown, before, strict=True))
    assert larger > len(before) / 2
    assert not any(new[0] < old[0] for new, old in zip(grown, before, strict=True))
