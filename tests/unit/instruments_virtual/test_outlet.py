"""Ports and the wait for them, with real pseudo terminals and real sockets."""

import os
import select
import socket
import threading
import time

import pytest

from meterlog.instruments.virtual.outlet import wait
from meterlog.instruments.virtual.tcp_outlet import TcpOutlet
from meterlog.model.errors import LinkBusy, UsageError

pytestmark = pytest.mark.pty
needs_pty = pytest.mark.skipif(not hasattr(os, "openpty"), reason="needs pseudo terminals")


@pytest.fixture
def outlet():
    from meterlog.instruments.virtual.pty_outlet import PtyOutlet

    made = []

    def make(*link):
        made.append(PtyOutlet(*link))
        return made[-1]

    yield make
    for one in made:
        one.close()


def opened(one):
    return os.open(one.address, os.O_RDWR | os.O_NOCTTY)


@needs_pty
def test_a_link_points_to_the_terminal_there_is_now(outlet, tmp_path):
    link = tmp_path / "meter"
    link.symlink_to("/nowhere")  # left over by a bench that was killed
    one = outlet(link)
    assert one.address == str(link)
    first = link.readlink()
    end = opened(one)
    one.unplug()
    assert not link.is_symlink()
    assert not one.is_open()
    assert one.read() == b""
    one.plug()
    # The client still holds the old terminal, so the new one is another.
    assert link.readlink() != first
    os.close(end)


@needs_pty
def test_a_link_that_another_bench_took_over_is_left_alone(outlet, tmp_path):
    link = tmp_path / "meter"
    first, second = outlet(link), outlet(link)
    first.close()
    os.close(opened(second))
    second.close()
    assert not link.is_symlink()


@needs_pty
def test_nothing_but_a_link_is_ever_replaced(outlet, tmp_path):
    file = tmp_path / "notes.txt"
    file.write_text("mine")
    with pytest.raises(UsageError, match="is there already and is no symbolic link"):
        outlet(file)
    assert file.read_text() == "mine"
    assert [path.name for path in tmp_path.iterdir()] == ["notes.txt"]


@needs_pty
def test_the_wait_ends_when_somebody_opens_one_of_several_ports(outlet):
    ports = [outlet(), outlet()]
    ends = []
    opening = threading.Timer(0.05, lambda: ends.append(opened(ports[1])))
    opening.start()
    begun = time.monotonic()
    wait(ports, 10.0)
    assert time.monotonic() - begun < 5.0
    opening.join()
    assert [one.is_open() for one in ports] == [False, True]
    os.close(ends[0])


@needs_pty
def test_the_wait_ends_when_bytes_come_to_one_and_another_is_closed(outlet):
    ports = [outlet(), outlet()]
    end = opened(ports[0])
    begun = time.monotonic()
    wait(ports, 0.03)
    assert time.monotonic() - begun >= 0.03
    os.write(end, b"x")
    wait(ports, 10.0)
    assert time.monotonic() - begun < 5.0
    assert ports[0].read() == b"x"
    os.close(end)


@needs_pty
@pytest.mark.parametrize("arrived", [True, False], ids=["arrived", "perhaps on its way"])
def test_what_a_client_left_unread_is_thrown_away_when_told_to(outlet, arrived):
    one = outlet()
    end = opened(one)
    one.outbox.put(b"for the first\n")
    if arrived:
        assert select.select([end], [], [], 10.0)[0]
    os.close(end)
    assert not one.is_open()
    one.forget()
    assert not one.is_open()
    end = opened(one)
    assert one.is_open()
    one.outbox.put(b"for the second\n")
    assert os.read(end, 100) == b"for the second\n"
    os.close(end)
    one.unplug()
    one.forget()


@needs_pty
def test_a_long_message_goes_on_as_soon_as_the_reader_reads(outlet):
    one = outlet()
    end = opened(one)
    message = bytes(range(256)) * 2000
    one.outbox.put(message)
    assert one.outbox.waits
    got = bytearray()

    def read():
        while len(got) < len(message):
            got.extend(os.read(end, 65_536))

    reading = threading.Thread(target=read)
    reading.start()
    begun = time.monotonic()
    while one.outbox.stuck:
        wait([one], 10.0)
        one.outbox.flush()
    reading.join(60)
    assert bytes(got) == message
    assert time.monotonic() - begun < 5.0
    os.close(end)


def test_an_unplugged_tcp_port_refuses_and_comes_back_on_the_same_port():
    one = TcpOutlet()
    host, port = one.address.removeprefix("socket://").split(":")
    with socket.create_connection((host, int(port))) as client:
        wait([one], 5.0)
        assert one.is_open()
        one.unplug()
        assert not one.is_open()
        assert client.recv(10) == b""
    with pytest.raises(ConnectionRefusedError):
        socket.create_connection((host, int(port)))
    one.plug()
    with socket.create_connection((host, int(port))):
        wait([one], 5.0)
        assert one.is_open()
        assert len(one.ends()) == 2
    one.close()


def test_a_tcp_port_that_was_taken_meanwhile_is_busy():
    one = TcpOutlet()
    port = int(one.address.rpartition(":")[2])
    one.unplug()
    with socket.create_server(("127.0.0.1", port)), pytest.raises(LinkBusy, match=f"port {port}"):
        one.plug()
    one.plug()
    one.close()
