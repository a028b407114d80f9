"""The list of ports, from what the system says."""

from types import SimpleNamespace

import pytest

from meterlog.instruments import list_ports, port_rights, ports


def port(device: str, **more: object) -> SimpleNamespace:
    known = {
        "description": "n/a",
        "vid": None,
        "pid": None,
        "serial_number": None,
        "location": None,
    }
    return SimpleNamespace(device=device, **{**known, **more})


def test_ports_are_sorted_and_usb_numbers_are_hexadecimal(monkeypatch):
    adapter = port(
        "/nowhere/b",
        description="Adapter",
        vid=0x16C0,
        pid=0x27,
        serial_number="A1",
        location="1-2",
    )
    monkeypatch.setattr(ports, "comports", lambda: [adapter, port("/nowhere/a")])
    first, second = list_ports()
    assert (first.device, first.text, first.vendor, first.serial) == ("/nowhere/a", "", "", "")
    assert (second.text, second.vendor, second.product) == ("Adapter", "16c0", "0027")
    assert (second.serial, second.usable, second.reason) == ("A1", True, "")
    assert (first.location, second.location) == ("", "1-2")


@pytest.mark.parametrize("allowed", [True, False])
def test_a_port_one_may_not_open_says_what_to_do(monkeypatch, tmp_path, allowed):
    device = tmp_path / "port"
    device.touch()
    device.chmod(0o660)
    monkeypatch.setattr(ports, "comports", lambda: [port(str(device))])
    monkeypatch.setattr(ports.sys, "platform", "linux")
    monkeypatch.setattr(ports.os, "access", lambda _path, _mode: allowed)
    monkeypatch.setattr(port_rights, "owning_group", lambda _device: "uucp")
    (only,) = list_ports()
    assert only.usable is allowed
    assert ("sudo usermod -aG uucp $USER" in only.reason) is not allowed
    assert ("log out and in" in only.reason) is not allowed


def test_the_real_list_can_be_made_on_this_machine():
    assert all(found.device for found in list_ports())
