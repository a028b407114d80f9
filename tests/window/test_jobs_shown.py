"""Where a job is opened the work order stands beside its folder, which is named by the time."""

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QFileSystemModel, QTreeView

from meterlog.window.pages import Page


def test_work_order_and_vehicle_stand_beside_the_folder(window, qtbot, tmp_path):
    at_hand = window.desk.at_hand
    at_hand.enter("work_order", "WO 4711 (invented)")
    at_hand.enter("plate", "AB 12 (invented)")
    (at_hand.jobs_folder() / "no job").mkdir()
    window.show_page(Page.JOB)
    desk = window.desk.parts[Page.JOB]
    desk.page.open.click()
    dialog = desk._asking
    shown = dialog.proxyModel()
    source = shown.sourceModel()
    assert isinstance(source, QFileSystemModel)

    def told():
        top = shown.mapFromSource(source.index(str(at_hand.jobs_folder())))
        return {
            shown.index(row, 0, top).data(): shown.index(row, 2, top).data()
            for row in range(shown.rowCount(top))
        }

    qtbot.waitUntil(lambda: len(told()) == 2, timeout=5000)
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
