"""Where a job is opened the work order stands beside its folder, which is named by the time."""

from pathlib import Path

import pytest
from PySide6.QtCore import QEvent, QObject, Qt
from PySide6.QtWidgets import QFileSystemModel, QTreeView

from meterlog.window.job_page import jobs_shown
from meterlog.window.pages import Page
from tests.rig.held_work import HeldWork


@pytest.fixture
def at_hand(window):
    at_hand = window.desk.at_hand
    at_hand.enter("work_order", "WO 4711 (invented)")
    at_hand.enter("plate", "AB 12 (invented)")
    (at_hand.jobs_folder() / "no job").mkdir()
    return at_hand


@pytest.fixture
def asked(window, at_hand):
    """Ask for a job; give the dialog, and what it says now of each folder."""

    def ask():
        window.show_page(Page.JOB)
        desk = window.desk.parts[Page.JOB]
        desk.page.open.click()
        shown = desk._asking.proxyModel()
        source = shown.sourceModel()
        assert isinstance(source, QFileSystemModel)

        def told():
            top = shown.mapFromSource(source.index(str(at_hand.jobs_folder())))
            return {
                shown.index(row, 0, top).data(): shown.index(row, 2, top).data()
                for row in range(shown.rowCount(top))
            }

        return desk._asking, told

    return ask


def test_work_order_and_vehicle_stand_beside_the_folder(at_hand, asked, qtbot):
    dialog, told = asked()
    shown = dialog.proxyModel()
    source = shown.sourceModel()
    qtbot.waitUntil(lambda: len(told()) == 2 and "…" not in told().values(), timeout=5000)
    found = told()
    assert found["no job"] == ""
    assert "WO 4711 (invented)" in found[at_hand.folder.name]
    assert shown.headerData(2, Qt.Orientation.Horizontal) == "Job"
    tree = dialog.findChild(QTreeView)
    assert tree.columnWidth(2) > 100
    at = shown.mapFromSource(source.index(str(at_hand.folder)))
    place = tree.visualRect(at).center()
    qtbot.mouseClick(tree.viewport(), Qt.MouseButton.LeftButton, pos=place)
    with qtbot.waitSignal(dialog.fileSelected) as chosen:
        dialog.accept()
    assert chosen.args == [str(at_hand.folder)]


class Paints(QObject):
    """Counts how often a widget is painted from now on."""

    def __init__(self, widget):
        super().__init__(widget)
        self.many = 0
        widget.installEventFilter(self)

    def eventFilter(self, watched, event):  # noqa: N802 - Qt names it
        self.many += event.type() == QEvent.Type.Paint
        return False


@pytest.fixture
def held(monkeypatch):
    """Each card is read once the test lets it go, as on a share that hangs."""
    truly = jobs_shown.load_card
    held = HeldWork(lambda name: truly(paths[name]))
    paths = {}

    def load(path):
        name = Path(path).parent.name
        paths[name] = path
        return held(name)

    monkeypatch.setattr(jobs_shown, "load_card", load)
    yield held
    held.let_all_go()


def test_a_card_that_can_t_be_read_yet_holds_up_neither_the_window_nor_its_neighbours(
    at_hand, asked, qtbot, held, monkeypatch
):
    monkeypatch.setattr(jobs_shown, "_AT_ONCE", 1)
    dialog, told = asked()
    qtbot.waitUntil(lambda: len(told()) == 2 and len(held.asked) == 1, timeout=5000)
    assert set(told().values()) == {"…"}
    held.let_go(held.asked[0])
    qtbot.waitUntil(lambda: len(held.asked) == 2)
    assert list(told().values()).count("…") == 1
    qtbot.wait(100)
    paints = Paints(dialog.findChild(QTreeView).viewport())
    held.let_go(held.asked[1])
    qtbot.waitUntil(lambda: paints.many > 0)  # nothing else would: nobody touches it
    assert "…" not in told().values()
    assert "WO 4711 (invented)" in told()[at_hand.folder.name]


def test_a_dialog_that_was_closed_has_no_more_cards_read(at_hand, asked, qtbot, held, monkeypatch):
    monkeypatch.setattr(jobs_shown, "_AT_ONCE", 1)
    dialog, told = asked()
    qtbot.waitUntil(lambda: len(told()) == 2 and len(held.asked) == 1, timeout=5000)
    dialog.reject()
    held.let_all_go()
    qtbot.wait(150)
    assert len(held.asked) == 1
