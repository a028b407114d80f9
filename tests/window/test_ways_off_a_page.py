"""Keys that lead away from a page stand on the strip at every size."""

import re

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication

from meterlog.window.pages import TITLES, Page

_Ctrl = Qt.KeyboardModifier.ControlModifier


def strip_words(window):
    """Give the words of the strip that are on screen, without their marks."""
    return re.sub(r"<[^>]*>", "", window.keys.text()).replace("&nbsp;", " ")


@pytest.mark.parametrize("size", [(1024, 600), (1366, 768), (1920, 1080)])
@pytest.mark.parametrize("recording", [False, True])
def test_the_keys_of_the_pages_stay_on_the_strip(window, show, size, recording):
    if recording:
        show(window, live=True)
        window.desk.session.phase = window.desk.session.phase.RECORDING
    try:
        window.resize(*size)
        for page in Page:
            window.show_page(page)
            QApplication.processEvents()
            words = strip_words(window)
            assert words.rstrip().endswith("pages"), (page, words)
            keys = "Ctrl+1…7" if page is Page.CIRCUIT else "J M E B K L"
            assert f" {keys}  pages" in words, (page, words)
            lines = window.keys.heightForWidth(window.keys.width())
            assert lines <= 3 * window.keys.fontMetrics().lineSpacing() * 1.1
    finally:
        window.desk.session.phase = window.desk.session.phase.SHOWING


def test_from_the_circuit_page_they_lead_to_every_other_page(window, qtbot):
    for place, title in enumerate(TITLES, 1):
        window.show_page(Page.CIRCUIT)
        qtbot.keyClick(window.pages, Qt.Key(Qt.Key.Key_0 + place), _Ctrl)
        assert window.desk.page is title.page
