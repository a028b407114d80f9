import pytest
from PySide6.QtCore import Qt

from meterlog.instruments import PortInfo
from meterlog.model import Role
from meterlog.model.errors import UsageError
from meterlog.window.cautions import CAUTIONS
from meterlog.window.port_box import likely_port
from meterlog.window.session import Phase


@pytest.fixture
def page(window):
    return window.desk.meters_page


def _row(page, profile="line-logger", url="socket://127.0.0.1:1"):
    row = page.rows[0]
    row.profile.setCurrentText(profile)
    row.set_url(url)
    return row


def test_a_plan_says_what_the_page_says(page):
    _row(page)
    page.at_hand.enter("work_order", "WO 2 (invented)")
    plan = page.plan()
    assert plan.meters == ("line-logger@socket://127.0.0.1:1",)
    assert "motor-feed=line-logger.feed" in plan.roles
    assert "motor-return=line-logger.return" in plan.roles
    assert "motor-current=line-logger.current" in plan.roles
    assert plan.job.work_order == "WO 2 (invented)"
    assert plan.limits == "linear-12v"


def test_a_second_meter_of_one_kind_gets_a_key_of_its_own_and_free_roles(page):
    _row(page)
    second = page.add_row()
    second.profile.setCurrentText("line-logger")
    second.set_url("socket://127.0.0.1:2")
    assert Role.MOTOR_FEED not in second.chosen_roles()
    channel, box = second.roles[0]
    box.setCurrentIndex(box.findData(Role.BATTERY))
    plan = page.plan()
    assert f"battery=line-logger-2.{channel.name}" in plan.roles
    plan.run()


def test_a_removed_meter_is_not_in_the_plan(page, qtbot):
    second = page.add_row()
    qtbot.mouseClick(second.gone, Qt.MouseButton.LeftButton)
    assert len(page.plan().meters) == 1


def test_a_role_is_offered_only_where_its_quantity_fits(page):
    row = _row(page)
    offered = {
        channel.name: {box.itemData(i) for i in range(box.count())} for channel, box in row.roles
    }
    assert Role.MOTOR_CURRENT not in offered["feed"]
    assert Role.MOTOR_CURRENT in offered["current"]
    assert Role.MOTOR_FEED not in offered["current"]


def test_a_port_chosen_from_the_list_is_its_device_not_its_text(page):
    row = page.rows[0]
    row.show_ports([PortInfo("/dev/ttyUSB7", "an adapter"), PortInfo("/dev/ttyUSB8")])
    row.port.setCurrentIndex(0)
    assert row.port.currentText() == "/dev/ttyUSB7  an adapter"
    assert row.url() == "/dev/ttyUSB7"


def test_a_meter_is_expected_on_a_free_ticked_port_usb_first():
    ports = [
        PortInfo("/dev/ttyS0"),
        PortInfo("/dev/ttyUSB0", vendor="0403", usable=False, reason="no"),
        PortInfo("/dev/ttyUSB1", vendor="0403"),
    ]
    every = {port.device for port in ports}
    assert likely_port(ports, set(), every) == "/dev/ttyUSB1"
    assert likely_port(ports, {"/dev/ttyUSB1"}, every) == "/dev/ttyS0"
    assert likely_port(ports, {"/dev/ttyUSB1", "/dev/ttyS0"}, every) == ""
    assert likely_port(ports, set(), {"/dev/ttyS0"}) == "/dev/ttyS0"
    assert likely_port(ports, set(), set()) == ""


def test_a_port_that_may_not_be_opened_says_why(page):
    row = page.rows[0]
    row.show_ports([PortInfo("/dev/ttyUSB7", usable=False, reason="you may not open it")])
    row.set_url("/dev/ttyUSB7")
    assert "you may not open it" in row.trouble.text()
    row.set_url("socket://127.0.0.1:1")
    assert row.trouble.text() == ""


def test_a_meter_without_a_port_is_refused_in_words(page):
    row = _row(page, url="")
    row.port.setEditText("")
    with pytest.raises(UsageError, match="has no port"):
        page.plan().run()


def test_no_connection_is_told_in_place_and_the_page_stays(window, page, qtbot):
    _row(page, url="socket://127.0.0.1:9")
    window.desk.do(window_start())
    # It may have been refused by now: nothing listens there.
    qtbot.waitUntil(lambda: window.desk.session.phase is Phase.IDLE, timeout=10_000)
    qtbot.waitUntil(window.said.isVisible)
    assert "socket://127.0.0.1:9" in window.said.text()
    qtbot.waitUntil(lambda: window.pages.currentIndex() == 0)
    assert window.header.start.isEnabled()


def window_start():
    from meterlog.window.keys import Action

    return Action.START_STOP


def test_cautions_are_shown_and_name_the_dangers(page):
    assert page.cautions.words.isVisibleTo(page)
    text = " ".join(f"{head} {words}" for head, words in CAUTIONS).lower()
    for subject in ("fan", "airbag", "fused", "current jack", "cat iii", "60 v", "manual", "local"):
        assert subject in text


def test_cautions_fold_away(page, qtbot):
    qtbot.mouseClick(page.cautions.fold, Qt.MouseButton.LeftButton)
    assert not page.cautions.words.isVisibleTo(page)


def test_a_meter_that_was_found_takes_the_row_that_nobody_has_filled(page):
    page.take_meter("bench-scpi", "/dev/ttyUSB5")
    assert page.plan().meters == ("bench-scpi@/dev/ttyUSB5",)
    page.take_meter("line-logger", "/dev/ttyUSB6")
    assert page.plan().meters == ("bench-scpi@/dev/ttyUSB5", "line-logger@/dev/ttyUSB6")
    page.take_meter("line-logger-timed", "/dev/ttyUSB6")
    assert page.plan().meters[1] == "line-logger-timed@/dev/ttyUSB6"


def test_a_row_that_somebody_has_filled_is_left_alone(page):
    _row(page, url="socket://127.0.0.1:1")
    page.find_ports()
    page.take_meter("bench-scpi", "/dev/ttyUSB5")
    assert page.plan().meters == ("line-logger@socket://127.0.0.1:1", "bench-scpi@/dev/ttyUSB5")


def test_the_profiles_of_ones_own_are_offered_first_and_a_broken_one_says_why(
    qtbot, monkeypatch, tmp_path
):
    from meterlog.profile.folders import OWN_FOLDER
    from meterlog.window.meters_page import MetersPage

    (tmp_path / "meters").mkdir()
    own = 'title = "T"\ndialect = "typed"\ninterval_s = 0\n[[channels]]\nname = "a"\n'
    (tmp_path / "meters" / "zz-mine.toml").write_text(f"{own}quantity = 'voltage'\n")
    monkeypatch.setenv(OWN_FOLDER, str(tmp_path))
    monkeypatch.setattr("meterlog.window.meters_page.recordings_folder", lambda: tmp_path)
    page = MetersPage(ports=lambda: ())
    qtbot.addWidget(page)
    row = page.rows[0]
    assert row.profile.itemText(0) == "zz-mine"
    assert "zz-mine.toml, line 3: interval_s is 0" in row.trouble.text()
    row.profile.setCurrentText("line-logger")
    assert [channel.name for channel, _ in row.roles] == ["feed", "return", "current"]


def test_the_key_for_asking_acts_on_the_meters_page_only(window, qtbot):
    from meterlog.window.keys import Action

    asked = []
    window.desk.meters_page.ports.ask = lambda: asked.append(1)
    window.show_page(0)
    assert window.desk.keys.acts(Action.ASK, window.desk.page)
    qtbot.keyClick(window.pages, Qt.Key.Key_A)
    assert asked == [1]
    window.show_page(1)
    qtbot.keyClick(window.pages, Qt.Key.Key_A)
    assert asked == [1]
