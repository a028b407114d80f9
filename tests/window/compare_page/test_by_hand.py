"""The whole page Before / after by keyboard alone, as the frame gives it its keys."""

import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import QFileDialog, QWidget

from meterlog.evidence.palette import DARK
from meterlog.window.keys import BINDINGS, Action
from meterlog.window.pages import Page
from meterlog.work.job_folder import Side

_Key = Qt.Key


@pytest.fixture
def press():
    """Press a key of the page."""

    def do(desk, key):
        shown = desk.keys()
        found = [one for one in shown if key in one.keys]
        assert len(found) == 1
        found[0].do()

    return do


def test_all_can_be_done_by_keys(page, finished, press, good, worn, healthy):
    desk = page([good[0], worn], [healthy])
    press(desk, _Key.Key_H)
    finished(desk)
    assert desk.picks.before == good[0]
    press(desk, _Key.Key_I)
    finished(desk)
    assert (desk.picks.before, desk.picks.after) == (healthy, good[0])
    press(desk, _Key.Key_Q)
    finished(desk)
    press(desk, _Key.Key_I)
    finished(desk)
    assert desk.picks.before != desk.picks.after
    picture = desk.view.picture
    press(desk, _Key.Key_F4)
    assert picture.speed == 1
    press(desk, _Key.Key_F4)
    assert picture.speed == 2
    press(desk, _Key.Key_F3)
    assert picture.speed == 1
    whole = picture.stretch
    press(desk, _Key.Key_F6)
    closer = picture.stretch
    assert closer[1] - closer[0] == pytest.approx((whole[1] - whole[0]) / 2, rel=0.01)
    press(desk, _Key.Key_F8)
    assert picture.stretch[0] > closer[0]
    press(desk, _Key.Key_F7)
    press(desk, _Key.Key_F5)
    assert picture.stretch == whole
    press(desk, _Key.Key_A)
    assert not picture.axis.by_step
    press(desk, _Key.Key_A)
    assert picture.speed == 1
    assert picture.stretch == whole
    press(desk, _Key.Key_F2)
    assert picture.stretch == (0, picture.axis.end_ns)
    press(desk, _Key.Key_C)
    assert desk._work.busy
    finished(desk)
    assert desk.laid is not None


def test_no_key_is_taken_from_the_frame(page, worn, healthy):
    # Those act on the Trace or the Meters page alone.
    trace = {Action.FOUND_STEPS, Action.SECOND, Action.STRETCH, Action.EDITS, Action.MARK}
    elsewhere = {Action.ASK, *trace}
    frame = {key for one in BINDINGS for key in one.keys if one.action not in elsewhere}
    desk = page([worn], [healthy])
    shown = desk.keys()
    mine = [key for one in shown for key in one.keys]
    assert not frame & set(mine)
    assert len(mine) == len(set(mine))


def test_ctrl_c_copies_wherever_the_focus_is_on_the_page(page, qtbot, worn, healthy):
    desk = page([worn], [healthy])
    QGuiApplication.clipboard().clear()
    desk.widget.activateWindow()
    for widget in (desk.view.table.table, desk.view.details, desk.view.by_time):
        QGuiApplication.clipboard().setText("before")
        widget.setFocus()
        qtbot.keyClick(widget, _Key.Key_C, Qt.KeyboardModifier.ControlModifier)
        assert "new - old A" in QGuiApplication.clipboard().text()


def test_tab_goes_through_every_control_and_each_has_a_name(page, worn, healthy):
    desk = page([worn], [healthy])
    controls = [
        one
        for one in desk.widget.findChildren(QWidget)
        if one.focusPolicy() & Qt.FocusPolicy.TabFocus
        and one.isVisible()
        and one.isEnabled()
        and not one.objectName().startswith("qt_")
    ]
    assert len(controls) >= 12
    for one in controls:
        assert one.accessibleName() or getattr(one, "text", str)(), one
    seen = []
    one = desk.view.sides.before
    while one not in seen:
        seen.append(one)
        one = one.nextInFocusChain()
    assert set(controls) <= set(seen)
    placed = [one for one in seen if one in controls]
    places = [one.mapTo(desk.widget, one.rect().topLeft()) for one in placed]
    right = desk.widget.width() // 2
    assert [p.y() for p in places if p.x() < right and p.y() > 60] == sorted(
        p.y() for p in places if p.x() < right and p.y() > 60
    )


def test_in_the_whole_window_by_real_keys(window, qtbot, finished, worn, healthy, good):
    at_hand = window.desk.at_hand
    at_hand.work = at_hand.work.taking(worn, Side.OLD).taking(healthy, Side.NEW)
    qtbot.keyClick(window, _Key.Key_B)
    desk = window.desk.parts[Page.COMPARE]
    finished(desk)
    assert "THEY DIFFER" in desk.view.verdict.text()
    picture = desk.view.picture
    qtbot.keyClick(window.focusWidget() or window, _Key.Key_F4)
    assert picture.speed == 1
    while window.focusWidget() is not desk.view.table.table:
        qtbot.keyClick(window.focusWidget(), _Key.Key_Tab)
    qtbot.keyClick(desk.view.table.table, _Key.Key_Down)
    assert picture.speed == 2
    qtbot.keyClick(desk.view.table.table, _Key.Key_A)
    assert not picture.axis.by_step
    while window.focusWidget() is not desk.view.sides.most:
        qtbot.keyClick(window.focusWidget(), _Key.Key_Tab)
    qtbot.keyClicks(desk.view.sides.most, "60")
    qtbot.keyClick(desk.view.sides.most, _Key.Key_Escape)
    finished(desk)
    assert desk.view.verdict.text().startswith("✓ PASS")
    qtbot.keyClick(window, _Key.Key_D)
    assert picture._palette == DARK


def test_all_can_be_done_by_the_mouse(page, finished, qtbot, worn, healthy, good):
    desk = page([worn], [healthy])
    view, left = desk.view, Qt.MouseButton.LeftButton
    qtbot.mouseClick(view.sides.swap, left)
    finished(desk)
    assert (desk.picks.before, desk.picks.after) == (healthy, worn)
    qtbot.mouseClick(view.by_time, left)
    assert not view.picture.axis.by_step
    table = view.table.table
    at = table.visualItemRect(table.item(1, 0)).center()
    qtbot.mouseClick(table.viewport(), left, pos=at)
    assert view.picture.speed == 2
    qtbot.mouseClick(view.all, left)
    assert view.picture.speed is None
    qtbot.mouseClick(view.sides.before_folder, left)
    dialog = desk._dialog
    assert dialog.isVisible()
    assert dialog.testOption(QFileDialog.Option.DontUseNativeDialog)
    dialog.fileSelected.emit(str(good[0]))
    dialog.close()
    finished(desk)
    assert desk.picks.before == good[0]
    assert "other: good-0" in view.sides.before.currentText()
    qtbot.mouseClick(view.copy, left)
    assert "good-0" in QGuiApplication.clipboard().text()
    qtbot.mouseClick(view.sides.good, left, pos=QPoint(8, view.sides.good.height() // 2))
    assert view.sides.take_in.isVisible()
    qtbot.mouseClick(view.sides.take_in, left)
    finished(desk)
    assert desk.picks.good == (good[0],)
    assert "good ones" in view.verdict.text()
