"""Links that survive: what is unplugged comes back, and nothing sent intact is lost.

The rig is ``tests/rig``; ``python tests/rig/survival.py --runs 200`` tries other seeds.
"""

import os
import pty
import socket
import sys
import threading
import time
import tty
from concurrent.futures import ThreadPoolExecutor
from contextlib import ExitStack
from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest

from meterlog.acquire import Acquisition, Clock, MeterChoice
from meterlog.instruments import LineCounts, PortInfo, port_memory
from meterlog.model import Block, Event, EventKind, Flag
from meterlog.profile import load_meter

PROFILE = load_meter("line-logger")
RIG = str(Path(__file__).resolve().parents[1] / "rig")
KINDS = ("lines on a pty", "lines on tcp", "scpi on a pty", "scpi on tcp")


@pytest.fixture(scope="module")
def survival():
    sys.path.insert(0, RIG)
    try:
        import survival as rig
    finally:
        sys.path.remove(RIG)
    return rig


@pytest.mark.pty
@pytest.mark.parametrize("seed", range(3))
def test_all_that_was_sent_intact_is_recorded_in_order_and_once(survival, seed, tmp_path):
    # Side by side, as they mostly wait; and so each loses its port while others get new ones.
    def survive(number: int):
        place = tmp_path / str(number)
        place.mkdir()
        return survival.survive(KINDS[number], seed, place, 40)

    with ThreadPoolExecutor(len(KINDS)) as pool:
        outcomes = dict(zip(KINDS, pool.map(survive, range(len(KINDS))), strict=True))
    assert {kind: outcome.wrong for kind, outcome in outcomes.items() if outcome.wrong} == {}
    for kind, outcome in outcomes.items():
        assert outcome.readings > 25, kind
        assert outcome.steady > 10, kind
        # A second, and room for a machine that is busy with other things.
        assert all(seconds < 3.0 for seconds in outcome.returns_s), kind
        assert sum(outcome.troubles.values()) > 5, kind


@pytest.mark.pty
def test_the_rig_notices_a_reading_that_was_lost_made_up_or_doubled(survival):
    device = survival.SteadyLogger(None, 0, 0)
    device.sent.intact = [1, 2, 3]
    device.sent.unsure = {4}
    t_ns = np.arange(4)

    def faults(*numbers: int) -> str:
        values = np.array([survival.row(number) for number in numbers])
        return "; ".join(survival._faults(t_ns[: len(numbers)], values, device))

    assert faults(1, 2, 3) == faults(1, 2, 3, 4) == ""
    assert "not recorded: [2]" in faults(1, 3)
    assert "never sent intact: [7]" in faults(1, 2, 3, 7)
    assert "not once" in faults(1, 2, 2, 3)
    assert "not in order" in faults(2, 1, 3)


class Terminal:
    """A logger on a pseudo terminal."""

    def __init__(self) -> None:
        self.far, self._near = pty.openpty()
        tty.setraw(self._near)
        self.url = os.ttyname(self._near)

    def send(self, data: bytes) -> None:
        while data:
            data = data[os.write(self.far, data) :]

    def close(self) -> None:
        for handle in (self.far, self._near):
            if handle >= 0:
                os.close(handle)
        self.far = self._near = -1


class Basket:
    """Takes what readers put, and waits for what should come."""

    def __init__(self) -> None:
        self.items: list = []
        self._come = threading.Condition()

    def __call__(self, item) -> None:
        with self._come:
            self.items.append(item)
            self._come.notify_all()

    def wait(self, told, limit_s: float = 10.0) -> None:
        with self._come:
            assert self._come.wait_for(lambda: told(self), limit_s), self.links

    def of(self, kind) -> list:
        return [item for item in list(self.items) if isinstance(item, kind)]

    @property
    def links(self) -> list[str]:
        return [e.value for e in self.of(Event) if e.kind is EventKind.LINK]

    @property
    def first_column(self) -> list[float]:
        values = [v for block in self.of(Block) for v in block.values[:, 0]]
        return [float(value) for value in values if np.isfinite(value)]

    def said(self, words: str) -> None:
        self.wait(lambda basket: any(words in value for value in basket.links))


def choose(url: str, key: str = "logger", profile=PROFILE) -> MeterChoice:
    return MeterChoice(profile, url, key, profile.channels)


@pytest.fixture
def reading():
    begun: list[Acquisition] = []

    def start(*choices: MeterChoice):
        acquisition = Acquisition(choices, Clock.start())
        begun.append(acquisition)
        acquisition.connect()
        basket = Basket()
        acquisition.start(basket)
        return acquisition, basket

    yield start
    for acquisition in begun:
        acquisition.stop()


@pytest.fixture
def terminals():
    made: list[Terminal] = []

    def make() -> Terminal:
        made.append(Terminal())
        return made[-1]

    yield make
    for terminal in made:
        terminal.close()


@pytest.mark.pty
def test_a_device_that_was_renumbered_is_met_again_and_a_stranger_is_not(
    terminals, reading, monkeypatch, tmp_path
):
    ports: list[PortInfo] = []
    monkeypatch.setattr(port_memory, "list_ports", lambda: tuple(ports))
    # Pseudo terminals stand in for USB ports; what they are is what the list says.
    monkeypatch.setattr(port_memory, "pty_made_ns", lambda _path: None)
    name = tmp_path / "ttyUSB0"
    first, stranger, second = terminals(), terminals(), terminals()
    name.symlink_to(first.url)
    ports[:] = [PortInfo(str(name), "Adapter", "1a2b", "3c4d", "A1", "1-1")]
    acquisition, basket = reading(choose(str(name)))
    first.send(b"\n1,1,1\n")
    basket.wait(lambda b: b.first_column == [1.0])

    first.close()
    name.unlink()
    name.symlink_to(stranger.url)
    ports[:] = [PortInfo(str(name), "Other", "1a2b", "3c4d", "B2", "1-1")]
    stranger.send(b"\n9,9,9\n8,8,8\n")
    basket.said("not open: is not plugged in; another device is there now: Other 1a2b:3c4d B2")
    assert "another device" in acquisition.state()[0].message

    ports.append(PortInfo(second.url, "Adapter", "1a2b", "3c4d", "A1", "1-3"))
    second.send(b"x\n2,2,2\n")
    basket.wait(lambda b: b.first_column == [1.0, 2.0])
    basket.said(f"open again: it is {second.url} now")
    state = acquisition.state()[0]
    assert state.alive
    assert state.message == ""
    assert len([value for value in basket.links if value.startswith("not open")]) == 1


@pytest.mark.pty
def test_another_programs_new_terminal_of_the_same_name_is_left_alone(terminals, reading):
    mine = terminals()
    name = mine.url
    acquisition, basket = reading(choose(name))
    mine.send(b"\n1,1,1\n")
    basket.wait(lambda b: b.first_column == [1.0])
    time.sleep(0.02)  # the system's stamp on a node goes on in steps of some milliseconds
    mine.close()
    basket.said("lost: ")
    for _ in range(300):  # until the number is given out again
        other = terminals()
        if other.url == name:
            break
        time.sleep(0.005)
    assert other.url == name
    other.send(b"\n9,9,9\n9,9,9\n")
    basket.said("not open: has gone; what has this name now is another program's")
    assert "another program's" in acquisition.state()[0].message
    assert basket.first_column == [1.0]


def test_a_network_that_does_not_answer_holds_up_neither_rows_nor_another_meter(reading):
    with ExitStack() as opened:
        # A queue for one: when it is full the far side does not even refuse.
        door = opened.enter_context(socket.create_server(("127.0.0.1", 0), backlog=0))
        steady = opened.enter_context(socket.create_server(("127.0.0.1", 0)))
        acquisition, basket = reading(
            choose(f"socket://127.0.0.1:{door.getsockname()[1]}", "gone"),
            choose(f"socket://127.0.0.1:{steady.getsockname()[1]}", "steady"),
        )
        line = opened.enter_context(door.accept()[0])
        other = opened.enter_context(steady.accept()[0])
        line.sendall(b"\n1,1,1\n")
        basket.wait(lambda b: b.first_column == [1.0])
        for _ in range(4):
            one = opened.enter_context(socket.socket())
            one.setblocking(False)
            one.connect_ex(door.getsockname())
        line.close()
        basket.said("lost: ")
        before = rows_without_data(basket, "gone")
        other.sendall(b"\n")
        for number in range(40):
            other.sendall(f"{100 + number},0,0\n".encode())
            time.sleep(0.03)
        basket.wait(lambda b: b.first_column[-1] == 139.0, 5.0)
        assert basket.first_column[1:] == [100.0 + number for number in range(40)]
        assert rows_without_data(basket, "gone") - before >= 6
        assert not any(value.startswith("open again") for value in basket.links)
        began = time.monotonic()
        acquisition.stop()
        assert time.monotonic() - began < 2.0


def rows_without_data(basket: Basket, source: str) -> int:
    return sum(
        int((block.flags[:, 0] == int(Flag.NO_DATA)).sum())
        for block in basket.of(Block)
        if block.source == source
    )


@pytest.mark.pty
def test_a_wrong_speed_is_said_and_forgotten_when_readings_come(terminals, reading):
    logger = terminals()
    acquisition, basket = reading(choose(logger.url))
    until = time.monotonic() + 60.0
    while not any("line speed" in words for words in basket.links) and time.monotonic() < until:
        logger.send(b"\x00\x80\xf8\x66\xe0\xff\x00\x9e")
        time.sleep(0.05)
    basket.said(f"the line speed is probably not {PROFILE.link.short}")
    assert "line speed is probably not" in acquisition.state()[0].message
    logger.send(b"\n1,1,1\n")
    basket.wait(lambda b: b.first_column == [1.0])
    assert acquisition.state()[0].message == ""
    assert sum("line speed" in words for words in basket.links) == 1


@pytest.mark.pty
def test_a_meter_that_switches_itself_off_is_said_with_the_cure(terminals, reading):
    profile = replace(PROFILE, power_off_s=900.0, power_off_cure="Hold SEL at switching on")
    logger = terminals()
    acquisition, basket = reading(choose(logger.url, profile=profile))
    logger.send(b"\n1,1,1\n")
    basket.said("(switched itself off? it does after 15 min: Hold SEL at switching on)")
    basket.said("no reading for 0.")
    state = acquisition.state()[0]
    assert not state.alive
    assert "Hold SEL" in state.message
    logger.send(b"2,2,2\n")
    basket.said("back after")
    assert acquisition.state()[0].message == ""


@pytest.mark.pty
def test_bytes_that_the_system_lost_are_told_and_counted(terminals, reading, monkeypatch):
    logger = terminals()
    acquisition, basket = reading(choose(logger.url))
    link = acquisition._conversations[0].port.link
    monkeypatch.setattr(link, "line_counts", lambda: LineCounts(lost=7, framing=2))
    basket.said("7 byte(s) lost: they came faster than they were fetched; 2 byte(s) damaged")
    assert acquisition.state()[0].lost == 9
