"""All of it without a mouse; and with one, a turned wheel chooses nothing."""

import pytest
from PySide6.QtCore import QPoint, QPointF, Qt
from PySide6.QtGui import QWheelEvent
from PySide6.QtWidgets import QApplication

from meterlog.acquire import Fit, Outcome, PortAnswer, PortProgress
from meterlog.instruments import PortInfo
from meterlog.window.keys import Action
from meterlog.window.pages import Page
from meterlog.window.session import Phase


@pytest.fixture
def page(window):
    return window.desk.meters_page


def turn_wheel(widget):
    middle = QPointF(widget.rect().center())
    event = QWheelEvent(
        middle,
        QPointF(widget.mapToGlobal(widget.rect().center())),
        QPoint(),
        QPoint(0, -120),
        Qt.MouseButton.NoButton,
        Qt.KeyboardModifier.NoModifier,
        Qt.ScrollPhase.NoScrollPhase,
        False,
    )
    QApplication.sendEvent(widget, event)


def test_a_turned_wheel_changes_no_meter_port_role_sensor_turns_or_limits(page):
    row = page.rows[0]
    row.show_ports([PortInfo("/dev/ttyUSB0"), PortInfo("/dev/ttyUSB1")])
    row.profile.setCurrentText("bench-scpi")
    (sensor,), ((_, box),) = row.sensors, row.roles
    sensor.kind.setCurrentText("clamp 10 mV/A")
    before = row.setup(), page.limits.currentText()
    for widget in (row.profile, row.port, box, sensor.kind, sensor.turns, page.limits):
        turn_wheel(widget)
    assert (row.setup(), page.limits.currentText()) == before


def test_tab_goes_as_the_eye_goes(window, page, qtbot):
    window.show_page(Page.METERS)
    page.ports.show_ports([PortInfo("/dev/ttyUSB0"), PortInfo("/dev/ttyUSB1")])
    page.add_row()
    first, second = page.rows
    qtbot.waitUntil(lambda: page.ports.entries[1].isVisible() and second.isVisible())
    wanted = [
        *(entry.may_ask for entry in page.ports.entries),
        page.ports.address,
        page.ports.add,
        page.ports.ask_button,
        page.ports.again,
        first.profile,
    ]
    wanted[0].setFocus()
    for widget in wanted[1:]:
        qtbot.keyClick(window.focusWidget(), Qt.Key.Key_Tab)
        assert window.focusWidget() is widget
    second.gone.setFocus()
    qtbot.keyClick(second.gone, Qt.Key.Key_Tab)
    assert window.focusWidget() is second.roles[0][1]


def test_enter_presses_the_button_that_tab_went_to_and_starts_nothing(window, page, qtbot):
    page.more.setFocus(Qt.FocusReason.TabFocusReason)
    qtbot.keyClick(page.more, Qt.Key.Key_Return)
    assert len(page.rows) == 2
    assert window.desk.session.phase is Phase.IDLE
    assert window.focusWidget() is page.rows[1].profile


def test_a_button_that_was_clicked_keeps_no_enter_for_itself(window, page, qtbot):
    qtbot.mouseClick(page.ports.again, Qt.MouseButton.LeftButton)
    assert window.focusWidget() is not page.ports.again


def test_enter_opens_the_recording_chosen_in_the_list(window, page, qtbot, tmp_path):
    (tmp_path / "one" / "data").mkdir(parents=True)
    (tmp_path / "one" / "data" / "about.json").write_text("{}")
    page.show_recordings()
    qtbot.waitUntil(lambda: not page.recordings.reading)
    opened = []
    page.recordings.chosen.disconnect()
    page.recordings.chosen.connect(opened.append)
    page.recordings.list.setFocus()
    page.recordings.list.setCurrentRow(0)
    qtbot.keyClick(page.recordings.list, Qt.Key.Key_Return)
    assert opened == [tmp_path / "one"]
    assert window.desk.session.phase is Phase.IDLE


def test_findings_are_walked_with_arrows_and_looked_at_with_enter(window, show, qtbot):
    shown = show(window)
    page = window.desk.run_page
    page.findings.list.setFocus()
    whole = page.outlook.stretch(shown.end_ns)
    before = page.findings.list.currentRow()
    qtbot.keyClick(page.findings.list, Qt.Key.Key_Down)
    assert page.findings.list.currentRow() == before + 1
    page.findings.list.setCurrentRow(0)
    assert page.outlook.stretch(shown.end_ns) == whole, "the arrow is the list's, not the trace's"
    qtbot.keyClick(page.findings.list, Qt.Key.Key_Return)
    start_ns, end_ns = page.outlook.stretch(shown.end_ns)
    finding = shown.review.findings[0]
    assert start_ns <= finding.start_ns < finding.end_ns <= end_ns
    assert end_ns - start_ns < whole[1] - whole[0]
    assert window.desk.session.phase is Phase.SHOWING


def test_tab_leaves_the_table_of_steps(window, show, qtbot):
    show(window)
    table = window.desk.run_page.steps.table
    table.setFocus()
    qtbot.keyClick(table, Qt.Key.Key_Tab)
    assert window.focusWidget() is not table


def test_the_strip_names_the_keys_of_the_page_on_show(window, show):
    window.show_page(0)
    assert "ask the ticked ports" in window.keys.accessibleName()
    assert "connect and record" in window.keys.accessibleName()
    assert "tap" not in window.keys.accessibleName()
    show(window)
    assert "speed" in window.keys.accessibleName()
    assert "ask the ticked ports" not in window.keys.accessibleName()


def test_no_port_is_asked_while_a_recording_is_in_progress(window, page, show, qtbot):
    show(window, live=True)
    page.ports.show_ports([PortInfo("/dev/ttyUSB0")])
    page.ports.entries[0].may_ask.setChecked(True)
    window.desk.session.phase = Phase.RECORDING
    window.desk.tick()
    window.show_page(0)
    assert not window.desk.keys.acts(Action.ASK, window.desk.page)
    assert not page.ports.ask_button.isEnabled()
    assert not page.begin.isEnabled()
    assert "once it is stopped" in page.ports.said.text()
    window.desk.session.phase = Phase.SHOWING
    window.desk.tick()
    window.show_page(0)
    assert page.ports.ask_button.isEnabled()
    assert "Tick the ports" in page.ports.said.text()


def test_an_answer_that_was_taken_says_so_at_its_port(page, qtbot):
    page.ports.show_ports([PortInfo("/dev/ttyUSB0")])
    (entry,) = page.ports.entries
    answer = PortAnswer(
        "/dev/ttyUSB0",
        Outcome.FITS,
        (Fit("bench-scpi", "Bench", ""), Fit("hand-meter", "Hand", "")),
    )
    entry.show_progress(PortProgress("/dev/ttyUSB0", "", answer))
    page.take_meter("bench-scpi", "/dev/ttyUSB0")
    assert [button.text() for button in entry.buttons] == ["✓ in use below", "Use it"]
    page.remove_row(page.rows[0])
    assert [button.text() for button in entry.buttons] == ["Use it", "Use it"]
