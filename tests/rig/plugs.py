"""Plugs that can be pulled: a pseudo terminal under a lasting name, and a network port."""

from __future__ import annotations

import contextlib
import fcntl
import os
import pty
import select
import socket
import struct
import termios
import time
import tty
from pathlib import Path

LONGEST_S = 20.0


class Unplugged(Exception):
    """The far side has gone, or nobody is there."""


class PtyPlug:
    """A new pseudo terminal each time it is plugged in, always under the same symbolic link."""

    def __init__(self, link: Path) -> None:
        self.url = str(link)
        self._link = link
        self._far = self._near = -1
        self.plug_in()

    def plug_in(self) -> None:
        """Come back, as another device node."""
        self._far, self._near = pty.openpty()
        tty.setraw(self._near)
        os.set_blocking(self._far, False)
        fresh = self._link.with_suffix(".fresh")
        fresh.symlink_to(os.ttyname(self._near))
        fresh.replace(self._link)

    def wait_opened(self) -> bool:
        """Nothing to wait for: what is sent before it is opened waits in the system."""
        return True

    def pull(self) -> None:
        """Go away with all that has not been fetched, the name first.

        The system gives the number of a closed terminal to the next one that anybody makes.
        """
        self._link.unlink(missing_ok=True)
        for handle in (self._far, self._near):
            os.close(handle)
        self._far = self._near = -1

    def send(self, data: bytes) -> None:
        """Send all of it."""
        until = time.monotonic() + LONGEST_S
        while data:
            if not select.select([], [self._far], [], 1.0)[1]:
                if time.monotonic() > until:
                    raise Unplugged
                continue
            with contextlib.suppress(BlockingIOError):
                data = data[os.write(self._far, data) :]

    def receive(self, wait_s: float) -> bytes:
        """Give what has come, waiting at most so long."""
        if not select.select([self._far], [], [], wait_s)[0]:
            return b""
        try:
            return os.read(self._far, 65_536)
        except BlockingIOError:
            return b""

    def drained(self) -> bool:
        """Wait until the program has fetched all; False if it does not."""
        until = time.monotonic() + LONGEST_S
        while time.monotonic() < until:
            waiting = struct.unpack("i", fcntl.ioctl(self._near, termios.FIONREAD, b"\0" * 4))[0]
            if not waiting:
                return True
            time.sleep(0.002)
        return False

    def close(self) -> None:
        """End for good."""
        if self._far >= 0:
            self.pull()


class TcpPlug:
    """A network port whose connection breaks off."""

    def __init__(self) -> None:
        self._door = socket.create_server(("127.0.0.1", 0))
        self.url = f"socket://127.0.0.1:{self._door.getsockname()[1]}"
        self._line: socket.socket | None = None

    def plug_in(self) -> None:
        """Listen again; nobody could connect in between."""
        port = int(self.url.rpartition(":")[2])
        self._door = socket.create_server(("127.0.0.1", port))

    def wait_opened(self) -> bool:
        """Wait until the program has connected; False if it does not."""
        if self._line is not None:
            return True
        self._door.settimeout(LONGEST_S)
        try:
            self._line, _ = self._door.accept()
        except TimeoutError:
            return False
        return True

    def pull(self) -> None:
        """Break off, and refuse to be connected to."""
        self._door.close()
        if self._line is not None:
            self._line.close()
        self._line = None

    def send(self, data: bytes) -> None:
        """Send all of it."""
        if not self.wait_opened():
            raise Unplugged
        try:
            self._line.sendall(data)
        except OSError as error:
            self._hang_up()
            raise Unplugged from error

    def receive(self, wait_s: float) -> bytes:
        """Give what has come, waiting at most so long."""
        if not self.wait_opened():
            raise Unplugged
        self._line.settimeout(max(wait_s, 0.001))
        try:
            data = self._line.recv(65_536)
        except TimeoutError:
            return b""
        except OSError as error:
            self._hang_up()
            raise Unplugged from error
        if not data:
            self._hang_up()
            raise Unplugged
        return data

    def _hang_up(self) -> None:
        """Let go of a program that has let go."""
        self._line.close()
        self._line = None

    def drained(self) -> bool:
        """Wait until the program's side has taken all; False if that can't be told."""
        until = time.monotonic() + LONGEST_S
        while self._line is not None and time.monotonic() < until:
            waiting = struct.unpack("i", fcntl.ioctl(self._line, termios.TIOCOUTQ, b"\0" * 4))[0]
            if not waiting:
                return True
            time.sleep(0.002)
        return False

    def close(self) -> None:
        """End for good."""
        self.pull()
