"""The port of a conversation is opened again only for the device that was there before."""

import pytest

from meterlog.acquire import MeterChoice
from meterlog.acquire.talk import OpenPort
from meterlog.instruments import PortMemory
from meterlog.model.errors import LinkNotFound
from meterlog.profile import load_meter

HERE = "/dev/invented"
MINE = PortMemory(HERE, HERE, made_ns=1)


class Door:
    """A link that notes whether it was closed."""

    byte_s = 0.0

    def __init__(self, url):
        self.url, self.open = url, True

    def close(self):
        self.open = False


@pytest.fixture
def port(monkeypatch):
    """Give a port that is open, and all links that were ever opened for it."""
    doors = []

    def open_link(url, settings):
        doors.append(Door(url))
        return doors[-1]

    monkeypatch.setattr("meterlog.acquire.talk.open_port.open_link", open_link)
    monkeypatch.setattr("meterlog.acquire.talk.open_port.remember", lambda url: MINE)
    monkeypatch.setattr("meterlog.acquire.talk.open_port.whereabouts", lambda memory: memory.url)
    profile = load_meter("line-logger")
    port = OpenPort(MeterChoice(profile, HERE, "logger", profile.channels))
    port.open()
    return port, doors


def test_the_same_device_is_opened_again(port):
    port, doors = port
    assert port.open() is doors[1]
    assert [door.open for door in doors] == [False, True]


def test_a_device_that_took_the_name_while_it_was_being_opened_is_let_go(port, monkeypatch):
    port, doors = port
    looks = []

    def whereabouts(memory):
        looks.append(len(doors))
        if len(doors) > 1:  # it came after the first look
            raise LinkNotFound("has gone; what has this name now is another program's.")
        return memory.url

    monkeypatch.setattr("meterlog.acquire.talk.open_port.whereabouts", whereabouts)
    with pytest.raises(LinkNotFound, match="another program's"):
        port.open()
    assert looks == [1, 2]
    assert [door.open for door in doors] == [False, False]
