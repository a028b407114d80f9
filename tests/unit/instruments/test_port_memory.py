"""Where a device is found again: by its serial number, its socket, or not at all."""

import os
import pty
import time

import pytest

from meterlog.instruments import PortInfo, port_memory, remember, whereabouts
from meterlog.model.errors import LinkNotFound


def usb(device: str, serial: str = "A1", location: str = "1-2", product: str = "3c4d") -> PortInfo:
    return PortInfo(device, "Adapter", "1a2b", product, serial, location)


@pytest.fixture
def plugged(monkeypatch):
    """Give the list of what is plugged in, for the test to change."""
    ports: list[PortInfo] = []
    monkeypatch.setattr(port_memory, "list_ports", lambda: tuple(ports))
    return ports


def test_a_renumbered_device_is_found_by_its_serial_number_wherever_it_is_plugged_in(plugged):
    plugged.append(usb("/dev/ttyUSB0"))
    memory = remember("/dev/ttyUSB0")
    assert (memory.vendor, memory.product, memory.serial) == ("1a2b", "3c4d", "A1")
    plugged[:] = [usb("/dev/ttyUSB0", "B2", "1-2"), usb("/dev/ttyUSB1", "A1", "1-4")]
    assert whereabouts(memory) == "/dev/ttyUSB1"


def test_another_device_at_the_old_name_is_not_taken_and_is_named(plugged):
    plugged.append(usb("/dev/ttyUSB0"))
    memory = remember("/dev/ttyUSB0")
    plugged[:] = [usb("/dev/ttyUSB0", "B2")]
    with pytest.raises(LinkNotFound, match="another device is there now: Adapter 1a2b:3c4d B2"):
        whereabouts(memory)
    plugged[:] = [usb("/dev/ttyUSB0", "A1", product="9999")]
    with pytest.raises(LinkNotFound, match="another device"):
        whereabouts(memory)
    plugged[:] = []
    with pytest.raises(LinkNotFound, match="not plugged in") as caught:
        whereabouts(memory)
    assert "serial number A1" in caught.value.remedy
    assert ";" not in caught.value.message


def test_without_a_serial_number_only_the_same_socket_will_do(plugged):
    plugged.append(usb("/dev/ttyUSB0", ""))
    memory = remember("/dev/ttyUSB0")
    plugged[:] = [usb("/dev/ttyUSB0", "", "1-3"), usb("/dev/ttyUSB7", "", "1-2")]
    assert whereabouts(memory) == "/dev/ttyUSB7"
    plugged[:] = [usb("/dev/ttyUSB0", "", "1-3")]
    with pytest.raises(LinkNotFound, match="no serial number to know it by") as caught:
        whereabouts(memory)
    assert "socket where it was" in caught.value.remedy


def test_two_with_the_same_serial_number_are_told_apart_by_the_socket_or_not_at_all(plugged):
    plugged += [usb("/dev/ttyUSB0", "0001", "1-2"), usb("/dev/ttyUSB1", "0001", "1-3")]
    memory = remember("/dev/ttyUSB1")
    plugged[:] = [usb("/dev/ttyUSB0", "0001", "1-3"), usb("/dev/ttyUSB1", "0001", "1-2")]
    assert whereabouts(memory) == "/dev/ttyUSB0"
    plugged[:] = [usb("/dev/ttyUSB0", "0001", "1-5"), usb("/dev/ttyUSB1", "0001", "1-6")]
    with pytest.raises(LinkNotFound, match="same serial number"):
        whereabouts(memory)


def test_of_an_adapter_with_several_ports_the_same_one_is_found_in_another_socket(plugged):
    plugged += [usb("/dev/ttyUSB0", "Q", "1-2:1.0"), usb("/dev/ttyUSB1", "Q", "1-2:1.1")]
    memory = remember("/dev/ttyUSB1")
    plugged[:] = [usb("/dev/ttyUSB4", "Q", "1-4:1.0"), usb("/dev/ttyUSB5", "Q", "1-4:1.1")]
    assert whereabouts(memory) == "/dev/ttyUSB5"


def test_a_symbolic_link_to_a_usb_port_is_the_same_device(plugged, tmp_path):
    node = tmp_path / "ttyUSB0"
    node.touch()
    stable = tmp_path / "by-id"
    stable.symlink_to(node)
    plugged.append(usb(str(node)))
    memory = remember(str(stable))
    assert memory.serial == "A1"
    plugged[:] = [usb("/dev/ttyUSB3")]
    assert whereabouts(memory) == "/dev/ttyUSB3"


@pytest.mark.parametrize(
    "url", ["socket://127.0.0.1:5025", "rfc2217://box:4000", "/dev/ttyS0", "/dev/no-such-port"]
)
def test_what_is_no_usb_device_is_looked_for_where_it_was(plugged, url):
    assert whereabouts(remember(url)) == url


def test_a_usb_address_with_a_serial_number_is_remembered_with_it(plugged):
    memory = remember("hid://1a2b:3c4d/A7")
    assert memory.serial == "A7"
    assert whereabouts(memory) == "hid://1a2b:3c4d/A7"
    assert remember("hid://1a2b:3c4d").serial == ""


def until_number(wanted: str):
    """Make pseudo terminals until one has the name ``wanted``; give all of them."""
    made = []
    time.sleep(0.02)  # the system's stamp on a node goes on in steps of some milliseconds
    for _ in range(200):
        made.append(pty.openpty())
        if os.ttyname(made[-1][1]) == wanted:
            return made
    raise AssertionError(f"{wanted} was not given out again")


def close(*pairs) -> None:
    for pair in pairs:
        for handle in pair:
            os.close(handle)


@pytest.mark.pty
def test_a_new_pseudo_terminal_of_the_same_name_is_another_programs():
    first = pty.openpty()
    name = os.ttyname(first[1])
    memory = remember(name)
    assert memory.made_ns is not None
    os.write(first[0], b"x\n")
    os.read(first[1], 1)
    os.write(first[1], b"y")
    assert whereabouts(memory) == name
    close(first)
    assert whereabouts(memory) == name  # nothing there: opening says so
    others = until_number(name)
    with pytest.raises(LinkNotFound, match="another program's"):
        whereabouts(memory)
    close(*others)


@pytest.mark.pty
def test_a_symbolic_link_made_anew_is_followed_and_an_old_one_is_not(tmp_path):
    first = pty.openpty()
    name = os.ttyname(first[1])
    link = tmp_path / "meter"
    link.symlink_to(name)
    memory = remember(str(link))
    close(first)
    others = until_number(name)
    with pytest.raises(LinkNotFound, match="another program's"):
        whereabouts(memory)
    fresh = tmp_path / "fresh"
    fresh.symlink_to(name)
    fresh.replace(link)
    assert whereabouts(memory) == str(link)
    close(*others)
