"""On Meters and Job a warning that comes or goes moves nothing that a hand may be on."""

from dataclasses import replace

import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtWidgets import QApplication

from meterlog.model import Conditions, Job
from meterlog.recording import Recorder, seal
from meterlog.window.pages import Page
from meterlog.work.job_folder import Side

UNDER = Conditions(
    engine="running", control="automatic", filter="used", battery_v=12.4, ambient_c=21.5
)


@pytest.fixture
def second(window, about, tmp_path):
    """The Meters page before the run with the new part; all was said of the one before."""
    window.show_page(Page.METERS)
    page, folder = window.desk.meters_page, tmp_path / "first"
    head = replace(about, job=Job(work_order="WO 1", measured_under=UNDER))
    Recorder.create(folder, head, keep_raw=False).close()
    seal(folder)
    for name in ("battery_v", "ambient_c"):
        page.conditions.lines[name].show_text("12", counts=False)
    page.at_hand.take_recording(folder)
    page.at_hand.fit(Side.NEW)
    return page


def where(page, widgets):
    """Give where widgets stand on their page, once it is laid out."""
    for _ in range(4):
        QApplication.processEvents()
    return [widget.mapTo(page, QPoint(0, 0)).y() for widget in widgets]


def condition_widgets(page):
    return [*page.conditions.in_order(), page.begin]


def test_warnings_before_the_second_run_move_no_condition_and_no_button(second, qtbot):
    page = second
    before = where(page, condition_widgets(page))
    qtbot.waitUntil(lambda: "Before the run with the new part" in page.differs.text())
    many = len(page.before_second.warnings)
    assert many > 1
    assert where(page, condition_widgets(page)) == before
    page.conditions.lines["engine"].box.setCurrentIndex(2)
    for name in ("filter", "control"):
        line = page.conditions.lines[name]
        line.box.setCurrentIndex(line.box.findData(getattr(UNDER, name)))
    assert len(page.before_second.warnings) < many
    assert where(page, condition_widgets(page)) == before


def test_as_last_time_clicked_hits_the_next_one_where_it_stood(second, qtbot):
    lines = [second.conditions.lines[name] for name in ("battery_v", "ambient_c")]
    qtbot.waitUntil(lambda: "Before the run with the new part" in second.differs.text())
    QApplication.processEvents()
    at = [one.confirm.mapTo(second.window(), one.confirm.rect().center()) for one in lines]
    for point in at:
        widget = second.window().childAt(point)
        inside = widget.mapFrom(second.window(), point)
        qtbot.mouseClick(widget, Qt.MouseButton.LeftButton, pos=inside)
        QApplication.processEvents()
    assert (second.conditions.conditions.battery_v, second.conditions.conditions.ambient_c) == (
        12.0,
        12.0,
    )


def test_a_number_that_cant_be_moves_no_button(second, qtbot):
    before = where(second, condition_widgets(second))
    line = second.conditions.lines["battery_v"]
    line.edit.setText("1e9")
    line.settle()
    assert line.trouble.isVisible()
    assert not second.conditions._hint.isVisible()
    assert where(second, condition_widgets(second)) == before
    line.edit.setText("12")
    line.settle()
    assert second.conditions._hint.isVisible()


def test_a_folder_that_takes_nothing_moves_no_condition(second):
    before = where(second, condition_widgets(second))
    second.place.bar("The folder takes nothing.")
    assert second.place.barred.isVisible()
    assert where(second, condition_widgets(second)) == before


def test_a_doubt_on_the_card_moves_no_other_field(window):
    window.show_page(Page.JOB)
    page = window.desk.parts[Page.JOB].page
    window.resize(1366, 768)
    boxes = [box.edit for box in page.form.boxes.values()]
    before = where(page, boxes)
    page.form.boxes["vin"].edit.setText("1M8GDM9AXKP042780")
    page.form.boxes["vin"].commit()
    assert "check digit" in page.form.boxes["vin"].doubt.text()
    page.tell("Kept in another place.")
    assert page.form.boxes["vin"].doubt.isVisible()
    assert page.said.isVisible()
    assert where(page, boxes) == before
