"""No end of a line of a finding is lost, however wide the list is."""

import pytest
from PySide6.QtGui import QFontMetrics
from PySide6.QtWidgets import QListWidget

from meterlog.evidence.palette import DAY
from meterlog.model import Review
from meterlog.window.findings_view import FindingsView
from meterlog.window.theme import style_sheet
from meterlog.window.whole_lines import WholeLines

WORDS = (
    "Speed 1: nothing to judge; start-up, missing current and the change to the next speed leave"
    " no steady running (allowed 2.2 to 5.5 A)."
)


@pytest.mark.parametrize("pixels", [12, 15, 20])
def test_no_item_reaches_beyond_the_list(qtbot, pixels):
    view = FindingsView()
    qtbot.addWidget(view)
    view.setStyleSheet(style_sheet(DAY, pixels))
    notes = tuple(WORDS[:length] for length in range(60, len(WORDS) + 1, 7))
    view.show_review(Review(notes=notes))
    view.show()
    beyond = []
    for width in range(230, 400, 9):
        view.resize(width, 400)
        view.list.doItemsLayout()
        wide = view.list.viewport().width()
        rows = range(view.list.count())
        items = [view.list.visualItemRect(view.list.item(row)) for row in rows]
        beyond += [(width, row) for row in rows if items[row].width() > wide]
    assert beyond == []


def test_heights_follow_the_width_in_every_list_of_whole_lines(qtbot):
    listed = QListWidget()
    qtbot.addWidget(listed)
    listed.setWordWrap(True)
    listed.setItemDelegate(WholeLines(listed))
    listed.setStyleSheet(style_sheet(DAY, 15))
    for _ in range(3):
        listed.addItem(WORDS)
    listed.resize(900, 400)
    listed.show()
    qtbot.waitExposed(listed)
    wide = listed.visualItemRect(listed.item(0)).height()
    listed.resize(250, 400)
    lines = QFontMetrics(listed.font()).height()
    qtbot.waitUntil(lambda: listed.visualItemRect(listed.item(0)).height() >= wide + 2 * lines)
