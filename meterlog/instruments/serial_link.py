"""SerialLink: a serial port, or a stream over a network, as pyserial opens them."""

from __future__ import annotations

import contextlib
import errno
import io
import os
import select
import socket
import sys
import threading
import time
from typing import Any

import serial

from meterlog.instruments.line_counters import line_counts_of, since
from meterlog.instruments.link import LineCounts, Link
from meterlog.instruments.link_errors import lost, open_failed
from meterlog.instruments.port_memory import pty_made_ns
from meterlog.model.errors import LinkLost
from meterlog.profile import LinkSettings

if sys.platform == "win32":
    _PORT_ERRORS: tuple[type[Exception], ...] = (OSError,)
else:
    import termios

    _PORT_ERRORS = (OSError, termios.error)

MOST_AT_ONCE = 65_536
_WRITE_S = 5.0
_SLICE_S = 0.05
_PARITIES = {
    "none": serial.PARITY_NONE,
    "even": serial.PARITY_EVEN,
    "odd": serial.PARITY_ODD,
}


class SerialLink(Link):
    """An open port: a :class:`meterlog.instruments.Link` made by :meth:`open`.

    Attributes
    ----------
    url : str
        As given to :meth:`open`.
    byte_s : float, seconds
        0 for a network, a pseudo terminal, and where the profile says so.
    messages : bool
        False: a stream.
    """

    messages = False

    def __init__(self, url: str, port: serial.SerialBase, byte_s: float = 0.0) -> None:
        self.url = url
        self.byte_s = byte_s
        self._port: Any = port
        self._reading = threading.Lock()
        self._writing = threading.Lock()
        self._closed = False
        self._handle = _handle(port)
        if self._handle is not None:
            # Then pyserial itself never waits: it would throw away what it has read of a port
            # that fails while it waits for more.
            port.timeout = 0.0
        self._wake, self._waker = socket.socketpair()
        self._counted_before = line_counts_of(self._handle)

    @classmethod
    def open(cls, url: str, settings: LinkSettings) -> SerialLink:
        """Open a port for this program alone.

        Parameters
        ----------
        url : str
            A port's name or path, or an address that pyserial understands:
            ``socket://HOST:PORT``, ``rfc2217://HOST:PORT``, ``loop://``.
        settings : LinkSettings
            Without effect on network links and pseudo terminals.

        Returns
        -------
        SerialLink

        Raises
        ------
        LinkNotFound
            If there is no such port, or the address is none.
        LinkBusy
            If another program holds it.
        LinkRefused
            If this user may not open it, or the far side refuses.
        """
        port = None
        bits, parity = settings.data_bits, settings.parity
        if "://" not in url and pty_made_ns(url) is not None:
            bits, parity = 8, "none"  # a pseudo terminal refuses any other form
        try:
            port = serial.serial_for_url(
                url,
                do_not_open=True,
                baudrate=settings.baud,
                bytesize=bits,
                parity=_PARITIES[parity],
                stopbits=settings.stop_bits,
                timeout=_SLICE_S,
                # The remote ports of RFC 2217 know no limit for writing.
                write_timeout=None if url.lower().startswith("rfc2217:") else _WRITE_S,
                exclusive=True,
            )
            port.dtr = settings.dtr
            port.rts = settings.rts
            _open_keeping_input(port)
            return cls(url, port, _byte_s(url, settings))
        # pyserial's address handlers let through whatever their parsing meets (KeyError,
        # TypeError, termios.error).
        except Exception as error:
            if port is not None:
                _close(port)
            raise open_failed(url, error) from error

    def read(self, wait_s: float) -> bytes:
        """Give what waits, or else what comes first within ``wait_s``.

        Parameters
        ----------
        wait_s : float, seconds

        Returns
        -------
        bytes
            At most about 64 KiB; empty when nothing came.

        Raises
        ------
        LinkLost
            If the port went away or was closed. What had come before is given first.
        """
        with self._reading:
            if wait_s <= 0.0 or self._handle is None:
                data = self._drain(b"")
                return data if data or wait_s <= 0.0 else self._wait_in_slices(wait_s)
            self._refuse_closed()
            waited: list[int | socket.socket] = [self._handle, self._wake]
            # To ask before reading costs little; to read what isn't there, an error each time.
            if not select.select(waited, [], [], wait_s)[0]:
                return b""
            return self._drain(b"")

    def _drain(self, begun: bytes) -> bytes:
        parts = [begun]
        size = len(begun)
        while size < MOST_AT_ONCE:
            try:
                part = self._take()
            except LinkLost:
                if size:
                    break  # the next call meets the same loss
                raise
            if not part:
                break
            parts.append(part)
            size += len(part)
        return b"".join(parts)

    def _take(self) -> bytes:
        """Give what one call to the port gives without waiting."""
        self._refuse_closed()
        try:
            if self._handle is not None and os.name == "posix":
                return _read_now(self._handle)
            waiting = MOST_AT_ONCE if self._handle is not None else self._port.in_waiting
            return bytes(self._port.read(min(waiting, MOST_AT_ONCE))) if waiting else b""
        except _PORT_ERRORS as error:
            raise lost(self.url, error) from error

    def _wait_in_slices(self, wait_s: float) -> bytes:
        """Wait on a port that has no handle: pyserial waits, a slice at a time."""
        until = time.monotonic() + wait_s
        while True:
            self._refuse_closed()
            try:
                first = bytes(self._port.read(1))
            except _PORT_ERRORS as error:
                raise lost(self.url, error) from error
            if first:
                return self._drain(first)
            if time.monotonic() >= until:
                return b""

    def _refuse_closed(self) -> None:
        if self._closed:
            raise LinkLost("the port has been closed.", subject=self.url)

    def write(self, data: bytes) -> None:
        """Send all of ``data``.

        Raises
        ------
        LinkLost
            If the port went away, was closed, or takes nothing for 5 s.
        """
        rest = memoryview(data)
        with self._writing:
            while rest:
                self._refuse_closed()
                try:
                    sent = self._port.write(rest)
                except _PORT_ERRORS as error:
                    raise lost(self.url, error) from error
                rest = rest[sent or 0 :]

    def drop_input(self) -> None:
        """Forget what has come in so far.

        Raises
        ------
        LinkLost
            If the port went away or was closed.
        """
        with self._reading:
            self._refuse_closed()
            try:
                self._port.reset_input_buffer()
            except _PORT_ERRORS as error:
                raise lost(self.url, error) from error

    def line_counts(self) -> LineCounts | None:
        """Give the system's own counts of this line since it was opened; None where it has none.

        Raises
        ------
        LinkLost
            If the port was closed.
        """
        if self._counted_before is None:
            return None
        with self._reading:
            self._refuse_closed()
            counts = line_counts_of(self._handle)
        return None if counts is None else since(counts, self._counted_before)

    def close(self) -> None:
        """Close the port; a read in another thread ends. Never raises; may be called again."""
        if self._closed:
            return
        self._closed = True
        with contextlib.suppress(OSError):
            self._waker.send(b"x")
        # Never close under a read or a write: the handle might already be another's.
        with self._reading, self._writing:
            _close(self._port)
            self._wake.close()
            self._waker.close()


def _byte_s(url: str, settings: LinkSettings) -> float:
    wired = settings.on_wire and "://" not in url and pty_made_ns(url) is None
    return settings.byte_s if wired else 0.0


def _handle(port: serial.SerialBase) -> int | None:
    """Give what can be waited on, or None: then only pyserial can wait."""
    try:
        return int(port.fileno())
    except (io.UnsupportedOperation, AttributeError):
        return None


def _read_now(handle: int) -> bytes:
    """Read what waits, past pyserial, which takes twice as long: it asks first whether any does.

    Raises
    ------
    OSError
        If the other end has gone.
    """
    try:
        part = os.read(handle, MOST_AT_ONCE)
        if part or not select.select([handle], [], [], 0.0)[0]:
            return part
        # Ready all the same: something came just now, or the port has hung up.
        part = os.read(handle, MOST_AT_ONCE)
    except (BlockingIOError, InterruptedError):
        return b""
    if not part:
        raise OSError(errno.ENODEV, "the device has hung up")
    return part


def _open_keeping_input(port: serial.Serial) -> None:
    """Open, but keep what comes at once: an instrument may introduce itself on connection."""
    # pyserial 3.5 drops it, by the first name on networks and by the second on POSIX.
    names = [name for name in ("reset_input_buffer", "_reset_input_buffer") if hasattr(port, name)]
    for name in names:
        setattr(port, name, _keep)
    try:
        port.open()
    finally:
        for name in names:
            delattr(port, name)


def _keep() -> None:
    """Drop nothing."""


def _close(port: serial.SerialBase) -> None:
    # pyserial 3.5 forgets to close a socket whose far side has gone.
    inner = getattr(port, "_socket", None)
    # Closing a port that has vanished fails in as many ways as opening one.
    with contextlib.suppress(Exception):
        port.close()
    if isinstance(inner, socket.socket):
        with contextlib.suppress(OSError):
            inner.close()
