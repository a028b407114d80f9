"""From the complaint to a pack that holds, without a mouse, on a real link to a virtual fan."""

import zipfile

from PySide6.QtCore import Qt

from meterlog.evidence import verify_folder
from meterlog.evidence.pack_verify import verify_pack
from meterlog.model import EventKind, SpanKind
from meterlog.recording import Recording
from meterlog.window.pages import Page
from meterlog.window.session import Phase
from meterlog.work.job_folder import Side

_Key = Qt.Key
CTRL = Qt.KeyboardModifier.ControlModifier


class Hands:
    """Presses keys wherever the focus is."""

    def __init__(self, window, qtbot, bench):
        self.window, self.qtbot, self.desk = window, qtbot, window.desk
        self.bench = bench

    @property
    def place(self):
        return self.window.focusWidget() or self.window.pages.currentWidget()

    def press(self, *keys):
        for key in keys:
            self.qtbot.keyClick(self.place, key)

    def turn(self, place):
        """Turn to a page by Ctrl and its place."""
        self.qtbot.keyClick(self.place, place, CTRL)
        page = self.desk.page
        if page in self.desk.parts:
            self.qtbot.waitUntil(self.desk.parts[page].widget.isVisible)

    def type(self, words):
        self.qtbot.keyClicks(self.place, words)

    def until(self, true, seconds=20):
        self.qtbot.waitUntil(true, timeout=seconds * 1000)

    def record(self, *, dead):
        """Record one run: speed 4, tap where it is dead, mark, note, a wrong speed taken back."""
        session = self.desk.session
        self.press(_Key.Key_Enter)
        self.until(lambda: session.phase is Phase.RECORDING)
        self.until(lambda: self.desk.page is Page.RUN)
        self.press(_Key.Key_4)
        if dead:
            self.until(lambda: any(s.kind is SpanKind.DEAD for s in session.review.spans))
            self.press(_Key.Key_Plus)
        amperes = self.desk.run_page.amperes
        self.until(lambda: self.bench.draws(amperes, sound=not dead))
        self.press(_Key.Key_H, _Key.Key_N)
        self.type("smells hot")
        self.press(_Key.Key_Return)
        self.press(_Key.Key_T, _Key.Key_Backspace)
        self.qtbot.wait(1500)
        self.press(_Key.Key_Enter, _Key.Key_Enter)
        self.until(lambda: session.phase is Phase.SHOWING)
        return session.folder


def test_the_whole_job_by_keyboard_alone(window, qtbot, bench):
    hands = Hands(window, qtbot, bench)
    desk = window.desk
    assert desk.page is Page.JOB
    qtbot.waitUntil(desk.parts[Page.JOB].widget.isVisible)
    hands.press(_Key.Key_Q)
    for words in ("WO-5501", "Ottoline Farrow", "Calder Sprite (invented)"):
        hands.type(words)
        hands.press(_Key.Key_Return)
    hands.turn(_Key.Key_2)
    assert desk.page is Page.METERS
    assert desk.at_hand.card.vehicle == "Calder Sprite (invented)"
    hands.press(_Key.Key_Escape)

    before = hands.record(dead=True)
    hands.press(_Key.Key_P)
    assert desk.at_hand.work.fitted is Side.NEW
    after = hands.record(dead=False)
    assert [(one.folder, one.side) for one in desk.at_hand.work.recordings] == [
        (before, Side.OLD),
        (after, Side.NEW),
    ]
    assert [one.speeds for one in desk.at_hand.work.recordings] == [1, 1]
    for folder in (before, after):
        assert verify_folder(folder).intact
        recording = Recording.open(folder)
        assert recording.about.job.work_order == "WO-5501"
        kinds = [one.kind for one in recording.events]
        assert kinds.count(EventKind.WITHDRAWN) == 1
        assert {"mark 1", "smells hot"} <= {one.value for one in recording.events}

    hands.turn(_Key.Key_5)
    compare = desk.parts[Page.COMPARE]
    hands.until(lambda: compare.laid is not None)
    hands.turn(_Key.Key_6)
    claim = desk.parts[Page.CLAIM]
    hands.press(_Key.Key_P)

    hands.until(claim.page.made.isVisible, 240)
    assert claim.page.said.text() == ""
    pack = claim.page.made.folder
    for name in ("claim.zip", "claim.pdf"):
        found = verify_pack(pack / name)
        assert found.intact, found.problems
    with zipfile.ZipFile(pack / "claim.zip") as archive:
        assert "WO-5501" in archive.read("claim/data/job-card.json").decode()

    hands.turn(_Key.Key_7)
    model = desk.parts[Page.RECORDINGS].widget.table.model()
    hands.until(lambda: model.rowCount() == 3)
