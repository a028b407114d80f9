"""The same job without a keyboard: buttons, lists and the clickable key map."""

from PySide6.QtCore import QPoint, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QPushButton

from meterlog.evidence.pack_verify import verify_pack
from meterlog.model import EventKind, SpanKind
from meterlog.recording import Recording
from meterlog.window.pages import Page
from meterlog.window.session import Phase
from meterlog.work.job_folder import Side

_Key = Qt.Key
LEFT = Qt.MouseButton.LeftButton
STEP = 4
"""Pixels between the places at which a link is looked for: less than a letter is wide."""


class Mouse:
    """Clicks what is on show."""

    def __init__(self, window, qtbot, bench):
        self.window, self.qtbot, self.desk = window, qtbot, window.desk
        self.bench = bench

    def click(self, widget):
        """Click the middle of a control that can be seen and used."""
        assert widget.isVisible()
        assert widget.isEnabled()
        self.qtbot.mouseClick(widget, LEFT)

    def turn(self, page):
        self.click(self.window.header.pages[page])
        assert self.desk.page is page
        if page in self.desk.parts:
            self.qtbot.waitUntil(self.desk.parts[page].widget.isVisible)

    def key(self, key):
        """Click a key of the map, where it stands."""
        strip, over = self.window.keys, []
        strip.linkHovered.connect(over.append)
        try:
            for y in range(2, strip.height(), STEP * 2):
                for x in range(0, strip.width(), STEP):
                    QTest.mouseMove(strip, QPoint(x, y))
                    QApplication.processEvents()
                    if over and over[-1] == str(key.value):
                        self.qtbot.mouseClick(strip, LEFT, pos=QPoint(x, y))
                        return
        finally:
            strip.linkHovered.disconnect(over.append)
        raise AssertionError(f"{key} is not on the key map.")

    def until(self, true, seconds=20):
        self.qtbot.waitUntil(true, timeout=seconds * 1000)

    def record(self, *, dead):
        session = self.desk.session
        self.click(self.window.header.start)
        self.until(lambda: session.phase is Phase.RECORDING and self.desk.page is Page.RUN)
        self.key(_Key.Key_4)
        if dead:
            self.until(lambda: any(s.kind is SpanKind.DEAD for s in session.review.spans))
            self.key(_Key.Key_Plus)
        amperes = self.desk.run_page.amperes
        self.until(lambda: self.bench.draws(amperes, sound=not dead))
        self.key(_Key.Key_H)
        self.key(_Key.Key_T)
        self.key(_Key.Key_Backspace)
        self.click(self.window.header.start)
        self.click(self.window.header.start)
        self.until(lambda: session.phase is Phase.SHOWING)
        return session.folder


def test_the_whole_job_by_mouse_alone(window, qtbot, bench):
    mouse = Mouse(window, qtbot, bench)
    desk = window.desk
    mouse.turn(Page.METERS)
    before = mouse.record(dead=True)
    mouse.turn(Page.JOB)
    buttons = desk.parts[Page.JOB].widget.findChildren(QPushButton)
    mouse.click(next(one for one in buttons if one.text() == "New part"))
    assert desk.at_hand.work.fitted is Side.NEW
    mouse.turn(Page.METERS)
    after = mouse.record(dead=False)
    assert [one.folder for one in desk.at_hand.work.recordings] == [before, after]
    kinds = [one.kind for one in Recording.open(before).events]
    assert kinds.count(EventKind.TAP) == 2
    assert kinds.count(EventKind.WITHDRAWN) == 1

    mouse.turn(Page.COMPARE)
    compare = desk.parts[Page.COMPARE]
    mouse.until(lambda: compare.laid is not None)
    mouse.click(compare.view.by_time)
    mouse.turn(Page.CLAIM)
    claim = desk.parts[Page.CLAIM]
    mouse.until(claim.page.make.isEnabled)
    mouse.click(claim.page.make)
    mouse.until(claim.page.made.isVisible, 240)
    assert claim.page.said.text() == ""
    assert verify_pack(claim.page.made.folder / "claim.zip").intact

    mouse.turn(Page.RECORDINGS)
    table = desk.parts[Page.RECORDINGS].widget.table
    mouse.until(lambda: table.model().rowCount() == 3)
    row = next(
        row
        for row in range(3)
        if str(before) in str(table.model().index(row, 0).data(Qt.ItemDataRole.ToolTipRole))
    )
    place = table.visualRect(table.model().index(row, 1)).center()
    qtbot.mouseClick(table.viewport(), LEFT, pos=place)
    qtbot.mouseDClick(table.viewport(), LEFT, pos=place)
    mouse.until(lambda: desk.page is Page.RUN and desk.session.folder == before)
