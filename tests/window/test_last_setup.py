"""What was chosen the last time: it stands there again, at the port where the adapter is now."""

import json

import pytest

from meterlog.instruments import PortInfo
from meterlog.model import Role
from meterlog.window.last_setup import (
    ChannelSetup,
    LastSetup,
    MeterSetup,
    Setup,
    moved_port,
    port_identity,
)
from meterlog.window.meters_page import MetersPage

LEAD = PortInfo("/dev/ttyUSB0", "a lead", "1a2b", "3c4d", "SN7")
MOVED = PortInfo("/dev/ttyUSB3", "a lead", "1a2b", "3c4d", "SN7")
OTHER = PortInfo("/dev/ttyUSB0", "another lead", "1a2b", "3c4d", "SN8")
CLAMP = MeterSetup(
    "bench-scpi",
    "/dev/ttyUSB0",
    "SN7",
    (ChannelSetup("volts", "motor-current", "clamp 10 mV/A", 2, inverted=True, own_error="1.5"),),
)
WHOLE = Setup(
    (CLAMP,), "linear-12v", (port_identity(LEAD), "socket://host:1"), ("socket://host:1",)
)


@pytest.fixture
def page_at(qtbot, monkeypatch, tmp_path):
    """Make a Meters page with these ports, on the settings of the test's own folder."""
    monkeypatch.setenv("XDG_CONFIG_HOME", str(tmp_path / "settings"))
    monkeypatch.setattr("meterlog.window.meters_page.recordings_folder", lambda: tmp_path)

    def make(*ports):
        page = MetersPage(ports=lambda: ports, last=LastSetup(tmp_path))
        qtbot.addWidget(page)
        return page

    return make


def test_what_is_kept_is_read_again(tmp_path):
    assert LastSetup(tmp_path / "not" / "there").keep(WHOLE)
    assert LastSetup(tmp_path / "not" / "there").load() == WHOLE


@pytest.mark.parametrize(
    "text",
    [
        "",
        "[]",
        '{"meters": 1}',
        "\x00",
        '{"meters": [{"profile": 3}], "limits": "", "may_ask": [], "addresses": []}',
        '{"meters": [], "limits": "", "may_ask": [4], "addresses": []}',
    ],
)
def test_a_file_that_is_damaged_costs_only_the_convenience(tmp_path, text):
    (tmp_path / "last-setup.json").write_text(text)
    assert LastSetup(tmp_path).load() == Setup()


def test_a_disk_that_takes_nothing_is_told_and_stops_nothing(tmp_path):
    (tmp_path / "file").write_text("")
    assert not LastSetup(tmp_path / "file").keep(WHOLE)


@pytest.mark.parametrize(
    ("ports", "where"),
    [
        ((LEAD,), "/dev/ttyUSB0"),
        ((OTHER, MOVED), "/dev/ttyUSB3"),
        ((OTHER,), "/dev/ttyUSB0"),
        ((), "/dev/ttyUSB0"),
        # Two with one serial number: nobody can tell which it is.
        ((MOVED, PortInfo("/dev/ttyUSB4", "", "1a2b", "3c4d", "SN7")), "/dev/ttyUSB0"),
    ],
)
def test_an_adapter_is_known_by_its_serial_number(ports, where):
    assert moved_port("/dev/ttyUSB0", "SN7", ports) == where


def test_an_adapter_without_a_serial_number_stays_at_its_port():
    assert moved_port("/dev/ttyUSB0", "", (PortInfo("/dev/ttyUSB1"),)) == "/dev/ttyUSB0"


def test_the_page_comes_back_as_it_was_left(page_at, tmp_path):
    LastSetup(tmp_path).keep(WHOLE)
    page = page_at(LEAD)
    plan = page.plan()
    assert plan.meters == ("bench-scpi@/dev/ttyUSB0",)
    assert plan.roles == ("motor-current=bench-scpi.volts",)
    assert plan.sensors.clamps == ("motor-current=10 mV/A",)
    assert plan.sensors.turns == ("motor-current=2",)
    assert plan.sensors.inverted == ("motor-current",)
    assert plan.sensors.accuracies == ("motor-current=1.5",)
    page.keep()
    assert LastSetup(tmp_path).load() == WHOLE


def test_a_renumbered_adapter_is_found_where_it_is_now(page_at, tmp_path):
    LastSetup(tmp_path).keep(WHOLE)
    assert page_at(OTHER, MOVED).plan().meters == ("bench-scpi@/dev/ttyUSB3",)


def test_ports_that_were_ticked_are_ticked_and_no_other(page_at, tmp_path):
    LastSetup(tmp_path).keep(WHOLE)
    page = page_at(OTHER, MOVED)
    ticked = {entry.port.device for entry in page.ports.entries if entry.included}
    assert ticked == {"/dev/ttyUSB3", "socket://host:1"}
    assert not page.ports.asking, "a tick of the last time asks nothing by itself"


def test_a_meter_whose_port_is_gone_says_so_and_finds_it_when_it_is_back(page_at, tmp_path):
    there = []
    LastSetup(tmp_path).keep(WHOLE)
    page = page_at()
    page._list_ports = lambda: there
    row = page.rows[0]
    assert "/dev/ttyUSB0 is not there now" in row.trouble.text()
    assert "Look for ports again" in row.trouble.text()
    there.append(MOVED)
    page.find_ports()
    assert row.url() == "/dev/ttyUSB3"
    assert row.trouble.text() == ""


def test_another_port_chosen_by_hand_is_not_left_for_the_old_adapter(page_at, tmp_path):
    LastSetup(tmp_path).keep(WHOLE)
    page = page_at(LEAD)
    page.rows[0].set_url("socket://host:2")
    page._list_ports = lambda: (MOVED,)
    page.find_ports()
    assert page.rows[0].url() == "socket://host:2"


def test_a_profile_that_is_gone_is_left_out(page_at, tmp_path):
    LastSetup(tmp_path).keep(Setup((MeterSetup("no-such-meter", "/dev/ttyUSB0"), CLAMP)))
    assert page_at(LEAD).plan().meters == ("bench-scpi@/dev/ttyUSB0",)


def test_asking_keeps_which_ports_may_be_asked(page_at, tmp_path):
    page = page_at(LEAD)
    page.ports.entries[0].may_ask.setChecked(True)
    page.ports.asking_began.emit()
    kept = json.loads((tmp_path / "last-setup.json").read_text())
    assert kept["may_ask"] == ["1a2b:3c4d SN7"]


def test_a_role_chosen_by_hand_is_kept(page_at, tmp_path):
    page = page_at(LEAD)
    row = page.rows[0]
    row.profile.setCurrentText("line-logger")
    _, box = row.roles[0]
    box.setCurrentIndex(box.findData(Role.BATTERY))
    page.keep()
    assert page_at(LEAD).rows[0].roles[0][1].currentData() == Role.BATTERY
