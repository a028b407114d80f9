"""Conditions are set with a few keys, remembered, and differ from the first run's out loud."""

import json
from dataclasses import replace

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication

from meterlog.model import Conditions, Job
from meterlog.recording import Recorder, seal
from meterlog.window.before_second import BeforeSecondLine, BeforeSecondWatch
from meterlog.window.conditions_view import ConditionsView
from meterlog.window.job_at_hand import JobAtHand
from meterlog.window.last_conditions import LastConditions
from meterlog.window.pages import Page
from meterlog.work.job_folder import Side

STATED = Conditions(
    engine="running", filter="used", place="vehicle", battery_v=12.4, ambient_c=21.5
)


@pytest.fixture
def view(qtbot, tmp_path):
    view = ConditionsView(LastConditions(tmp_path))
    qtbot.addWidget(view)
    view.resize(700, 300)
    view.show()
    qtbot.waitExposed(view)
    return view


def press(qtbot, view, *keys):
    for key in keys:
        qtbot.keyClick(view.window().focusWidget(), key)


def test_by_keys_alone_lines_choices_and_numbers(view, qtbot, tmp_path):
    said = []
    view.changed.connect(said.append)
    view.lines["engine"].setFocus()
    press(qtbot, view, Qt.Key.Key_Right, Qt.Key.Key_Right, Qt.Key.Key_Down, Qt.Key.Key_Left)
    assert view.conditions == Conditions(engine="running", control="automatic")
    press(qtbot, view, Qt.Key.Key_Delete, *[Qt.Key.Key_Down] * 7)
    field = view.lines["battery_v"].edit
    assert field.hasFocus()
    qtbot.keyClicks(field, "12,4")
    press(qtbot, view, Qt.Key.Key_Return)
    assert view.lines["ambient_c"].edit.hasFocus()
    qtbot.keyClicks(view.lines["ambient_c"].edit, "21.5")
    press(qtbot, view, Qt.Key.Key_Up)
    wanted = Conditions(engine="running", battery_v=12.4, ambient_c=21.5)
    assert view.conditions == said[-1] == wanted
    assert LastConditions(tmp_path).load() == wanted


def test_by_mouse_alone(view, qtbot):
    box = view.lines["filter"].box
    qtbot.mouseClick(box, Qt.MouseButton.LeftButton)
    # A click right after the one that opened the list is taken for the second half of that.
    qtbot.wait(QApplication.doubleClickInterval() + 50)
    chosen = box.view().visualRect(box.model().index(2, 0)).center()
    qtbot.mouseClick(box.view().viewport(), Qt.MouseButton.LeftButton, pos=chosen)
    qtbot.waitUntil(lambda: view.conditions.filter == "used")


def test_a_number_that_can_not_be_is_refused_in_place_and_counts_for_nothing(view, qtbot):
    line = view.lines["battery_v"]
    line.setFocus()
    qtbot.keyClicks(line.edit, "124")
    press(qtbot, view, Qt.Key.Key_Return)
    assert "from 0 to 60, in V" in line.trouble.text()
    assert line.trouble.isVisible()
    assert view.conditions.battery_v is None
    qtbot.keyClick(line.edit, Qt.Key.Key_Escape)
    assert (line.edit.text(), line.trouble.isVisible()) == ("", False)


def test_the_next_time_words_count_and_numbers_only_once_confirmed(qtbot, tmp_path):
    assert LastConditions(tmp_path).keep(STATED)
    view = ConditionsView(LastConditions(tmp_path))
    qtbot.addWidget(view)
    view.show()
    assert view.conditions == replace(STATED, battery_v=None, ambient_c=None)
    battery, ambient = view.lines["battery_v"], view.lines["ambient_c"]
    assert (battery.edit.text(), battery.confirm.text()) == ("12.4", "? as last time")
    battery.setFocus()
    qtbot.keyClick(battery.edit, Qt.Key.Key_Return)
    qtbot.mouseClick(ambient.confirm, Qt.MouseButton.LeftButton)
    assert view.conditions == STATED
    assert not ambient.confirm.isVisible()
    view.let_age()
    assert view.conditions.battery_v is None
    assert ambient.confirm.isVisible()


@pytest.mark.parametrize(
    "content",
    ["", "[]", "{", '{"engine": 3, "filter": "green", "battery_v": "x", "ambient_c": [1]}'],
)
def test_a_file_that_is_none_costs_nothing(tmp_path, content):
    (tmp_path / "last-conditions.json").write_text(content)
    assert LastConditions(tmp_path).load() == Conditions()
    assert LastConditions(tmp_path / "last-conditions.json").keep(STATED) is False
    assert LastConditions(tmp_path).keep(STATED)
    assert json.loads((tmp_path / "last-conditions.json").read_text())["battery_v"] == 12.4


def test_each_control_has_a_name_and_the_block_has_one_or_two_columns(view):
    assert all(one.accessibleName() for one in view.in_order())
    assert view.lines["engine"].y() == view.lines["windows"].y() or view._columns == 2
    view.resize(300, 600)
    assert view._columns == 1


@pytest.fixture
def first(tmp_path, about_of):
    """A run with the old part, of which only the head is of interest."""
    about = replace(about_of(), job=Job(measured_under=STATED))
    Recorder.create(tmp_path / "first", about, keep_raw=False).close()
    seal(tmp_path / "first")
    return tmp_path / "first"


@pytest.fixture
def at_hand(tmp_path):
    return JobAtHand(lambda: tmp_path, tmp_path)


def test_before_the_run_with_the_new_part_it_is_said_what_differs(at_hand, first, qtbot):
    read = []
    watch = BeforeSecondWatch(at_hand, lambda: bool(read))
    line = BeforeSecondLine(watch)
    qtbot.addWidget(line)
    at_hand.take_recording(first)
    assert watch.warnings == ()
    at_hand.conditions = replace(STATED, engine="off", ambient_c=None)
    at_hand.fit(Side.NEW)
    qtbot.waitUntil(lambda: bool(watch.warnings))
    assert watch.warnings[0].startswith("NOT COMPARABLE: engine was 'running', now 'off'")
    assert watch.warnings[1] == "Not stated: ambient was '21.5 °C'; say what it is now."
    assert "⚠ NOT COMPARABLE" in line.text()
    read.append(1)
    watch.look()
    assert watch.warnings[0].startswith("Differs: engine")
    watch.bar(recording=True)
    assert (watch.warnings, line.text()) == ((), "")
    watch.bar(recording=False)
    at_hand.conditions = STATED
    watch.look()
    assert watch.warnings == ()
    at_hand.fit(Side.OLD)
    assert watch.first is None


def test_a_first_run_that_is_gone_is_said(at_hand, first, qtbot, tmp_path):
    watch = BeforeSecondWatch(at_hand, lambda: True)
    at_hand.take_recording(first)
    first.rename(tmp_path / "elsewhere")
    at_hand.fit(Side.NEW)
    qtbot.waitUntil(lambda: bool(watch.warnings))
    assert watch.warnings[0].startswith("The conditions of the first run are not known: ")
    assert "holds no recording" in watch.warnings[0]


def test_on_the_meters_page_they_go_into_the_run_and_age_with_it(window, qtbot, first):
    window.show_page(Page.METERS)
    page = window.desk.meters_page
    page.at_hand.enter("work_order", "WO 9 (invented)")
    assert "WO 9 (invented)" in page.job.text()
    assert "the old part is in" in page.job.text()
    page.conditions.lines["engine"].setFocus()
    qtbot.keyClick(window.focusWidget(), Qt.Key.Key_Right)
    battery = page.conditions.lines["battery_v"]
    battery.setFocus()
    qtbot.keyClicks(battery.edit, "12.4")
    qtbot.keyClick(battery.edit, Qt.Key.Key_Return)
    job = page.plan().job
    assert (job.work_order, job.measured_under) == (
        "WO 9 (invented)",
        Conditions(engine="off", battery_v=12.4),
    )
    page.at_hand.take_recording(first)
    assert page.plan().job.measured_under == Conditions(engine="off")
    page.at_hand.fit(Side.NEW)
    qtbot.waitUntil(lambda: "Before the run with the new part" in page.differs.text())
    assert "the new part is in" in page.job.text()
