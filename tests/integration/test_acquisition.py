"""Loggers read through real ports: nothing lost, all that goes wrong said."""

import itertools
import os
import pty
import socket
import threading
import time
import tty
from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest

from meterlog.acquire import Acquisition, Clock, MeterChoice
from meterlog.instruments import open_link
from meterlog.model import Block, Event, EventKind, Flag, RawBytes
from meterlog.model.errors import LinkError, LinkNotFound, UsageError
from meterlog.profile import load_meter

PROFILE = load_meter("line-logger")


class Terminal:
    """A logger on a pseudo terminal, under a name of its own.

    The system gives the number of a closed terminal to the next one that is made, perhaps by
    another test at the same time: a name that goes with the terminal can't lead to a stranger.
    """

    def __init__(self, folder: Path) -> None:
        self.far, self._near = pty.openpty()
        tty.setraw(self._near)
        self._name = folder / "logger"
        self._name.symlink_to(os.ttyname(self._near))
        self.url = str(self._name)

    def send(self, data: bytes) -> None:
        while data:
            data = data[os.write(self.far, data) :]

    def close(self) -> None:
        self._name.unlink(missing_ok=True)
        for handle in (self.far, self._near):
            if handle >= 0:
                os.close(handle)
        self.far = self._near = -1


class Server:
    """A logger on a network port, which may go away and come back."""

    def __init__(self) -> None:
        self._door = socket.create_server(("127.0.0.1", 0))
        self._door.settimeout(10)
        self.url = f"socket://127.0.0.1:{self._door.getsockname()[1]}"
        self._line: socket.socket | None = None

    def send(self, data: bytes) -> None:
        if self._line is None:
            self._line, _ = self._door.accept()
        self._line.sendall(data)

    def unplug(self) -> None:
        self._line.close()
        self._line = None

    def close(self) -> None:
        if self._line is not None:
            self._line.close()
        self._door.close()


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
            assert self._come.wait_for(lambda: told(self), limit_s), self.events

    @property
    def blocks(self) -> list[Block]:
        return [item for item in list(self.items) if isinstance(item, Block)]

    @property
    def events(self) -> list[tuple[str, str]]:
        return [
            (item.kind.value, item.value) for item in list(self.items) if isinstance(item, Event)
        ]

    @property
    def values(self) -> np.ndarray:
        return np.concatenate([np.empty((0, 3)), *(block.values for block in self.blocks)])

    def rows(self, count: int) -> None:
        self.wait(lambda basket: np.isfinite(basket.values[:, 0]).sum() >= count)

    def said(self, kind: EventKind, word: str) -> None:
        self.wait(lambda basket: any(k == kind and word in v for k, v in basket.events))


def choose(url: str, profile=PROFILE, key: str = "line-logger") -> MeterChoice:
    return MeterChoice(profile=profile, url=url, key=key, channels=profile.channels)


@pytest.fixture
def terminal(tmp_path):
    far = Terminal(tmp_path)
    yield far
    far.close()


@pytest.fixture
def server():
    far = Server()
    yield far
    far.close()


@pytest.fixture
def reading():
    """Connect, start, and stop at the end: ``reading(choice, ...)`` gives what it puts."""
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


def slower(interval_s: float):
    """Give the profile with another interval, as its file would say it."""
    channels = tuple(replace(channel, interval_s=interval_s) for channel in PROFILE.channels)
    return replace(PROFILE, channels=channels)


@pytest.mark.pty
def test_every_whole_line_is_a_row_and_the_raw_bytes_come_first(terminal, reading):
    acquisition, basket = reading(choose(terminal.url))
    lines = [f"{12 + row / 1000:.3f},0.5,{row}\n".encode() for row in range(500)]
    terminal.send(b"9,9\n")
    for start in range(0, 500, 7):
        terminal.send(b"".join(lines[start : start + 7]))
    basket.rows(500)
    acquisition.stop()
    values = basket.values[np.isfinite(basket.values[:, 0])]
    np.testing.assert_array_equal(values[:, 2], np.arange(500))
    assert b"".join(i.data for i in basket.items if isinstance(i, RawBytes)) == b"9,9\n" + b"".join(
        lines
    )
    made = [item for item in basket.items if not isinstance(item, Event)]
    for before, item in itertools.pairwise(made):
        if isinstance(item, Block) and not item.flags.any():
            assert isinstance(before, RawBytes)
            assert item.t_ns[-1] <= before.t_ns
    stamps = np.concatenate([block.t_ns for block in basket.blocks])
    assert np.all(np.diff(stamps) >= 0)
    assert acquisition.state()[0].refused == 0
    assert acquisition.state()[0].readings == 500


@pytest.mark.pty
def test_what_came_before_the_start_and_the_rest_of_its_last_line_are_dropped(terminal):
    acquisition = Acquisition([choose(terminal.url)], Clock.start())
    acquisition.connect()
    terminal.send(b"1,1,1\njunk\n2,2,2\n12.")
    basket = Basket()
    acquisition.start(basket)
    terminal.send(b"345,6,7\n3,3,3\n")
    basket.rows(1)
    acquisition.stop()
    assert basket.values[np.isfinite(basket.values[:, 0])].tolist() == [[3.0, 3.0, 3.0]]
    assert acquisition.state()[0].refused == 0


@pytest.mark.pty
def test_wrong_and_half_lines_cost_themselves_are_counted_and_shown(terminal, reading):
    acquisition, basket = reading(choose(terminal.url))
    terminal.send(b"\n1,1,1\n12.4,0.8\n2,2,2\n\xff\xfe,1,1\n3,3,3\n")
    basket.rows(3)
    acquisition.stop()
    assert basket.values[np.isfinite(basket.values[:, 0])][:, 0].tolist() == [1.0, 2.0, 3.0]
    refused = [value for kind, value in basket.events if kind == "refused"]
    assert sum(int(value.split(" ", 1)[0]) for value in refused) == 2
    assert r"'\xff\xfe,1,1'" in refused[-1]
    assert acquisition.state()[0].refused == 2


@pytest.mark.pty
def test_scale_zero_and_half_the_integration_time_are_applied(terminal, reading):
    profile = slower(0.05)
    channels = tuple(
        replace(channel, scale=2.0, offset=0.5, integration_s=0.04) for channel in profile.channels
    )
    profile = replace(profile, channels=channels)
    _, basket = reading(choose(terminal.url, profile))
    terminal.send(b"\n1,2,OL\n")
    basket.rows(1)
    block = next(block for block in basket.blocks if np.isfinite(block.values[0, 0]))
    assert block.values[0, :2].tolist() == [1.5, 3.5]
    assert np.isnan(block.values[0, 2])
    zeroed = int(Flag.ZEROED)
    assert block.flags.tolist() == [[zeroed, zeroed, zeroed | int(Flag.OVERLOAD)]]
    raw = next(i for i in basket.items if isinstance(i, RawBytes) and b"OL" in i.data)
    assert raw.t_ns - block.t_ns[0] == 20_000_000


@pytest.mark.pty
def test_silence_is_rows_without_data_and_one_event_and_so_is_its_end(terminal, reading):
    acquisition, basket = reading(choose(terminal.url))
    terminal.send(b"\n1,1,1\n")
    basket.rows(1)
    basket.said(EventKind.LINK, "silent since")
    basket.wait(lambda b: sum(block.flags[0, 0] == int(Flag.NO_DATA) for block in b.blocks) >= 3)
    assert not acquisition.state()[0].alive
    terminal.send(b"2,2,2\n")
    basket.said(EventKind.LINK, "back after")
    basket.rows(2)
    acquisition.stop()
    links = [value.split(" ")[0] for kind, value in basket.events if kind == "link"]
    assert links[:2] == ["silent", "back"]
    gap = [block for block in basket.blocks if block.flags[0, 0] == int(Flag.NO_DATA)]
    assert np.isnan(np.concatenate([block.values for block in gap])).all()
    stamps = np.array([block.t_ns[0] for block in gap])
    assert np.diff(stamps)[:2].min() >= 100_000_000
    assert np.all(np.diff(np.concatenate([block.t_ns for block in basket.blocks])) >= 0)


def test_a_lost_network_logger_is_said_and_comes_back_by_itself(server, reading):
    acquisition, basket = reading(choose(server.url))
    server.send(b"\n1,1,1\n")
    basket.rows(1)
    server.unplug()
    basket.said(EventKind.LINK, "lost: ")
    basket.wait(lambda b: b.blocks[-1].flags[0, 0] == int(Flag.NO_DATA))
    server.send(b"2,2\n2,2,2\n3,3,3\n")
    basket.rows(3)
    basket.said(EventKind.LINK, "back after")
    acquisition.stop()
    finite = basket.values[np.isfinite(basket.values[:, 0])]
    assert finite[:, 0].tolist() == [1.0, 2.0, 3.0]
    assert [value[:5] for kind, value in basket.events if kind == "link"].count("lost:") == 1


@pytest.mark.pty
def test_a_pulled_plug_is_said_once_goes_on_without_data_and_stops_quickly(terminal, reading):
    acquisition, basket = reading(choose(terminal.url))
    terminal.send(b"\n1,1,1\n")
    basket.rows(1)
    terminal.close()
    basket.said(EventKind.LINK, "lost: ")
    basket.wait(lambda b: sum(block.flags[0, 0] == int(Flag.NO_DATA) for block in b.blocks) >= 8)
    state = acquisition.state()[0]
    assert not state.alive
    assert state.message.startswith("lost: ")
    began = time.monotonic()
    acquisition.stop()
    assert time.monotonic() - began < 2.0
    links = [value for kind, value in basket.events if kind == "link"]
    assert [value[:5] for value in links if not value.startswith("silent")] == ["lost:"], links


@pytest.mark.pty
def test_a_meter_much_slower_than_its_profile_is_said_once(terminal, reading):
    _, basket = reading(choose(terminal.url, slower(0.001)))
    stop = threading.Event()

    def talk() -> None:
        while not stop.wait(0.02):
            terminal.send(b"1,1,1\n")

    talker = threading.Thread(target=talk)
    talker.start()
    try:
        basket.said(EventKind.FAULT, "interval_s = 0.001")
        before = len(basket.blocks)
        basket.wait(lambda b: len(b.blocks) >= before + 10)
    finally:
        stop.set()
        talker.join()
    assert len([1 for kind, _ in basket.events if kind == "fault"]) == 1


@pytest.mark.pty
def test_a_meter_that_saves_readings_up_is_not_silent_between_two_lumps(terminal, reading):
    _, basket = reading(choose(terminal.url))
    lump = b"1,1,1\n" * 15
    terminal.send(b"\n")
    for lumps in range(1, 10):
        terminal.send(lump)
        basket.rows(15 * lumps)
        threading.Event().wait(0.3)  # the meter's own pause, longer than three intervals
    silent = [event for event in basket.items if isinstance(event, Event) and "sil" in event.value]
    assert 1 <= len(silent) <= 6  # until it is known
    learnt = [event.t_ns for event in silent]
    lumps = [block for block in basket.blocks if len(block) == 15]
    assert lumps[-2].t_ns[-1] > learnt[-1]
    # Spread over the time in which they were taken.
    assert np.diff(lumps[-1].t_ns).min() > 15_000_000


@pytest.mark.pty
def test_a_banner_that_says_virtual_bench_makes_the_instrument_simulated(terminal):
    for banner, simulated in ((b"# VIRTUAL BENCH - simulated readings\n", True), (b"# x\n", False)):
        acquisition = Acquisition([choose(terminal.url)], Clock.start())
        # Opening clears what waits on a serial port, so the banner must come once it is open.
        late = threading.Timer(0.1, terminal.send, [banner])
        late.start()
        (instrument,) = acquisition.connect()
        late.join()
        acquisition.stop()
        assert instrument.simulated is simulated
        assert (instrument.key, instrument.profile) == ("line-logger", "line-logger")
        assert instrument.url == terminal.url


@pytest.mark.pty
def test_if_one_meter_can_not_be_opened_the_others_are_closed_again(terminal):
    choices = [choose(terminal.url), choose("/dev/no-such-port", key="other")]
    acquisition = Acquisition(choices, Clock.start())
    with pytest.raises(LinkNotFound, match="no-such-port"):
        acquisition.connect()
    open_link(terminal.url, PROFILE.link).close()
    with pytest.raises(UsageError, match="not connected"):
        acquisition.start(Basket())


@pytest.mark.pty
def test_a_port_that_goes_between_connecting_and_starting_is_an_error(terminal):
    acquisition = Acquisition([choose(terminal.url)], Clock.start())
    acquisition.connect()
    terminal.close()
    with pytest.raises(LinkError):
        acquisition.start(Basket())
    acquisition.stop()


def test_two_meters_may_share_neither_key_nor_port():
    for choices in (
        [choose("a"), choose("b")],
        [choose("a", key="one"), choose("a", key="two")],
    ):
        with pytest.raises(UsageError, match="more than one meter"):
            Acquisition(choices, Clock.start())


@pytest.mark.pty
def test_two_meters_are_read_side_by_side_in_threads_of_their_own(terminal, server, reading):
    acquisition, basket = reading(choose(terminal.url, key="one"), choose(server.url, key="two"))
    names = {thread.name for thread in threading.enumerate()}
    assert {"reader one", "reader two"} <= names
    terminal.send(b"\n1,1,1\n")
    server.send(b"\n2,2,2\n")
    basket.rows(2)
    acquisition.stop()
    found = {b.source: b.values[0, 0] for b in basket.blocks if np.isfinite(b.values[0, 0])}
    assert found == {"one": 1.0, "two": 2.0}
    assert not {"reader one", "reader two"} & {thread.name for thread in threading.enumerate()}


@pytest.mark.pty
def test_an_error_of_the_program_itself_is_said_and_ends_only_that_reader(
    terminal, server, reading, monkeypatch
):
    acquisition, basket = reading(choose(terminal.url, key="one"), choose(server.url, key="two"))
    broken = acquisition._readers[0]
    monkeypatch.setattr(broken._conversation, "hear", None)
    basket.said(EventKind.FAULT, "reading stopped: TypeError")
    server.send(b"\n2,2,2\n")
    basket.rows(1)
    assert not acquisition.state()[0].alive
    assert "reading stopped" in acquisition.state()[0].message
