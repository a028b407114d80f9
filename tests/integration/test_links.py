"""Links over real pseudo terminals and real sockets."""

import os
import pty
import socket
import threading
import time
import tty

import pytest
import serial
from serial.rfc2217 import PortManager

from meterlog.instruments import AsciiLineDecoder, Link, open_link
from meterlog.model.errors import LinkBusy, LinkLost, LinkNotFound, LinkRefused, UsageError
from meterlog.profile import LinkSettings, load_meter

SETTINGS = LinkSettings()
LINE = b"12.431,0.872,4.950\n"


class Terminal:
    """A pseudo terminal; the test is the meter at its far side."""

    def __init__(self) -> None:
        self.far, self._near = pty.openpty()
        tty.setraw(self._near)
        self.url = os.ttyname(self._near)

    def send(self, data: bytes) -> None:
        rest = memoryview(data)
        while rest:
            rest = rest[os.write(self.far, rest) :]

    def receive(self) -> bytes:
        return os.read(self.far, 65_536)

    def unplug(self) -> None:
        for handle in (self.far, self._near):
            os.close(handle)
        self.far = self._near = -1

    def close(self) -> None:
        if self.far >= 0:
            self.unplug()


class Server:
    """A network port; the test is the meter at its far side."""

    def __init__(self) -> None:
        self._door = socket.create_server(("127.0.0.1", 0))
        self.url = f"socket://127.0.0.1:{self._door.getsockname()[1]}"
        self._line: socket.socket | None = None

    def _accepted(self) -> socket.socket:
        if self._line is None:
            self._line, _ = self._door.accept()
        return self._line

    def send(self, data: bytes) -> None:
        self._accepted().sendall(data)

    def receive(self) -> bytes:
        return self._accepted().recv(65_536)

    def unplug(self) -> None:
        self._accepted().close()
        self._line = None

    def close(self) -> None:
        if self._line is not None:
            self._line.close()
        self._door.close()


def read_on(link: Link) -> None:
    for _ in range(100):
        link.read(0.1)


@pytest.fixture(params=[pytest.param(Terminal, marks=pytest.mark.pty), Server])
def meter(request):
    far = request.param()
    yield far
    far.close()


@pytest.fixture
def link(meter):
    with open_link(meter.url, SETTINGS) as opened:
        yield opened


def test_what_waits_is_given_at_once_and_else_the_first_bytes(meter, link):
    meter.send(b"one")
    assert link.read(2.0) == b"one"
    late = threading.Timer(0.05, meter.send, [b"two"])
    late.start()
    assert link.read(5.0) == b"two"
    late.join()


def test_nothing_is_nothing_after_the_wait_and_at_once_without_one(meter, link):
    meter.send(b"x")
    link.read(2.0)
    began = time.monotonic()
    assert link.read(0.0) == b""
    assert link.read(0.05) == b""
    assert 0.04 < time.monotonic() - began < 1.0


def test_all_is_written(meter, link):
    sent = bytes(range(256)) * 200
    received = bytearray()

    def listen() -> None:
        while len(received) < len(sent):
            received.extend(meter.receive())

    listener = threading.Thread(target=listen)
    listener.start()
    link.write(sent)
    listener.join(20)
    assert bytes(received) == sent


def test_a_fast_stream_loses_nothing_and_comes_in_large_pieces(meter, link):
    profile = load_meter("line-logger")
    decoder = AsciiLineDecoder(profile.lines, profile.channels)
    lines = 60_000
    sender = threading.Thread(target=meter.send, args=(LINE * lines,))
    sender.start()
    rows = reads = 0
    while rows < lines and (data := link.read(5.0)):
        rows += len(decoder.feed(data))
        reads += 1
    sender.join()
    assert rows == lines
    assert decoder.refused == 0
    # One byte, or one pseudo-terminal buffer, a read would be many times more.
    assert reads <= len(LINE) * lines // 2_000


def test_a_dropped_input_is_gone(meter, link):
    meter.send(b"old")
    assert link.read(2.0) == b"old"
    meter.send(b"stale")
    waiting = time.monotonic() + 60.0
    while not link._port.in_waiting and time.monotonic() < waiting:
        pass
    link.drop_input()
    meter.send(b"new")
    assert link.read(2.0) == b"new"


def test_a_port_that_goes_away_is_lost_for_reading_and_told_with_its_name(meter, link):
    meter.send(b"x")
    link.read(2.0)
    meter.unplug()
    with pytest.raises(LinkLost) as caught:
        read_on(link)
    assert caught.value.subject == meter.url


def test_what_came_before_a_network_port_went_away_is_still_given():
    far = Server()
    with open_link(far.url, SETTINGS) as link:
        far.send(b"last words")
        far.unplug()
        assert link.read(2.0) == b"last words"
        with pytest.raises(LinkLost):
            link.read(2.0)
    far.close()


def test_closing_ends_a_read_in_another_thread_at_once(meter, link):
    said: list[Exception] = []
    began = threading.Event()

    def wait() -> None:
        began.set()
        try:
            link.read(30.0)
        except LinkLost as error:
            said.append(error)

    reader = threading.Thread(target=wait)
    reader.start()
    began.wait()
    link.close()
    reader.join(60)
    assert not reader.is_alive()
    assert len(said) == 1


def test_a_closed_link_is_lost_and_may_be_closed_again(link):
    link.close()
    link.close()
    for act in (lambda: link.read(0.1), lambda: link.write(b"x"), link.drop_input):
        with pytest.raises(LinkLost, match="closed"):
            act()


def test_what_a_meter_says_on_being_connected_is_kept():
    # Often enough that it comes while the port is still being opened.
    for _ in range(5):
        door = socket.create_server(("127.0.0.1", 0))

        def greet(door=door) -> None:
            line, _ = door.accept()
            with line:
                line.sendall(b"# hello\n")
                line.recv(1)

        greeter = threading.Thread(target=greet)
        greeter.start()
        with open_link(f"socket://127.0.0.1:{door.getsockname()[1]}", SETTINGS) as link:
            assert link.read(5.0) == b"# hello\n"
        greeter.join()
        door.close()


@pytest.mark.pty
def test_what_waits_on_a_terminal_before_it_is_opened_is_kept():
    terminal = Terminal()
    terminal.send(b"# hello\n")
    with open_link(terminal.url, SETTINGS) as link:
        assert link.read(5.0) == b"# hello\n"
    terminal.close()


@pytest.mark.pty
def test_a_second_opening_of_a_serial_port_is_refused_as_busy():
    terminal = Terminal()
    with open_link(terminal.url, SETTINGS), pytest.raises(LinkBusy, match="another program"):
        open_link(terminal.url, SETTINGS)
    open_link(terminal.url, SETTINGS).close()
    terminal.close()


@pytest.mark.parametrize(
    ("url", "kind"),
    [
        ("/dev/no-such-port", LinkNotFound),
        ("socket://127.0.0.1", UsageError),
        ("socket://127.0.0.1:notaport", UsageError),
        ("socket://127.0.0.1:70000", UsageError),
        ("rfc2217://:4000", UsageError),
        ("nonsense://x", UsageError),
        ("hid://12:34", UsageError),
        ("usbtmc://wxyz:0001", UsageError),
        ("", UsageError),
    ],
)
def test_what_is_no_port_is_told_with_what_to_do(url, kind):
    with pytest.raises(kind) as caught:
        open_link(url, SETTINGS)
    assert caught.value.subject == (url or "''")
    assert caught.value.remedy


def test_a_file_is_no_port(tmp_path):
    (tmp_path / "file").touch()
    with pytest.raises(LinkNotFound, match="no serial port"):
        open_link(str(tmp_path / "file"), SETTINGS)


def test_a_network_port_where_nobody_listens_is_refused():
    server = Server()
    server.close()
    with pytest.raises(LinkRefused, match="nobody listens"):
        open_link(server.url, SETTINGS)


def test_a_port_without_a_handle_to_wait_on_works_too():
    with open_link("loop://", SETTINGS) as link:
        link.write(b"round")
        assert link.read(1.0) == b"round"
        late = threading.Timer(0.05, link.write, [b"trip"])
        late.start()
        data = b""
        while len(data) < 4:
            data += link.read(5.0)
        late.join()
        assert data == b"trip"
        assert link.read(0.02) == b""
        closer = threading.Timer(0.05, link.close)
        closer.start()
        with pytest.raises(LinkLost):
            link.read(30.0)
        closer.join()


class Rfc2217Server(threading.Thread):
    """A remote serial port that sends back what it gets, by pyserial's own server part."""

    def __init__(self) -> None:
        super().__init__(name="test rfc2217 server")
        self._door = socket.create_server(("127.0.0.1", 0))
        self.url = f"rfc2217://127.0.0.1:{self._door.getsockname()[1]}"
        self.start()

    def run(self) -> None:
        line, _ = self._door.accept()
        with (
            line,
            line.makefile("wb", buffering=0) as out,
            serial.serial_for_url("loop://") as port,
        ):
            port.timeout = 0
            manager = PortManager(port, out)
            while data := line.recv(1024):
                port.write(b"".join(manager.filter(data)))
                out.write(b"".join(manager.escape(port.read(port.in_waiting))))

    def close(self) -> None:
        self.join(60)
        self._door.close()


# pyserial 3.5 still calls Thread.setDaemon and setName.
@pytest.mark.filterwarnings("ignore:set(Daemon|Name).. is deprecated:DeprecationWarning")
def test_a_remote_serial_port_by_rfc_2217_works_too():
    server = Rfc2217Server()
    with open_link(server.url, SETTINGS) as link:
        sent = bytes(range(256))
        link.write(sent)
        data = b""
        until = time.monotonic() + 60.0
        while len(data) < len(sent) and time.monotonic() < until:
            data += link.read(1.0)
        assert data == sent
    server.close()
